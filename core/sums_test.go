package core_test

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
)

// unread are the sums that are no arithmetic a reader could do: places found by
// trying, models solved step by step, money with its currency, dates. Each is
// an id with "#" for the part that differs. One that can be read must not be here.
var unread = map[string]string{
	"air.changes":          "tried over the days of the job",
	"#.seams.tjoints":      "counted on the drawing",
	"room.closing":         "of walls and angles: a walk along all of them",
	"dew.point":            "the formula, with its letters",
	"order.largest.length": "the largest within the limits of all walls",
	"order.largest.width":  "the largest within the limits of all walls",
	"order.length":         "the largest within the limits of all walls",
	"order.width":          "the largest within the limits of all walls",
	"step.#.mix":           "parts by their names",
}

var numbered = regexp.MustCompile(`^(step\.)[^.]+|^[^.]+(\.(?:panels|found|bridges|seams|seam|gap|likely|worst|runout|shift|turn|stations|moves)\b)`)

func kindOf(id string) string {
	return numbered.ReplaceAllString(id, "$1#$2")
}

// checkSum works a printed sum out again, line by line: all sides of a line must be
// the same amount within what the printed roundings allow, and all of the figure
// must stand in it.
func checkSum(f sheet.Figure, by rounding) (problem string) {
	if f.Working.Sum == f.Text {
		return "" // one number, with nothing to work out
	}
	for _, line := range strings.Split(f.Working.Sum, "\n") {
		if problem := checkLine(line, by); problem != "" {
			return problem
		}
	}
	for _, part := range strings.FieldsFunc(strings.ReplaceAll(f.Text, " to ", ", "), func(r rune) bool { return r == ',' }) {
		part = strings.TrimSpace(part)
		if !strings.Contains(f.Working.Sum, part) {
			return "the figure " + part + " is not in its sum"
		}
	}
	return ""
}

func checkLine(line string, by rounding) (problem string) {
	sides := strings.Split(line, " = ")
	if len(sides) < 2 {
		return "no sum"
	}
	var last between
	for i, side := range sides {
		text, exact := side, ""
		if i > 0 {
			text, exact, _ = strings.Cut(strings.Replace(side, " (nearer ", " (exactly ", 1), " (exactly ")
			exact = strings.TrimSuffix(exact, ")")
			text, _, _ = strings.Cut(text, "; ")
			text = "≈" + strings.TrimPrefix(text, "≈")
		}
		got, err := readSum(text, by)
		if err != nil {
			return err.Error()
		}
		if exact != "" {
			finer, err := readSum("≈"+exact, by)
			if err != nil {
				return err.Error()
			}
			if !finer.meets(got) {
				return "“exactly " + exact + "” is not " + text
			}
			got = finer
		}
		if i > 0 && !got.meets(last) {
			return "the two sides differ"
		}
		last = got
	}
	return ""
}

// roundingOf is how a plan wants its lengths and gallons.
func roundingOf(t *testing.T, plan []byte) rounding {
	t.Helper()
	var read struct {
		Units struct{ Gallon, InchMark string }
	}
	require.NoError(t, json.Unmarshal(plan, &read))
	mark, err := measure.Parse(read.Units.InchMark, measure.UnitInch)
	if err != nil {
		mark = measure.Inch / 16
	}
	return rounding{half: float64(mark) / 2e9, imperial: read.Units.Gallon == "imperial"}
}

// marksAndMeasures are the marks along the walls and the measures that place
// panels, as far as they have a sum.
func marksAndMeasures(s sheet.Sheet) (list []sheet.Figure) {
	add := func(id, text, sum string) {
		if sum != "" {
			list = append(list, sheet.Figure{ID: id, Text: text, Working: sheet.Working{Sum: sum}})
		}
	}
	for _, w := range s.Walls {
		for _, m := range w.Marks {
			add("mark "+w.Wall+" "+m.Label, m.Text, m.Sum)
		}
	}
	for _, l := range s.Layers {
		for _, h := range l.Order {
			for _, m := range h.Measures {
				add("measure "+h.Panel+" "+m.What, m.Text, m.Sum)
			}
		}
	}
	return list
}

// tasksOf are the tasks of the days and what is waited for, with their ends.
func tasksOf(s sheet.Sheet) (list []sheet.Figure) {
	for _, task := range s.Days.Tasks {
		list = append(list, sheet.Figure{ID: "task " + task.ID, Text: task.To[:len("08:00")], Working: sheet.Working{Sum: task.Sum}})
	}
	return list
}

// Every printed sum of the golden sheets, worked out again from its own text.
func TestSums_WorkOutAsPrinted(t *testing.T) {
	t.Parallel()
	seen, read := map[string]bool{}, 0
	for _, name := range golden {
		plan := planNamed(t, name)
		by := roundingOf(t, plan)
		s := sheetOf(t, plan)
		for _, f := range slices.Concat(s.Figures, marksAndMeasures(s), tasksOf(s)) {
			kind := kindOf(f.ID)
			problem := checkSum(f, by)
			if _, ok := unread[kind]; ok {
				seen[kind] = seen[kind] || problem != ""
				continue
			}
			read++
			assert.Empty(t, problem, "%s %s: %s", name, f.ID, f.Working.Sum)
		}
	}
	for kind, why := range unread {
		assert.NotEmpty(t, why, kind)
		assert.True(t, seen[kind], "%s can be read now", kind)
	}
	assert.Greater(t, read, 1000, "sums read")
}

// The clocks of a job across the change in spring, and of one that ends at midnight.
func TestSums_OfTheClock(t *testing.T) {
	for name, places := range map[string]map[string]any{
		"a night of 23 h": {"/days/start": "2027-03-27", "/days/weekdays": []string{"sat", "sun", "mon"}, "/days/off": []string{}, "/finish/steps/1/recoatHours": "20"},
		"till midnight":   {"/days/from": "14:00", "/days/to": "24:00", "/days/pause": "30"},
	} {
		s := dated(t, places)
		for _, f := range tasksOf(s) {
			assert.Empty(t, checkSum(f, rounding{}), "%s, %s: %s", name, f.ID, f.Working.Sum)
		}
		switch name {
		case "till midnight":
			assert.Contains(t, s.Days.Tasks[0].Sum, "14:00 + ")
		default:
			assert.Contains(t, taskNamed(t, s, "step.base.2.wait").Sum, " + 20 h + 1 h the clocks go forward = Sun 28 Mar 2027 at ")
		}
	}
	f := sheet.Figure{Text: "09:30", Working: sheet.Working{Sum: "08:00 + 1 h 20 min = 09:30"}}
	assert.Equal(t, "the two sides differ", checkSum(f, rounding{}))
	f = sheet.Figure{Text: "7 Apr", Working: sheet.Working{Sum: "Mon 22 Mar 2027 + 17 days = Wed 7 Apr 2027"}}
	assert.Equal(t, "the two sides differ", checkSum(f, rounding{}))
}
