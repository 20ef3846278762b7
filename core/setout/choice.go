package setout

import (
	"cmp"
	"slices"
	"strconv"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// Choice is one way to place the box, what it leaves of the ceiling, and what
// speaks against it.
type Choice struct {
	Way
	Box      Box
	Borders  Borders // the least on each side
	Layout   Layout
	Problems []problem.Problem // as CheckBorders gives them for this way
}

// Refused tells whether the mask cannot go there as asked.
func (c Choice) Refused() bool {
	for _, p := range c.Problems {
		if p.Severity == problem.Stop {
			return true
		}
	}
	return false
}

// Differ is by how much opposite borders differ, the ends or the sides.
func (c Choice) Differ() measure.Length {
	return max(c.Borders.EndsDiffer(), c.Borders.SidesDiffer())
}

// IsInside tells whether the box lies between the walls. One that does not is
// refused with how much to trim; marks beyond a wall would help nobody.
func (c Choice) IsInside() bool { return c.Borders.Least() >= 0 }

// mostChoices is how many ways are put side by side.
const mostChoices = 18

// Choices are the useful ways to place the box, side by side, and which of them
// is the way asked for: on the room, on the fixture and on the point as far as
// they are known, square to the room, the fixture also along its own axis; and
// on what is asked for, square to the room, to each wall (of a room with more
// than four, to the longest) and to the fixture's axis. Ways on one thing that lie alike are one. A way turned
// 90° is added where only that keeps the borders. Trims are told in whole tape marks. The way must be one that
// Settle gives. There are none until the room is known and the mask has length
// and width.
func (s Site) Choices(way Way, o mask.Outline, least, mark measure.Length) (list []Choice, taken int) {
	if !s.Shape.Usable() || !o.IsComplete() {
		return nil, -1
	}
	list = make([]Choice, 0, 4)
	for _, on := range [3]On{OnRoom, OnFixture, OnPoint} {
		squares := s.squares(way.Square)
		if on == OnPoint && way.On != OnPoint {
			squares = squares[:1]
		}
		for _, square := range squares {
			list = s.with(list, Way{on, square, way.Turned}, o, least, mark)
		}
	}
	if turned := (Way{OnRoom, SquareToRoom, !way.Turned}); allRefused(list) {
		if box, ok := s.Place(turned, o, least); ok && s.Borders(box).Least() >= max(least, 0) {
			list = s.with(list, turned, o, least, mark)
		}
	}
	turn, _ := s.turn(way)
	for i, c := range list {
		if c.On == way.On && c.Box.Turn == turn {
			return list, i
		}
	}
	return list, -1
}

// with is the list with one more way, unless it is full, one on the same thing
// lies alike, or there is no such way.
func (s Site) with(list []Choice, w Way, o mask.Outline, least, mark measure.Length) []Choice {
	turn, ok := s.turn(w)
	if !ok || len(list) == mostChoices {
		return list
	}
	for _, other := range list {
		if other.On == w.On && other.Box.Turn == turn {
			return list
		}
	}
	box, ok := s.Place(w, o, least)
	if !ok {
		return list
	}
	layout := s.Borders(box)
	return append(list, Choice{w, box, layout.Sides, layout, s.CheckBorders(w, box, layout, least, mark)})
}

func allRefused(list []Choice) bool {
	for _, one := range list {
		if !one.Refused() && one.Borders.Least() >= 0 {
			return false
		}
	}
	return true
}

// squares are what a box in this room can be square to, the one asked for
// early.
func (s Site) squares(asked Square) []Square {
	squares := []Square{SquareToRoom, asked}
	walls := s.Shape.Walls()
	if len(walls) > 4 {
		slices.SortStableFunc(walls, func(a, b survey.WallLine) int { return cmp.Compare(b.Length(), a.Length()) })
		walls = walls[:4]
	}
	for _, w := range walls {
		squares = append(squares, Square(w.Name))
	}
	return append(squares, SquareToFixture)
}

// Settle is the way asked for as far as it can be had. Where the fixture, the
// point, the axis or the wall it names is not known, the room stands for it,
// and a problem at "/on" or "/square" says so.
func (s Site) Settle(wish Way) (Way, []problem.Problem) {
	if !s.Shape.Usable() {
		return wish, nil
	}
	var found []problem.Problem
	if p, ok := s.checkOn(wish.On); !ok {
		wish.On = OnRoom
		found = append(found, p)
	}
	if p, ok := s.checkSquare(wish.Square); !ok {
		wish.Square = SquareToRoom
		found = append(found, p)
	}
	return wish, found
}

func (s Site) checkOn(on On) (problem.Problem, bool) {
	p := problem.Problem{At: "/on", Severity: problem.Stop}
	switch on {
	case OnRoom:
		return p, true
	case OnFixture:
		p.What = words.Say("The mask is to be centred on the light, but no place is known for one. The middle of the room is shown.")
		p.Do = words.Say("Say where the light is, or centre on the room.")
		return p, s.Fixture.Known
	case OnPoint:
		p.What = words.Say("The mask is to be centred on a point, but its place is not known. The middle of the room is shown.")
		p.Do = words.Say("Write how far the point is from the two walls at corner W, or centre on the room.")
		return p, s.Point.Known
	}
	p.What = words.Say("{thing} is nothing to centre on. The middle of the room is shown.", words.Name("thing", strconv.Quote(string(on))))
	p.Do = words.Say("Choose the room, the light or a point.")
	return p, false
}

func (s Site) checkSquare(square Square) (problem.Problem, bool) {
	if _, ok := s.TurnOf(square); ok {
		return problem.Problem{}, true
	}
	p := problem.Problem{At: "/square", Severity: problem.Stop}
	switch {
	case square == SquareToFixture:
		p.What = words.Say("The mask is to be square to the light, but its axis is not known. It is shown square to the room.")
		p.Do = words.Say("Measure a second point on the axis of the light, or lay the mask square to the room.")
	case s.Shape.Form == survey.Round:
		p.What = words.Say("A round room has no wall {wall} to be square to. The mask is shown square to the room's axes.", words.Name("wall", string(square)))
		p.Do = words.Say("Choose the room, or the light's axis.")
	default:
		p.What = words.Say("There is no wall {wall} to be square to. The mask is shown square to the room.", words.Name("wall", strconv.Quote(string(square))))
		p.Do = words.Say("Choose the room, one of its walls, or the light's axis.")
	}
	return p, false
}
