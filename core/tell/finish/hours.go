package finish

import (
	"strings"

	"ceilingwright/core/days"
	"ceilingwright/core/job"
	"ceilingwright/core/job/schedule"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Hours are the hours of work in each step whose rate is given, as the days and the
// price count them.
func Hours(p *page.Page, j *job.Job) {
	for i := range j.Days.Labour {
		if l := &j.Days.Labour[i]; l.Step >= 0 && j.Plan.Steps[l.Step].RateKnown {
			hoursOf(p, j, l)
		}
	}
}

func hoursOf(p *page.Page, j *job.Job, l *schedule.Labour) {
	out := &p.Sheet.Steps[l.Step]
	id, text := "step."+out.ID+".hours", days.Lasting(l.Minutes).In(p.Style())
	rule := p.Say("The area over what one person does in an hour, for each coat; each of those who share it is at it for whole minutes. The days say the same, and it is paid so.")
	if area, ok := j.Covers[l.Step].Over(); ok {
		rule = p.Say("The area over what one person does in an hour, {area} ÷ {rate}, for each coat; each of those who share it is at it for whole minutes. The days say the same, and it is paid so.",
			words.Area("area", area), words.Of("rate", days.PerHour(j.Plan.Steps[l.Step].Rate)))
	}
	out.Figures = append(out.Figures, id)
	p.Figure(sheet.Figure{ID: id, Block: page.Finish, Label: p.Say("hours of work"), Value: page.Plain(measure.NumberFromFraction(l.Minutes, 60)), Unit: "h", Text: text,
		Working: sheet.Working{Rule: rule, Sum: sharesSum(p, l.Shares) + " = " + text, Source: p.Arithmetic()}})
}

// sharesSum is how labour comes about: 2 × 2 × 50 min + 45 min.
func sharesSum(p *page.Page, shares []schedule.Share) string {
	parts := make([]string, len(shares))
	for i, s := range shares {
		for _, n := range []int64{s.Tasks, s.Crew} {
			if n > 1 {
				parts[i] += words.Digits(n) + " × "
			}
		}
		parts[i] += days.Lasting(s.Minutes).In(p.Style())
	}
	if len(parts) == 1 && shares[0].Tasks*shares[0].Crew == 1 {
		return "1 × " + parts[0]
	}
	return strings.Join(parts, " + ")
}
