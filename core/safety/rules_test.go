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

// quietJob fires only the rules that always fire: a new, smooth, low ceiling
// without a light, worked on from the floor with nothing that gives off solvent.
func quietJob() Job {
	return Job{
		Country: US, Year: 2010, Textured: No, Lead: NoLeadTest, Pull: PaintHeld,
		CeilingHeight: 200 * cm,
		Fixture:       No, Access: Floor, Crew: []measure.Length{170 * cm},
		MaskArea: measure.Area{SquareMetres: number("16")}, OverheadHours: fact("1"),
		Job: air.Job{RoomVolume: measure.Volume{Litres: number("90000")},
			Air: air.Plan{Limit: fact("350"), Opened: fact("4"), Shut: fact("0.4"), Mixing: fact("3")}},
		Building: Building{Detectors: No, Sprinklers: No, Fixings: No},
	}
}

var always = []string{"eyes-overhead", "loose-sheets", "overhead-breaks", "planning-help-only"}

type change func(*Job)

func all(changes ...change) change {
	return func(j *Job) {
		for _, c := range changes {
			c(j)
		}
	}
}

// deckAt raises the ceiling so that a fitter of 1.70 m is best served by a deck
// just so high.
func deckAt(height measure.Length) change {
	return func(j *Job) {
		j.CeilingHeight, j.Access, j.Rails, j.Base = height+187*cm, Platform, Yes, 10*measure.Metre
	}
}
func in(country Country) change          { return func(j *Job) { j.Country = country } }
func from(access Access) change          { return func(j *Job) { j.Access = access } }
func rails(answer Answer) change         { return func(j *Job) { j.Rails = answer } }
func base(length measure.Length) change  { return func(j *Job) { j.Base = length } }
func built(year int) change              { return func(j *Job) { j.Year = year } }
func textured(answer Answer) change      { return func(j *Job) { j.Textured = answer } }
func light(answer Answer) change         { return func(j *Job) { j.Fixture = answer } }
func lead(result LeadTest) change        { return func(j *Job) { j.Lead = result } }
func pull(result PullTest) change        { return func(j *Job) { j.Pull = result } }
func leaf(metals ...Metal) change        { return func(j *Job) { j.Leaf = metals } }
func overhead(hours measure.Fact) change { return func(j *Job) { j.OverheadHours = hours } }
func opened(changes measure.Fact) change { return func(j *Job) { j.Air.Opened = changes } }
func masked(area measure.Number) change {
	return func(j *Job) { j.MaskArea.SquareMetres = area }
}

// paints adds a step that dries in 8 h and is wet at once. Its average over 8 h
// is 9.0883e-4 g/m³ for each gram of solvent, worked by hand below.
func paints(binder air.Binder, litres, voc string) change {
	return func(j *Job) {
		j.Products = append(j.Products, air.Product{
			At: "/finish/steps/4", StepName: "Glaze", Litres: fact(litres), VOC: fact(voc),
			Binder: binder, Coats: 1, DryHours: fact("8"),
		})
	}
}

func product(p air.Product) change { return func(j *Job) { j.Products = append(j.Products, p) } }

var sixSquareFeet = measure.SquareFoot.Mul(number("6"))

// ruleCase is a rule with a job that fires it and the nearest that does not; the
// always firing ones have no second.
type ruleCase struct {
	id           string
	fires, stays change
}

// ruleCases are the cases of all rules, one file for each part of the table.
// Thresholds are tried on both sides.
func ruleCases() []ruleCase { return slices.Concat(accessCases, airCases, buildingCases) }

func ids[N interface{ id() string }](notes []N) []string {
	list := make([]string, len(notes))
	for i, note := range notes {
		list[i] = note.id()
	}
	return list
}

func (n Note) id() string { return n.ID }

// read is a note as it is read.
type read struct {
	Note
	Words, Working, Decides string
}

func readIn(n Note, style words.Style) read {
	return read{n, n.Words.In(style), n.Working.In(style), n.Decides.In(style)}
}

// Notes are all rules that fire, each as a note of its own: what Tell tells
// together or asks for is seen here row by row.
func Notes(job Job, style words.Style) []read {
	f := factsOf(job)
	var notes []read
	for _, r := range inOrder(f.fired()) {
		notes = append(notes, readIn(r.note(f), style))
	}
	return notes
}

func notesAfter(c change) []read {
	job := quietJob()
	c(&job)
	return Notes(job, words.Style{Country: job.Country})
}

func TestEveryRuleOnBothSides(t *testing.T) {
	tried := map[string]bool{}
	for i, row := range ruleCases() {
		tried[row.id] = true
		assert.Contains(t, ids(notesAfter(row.fires)), row.id, "case %d", i)
		if row.stays == nil {
			assert.Contains(t, always, row.id)
			continue
		}
		assert.NotContains(t, ids(notesAfter(row.stays)), row.id, "case %d", i)
	}
	for _, r := range rules() {
		assert.True(t, tried[r.id], "no case for rule %s", r.id)
		delete(tried, r.id)
	}
	assert.Empty(t, tried, "cases for rules that are not in the table, or twice in it")
}

func TestQuietJobIsQuiet(t *testing.T) {
	notes := ids(Notes(quietJob(), words.Style{}))
	slices.Sort(notes)
	assert.Equal(t, always, notes)
}

// An empty job is the least safe of all, and is answered in full.
func TestNotesOfNothingKnown(t *testing.T) {
	notes := Notes(Job{}, words.Style{})
	for _, id := range []string{"deck-height-not-known", "country-not-known", "isolate-the-light", "asbestos-to-1980",
		"lead-certified-firm", "overhead-hours-not-known"} {
		assert.Contains(t, ids(notes), id)
	}
	assert.NotContains(t, ids(notes), "pull-test-first")
	assert.NotContains(t, ids(notes), "patch-test-old-paint")
}

func TestNotesOrder(t *testing.T) {
	notes := notesAfter(all(deckAt(4*measure.Metre), rails(No), base(50*cm), built(0), textured(""), light(Yes), pull(""),
		in(""), paints(air.DryingOil, "3", "400"), leaf(Imitation), overhead(fact("6"))))
	table := rules()
	position := func(id string) int {
		return slices.IndexFunc(table, func(r *rule) bool { return r.id == id })
	}
	for i := 1; i < len(notes); i++ {
		before, after := notes[i-1], notes[i]
		require.LessOrEqual(t, rank(before.Severity), rank(after.Severity))
		if before.Severity == after.Severity {
			require.Less(t, position(before.ID), position(after.ID))
		}
	}
	assert.Equal(t, problem.Stop, notes[0].Severity)
	assert.Equal(t, notes, notesAfter(all(deckAt(4*measure.Metre), rails(No), base(50*cm), built(0), textured(""), light(Yes), pull(""),
		in(""), paints(air.DryingOil, "3", "400"), leaf(Imitation), overhead(fact("6")))), "the same job, the same notes")
}

// Where the country is not known the strictest rule of a subject is told, and
// only that one.
func TestStrictestWhereCountryIsNotKnown(t *testing.T) {
	for _, row := range []struct {
		change change
		told   string
		silent []string
	}{
		{all(deckAt(250*cm), rails(No)), "rails-from-2-m", []string{"rails-above-4-ft", "rails-any-height", "rails-above-10-ft"}},
		{all(deckAt(4*measure.Metre), rails(No)), "rails-above-10-ft", []string{"rails-from-2-m", "rails-above-4-ft"}},
		{all(deckAt(190*cm), base(90*cm)), "base-too-narrow", []string{"base-check-table"}},
		{built(1931), "lead-certified-firm", []string{"lead-test-first", "lead-small-job"}},
		{all(built(1931), masked(sixSquareFeet)), "lead-test-first", []string{"lead-certified-firm", "lead-small-job"}},
		{all(built(1931), lead(LeadFound)), "lead-found", []string{"lead-certified-firm", "lead-test-first"}},
		{all(built(1970), textured(Yes)), "asbestos-to-1980", []string{"asbestos-before-2000"}},
	} {
		for _, country := range []Country{"", Other, "somewhere"} {
			told := ids(notesAfter(all(in(country), row.change)))
			assert.Contains(t, told, row.told)
			for _, id := range row.silent {
				assert.NotContains(t, told, id)
			}
		}
	}
}

// Every note that any case raises is whole: words without a hole, a last word
// that leaves the decision to others, a source, a place.
func TestNotesAreWhole(t *testing.T) {
	seen := 0
	for _, row := range ruleCases() {
		for _, note := range notesAfter(row.fires) {
			seen++
			assert.NotContains(t, note.Words, "{")
			assert.NotContains(t, note.Words, "  ", "an amount is missing in %s: %s", note.ID, note.Words)
			assert.NotContains(t, note.Words, " .", note.ID)
			assert.NotContains(t, note.Words, " ,", note.ID)
			assert.True(t, strings.HasSuffix(note.Decides, " decide.") || strings.HasSuffix(note.Decides, " decides."), note.ID)
			assert.NotEmpty(t, note.Source)
			assert.NotEmpty(t, note.Jurisdiction)
			assert.True(t, note.At == "" || strings.HasPrefix(note.At, "/"), note.At)
			if strings.Contains(note.Words, "mg/m³") {
				assert.Contains(t, note.Words, "screening figure", note.ID)
			}
		}
	}
	assert.Greater(t, seen, 300)
}

// Every word in braces in the table is one that is known.
func TestEveryAmountIsKnown(t *testing.T) {
	job := quietJob()
	all(deckAt(4*measure.Metre), paints(air.DryingOil, "3", "400"), product(air.Product{StepName: "Size"}), overhead(fact("6")), leaf(Copper),
		sprayed(air.TwoPack), thinned(air.Solvent, "0.1"), counts(air.MattCeiling, air.Water, "900", lessWater, func(p *air.Product) { p.Unsplit = true }))(&job)
	f, found := factsOf(job), 0
	for _, r := range rules() {
		rest := r.words + r.working + r.adds + r.asks + r.decides + r.source
		for {
			_, after, more := strings.Cut(rest, "{")
			if !more {
				break
			}
			name, tail, closed := strings.Cut(after, "}")
			require.True(t, closed, r.id)
			if word, ok := strings.CutPrefix(name, "~"); ok {
				assert.True(t, words.Differs(word), "%s in %s", name, r.id)
			} else {
				assert.NotNil(t, f.amount(name), "%s in %s", name, r.id)
			}
			rest, found = tail, found+1
		}
	}
	assert.Greater(t, found, 30)
	assert.Nil(t, f.amount("no such amount"))
}

func find(t *testing.T, notes []read, id string) read {
	t.Helper()
	i := slices.IndexFunc(notes, func(n read) bool { return n.ID == id })
	require.GreaterOrEqual(t, i, 0, "no note %s", id)
	return notes[i]
}

// inFeet is the style of a tape in feet and inches.
var inFeet = words.Style{Notation: measure.Notation{System: measure.FeetInches}}

func TestWordsFollowTheStyle(t *testing.T) {
	job := quietJob()
	all(deckAt(250*cm), base(50*cm))(&job)
	metric := find(t, Notes(job, words.Style{}), "base-too-narrow")
	// 2.50 + 1.10 m = 3.60 m, at 4 to 1 a base of 0.90 m.
	assert.Contains(t, metric.Words, "is 3600 mm high, more than 4 times its base of 500 mm")
	assert.Contains(t, metric.Words, "at least 900 mm")
	assert.Equal(t, "US", metric.Jurisdiction)
	assert.Equal(t, "/access/base", metric.At)
	assert.Equal(t, []string{"platform.height", "platform.base"}, metric.Figures)

	notes := Notes(job, inFeet)
	// 98.43 in to the nearest 2 in; 35.43 in up to the next 2 in.
	assert.Contains(t, find(t, notes, "deck-height").Words, "about 8′ 2″ above the floor")
	assert.Contains(t, find(t, notes, "base-too-narrow").Words, "at least 3′ 0″")

	all(paints(air.Solvent, "2", "300"), built(1950))(&job)
	notes = Notes(job, inFeet)
	assert.Contains(t, find(t, notes, "lead-certified-firm").Words, "over 172.2 ft², and in a home a small job may disturb 6.0 ft²")
	assert.Regexp(t, `at least [0-9.]+ air changes an hour \([0-9]+ cfm`, find(t, notes, "air-over-limit").Words)
	// 600 g × 9.0883e-4.
	assert.Contains(t, find(t, notes, "air-over-limit").Words, "545 mg/m³")
}

func TestPlacesOfSteps(t *testing.T) {
	notes := notesAfter(all(paints(air.Water, "1", "10"), product(air.Product{At: "/finish/steps/7", StepName: "Oil {limit} size", Litres: fact("1"), VOC: fact("1"), DryHours: fact("1")})))
	assert.Equal(t, "/finish/steps/7/binder", find(t, notes, "binder-not-known").At)
	assert.Contains(t, find(t, notes, "binder-not-known").Words, "Oil {limit} size", "what a person typed is never searched for amounts")
	nameless := notesAfter(product(air.Product{At: "/finish/steps/2", Binder: air.DryingOil}))
	assert.Contains(t, find(t, nameless, "oily-rags").Words, "a step without a name")
	assert.Equal(t, "/finish/steps/2", find(t, nameless, "oily-rags").At)
}

func TestHoursAndMinutes(t *testing.T) {
	for hours, text := range map[string]string{"0.5": "30 min", "1": "1 h", "2.25": "2 h 15 min", "0.001": "1 min", "48": "48 h"} {
		assert.Equal(t, text, air.Hours(number(hours)).In(words.Style{}))
	}
}

// Changing what was answered does not change the next answer.
func TestNotesAreTheirOwn(t *testing.T) {
	job := quietJob()
	deckAt(4 * measure.Metre)(&job)
	find(t, Notes(job, words.Style{}), "deck-height").Figures[0] = "spoilt"
	assert.Equal(t, "platform.height", find(t, Notes(job, words.Style{}), "deck-height").Figures[0])
}

func number(text string) measure.Number { return measure.MustNumber(text) }

func fact(text string) measure.Fact { return measure.FactOf(number(text)) }
