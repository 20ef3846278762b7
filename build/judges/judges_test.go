package judges

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/build/machine"
	"ceilingwright/core"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// ask has a judge answer a question.
func ask[A any](t *testing.T, judge string, question any) (answer A) {
	t.Helper()
	node, err := machine.Node().Find()
	require.NoError(t, err)
	asked, err := json.Marshal(map[string]any{"judge": judge, "question": question})
	require.NoError(t, err)
	command := exec.Command(node, "judge.mjs")
	command.Stdin = bytes.NewReader(asked)
	var said bytes.Buffer
	command.Stderr = &said
	out, err := command.Output()
	require.NoError(t, err, "go run ./build test fetches the judges\n%s", said.String())
	require.NoError(t, json.Unmarshal(out, &answer))
	return answer
}

// hostile are texts that break readers and writers of tables and calendars.
var hostile = []string{
	`Rose "the river house"`, "first line\nsecond line", "a;b,c:d\\e", "Größe ½ – Blattgold, 23¾ kt", "天井の金箔",
	`=SUM(A1:A9)`, "+1", "-3", "@here", "3/8", "1-2", "12E4", " =1", "\ttab", "'quoted'", "END:VEVENT", "BEGIN:VCALENDAR",
	"x" + strings.Repeat(" long name", 40), strings.Repeat("ü", 80), strings.Repeat("金", 60), "\U0001F3A8 paint", `\n`, `\\,`,
}

// planWith is a plan of the project with its title and the names of its steps
// replaced.
func planWith(t *testing.T, name, text string) []byte {
	t.Helper()
	content, err := os.ReadFile(filepath.Join("..", "..", "testdata", "plans", "v1", name))
	require.NoError(t, err)
	if text == "" {
		return content
	}
	var document map[string]any
	require.NoError(t, json.Unmarshal(content, &document))
	document["title"] = text
	for _, step := range document["finish"].(map[string]any)["steps"].([]any) {
		step.(map[string]any)["name"] = text
	}
	content, err = json.Marshal(document)
	require.NoError(t, err)
	return content
}

// event is an event as the calendar's judge reads it.
type event struct {
	UID, Summary, Description, Start, End string
	AllDay, Floating, Transparent         bool
}

func TestCalendarIsReadBackByAnother(t *testing.T) {
	titles := append([]string{""}, hostile...)
	var calendars []string
	for _, text := range titles {
		calendars = append(calendars, string(core.Calendar(planWith(t, "days.json", text), "20270102T030405Z")))
	}
	for i, events := range ask[[][]event](t, "calendars", calendars) {
		text := titles[i]
		plan := planWith(t, "days.json", text)
		s := core.SheetOf(plan)
		var want []event
		for _, task := range s.Days.Tasks {
			e := event{Summary: strings.TrimPrefix(s.Plan.Title+": "+task.Name, ": "), Start: task.Start + ":00", End: task.End + ":00", Floating: true}
			// Drying and waiting keep nobody busy; a day of it or more is whole days,
			// whose end in RFC 5545 is the day after the last one (3.6.1).
			e.Transparent = task.Kind != "work"
			if e.Transparent && !clock(t, task.End).Before(clock(t, task.Start).AddDate(0, 0, 1)) {
				e.AllDay, e.Start, e.End = true, task.Start[:10], dayAfter(task.End[:10])
			}
			e.Floating = true
			want = append(want, e)
		}
		require.NotEmpty(t, events, "%q", text)
		uids := map[string]bool{}
		require.GreaterOrEqual(t, len(events), len(want), "%q", text)
		for k, e := range events {
			assert.False(t, uids[e.UID], "two events are called %s", e.UID)
			uids[e.UID] = true
			e.UID, e.Description, e.Floating = "", "", e.Floating || e.AllDay // a day has no clock
			if k < len(want) {
				assert.Equal(t, want[k], e)
				continue
			}
			// After the tasks come the times in which sizes take leaf.
			assert.True(t, e.Transparent && e.Floating, "%+v", e)
			assert.Contains(t, e.Summary, "The size takes leaf")
		}
	}
}

// clock is a moment of a sheet.
func clock(t *testing.T, text string) time.Time {
	t.Helper()
	moment, err := time.Parse("2006-01-02T15:04", text)
	require.NoError(t, err)
	return moment
}

// dayAfter is the day after a date, by the calendar of Go's own library.
func dayAfter(date string) string {
	day, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return err.Error()
	}
	return day.AddDate(0, 0, 1).Format(time.DateOnly)
}

// A cell is read back as the sheet has the text; a text a spreadsheet would take
// for something else has an apostrophe in front of it.
func TestShoppingTableIsReadBackByAnother(t *testing.T) {
	var tables []map[string]string
	for _, text := range hostile {
		plan := planWith(t, "days.json", text)
		tables = append(tables,
			map[string]string{"text": string(core.Shopping(plan, false)), "delimiter": ","},
			map[string]string{"text": string(core.Shopping(plan, true)), "delimiter": ";"})
	}
	read := ask[[][][]string](t, "tables", tables)
	require.Len(t, read, len(tables))
	for n, text := range hostile {
		points, commas := read[2*n], read[2*n+1]
		require.Equal(t, len(points), len(commas), "%q", text)
		assert.Len(t, points[0], 9)
		named := false
		for i, row := range points {
			require.Len(t, row, 9, "%q", text)
			for j := range row {
				want := row[j]
				if i > 0 && (j == 1 || j == 3 || j == 5 || j == 6) { // the numbers
					if want != "" {
						_, err := decimal.NewFromString(want)
						assert.NoError(t, err, "%v", row)
					}
					want = strings.Replace(want, ".", ",", 1)
				}
				assert.Equal(t, want, commas[i][j])
			}
			// A name stands as the sheet repeats it: cut, and without what steers text.
			named = named || strings.TrimPrefix(row[0], "'") == strings.TrimPrefix(problem.Name(strings.TrimSpace(text)), "'")
		}
		assert.True(t, named, "%q stands in the table", text)
	}
}

// Cans of generated sizes and prices cost what the solver finds to be least.
// Needs and sizes are whole fluid ounces or decilitres, so that the solver, which
// works in floating point, meets whole numbers alone.
func TestCheapestCansCostWhatASolverFinds(t *testing.T) {
	type question struct {
		Need   int   `json:"need"`
		Sizes  []int `json:"sizes"`
		Prices []int `json:"prices"`
	}
	random := rand.New(rand.NewPCG(7, 11))
	var questions []question
	var units []measure.VolumeUnit
	for _, system := range []struct {
		unit  measure.VolumeUnit
		sizes []int
	}{
		{measure.UnitFluidOunce, []int{8, 16, 32, 64, 116, 128, 320, 640}},
		{measure.UnitMillilitre, []int{250, 375, 500, 750, 1000, 2500, 5000, 10000}},
	} {
		for range 250 {
			q := question{Need: 1 + random.IntN(6*system.sizes[6])}
			for _, size := range system.sizes {
				if random.IntN(2) == 0 {
					q.Sizes = append(q.Sizes, size)
					q.Prices = append(q.Prices, size/4+random.IntN(1+size/2)+300)
				}
			}
			if len(q.Sizes) > 0 {
				questions, units = append(questions, q), append(units, system.unit)
			}
		}
	}
	answers := ask[[]struct {
		Feasible bool
		Price    int64
	}](t, "cans", questions)
	require.Len(t, answers, len(questions))
	for i, q := range questions {
		var cans []finish.Can
		for j, size := range q.Sizes {
			cans = append(cans, finish.CanOf(measure.NumberFromInt(int64(size)), units[i]).At(decimal.New(int64(q.Prices[j]), -2)))
		}
		purchase, _, ok := finish.CheapestCans(measure.VolumeOf(measure.NumberFromInt(int64(q.Need)), units[i]), cans)
		require.True(t, ok, "%+v", q)
		require.True(t, answers[i].Feasible, "%+v", q)
		assert.Equal(t, decimal.New(answers[i].Price, -2).String(), purchase.Price.String(), fmt.Sprintf("%+v", q))
	}
}
