package slim

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// step is one instruction, its operand if it is looked at.
type step struct {
	text    string
	operand int64
}

// steps are the instructions of a body. One that reads a local has the number it
// has in the linked program, given the local that was put in at mine (-1 for
// none), and a pc read from that local is the constant it was.
func steps(t *testing.T, body []byte, params, mine int) []step {
	r := reader{left: body}
	for range r.count() {
		r.count()
		r.take(1)
	}
	var base int64
	read := func() step {
		from := r.left
		op, operand := r.instruction()
		require.NoError(t, r.err)
		text := string(from[:len(from)-len(r.left)])
		if op >= opLocalGet && op <= opLocalTee || op == opI64Const {
			text = string(rune(op))
		}
		if op >= opLocalGet && op <= opLocalTee && mine >= 0 && operand > int64(mine) {
			operand--
		} else if op == opLocalGet && operand == int64(mine) {
			text = "mine"
		}
		return step{text, operand}
	}
	if mine >= 0 {
		base = read().operand
		require.Equal(t, step{string(rune(opLocalSet)), int64(mine)}, read())
	}
	var all []step
	for len(r.left) > 0 {
		s := read()
		if s.text == "mine" {
			low, or := read(), read()
			require.Equal(t, string([]byte{opI64Or}), or.text)
			s = step{string(rune(opI64Const)), base | low.operand}
		}
		all = append(all, s)
	}
	return all
}

// Every function of a program has the instructions it had, in their order, its
// pcs being what they were.
func TestFunctionsDoTheSame(t *testing.T) {
	program, err := linked()
	require.NoError(t, err)
	sections, err := readModule(program)
	require.NoError(t, err)
	params, err := paramsOfFunctions(sections)
	require.NoError(t, err)
	at := slices.IndexFunc(sections, func(s section) bool { return s.id == sectionCode })
	code := sections[at].body
	short, err := shortenPCs(code, params)
	require.NoError(t, err)
	was, is := reader{left: code}, reader{left: short}
	require.Equal(t, was.count(), is.count())
	shortened := 0
	for i, n := range params {
		before, after := was.take(was.count()), is.take(is.count())
		mine := -1
		if string(before) != string(after) {
			mine = n
			shortened++
		}
		if !slices.Equal(steps(t, before, n, -1), steps(t, after, n, mine)) {
			t.Fatalf("function %d does something else", i)
		}
	}
	assert.Greater(t, shortened, len(params)/2)
	assert.Empty(t, was.left)
	assert.Empty(t, is.left)
}

func TestPCsAreShortened(t *testing.T) {
	const own = 0x1005
	// (func (param i32) (local f64) i64.const own<<16|7; local.get 0; local.get 1; end)
	body := appendSigned([]byte{1, 1, 0x7c, opI64Const}, own<<16|7)
	body = append(body, opLocalGet, 0, opLocalGet, 1, opEnd)
	got, err := shortenFunction(body, own, 1)
	require.NoError(t, err)
	want := appendSigned([]byte{2, 1, typeI64, 1, 0x7c, opI64Const}, own<<16)
	want = append(want, opLocalSet, 1, opLocalGet, 1, opI64Const, 7, opI64Or, opLocalGet, 0, opLocalGet, 2, opEnd)
	assert.Equal(t, want, got)

	another, err := shortenFunction(body, own+1, 1)
	require.NoError(t, err)
	assert.Equal(t, body, another, "the pc of another function stays")
}

func TestUnknownInstructionsAreRefused(t *testing.T) {
	for _, code := range [][]byte{{0xd0, 0}, {0xfd, 0}, {0xfc, 9, 0}, {0x06}, {0xfc}, {opI64Const, 0x80}} {
		_, err := shortenFunction(append([]byte{0}, code...), firstPC, 1)
		assert.Error(t, err, "%x", code)
	}
}
