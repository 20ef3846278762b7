package core_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// broken is why an answer is no sheet, "" for a good one: the sheet, and as it is
// written. That the two say the same TestWriterFollowsTheStruct holds.
func broken(s *sheet.Sheet, answer []byte) string {
	if !json.Valid(answer) {
		return "no JSON"
	}
	if s.Format != sheet.Format || s.Version != core.Version {
		return "no version"
	}
	for _, list := range []string{`"problems":[`, `"readings":[`, `"figures":[`, `"choices":[`, `"walls":[`, `"corners":[`, `"layers":[`,
		`"steps":[`, `"shopping":[`, `"safety":[`, `"drawings":[`} {
		if !bytes.Contains(answer, []byte(list)) {
			return "no list " + list
		}
	}
	if fault := brokenFigures(s); fault != "" {
		return fault
	}
	for _, p := range s.Problems {
		if p.What == "" || p.Do == "" || !slices.Contains([]problem.Severity{problem.Stop, problem.Caution, problem.Note}, p.Severity) {
			return "an empty problem at " + p.At
		}
		if p.At != "" && !strings.HasPrefix(p.At, "/") {
			return "no pointer: " + p.At
		}
		if fault := strayWords(p.What + p.Do); fault != "" {
			return "the problem at " + p.At + " says " + fault
		}
	}
	for _, d := range s.Drawings {
		if fault := brokenXML(d.SVG); fault != "" {
			return d.ID + ": " + fault
		}
	}
	return ""
}

func brokenFigures(s *sheet.Sheet) string {
	seen := map[string]bool{}
	for _, f := range s.Figures {
		switch {
		case seen[f.ID]:
			return "two figures " + f.ID
		case f.ID == "" || f.Block == "" || f.Label == "" || f.Text == "":
			return "an empty figure " + f.ID
		case f.Working.Rule == "" || f.Working.Sum == "" || f.Working.Source == "":
			return "no working for " + f.ID
		}
		seen[f.ID] = true
		value, err := decimal.NewFromString(f.Value)
		if err != nil {
			return "the value of " + f.ID + ": " + err.Error()
		}
		if f.Unit == "nm" && !value.IsInteger() {
			return f.ID + " is not in whole nanometres"
		}
		if fault := strayWords(f.Value + f.Text + f.Other + f.Working.Rule); fault != "" {
			return f.ID + " says " + fault
		}
	}
	for _, step := range s.Steps {
		for _, id := range step.Figures {
			if !seen[id] {
				return "a step names a figure that is not there: " + id
			}
		}
	}
	return ""
}

// strayWords are the marks that a value got into a text unsaid.
func strayWords(text string) string {
	for _, stray := range []string{"NaN", "Inf", "<nil>", "%!"} {
		if strings.Contains(text, stray) {
			return stray
		}
	}
	return ""
}

func brokenXML(text string) string {
	decoder := xml.NewDecoder(strings.NewReader(text))
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return ""
		}
		if err != nil {
			return err.Error()
		}
		start, ok := token.(xml.StartElement)
		if ok && !slices.Contains([]string{"svg", "title", "desc", "g", "line", "rect", "circle", "ellipse", "polygon", "polyline", "text"}, start.Name.Local) {
			return "an element " + start.Name.Local
		}
		for _, a := range start.Attr {
			if strings.HasPrefix(a.Name.Local, "on") || strings.Contains(a.Name.Local, "href") {
				return "an attribute " + a.Name.Local
			}
		}
	}
}

// A field whose tag lists the words it may hold holds no other: the page's types
// promise as much.
func TestWordsAreThoseOfTheirTag(t *testing.T) {
	t.Parallel()
	held := map[string]bool{} // every word met, by its field
	var look func(at string, v reflect.Value)
	look = func(at string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Slice:
			for i := range v.Len() {
				look(at, v.Index(i))
			}
		case reflect.Struct:
			for i := range v.NumField() {
				f := v.Type().Field(i)
				if words, ok := f.Tag.Lookup("is"); ok {
					word := v.Field(i).String()
					held[at+f.Name+word] = true
					assert.Contains(t, strings.Split(words, "|"), word, "%s%s", at, f.Name)
				}
				look(v.Type().Name()+".", v.Field(i))
			}
		}
	}
	for name, text := range kept(t, "plans/v1") {
		if name != "ten-thousand" { // says nothing that the others do not
			look("", reflect.ValueOf(sheetOf(t, text)))
		}
	}
	assert.Greater(t, len(held), 20, "the tags are no longer found")
}

// The writer is generated from the struct tags; encoding/json reads them too. Both
// must give the same bytes, and every time anew, lists that are nil apart, which a
// reader of sheets never sees.
func TestWriterFollowsTheStruct(t *testing.T) {
	t.Parallel()
	plain, hostile := kept(t, "plans/v1"), kept(t, "hostile")
	for _, texts := range []map[string][]byte{plain, hostile} {
		for name, text := range texts {
			s := core.SheetOf(text)
			written := string(s.JSON())
			require.Equal(t, noNil(byTags(t, s)), written, name)
			if plain[name] == nil || name == "ten-thousand" {
				continue // says nothing to a reader that the others do not
			}
			var back sheet.Sheet
			decoder := json.NewDecoder(strings.NewReader(written))
			decoder.DisallowUnknownFields()
			require.NoError(t, decoder.Decode(&back), name)
			require.Equal(t, byTags(t, &back), written, name)
		}
	}
}

// byTags is a sheet as the tags of its struct have it written.
func byTags(t *testing.T, s *sheet.Sheet) string {
	t.Helper()
	var text bytes.Buffer
	encoder := json.NewEncoder(&text)
	encoder.SetEscapeHTML(false)
	require.NoError(t, encoder.Encode(s))
	return strings.TrimSuffix(text.String(), "\n")
}

// noNil has empty lists for nil ones: inside a text the quotes are escaped.
func noNil(text string) string { return strings.ReplaceAll(text, `":null`, `":[]`) }

// Every length of the sheet is whole: its value is what its text and what the
// tape mark hides come to.
func TestLengthsAreExactUnderTheirText(t *testing.T) {
	t.Parallel()
	seen := 0
	for name, text := range kept(t, "plans/v1") {
		if name == "ten-thousand" {
			continue
		}
		units := plan.Read(text).Plan.Units
		for _, f := range sheetOf(t, text).Figures {
			if f.Unit != "nm" {
				continue
			}
			seen++
			value, err := decimal.NewFromString(f.Value)
			require.NoError(t, err)
			exact := measure.Length(value.IntPart())
			if exact > measure.Longest {
				continue // nothing that long is read
			}
			said, err := measure.ParseOffset(f.Text, units.Bare)
			require.NoError(t, err, "%s %s: %s", name, f.ID, f.Text)
			most := units.Notation().Mark() / 2
			if strings.HasPrefix(f.ID, "platform.") {
				most = 2 * measure.Inch // said in steps a platform has
			}
			assert.LessOrEqual(t, (said - exact).Abs(), most, "%s %s: %s for %s nm", name, f.ID, f.Text, f.Value)
		}
	}
	assert.Greater(t, seen, 200)
}

func TestReadingsSayWhatWasRead(t *testing.T) {
	s := sheetOf(t, []byte(`{"ceilingwright":1,"units":{"show":"feet-inches","bare":"ft","inchMark":"1/16 in","metricMark":"1 mm","gallon":"US"},
		"room":{"length":"17' 9 1/2\"","width":4,"height":"2,65 m"}}`))
	require.Len(t, s.Readings, 3)
	assert.Equal(t, sheet.Reading{At: "/room/length", Nanometres: "5422900000", Text: "17′ 9½″", Other: "≈5.423 m"}, s.Readings[0])
	assert.Equal(t, sheet.Reading{At: "/room/width", Nanometres: "1219200000", Text: "4′ 0″", Other: "≈1.219 m", Written: "4 ft"}, s.Readings[1])
	assert.Equal(t, sheet.Reading{At: "/room/height", Nanometres: "2650000000", Text: "≈8′ 8 5⁄16″", Other: "2.650 m"}, s.Readings[2])
}

// Changing how answers are written changes no value: inches kept as rounded
// millimetres drifted there and back (thoth issue 259).
func TestNotationChangesNoValue(t *testing.T) {
	text := planNamed(t, "full")
	before := sheetNamed(t, "full").Figures
	after := sheetOf(t, changed(t, text, "/units/show", "metric")).Figures
	require.Len(t, after, len(before))
	for i := range before {
		assert.Equal(t, before[i].ID, after[i].ID)
		assert.Equal(t, before[i].Value, after[i].Value, before[i].ID)
	}
}

// A bare number and the same with its unit are one plan.
func TestWrittenStandsInForABareNumber(t *testing.T) {
	text := planNamed(t, "imperial-gallon")
	before := sheetOf(t, text)
	bare := 0
	for _, r := range before.Readings {
		if r.Written != "" {
			text = changed(t, text, r.At, r.Written)
			bare++
		}
	}
	require.Greater(t, bare, 4)
	after := sheetOf(t, changed(t, text, "/units/bare", "cm"))
	assert.Equal(t, before.Figures, after.Figures)
	for _, r := range after.Readings {
		if r.At != "/mask/layers/0/gap" { // 0, whatever the unit
			assert.Empty(t, r.Written, r.At)
		}
	}
}

// One blank is broken at a time. What needs it goes, and nothing else changes.
func TestAStopLeavesTheRest(t *testing.T) {
	t.Parallel()
	ends := []string{"border.BC", "border.DA", "box.diagonal"}
	sides := []string{"border.AB", "border.CD", "box.diagonal"}
	hung := []string{"L1.panels", "L1.seams.length", "L1.seams.crossings", "L1.runout.length", "L1.runout.width", "L1.seam.length", "L1.seam.width",
		"L1.worst.length", "L1.worst.width", "L1.likely.length", "L1.likely.width", "L1.bridges"}
	air := []string{"air.*"}
	levels := []string{"air.atOnce", "air.peak", "air.average", "air.share", "air.short", "air.over", "air.reentry", "air.changes", "air.flow", "air.purge"}
	ceiling := []string{"step.base.*", "step.protect.area", "step.border.*", "step.glaze.area", "step.glaze.product", "step.glaze.lean", "step.glaze.rich", "step.glaze.wet", "step.glaze.cans", "step.glaze.batches"}
	maskSteps := []string{"step.border.*", "step.coat.*", "step.peel.area", "step.under.*", "step.size.*", "step.leaf.*"}
	tape := []string{"seams.length", "seams.crossings", "tape.length", "tape.rolls"}
	for _, c := range []struct {
		at string
		// goes vanish; changes keep their place with other contents, since less
		// of the job goes into them.
		goes, changes []string
	}{
		{"/room/length", slices.Concat(ends, ceiling, []string{"room.*", "order.length", "order.largest.length"}, levels), []string{"air.mass"}},
		{"/room/width", slices.Concat(sides, ceiling, []string{"room.*", "order.width", "order.largest.width"}, levels), []string{"air.mass"}},
		{"/room/height", slices.Concat([]string{"room.volume", "platform.*"}, levels), nil},
		{"/room/fixture/fromDA", nil, nil},
		{"/mask/length", slices.Concat(ends, maskSteps, tape, []string{"mask.area", "L1.*", "L2.*"}), air},
		{"/mask/layers/0/columns", hung, append(tape, "tape.rolls")},
		{"/mask/layers/1/greatestWidth", []string{"L2.*"}, append(tape, "tape.rolls")},
		{"/mask/layers/1/open", []string{"step.under.*", "step.size.*", "step.leaf.*"}, air},
		{"/mask/layers/0/panelTolerance", []string{"L1.worst.length", "L1.worst.width", "L1.likely.length", "L1.likely.width"}, nil},
		{"/setting/leastBorder", []string{"order.largest.length", "order.largest.width"}, nil},
		{"/setting/wantEnds", []string{"order.length"}, nil},
		{"/setting/wantSides", []string{"order.width"}, nil},
		{"/seams/rollLength", []string{"tape.rolls"}, nil},
		{"/finish/steps/1/coats", []string{"step.base.product", "step.base.lean", "step.base.rich", "step.base.wet", "step.base.cans"}, air},
		{"/finish/steps/1/spread", []string{"step.base.product", "step.base.lean", "step.base.rich", "step.base.wet", "step.base.cans"}, air},
		{"/finish/steps/1/loss", []string{"step.base.product", "step.base.lean", "step.base.rich", "step.base.wet", "step.base.cans"}, air},
		{"/finish/steps/1/voc", nil, air},
		{"/finish/steps/3/edgeLength", []string{"step.edge.*"}, air},
		{"/finish/steps/6/film", []string{"step.under.product", "step.under.lean", "step.under.rich", "step.under.wet", "step.under.cans"}, air},
		{"/finish/steps/8/leaf/lap", []string{"step.leaf.leaves", "step.leaf.yield", "step.leaf.books"}, nil},
		{"/finish/steps/8/leaf/perBook", []string{"step.leaf.leaves", "step.leaf.yield", "step.leaf.books"}, nil},
		{"/finish/steps/10/typedArea", []string{"step.spare.*"}, air},
		{"/access/reachBy", nil, []string{"platform.height", "platform.least", "platform.most", "platform.base"}},
		{"/air/limit", []string{"air.share", "air.over", "air.reentry", "air.changes", "air.flow", "air.purge"}, nil},
		{"/air/opened", []string{"air.peak", "air.average", "air.share", "air.short", "air.over", "air.reentry", "air.purge"}, nil},
	} {
		before := figures(sheetNamed(t, "full"))
		broken := sheetOf(t, changed(t, planNamed(t, "full"), c.at, "what?"))
		after := figures(broken)
		assert.True(t, slices.ContainsFunc(broken.Problems, func(p sheet.Problem) bool { return p.At == c.at && p.Severity == problem.Stop }), "no stop at %s", c.at)
		different := 0
		for _, id := range slices.Sorted(maps.Keys(before)) {
			now, there := after[id]
			if there && now != before[id] {
				different++
			}
			switch {
			case matches(c.goes, id):
				assert.False(t, there, "%s broken: %s is still there: %s", c.at, id, now.Working.Sum)
			case !there:
				assert.Fail(t, "gone", "%s broken: %s is gone", c.at, id)
			case !matches(c.changes, id):
				assert.Equal(t, before[id], now, "%s broken: %s changed", c.at, id)
			}
		}
		assert.Equal(t, len(c.changes) > 0, different > 0, "%s broken", c.at)
		for id := range after {
			assert.Contains(t, before, id, "%s broken: a new figure", c.at)
		}
	}
}

func matches(patterns []string, id string) bool {
	return slices.ContainsFunc(patterns, func(p string) bool {
		start, any := strings.CutSuffix(p, "*")
		return p == id || any && strings.HasPrefix(id, start)
	})
}

func TestParseLengthAnswersLikeTheBlanks(t *testing.T) {
	assert.Equal(t, core.LengthAnswer{Nanometres: "2387600000"}, core.ParseLength("94", "in"))
	assert.Equal(t, core.LengthAnswer{Nanometres: "3850000000"}, core.ParseLength("3,85", "m"))
	for _, c := range [][2]string{{"", "in"}, {"wide", "in"}, {"-3", "in"}, {"41/2", "in"}, {"3", "parsec"}, {"NaN", "m"}} {
		answer := core.ParseLength(c[0], c[1])
		assert.Empty(t, answer.Nanometres)
		require.NotNil(t, answer.Problem, "%q", c)
		assert.Equal(t, problem.Stop, answer.Problem.Severity)
		assert.NotEmpty(t, answer.Problem.What)
		assert.NotEmpty(t, answer.Problem.Do)
	}
}

// Every text that is kept gets a whole sheet within the bounds, and so does what
// the fuzzer makes of the short ones (-fuzz=FuzzCompute). A text that takes too
// long fails as one that breaks the sheet does.
func FuzzCompute(f *testing.F) {
	schema, fuzzing := planSchema(f), flag.Lookup("test.fuzz").Value.String() != ""
	for _, folder := range []string{"plans/v1", "hostile"} {
		for name, text := range kept(f, folder) {
			if !fuzzing || len(text) < 20_000 && name != "ten-thousand" {
				f.Add(text)
			}
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		s, answer, fault := overBounds(text, schema, longestWork)
		if fault == "" {
			fault = broken(s, answer)
		}
		if fault != "" {
			t.Fatal(fault)
		}
	})
}
