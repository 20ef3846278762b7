package mask

import (
	"strconv"
	"strings"
)

// RowLetters is the name of a row counted from 1: A to Z, then AA, AB and so
// on. Below 1 there is no row and no name.
func RowLetters(row int) string {
	letters := ""
	for ; row > 0; row = (row - 1) / 26 {
		letters = string(rune('A'+(row-1)%26)) + letters
	}
	return letters
}

// rowOf is the row of letters, 0 for none. Letters may be large or small.
// More than four letters are past any row there can be.
func rowOf(letters string) int {
	if len(letters) > 4 {
		return 0
	}
	row := 0
	for _, c := range []byte(letters) {
		row = row*26 + int(c&^0x20-'A') + 1
	}
	return row
}

// ParsePanel reads a panel's own label: the letters of its row and the number
// of its column, in either order and either case, with or without spaces or a
// hyphen between them: "B2", "b 2", "B-02" and "2B" are one panel. False for
// anything else.
func ParsePanel(text string) (Panel, bool) {
	panels, ok := ParsePanels(text)
	if !ok || len(panels) != 1 {
		return Panel{}, false
	}
	return panels[0], true
}

// ParsePanels reads own labels one after the other, with spaces, hyphens,
// dashes, commas, semicolons, colons, points or slashes between them or none.
// False where something else stands in the text, where letters and numbers do
// not come in pairs, where a row or column is past any there can be, or where
// nothing is named. A list is read up to MostPanels labels.
func ParsePanels(text string) ([]Panel, bool) {
	var panels []Panel
	letters, digits := "", ""
	for rest := text; rest != ""; {
		run := ""
		if run, rest = cutRun(rest, isLetter); run != "" {
			if letters != "" {
				return nil, false
			}
			letters = run
		} else if run, rest = cutRun(rest, isDigit); run != "" {
			if digits != "" {
				return nil, false
			}
			digits = run
		} else if run, rest = cutRun(rest, isBetween); run == "" {
			return nil, false
		}
		if letters == "" || digits == "" {
			continue
		}
		panel, ok := panelOf(letters, digits)
		if !ok || len(panels) == MostPanels {
			return nil, false
		}
		panels, letters, digits = append(panels, panel), "", ""
	}
	return panels, len(panels) > 0 && letters == "" && digits == ""
}

// cutRun parts the characters that belong to a run from the rest.
func cutRun(text string, belongs func(rune) bool) (run, rest string) {
	rest = strings.TrimLeftFunc(text, belongs)
	return text[:len(text)-len(rest)], rest
}

func isLetter(c rune) bool { return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' }

func isDigit(c rune) bool { return c >= '0' && c <= '9' }

// isBetween tells whether a character may stand between labels or between the
// letters and the number of one.
func isBetween(c rune) bool {
	return strings.ContainsRune(" \t\r\n\u00a0\u202f,;:./-‐‑–—…", c)
}

func panelOf(letters, digits string) (Panel, bool) {
	row := rowOf(letters)
	column, err := strconv.Atoi(digits)
	ok := err == nil && row >= 1 && row <= MostPanels && column >= 1 && column <= MostPanels
	return Panel{Column: column, Row: row}, ok
}

// PanelByLabel is the panel of the layer with that own label, read as
// ParsePanel does. False where the text is no label or the layer has no such
// panel.
func (l Layer) PanelByLabel(text string) (Panel, bool) {
	panel, ok := ParsePanel(text)
	if !ok || !l.Has(panel) {
		return Panel{}, false
	}
	return panel, true
}

// Has tells whether the layer has that panel.
func (l Layer) Has(p Panel) bool {
	return p.Column >= 1 && p.Row >= 1 && p.Column <= len(l.Columns) && p.Row <= len(l.Rows)
}

// Index is the place of a panel in reading order, from 0.
func (l Layer) Index(p Panel) int { return (p.Row-1)*len(l.Columns) + p.Column - 1 }

// PanelAt is the panel at a place in reading order, from 0.
func (l Layer) PanelAt(i int) Panel {
	return Panel{Column: i%len(l.Columns) + 1, Row: i/len(l.Columns) + 1}
}

// LastPanel is the panel in the corner opposite A1.
func (l Layer) LastPanel() Panel { return Panel{Column: len(l.Columns), Row: len(l.Rows)} }
