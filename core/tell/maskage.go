package tell

import (
	"ceilingwright/core/days"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// maskAges says of a mask that it is up for longer than it comes off clean,
// where the plan tells how long that is. A panel kept up for the next layer
// counts until that is hung.
func (b *builder) maskAges(c *calendar) {
	if !b.Plan.Days.MaskDays.Known {
		return
	}
	for i := range c.tasks {
		if c.origins[i].Work == days.Hanging {
			b.upTooLong(c, i)
		}
	}
}

func (b *builder) upTooLong(c *calendar, hang int) {
	s, layer, most := &c.schedule, c.origins[hang].Layer, b.Plan.Days.MaskDays.Value
	up, down, what := s.Zone.Moment(s.Placed[hang].Start), days.Moment(0), "“"+b.Layers[layer].Panels.Name+"”"
	for i := hang + 1; i < len(c.tasks); i++ {
		switch o := c.origins[i]; {
		case o.Work == days.Peeling && o.Layer == layer && down == 0:
			down = s.Zone.Moment(s.Placed[i].End)
		case o.Work == days.Hanging && o.Layer == layer+1 && b.Hung(layer).Key.IsKept():
			down, what = s.Zone.Moment(s.Placed[i].Start), "The key "+b.Hung(layer).Key.Name()+" of "+what
		}
	}
	if down-up <= days.Moment(minutes(most, days.Day)) {
		return
	}
	b.Report(b.Layers[layer].Plan.At, []problem.Problem{{Severity: problem.Caution,
		What: words.Raw(what + " is up from " + momentText(up) + " to " + momentText(down) + ", " + b.Told(ageText(down-up)) + ". The mask may stay up for " + b.Notation.NumberTrimmed(most, 1) + "."),
		Do:   words.Say("Leave an offcut up for as long and see how it comes off, ask for film that may stay up for longer, or bring the coats closer together.")}})
}
