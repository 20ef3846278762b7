package safety

import (
	"strings"

	"ceilingwright/core/days"
	"ceilingwright/core/job/hazards"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// overhead is how long one person has the hands above the head, day by day.
func (t *teller) overhead() {
	list := t.Safety.Overhead
	for i := range list {
		d := &list[i]
		t.Sheet.Platform.Overhead = append(t.Sheet.Platform.Overhead, sheet.Overhead{
			Day: d.Day.In(t.Style()), Text: t.Told(t.overheadOf(d)), Over: d.Strain != hazards.NoStrain,
		})
	}
	worst := hazards.WorstDay(list)
	if worst == nil {
		return
	}
	text := lasting(worst.One).In(t.Style())
	t.Figure(sheet.Figure{
		ID: "overhead.hours", Block: page.Safety, Label: t.Say("hands above the head, worst day, one person"), Value: page.Plain(measure.NumberFromFraction(worst.One, 60)), Unit: "h", Text: text,
		Working: sheet.Working{
			Rule:   t.Say("What one person has who takes part in all of it: hanging without the moves of the platform, bridging, coats, leaf, peeling and touching up on the ceiling."),
			Sum:    worst.Day.In(t.Style()) + ": " + t.overheadSum(worst) + " = " + text,
			Source: t.Say("Two and four hours a day: Washington State, WAC 296-62-05105 and 296-62-05174, repealed in 2003, as guidance; the figures are from memory. What counts as overhead here is common practice, no source."),
		},
	})
}

func lasting(minutes int64) days.Lasting { return days.Lasting(minutes) }

// overheadSum is what the time is made of, as a sum.
func (t *teller) overheadSum(d *hazards.OverheadDay) string {
	parts := make([]string, len(d.Tasks))
	for i, task := range d.Tasks {
		parts[i] = lasting(task.Minutes).In(t.Style()) + " “" + t.Told(task.Name) + "”"
	}
	return strings.Join(parts, " + ")
}

// overheadOf is one day in words; a long one with what to do about it.
func (t *teller) overheadOf(d *hazards.OverheadDay) words.Text {
	text := words.Say("{one}: {sum}.", words.Of("one", lasting(d.One)), words.Name("sum", t.overheadSum(d)))
	switch d.Strain {
	case hazards.Strained:
		return words.Sentences(text, words.Say("Over 2 h is a strain."), turns(&d.Turns))
	case hazards.TooMuch:
		return words.Sentences(text, words.Say("Over 4 h is too much for one person."), turns(&d.Turns))
	}
	return text
}

// turns is what sharing the work of a day makes of it: among those there are,
// and how many it takes to come to two hours each.
func turns(s *hazards.Turns) words.Text {
	var now, more words.Text
	if s.Now > 0 {
		now = words.Say("Take turns: shared among the {n} of you each has {each}.", words.Count("n", s.Now), words.Of("each", lasting(s.NowEach)))
		if s.Suffices {
			return now
		}
	}
	next, each := words.Count("next", s.Next), words.Of("each", lasting(s.NextEach))
	more = words.Say("With {next} people taking turns each would have {each}.", next, each)
	if s.Next < s.Enough {
		more = words.Say("With {next} people taking turns each would have {each}, with {enough} no more than 2 h.", next, each, words.Count("enough", s.Enough))
	}
	return words.Sentences(now, more, words.Say("Or spread it over more days, with work on the floor in between."))
}
