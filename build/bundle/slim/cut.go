package slim

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// function is one _func in place.
type function struct {
	record []byte // with its two lists
	name   string
	pcdata []byte
	data   []byte
}

func (f function) id() byte { return f.record[fieldID] }

// functions reads every _func.
func (t tables) functions() ([]function, error) {
	all := make([]function, t.count)
	for i := range all {
		entry, at := u32(t.funcs, 8*i), u32(t.funcs, 8*i+4)
		if at < 8*t.count+4 || at+funcSize > len(t.funcs) {
			return nil, fmt.Errorf("function %d lies outside the table", i)
		}
		record := t.funcs[at:]
		nPC, nData := u32(record, fieldPCData), int(record[fieldFuncData])
		size := funcSize + 4*nPC + 4*nData
		if u32(record, fieldEntry) != entry || nPC > pcPanicBounds+1 || nData > dataWrapInfo+1 || size > len(record) {
			return nil, fmt.Errorf("function %d is not laid out as expected", i)
		}
		name, err := t.name(u32(record, fieldName))
		if err != nil {
			return nil, fmt.Errorf("function %d: %w", i, err)
		}
		all[i] = function{record[:size:size], name, record[funcSize:][: 4*nPC : 4*nPC], record[funcSize+4*nPC:][: 4*nData : 4*nData]}
	}
	return all, nil
}

// name reads a name; that at 0 is no name to the runtime.
func (t tables) name(at int) (string, error) {
	if at == 0 {
		return "", nil
	}
	if at >= len(t.names) || t.names[at-1] != 0 {
		return "", errors.New("its name does not begin where a name begins")
	}
	end := bytes.IndexByte(t.names[at:], 0)
	if end < 0 {
		return "", errors.New("its name has no end")
	}
	return string(t.names[at : at+end]), nil
}

// keptName is what is left of a function's name. The runtime reads names to
// print them, and in four places to go by them:
//
//   - isSystemGoroutine (traceback.go) asks whether the function that a
//     goroutine started with begins with "runtime.";
//   - panicwrap (error.go) takes the name of a wrapper, "pkg.(*T).Method", apart
//     for the text of a panic, and stops the program if it cannot;
//   - argMapInternal (stkframe.go) knows the two stubs of reflect by name;
//   - sigprof and preempt.go, which need signals or threads: WebAssembly has none.
func keptName(f function) string {
	switch {
	case strings.HasPrefix(f.name, "reflect.make"), strings.HasPrefix(f.name, "reflect.methodValue"):
		return f.name
	case f.id() == idOfWrapper && strings.Contains(f.name, ".(*"):
		return f.name
	case strings.HasPrefix(f.name, "runtime."):
		return "runtime."
	}
	return ""
}

// cut takes out of the tables what is read only to tell people where a program
// was, and packs the rest. It answers the columns to take differences of.
func (t tables) cut() ([]column, error) {
	functions, err := t.functions()
	if err != nil {
		return nil, err
	}
	if err := t.cutInlined(functions); err != nil {
		return nil, err
	}
	t.cutFuncData(functions)
	for _, f := range functions {
		for _, field := range []int{fieldFile, fieldLine, fieldUnit, fieldStart} {
			put(f.record, field, 0)
		}
		for _, list := range []int{pcUnsafePoint, pcArgLive} {
			if 4*list < len(f.pcdata) {
				put(f.pcdata, 4*list, 0)
			}
		}
	}
	clear(t.units)
	clear(t.files)
	t.writeNames(functions)
	if err := t.packPCs(functions); err != nil {
		return nil, err
	}
	size, err := t.packFuncs(functions)
	return t.columns(size), err
}

// firstFunc is where the first _func can stand: behind functab, which has one
// half entry more than there are functions.
func (t tables) firstFunc() int { return (8*t.count + 4 + 7) &^ 7 }

// packFuncs writes every _func anew, all of one size, one behind the other. A
// list that is longer than what a function has is filled with what means none.
func (t tables) packFuncs(functions []function) (size int, err error) {
	nPC, nData := 0, 0
	for _, f := range functions {
		nPC = max(nPC, listed(f.pcdata, 0))
		nData = max(nData, listed(f.data, noFuncData))
	}
	size = funcSize + 4*nPC + 4*nData
	packed := make([]byte, size*t.count)
	for i, f := range functions {
		record := packed[i*size:][:size]
		copy(record, f.record[:funcSize])
		put(record, fieldPCData, nPC)
		record[fieldFuncData] = byte(nData)
		copy(record[funcSize:][:4*nPC], f.pcdata)
		for at := funcSize + 4*nPC; at < size; at += 4 {
			put(record, at, noFuncData)
		}
		copy(record[funcSize+4*nPC:], f.data[:min(len(f.data), 4*nData)])
		put(t.funcs, 8*i+4, t.firstFunc()+i*size)
	}
	if t.firstFunc()+len(packed) > len(t.funcs) {
		return 0, errors.New("the functions take more room when they are all of one size")
	}
	clear(t.funcs[t.firstFunc():])
	copy(t.funcs[t.firstFunc():], packed)
	return size, nil
}

// listed is how long a list is without what means none at its end.
func listed(list []byte, none int) int {
	n := len(list) / 4
	for n > 0 && u32(list, 4*n-4) == none {
		n--
	}
	return n
}

func (t tables) writeNames(functions []function) {
	clear(t.names)
	places := map[string]int{"": 0}
	next := 1
	for _, f := range functions {
		name := keptName(f)
		at, known := places[name]
		if !known {
			at = next
			places[name] = at
			next += copy(t.names[at:], name) + 1
		}
		put(f.record, fieldName, at)
	}
}

// pcTable is the table at an offset of pctab, up to and with the zero that ends
// it: pairs of variable-length numbers, the change of the value and of the pc.
func (t tables) pcTable(at int) (table []byte, most int, err error) {
	r := reader{left: t.pcs[min(at, len(t.pcs)):]}
	value := -1
	for first := true; ; first = false {
		change := r.count()
		if change == 0 && !first {
			break
		}
		value += -(change & 1) ^ change>>1
		most = max(most, value)
		r.count()
		if r.err != nil {
			return nil, 0, fmt.Errorf("the table of pcs at %d has no end", at)
		}
	}
	return t.pcs[at : len(t.pcs)-len(r.left)], most, nil
}

// packPCs writes pctab anew with the tables that are still named, each once.
func (t tables) packPCs(functions []function) error {
	old := tables{pcs: slices.Clone(t.pcs)}
	places := map[string]int{}
	next := 1 // 0 means that there is no table
	clear(t.pcs)
	move := func(list []byte, at int) error {
		from := u32(list, at)
		if from == 0 {
			return nil
		}
		table, _, err := old.pcTable(from)
		if err != nil {
			return err
		}
		to, known := places[string(table)]
		if !known {
			to = next
			places[string(table)] = to
			next += copy(t.pcs[to:], table)
		}
		put(list, at, to)
		return nil
	}
	// Like beside like: all sizes of frames, then all stack maps, then the rest.
	for _, f := range functions {
		if err := move(f.record, fieldFrame); err != nil {
			return err
		}
	}
	for list := range pcPanicBounds + 1 {
		for _, f := range functions {
			if 4*list >= len(f.pcdata) {
				continue
			}
			if err := move(f.pcdata, 4*list); err != nil {
				return err
			}
		}
	}
	return nil
}

// cutInlined takes names and lines out of the trees of inlined calls. The trees
// stay: gorecover (panic.go) counts the frames between itself and the panic by
// them.
func (t tables) cutInlined(functions []function) error {
	for _, f := range functions {
		if len(f.data) <= 4*dataInlineTree || u32(f.data, 4*dataInlineTree) == noFuncData {
			continue
		}
		if len(f.pcdata) <= 4*pcInlineTree || u32(f.pcdata, 4*pcInlineTree) == 0 {
			continue
		}
		_, most, err := t.pcTable(u32(f.pcdata, 4*pcInlineTree))
		if err != nil {
			return err
		}
		at := u32(f.data, 4*dataInlineTree)
		if at+(most+1)*inlineSize > len(t.data) {
			return errors.New("a tree of inlined calls lies outside the function data")
		}
		for i := range most + 1 {
			call := t.data[at+i*inlineSize:]
			put(call, inlineName, 0)
			put(call, inlineStart, 0)
		}
	}
	return nil
}

// cutFuncData clears what is only for printing arguments and for traces.
func (t tables) cutFuncData(functions []function) {
	kept := map[int]bool{}
	starts := []int{len(t.data)}
	each := func(do func(f function, list, at int)) {
		for _, f := range functions {
			for list := range len(f.data) / 4 {
				if at := u32(f.data, 4*list); at != noFuncData {
					do(f, list, at)
				}
			}
		}
	}
	gone := func(list int) bool { return list == dataArgInfo || list == dataArgLive || list == dataWrapInfo }
	each(func(_ function, list, at int) {
		starts = append(starts, at)
		if !gone(list) {
			kept[at] = true
		}
	})
	slices.Sort(starts)
	starts = slices.Compact(starts)
	for i, at := range starts[:len(starts)-1] {
		if !kept[at] {
			clear(t.data[at:starts[i+1]])
		}
	}
	each(func(f function, list, at int) {
		if gone(list) {
			put(f.data, 4*list, noFuncData)
		}
	})
}
