// Package slim rewrites an engine that the Go linker made for the browser, so
// that less has to be sent. What the program does stays; what goes is
//
//   - data in many segments: the linker starts another after every 8 zeros
//     (data.go);
//   - names of functions, files and lines, the arguments of calls, the wrappers
//     of goroutines, and where a thread may be interrupted (cut.go): they tell
//     people where a program was, or serve signals and threads, which
//     WebAssembly does not have;
//   - what a function repeats at each call, the pc to return to, but for the part
//     that differs (code.go);
//   - what can be counted: the running numbers of the tables are made when the
//     engine starts (column.go, start.go);
//   - the custom sections (build id, producers, names), which say who made it.
//
// What stays is what the runtime works with: the sizes of frames (pcsp), stack
// maps and stack objects, by which the collector and a growing stack find
// pointers; inlined calls, by which recover finds its panic; where deferred
// calls are returned to; the kinds of functions. A stack trace of a rewritten
// engine is empty, and runtime.Callers and the like find no names.
//
// All of this goes by the insides of the Go runtime. A version that was not
// tried is refused, and so is an engine in which anything is not where it is
// expected.
package slim

import (
	"fmt"
	"regexp"
)

// tried are the versions of Go whose runtime was read and whose engines were
// tried. A patch release of one does not change what is gone by here.
var tried = regexp.MustCompile(`^go1\.26(\.\d+)?$`)

// CheckVersion refuses a Go that was not tried.
func CheckVersion(version string) error {
	if tried.MatchString(version) {
		return nil
	}
	return fmt.Errorf("the engine cannot be made small with %s: this was tried with go1.26 only, and goes by how the runtime lays out its tables. "+
		"Build with GOTOOLCHAIN=go1.26.0 or a later patch of it, or with -whole for an engine left as it was linked; "+
		"to take another Go, compare its runtime/symtab.go, runtime2.go and internal/abi/symtab.go with build/bundle/slim and run the tests of build/bundle", version)
}

// Rewrite makes an engine small. The same engine gives the same bytes.
func Rewrite(engine []byte, version string) ([]byte, error) {
	if err := CheckVersion(version); err != nil {
		return nil, err
	}
	sections, err := readModule(engine)
	if err == nil {
		sections, err = rewrite(sections)
	}
	if err != nil {
		return nil, fmt.Errorf("the linked engine is not laid out as %s lays it out: %w. Build with -whole for an engine left as it was linked", version, err)
	}
	return writeModule(sections), nil
}

func rewrite(sections []section) ([]section, error) {
	params, err := paramsOfFunctions(sections)
	if err != nil {
		return nil, err
	}
	var kept []section
	var first int
	var columns []column
	for _, s := range sections {
		switch s.id {
		case sectionCustom:
			continue
		case sectionCode:
			if s.body, err = shortenPCs(s.body, params); err != nil {
				return nil, err
			}
		case sectionData:
			memory, err := readImage(s.body)
			if err != nil {
				return nil, err
			}
			tables, err := memory.findTables()
			if err != nil {
				return nil, err
			}
			if columns, err = tables.cut(); err != nil {
				return nil, err
			}
			for _, c := range columns {
				c.take(memory.bytes)
			}
			first, s.body = memory.first, memory.write()
		}
		kept = append(kept, s)
	}
	if columns == nil {
		return nil, fmt.Errorf("it has no data section")
	}
	return addStart(kept, first, columns)
}
