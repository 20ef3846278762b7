package setting

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
func (o *out) sizeToOrder() {
	set, s := &o.Plan.Setting, &o.Setting
	switch {
	case s.Upright:
		if set.WantEndsKnown {
			o.orderAlong(&s.Edges[0], "/wantEnds", set.WantEnds)
		}
		if set.WantSidesKnown {
			o.orderAlong(&s.Edges[1], "/wantSides", set.WantSides)
		}
	case o.Room.Shape.Usable() && set.WantEndsKnown && set.WantSidesKnown:
		o.orderBoth()
	case o.Room.Shape.Usable() && (set.WantEndsKnown || set.WantSidesKnown):
		o.orderOne()
	}
	o.largest()
}

// along is the side of the mask that lies along an edge of the room.
func (o *out) along(e *Edge) setout.Side {
	return setout.Side((e.Near == survey.AB) != o.Setting.Way.Turned)
}

func (o *out) orderAlong(e *Edge, at string, border measure.Length) {
	if e.Room <= 0 {
		return
	}
	size, problems := setout.OrderSide(at, e.Room, border)
	o.Report("/setting", problems)
	if !size.IsNone() {
		o.Setting.Order = append(o.Setting.Order, SizedSide{Side: o.along(e), Length: size.Value(), Sum: size})
	}
}

func (o *out) wanted() setout.Borders {
	set := &o.Plan.Setting
	return setout.Borders{AB: set.WantSides, BC: set.WantEnds, CD: set.WantSides, DA: set.WantEnds}
}

// orderBoth works out both sides together.
func (o *out) orderBoth() {
	if size, ok := o.Setting.Site.Largest(o.Setting.Way, o.wanted()); ok {
		o.Setting.Order = together(size)
		return
	}
	o.noOrder("/wantEnds")
}

func together(size mask.Outline) []SizedSide {
	return []SizedSide{{Side: setout.LongSide, Length: size.Length}, {Side: setout.WideSide, Length: size.Width}}
}

// orderOne works out one side, the other as the mask has it.
func (o *out) orderOne() {
	set, outline, way := &o.Plan.Setting, &o.Plan.Mask.Outline, o.Setting.Way
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
	if size.Length, ok = o.Setting.Site.LargestSide(way, size.Side, size.Other, o.wanted()); !ok {
		o.noOrder(at)
		return
	}
	o.Setting.Order = append(o.Setting.Order, size)
}

// noOrder reports that no size to order is worked out.
func (o *out) noOrder(at string) {
	p := problem.Problem{At: at, Severity: problem.Caution,
		What: words.Say("No mask keeps these borders where it is centred."),
		Do:   words.Say("Want smaller borders, or centre it elsewhere.")}
	switch {
	case !o.Room.Shape.IsConvex():
		p.What = words.Say("In a room with a corner that points inwards the size to order is not worked out from the border.")
		p.Do = words.Say("Try sizes for the mask, and read the borders they leave.")
	case o.Room.Shape.Form == survey.Round:
		p.What = words.Say("In a round room the size to order is worked out only for a mask in its middle and along its axes.")
		p.Do = words.Say("Centre on the room, or try sizes and read the borders they leave.")
	}
	o.Report("/setting", []problem.Problem{p})
}

// largest is the largest mask that keeps the least border, where one is given.
func (o *out) largest() {
	s, least := &o.Setting, o.Plan.Setting.LeastBorder
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
			s.Largest = append(s.Largest, SizedSide{Side: o.along(e), Length: size.Value(), Sum: size})
		}
	}
}
