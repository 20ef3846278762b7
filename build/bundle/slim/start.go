package slim

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// Sections that the start function is written into.
const (
	sectionType     = 1
	sectionImport   = 2
	sectionFunction = 3
	sectionStart    = 8
	sectionElement  = 9
	sectionCode     = 10
)

// sumBody sums a column up: parameters from, to, stride and step, from being
// the second number. In words, at least once:
//
//	do { mem[from] += mem[from-stride] + step; from += stride } while (from < to)
var sumBody = []byte{
	0,          // no locals
	0x03, 0x40, // loop
	0x20, 0, // local.get from: where to store
	0x20, 0, 0x28, 2, 0, // local.get from; i32.load
	0x20, 0, 0x20, 2, 0x6b, 0x28, 2, 0, // from - stride; i32.load
	0x6a,          // i32.add
	0x20, 3, 0x6a, // + step
	0x36, 2, 0, // i32.store
	0x20, 0, 0x20, 2, 0x6a, 0x22, 0, // from + stride; local.tee from
	0x20, 1, 0x49, // < to, unsigned
	0x0d, 0, // br_if: again
	0x0b, // end of the loop
	0x0b, // end
}

const opCall = 0x10

// startBody calls the function sum for every column of an image that begins at
// first.
func startBody(first, sum int, columns []column) []byte {
	body := []byte{0} // no locals
	for _, c := range columns {
		if c.from+c.stride >= c.to {
			continue // one number: nothing to sum
		}
		for _, v := range []int{first + c.from + c.stride, first + c.to, c.stride, c.step} {
			body = appendSigned(append(body, opI32Const), v)
		}
		body = binary.AppendUvarint(append(body, opCall), uint64(sum))
	}
	return append(body, opEnd)
}

// addStart gives the module the two functions and has it run the second before
// anything else: a start function runs once the memory is filled and before
// anything exported can be called (WebAssembly Core Specification 1.0, 4.5.4). They
// come last, so that no other function's number changes.
func addStart(sections []section, first int, columns []column) ([]section, error) {
	imported, err := importedFunctions(sections)
	if err != nil {
		return nil, err
	}
	types, own := 0, 0
	for _, s := range sections {
		r := reader{left: s.body}
		switch s.id {
		case sectionType:
			types = r.count()
		case sectionFunction:
			own = r.count()
		case sectionStart:
			return nil, errors.New("it has a start function already")
		}
		if r.err != nil {
			return nil, r.err
		}
	}
	sum := imported + own
	started := false
	var out []section
	for _, s := range sections {
		if s.id == sectionElement {
			out = append(out, section{sectionStart, binary.AppendUvarint(nil, uint64(sum+1))})
			started = true
		}
		switch s.id {
		case sectionType:
			s.body = extend(s.body, []byte{0x60, 4, 0x7f, 0x7f, 0x7f, 0x7f, 0}, []byte{0x60, 0, 0})
		case sectionFunction:
			s.body = extend(s.body, binary.AppendUvarint(nil, uint64(types)), binary.AppendUvarint(nil, uint64(types+1)))
		case sectionCode:
			s.body = extend(s.body, sized(sumBody), sized(startBody(first, sum, columns)))
		}
		out = append(out, s)
	}
	if !started {
		return nil, errors.New("it has no table of functions, before which the start function is named")
	}
	return out, nil
}

// importedFunctions counts the functions that come before the module's own.
func importedFunctions(sections []section) (int, error) {
	for _, s := range sections {
		if s.id != sectionImport {
			continue
		}
		r := reader{left: s.body}
		n := r.count()
		for range n {
			r.take(r.count())
			r.take(r.count())
			if kind := r.take(1)[0]; kind != 0 && r.err == nil {
				return 0, fmt.Errorf("an import of kind %d, where only functions are expected", kind)
			}
			r.count()
		}
		return n, r.err
	}
	return 0, nil
}

// paramsOfFunctions is how many parameters each function of the module's own has.
func paramsOfFunctions(sections []section) ([]int, error) {
	var ofType, ofFunction []int
	for _, s := range sections {
		r := reader{left: s.body}
		switch s.id {
		case sectionType:
			for range r.count() {
				r.take(1)
				n := r.count()
				r.take(n)
				r.take(r.count())
				ofType = append(ofType, n)
			}
		case sectionFunction:
			for range r.count() {
				n := r.count()
				if n >= len(ofType) {
					return nil, fmt.Errorf("a function of type %d, of %d", n, len(ofType))
				}
				ofFunction = append(ofFunction, ofType[n])
			}
		}
		if r.err != nil {
			return nil, r.err
		}
	}
	return ofFunction, nil
}

// extend adds entries to the end of a section that is a list.
func extend(body []byte, entries ...[]byte) []byte {
	r := reader{left: body}
	out := binary.AppendUvarint(nil, uint64(r.count()+len(entries)))
	out = append(out, r.left...)
	for _, e := range entries {
		out = append(out, e...)
	}
	return out
}

// sized puts the length before bytes.
func sized(bytes []byte) []byte {
	return append(binary.AppendUvarint(nil, uint64(len(bytes))), bytes...)
}
