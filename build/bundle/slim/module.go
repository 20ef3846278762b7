package slim

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
)

// The sections of a WebAssembly module that are looked into (WebAssembly Core
// Specification 1.0, section 5.5.2).
const (
	sectionCustom = 0
	sectionData   = 11
)

var wasmHead = []byte("\x00asm\x01\x00\x00\x00")

// section is one section of a module, its body without id and length.
type section struct {
	id   byte
	body []byte
}

// custom is the name of a custom section, "" of any other.
func (s section) custom() string {
	if s.id != sectionCustom {
		return ""
	}
	r := reader{left: s.body}
	name := r.take(r.count())
	if r.err != nil {
		return ""
	}
	return string(name)
}

// readModule takes a module apart.
func readModule(module []byte) ([]section, error) {
	rest, found := bytes.CutPrefix(module, wasmHead)
	if !found {
		return nil, errors.New("this is no WebAssembly module of version 1")
	}
	var sections []section
	r := reader{left: rest}
	for len(r.left) > 0 && r.err == nil {
		id := r.take(1)
		body := r.take(r.count())
		if r.err == nil {
			sections = append(sections, section{id[0], body})
		}
	}
	return sections, r.err
}

// writeModule puts a module together.
func writeModule(sections []section) []byte {
	module := slices.Clone(wasmHead)
	for _, s := range sections {
		module = append(module, s.id)
		module = binary.AppendUvarint(module, uint64(len(s.body)))
		module = append(module, s.body...)
	}
	return module
}

// reader reads numbers and bytes; after the first error it gives zeros.
type reader struct {
	left []byte
	err  error
}

func (r *reader) fail(what string) {
	r.failWith(fmt.Errorf("the module breaks off in the middle of %s", what))
}

func (r *reader) failWith(err error) {
	if r.err == nil {
		r.err = err
	}
	r.left = nil
}

// take gives the next n bytes.
func (r *reader) take(n int) []byte {
	if r.err != nil || n < 0 || n > len(r.left) {
		r.fail("some bytes")
		return make([]byte, min(max(n, 0), 1))
	}
	taken := r.left[:n:n]
	r.left = r.left[n:]
	return taken
}

// count reads an unsigned LEB128 number of 32 bits.
func (r *reader) count() int {
	v, n := binary.Uvarint(r.left)
	if n <= 0 || v > 1<<32-1 {
		r.fail("a number")
		return 0
	}
	r.left = r.left[n:]
	return int(v)
}

// signed reads a signed LEB128 number of 32 bits.
func (r *reader) signed() int {
	v := r.signed64()
	if v != int64(int32(v)) {
		r.fail("a number")
		return 0
	}
	return int(v)
}

// signed64 reads a signed LEB128 number of 64 bits.
func (r *reader) signed64() int64 {
	var v int64
	for shift := 0; shift < 70; shift += 7 {
		b := r.take(1)[0]
		v |= int64(b&0x7f) << shift
		if b&0x80 == 0 {
			if b&0x40 != 0 && shift+7 < 64 {
				v |= -1 << (shift + 7)
			}
			return v
		}
	}
	r.fail("a number")
	return 0
}

// appendSigned writes a signed LEB128 number.
func appendSigned(to []byte, v int) []byte {
	for {
		b := byte(v & 0x7f)
		v >>= 7
		if v == 0 && b&0x40 == 0 || v == -1 && b&0x40 != 0 {
			return append(to, b)
		}
		to = append(to, b|0x80)
	}
}
