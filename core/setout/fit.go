package setout

import (
	"math"

	"ceilingwright/core/words"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

// CheckFit says where the mask, so turned, is larger than the room, at
// "/length" and "/width" of the mask, by how much and what would fit with the
// least border. In a rectangle each side is looked at by itself; in any other
// room the mask is too large if it fits nowhere.
func (s Site) CheckFit(o mask.Outline, t Turn, least measure.Length) []problem.Problem {
	if !s.Shape.Usable() || !o.IsComplete() {
		return nil
	}
	if !s.Shape.IsRectangle() || !t.IsExact() {
		return s.checkAnywhere(o, t, least)
	}
	long, wide := s.Shape.Length, s.Shape.Width
	if t.Quarters&1 == 1 {
		long, wide = wide, long
	}
	return append(checkSide(LongSide, o.Length, long, least), checkSide(WideSide, o.Width, wide, least)...)
}

func checkSide(side Side, have, room, least measure.Length) []problem.Problem {
	if have <= room {
		return nil
	}
	p := problem.Problem{At: "/length", Severity: problem.Stop}
	is, has, over := words.Length("have", have), words.Length("room", room), words.Amount("over", have-room)
	left := room - 2*least
	most, border, trim, all := words.AtMost("most", left), words.Length("least", least), words.AtLeast("trim", have-left), words.AtLeast("all", have-room)
	switch fits := least > 0 && left > 0; {
	case side == LongSide && fits:
		p.Do = words.Say("Order a mask at most {most} long, which leaves the least border of {least}, or trim {trim}.", most, border, trim)
	case side == LongSide:
		p.Do = words.Say("Trim at least {all} off the length, or order a smaller mask.", all)
	case fits:
		p.Do = words.Say("Order a mask at most {most} wide, which leaves the least border of {least}, or trim {trim}.", most, border, trim)
	default:
		p.Do = words.Say("Trim at least {all} off the width, or order a smaller mask.", all)
	}
	p.What = words.Say("The mask is {have} long and the room {room}: {over} too much.", is, has, over)
	if side == WideSide {
		p.At, p.What = "/width", words.Say("The mask is {have} wide and the room {room}: {over} too much.", is, has, over)
	}
	return []problem.Problem{p}
}

func (s Site) checkAnywhere(o mask.Outline, t Turn, least measure.Length) []problem.Problem {
	_, best := s.Roomiest(o, t, least)
	if best >= 0 {
		return nil
	}
	do := smallerMask
	if most, ok := s.LargestAnywhere(t, Borders{least, least, least, least}); ok {
		do = words.Say("Order a mask of at most {length} × {width}, the largest that keeps {least} all round.",
			words.AtMost("length", most.Length), words.AtMost("width", most.Width), words.Length("least", least))
	}
	return []problem.Problem{{At: "/length", Severity: problem.Stop,
		What: words.Say("A mask of {length} × {width} fits nowhere in this room: where it fits best it runs {past} past a wall.",
			words.Length("length", o.Length), words.Length("width", o.Width), words.Amount("past", -best)),
		Do: do}}
}

// CheckBorders says which borders of a box are below the least, at
// "/leastBorder", and where it runs past a wall, at "/on", with how much to
// trim. What CheckFit refuses is left to it: in a rectangle the direction in
// which the mask is larger than the room. Two opposite borders of one size make
// one problem. In a round room there is one for the box, since each of its corners
// lies at two sides.
func (s Site) CheckBorders(w Way, box Box, layout Layout, least, mark measure.Length) []problem.Problem {
	if s.Shape.Form == survey.Round {
		return s.checkRound(w, box, layout.Least(), least, mark)
	}
	var found []problem.Problem
	for _, facing := range [2][2]survey.Wall{{survey.DA, survey.BC}, {survey.AB, survey.CD}} {
		p := pair{way: w, layout: layout, smaller: facing[0], larger: facing[1], least: least, mark: mark}
		p.have = box.Length
		if own := box.Turn.SideFacing(facing[0]); own == survey.AB || own == survey.CD {
			p.side, p.have = WideSide, box.Width
		}
		p.small, p.large = layout.Sides.At(p.smaller), layout.Sides.At(p.larger)
		if s.Shape.IsRectangle() && box.Turn.IsExact() && p.small+p.large < 0 {
			continue
		}
		p.rate = s.rate(box, layout, p.smaller)
		if p.large < p.small {
			p.small, p.large, p.smaller, p.larger = p.large, p.small, p.larger, p.smaller
			p.rate = s.rate(box, layout, p.smaller)
		}
		found = append(found, p.check()...)
	}
	return found
}

// rate is how much the border on a side grows when the mask's edge there is
// moved in by one: less than one where the way to the wall slants to the edge.
func (s Site) rate(box Box, layout Layout, side survey.Wall) float64 {
	wall, ok := s.Shape.Wall(layout.Nearest[wallNumber(side)])
	if !ok {
		return 1
	}
	from := box.asSeenBy(wall)
	towards := from.wall.facing(from.x, from.y)
	x, y := outward(Turn{}, wallNumber(box.Turn.SideFacing(side)))
	return max(math.Abs(float64(towards.nx*x)+float64(towards.ny*y)), facingSine)
}

// seen is a wall in the frame of a box, and where the middle of the box lies.
type seen struct {
	wall block
	x, y float64
}

func (b Box) asSeenBy(w survey.WallLine) seen {
	ux, uy := b.Turn.Length()
	long, wide := float64(b.Length)/2, float64(b.Width)/2
	fromX, fromY := upright(w.Start, ux, uy)
	toX, toY := upright(w.End, ux, uy)
	x, y := upright(survey.Point{X: b.X, Y: b.Y}, ux, uy)
	return seen{blockOf(fromX, fromY, toX, toY, long, wide), x + long, y + wide}
}

// checkRound is CheckBorders in a round room, where the least border is that of
// a corner.
func (s Site) checkRound(w Way, box Box, have, least, mark measure.Length) []problem.Problem {
	p := problem.Problem{At: "/leastBorder", Severity: problem.Stop}
	switch {
	case have >= least:
		return nil
	case have < 0:
		p.At = "/on"
		p.What = words.Say("Centred there, the corners of the mask run up to {past} past the wall.", words.Amount("past", -have))
	default:
		p.What = words.Say("At its corners the mask comes as near as {have} to the wall, {short} less than the least of {least}.",
			words.Length("have", have), words.Amount("short", least-have), words.Length("least", least))
	}
	var ways []words.Text
	o := mask.Outline{Length: box.Length, Width: box.Width}
	for _, side := range [2]Side{LongSide, WideSide} {
		if trim, ok := s.trim(w, o, side, least, mark); ok {
			ways = append(ways, side.take(trim))
		}
	}
	if most, ok := s.Largest(w, Borders{least, least, least, least}); ok && min(most.Length, most.Width) >= mask.LeastPanel {
		ways = append(ways, words.Say("order a mask of at most {length} × {width}, the largest that keeps it",
			words.AtMost("length", most.Length), words.AtMost("width", most.Width)))
	}
	p.Do = inTurn(append(ways, w.others(have >= 0)...))
	return []problem.Problem{p}
}

// trim is how much has to come off one side of the mask, half at each edge, so
// that it keeps the least border as it is laid: whole tape marks at each edge.
// False where not even a panel's worth would do.
func (s Site) trim(w Way, o mask.Outline, side Side, least, mark measure.Length) (measure.Length, bool) {
	have := &o.Length
	if side == WideSide {
		have = &o.Width
	}
	full := *have
	keeps := func(marks int) bool {
		*have = full - 2*measure.Length(marks)*mark
		box, ok := s.Place(w, o, least)
		return ok && s.Borders(box).Least() >= least
	}
	// The border grows with all that comes off.
	most := int((full - mask.LeastPanel) / (2 * mark))
	low, high := 0, max(most, 0)+1
	for low < high {
		if middle := low + (high-low)/2; keeps(middle) {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return 2 * measure.Length(low) * mark, low <= most
}

// take is how to make a side of the mask smaller.
func (s Side) take(off measure.Length) words.Text {
	by := words.Length("by", off)
	if s == WideSide {
		return words.Say("take {by} off the width of the mask, half at each edge", by)
	}
	return words.Say("take {by} off the length of the mask, half at each edge", by)
}

// pair is two opposite borders, the smaller first.
type pair struct {
	way             Way
	layout          Layout
	side            Side
	have            measure.Length
	small, large    measure.Length
	smaller, larger survey.Wall
	rate            float64
	least, mark     measure.Length
}

func (p pair) check() []problem.Problem {
	switch {
	case p.small >= p.least:
		return nil
	case p.small < 0:
		return []problem.Problem{{At: "/on", Severity: problem.Stop,
			What: words.Say("Centred there, the mask runs {past} past {wall}.", words.Amount("past", -p.small), words.Of("wall", p.layout.at(p.smaller))),
			Do:   p.remedy()}}
	}
	return []problem.Problem{{At: "/leastBorder", Severity: problem.Stop, What: p.fault(), Do: p.remedy()}}
}

// at is the wall on a side of the box, in words.
func (l Layout) at(side survey.Wall) words.Text {
	if wall := l.Nearest[wallNumber(side)]; wall != "" {
		return words.Say("wall {wall}", words.Of("wall", wall))
	}
	return words.Say("the wall beyond {side}", words.Of("side", side))
}

// atBoth is the walls on two sides, in words.
func (l Layout) atBoth(one, other survey.Wall) words.Text {
	if a, b := l.Nearest[wallNumber(one)], l.Nearest[wallNumber(other)]; a != "" && b != "" {
		return words.Say("walls {one} and {other}", words.Of("one", a), words.Of("other", b))
	}
	return words.Say("{one} and {other}", words.Of("one", l.at(one)), words.Of("other", l.at(other)))
}

// fault says which of the two is too small, and by how much.
func (p pair) fault() words.Text {
	wall, border := words.Of("wall", p.layout.at(p.smaller)), words.Length("border", p.small)
	short, least := words.Amount("short", p.least-p.small), words.Length("least", p.least)
	switch {
	case p.large >= p.least:
		return words.Say("The border at {wall} is {border}, {short} less than the least of {least}.", wall, border, short, least)
	case p.large-p.small <= measure.Nanometre:
		return words.Say("The borders at {walls} are {border} each, {short} less than the least of {least}.",
			words.Of("walls", p.layout.atBoth(p.smaller, p.larger)), border, short, least)
	}
	return words.Say("The border at {wall} is {border}, {short} less than the least of {least}; at {other} it is {large}, {less} less.", wall, border, short, least,
		words.Of("other", p.layout.at(p.larger)), words.Length("large", p.large), words.Amount("less", p.least-p.large))
}

// remedy says what to do. Trimming comes off both edges alike, or the mask
// would no longer be centred.
func (p pair) remedy() words.Text {
	var ways []words.Text
	need := p.least - p.small
	if p.rate < 1 {
		need = measure.Length(math.Ceil(float64(need) / p.rate))
	}
	if edge := need.UpToMark(p.mark); p.have-2*edge >= mask.LeastPanel {
		ways = append(ways, p.side.take(2*edge))
	}
	ways = append(ways, p.way.others(p.small >= 0)...)
	if p.way.Square != SquareToRoom && p.layout.isCrooked() {
		ways = append(ways, words.Say("lay it square to the room"))
	}
	return inTurn(ways)
}

// others are the ways out that need no other mask. A border there is can also be
// lived with.
func (w Way) others(some bool) (ways []words.Text) {
	if w.On != OnRoom {
		ways = append(ways, words.Say("centre on the room"))
	}
	if some {
		ways = append(ways, words.Say("accept a smaller least border"))
	}
	return ways
}

// inTurn is what can be done, one way after another.
func inTurn(ways []words.Text) words.Text {
	if len(ways) == 0 {
		return smallerMask
	}
	last := len(ways) - 1
	all := ways[last]
	for i := last - 1; i >= 0; i-- {
		all = words.Say("{way}, or {others}", words.Of("way", ways[i]), words.Of("others", all))
	}
	return words.Say("{^ways}.", words.Of("ways", all))
}

var smallerMask = words.Say("Order a smaller mask.")

// isCrooked tells whether some border widens along its wall.
func (l Layout) isCrooked() bool {
	worst, ok := l.Worst()
	return ok && worst.By() >= Visible
}
