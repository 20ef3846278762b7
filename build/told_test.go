package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
)

// notForReading are the fields of a sheet that are no text for a person, each with
// the reason. A field stands with its place in the sheet, "[]" for any entry of a
// list.
var notForReading = map[string]string{
	"plan.id":                         "id of the plan",
	"overview.answers[].id":           "id of the answer",
	"overview.answers[].figure":       "id of a figure",
	"overview.answers[].page":         "enum word; it is where more is told",
	"overview.answers[].fills[].at":   "pointer",
	"overview.answers[].fills[].text": "what the page offers to fill the blank with; the answer says it",
	"overview.pages[].page":           "enum word; it is the heading",
	"overview.pages[].state":          "enum word; what is wrong is told itself",
	"overview.first[].at":             "pointer",
	"overview.first[].page":           "enum word; it is where the rest is told",
	"overview.first[].severity":       "enum word; the words say it",
	"problems[].page":                 "enum word; it is where the blank stands",
	"problems[].severity":             "enum word; it orders and is printed as it is",
	"readings[].nanometres":           "value in base units",
	"readings[].written":              "what a program writes into the plan when the unit of bare numbers changes",
	"figures[].block":                 "enum word; it is the heading",
	"figures[].value":                 "value in base units",
	"figures[].unit":                  "unit of the value in base units",
	"survey.form":                     "enum word of the plan",
	"survey.proved":                   "enum word; the text says it",
	"objects[].at":                    "pointer",
	"survey.lines[].at":               "pointer",
	"objects[].kind":                  "enum word; it names a thing without a name",
	"objects[].panels[].layer":        "id of the layer; its name stands there",
	"choices[].on":                    "enum word of the plan; the title says it",
	"choices[].square":                "enum word of the plan; the title says it",
	"choices[].turned":                "enum word of the plan; the title says it",
	"box.lines[].kind":                "enum word; the name says it",
	"walls[].marks[].kind":            "enum word; the label says it",
	"walls[].marks[].exact":           "value in base units",
	"layers[].id":                     "id of the layer",
	"layers[].panels[].state":         "enum word; printed but for unchecked, which all are before the count",
	"layers[].order[].brief":          "the text in signs; the text says it",
	"layers[].order[].view":           "part of the SVG",
	"layers[].gaps[].at":              "pointer",
	"layers[].gaps[].offers[]":        "what the page offers to fill the blank with; nothing was found out",
	"layers[].key.chosen":             "enum word; the reason says it",
	"layers[].register.verdict":       "enum word; the text says it",
	"steps[].id":                      "id of the step",
	"steps[].kind":                    "enum word of the plan",
	"steps[].figures[]":               "ids",
	"steps[].material":                "id of a step",
	"climate.verdict":                 "enum word; the text says it",
	"days.start":                      "date for programs; the text says it",
	"days.finish":                     "date for programs; the text says it",
	"days.tasks[].id":                 "id of the task",
	"days.tasks[].at":                 "pointer",
	"days.tasks[].kind":               "enum word; the name says it",
	"days.tasks[].start":              "date for programs; day and hour are printed",
	"days.tasks[].end":                "date for programs; day and hour are printed",
	"platform.kind":                   "enum word; the text says it",
	"platform.stations[].layer":       "id of the layer; its name stands there",
	"limits[].at":                     "pointer",
	"limits[].verdict":                "enum word; the text says it",
	"findOut[].at":                    "pointer",
	"findOut[].rules[]":               "ids",
	"safety[].id":                     "id of the rule",
	"safety[].also[]":                 "ids",
	"safety[].severity":               "enum word; it is the heading",
	"safety[].jurisdiction":           "enum word; printed in words",
	"safety[].at":                     "pointer",
	"safety[].figures[]":              "ids",
	"safety[].bites[]":                "enum words",
	"drawings[].layer":                "id of the layer",
	"drawings[].looking":              "enum word; the title says it",
	"drawings[].shows":                "enum word; the title says it",
	"drawings[].svg":                  "SVG",
}

// toldBy are the fields that are left out because another field, from the same
// entry of the list unless it begins with "/", says the same in a sentence.
var toldBy = map[string]string{
	"survey.corners[].corner":     "text",
	"survey.corners[].angle":      "text",
	"survey.corners[].out":        "text",
	"objects[].panels[].text":     "/layers[].panels[].cut",
	"choices[].tapers[].wall":     "text",
	"box.corners[].corner":        "text",
	"walls[].wall":                "title",
	"walls[].from":                "title",
	"corners[].corner":            "text",
	"corners[].along":             "text",
	"corners[].across":            "text",
	"corners[].diagonal":          "text",
	"layers[].order[].panel":      "text",
	"layers[].order[].mind":       "text",
	"layers[].order[].set[].edge": "/layers[].order[].text",
	"layers[].order[].set[].to":   "/layers[].order[].text",
	"steps[].sections[].sizeAt":   "text",
	"steps[].sections[].layFrom":  "text",
	"steps[].sections[].layTo":    "text",
}

// leaf is one string of a sheet: where it stands, and the entry it stands in.
type leaf struct {
	field string
	entry map[string]any
	text  string
	put   func(string)
}

// leaves are all strings of a decoded sheet.
func leaves(field string, value any, visit func(leaf)) {
	switch value := value.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(value)) {
			at := strings.TrimPrefix(field+"."+name, ".")
			if text, is := value[name].(string); is {
				visit(leaf{at, value, text, func(s string) { value[name] = s }})
			}
			leaves(at, value[name], visit)
		}
	case []any:
		for i := range value {
			if text, is := value[i].(string); is {
				visit(leaf{field + "[]", nil, text, func(s string) { value[i] = s }})
			}
			leaves(field+"[]", value[i], visit)
		}
	}
}

// marked puts a mark of its own in place of every text a person reads, so that each
// is looked for by itself. It gives the sheet with the marks, and the field of each.
func marked(t *testing.T, answer []byte) (sheet.Sheet, map[string]string) {
	t.Helper()
	decoded := decode(t, answer)
	fields := map[string]string{}
	leaves("", decoded, func(l leaf) {
		if l.text == "" || notForReading[l.field] != "" || toldBy[l.field] != "" {
			return
		}
		mark := fmt.Sprintf("‹%d›", len(fields))
		fields[mark] = l.field
		l.put(mark)
	})
	text, err := json.Marshal(decoded)
	require.NoError(t, err)
	var s sheet.Sheet
	require.NoError(t, json.Unmarshal(text, &s))
	return s, fields
}

var marks = regexp.MustCompile(`‹\d+›`)

// missing are the fields of which a text is not in the text sheet, each once.
func missing(s sheet.Sheet, fields map[string]string) []string {
	printed := map[string]bool{}
	for _, mark := range marks.FindAllString(sheetText(s, true), -1) {
		printed[mark] = true
	}
	left := map[string]bool{}
	for mark, field := range fields {
		if !printed[mark] {
			left[field] = true
		}
	}
	return slices.Sorted(maps.Keys(left))
}

// answers are the sheets of the plans of which the whole sheet is kept.
func answers(t *testing.T) map[string][]byte {
	t.Helper()
	kept, err := filepath.Glob("../testdata/golden/*.txt")
	require.NoError(t, err)
	require.Greater(t, len(kept), 25)
	found := map[string][]byte{}
	for _, path := range kept {
		name := strings.TrimSuffix(filepath.Base(path), ".txt")
		plan, err := os.ReadFile(filepath.Join("../testdata/plans/v1", name+".json"))
		require.NoError(t, err)
		found[name] = core.Compute(plan)
	}
	return found
}

func TestTextSaysAllTheJSONSays(t *testing.T) {
	for name, answer := range answers(t) {
		s, fields := marked(t, answer)
		assert.Empty(t, missing(s, fields), name)
	}
}

// A field of which no plan at hand has a text is held too: here every one has.
func TestTextSaysEveryField(t *testing.T) {
	s, fields := marked(t, filled(t))
	assert.Empty(t, missing(s, fields))
}

// filled is a sheet with a text in every string and an entry in every list.
func filled(t *testing.T) []byte {
	t.Helper()
	var s sheet.Sheet
	fill(reflect.ValueOf(&s).Elem())
	s.Safety[0].Severity = "note"
	answer, err := json.Marshal(s)
	require.NoError(t, err)
	return answer
}

func fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString("all")
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		fill(v.Index(0))
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i))
		}
	}
}

// What is left out is a field that there is, and for one reason.
func TestWhatTheTextLeavesOut(t *testing.T) {
	there := map[string]bool{}
	leaves("", decode(t, filled(t)), func(l leaf) { there[l.field] = true })
	for field := range notForReading {
		assert.True(t, there[field], field)
		assert.Empty(t, toldBy[field], field)
	}
	for field := range toldBy {
		assert.True(t, there[field], field)
	}
}

// What another field is said to tell really stands in it.
func TestWhatAnotherFieldTells(t *testing.T) {
	for name, answer := range answers(t) {
		whole := decode(t, answer)
		texts := map[string]string{} // of each field, together
		leaves("", whole, func(l leaf) { texts[l.field] += strings.ToLower(l.text) + "\n" })
		leaves("", whole, func(l leaf) {
			by := toldBy[l.field]
			if by == "" {
				return
			}
			there := texts[strings.TrimPrefix(by, "/")]
			if own, is := l.entry[by].(string); is {
				there = strings.ToLower(own)
			}
			said := l.text
			if place := l.field[strings.LastIndex(l.field, ".")+1:]; place == "wall" || place == "corner" || place == "from" {
				said = survey.Wall(said).Text()
			}
			if !strings.Contains(there, strings.ToLower(said)) {
				t.Errorf("%s: %s %q is not in %s %q", name, l.field, l.text, by, there)
			}
		})
	}
}

func decode(t *testing.T, answer []byte) map[string]any {
	t.Helper()
	var decoded map[string]any
	require.NoError(t, json.Unmarshal(answer, &decoded))
	return decoded
}
