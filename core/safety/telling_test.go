package safety

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

func toldAfter(c change) Told {
	job := quietJob()
	c(&job)
	return Tell(job)
}

// Every rule that fires is told, asked for, or part of another note, and once.
func TestNothingThatFiresIsLost(t *testing.T) {
	for _, row := range ruleCases() {
		job := quietJob()
		row.fires(&job)
		told := Tell(job)
		seen := map[string]int{}
		for _, n := range told.Notes {
			for _, id := range append([]string{n.ID}, n.Also...) {
				seen[id]++
			}
		}
		asked := map[string]int{}
		for _, q := range told.FindOut {
			for _, id := range q.Rules {
				asked[id]++
			}
		}
		f := factsOf(job)
		for _, r := range f.fired() {
			stopLeads := slices.ContainsFunc(told.Notes, func(n Note) bool { return n.Severity == problem.Stop && n.At == r.place(f) })
			if r.asking(f) && r.with == "" {
				assert.Zero(t, seen[r.id], "%s asks, and is told as well", r.id)
				assert.True(t, asked[r.id] == 1 || stopLeads, "%s is not asked for", r.id)
				continue
			}
			assert.Equal(t, 1, seen[r.id], r.id)
		}
	}
}

// How a row says it is told holds together.
func TestHowRowsAreTold(t *testing.T) {
	for _, r := range rules() {
		assert.True(t, !r.onDemand || r.severity == problem.Note, "%s is more than a note, and on demand", r.id)
		assert.True(t, r.adds == "" || r.with != "", "%s adds to nothing", r.id)
		assert.True(t, r.with == "" || r.severity != problem.Stop || r.adds != "", "%s is a stop that would be lost behind another", r.id)
		assert.True(t, r.adds == "" || strings.HasSuffix(r.adds, "."), r.id)
		assert.True(t, r.unknown == nil || r.asks != "", r.id)
		if r.asks == "" {
			continue
		}
		assert.True(t, strings.HasSuffix(r.asks, "?"), r.id)
		assert.LessOrEqual(t, len(strings.Fields(r.asks)), 16, "too long a question: %s", r.asks)
		assert.True(t, r.at != "" || r.atStep != nil, "%s asks for no blank", r.id)
	}
}

// Nobody is asked for one blank twice, and a stop that leads to it asks for it.
func TestOneBlankOneQuestion(t *testing.T) {
	for _, row := range ruleCases() {
		told := toldAfter(row.fires)
		seen := map[string]bool{}
		for _, q := range told.FindOut {
			assert.False(t, seen[q.At], "%s twice", q.At)
			seen[q.At] = true
			assert.NotContains(t, q.Words.String(), "{")
		}
		for _, n := range told.Notes {
			assert.True(t, n.Severity != problem.Stop || !seen[n.At], "%s stops and is asked for", n.At)
		}
	}
}

// Rules of one name are one note, the most severe first, and none of what lies
// behind them is lost.
func TestRulesToldTogether(t *testing.T) {
	rows := []*rule{
		{id: "a", severity: problem.Note, with: "x", adds: "Do a.", words: "Do a, since.", source: "A 1.", decides: code, figures: []string{"f", "g"}, onDemand: true},
		{id: "b", severity: problem.Stop, with: "x", adds: "Do b.", words: "Do b, since.", source: "B 1.", decides: maker, figures: []string{"f"}, bites: []Block{Hanging}, where: inUS},
		{id: "c", severity: problem.Note, words: "Do c.", source: "C 1.", decides: code, onDemand: true},
	}
	var told Told
	for _, r := range inOrder(rows) {
		if r.with == "" || !told.join(r, &facts{}) {
			told.Notes = append(told.Notes, r.note(&facts{}))
		}
	}
	require.Equal(t, []string{"b", "c"}, ids(told.Notes))
	n := readIn(told.Notes[0], words.Style{})
	assert.Equal(t, []string{"a"}, n.Also)
	assert.Equal(t, problem.Stop, n.Severity)
	assert.Equal(t, "Do b, since. Do a.", n.Words)
	assert.Equal(t, "B 1. A 1.", n.Source.String())
	assert.Equal(t, maker+" "+code, n.Decides)
	assert.Equal(t, "all", n.Jurisdiction)
	assert.Equal(t, []string{"f", "g"}, n.Figures)
	assert.Equal(t, []Block{Hanging}, n.Bites)
	assert.False(t, n.OnDemand)
	assert.True(t, told.Notes[1].OnDemand)
}

// Before anything of the job is typed only what this sheet is is told; whose rules
// are read is no part of the job.
func TestNothingTypedNothingNags(t *testing.T) {
	for _, job := range []Job{{}, {Country: US}, {Country: Other, Fixture: Yes, Textured: No, Lead: NoLeadTest, Pull: NoPullTest, Access: Platform}} {
		told := Tell(job)
		assert.Equal(t, []string{standing}, ids(told.Notes))
		assert.Empty(t, told.FindOut)
	}
	for _, begun := range []change{
		func(j *Job) { j.CeilingHeight = measure.Metre }, masked(number("1")), built(1931), textured(Yes), lead(LeadFound), pull(Lifted), from(Ladder),
		paints(air.Water, "1", "10"), leaf(Gold), wheels(No), below(Yes), func(j *Job) { j.Asbestos = AsbestosFound },
	} {
		var job Job
		begun(&job)
		assert.Greater(t, len(Tell(job).Notes), 1)
	}
}

// 38 in is 965.2 mm and 45 in 1143 mm, 4 m is 13 ft 1 in and a half: said in whole
// steps, none is said less safe than it is.
func TestLimitsInWholeSteps(t *testing.T) {
	metric := words.Style{}
	for _, row := range []struct {
		name         string
		inch, millis string
	}{
		{"38 in", "3′ 2″", "970 mm"}, {"45 in", "3′ 9″", "1140 mm"}, {"950 mm", "3′ 2″", "950 mm"}, {"470 mm", "1′ 6″", "470 mm"},
		{"18 in", "1′ 6″", "460 mm"}, {"600 mm", "2′ 0″", "600 mm"}, {"4 m", "13′ 1″", "4000 mm"}, {"10 ft", "10′ 0″", "3040 mm"},
		{"3 ft", "3′ 0″", "920 mm"}, {"1 m", "3′ 4″", "1000 mm"}, {"2 ft", "2′ 0″", "600 mm"}, {"14 in", "1′ 2″", "350 mm"}, {"2 m", "6′ 6″", "2000 mm"},
	} {
		f := &facts{}
		assert.Equal(t, row.inch, f.accessAmount(row.name).In(inFeet), row.name)
		assert.Equal(t, row.millis, f.accessAmount(row.name).In(metric), row.name)
	}
}
