// Package leaf tells what is gilded: the sections in which size and leaf are laid.
package leaf

import (
	"ceilingwright/core/days"
	"ceilingwright/core/job"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Sections puts the sections of each gilding on its step, with the times at which they
// are sized and laid: by the days where they are known, else counted from the first
// leaf.
func Sections(p *page.Page, j *job.Job) {
	for i := range j.Gilding {
		if g := &j.Gilding[i]; g.Divided {
			t := teller{p, j, g}
			t.sections()
			t.figure()
		}
	}
}

// teller tells one gilding.
type teller struct {
	*page.Page
	*job.Job
	*steps.Gilt
}

func (t *teller) sections() {
	out, times, first := &t.Sheet.Steps[t.Leaf], t.Days.SectionTimes(t.Gilt, t.Gilding), measure.Number{}
	for k := range t.Gilt.Sections {
		one := &t.Gilt.Sections[k]
		end := first.Add(one.Hours)
		size, from, to := fromFirstLeaf(first.Sub(t.Tack)), hoursIn(first), hoursIn(end)
		if times != nil {
			at := &times[k]
			size, from, to = words.Say("{at}", words.Of("at", at.Size)), words.Say("{at}", words.Of("at", at.From)), words.Say("{at}", words.Of("at", at.To))
		}
		first = end
		text := words.Say("Size {area}: {size}. Lay leaf from {from} to {to}.",
			words.Area("area", one.Sized), words.Of("size", size), words.Of("from", from), words.Of("to", to))
		out.Sections = append(out.Sections, sheet.Section{N: k + 1, Area: t.Notation.Area(one.Area), Hours: days.InHours(one.Hours).In(t.Style()),
			SizeAt: t.Told(size), LayFrom: t.Told(from), LayTo: t.Told(to), Text: t.Told(words.Sentences(text, t.stop(k), past(one.Sized.Sub(one.Area))))})
	}
	if t.Layer == nil {
		return
	}
	across := len(t.Layer.Panels.Columns)
	for i, of := range t.Panels.Of {
		s := &out.Sections[of]
		s.Panels = append(s.Panels, mask.Panel{Column: i%across + 1, Row: i/across + 1}.Label())
	}
}

// past says what of the size lies past the stop line.
func past(more measure.Area) words.Text {
	if more.SquareMetres.Sign() <= 0 {
		return words.Text{}
	}
	return words.Say("{more} of the size lies past the stop line: leave it without leaf, so that the next section's size blends into it.", words.Area("more", more))
}

// stop says where leaf stops that ends in a straight line across.
func (t *teller) stop(section int) words.Text {
	if t.Along == 0 || section+1 == len(t.Gilt.Sections) {
		return words.Text{}
	}
	side := survey.DA
	if t.AlongWidth {
		side = survey.AB
	}
	at := words.Length("at", t.StopAt(section))
	if t.OnMask {
		return words.Say("Stop the leaf {at} from the edge of the mask towards {wall}.", at, words.Name("wall", t.Setting.Facing(side).Text()))
	}
	return words.Say("Stop the leaf {at} from wall {wall}.", at, words.Name("wall", side.Text()))
}

// fromFirstLeaf is a time in hours before or after the first leaf is laid.
func fromFirstLeaf(hours measure.Number) words.Text {
	by := words.Of("hours", days.InHours(hours.Abs()))
	switch hours.Sign() {
	case 0:
		return words.Say("with the first leaf")
	case -1:
		return words.Say("{hours} before the first leaf", by)
	}
	return words.Say("{hours} after the first leaf", by)
}

// hoursIn is a time in hours since the first leaf was laid.
func hoursIn(hours measure.Number) words.Text {
	if hours.IsZero() {
		return words.Say("the start")
	}
	return words.Say("{hours} in", words.Of("hours", days.InHours(hours)))
}

// figure is how many sections a leaf step has.
func (t *teller) figure() {
	rule := words.Say("The area over what is laid while the size takes leaf, rounded up.")
	if t.Layer != nil {
		rule = words.Say("As few sections as whole panels make that each hang together and are laid while the size takes leaf, as equal as can be.")
		if !t.Panels.Fewest {
			rule = words.Sentences(rule, words.Say("Found by trying; it is not shown that fewer could not do."))
		}
	}
	if size := &t.Plan.Steps[t.Size]; size.TackHours.IsRange() && size.OpenHours.Known {
		rule = words.Sentences(rule, words.Say("Any spot can be laid from the latest tack, {latest}, to the earliest close, {soonest} + {open}.",
			words.Of("latest", days.InHours(size.TackHours.To)), words.Of("soonest", days.InHours(size.TackHours.From)), words.Of("open", days.InHours(size.OpenHours.From))))
	}
	rule = words.Sentences(rule, words.Say("A share of the time is kept back."))
	if !t.ReserveGiven {
		rule = words.Sentences(rule, words.Say("A fifth, as usual."))
	}
	count := int64(len(t.Gilt.Sections))
	sum := t.Say("{area} ÷ ({rate} × {n|gilder|gilders} × {window} × (1 − {reserve})), rounded up", words.Area("area", t.Gilt.Area), words.Of("rate", days.PerHour(t.Rate)),
		words.Count("n", t.Gilders), words.Of("window", days.InHours(t.Window)), words.Share("reserve", t.Reserve))
	if least := t.WholeNeeds(); least > 0 && count > least {
		sum += t.Say(" + {more} since panels stay whole", words.Name("more", words.Digits(count-least)))
	}
	out := &t.Sheet.Steps[t.Leaf]
	id := "step." + out.ID + ".sections"
	out.Figures = append(out.Figures, id)
	t.Count(page.Finish, id, t.Say("sections"), count, "", t.Told(rule), sum,
		t.Say("Size in parts that can be gilded while it is open, each finished before the next (Workshop Receipts, first series). The fifth kept back is common practice, no source."))
}
