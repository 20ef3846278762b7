package jsondoc

import (
	"fmt"
	"strconv"
	"unicode/utf16"
	"unicode/utf8"
)

// Kind is what a value is.
type Kind uint8

// The kinds of JSON value.
const (
	Null Kind = iota
	Bool
	Number
	String
	List
	Object
)

// Node is one value of the tree. Text holds the contents of a String and the
// literal of a Number or Bool; Items the entries of a List; Fields those of an
// Object, in the order written.
type Node struct {
	Kind   Kind
	Text   string
	Items  []*Node
	Fields []Field
}

// Field is one named value of an object, Raw the value as it is written. Known is
// for the reader of a document to tick off what it understood; Repeated is set on a
// name that stands again later in the same object, where the last one counts.
type Field struct {
	Name     string
	Value    *Node
	Raw      string
	Known    bool
	Repeated bool
}

// Field is the value of a name, nil where the object has none; it ticks the
// name off as known. The last of a repeated name counts.
func (n *Node) Field(name string) *Node {
	if n == nil {
		return nil
	}
	var found *Node
	for i := range n.Fields {
		if n.Fields[i].Name == name {
			n.Fields[i].Known = true
			found = n.Fields[i].Value
		}
	}
	return found
}

// At is the value at one step of a pointer, a name of an object or a place in a list;
// nil where there is none.
func (n *Node) At(step string) *Node {
	if n == nil || n.Kind != List {
		return n.Field(step)
	}
	if i, err := strconv.Atoi(step); err == nil && i >= 0 && i < len(n.Items) {
		return n.Items[i]
	}
	return nil
}

// HoldsOthers tells whether there are values in n.
func (n *Node) HoldsOthers() bool { return n != nil && len(n.Items)+len(n.Fields) > 0 }

// Deepest is how deep values may be nested: far more than a plan needs, and
// little enough that a hostile text cannot exhaust the stack.
const Deepest = 64

// SyntaxError says where a text stops being JSON. Line and Column count from 1,
// columns in characters.
type SyntaxError struct {
	Line, Column int
	Reason       string
	// CutOff is set where the text simply ends too early.
	CutOff bool
}

func (e *SyntaxError) Error() string {
	return fmt.Sprintf("line %d, character %d: %s", e.Line, e.Column, e.Reason)
}

// Read reads one JSON value (RFC 8259) with nothing but white space around it.
// A byte order mark at the start is passed over. Bytes that are no UTF-8 and
// lone surrogates become U+FFFD. A text nested deeper than Deepest is refused.
func Read(data []byte) (*Node, error) {
	p := &parser{data: data, whole: string(data)}
	if len(data) >= 3 && data[0] == 0xEF && data[1] == 0xBB && data[2] == 0xBF {
		p.at = 3
	}
	node := p.value(0)
	if p.err == nil {
		p.space()
		if p.at < len(data) {
			p.fail("something follows the end")
		}
	}
	if p.err != nil {
		return nil, p.err
	}
	return node, nil
}

type parser struct {
	data  []byte
	whole string // data again: texts without escapes are cut out of it
	at    int
	err   *SyntaxError
	room  []Node
}

// roomFor is how many values are made at once.
const roomFor = 64

// node is a new value. Making many at once is quicker than one by one.
func (p *parser) node(kind Kind, text string) *Node {
	if len(p.room) == 0 {
		p.room = make([]Node, roomFor)
	}
	n := &p.room[0]
	p.room = p.room[1:]
	n.Kind, n.Text = kind, text
	return n
}

// fail notes the first fault and puts the parser at the end, so that every
// loop stops by itself.
func (p *parser) fail(reason string) {
	if p.err != nil {
		return
	}
	line, start := 1, 0
	at := min(p.at, len(p.data))
	for i, b := range p.data[:at] {
		if b == '\n' {
			line, start = line+1, i+1
		}
	}
	p.err = &SyntaxError{Line: line, Column: utf8.RuneCount(p.data[start:at]) + 1, Reason: reason, CutOff: p.at >= len(p.data)}
	p.at = len(p.data)
}

func (p *parser) space() {
	for p.at < len(p.data) {
		switch p.data[p.at] {
		case ' ', '\t', '\r', '\n':
			p.at++
		default:
			return
		}
	}
}

// peek is the next byte that is no white space, 0 at the end.
func (p *parser) peek() byte {
	p.space()
	if p.at >= len(p.data) {
		return 0
	}
	return p.data[p.at]
}

func (p *parser) value(depth int) *Node {
	if depth > Deepest {
		p.fail("nested too deep")
		return nil
	}
	switch b := p.peek(); {
	case b == '{':
		return p.object(depth)
	case b == '[':
		return p.list(depth)
	case b == '"':
		return p.node(String, p.text())
	case b == '-' || b >= '0' && b <= '9':
		return p.number()
	case b == 't':
		return p.word("true", Bool)
	case b == 'f':
		return p.word("false", Bool)
	case b == 'n':
		return p.word("null", Null)
	case p.at >= len(p.data):
		p.fail("the text ends where a value should stand")
	default:
		p.fail("no value can start here")
	}
	return nil
}

func (p *parser) word(word string, kind Kind) *Node {
	left := p.data[p.at:min(p.at+len(word), len(p.data))]
	if string(left) != word {
		if string(left) == word[:len(left)] {
			p.at = len(p.data)
		}
		p.fail("not a value")
		return nil
	}
	p.at += len(word)
	return p.node(kind, word)
}

func (p *parser) object(depth int) *Node {
	node := p.node(Object, "")
	p.at++
	if p.peek() == '}' {
		p.at++
		return node
	}
	for p.err == nil {
		if p.peek() != '"' {
			p.fail("a name in quotation marks should stand here")
			break
		}
		name := p.text()
		if p.peek() != ':' {
			p.fail("a colon should stand here")
			break
		}
		p.at++
		p.space()
		start := p.at
		node.add(name, p.value(depth+1))
		node.Fields[len(node.Fields)-1].Raw = p.whole[start:p.at]
		if !p.more('}') {
			break
		}
	}
	return node
}

// manyFields is from where repeated names are no longer looked for: no plan has
// an object that large, and a hostile text must not cost the square of its size.
const manyFields = 256

func (n *Node) add(name string, value *Node) {
	if len(n.Fields) < manyFields {
		for i := range n.Fields {
			if n.Fields[i].Name == name {
				n.Fields[i].Repeated = true
			}
		}
	}
	n.Fields = append(n.Fields, Field{Name: name, Value: value})
}

func (p *parser) list(depth int) *Node {
	node := p.node(List, "")
	p.at++
	if p.peek() == ']' {
		p.at++
		return node
	}
	for p.err == nil {
		node.Items = append(node.Items, p.value(depth+1))
		if !p.more(']') {
			break
		}
	}
	return node
}

// more passes a comma and says there is another entry, or passes the closing
// sign and says there is none.
func (p *parser) more(closing byte) bool {
	switch p.peek() {
	case ',':
		p.at++
		return true
	case closing:
		p.at++
		return false
	}
	if closing == '}' {
		p.fail("a comma or } should stand here")
	} else {
		p.fail("a comma or ] should stand here")
	}
	return false
}

func (p *parser) number() *Node {
	start := p.at
	if p.data[p.at] == '-' {
		p.at++
	}
	switch {
	case p.digitAt() && p.data[p.at] == '0':
		p.at++
	case !p.digits():
		p.fail("a digit should stand here")
	}
	if p.at < len(p.data) && p.data[p.at] == '.' {
		p.at++
		if !p.digits() {
			p.fail("a digit should follow the point")
		}
	}
	if p.at < len(p.data) && (p.data[p.at] == 'e' || p.data[p.at] == 'E') {
		p.at++
		if p.at < len(p.data) && (p.data[p.at] == '+' || p.data[p.at] == '-') {
			p.at++
		}
		if !p.digits() {
			p.fail("a digit should follow the e")
		}
	}
	return p.node(Number, p.whole[start:p.at])
}

func (p *parser) digitAt() bool {
	return p.at < len(p.data) && p.data[p.at] >= '0' && p.data[p.at] <= '9'
}

func (p *parser) digits() bool {
	start := p.at
	for p.digitAt() {
		p.at++
	}
	return p.at > start
}

// text reads a string; the parser stands on its opening mark.
func (p *parser) text() string {
	p.at++
	start := p.at
	for p.at < len(p.data) && p.data[p.at] != '"' && p.data[p.at] != '\\' && p.data[p.at] >= ' ' && p.data[p.at] < utf8.RuneSelf {
		p.at++
	}
	if p.at < len(p.data) && p.data[p.at] == '"' {
		p.at++
		return p.whole[start : p.at-1]
	}
	return p.slowText(append([]byte(nil), p.data[start:p.at]...))
}

// slowText goes on with a string that holds escapes or more than ASCII.
func (p *parser) slowText(out []byte) string {
	for p.at < len(p.data) {
		switch b := p.data[p.at]; {
		case b == '"':
			p.at++
			return string(out)
		case b == '\\':
			out = p.escape(out)
		case b < ' ':
			p.fail("a control character stands inside a text")
		default:
			r, size := utf8.DecodeRune(p.data[p.at:])
			out = utf8.AppendRune(out, r)
			p.at += size
		}
	}
	p.fail("the text ends inside quotation marks")
	return ""
}

func (p *parser) escape(out []byte) []byte {
	p.at++
	if p.at >= len(p.data) {
		return out
	}
	b := p.data[p.at]
	p.at++
	switch b {
	case '"', '\\', '/':
		return append(out, b)
	case 'b':
		return append(out, '\b')
	case 'f':
		return append(out, '\f')
	case 'n':
		return append(out, '\n')
	case 'r':
		return append(out, '\r')
	case 't':
		return append(out, '\t')
	case 'u':
		return p.unicode(out)
	}
	p.at--
	p.fail("not an escape")
	return out
}

// unicode reads the four digits of a \u escape and, where they are the first
// half of a pair, the second half too.
func (p *parser) unicode(out []byte) []byte {
	r, ok := p.hex()
	if !ok {
		p.fail("four hexadecimal digits should follow")
		return out
	}
	if utf16.IsSurrogate(r) {
		before := p.at
		if p.at+1 < len(p.data) && p.data[p.at] == '\\' && p.data[p.at+1] == 'u' {
			p.at += 2
			if low, ok := p.hex(); ok {
				if pair := utf16.DecodeRune(r, low); pair != utf8.RuneError {
					return utf8.AppendRune(out, pair)
				}
			}
			p.at = before
		}
		r = utf8.RuneError
	}
	return utf8.AppendRune(out, r)
}

func isHex(b byte) bool {
	return b >= '0' && b <= '9' || b >= 'a' && b <= 'f' || b >= 'A' && b <= 'F'
}

func (p *parser) hex() (rune, bool) {
	if p.at+4 > len(p.data) {
		for p.at < len(p.data) && isHex(p.data[p.at]) {
			p.at++
		}
		return 0, false
	}
	v, err := strconv.ParseUint(string(p.data[p.at:p.at+4]), 16, 32)
	if err != nil {
		return 0, false
	}
	p.at += 4
	return rune(v), true
}
