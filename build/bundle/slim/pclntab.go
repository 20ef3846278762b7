package slim

import (
	"bytes"
	"encoding/binary"
	"fmt"
)

// What is read here of the Go runtime, as go1.26 has it: runtime/symtab.go
// (pcHeader, moduledata, functab), runtime/runtime2.go (_func),
// runtime/symtabinl.go (inlinedCall), internal/abi/symtab.go (the ids of the
// lists), written by cmd/link/internal/ld/pcln.go. Numbers are little-endian,
// and a pointer has 8 bytes although the addresses of WebAssembly have 4.
const (
	headerSize = 8 + 8*8 // pcHeader

	// Fields of moduledata, in words of 8 bytes.
	wordFindFunc = 19 // findfunctab
	wordFuncData = 40 // gofunc
	wordEnd      = 41 // epclntab

	// _func, its fields by their offset; the two lists follow it.
	funcSize      = 11 * 4
	fieldEntry    = 0  // entryOff
	fieldName     = 4  // nameOff
	fieldArgs     = 8  // args
	fieldReturn   = 12 // deferreturn
	fieldFrame    = 16 // pcsp
	fieldFile     = 20 // pcfile
	fieldLine     = 24 // pcln
	fieldPCData   = 28 // npcdata
	fieldUnit     = 32 // cuOffset
	fieldStart    = 36 // startLine
	fieldID       = 40 // funcID
	fieldFuncData = 43 // nfuncdata

	idOfWrapper = 23 // abi.FuncIDWrapper

	// inlinedCall.
	inlineSize  = 16
	inlineName  = 4
	inlineStart = 12

	// The lists of _func: offsets into pctab (0 for none) and into go:func.*
	// (all ones for none).
	pcUnsafePoint, pcStackMap, pcInlineTree, pcArgLive, pcPanicBounds = 0, 1, 2, 3, 4

	dataArgsMaps, dataLocalsMaps, dataObjects, dataInlineTree = 0, 1, 2, 3
	dataDefers, dataArgInfo, dataArgLive, dataWrapInfo        = 4, 5, 6, 7

	noFuncData = 1<<32 - 1
)

// tables are the parts of the pclntab, as slices of the image.
type tables struct {
	names []byte // funcnametab
	units []byte // cutab
	files []byte // filetab
	pcs   []byte // pctab
	funcs []byte // pclntable: functab, then every _func
	data  []byte // go:func.*: stack maps, inlined calls
	find  []byte // findfunctab
	count int    // of functions

	atFuncs, atFind int // where those begin in the image
}

func u32(b []byte, at int) int { return int(binary.LittleEndian.Uint32(b[at:])) }

func put(b []byte, at, v int) { binary.LittleEndian.PutUint32(b[at:], uint32(v)) }

func u64(b []byte, at int) int { return int(binary.LittleEndian.Uint64(b[at:])) }

// header is what pcHeader begins with in WebAssembly: magic
// (abi.Go120PCLnTabMagic, which go1.26 still has), two zeros, the size of the
// least instruction, the size of a pointer.
var header = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// findTables finds the pclntab by its header and by the module data that points
// to it: a place that only looks like a header has no such pointers.
func (m image) findTables() (tables, error) {
	var found []tables
	for at := 0; at+headerSize <= len(m.bytes); at++ {
		next := bytes.Index(m.bytes[at:], header)
		if next < 0 {
			break
		}
		at += next
		if t, ok := m.tablesAt(at); ok {
			found = append(found, t)
		}
	}
	if len(found) != 1 {
		return tables{}, fmt.Errorf("it has %d function tables with module data, want one", len(found))
	}
	return found[0], nil
}

// tablesAt reads the tables whose header stands at an offset of the image, if
// the module data agrees with it in every address.
func (m image) tablesAt(at int) (tables, bool) {
	if (m.first+at)%8 != 0 || at+headerSize > len(m.bytes) {
		return tables{}, false
	}
	word := func(i int) int { return u64(m.bytes, at+8*i) } // of pcHeader
	count := word(1)
	module, found := m.moduleData(m.first+at, m.first+at+word(4))
	if !found || count <= 0 || count > len(m.bytes)/8 {
		return tables{}, false
	}
	// Module data begins with the address of the header and six slices: the five
	// parts whose offsets the header has, and functab, the beginning of the last.
	var parts [6][]byte
	for i := range parts {
		offset := word(4 + min(i, 4))
		address, length, capacity := u64(module, 8+24*i), u64(module, 16+24*i), u64(module, 24+24*i)
		size := length
		switch i {
		case 1:
			size = 4 * length // []uint32
		case 5:
			size = 8*count + 4 // of the last entry one half is there
			if length != count+1 {
				return tables{}, false
			}
		}
		if address != m.first+at+offset || length != capacity || offset <= 0 || size < 0 || size > len(m.bytes) || at+offset+size > len(m.bytes) {
			return tables{}, false
		}
		parts[i] = m.bytes[at+offset:][:size:size]
	}
	// Stack maps and their like begin at gofunc; the table that finds a function
	// by its pc follows them and ends the whole.
	gofunc, find, end := u64(module, 8*wordFuncData)-m.first, u64(module, 8*wordFindFunc)-m.first, u64(module, 8*wordEnd)-m.first
	if len(parts[5]) > len(parts[4]) || gofunc <= at || find < gofunc || end < find || end > len(m.bytes) {
		return tables{}, false
	}
	return tables{
		names: parts[0], units: parts[1], files: parts[2], pcs: parts[3], funcs: parts[4],
		data: m.bytes[gofunc:find:find], find: m.bytes[find:end:end],
		count: count, atFuncs: at + word(8), atFind: find,
	}, true
}

// moduleData finds moduledata by its first two words, the addresses of pcHeader
// and of the names. They stand side by side nowhere else.
func (m image) moduleData(header, names int) ([]byte, bool) {
	pointers := binary.LittleEndian.AppendUint64(nil, uint64(header))
	pointers = binary.LittleEndian.AppendUint64(pointers, uint64(names))
	place := bytes.Index(m.bytes, pointers)
	if place < 0 || bytes.Contains(m.bytes[place+8:], pointers) || place+8*(wordEnd+1) > len(m.bytes) {
		return nil, false
	}
	return m.bytes[place:], true
}
