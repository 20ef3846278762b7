package export

import (
	"encoding/csv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func amount(text string) Cell { return Number(decimal.RequireFromString(text)) }

func row(cells ...Cell) [][]Cell { return [][]Cell{cells} }

func TestCSVRows(t *testing.T) {
	for _, test := range []struct {
		name  string
		row   [][]Cell
		point string
		comma string
	}{
		// ng-csv#28, export-to-csv#119, microrealestate#64: files with commas open
		// in one column where the comma is the decimal sign.
		{"EXP-03", row(Text("Größe A1"), amount("1219.2")), "Größe A1,1219.2", "Größe A1;1219,2"},
		// node-csv#503, tableExport.jquery.plugin#296, symfony/symfony#59970: the
		// guard against formulas spoiled negative numbers.
		{"EXP-02 number", row(amount("-6.35")), "-6.35", "-6,35"},
		{"EXP-02 formula", row(Text("=2+3")), "'=2+3", "'=2+3"},
		{"EXP-02 label", row(Text("-see note")), "'-see note", "'-see note"},
		// jeveassets#35, dataorg#3: a spreadsheet made dates of fractions.
		{"EXP-01", row(amount("0.375"), amount("9.525"), Text(`0'-0 3/8"`)), `0.375,9.525,"0'-0 3/8"""`, `0,375;9,525;"0'-0 3/8"""`},
		{"EXP-01 bare", row(Text("3/10")), "'3/10", "'3/10"},
		// RFC 4180, section 2, rules 5 to 7.
		{"quotes", row(Text(`b "b" b`)), `"b ""b"" b"`, `"b ""b"" b"`},
		{"comma", row(Text("a,b"), Text("c")), `"a,b",c`, "a,b;c"},
		{"semicolon", row(Text("a;b"), Text("c")), "a;b,c", `"a;b";c`},
		{"line end", row(Text("a\r\nb")), "\"a\r\nb\"", "\"a\r\nb\""},
		{"empty", row(Cell{}, Text("")), ",", ";"},
		{"empty alone", row(Cell{}), `""`, `""`},
	} {
		assert.Equal(t, "\uFEFF"+test.point+"\r\n", string(CSV(test.row, Point)), test.name)
		assert.Equal(t, "\uFEFF"+test.comma+"\r\n", string(CSV(test.row, Comma)), test.name)
	}
	assert.Equal(t, "\uFEFF", string(CSV(nil, Point)), "no rows")
}

func TestTextsThatAreGuarded(t *testing.T) {
	for _, guarded := range []string{"=1", "+1", "-1", "@sum", "\t=1", "\r=1", "\n=1", " =1", "＝1", "3/8", "1-2", "12E4", "0012", "1.5", "4,78", "10:30", "1 000"} {
		assert.True(t, isFormula(guarded) || isFigure(guarded), "%q", guarded)
	}
	for _, plain := range []string{"", "a", "Größe A1", "1 gal", "3/8 in", "0′ 0⅜″", "E", "-"[:0], "'=1", "2 × 1 gal", "−5", "/", "12E4E5"} {
		assert.False(t, isFormula(plain) || isFigure(plain), "%q", plain)
	}
}

// read is the table as Go's own reader reads it, an outside witness.
func read(t *testing.T, table []byte, separator rune) [][]string {
	t.Helper()
	text, marked := strings.CutPrefix(string(table), byteOrderMark)
	require.True(t, marked)
	reader := csv.NewReader(strings.NewReader(text))
	reader.Comma, reader.FieldsPerRecord = separator, -1
	records, err := reader.ReadAll()
	require.NoError(t, err, "%q", text)
	return records
}

// asRead is what the reader makes of a text: the guard stays, and CR LF in it
// comes back as LF, which is the reader's way.
func asRead(text string) string {
	text = strings.ToValidUTF8(text, "\uFFFD")
	if isFormula(text) || isFigure(text) {
		text = "'" + text
	}
	return strings.ReplaceAll(text, "\r\n", "\n")
}

func FuzzCSVIsReadBack(f *testing.F) {
	f.Add("Größe A1", `0'-0 3/8"`, int64(-635))
	f.Add("=cmd|' /C calc'!A0", "a\r\nb", int64(0))
	f.Add("\xff\xfe", "a;b,c\td", int64(1<<62))
	f.Add("", "\r", int64(7))
	f.Fuzz(func(t *testing.T, first, second string, cents int64) {
		price := decimal.New(cents, -2)
		rows := [][]Cell{{Text("head"), Text("second"), Text("sum")}, {Text(first), Text(second), Number(price)}}
		for style, separator := range map[Style]rune{Point: ',', Comma: ';'} {
			table := CSV(rows, style)
			require.True(t, utf8.Valid(table))
			records := read(t, table, separator)
			require.Len(t, records, 2)
			require.Len(t, records[1], 3)
			assert.Equal(t, asRead(first), records[1][0])
			assert.Equal(t, asRead(second), records[1][1])
			back, err := decimal.NewFromString(strings.Replace(records[1][2], ",", ".", 1))
			require.NoError(t, err)
			assert.True(t, back.Equal(price), "a number stays a number")
			for _, text := range records[1][:2] {
				assert.False(t, isFormula(text), "%q would be run", text)
			}
		}
	})
}
