package core_test

import (
	"encoding/json"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// dated is the kept plan with days, with some places changed.
func dated(t *testing.T, places map[string]any) sheet.Sheet {
	t.Helper()
	plan := planNamed(t, "days")
	for at, v := range places {
		plan = changed(t, plan, at, v)
	}
	return sheetOf(t, plan)
}

func taskNamed(t *testing.T, s sheet.Sheet, id string) sheet.Task {
	t.Helper()
	for _, task := range s.Days.Tasks {
		if task.ID == id {
			return task
		}
	}
	require.Fail(t, "no task "+id)
	return sheet.Task{}
}

func saidAt(s sheet.Sheet, at string) (sheet.Problem, bool) {
	i := slices.IndexFunc(s.Problems, func(p sheet.Problem) bool { return p.At == at })
	if i < 0 {
		return sheet.Problem{}, false
	}
	return s.Problems[i], true
}

func TestTasksAreInOrderAndCalledOnce(t *testing.T) {
	s := dated(t, nil)
	seen := map[string]bool{}
	begun := ""
	for _, task := range s.Days.Tasks {
		assert.False(t, seen[task.ID], task.ID)
		seen[task.ID] = true
		assert.LessOrEqual(t, task.Start, task.End, task.ID)
		assert.NotEmpty(t, task.Reason, task.ID)
		assert.Contains(t, []string{"work", "dry", "wait"}, task.Kind)
		if task.Kind == "work" && !strings.Contains(task.ID, ".day") {
			assert.LessOrEqual(t, begun, task.Start, task.ID)
			begun = task.Start
		}
	}
	assert.Equal(t, "2027-03-22T08:00", s.Days.Start)
	assert.Equal(t, taskNamed(t, s, "clear").End, s.Days.Finish)
	assert.Equal(t, "20270406", figures(s)["days.finish"].Value)
	assert.True(t, strings.HasPrefix(chartOf(t, s), "<svg "))
	assert.Equal(t, "Mon 22 Mar", taskNamed(t, s, "survey").Day)
}

func TestNoDaysWithoutAFirstDay(t *testing.T) {
	s := dated(t, map[string]any{"/days/start": ""})
	assert.Equal(t, "Give the first day of work, and the days are worked out.", s.Days.Text)
	assert.Empty(t, s.Days.Tasks)
	s = dated(t, map[string]any{"/days": map[string]any{"from": "07:30", "people": "3"}})
	assert.Empty(t, s.Days.Text, "hours alone ask for nothing")
	s = sheetNamed(t, "full")
	assert.Equal(t, sheet.Days{}, s.Days, "a plan without days means what it did")
}

func TestDaysThatCannotBeRead(t *testing.T) {
	for at, places := range map[string]map[string]any{
		"/days/start":                {"/days/start": "2027-02-29"},
		"/days/from":                 {"/days/from": "8 o'clock"},
		"/days/to":                   {"/days/to": "07:00"},
		"/days/pause":                {"/days/pause": "600"},
		"/days/off/0":                {"/days/off": []string{"31.12.2027"}},
		"/days/clockChanges/0/at":    {"/days/clockChanges": []map[string]string{{"at": "spring", "minutes": "60"}}},
		"/days/freshPaint/doneOn":    {"/days/freshPaint": map[string]string{"doneOn": "last week", "filmAge": "14"}},
		"/days/weekdays":             {"/days/weekdays": []string{"someday"}},
		"/finish/steps/7/tackHours":  {"/finish/steps/7/tackHours": "", "/finish/steps/7/dryHours": ""},
		"/finish/steps/7/openHours":  {"/finish/steps/7/openHours": "0.1"},
		"/finish/steps/1/dryHours":   {"/finish/steps/1/dryHours": ""},
		"/days/freshPaint/filmAge":   {"/days/freshPaint": map[string]string{"doneOn": "2027-03-20"}},
		"/days/people":               {"/days/people": "1000"},
		"/days/rates":                {"/days/rates": map[string]string{}},
		"/mask/layers/1":             {"/finish/steps/6/layer": "L1", "/finish/steps/7/layer": "L1", "/finish/steps/8/layer": "L1"},
		"/days/start ":               {"/finish/steps/1/coats": "50", "/days/rates/protect": "100000000000"},
		"/finish/steps/8/rate":       {"/finish/steps/8/rate": "-4"},
		"/finish/steps/7/sizeBeyond": {"/finish/steps/7/sizeBeyond": "a foot"},
	} {
		s := dated(t, places)
		p, ok := saidAt(s, strings.TrimSpace(at))
		if assert.True(t, ok, "%s: %v", at, s.Problems) {
			assert.NotEmpty(t, p.What)
			assert.NotEmpty(t, p.Do)
		}
		assert.NotEmpty(t, s.Figures, "the rest is worked out")
	}
}

func TestWindowThatCannotBeMetIsSaid(t *testing.T) {
	// Ready 12 h after sizing and open for 2 h, a fifth kept back: never in working
	// hours from 08:00 to 16:30.
	s := dated(t, map[string]any{"/finish/steps/7/tackHours": "12", "/finish/steps/7/openHours": "2.5"})
	p, ok := saidAt(s, "/finish/steps/7/openHours")
	require.True(t, ok)
	assert.Equal(t, problem.Stop, p.Severity)
	assert.Contains(t, p.What, "it does so 12 h after sizing, for 2 h with the reserve kept back, and work goes on from 08:00 to 16:30.")
	assert.NotEmpty(t, s.Days.Finish, "the rest is planned all the same")
	assert.Contains(t, s.Days.Text, "so these days do not work yet.")
	// Tested, it is ready at 18:00 and takes leaf until 21:12.
	s = dated(t, map[string]any{"/finish/steps/7/readyAt": "2027-04-05T18:00", "/days/freshPaint": map[string]string{"filmAge": "2"}})
	p, ok = saidAt(s, "/finish/steps/7/openHours")
	require.True(t, ok)
	assert.Contains(t, p.What, "it does so from Mon 5 Apr at 18:00, as tested, for 3 h 12 min")
}

// gilt is a plan of leaf alone on a plain ceiling of 14 × 12 ft.
func gilt(t *testing.T, size, days map[string]any) sheet.Sheet {
	t.Helper()
	step := map[string]any{"id": "size", "kind": "size", "name": "Slow size", "area": "surface", "spread": "600", "spreadUnit": "ft2/gal", "rate": "200"}
	for at, v := range size {
		step[at] = v
	}
	work := map[string]any{"start": "2027-03-01", "from": "08:00", "to": "18:00", "people": "1"}
	for at, v := range days {
		work[at] = v
	}
	return sheetOfTree(t, map[string]any{
		"ceilingwright": 1, "units": map[string]any{"show": "feet-inches", "bare": "in"},
		"room": map[string]any{"length": "14'", "width": "12'", "height": "10'"},
		"days": work,
		"finish": map[string]any{"steps": []any{step,
			map[string]any{"id": "leaf", "kind": "leaf", "name": "Leaf", "area": "surface", "rate": "20", "leaf": map[string]any{"metal": "gold", "length": "3 3/8 in", "width": "3 3/8 in", "lap": "1/8 in", "perBook": "25", "cover": "100"}},
		}},
	})
}

func TestSectionsKeepToWorkingHours(t *testing.T) {
	// 168 ft² at 20 ft²/h take 8 h 24 min. Size ready after 12 h and open for 10,
	// sized by 18:00, takes leaf from 06:00 to 16:00: from 08:00 on that is 8 h, so
	// two sections do it, on two mornings. Derived.
	slow := map[string]any{"tackHours": "12", "openHours": "10", "reserve": "0"}
	s := gilt(t, slow, nil)
	assert.Equal(t, "2", figures(s)["step.leaf.sections"].Value)
	assert.NotContains(t, s.Days.Text, "do not work")
	first, second := taskNamed(t, s, "step.leaf.s1"), taskNamed(t, s, "step.leaf.s2")
	assert.Equal(t, "08:00", first.From)
	assert.LessOrEqual(t, first.To, "16:00")
	assert.Less(t, first.Day, second.Day)
	p, ok := saidAt(s, "/finish/steps/0/openHours")
	require.True(t, ok)
	assert.Equal(t, problem.Note, p.Severity)
	assert.Contains(t, p.What, "at most 8 h are worked. So no more than 160.0 ft² are laid at a time.")
	assert.Equal(t, "Begin the day at 07:35 at the latest. Then 1 section does it.", p.Do)
	// What is said holds: begun then it is one section, five minutes later it is not.
	assert.Equal(t, "1", figures(gilt(t, slow, map[string]any{"from": "07:35"}))["step.leaf.sections"].Value)
	assert.Equal(t, "2", figures(gilt(t, slow, map[string]any{"from": "07:40"}))["step.leaf.sections"].Value)
	// A crew that comes late still lays it where it begins in time.
	assert.Contains(t, first.Reason, "The size takes leaf from 06:00 until 16:00, so begin by 11:48.", "84 ft² take 4 h 12 min")
	// One hand sizes ahead out of a reserve that is none: sections of 3 h less that.
	quick := map[string]any{"tackHours": "1", "openHours": "3", "reserve": "0", "gilders": "1"}
	s = gilt(t, quick, map[string]any{"to": "20:00"})
	assert.NotContains(t, s.Days.Text, "do not work")
	assert.Equal(t, "4", figures(s)["step.leaf.sections"].Value, "60 ft² in 3 h leave no time to size the next")
	s = gilt(t, quick, map[string]any{"to": "20:00", "people": "2"})
	assert.Equal(t, "3", figures(s)["step.leaf.sections"].Value, "a second hand sizes")
}

func TestOneSizeUnderTwoLeaves(t *testing.T) {
	size := map[string]any{"id": "size", "kind": "size", "name": "Size", "area": "surface", "spread": "600", "spreadUnit": "ft2/gal", "rate": "200", "tackHours": "12", "openHours": "10", "coats": "1", "loss": "0"}
	leaf := func(id, name, area string) map[string]any {
		return map[string]any{"id": id, "kind": "leaf", "name": name, "area": "typed", "typedArea": area, "typedUnit": "ft2", "rate": "20",
			"leaf": map[string]any{"metal": "gold", "length": "3 3/8 in", "width": "3 3/8 in", "lap": "1/8 in", "perBook": "25", "cover": "100"}}
	}
	plan := map[string]any{
		"ceilingwright": 1, "room": map[string]any{"length": "14 ft", "width": "12 ft", "height": "10 ft"},
		"days":   map[string]any{"start": "2027-03-01", "from": "06:00", "to": "18:00", "people": "1"},
		"finish": map[string]any{"steps": []any{size, leaf("gold", "Gold", "60"), leaf("silver", "Silver", "90")}},
	}
	s := sheetOfTree(t, plan)
	for _, p := range s.Problems {
		assert.NotContains(t, p.What, "No size is laid", "%v", p)
	}
	// 60 ft² in 3 h and 90 in 4½, both within the 8 h kept of one morning, each on size
	// of its own laid the evening before.
	one, two := taskNamed(t, s, "step.size.s1"), taskNamed(t, s, "step.size.s2")
	gold, silver := taskNamed(t, s, "step.gold.s1"), taskNamed(t, s, "step.silver.s1")
	assert.Equal(t, [2]string{"Size, section 1", "Size, section 2"}, [2]string{one.Name, two.Name})
	assert.Equal(t, one.Day, two.Day)
	assert.Equal(t, gold.Day, silver.Day)
	assert.NotEqual(t, one.Day, gold.Day)
	assert.Equal(t, gold.To, silver.From)
	assert.Contains(t, s.Steps[1].Sections[0].Text, gold.Day+" at "+gold.From)
	assert.Contains(t, s.Steps[2].Sections[0].Text, two.Day+" at "+two.From)
	assert.Contains(t, s.Steps[2].Sections[0].Text, silver.Day+" at "+silver.From)
	// Nothing before either leaf but other work: no size.
	plan["finish"].(map[string]any)["steps"] = []any{leaf("gold", "Gold", "60"), leaf("silver", "Silver", "90")}
	told := 0
	for _, p := range sheetOfTree(t, plan).Problems {
		if strings.Contains(p.What, "No size is laid") {
			told++
		}
	}
	assert.Equal(t, 2, told)
}

// Leaf alone, without a mask, is a job: all of it is worked out and nothing stops.
func TestAJobWithoutAMask(t *testing.T) {
	s := gilt(t, map[string]any{"tackHours": "12", "openHours": "10", "coats": "1", "loss": "0"}, nil)
	for _, p := range s.Problems {
		assert.False(t, p.Severity == problem.Stop && (strings.HasPrefix(p.At, "/mask") || strings.HasPrefix(p.At, "/seams") || strings.HasPrefix(p.At, "/setting")), "%v", p)
	}
	p, ok := saidAt(s, "/mask/length")
	require.True(t, ok, "it is asked for where it would stand")
	assert.Equal(t, problem.Note, p.Severity)
	for _, id := range []string{"room.area", "step.leaf.leaves", "step.size.product", "days.finish", "platform.height"} {
		assert.NotEmpty(t, figures(s)[id].Text, id)
	}
	// A size typed, a width that cannot be read, or a step through it: the mask is missing.
	for at, places := range map[string]map[string]any{
		"/mask/width":  {"/mask": map[string]any{"length": "10'"}},
		"/mask/length": {"/finish/steps/0/area": "mask"},
	} {
		plan := planNamed(t, "blank")
		plan = changed(t, plan, "/finish/steps", []any{map[string]any{"id": "a", "kind": "base", "area": "surface", "spread": "350"}})
		for place, v := range places {
			plan = changed(t, plan, place, v)
		}
		p, ok := saidAt(sheetOf(t, plan), at)
		require.True(t, ok, at)
		assert.Equal(t, problem.Stop, p.Severity, at)
	}
}

// Whatever the hours, leaf that can be laid in sections is.
func TestSectionsAreLaidWheneverThereIsTime(t *testing.T) {
	for _, tack := range []string{"0.25", "1", "3", "5", "8", "12", "17"} {
		for _, open := range []string{"1.5", "3", "6", "10", "24", ""} {
			for _, hours := range []map[string]any{{"from": "08:00", "to": "16:30", "pause": "30"}, {"from": "06:00", "to": "18:00", "people": "3"}, {"from": "09:00", "to": "13:00"}} {
				s := gilt(t, map[string]any{"tackHours": tack, "openHours": open}, hours)
				p, said := saidAt(s, "/finish/steps/0/openHours")
				if said && p.Severity == problem.Stop {
					assert.Contains(t, p.What, "cannot be laid while the size takes leaf", "%s %s %v", tack, open, hours)
					assert.Equal(t, 0.0, mostIn(tack, open, hours), "%s %s %v", tack, open, hours)
					continue
				}
				assert.NotContains(t, s.Days.Text, "do not work", "%s %s %v", tack, open, hours)
			}
		}
	}
}

// mostIn is how many minutes of the window can be worked, every five minutes of
// two days tried as the end of the sizing.
func mostIn(tack, open string, hours map[string]any) (most float64) {
	number := func(text string) float64 { x, _ := strconv.ParseFloat(text, 64); return 60 * x }
	clock := func(at string) float64 {
		h, m, _ := strings.Cut(hours[at].(string), ":")
		return number(h) + number(m)/60
	}
	opens := 0.8 * number(open)
	if open == "" {
		opens = 0.8 * 1440
	}
	for end := clock("from") + 5; end <= clock("to"); end += 5 {
		for day := 0.0; day < 3; day++ {
			from, to := max(end+number(tack), 1440*day+clock("from")), min(end+number(tack)+opens, 1440*day+clock("to"))
			most = max(most, to-from)
		}
	}
	return most
}

func TestLargestPanelIsRefusedWithWhatHelps(t *testing.T) {
	s := dated(t, map[string]any{"/finish/steps/8/rate": "0.5", "/finish/steps/7/gilders": "1"})
	p, ok := saidAt(s, "/finish/steps/7/openHours")
	require.True(t, ok)
	assert.Contains(t, p.What, "The largest panel takes 5.928 hours to lay, and the size leaves 3.2.")
	assert.Equal(t, "Use a size that stays open for 7.41 hours, or one gilder more.", p.Do)
}

func TestNightOfTheClocksIsAnHourShorter(t *testing.T) {
	// Dry in 16 h after a coat on a Saturday in March: with the clocks put on in the
	// night it may begin an hour later by the clock.
	places := map[string]any{
		"/days/start": "2027-03-27", "/days/weekdays": []string{"sat", "sun", "mon"}, "/days/off": []string{}, "/days/freshPaint": nil,
		"/finish/steps/1/recoatHours": "20",
	}
	with := taskNamed(t, dated(t, places), "step.base.2")
	places["/days/clockChanges"] = []string{}
	without := taskNamed(t, dated(t, places), "step.base.2")
	assert.Equal(t, "2027-03-28T08:55", with.Start)
	assert.Equal(t, "2027-03-28T08:00", without.Start)
}

func TestFreshPaintHoldsTheMaskBack(t *testing.T) {
	s := dated(t, map[string]any{"/days/freshPaint": map[string]string{"doneOn": "2027-03-20", "filmAge": "14"}})
	hang := taskNamed(t, s, "layer.L1.hang")
	assert.Equal(t, "2027-04-05T15:50", hang.Start, "14 days after the second base coat of 22 March at 15:50")
	s = dated(t, map[string]any{"/days/freshPaint": map[string]string{"doneOn": "2027-04-01 09:00", "filmAge": "14"}})
	assert.Equal(t, "2027-04-15T09:00", taskNamed(t, s, "layer.L1.hang").Start)
}

func TestSectionsFollowThePanels(t *testing.T) {
	s := dated(t, nil)
	i := slices.IndexFunc(s.Steps, func(step sheet.Step) bool { return step.ID == "leaf" })
	sections := s.Steps[i].Sections
	require.Len(t, sections, 2)
	assert.Equal(t, []string{"A1", "A2", "B1", "B2", "C1", "C2"}, sections[0].Panels)
	assert.Equal(t, "2", figures(s)["step.leaf.sections"].Value)
	for _, section := range sections {
		assert.NotEmpty(t, section.SizeAt)
		assert.Contains(t, section.Text, section.LayFrom)
	}
	assert.True(t, slices.ContainsFunc(s.Drawings, func(d sheet.Drawing) bool {
		return d.ID == "step.leaf.sections" && d.Shows == "sections" && d.Layer == "L2" && d.Looking == "up"
	}))
	// Without days the times are told from the first leaf.
	s = dated(t, map[string]any{"/days": nil})
	assert.Equal(t, "3 h before the first leaf", s.Steps[i].Sections[0].SizeAt)
	assert.Equal(t, "the start", s.Steps[i].Sections[0].LayFrom)
}

func TestPriceOfTheDays(t *testing.T) {
	plan := tree(t, planNamed(t, "priced"))
	plan["days"] = tree(t, planNamed(t, "days"))["days"]
	price := plan["price"].(map[string]any)
	price["hirePerDay"], price["travelPerDay"], price["travelDays"] = "40", "15", ""
	s := sheetOfTree(t, plan)
	line := func(what string) sheet.PriceLine {
		i := slices.IndexFunc(s.Price.Lines, func(l sheet.PriceLine) bool { return l.What == what })
		require.GreaterOrEqual(t, i, 0, what)
		return s.Price.Lines[i]
	}
	all := 0.0
	for _, id := range []string{"days.working", "days.waiting"} {
		all += value(t, s, id)
	}
	assert.True(t, strings.HasPrefix(line("Travel").Amount, figures(s)["days.working"].Value+" "), line("Travel").Amount)
	assert.NotEmpty(t, line("Platform, first day to last").Amount)
	assert.True(t, strings.HasPrefix(line("Touch up").Amount, "2"), line("Touch up").Amount)
	assert.Positive(t, all)

	w := whatIf(t, s, "One person more")
	plan["days"].(map[string]any)["people"] = "3"
	more := sheetOfTree(t, plan)
	assert.Equal(t, text(t, more, "price.total"), w.Sum)
	plan["days"].(map[string]any)["people"] = "2"

	w = whatIf(t, s, "One layer less")
	mask := plan["mask"].(map[string]any)
	mask["layers"] = mask["layers"].([]any)[:1]
	without(plan, func(step map[string]any) bool { return step["layer"] == "L2" })
	assert.Equal(t, text(t, sheetOfTree(t, plan), "price.total"), w.Sum)
	assert.True(t, decimal.RequireFromString(figures(s)["price.total"].Value).IsPositive())
}

func TestCalendarOfAPlan(t *testing.T) {
	const stamp = "20270102T030405Z"
	got := string(core.Calendar(planNamed(t, "days"), stamp))
	assert.Equal(t, got, string(core.Calendar(planNamed(t, "days"), stamp)), "the same bytes")
	s := dated(t, nil)
	assert.Equal(t, len(s.Days.Tasks)+2, strings.Count(got, "BEGIN:VEVENT"), "work, all that is waited for, and two windows for leaf")
	unfolded := strings.ReplaceAll(got, "\r\n ", "")
	for name, times := range map[string][2]string{
		"Base coat\\, coat 1 of 2 dries":                   {"step.base.2.wait", ""},
		"Size\\, section 1 comes to tack":                  {"step.leaf.s1.wait", ""},
		"The size takes leaf: Imitation leaf\\, section 1": {"", "20270402T111000 20270402T142200"},
	} {
		i := strings.Index(unfolded, ": "+name+"\r\n")
		if !assert.Positive(t, i, name) {
			continue
		}
		event := unfolded[strings.LastIndex(unfolded[:i], "BEGIN:VEVENT"):]
		event = event[:strings.Index(event, "END:VEVENT")]
		assert.Contains(t, event, "TRANSP:TRANSPARENT", "it keeps nobody busy")
		from, to, _ := strings.Cut(times[1], " ")
		if times[0] != "" {
			task := taskNamed(t, s, times[0])
			bare := strings.NewReplacer("-", "", ":", "")
			from, to = bare.Replace(task.Start)+"00", bare.Replace(task.End)+"00"
		}
		assert.Contains(t, event, "DTSTART:"+from+"\r\nDTEND:"+to+"\r\n")
	}
	assert.Contains(t, got, "DTSTART;VALUE=DATE:20270322\r\nDTEND;VALUE=DATE:20270325\r\n")
	assert.Empty(t, core.Calendar(planNamed(t, "full"), stamp))
	assert.Empty(t, core.Calendar(planNamed(t, "days"), "today"))
	assert.Empty(t, core.Calendar([]byte("no plan"), stamp))
}

func TestSizeTestedOnTheJob(t *testing.T) {
	// An icon painter's notes of August 2012: leaf laid too early on size of 12 hours
	// went dull.
	ready := "/finish/steps/7/readyAt"
	before := dated(t, nil)
	leaf := taskNamed(t, before, "step.leaf.s1")
	sized := taskNamed(t, before, "step.size.s1")
	s := dated(t, map[string]any{ready: leaf.Start[:11] + "16:00"})
	assert.Contains(t, taskNamed(t, s, "step.leaf.s1").Reason, "Tested on the job, the size takes leaf from 16:00")
	_, ok := saidAt(s, ready)
	assert.False(t, ok, "later than the label is no fault")
	s = dated(t, map[string]any{ready: "2027-03-22T08:00"})
	p, ok := saidAt(s, ready)
	require.True(t, ok)
	assert.Equal(t, problem.Stop, p.Severity)
	assert.Contains(t, p.What, "cannot be ready at Mon 22 Mar at 08:00")
	assert.Equal(t, leaf.Start, taskNamed(t, s, "step.leaf.s1").Start, "the label counts")
	s = dated(t, map[string]any{ready: sized.End, "/finish/steps/7/tackHours": "200"})
	if p, ok = saidAt(s, ready); assert.True(t, ok) {
		assert.Contains(t, p.What, "it is too early by ")
	}
	s = dated(t, map[string]any{ready: "this morning"})
	p, ok = saidAt(s, ready)
	require.True(t, ok)
	assert.Equal(t, "There is no such date and time.", p.What)
}

// The days are what a plan with them takes longer than the same without.
func BenchmarkCalendar(b *testing.B) {
	text, err := os.ReadFile("../testdata/plans/v1/days.json")
	require.NoError(b, err)
	var without map[string]any
	require.NoError(b, json.Unmarshal(text, &without))
	without["days"] = nil
	plain, err := json.Marshal(without)
	require.NoError(b, err)
	for name, plan := range map[string][]byte{"with days": text, "without": plain} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				core.Compute(plan)
			}
		})
	}
}

func TestSizeWithoutAClosingTimeIsOpenUntilDust(t *testing.T) {
	// Two gilders' notes on water size: ready in 10 to 15 min, open until dust
	// settles. A day is counted, a fifth of it kept back: 0.25 h after 08:15, and
	// 19 h 12 min from then. (The day is common practice, no source.)
	s := dated(t, map[string]any{"/finish/steps/7/tackHours": "0.25", "/finish/steps/7/openHours": "", "/finish/steps/8/rate": "20"})
	size, leaf := taskNamed(t, s, "step.size.s1"), taskNamed(t, s, "step.leaf.s1")
	assert.LessOrEqual(t, size.End, leaf.Start)
	assert.Contains(t, leaf.Reason, "and stays open; dust is the limit, counted at ")
	assert.NotContains(t, leaf.Reason, " until ")
	p, ok := saidAt(s, "/finish/steps/7/openHours")
	require.True(t, ok)
	assert.Contains(t, p.What, "dust")
}

// A day is not opened for ten minutes of what could have been done the day before.
func TestNoDayForTenMinutes(t *testing.T) {
	sheets := []sheet.Sheet{sheetNamed(t, "days"), sheetNamed(t, "mixes")}
	for _, people := range []string{"1", "3", "4"} {
		for _, rate := range []string{"30", "40", "55", "80", "100"} {
			sheets = append(sheets, dated(t, map[string]any{"/days/people": people, "/finish/steps/1/rate": rate}))
		}
	}
	over := 0
	for _, s := range sheets {
		onDay, reason := map[string]time.Duration{}, map[string]string{}
		for _, task := range s.Days.Tasks {
			if task.Kind != "work" {
				continue
			}
			from, err := time.Parse("2006-01-02T15:04", task.Start)
			require.NoError(t, err)
			to, err := time.Parse("2006-01-02T15:04", task.End)
			require.NoError(t, err)
			if onDay[task.Day] += to.Sub(from); reason[task.Day] == "" {
				reason[task.Day] = task.Reason
			}
			if strings.Contains(task.Reason, "so that nobody comes back for it") {
				over++
			}
		}
		for day, worked := range onDay {
			if worked <= 10*time.Minute {
				assert.False(t, strings.HasPrefix(reason[day], "Follows") || strings.HasPrefix(reason[day], "Goes on"), "%s: %v, %s", day, worked, reason[day])
			}
		}
	}
	assert.Positive(t, over)
}

// With more people a coat is done sooner, and where it is not the sheet says why.
func TestFourPaintersShareACoat(t *testing.T) {
	two, four := dated(t, nil), dated(t, map[string]any{"/days/people": "4"})
	assert.Equal(t, "2 people, 51 min each", taskNamed(t, two, "step.base.1").Labour)
	assert.NotContains(t, taskNamed(t, two, "step.base.1").Reason, "half an hour")
	base := taskNamed(t, four, "step.base.1")
	assert.Equal(t, "3 people, 34 min each", base.Labour, "102 min of one person; shared by four each would have 26")
	assert.Contains(t, base.Reason, "Shared by more, each would have less than half an hour.")
	assert.Contains(t, taskNamed(t, four, "layer.L1.hang").Reason, "Two hold a panel; nobody else has a hand in it.")
	assert.Contains(t, taskNamed(t, four, "layer.L1.mark").Reason, "Two hold a line.")
	assert.Less(t, four.Days.Finish, two.Days.Finish)
	for _, save := range dated(t, map[string]any{"/days/people": "60"}).Days.Saves {
		if strings.HasPrefix(save, "One person more saves nothing") {
			assert.Contains(t, save, "or work that no more can share")
		}
	}
}

// Whatever the plan leaves out, the calendar does what the sheet advises.
func TestTheMaskIsNotHungOnPaintOfADay(t *testing.T) {
	for _, fresh := range []any{nil, map[string]string{"doneOn": "2027-03-21"}} {
		s := dated(t, map[string]any{"/days/freshPaint": fresh})
		for _, p := range s.Problems {
			assert.False(t, p.Severity == problem.Stop && strings.HasPrefix(p.At, "/finish/steps"), "%v", p)
		}
		base, hang := taskNamed(t, s, "step.base.2"), taskNamed(t, s, "layer.L1.hang")
		assert.GreaterOrEqual(t, hang.Start, "2027-03-23T"+base.To, "a day after %s", base.End)
	}
	s := dated(t, map[string]any{"/days/freshPaint": map[string]string{"filmAge": "0"}})
	p, ok := saidAt(s, "/finish/steps/1")
	require.True(t, ok)
	assert.Equal(t, problem.Stop, p.Severity, "who writes none is told")
}

func TestWhatSaves(t *testing.T) {
	s := dated(t, nil)
	require.Len(t, s.Days.Saves, 3)
	for i, what := range []string{"One person more: ", "One hour more a day", "Saturdays too: "} {
		assert.True(t, strings.HasPrefix(s.Days.Saves[i], what), s.Days.Saves[i])
	}
	// What is said of Saturdays is what the days are with them.
	with := dated(t, map[string]any{"/days/weekdays": []string{"mon", "tue", "wed", "thu", "fri", "sat"}})
	assert.Contains(t, s.Days.Saves[2], "done on "+figures(with)["days.finish"].Text[:len("Fri 2 Apr")])
	assert.Len(t, with.Days.Saves, 2)
}

func chartOf(t *testing.T, s sheet.Sheet) string {
	t.Helper()
	i := slices.IndexFunc(s.Drawings, func(d sheet.Drawing) bool { return d.ID == "days" })
	require.GreaterOrEqual(t, i, 0)
	return s.Drawings[i].SVG
}

func TestChartOfALongJobIsRuledByWeeks(t *testing.T) {
	s := dated(t, map[string]any{"/days/freshPaint": map[string]string{"doneOn": "2027-03-20", "filmAge": "21"}, "/days/off": []string{}})
	first, last := s.Days.Start[:10], s.Days.Finish[:10]
	require.Equal(t, [2]string{"2027-03-22", "2027-05-10"}, [2]string{first, last}, "eight Mondays")
	chart := chartOf(t, s)
	assert.Equal(t, 8, strings.Count(chart, "class='cw-dimension'"))
	for _, date := range []string{">Mon 22 Mar<", ">Mon 29 Mar<", ">Mon 3 May<"} {
		assert.Contains(t, chart, date)
	}
	assert.NotContains(t, chart, ">23<", "too many days to number each")
	assert.NotContains(t, chart, ">Mon 10 May<", "it would run past the edge")
	assert.Contains(t, chartOf(t, dated(t, nil)), ">23<")
}

// A coat is not broken off: it waits for the end of the pause, or is done through
// it, and the sheet says so. The day from 08:00 to 16:30 with 30 minutes of pause
// has it at 12:00.
func TestThePauseMovesACoat(t *testing.T) {
	hours := map[string]any{"/days/from": "08:00", "/days/to": "16:30", "/days/pause": "30", "/days/people": "1", "/days/rates/protect": "1"}
	after, through := 0, 0
	for _, rate := range []string{"40", "60", "80", "150"} {
		hours["/finish/steps/1/rate"] = rate
		for _, task := range dated(t, hours).Days.Tasks {
			switch {
			case strings.Contains(task.Reason, "so it begins after it"):
				assert.Equal(t, "12:30", task.From, task.ID)
				after++
			case strings.Contains(task.Reason, "which comes after it"):
				assert.True(t, task.From < "12:00" && task.To > "12:00", task.ID)
				through++
			}
		}
	}
	assert.Positive(t, after)
	assert.Positive(t, through)
}
