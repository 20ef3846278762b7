package tell

import (
	"encoding/json"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/export"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/words"
)

// elsewhere is a language in which every letter of ours is another: what comes out in
// our letters was not said in a sentence of its own.
func elsewhere() *words.Language {
	return &words.Language{Sentence: func(ours string) (string, bool) {
		var theirs strings.Builder
		inHole := false
		for i, r := range ours {
			switch {
			case r == '{':
				inHole = true
			case r == '}':
				inHole = false
			}
			form := inHole && strings.ContainsAny(ours[strings.LastIndexByte(ours[:i+1], '{'):i+1], "|?")
			if (!inHole || form) && (r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z') {
				r += 0xFF21 - 'A' // the same letter, as wide as a Chinese one
			}
			theirs.WriteRune(r)
		}
		return theirs.String(), true
	}}
}

// ours are words in our letters; no word are signs of units, panels, walls and corners.
var (
	ours   = regexp.MustCompile(`[A-Za-z]{2,}`)
	noWord = regexp.MustCompile(`^(mm|cm|ft|in|mil|gal|imp|qt|pt|fl|oz|tsp|mL|mg|cfm|lb|kg|kN|ppm|min|ln|[U-Z]{2,3}|[A-Z][A-Z]?)$`)
)

// keys are the parts of a sheet by which programs know a thing: no words.
var keys = map[string]bool{"id": true, "at": true, "block": true, "unit": true, "kind": true, "form": true, "proved": true, "on": true, "square": true,
	"turned": true, "chosen": true, "state": true, "severity": true, "verdict": true, "jurisdiction": true, "bites": true, "rules": true, "also": true,
	"figures": true, "material": true, "looking": true, "shows": true, "of": true, "wall": true, "page": true, "figure": true}

// eachText hands on every text of a part of a sheet that people read, with where it is.
func eachText(at string, part any, read func(at, text string)) {
	switch part := part.(type) {
	case string:
		if !keys[at[strings.LastIndex(at, "/")+1:]] {
			read(at, part)
		}
	case []any:
		for _, one := range part {
			eachText(at, one, read)
		}
	case map[string]any:
		for key, one := range part {
			eachText(at+"/"+key, one, read)
		}
	}
}

// markup is what stands in a drawing and is not read; its title is.
var markup = regexp.MustCompile(`<[^>]*>`)

// Whatever a sheet says, its pictures, table, calendar and quote too, another language
// can say.
func TestNothingIsGlued(t *testing.T) {
	plans, err := filepath.Glob("../../testdata/plans/v1/*.json")
	require.NoError(t, err)
	require.Greater(t, len(plans), 30)
	for _, path := range plans {
		name := strings.TrimSuffix(filepath.Base(path), ".json")
		if name == "ten-thousand" {
			continue // says what others say, for every one of its panels
		}
		doc := documentOf(t, name)
		unnamed(&doc.Plan)
		read := func(at, text string) {
			for _, word := range ours.FindAllString(markup.ReplaceAllString(text, " "), -1) {
				assert.True(t, noWord.MatchString(word), "%s, %s: “%s” in %s", name, at, word, text)
			}
		}
		s := Session{Language: elsewhere()}
		told := s.Sheet(&doc, "", all)
		told.Plan = sheet.Heading{}
		var tree any
		require.NoError(t, json.Unmarshal(told.JSON(), &tree))
		eachText("", tree, read)
		for _, row := range Shopping(doc, elsewhere()) {
			read("table", string(export.CSV([][]export.Cell{row}, export.Point)))
		}
		for _, line := range strings.Split(strings.ReplaceAll(Calendar(doc, "20270301T080000Z", elsewhere()), "\r\n ", ""), "\r\n") {
			if key, text, _ := strings.Cut(line, ":"); key == "SUMMARY" || key == "DESCRIPTION" {
				read("calendar", strings.ReplaceAll(text, `\n`, " "))
			}
		}
	}
}

// A layer without a name, and what is less than can be measured, are said in it too.
func TestElsewhere_NoNameAndLess(t *testing.T) {
	doc := plan.ReadIn([]byte(`{"ceilingwright":1,"mask":{"layers":[{}]}}`), elsewhere())
	assert.Equal(t, "Ｌａｙｅｒ 1", doc.Plan.Mask.Layers[0].Cut.Name)
	s := Session{Language: elsewhere()}
	s.take(&doc)
	for _, n := range []measure.Notation{s.hand.Notation, s.hand.Other} {
		assert.Contains(t, n.Fine(measure.Nanometre), "ｕｎｄｅｒ ")
		assert.Contains(t, n.Volume(measure.Volume{Litres: measure.MustNumber("0.000001")}), "ｕｎｄｅｒ ")
	}
	assert.Equal(t, "under 0.1 mm", measure.Notation{}.Fine(measure.Nanometre))
}

// unnamed takes the names that people gave out of a plan: they are no words of ours.
func unnamed(p *plan.Plan) {
	p.Title, p.Price.Currency = "", ""
	for i := range p.Mask.Layers {
		p.Mask.Layers[i].Cut.Name = "1"
	}
	for i := range p.Mask.Layers {
		pieces, marks := p.Mask.Layers[i].Pieces, p.Mask.Layers[i].Register.Marks
		for k := range pieces {
			pieces[k].Name = strconv.Itoa(k)
		}
		for k := range marks {
			marks[k].Name = strconv.Itoa(k)
		}
	}
	for i := range p.Obstructions {
		p.Obstructions[i].Name = ""
	}
	for i := range p.Steps {
		p.Steps[i].Name, p.Steps[i].Colour = "2", ""
		for k := range p.Steps[i].Mix {
			p.Steps[i].Mix[k].Name = "3"
		}
	}
	for i := range p.Price.Stages {
		p.Price.Stages[i].Name = "3"
	}
	p.Price.Currency = ""
}
