package plan

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// asked is the question about a bare number in a blank of a room or a mask, nil
// where there is none.
func asked(t *testing.T, bare, group, blank, typed string) *problem.Problem {
	t.Helper()
	doc := Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"units":{"bare":%q},%q:{%q:%q}}`, bare, group, blank, typed)))
	for i, p := range doc.Problems {
		if p.At == "/"+group+"/"+blank && len(p.Answers) > 0 {
			return &doc.Problems[i]
		}
	}
	return nil
}

func TestABareNumberThatMakesNoSenseIsAskedAbout(t *testing.T) {
	for _, c := range []struct {
		bare, group, blank, typed string
		answers                   string // none: it is taken as it stands
	}{
		{"in", "room", "length", "12", "12 ft|12 in"},
		{"in", "room", "length", "35", "35 ft|35 in"}, // below 3 ft
		{"in", "room", "length", "36", ""},
		{"in", "room", "length", "15 1/2", "15 1/2 ft|15 1/2 in"},
		{"in", "room", "length", "188", ""},
		{"in", "room", "length", "12 in", ""}, // who writes the unit means it
		{"in", "room", "length", "1'", ""},
		{"in", "room", "length", "0", ""},
		{"ft", "room", "length", "120", ""},
		{"ft", "room", "length", "121", "121 in|121 ft"},
		{"ft", "room", "length", "12", ""},
		{"ft", "room", "length", "400", "400 in"}, // more than any length: only the other is left
		{"mm", "room", "length", "5", "5 m|5 mm"},
		{"mm", "room", "length", "914", "914 cm|914 mm"}, // 3 ft is 914.4 mm
		{"mm", "room", "length", "915", ""},
		{"m", "room", "length", "5", ""},
		{"m", "room", "length", "478", "478 cm"},
		{"m", "room", "length", "4780", "4780 mm"},
		{"cm", "room", "width", "5", "5 m|5 cm"},
		{"cm", "room", "width", "300", ""},
		{"in", "room", "height", "9", "9 ft|9 in"},
		{"in", "room", "height", "60", ""},
		{"mm", "room", "height", "2.7", "2.7 m|2.7 mm"},
		{"in", "mask", "length", "16", "16 ft|16 in"},
		{"in", "mask", "length", "18", ""},
		{"mm", "mask", "width", "3", "3 m|3 mm"},
		{"in", "access", "deckLength", "6", "6 ft|6 in"},
		{"in", "access", "deckLength", "12", ""},
		{"in", "access", "reachBy", "6", "6 ft|6 in"},
		{"mm", "access", "reachBy", "180", "180 cm|180 mm"},
		{"in", "seams", "rollLength", "180", "180 ft|180 in"},
		{"mm", "seams", "rollLength", "50", "50 m|50 mm"},
		{"m", "seams", "tapeWidth", "48", "48 mm|48 m"},
		{"in", "setting", "leastBorder", "6", ""},
		{"in", "room", "length", "1,250", "1250 in|1.25 in"}, // which of two numbers comes first
	} {
		p := asked(t, c.bare, c.group, c.blank, c.typed)
		name := c.typed + " " + c.bare + " in " + c.blank
		if c.answers == "" {
			assert.Nil(t, p, name)
			continue
		}
		if assert.NotNil(t, p, name) {
			assert.Equal(t, strings.Split(c.answers, "|"), p.Answers, name)
			assert.Equal(t, problem.Stop, p.Severity, name)
			for _, answer := range p.Answers {
				assert.Nil(t, asked(t, c.bare, c.group, c.blank, answer), "%s is asked about again", answer)
			}
		}
	}
	assert.Equal(t, "12 inches is very little for a side of a room: 12 feet or 12 inches?", asked(t, "in", "room", "width", "12").What.String())
	assert.Equal(t, "1 inch is very little for a platform: 1 foot or 1 inch?", asked(t, "in", "access", "deckWidth", "1").What.String())
	assert.Equal(t, "478 m is very much for a side of a room: 478 cm?", asked(t, "m", "room", "width", "478").What.String())
}

// What another choice hides is read without a remark and keeps its unit.
func TestABareNumberOutOfSightIsNotAskedAbout(t *testing.T) {
	doc := Read([]byte(`{"ceilingwright":1,"units":{"bare":"in"},"room":{"form":"points","length":"12"}}`))
	require.Len(t, doc.Readings, 1)
	assert.Equal(t, "12 in", doc.Readings[0].Written)
}

// Every length that is asked about is a blank of the plan.
func TestUsualLengthsAreBlanks(t *testing.T) {
	text := func(at string) string {
		steps := strings.Split(strings.TrimPrefix(at, "/"), "/")
		body := `"1/1"` // no length at all
		for i := len(steps) - 1; i >= 0; i-- {
			if steps[i] == "#" {
				body = "[" + body + "]"
			} else {
				body = fmt.Sprintf(`{%q:%s}`, steps[i], body)
			}
		}
		// What has to be chosen for the blank to be asked for.
		for _, choice := range [][2]string{
			{`"readings"`, `"form":"lines","readings"`}, {`"walls":[`, `"form":"walls","walls":[`}, {`"fixture":{`, `"fixture":{"at":"middle",`},
			{`"columnSizes"`, `"split":"sizes","columnSizes"`}, {`"rowSizes"`, `"split":"sizes","rowSizes"`}, {`"greatest`, `"split":"greatest","greatest`},
			{`"setting":{`, `"setting":{"line":"tape",`}, {`"surfaces":[{"h`, `"surfaces":[{"kind":"walls","h`}, {`"brushWidth"`, `"kind":"coat","area":"edges","brushWidth"`},
			{`"leaf":{`, `"kind":"leaf","leaf":{`},
		} {
			body = strings.Replace(body, choice[0], choice[1], 1)
		}
		return `{"ceilingwright":1,` + body[1:]
	}
	for at, u := range usualAt {
		require.Less(t, u.least, u.most, at)
		found := false
		for _, p := range Read([]byte(text(at))).Problems {
			found = found || numbersLeftOut(p.At) == at && p.Severity == problem.Stop
		}
		assert.True(t, found, "%s is no blank: %s", at, text(at))
	}
}

func FuzzDoubt(f *testing.F) {
	for _, text := range []string{"12", "3 1/2", "1,250", "0.5", "4780", "½", "12 in", "1 000", "1,000"} {
		f.Add(text, uint8(0))
		f.Add(text, uint8(1))
		f.Add(text, uint8(3))
	}
	units := []measure.Unit{measure.UnitInch, measure.UnitFoot, measure.UnitMillimetre, measure.UnitCentimetre, measure.UnitMetre}
	f.Fuzz(func(t *testing.T, text string, unit uint8) {
		bare := units[int(unit)%len(units)]
		r := &reader{units: Units{Bare: bare}}
		text = strings.TrimSpace(text)
		r.lengthAt("/room/length", text, optional)
		for _, p := range r.problems {
			for _, answer := range p.Answers {
				again := &reader{units: Units{Bare: bare}}
				if l, ok := again.lengthAt("/room/length", answer, optional); !ok || len(again.problems) > 0 {
					t.Fatalf("%q in %s is answered with %q, which is %d, %v", text, bare, answer, l, again.problems)
				}
			}
		}
	})
}
