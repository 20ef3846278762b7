package setout

import (
	"fmt"
	"math"
	"strings"

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
func (s Site) CheckFit(o mask.Outline, t Turn, least measure.Length, n measure.Notation) []problem.Problem {
	if !s.Shape.Usable() || !o.IsComplete() {
		return nil
	}
	if !s.Shape.IsRectangle() || !t.IsExact() {
		return s.checkAnywhere(o, t, least, n)
	}
	long, wide := s.Shape.Length, s.Shape.Width
	if t.Quarters&1 == 1 {
		long, wide = wide, long
	}
	var found []problem.Problem
	found = append(found, checkSide("/length", "length", "long", o.Length, long, least, n)...)
	return append(found, checkSide("/width", "width", "wide", o.Width, wide, least, n)...)
}

func checkSide(at, side, how string, have, room, least measure.Length, n measure.Notation) []problem.Problem {
	if have <= room {
		return nil
	}
	do := fmt.Sprintf("Trim at least %s off the %s, or order a smaller mask.", n.AtLeast(have-room), side)
	if most := room - 2*least; least > 0 && most > 0 {
		do = fmt.Sprintf("Order a mask at most %s %s, which leaves the least border of %s, or trim %s.",
			n.AtMost(most), how, n.Length(least), n.AtLeast(have-most))
	}
	return []problem.Problem{{At: at, Severity: problem.Stop,
		What: words.Raw(fmt.Sprintf("The mask is %s %s and the room %s: %s too much.", n.Length(have), how, n.Length(room), n.Amount(have-room))),
		Do:   words.Raw(do)}}
}

func (s Site) checkAnywhere(o mask.Outline, t Turn, least measure.Length, n measure.Notation) []problem.Problem {
	_, best := s.Roomiest(o, t, least)
	if best >= 0 {
		return nil
	}
	do := "Order a smaller mask."
	if most, ok := s.LargestAnywhere(t, Borders{least, least, least, least}); ok {
		do = fmt.Sprintf("Order a mask of at most %s × %s, the largest that keeps %s all round.",
			n.AtMost(most.Length), n.AtMost(most.Width), n.Length(least))
	}
	return []problem.Problem{{At: "/length", Severity: problem.Stop,
		What: words.Raw(fmt.Sprintf("A mask of %s × %s fits nowhere in this room: where it fits best it runs %s past a wall.",
			n.Length(o.Length), n.Length(o.Width), n.Amount(-best))),
		Do: words.Raw(do)}}
}

// CheckBorders says which borders of a box are below the least, at
// "/leastBorder", and where it runs past a wall, at "/on", with how much to
// trim. What CheckFit refuses is left to it: in a rectangle the direction in
// which the mask is larger than the room. Two opposite borders of one size make
// one problem. In a round room there is one for the box, since each of its corners
// lies at two sides.
func (s Site) CheckBorders(w Way, box Box, layout Layout, least measure.Length, n measure.Notation) []problem.Problem {
	if s.Shape.Form == survey.Round {
		return s.checkRound(w, box, layout.Least(), least, n)
	}
	var found []problem.Problem
	for _, facing := range [2][2]survey.Wall{{survey.DA, survey.BC}, {survey.AB, survey.CD}} {
		p := pair{way: w, layout: layout, smaller: facing[0], larger: facing[1], least: least, notation: n}
		p.side, p.have = "length", box.Length
		if own := box.Turn.SideFacing(facing[0]); own == survey.AB || own == survey.CD {
			p.side, p.have = "width", box.Width
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
func (s Site) checkRound(w Way, box Box, have, least measure.Length, n measure.Notation) []problem.Problem {
	p := problem.Problem{At: "/leastBorder", Severity: problem.Stop}
	switch {
	case have >= least:
		return nil
	case have < 0:
		p.At = "/on"
		p.What = words.Raw(fmt.Sprintf("Centred there, the corners of the mask run up to %s past the wall.", n.Amount(-have)))
	default:
		p.What = words.Raw(fmt.Sprintf("At its corners the mask comes as near as %s to the wall, %s less than the least of %s.",
			n.Length(have), n.Amount(least-have), n.Length(least)))
	}
	var ways []string
	o := mask.Outline{Length: box.Length, Width: box.Width}
	for _, side := range [2]Side{LongSide, WideSide} {
		if trim, ok := s.trim(w, o, side, least, n); ok {
			ways = append(ways, fmt.Sprintf("take %s off the %s of the mask, half at each edge", n.Length(trim), side.name()))
		}
	}
	if most, ok := s.Largest(w, Borders{least, least, least, least}); ok && min(most.Length, most.Width) >= mask.LeastPanel {
		ways = append(ways, fmt.Sprintf("order a mask of at most %s × %s, the largest that keeps it", n.AtMost(most.Length), n.AtMost(most.Width)))
	}
	p.Do = words.Raw(inTurn(append(ways, w.others(have >= 0)...)))
	return []problem.Problem{p}
}

// trim is how much has to come off one side of the mask, half at each edge, so
// that it keeps the least border as it is laid: whole tape marks at each edge.
// False where not even a panel's worth would do.
func (s Site) trim(w Way, o mask.Outline, side Side, least measure.Length, n measure.Notation) (measure.Length, bool) {
	have := &o.Length
	if side == WideSide {
		have = &o.Width
	}
	full, mark := *have, n.Mark()
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

func (s Side) name() string {
	if s == WideSide {
		return "width"
	}
	return "length"
}

// pair is two opposite borders, the smaller first.
type pair struct {
	way             Way
	layout          Layout
	side            string // length or width of the mask
	have            measure.Length
	small, large    measure.Length
	smaller, larger survey.Wall
	rate            float64
	least           measure.Length
	notation        measure.Notation
}

func (p pair) check() []problem.Problem {
	switch {
	case p.small >= p.least:
		return nil
	case p.small < 0:
		return []problem.Problem{{At: "/on", Severity: problem.Stop,
			What: words.Raw(fmt.Sprintf("Centred there, the mask runs %s past %s.", p.notation.Amount(-p.small), p.layout.at(p.smaller))),
			Do:   words.Raw(p.remedy())}}
	}
	return []problem.Problem{{At: "/leastBorder", Severity: problem.Stop, What: words.Raw(p.fault()), Do: words.Raw(p.remedy())}}
}

// at is the wall on a side of the box, in words.
func (l Layout) at(side survey.Wall) string {
	if wall := l.Nearest[wallNumber(side)]; wall != "" {
		return "wall " + wall.Text()
	}
	return "the wall beyond " + side.Text()
}

// atBoth is the walls on two sides, in words.
func (l Layout) atBoth(one, other survey.Wall) string {
	a, b := l.at(one), l.at(other)
	if strings.HasPrefix(a, "wall ") && strings.HasPrefix(b, "wall ") {
		return "walls " + a[len("wall "):] + " and " + b[len("wall "):]
	}
	return a + " and " + b
}

// fault says which of the two is too small, and by how much.
func (p pair) fault() string {
	n := p.notation
	short := fmt.Sprintf("%s less than the least of %s", n.Amount(p.least-p.small), n.Length(p.least))
	switch {
	case p.large >= p.least:
		return fmt.Sprintf("The border at %s is %s, %s.", p.layout.at(p.smaller), n.Length(p.small), short)
	case p.large-p.small <= measure.Nanometre:
		return fmt.Sprintf("The borders at %s are %s each, %s.", p.layout.atBoth(p.smaller, p.larger), n.Length(p.small), short)
	}
	return fmt.Sprintf("The border at %s is %s, %s; at %s it is %s, %s less.", p.layout.at(p.smaller), n.Length(p.small), short,
		p.layout.at(p.larger), n.Length(p.large), n.Amount(p.least-p.large))
}

// remedy says what to do. Trimming comes off both edges alike, or the mask
// would no longer be centred.
func (p pair) remedy() string {
	var ways []string
	need := p.least - p.small
	if p.rate < 1 {
		need = measure.Length(math.Ceil(float64(need) / p.rate))
	}
	if edge := p.notation.UpToMark(need); p.have-2*edge >= mask.LeastPanel {
		ways = append(ways, fmt.Sprintf("take %s off the %s of the mask, half at each edge", p.notation.Length(2*edge), p.side))
	}
	ways = append(ways, p.way.others(p.small >= 0)...)
	if p.way.Square != SquareToRoom && p.layout.isCrooked() {
		ways = append(ways, "lay it square to the room")
	}
	return inTurn(ways)
}

// others are the ways out that need no other mask. A border there is can also be
// lived with.
func (w Way) others(some bool) (ways []string) {
	if w.On != OnRoom {
		ways = append(ways, "centre on the room")
	}
	if some {
		ways = append(ways, "accept a smaller least border")
	}
	return ways
}

// inTurn is what can be done, one way after another.
func inTurn(ways []string) string {
	if len(ways) == 0 {
		return "Order a smaller mask."
	}
	do := strings.Join(ways, ", or ") + "."
	return strings.ToUpper(do[:1]) + do[1:]
}

// isCrooked tells whether some border widens along its wall.
func (l Layout) isCrooked() bool {
	worst, ok := l.Worst()
	return ok && worst.By() >= Visible
}
