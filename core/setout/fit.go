package setout

import (
	"fmt"

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
	do := fmt.Sprintf("Trim at least %s off the %s, or order a smaller mask.", say(n, have-room), side)
	if most := room - 2*least; least > 0 && most > 0 {
		do = fmt.Sprintf("Order a mask at most %s %s, which leaves the least border of %s, or trim %s.",
			n.Length(most), how, n.Length(least), say(n, have-most))
	}
	return []problem.Problem{{At: at, Severity: problem.Stop,
		What: fmt.Sprintf("The mask is %s %s and the room %s: %s too much.", n.Length(have), how, n.Length(room), say(n, have-room)),
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
		found = append(found, checkPair(on, "length", survey.DA, survey.BC, borders, least, n)...)
	}
	if box.Width <= room.Width {
		found = append(found, checkPair(on, "width", survey.AB, survey.CD, borders, least, n)...)
	}
	return found
}

// checkPair looks at two opposite borders. Centred on the room they differ by
// a nanometre at most, and trimming must come off both sides to keep the
// centre.
func checkPair(on On, side string, one, other survey.Wall, borders Borders, least measure.Length, n measure.Notation) []problem.Problem {
	small, large := borders.At(one), borders.At(other)
	if large < small {
		small, large, one, other = large, small, other, one
	}
	if small >= least {
		return nil
	}
	trim := 2 * (least - small)
	shift := ""
	if on == OnFixture {
		shift = ", or centre on the room"
	}
	if small < 0 {
		return []problem.Problem{{At: "/on", Severity: problem.Stop,
			What: fmt.Sprintf("Centred there, the mask runs %s past wall %s.", say(n, -small), one),
			Do:   fmt.Sprintf("Take %s off the %s of the mask, half at each edge%s.", say(n, trim), side, shift)}}
	}
	do := fmt.Sprintf("Take %s off the %s of the mask, half at each edge%s, or accept a smaller least border.", say(n, trim), side, shift)
	where := fmt.Sprintf("border at wall %s is", one)
	if large < least {
		where = fmt.Sprintf("borders at walls %s and %s are", one, other)
		if large-small > measure.Nanometre {
			where = fmt.Sprintf("borders at walls %s and %s are %s and", one, other, n.Length(large))
		}
	}
	return []problem.Problem{{At: "/leastBorder", Severity: problem.Stop,
		What: fmt.Sprintf("The %s %s, %s less than the least of %s.", where, n.Length(small), say(n, least-small), n.Length(least)),
		Do:   do}}
}

// OrderSide is the side of a mask that leaves a wanted border at both ends of
// a room's side, exact: side − 2 × border. A border that leaves no panel's
// worth of mask is refused at the place given, "/wantEnds" or "/wantSides".
func OrderSide(at string, side, border measure.Length, n measure.Notation) (measure.Length, []problem.Problem) {
	left := side - 2*border
	if left < mask.LeastPanel {
		return 0, []problem.Problem{{At: at, Severity: problem.Stop,
			What: fmt.Sprintf("Borders of %s at both ends leave no mask in a room side of %s.", n.Length(border), n.Length(side)),
			Do:   fmt.Sprintf("Want a border of at most %s.", n.Length((side - mask.LeastPanel).Half()))}}
	}
	return left, nil
}

// say is an amount as people write it, or to the last digit where the tape
// mark would hide it all.
func say(n measure.Notation, l measure.Length) string {
	if l != 0 && l+n.Hides(l) == 0 {
		return n.Exact(l)
	}
	return n.Length(l)
}
