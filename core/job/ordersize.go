package job

import (
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/sum"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// SizedSide is one side of a mask that was worked out from borders. Sum is none where
// the walls do not stand as the mask does; Other is then the other side where that was
// given, and 0 where both were worked out together. Border is the border it leaves.
type SizedSide struct {
	Side          setout.Side
	Length        measure.Length
	Sum           sum.Sum
	Border, Other measure.Length
}

// Sized is how long a side of the mask is in a list of them; false where it is not
// among them.
func Sized(list []SizedSide, side setout.Side) (measure.Length, bool) {
	for i := range list {
		if list[i].Side == side {
			return list[i].Length, true
		}
	}
	return 0, false
}

// sizeToOrder turns a wanted border round into the mask to order, and finds how large
// a mask can be that keeps the least border.
func (j *Job) sizeToOrder() {
	set, s := &j.Plan.Setting, &j.Setting
	switch {
	case s.Upright:
		if set.WantEndsKnown {
			j.orderAlong(&s.Edges[0], "/wantEnds", set.WantEnds)
		}
		if set.WantSidesKnown {
			j.orderAlong(&s.Edges[1], "/wantSides", set.WantSides)
		}
	case j.Room.Shape.Usable() && set.WantEndsKnown && set.WantSidesKnown:
		j.orderBoth()
	case j.Room.Shape.Usable() && (set.WantEndsKnown || set.WantSidesKnown):
		j.orderOne()
	}
	j.largest()
}

// along is the side of the mask that lies along an edge of the room.
func (j *Job) along(e *Edge) setout.Side {
	return setout.Side((e.Near == survey.AB) != j.Setting.Way.Turned)
}

func (j *Job) orderAlong(e *Edge, at string, border measure.Length) {
	if e.Room <= 0 {
		return
	}
	size, problems := setout.OrderSide(at, e.Room, border)
	j.Report("/setting", problems)
	if !size.IsNone() {
		j.Setting.Order = append(j.Setting.Order, SizedSide{Side: j.along(e), Length: size.Value(), Sum: size})
	}
}

func (j *Job) wanted() setout.Borders {
	set := &j.Plan.Setting
	return setout.Borders{AB: set.WantSides, BC: set.WantEnds, CD: set.WantSides, DA: set.WantEnds}
}

// orderBoth works out both sides together.
func (j *Job) orderBoth() {
	if size, ok := j.Setting.Site.Largest(j.Setting.Way, j.wanted()); ok {
		j.Setting.Order = together(size)
		return
	}
	j.noOrder("/wantEnds")
}

func together(size mask.Outline) []SizedSide {
	return []SizedSide{{Side: setout.LongSide, Length: size.Length}, {Side: setout.WideSide, Length: size.Width}}
}

// orderOne works out one side, the other as the mask has it.
func (j *Job) orderOne() {
	set, outline, way := &j.Plan.Setting, &j.Plan.Mask.Outline, j.Setting.Way
	size, at := SizedSide{Side: setout.Side(set.WantSidesKnown != way.Turned), Border: set.WantEnds, Other: outline.Width}, "/wantEnds"
	if set.WantSidesKnown {
		size.Border, at = set.WantSides, "/wantSides"
	}
	if size.Side == setout.WideSide {
		size.Other = outline.Length
	}
	if size.Other <= 0 {
		return
	}
	var ok bool
	if size.Length, ok = j.Setting.Site.LargestSide(way, size.Side, size.Other, j.wanted()); !ok {
		j.noOrder(at)
		return
	}
	j.Setting.Order = append(j.Setting.Order, size)
}

// noOrder reports that no size to order is worked out.
func (j *Job) noOrder(at string) {
	p := problem.Problem{At: at, Severity: problem.Caution,
		What: words.Say("No mask keeps these borders where it is centred."),
		Do:   words.Say("Want smaller borders, or centre it elsewhere.")}
	switch {
	case !j.Room.Shape.IsConvex():
		p.What = words.Say("In a room with a corner that points inwards the size to order is not worked out from the border.")
		p.Do = words.Say("Try sizes for the mask, and read the borders they leave.")
	case j.Room.Shape.Form == survey.Round:
		p.What = words.Say("In a round room the size to order is worked out only for a mask in its middle and along its axes.")
		p.Do = words.Say("Centre on the room, or try sizes and read the borders they leave.")
	}
	j.Report("/setting", []problem.Problem{p})
}

// largest is the largest mask that keeps the least border, where one is given.
func (j *Job) largest() {
	s, least := &j.Setting, j.Plan.Setting.LeastBorder
	if least <= 0 {
		return
	}
	if !s.Upright {
		size, ok := s.Site.Largest(s.Way, setout.Borders{AB: least, BC: least, CD: least, DA: least})
		if ok && min(size.Length, size.Width) >= mask.LeastPanel {
			s.Largest = together(size)
		}
		return
	}
	for i := range s.Edges {
		e := &s.Edges[i]
		if !e.Known || e.Room <= 0 {
			continue
		}
		if size := sum.Of(min(e.Twice, 2*e.Room-e.Twice)).MinusTwice(least); size.Value() >= mask.LeastPanel {
			s.Largest = append(s.Largest, SizedSide{Side: j.along(e), Length: size.Value(), Sum: size})
		}
	}
}
