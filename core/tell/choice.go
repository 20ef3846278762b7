package tell

import (
	"strings"

	"ceilingwright/core/sheet"

	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// titleOf is a way to lay the mask in words: "on the middle of the room, square
// to wall BC".
func (b *builder) titleOf(way setout.Way) string {
	title := "on the middle of the room"
	switch {
	case way.On == setout.OnFixture:
		title = "on the light"
	case way.On == setout.OnPoint:
		title = "on the point"
	case len(b.Room.Shape.Corners) > 0 && (len(b.Room.Shape.Corners) != 4 || !b.Room.Shape.IsConvex()):
		title = "where its least border is widest"
	}
	switch {
	case way.Square == setout.SquareToFixture:
		title += ", along the light’s axis"
	case way.Square != setout.SquareToRoom && !b.Room.Shape.IsRectangle():
		title += ", square to wall " + survey.Wall(way.Square).Text()
	case b.Room.Shape.IsRectangle() || b.Room.Shape.Form == survey.Round:
	case len(b.Room.Shape.Corners) == 4:
		title += ", along the long centre line"
	default:
		title += ", along the longest wall"
	}
	if way.Turned {
		title += ", turned 90°"
	}
	return title
}

// choices puts the ways to lay the mask side by side.
func (b *builder) choices(list []setout.Choice, taken int, asked setout.On) {
	best, ok := setout.Recommend(list, asked)
	for i := range list {
		c := &list[i]
		out := b.choiceOf(c)
		out.Taken = i == taken
		switch {
		case !ok:
		case i == best.Choice:
			out.Recommended, out.Reason = true, b.reason(list, best)
		case out.Refused == "":
			out.Reason = b.against(c, &list[best.Choice])
		}
		b.Sheet.Choices = append(b.Sheet.Choices, out)
	}
}

func (b *builder) choiceOf(c *setout.Choice) sheet.Choice {
	say := b.Notation.Length
	out := sheet.Choice{
		On: string(c.On), Square: string(c.Square), Turned: "no", Title: b.titleOf(c.Way),
		Borders: sheet.Borders{AB: say(c.Borders.AB), BC: say(c.Borders.BC), CD: say(c.Borders.CD), DA: say(c.Borders.DA)},
		Ends:    say(c.Borders.EndsDiffer()), Sides: say(c.Borders.SidesDiffer()),
	}
	if c.Turned {
		out.Turned = "yes"
	}
	for _, p := range c.Problems {
		if p.Severity == problem.Stop {
			out.Refused = b.Told(p.What)
			break
		}
	}
	if out.Refused == "" && !b.isInside(*c) {
		out.Refused = "The mask is larger than the room."
	}
	if !isEven(c.Layout) {
		b.places(&out, c.Layout)
	}
	return out
}

// isEven tells whether every border is the same at both ends, as in a
// rectangle: there is then nothing to say place by place.
func isEven(l setout.Layout) bool {
	if len(l.Places) != 8 {
		return false
	}
	worst, ok := l.Worst()
	return ok && worst.By() < setout.Visible
}

// places are the borders place by place, and how they widen.
func (b *builder) places(out *sheet.Choice, l setout.Layout) {
	for _, p := range l.Places {
		out.Places = append(out.Places, sheet.Border{Corner: string(p.Corner), Wall: string(p.Wall), Text: b.Notation.Length(p.Length)})
	}
	catching, caught := l.Catching()
	for _, t := range l.Tapers() {
		text := "Along wall " + t.Wall.Text() + " the border is the same at both ends."
		if t.By() >= setout.Visible {
			text = "Along wall " + t.Wall.Text() + " the border widens by " + b.Notation.Amount(t.By()) + ", from " + b.Notation.Length(t.Narrow.Length) +
				" at " + t.Narrow.Corner.Text() + " to " + b.Notation.Length(t.Wide.Length) + " at " + t.Wide.Corner.Text() + "."
			if t.By() > setout.HiddenTaper {
				text += " A border hides up to " + b.Notation.Length(setout.HiddenTaper) + "."
			}
		}
		if caught && t.Wall == catching.Wall {
			text += " This is where the eye catches it first."
		}
		out.Tapers = append(out.Tapers, sheet.Taper{Wall: string(t.Wall), Text: text})
	}
}

// reason says why a choice is recommended.
func (b *builder) reason(list []setout.Choice, best setout.Recommendation) string {
	c := &list[best.Choice]
	if best.Only {
		return "The only one of these that keeps the borders."
	}
	text := ""
	off := max(c.Borders.EndsDiffer(), c.Borders.SidesDiffer())
	switch {
	case best.Fixture && off < setout.Visible:
		text = "The pattern sits on the light, and opposite borders are alike."
	case best.Fixture:
		text = "The pattern sits on the light. Opposite borders differ by up to " + b.Notation.Amount(off) + ", twice what it is off the middle, which a border hides."
	case c.On == setout.OnPoint:
		text = "Where you asked for it."
	default:
		text = b.reasonForRoom(list)
	}
	if best.Straightest {
		worst, _ := c.Layout.Worst()
		if worst.By() < setout.Visible {
			return text + " Its borders are the same at both ends of every wall."
		}
		text += " Its borders taper least: by " + b.Notation.Amount(worst.By()) + " at most, along wall " + worst.Wall.Text() + "."
	}
	return text
}

// reasonForRoom says why the middle of the room is recommended, against the
// fixture where there is one.
func (b *builder) reasonForRoom(list []setout.Choice) string {
	for i := range list {
		c := &list[i]
		if c.On != setout.OnFixture {
			continue
		}
		off := max(c.Borders.EndsDiffer(), c.Borders.SidesDiffer())
		if c.Refused() || !b.isInside(*c) {
			return "Opposite borders are alike; on the light they would be too narrow."
		}
		if off > setout.HiddenTaper {
			return "Opposite borders are alike. On the light they would differ by up to " + b.Notation.Amount(off) + ", more than the " + b.Notation.Length(setout.HiddenTaper) + " that a border hides."
		}
	}
	return "The borders are as even as they can be."
}

// against says what speaks against a choice beside the recommended one.
func (b *builder) against(c, best *setout.Choice) string {
	if c.Box == best.Box {
		return "The same place."
	}
	text := ""
	switch {
	case c.On == best.On:
	case best.On == setout.OnFixture:
		text = "The pattern does not sit on the light."
	case best.On == setout.OnPoint:
		text = "It is not where you asked for it."
	default:
		text = "Opposite borders differ by up to " + b.Notation.Amount(max(c.Borders.EndsDiffer(), c.Borders.SidesDiffer())) + "."
	}
	worst, ok := c.Layout.Worst()
	least, _ := best.Layout.Worst()
	if ok && worst.By() >= least.By()+setout.Visible/2 {
		text += " Along wall " + worst.Wall.Text() + " the border tapers by " + b.Notation.Amount(worst.By()) + "."
	}
	if text == "" {
		return "No worse, and no better."
	}
	return strings.TrimSpace(text)
}
