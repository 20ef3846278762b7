package slim

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/build/machine"
)

// linked is a program for the browser as the linker writes it.
var linked = sync.OnceValues(func() ([]byte, error) {
	folder, err := os.MkdirTemp("", "slim")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	path := filepath.Join(folder, "trial.wasm")
	command := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", path, "../testdata/trial")
	command.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := command.CombinedOutput(); err != nil {
		return out, err
	}
	return os.ReadFile(path)
})

const version = "go1.26.8"

// opened is a module's memory and the tables in it.
func opened(t *testing.T, module []byte, columns []column) (image, tables) {
	t.Helper()
	sections, err := readModule(module)
	require.NoError(t, err)
	at := slices.IndexFunc(sections, func(s section) bool { return s.id == sectionData })
	require.GreaterOrEqual(t, at, 0)
	m, err := readImage(sections[at].body)
	require.NoError(t, err)
	for _, c := range columns {
		c.sum(m.bytes)
	}
	found, err := m.findTables()
	require.NoError(t, err)
	return m, found
}

// What the runtime works with is in the tables of a small program as it was, of
// every function; what only tells people where a program was is gone.
func TestTablesKeepWhatTheRuntimeWorksWith(t *testing.T) {
	program, err := linked()
	require.NoError(t, err, string(program))
	small, err := Rewrite(program, version)
	require.NoError(t, err)
	_, before := opened(t, program, nil)
	columns, err := before.cut() // of a copy: only to know them
	require.NoError(t, err)
	whole, before := opened(t, program, nil)
	after, now := opened(t, small, columns)

	was, err := before.functions()
	require.NoError(t, err)
	is, err := now.functions()
	require.NoError(t, err)
	require.Len(t, is, len(was))
	require.Greater(t, len(is), 1000)
	list := func(list []byte, i, none int) int {
		if 4*i >= len(list) {
			return none
		}
		return u32(list, 4*i)
	}
	table := func(of tables, at int) string {
		if at == 0 {
			return ""
		}
		bytes, _, err := of.pcTable(at)
		require.NoError(t, err)
		return string(bytes)
	}
	kept := map[string]int{}
	for i, f := range was {
		g := is[i]
		for _, field := range []int{fieldEntry, fieldArgs, fieldReturn} {
			require.Equal(t, u32(f.record, field), u32(g.record, field), f.name)
		}
		require.Equal(t, f.record[fieldID:fieldFuncData], g.record[fieldID:fieldFuncData], f.name)
		require.Equal(t, table(before, u32(f.record, fieldFrame)), table(now, u32(g.record, fieldFrame)), f.name)
		for _, n := range []int{pcStackMap, pcInlineTree, pcPanicBounds} {
			require.Equal(t, table(before, list(f.pcdata, n, 0)), table(now, list(g.pcdata, n, 0)), f.name)
		}
		for _, n := range []int{dataArgsMaps, dataLocalsMaps, dataObjects, dataInlineTree, dataDefers} {
			require.Equal(t, list(f.data, n, noFuncData), list(g.data, n, noFuncData), f.name)
		}
		for _, field := range []int{fieldFile, fieldLine, fieldUnit, fieldStart} {
			require.Zero(t, u32(g.record, field), f.name)
		}
		require.Equal(t, strings.HasPrefix(f.name, "runtime."), strings.HasPrefix(g.name, "runtime."), f.name)
		kept[g.name]++
	}
	assert.Contains(t, kept, "reflect.methodValueCall")
	assert.Contains(t, kept, "reflect.makeFuncStub")
	assert.Contains(t, kept, "main.(*named).Name")
	assert.NotContains(t, kept, "main.panics")

	// Nothing else of the memory is touched: stack maps and what a stack holds
	// beside them, and everything outside the tables.
	starts := []int{}
	for _, f := range was {
		for n := range len(f.data) / 4 {
			if at := u32(f.data, 4*n); at != noFuncData {
				starts = append(starts, at)
			}
		}
	}
	starts = append(starts, len(before.data))
	slices.Sort(starts)
	for _, f := range was {
		for _, n := range []int{dataArgsMaps, dataLocalsMaps, dataObjects, dataDefers} {
			at := list(f.data, n, noFuncData)
			if at == noFuncData {
				continue
			}
			next, _ := slices.BinarySearch(starts, at+1)
			require.Equal(t, before.data[at:starts[next]], now.data[at:starts[next]], f.name)
		}
	}
	assert.Equal(t, before.find, now.find)
	for _, of := range []tables{before, now} {
		for _, cut := range [][]byte{of.names, of.units, of.files, of.pcs, of.funcs, of.data} {
			clear(cut)
		}
	}
	require.LessOrEqual(t, whole.first, after.first)
	end := min(len(whole.bytes), after.first-whole.first+len(after.bytes))
	assert.True(t, bytes.Equal(whole.bytes[after.first-whole.first:end], after.bytes[:end-(after.first-whole.first)]))
	assert.Empty(t, bytes.Trim(whole.bytes[end:], "\x00"))
}

func TestSameProgramGivesTheSameBytes(t *testing.T) {
	program, err := linked()
	require.NoError(t, err)
	kept := slices.Clone(program)
	one, err := Rewrite(program, version)
	require.NoError(t, err)
	two, err := Rewrite(program, version)
	require.NoError(t, err)
	assert.True(t, bytes.Equal(one, two))
	assert.True(t, bytes.Equal(kept, program), "what is given is left as it is")
}

func TestAnotherGoIsRefused(t *testing.T) {
	for _, version := range []string{"go1.26", "go1.26.8", "go1.26.12"} {
		assert.NoError(t, CheckVersion(version))
	}
	for _, version := range []string{"go1.25.9", "go1.27.0", "go1.260", "devel go1.27-abc", "go1.26rc1", ""} {
		_, err := Rewrite(nil, version)
		assert.ErrorContains(t, err, "-whole", version)
		assert.ErrorContains(t, err, "tried with go1.26 only", version)
	}
}

// A program in which something is not where it is expected is refused.
func TestStrangeProgramIsRefused(t *testing.T) {
	program, err := linked()
	require.NoError(t, err)
	at := bytes.Index(program, header)
	require.Positive(t, at)
	changed := func(at int, to byte) []byte {
		other := slices.Clone(program)
		other[at] = to
		return other
	}
	small, err := Rewrite(program, version)
	require.NoError(t, err)
	for name, strange := range map[string][]byte{
		"nothing":                       nil,
		"no module":                     []byte("text"),
		"another magic":                 changed(at, 0xf0),
		"more functions than there are": changed(at+8, program[at+8]+1),
		"cut off":                       program[:len(program)/2],
		"already small":                 small,
	} {
		_, err := Rewrite(strange, version)
		assert.ErrorContains(t, err, "-whole", name)
	}
}

// A segment is left for a long run of zeros, and for no short one.
func TestSegmentsAreMerged(t *testing.T) {
	memory := image{1000, slices.Concat([]byte{1}, make([]byte, leastGap-1), []byte{2}, make([]byte, leastGap), []byte{3}, make([]byte, 5))}
	body := memory.write()
	assert.Equal(t, byte(2), body[0])
	back, err := readImage(body)
	require.NoError(t, err)
	assert.Equal(t, 1000, back.first)
	assert.Equal(t, bytes.TrimRight(memory.bytes, "\x00"), back.bytes)
}

func TestSignedNumbers(t *testing.T) {
	for _, v := range []int{0, 1, 63, 64, 127, 128, 8191, 8192, 1 << 30, 1<<31 - 1, -1, -64, -65, -1 << 31} {
		r := reader{left: appendSigned(nil, v)}
		assert.Equal(t, v, r.signed())
		assert.NoError(t, r.err)
		assert.Empty(t, r.left)
	}
}

// odd are numbers that count, jump, fall and wrap round.
var odd = []int{5, 6, 7, 1 << 31, 3, 1<<32 - 1, 0, 0, 9, 10}

func TestColumnComesBack(t *testing.T) {
	table := make([]byte, 12*len(odd)+3)
	for i, v := range odd {
		put(table, 12*i+4, v)
	}
	was := slices.Clone(table)
	c := column{4, len(table), 12, 1}
	c.take(table)
	assert.Zero(t, u32(table, 12+4), "what is foreseen is zero")
	assert.Equal(t, 5, u32(table, 4))
	c.sum(table)
	assert.Equal(t, was, table)
}

// The start function of a module sums its columns up as column.sum does.
func TestModuleSumsItsColumns(t *testing.T) {
	node, err := machine.Node().Find()
	require.NoError(t, err)
	table := make([]byte, 12*len(odd)+4)
	for i, v := range odd {
		put(table, 12*i, v)
		put(table, 12*i+4, 7*i)
	}
	want := slices.Clone(table)
	columns := []column{{0, 12 * len(odd), 12, 1}, {4, len(table), 12, 7}, {8, 12, 12, 3}}
	for _, c := range columns {
		c.take(table)
	}
	const first = 70000
	sections, err := addStart([]section{
		{sectionType, []byte{0}}, {sectionFunction, []byte{0}}, {5, []byte{1, 0, 2}}, {7, []byte{1, 3, 'm', 'e', 'm', 2, 0}},
		{sectionElement, []byte{0}}, {sectionCode, []byte{0}}, {sectionData, image{first, table}.write()},
	}, first, columns)
	require.NoError(t, err)
	command := exec.Command(node, "-e", `WebAssembly.instantiate(require("fs").readFileSync(0)).then(({ instance }) => process.stdout.write(new Uint8Array(instance.exports.mem.buffer)))`)
	command.Stdin = bytes.NewReader(writeModule(sections))
	command.Stderr = os.Stderr
	memory, err := command.Output()
	require.NoError(t, err)
	require.Len(t, memory, 2<<16)
	assert.Equal(t, want, memory[first:first+len(want)])
	assert.Equal(t, uint32(0), binary.LittleEndian.Uint32(memory[first-4:]))
}
