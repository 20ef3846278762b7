package slim

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// Instructions of the constant expression that says where a segment lies.
const (
	opEnd      = 0x0b
	opI32Const = 0x41
)

// image is what the data segments make of the linear memory before anything
// runs: bytes from address first on. Memory is zero where no segment lies
// (WebAssembly Core Specification 1.0, 4.5.3.3), so zeros and gaps are the same.
type image struct {
	first int
	bytes []byte
}

// readImage lays out the data section.
func readImage(body []byte) (image, error) {
	type segment struct {
		at    int
		bytes []byte
	}
	r := reader{left: body}
	var segments []segment
	first, end := -1, 0
	for range r.count() {
		if kind := r.count(); kind != 0 && r.err == nil {
			return image{}, fmt.Errorf("a data segment of kind %d, not the plain one of memory 0", kind)
		}
		op := r.take(1)[0]
		at := r.signed()
		if stop := r.take(1)[0]; (op != opI32Const || stop != opEnd || at < 0) && r.err == nil {
			return image{}, errors.New("a data segment whose place is not a constant")
		}
		s := segment{at, r.take(r.count())}
		if r.err != nil {
			return image{}, r.err
		}
		if first < 0 || s.at < first {
			first = s.at
		}
		end = max(end, s.at+len(s.bytes))
		segments = append(segments, s)
	}
	if r.err != nil || first < 0 || len(r.left) > 0 {
		return image{}, errors.Join(r.err, errors.New("the data section is empty or has something after its segments"))
	}
	m := image{first, make([]byte, end-first)}
	for _, s := range segments {
		copy(m.bytes[s.at-first:], s.bytes)
	}
	return m, nil
}

// leastGap is the number of zeros that is worth a segment of its own. A segment
// costs few bytes, but each has an address that no compressor can foresee,
// while a run of zeros costs it next to nothing: the linker, which goes by 8,
// leaves some 90,000.
const leastGap = 256

// write is the image as a data section: as few segments as leastGap leaves.
func (m image) write() []byte {
	var segments []byte
	count := 0
	for from := 0; from < len(m.bytes); {
		if m.bytes[from] == 0 {
			from++
			continue
		}
		end, last := from, from
		for end < len(m.bytes) && end-last <= leastGap {
			if m.bytes[end] != 0 {
				last = end
			}
			end++
		}
		segments = append(segments, 0, opI32Const)
		segments = appendSigned(segments, m.first+from)
		segments = append(segments, opEnd)
		segments = binary.AppendUvarint(segments, uint64(last+1-from))
		segments = append(segments, m.bytes[from:last+1]...)
		count++
		from = last + 1
	}
	return append(binary.AppendUvarint(nil, uint64(count)), segments...)
}
