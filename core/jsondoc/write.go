package jsondoc

import (
	"strconv"
	"unicode/utf8"
)

// Writer builds a JSON text. Values follow one another in the order of the
// calls; the writer puts the commas. The zero value is ready. The caller
// answers for opening and closing in pairs.
type Writer struct {
	buf   []byte
	comma bool
}

// WriterOf is a writer with room for a text of about that many bytes, so that a
// long text is not copied while it grows.
func WriterOf(size int) *Writer { return &Writer{buf: make([]byte, 0, size)} }

// Bytes is the text so far.
func (w *Writer) Bytes() []byte { return w.buf }

func (w *Writer) before() {
	if w.comma {
		w.buf = append(w.buf, ',')
	}
	w.comma = true
}

// Open starts an object ('{') or a list ('[').
//
// Not inlined, like Close and List: they are called from hundreds of places, and
// each copy would make the page larger.
//
//go:noinline
func (w *Writer) Open(sign byte) {
	w.before()
	w.buf = append(w.buf, sign)
	w.comma = false
}

// Close ends an object ('}') or a list (']').
//
//go:noinline
func (w *Writer) Close(sign byte) {
	w.buf = append(w.buf, sign)
	w.comma = true
}

// Key writes the name of the next field.
func (w *Writer) Key(name string) {
	w.before()
	w.buf = appendQuoted(w.buf, name)
	w.buf = append(w.buf, ':')
	w.comma = false
}

// String writes a text.
func (w *Writer) String(s string) {
	w.before()
	w.buf = appendQuoted(w.buf, s)
}

// Int writes a whole number.
func (w *Writer) Int(n int) {
	w.before()
	w.buf = strconv.AppendInt(w.buf, int64(n), 10)
}

// Bool writes true or false.
func (w *Writer) Bool(b bool) {
	w.before()
	w.buf = strconv.AppendBool(w.buf, b)
}

// Null writes null.
func (w *Writer) Null() {
	w.before()
	w.buf = append(w.buf, "null"...)
}

// Name writes the name of the next field as Key does, for a name of letters alone,
// which needs no looking through.
func (w *Writer) Name(name string) {
	w.before()
	w.buf = append(w.buf, '"')
	w.buf = append(w.buf, name...)
	w.buf = append(w.buf, '"', ':')
	w.comma = false
}

// Text writes a field that holds a text; like those below it takes a name of
// letters alone.
func (w *Writer) Text(name, s string) {
	w.Name(name)
	w.String(s)
}

// Number writes a field that holds a whole number.
func (w *Writer) Number(name string, n int) {
	w.Name(name)
	w.Int(n)
}

// Truth writes a field that holds true or false.
func (w *Writer) Truth(name string, is bool) {
	w.Name(name)
	w.Bool(is)
}

// List begins a field that holds a list. The caller closes it.
//
//go:noinline
func (w *Writer) List(name string) {
	w.Name(name)
	w.Open('[')
}

// Texts writes a field that holds a list of texts; one of none is [].
func (w *Writer) Texts(name string, items []string) {
	w.List(name)
	for _, item := range items {
		w.String(item)
	}
	w.Close(']')
}

const hexDigits = "0123456789abcdef"

// appendQuoted writes s as encoding/json does without HTML escaping: control
// characters, quotation marks and backslashes escaped, U+2028 and U+2029 too
// since old script engines take them for line ends, and bytes that are no
// UTF-8 as U+FFFD.
func appendQuoted(buf []byte, s string) []byte {
	buf = append(buf, '"')
	start := 0
	for i := 0; i < len(s); {
		b := s[i]
		if plainByte[b] {
			i++
			continue
		}
		if b < utf8.RuneSelf {
			buf = append(buf, s[start:i]...)
			buf = appendEscaped(buf, b)
			i++
			start = i
			continue
		}
		r, size := utf8.DecodeRuneInString(s[i:])
		if r == utf8.RuneError && size == 1 || r == '\u2028' || r == '\u2029' {
			buf = append(buf, s[start:i]...)
			buf = append(buf, '\\', 'u', hexDigits[r>>12&15], hexDigits[r>>8&15], hexDigits[r>>4&15], hexDigits[r&15])
			start = i + size
		}
		i += size
	}
	buf = append(buf, s[start:]...)
	return append(buf, '"')
}

// plainByte tells which bytes stand in a quoted text as they are. It is looked
// up for every byte of a sheet.
var plainByte = func() (plain [256]bool) {
	for b := ' '; b < utf8.RuneSelf; b++ {
		plain[b] = b != '"' && b != '\\'
	}
	return plain
}()

func appendEscaped(buf []byte, b byte) []byte {
	switch b {
	case '"', '\\':
		return append(buf, '\\', b)
	case '\b':
		return append(buf, '\\', 'b')
	case '\f':
		return append(buf, '\\', 'f')
	case '\n':
		return append(buf, '\\', 'n')
	case '\r':
		return append(buf, '\\', 'r')
	case '\t':
		return append(buf, '\\', 't')
	}
	return append(buf, '\\', 'u', '0', '0', hexDigits[b>>4], hexDigits[b&15])
}
