package setting

import (
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// title is a way to lay the mask: "on the middle of the room, square to wall BC".
func (t *teller) title(way setout.Way) words.Text {
	on, lies, shape := t.on(way.On), words.Text{}, &t.Room.Shape
	switch isRectangle := shape.IsRectangle(); {
	case way.Square == setout.SquareToFixture:
		lies = words.Say("along the light’s axis")
	case way.Square != setout.SquareToRoom && !isRectangle:
		lies = words.Say("square to wall {wall}", words.Of("wall", survey.Wall(way.Square)))
	case isRectangle || shape.Form == survey.Round:
	case len(shape.Corners) == 4:
		lies = words.Say("along the long centre line")
	default:
		lies = words.Say("along the longest wall")
	}
	place, along := words.Of("place", on), words.Of("along", lies)
	switch {
	case lies.IsEmpty() && !way.Turned:
		return on
	case lies.IsEmpty():
		return words.Say("{place}, turned 90°", place)
	case !way.Turned:
		return words.Say("{place}, {along}", place, along)
	}
	return words.Say("{place}, {along}, turned 90°", place, along)
}

func (t *teller) on(on setout.On) words.Text {
	corners := len(t.Room.Shape.Corners)
	switch {
	case on == setout.OnFixture:
		return words.Say("on the light")
	case on == setout.OnPoint:
		return words.Say("on the point")
	case corners > 0 && (corners != 4 || !t.Room.Shape.IsConvex()):
		return words.Say("where its least border is widest")
	}
	return words.Say("on the middle of the room")
}

// choices puts the ways to lay the mask side by side.
func (t *teller) choices() {
	s := &t.Setting
	for i := range s.Choices {
		c := &s.Choices[i]
		out := t.choice(c)
		out.Taken = i == s.Taken
		switch {
		case !s.Recommended:
		case i == s.Best.Choice:
			out.Recommended, out.Reason = true, t.Told(t.reason(c))
		case out.Refused == "":
			out.Reason = t.Told(against(c, &s.Choices[s.Best.Choice]))
		}
		t.Sheet.Choices = append(t.Sheet.Choices, out)
	}
}

func (t *teller) choice(c *setout.Choice) sheet.Choice {
	say := t.Notation.Length
	out := sheet.Choice{
		On: string(c.On), Square: string(c.Square), Turned: "no", Title: t.Told(t.title(c.Way)),
		Borders: sheet.Borders{AB: say(c.Borders.AB), BC: say(c.Borders.BC), CD: say(c.Borders.CD), DA: say(c.Borders.DA)},
		Ends:    say(c.Borders.EndsDiffer()), Sides: say(c.Borders.SidesDiffer()),
	}
	if c.Turned {
		out.Turned = "yes"
	}
	for _, p := range c.Problems {
		if p.Severity == problem.Stop {
			out.Refused = t.Told(p.What)
			break
		}
	}
	if out.Refused == "" && !c.IsInside() {
		out.Refused = t.Say("The mask is larger than the room.")
	}
	if !c.Layout.IsEven() {
		t.places(&out, c.Layout)
	}
	return out
}

// places are the borders place by place, and how they widen.
func (t *teller) places(out *sheet.Choice, l setout.Layout) {
	for _, p := range l.Places {
		out.Places = append(out.Places, sheet.Border{Corner: string(p.Corner), Wall: string(p.Wall), Text: t.Notation.Length(p.Length)})
	}
	catching, caught := l.Catching()
	for _, taper := range l.Tapers() {
		text := tapers(&taper)
		if caught && taper.Wall == catching.Wall {
			text = words.Sentences(text, words.Say("This is where the eye catches it first."))
		}
		out.Tapers = append(out.Tapers, sheet.Taper{Wall: string(taper.Wall), Text: t.Told(text)})
	}
}

// tapers is how a border widens along its wall.
func tapers(t *setout.Taper) words.Text {
	wall := words.Of("wall", t.Wall)
	if t.By() < setout.Visible {
		return words.Say("Along wall {wall} the border is the same at both ends.", wall)
	}
	text := words.Say("Along wall {wall} the border widens by {by}, from {narrow} at {from} to {wide} at {to}.", wall, words.Amount("by", t.By()),
		words.Length("narrow", t.Narrow.Length), words.Of("from", t.Narrow.Corner), words.Length("wide", t.Wide.Length), words.Of("to", t.Wide.Corner))
	if t.By() > setout.HiddenTaper {
		text = words.Sentences(text, words.Say("A border hides up to {hidden}.", words.Length("hidden", setout.HiddenTaper)))
	}
	return text
}

// reason says why a choice is recommended.
func (t *teller) reason(c *setout.Choice) words.Text {
	best, text := &t.Setting.Best, words.Text{}
	switch off := words.Amount("off", c.Differ()); {
	case best.Only:
		return words.Say("The only one of these that keeps the borders.")
	case best.Fixture && c.Differ() < setout.Visible:
		text = words.Say("The pattern sits on the light, and opposite borders are alike.")
	case best.Fixture:
		text = words.Say("The pattern sits on the light. Opposite borders differ by up to {off}, twice what it is off the middle, which a border hides.", off)
	case c.On == setout.OnPoint:
		text = words.Say("Where you asked for it.")
	default:
		text = t.reasonForRoom()
	}
	worst, _ := c.Layout.Worst()
	switch {
	case !best.Straightest:
		return text
	case worst.By() < setout.Visible:
		return words.Sentences(text, words.Say("Its borders are the same at both ends of every wall."))
	}
	return words.Sentences(text, words.Say("Its borders taper least: by {by} at most, along wall {wall}.", words.Amount("by", worst.By()), words.Of("wall", worst.Wall)))
}

// reasonForRoom says why the middle of the room is recommended, against the
// fixture where there is one.
func (t *teller) reasonForRoom() words.Text {
	for i := range t.Setting.Choices {
		c := &t.Setting.Choices[i]
		if c.On != setout.OnFixture {
			continue
		}
		if c.Refused() || !c.IsInside() {
			return words.Say("Opposite borders are alike; on the light they would be too narrow.")
		}
		if off := words.Amount("off", c.Differ()); c.Differ() > setout.HiddenTaper {
			return words.Say("Opposite borders are alike. On the light they would differ by up to {off}, more than the {hidden} that a border hides.", off, words.Length("hidden", setout.HiddenTaper))
		}
	}
	return words.Say("The borders are as even as they can be.")
}

// against says what speaks against a choice beside the recommended one.
func against(c, best *setout.Choice) words.Text {
	if c.Box == best.Box {
		return words.Say("The same place.")
	}
	text := words.Text{}
	switch {
	case c.On == best.On:
	case best.On == setout.OnFixture:
		text = words.Say("The pattern does not sit on the light.")
	case best.On == setout.OnPoint:
		text = words.Say("It is not where you asked for it.")
	default:
		text = words.Say("Opposite borders differ by up to {off}.", words.Amount("off", c.Differ()))
	}
	worst, ok := c.Layout.Worst()
	least, _ := best.Layout.Worst()
	if ok && worst.By() >= least.By()+setout.Visible/2 {
		text = words.Sentences(text, words.Say("Along wall {wall} the border tapers by {by}.", words.Of("wall", worst.Wall), words.Amount("by", worst.By())))
	}
	if text.IsEmpty() {
		return words.Say("No worse, and no better.")
	}
	return text
}
