package core_test

import (
	"encoding/json"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// maker makes plans up, valid and broken, out of the schema and the plans that
// are kept: the same number always gives the same plan. Bytes changed at random
// seldom get past the reader of JSON; these go through it and meet the engine.
type maker struct {
	*rand.Rand
	schema schemaNode
	kept   []map[string]any // in the order of their names
	seen   map[string][]any // what the kept plans have at each place, list places as []
}

func newMaker(t testing.TB) *maker {
	t.Helper()
	m := &maker{schema: planSchema(t), seen: map[string][]any{}}
	for _, folder := range []string{"plans/v1", "hostile"} {
		files := kept(t, folder)
		for _, name := range slices.Sorted(maps.Keys(files)) {
			var plan map[string]any
			if json.Unmarshal(files[name], &plan) == nil && len(files[name]) < 50_000 {
				m.kept = append(m.kept, plan)
				m.note("", plan)
			}
		}
	}
	require.Greater(t, len(m.kept), 50)
	return m
}

func (m *maker) note(at string, value any) {
	m.seen[at] = append(m.seen[at], value)
	switch value := value.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(value)) {
			m.note(at+"/"+name, value[name])
		}
	case []any:
		for _, entry := range value {
			m.note(at+"/[]", entry)
		}
	}
}

// plan is made-up plan number n.
func (m *maker) plan(n uint64) []byte {
	m.Rand = rand.New(rand.NewPCG(n, 2027))
	var tree map[string]any
	switch m.IntN(10) {
	case 0, 1, 2, 3:
		tree = copied(one(m, m.kept)).(map[string]any)
	case 4, 5, 6:
		tree = m.mixed()
	default:
		tree = m.grown(m.schema, "", []int{30, 70, 95}[m.IntN(3)]).(map[string]any)
	}
	tree["ceilingwright"] = 1
	for range []int{0, 1, 1, 2, 3, 5, 10, 40}[m.IntN(8)] {
		m.change(tree)
	}
	text, err := json.Marshal(tree)
	if err != nil {
		panic(err)
	}
	return text
}

// mixed has each part of the plan from another plan.
func (m *maker) mixed() map[string]any {
	tree := map[string]any{}
	for _, name := range slices.Sorted(maps.Keys(m.schema.fields())) {
		if found := m.seen["/"+name]; len(found) > 0 && m.IntN(10) > 0 {
			tree[name] = copied(one(m, found))
		}
	}
	return tree
}

// grown is a value as the schema has it; part in a hundred of its fields are
// filled.
func (m *maker) grown(s schemaNode, at string, part int) any {
	switch {
	case s.fields() != nil:
		object := map[string]any{}
		for _, name := range slices.Sorted(maps.Keys(s.fields())) {
			if m.IntN(100) < part {
				object[name] = m.grown(s.field(name), at+"/"+name, part)
			}
		}
		return object
	case s.has("items"):
		list := []any{}
		for range []int{0, 1, 2, 2, 3, 5, 9}[m.IntN(7)] {
			list = append(list, m.grown(s.entry(), at+"/[]", part))
		}
		return list
	}
	return m.blank(s, at)
}

// blank is what may be typed into a blank: what its kind takes, what other plans
// have there, and now and then what it does not take.
func (m *maker) blank(s schemaNode, at string) any {
	switch dice := m.IntN(20); {
	case dice == 0:
		return copied(one(m, odd))
	case dice == 1:
		return ""
	case dice < 8 && len(m.seen[at]) > 0:
		return copied(one(m, m.seen[at]))
	case s.has("enum"):
		return one(m, s.raw["enum"].([]any))
	}
	if usual := usual[s.kind]; usual != nil && m.IntN(8) > 0 {
		return one(m, usual)
	}
	return copied(one(m, odd))
}

// usual is what a blank of a kind holds in a plan that somebody means.
var usual = map[string][]any{
	"length": {"12' 6\"", "9 ft", "1 m", "3,85 m", "2400", "1/4 in", "0.5 mm", "4", "0", "15' 8 1/2\"", "100 m", "20 ft", "300 mm", "1/64 in", "2' 6\"", "99.999999999 m"},
	"span":   {"16", "16 to 18", "8-10", "18 to 16", "0", "8–10", "1 to", "to 4", "5,5"},
	"number": {"0", "1", "12.5", "375", "20", "4", "0.25", "100", "5,5", "8", "999", "30", "0.1", "99"},
	"amount": {"1", "1/4", "1 1/2", "63/64", "5", "0.1", "3", "946", "12"},
	"count":  {"1", "2", "3", "4", "12", "25", "50", "1931"},
	"text": {"", "A", "L1", "L2", "step1", "base", "A1", "A1 B2", "B2 C3", "1│2", "A│B", "2027-03-01", "2027-11-08", "08:00", "17:30", "2027-03-01T09:00", "60", "-60",
		"water", "paint", "AB", "C", "21", "-3", "glaze medium", "A1 A2 A3\nB1 B2 B3"},
}

// odd is what nobody means: no blank may mind it.
var odd = []any{
	"0", "-1", "0.000000000001", "999999999999", "5000000", "1000", "10000", "1e9", "104729.999983", "999983/64", "1/3", "1 63/64", "0,000000000007", "123456789.987654321",
	"100000 km", "0.000001 mm", "99.999999999 m", "1/64 in", "100 m", "-5 ft", "what?", " ", "NaN", "Infinity", "9999-12-31", "0001-01-01", "24:00", "Z9999", "A1 ZZ99",
	"\u202eevil\u202c", "\u2067name", "<script>alert(1)</script>", "a\u0301\u0327\u0000b", "💧💧💧", strings.Repeat("long name ", 40), strings.Repeat("W", 3000), strings.Repeat("1 2 3\n", 5000),
	nil, true, 7, 0.1, -3, 1e300, map[string]any{}, []any{}, map[string]any{"a": 1, "b": []any{1}}, []any{"x", nil, map[string]any{}},
}

// spot is a value in a plan: what holds it, and under which name or number.
type spot struct {
	object map[string]any
	list   []any
	name   string
	index  int
	at     string
	schema schemaNode
}

func (s spot) value() any {
	if s.object != nil {
		return s.object[s.name]
	}
	return s.list[s.index]
}

func (s spot) put(value any) {
	if s.object != nil {
		s.object[s.name] = value
	} else {
		s.list[s.index] = value
	}
}

// spots are all values below a value, in a settled order.
func spots(value any, at string, schema schemaNode, found []spot) []spot {
	switch value := value.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(value)) {
			s := spot{object: value, name: name, at: at + "/" + name, schema: schema.field(name)}
			found = spots(value[name], s.at, s.schema, append(found, s))
		}
	case []any:
		for i := range value {
			s := spot{list: value, index: i, at: at + "/[]", schema: schema.entry()}
			found = spots(value[i], s.at, s.schema, append(found, s))
		}
	}
	return found
}

// change breaks, empties, refills or repeats one value of a plan.
func (m *maker) change(tree map[string]any) {
	all := spots(tree, "", m.schema, nil)
	if len(all) == 0 {
		return
	}
	s := one(m, all)
	value := s.value()
	switch m.IntN(10) {
	case 0:
		s.put("")
	case 1:
		if s.object != nil {
			delete(s.object, s.name)
			return
		}
		s.put(nil)
	case 2:
		s.put(copied(one(m, odd)))
	case 3:
		if found := m.seen[s.at]; len(found) > 0 {
			s.put(copied(one(m, found)))
		}
	case 4:
		s.put(m.grown(s.schema, s.at, 90))
	case 5:
		m.fill(s, value)
	case 6, 7:
		m.repeat(s, value)
	default:
		if isBlank(value) {
			s.put(m.blank(s.schema, s.at))
		} else {
			m.repeat(s, value)
		}
	}
}

func isBlank(value any) bool {
	switch value.(type) {
	case map[string]any, []any:
		return false
	}
	return true
}

// fill puts into an object a field that it does not have.
func (m *maker) fill(s spot, value any) {
	object, ok := value.(map[string]any)
	if names := slices.Sorted(maps.Keys(s.schema.fields())); ok && len(names) > 0 {
		name := one(m, names)
		object[name] = m.grown(s.schema.field(name), s.at+"/"+name, 90)
	}
}

// repeat makes a list longer, by an entry many times over or with one blank of
// it changed each time; it stops short of the largest plan that is read.
func (m *maker) repeat(s spot, value any) {
	list, ok := value.([]any)
	if !ok {
		return
	}
	entry := m.grown(s.schema.entry(), s.at+"/[]", 90)
	if len(list) > 0 && m.IntN(4) > 0 {
		entry = one(m, list)
	}
	text, _ := json.Marshal(entry)
	for range min([]int{1, 2, 3, 8, 30, 100, 1000, 20_000}[m.IntN(8)], 1_500_000/(len(text)+1)) {
		next := copied(entry)
		if below := spots(next, s.at+"/[]", s.schema.entry(), nil); len(below) > 0 && m.IntN(2) == 0 {
			if b := one(m, below); isBlank(b.value()) {
				b.put(m.blank(b.schema, b.at))
			}
		}
		list = append(list, next)
	}
	s.put(list)
}

func one[T any](m *maker, of []T) T { return of[m.IntN(len(of))] }

// copied is a value that shares nothing with the one it is made of.
func copied(value any) any {
	switch value := value.(type) {
	case map[string]any:
		object := make(map[string]any, len(value))
		for name, v := range value {
			object[name] = copied(v)
		}
		return object
	case []any:
		list := make([]any, len(value))
		for i, v := range value {
			list[i] = copied(v)
		}
		return list
	}
	return value
}

// schemaNode is a part of the schema with references followed. kind is the name
// of the definition it comes from, "length".
type schemaNode struct {
	raw, top map[string]any
	kind     string
}

func planSchema(t testing.TB) schemaNode {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("plan", "plan.schema.json"))
	require.NoError(t, err)
	var top map[string]any
	require.NoError(t, json.Unmarshal(text, &top))
	return schemaNode{raw: top, top: top}
}

func (s schemaNode) has(name string) bool { return s.raw[name] != nil }

func (s schemaNode) fields() map[string]any {
	fields, _ := s.raw["properties"].(map[string]any)
	return fields
}

func (s schemaNode) field(name string) schemaNode { return s.below(s.fields()[name]) }

func (s schemaNode) entry() schemaNode { return s.below(s.raw["items"]) }

func (s schemaNode) below(node any) schemaNode {
	raw, _ := node.(map[string]any)
	ref, _ := raw["$ref"].(string)
	if name, ok := strings.CutPrefix(ref, "#/$defs/"); ok {
		definition, _ := s.top["$defs"].(map[string]any)[name].(map[string]any)
		return schemaNode{raw: definition, top: s.top, kind: name}
	}
	return schemaNode{raw: raw, top: s.top}
}

// knows tells whether a pointer leads to a blank or a part of the schema.
func (s schemaNode) knows(pointer string) bool {
	if pointer == "" {
		return true
	}
	for _, step := range strings.Split(pointer, "/")[1:] {
		_, err := strconv.ParseUint(step, 10, 31)
		switch {
		case s.fields()[step] != nil:
			s = s.field(step)
		case s.has("items") && err == nil:
			s = s.entry()
		default:
			return false
		}
	}
	return true
}
