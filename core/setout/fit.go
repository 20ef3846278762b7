package setout

import (
	"fmt"
	"strings"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

// CheckFit says where the mask is larger than the room, at "/length" and
// "/width" of the mask, by how much and what would fit with the least border.
func CheckFit(room survey.Room, o mask.Outline, least measure.Length, n measure.Notation) []problem.Problem {
	if !room.HasPlan() || !o.IsComplete() {
		return nil
	}
	var found []problem.Problem
	found = append(found, checkSide("/length", "length", "long", o.Length, room.Length, least, n)...)
	found = append(found, checkSide("/width", "width", "wide", o.Width, room.Width, least, n)...)
	return found
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
		What: fmt.Sprintf("The mask is %s %s and the room %s: %s too much.", n.Length(have), how, n.Length(room), n.Amount(have-room)),
		Do:   do}}
}

// CheckBorders says which borders of a box are below the least, at
// "/leastBorder", and where it runs past a wall, at "/on", with how much to
// trim. A direction in which the mask is larger than the room is left to
// CheckFit. Two opposite borders of one size make one problem.
func CheckBorders(on On, box Box, room survey.Room, least measure.Length, n measure.Notation) []problem.Problem {
	var found []problem.Problem
	borders := box.Borders(room)
	if box.Length <= room.Length {
		found = append(found, checkPair(on, "length", box.Length, survey.DA, survey.BC, borders, least, n)...)
	}
	if box.Width <= room.Width {
		found = append(found, checkPair(on, "width", box.Width, survey.AB, survey.CD, borders, least, n)...)
	}
	return found
}

// pair is two opposite borders, the smaller first.
type pair struct {
	on              On
	side            string // length or width of the mask
	have            measure.Length
	small, large    measure.Length
	smaller, larger survey.Wall
	least           measure.Length
	notation        measure.Notation
}

func checkPair(on On, side string, have measure.Length, one, other survey.Wall, borders Borders, least measure.Length, n measure.Notation) []problem.Problem {
	p := pair{on, side, have, borders.At(one), borders.At(other), one, other, least, n}
	if p.large < p.small {
		p.small, p.large, p.smaller, p.larger = p.large, p.small, p.larger, p.smaller
	}
	switch {
	case p.small >= least:
		return nil
	case p.small < 0:
		return []problem.Problem{{At: "/on", Severity: problem.Stop,
			What: fmt.Sprintf("Centred there, the mask runs %s past wall %s.", n.Amount(-p.small), p.smaller),
			Do:   p.remedy()}}
	}
	return []problem.Problem{{At: "/leastBorder", Severity: problem.Stop, What: p.fault(), Do: p.remedy()}}
}

// fault says which of the two is too small, and by how much.
func (p pair) fault() string {
	n := p.notation
	short := fmt.Sprintf("%s less than the least of %s", n.Amount(p.least-p.small), n.Length(p.least))
	switch {
	case p.large >= p.least:
		return fmt.Sprintf("The border at wall %s is %s, %s.", p.smaller, n.Length(p.small), short)
	case p.large-p.small <= measure.Nanometre:
		return fmt.Sprintf("The borders at walls %s and %s are %s each, %s.", p.smaller, p.larger, n.Length(p.small), short)
	}
	return fmt.Sprintf("The border at wall %s is %s, %s; at wall %s it is %s, %s less.", p.smaller, n.Length(p.small), short,
		p.larger, n.Length(p.large), n.Amount(p.least-p.large))
}

// remedy says what to do. Trimming comes off both edges alike, or the mask
// would no longer be centred.
func (p pair) remedy() string {
	var ways []string
	if edge := p.notation.UpToMark(p.least - p.small); p.have-2*edge >= mask.LeastPanel {
		ways = append(ways, fmt.Sprintf("take %s off the %s of the mask, half at each edge", p.notation.Length(2*edge), p.side))
	}
	if p.on == OnFixture {
		ways = append(ways, "centre on the room")
	}
	if p.small >= 0 {
		ways = append(ways, "accept a smaller least border")
	}
	do := strings.Join(ways, ", or ") + "."
	return strings.ToUpper(do[:1]) + do[1:]
}

// OrderSide is the side of a mask that leaves a wanted border at both ends of
// a room's side, exact: side − 2 × border. A border that leaves no panel's
// worth of mask is refused at the place given, "/wantEnds" or "/wantSides".
func OrderSide(at string, side, border measure.Length, n measure.Notation) (measure.Length, []problem.Problem) {
	left := side - 2*border
	if left < mask.LeastPanel {
		do := "Check the size of the room."
		if side > mask.LeastPanel {
			do = fmt.Sprintf("Want a border of at most %s.", n.AtMost((side - mask.LeastPanel).Half()))
		}
		return 0, []problem.Problem{{At: at, Severity: problem.Stop,
			What: fmt.Sprintf("Borders of %s at both ends leave no mask in a room side of %s.", n.Length(border), n.Length(side)),
			Do:   do}}
	}
	return left, nil
}
