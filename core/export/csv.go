package export

import (
	"strings"

	"github.com/shopspring/decimal"
)

// Cell is one cell of a table: a text, or a number, which a spreadsheet can add
// up. The zero value is an empty cell.
type Cell struct {
	text     string
	number   decimal.Decimal
	isNumber bool
}

// Text is a cell that is read as text, whatever stands in it.
func Text(text string) Cell { return Cell{text: text} }

// Number is a cell that is read as a number, exactly.
func Number(number decimal.Decimal) Cell { return Cell{number: number, isNumber: true} }

// Style is how numbers are written, and with it what stands between cells.
type Style uint8

// A decimal point goes with commas between the cells. A decimal comma goes
// with semicolons, as spreadsheets expect where the comma is the decimal sign.
const (
	Point Style = iota
	Comma
)

// byteOrderMark tells a spreadsheet that the text is UTF-8.
const byteOrderMark = "\uFEFF"

// CSV writes a table as RFC 4180 has it: lines end in CR LF, a cell with a
// separator, a quotation mark or a line end stands in quotation marks, and a
// quotation mark in it is doubled. A byte-order mark stands in front, since
// spreadsheets guess the letters wrong without; there is no "sep=" line, which
// would undo it. Bytes that are no UTF-8 become U+FFFD.
//
// A spreadsheet takes a text that begins with = + - or @ for a formula, and one
// of digits and signs, such as 3/8 or 1-2 or 12E4, for a date or a number, and
// loses what stood there. Such texts get an apostrophe in front. Numbers never
// do: a cell is guarded by what it is, not by how it begins.
func CSV(rows [][]Cell, style Style) []byte {
	separator := byte(',')
	if style == Comma {
		separator = ';'
	}
	out := append(make([]byte, 0, 64*len(rows)+16), byteOrderMark...)
	for _, row := range rows {
		for i, cell := range row {
			if i > 0 {
				out = append(out, separator)
			}
			if cell.isNumber {
				out = append(out, number(cell.number, style)...)
				continue
			}
			out = appendText(out, cell.text, separator)
		}
		// A row of one empty cell would be an empty line, which readers skip.
		if len(row) == 1 && !row[0].isNumber && row[0].text == "" {
			out = append(out, `""`...)
		}
		out = append(out, "\r\n"...)
	}
	return out
}

func number(n decimal.Decimal, style Style) string {
	if style == Comma {
		return strings.Replace(n.String(), ".", ",", 1)
	}
	return n.String()
}

func appendText(out []byte, text string, separator byte) []byte {
	text = strings.ToValidUTF8(text, "\uFFFD")
	if isFormula(text) || isFigure(text) {
		text = "'" + text
	}
	if strings.IndexByte(text, separator) < 0 && !strings.ContainsAny(text, "\"\r\n") {
		return append(out, text...)
	}
	out = append(out, '"')
	out = append(out, strings.ReplaceAll(text, `"`, `""`)...)
	return append(out, '"')
}

// isFormula tells whether a spreadsheet may take a text for a formula: it begins
// with = + - or @, in their full width too, after any spaces, or with a tab or
// a line end, which some leave out before they look.
func isFormula(text string) bool {
	text = strings.TrimLeft(text, " ")
	for _, start := range []string{"=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"} {
		if strings.HasPrefix(text, start) {
			return true
		}
	}
	return false
}

// isFigure tells whether a text is made of nothing but digits and the signs that
// stand in dates, times and numbers, or has one E between its digits.
func isFigure(text string) bool {
	digits, letters := 0, 0
	for _, r := range text {
		switch {
		case r >= '0' && r <= '9':
			digits++
		case r == 'e' || r == 'E':
			letters++
		case !strings.ContainsRune("/-.:, +", r):
			return false
		}
	}
	return digits > 0 && letters <= 1
}
