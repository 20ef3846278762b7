// Package page is what every page of the sheet is told with: figures and their
// workings, lengths and amounts in the notation asked for, sentences in the words
// of the country and the language. What is told, the packages beside it know.
package page

import (
	"strconv"
	"strings"

	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/words"
)

// The blocks of the sheet, in the order of the work.
const (
	Room    = "room"
	Mask    = "mask"
	Setting = "setting"
	Hanging = "hanging"
	Finish  = "finish"
	Days    = "days"
	Price   = "price"
	Record  = "record"
	Safety  = "safety"
)

// Names are the pages of the job in the order of the work. Figures stand on all of them
// but the record.
var Names = [...]string{Room, Mask, Setting, Hanging, Finish, Days, Price, Safety, Record}

// Of is the page on which a blank of the plan stands, by its pointer; "" for a blank that
// stands on none, such as the title.
func Of(pointer string) string {
	if layer, ok := strings.CutPrefix(pointer, "/mask/layers/"); ok {
		_, field, _ := strings.Cut(layer, "/")
		field, _, _ = strings.Cut(field, "/")
		switch field {
		case "start", "up", "crooked", "gaps", "key", "register":
			return Hanging
		case "price", "priceFor":
			return Price
		}
	}
	for _, part := range [...]struct{ at, page string }{
		{"/place/rules", Safety}, {"/setting", Setting}, {"/mask", Mask}, {"/seams", Hanging}, {"/finish", Finish}, {"/days", Days}, {"/price", Price}, {"/quote", Price},
		{"/access/armReach", Hanging}, {"/access/deckLength", Hanging}, {"/access/deckWidth", Hanging}, {"/access/overlap", Hanging}, {"/access/turn", Hanging},
		{"/access", Safety}, {"/air", Safety}, {"/room", Room}, {"/place", Room}, {"/units", Room},
	} {
		if rest, ok := strings.CutPrefix(pointer, part.at); ok && (rest == "" || rest[0] == '/') {
			return part.page
		}
	}
	return ""
}

// Page is what is told and how: Notation is the one asked for, Other the one that
// stands beside it, Country whose words are used, Language none for the one the
// sentences are written in.
type Page struct {
	Notation, Other measure.Notation
	Country         words.Country
	Language        *words.Language
	Sheet           *sheet.Sheet
}

// Style is how the page puts things.
func (p *Page) Style() words.Style {
	return words.Style{Notation: p.Notation, Country: p.Country, Language: p.Language}
}

// Told is a text as the page puts it.
func (p *Page) Told(t words.Text) string { return t.In(p.Style()) }

// Say is a sentence with what goes into its holes, as the page puts it.
func (p *Page) Say(sentence string, holes ...words.Hole) string {
	return p.Style().Say(sentence, holes...)
}

// Put is a length put into a sum: what the tape mark hides must not make the sum
// look wrong.
func (p *Page) Put(l measure.Length) string { return Said(p.Notation, l) }

// Said is a length in a notation: exact where the notation can say it in the
// marks of a tape, else rounded to the mark with "≈" in front.
func Said(n measure.Notation, l measure.Length) string { return words.Style{Notation: n}.Put(l) }

// Nanometres is a length for programs.
func Nanometres(l measure.Length) string { return strconv.FormatInt(int64(l), 10) }

// Exactly is a length with what its rounding hides, as far as anyone can measure
// it: "1′ 0¼″", "1′ 0¼″ (exactly 1′ 0 17⁄64″)" or "311 mm (nearer 311.2 mm)".
func (p *Page) Exactly(l measure.Length) string {
	text, fine := p.Notation.Length(l), p.Notation.Fine(l)
	switch {
	case fine == text || p.Notation.IsTooFine(l):
		return text
	case p.Notation.IsFine(l):
		return p.Say("{mark} (exactly {length})", words.Name("mark", text), words.Name("length", fine))
	}
	return p.Say("{mark} (nearer {length})", words.Name("mark", text), words.Name("length", fine))
}

// Share is a fraction in per cent.
func (p *Page) Share(n measure.Number) string {
	return p.Notation.NumberTrimmed(n.Mul(measure.NumberFromInt(100)), 2) + " %"
}

// Equals is a sum and what it comes to, once where nothing is added up.
func Equals(sum, result string) string {
	if sum == result {
		return result
	}
	return sum + " = " + result
}

// Plain is a number for programs: exact where it has at most twelve decimals,
// else to twelve, half to even.
func Plain(n measure.Number) string { return n.Trimmed(12) }

// Arithmetic is the source of a rule that is nothing but arithmetic.
func (p *Page) Arithmetic() string { return p.Say("Arithmetic.") }
