// Package room works out the room and what is on its ceiling.
package room

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// Room is the room as worked out, Shape the ceiling of it; it may not be usable, and
// what follows is then nothing. Fan is an outline cut into triangles that meet at its
// first corner, what lies outside the room below zero; none of a rectangle or a round
// room. Air is nothing without a height. Read is the reading that misses closing.
// Apart is how far the two middles of the room are apart, where that is more than a
// mark of the tape; else 0.
//
// Objects are the light, where there is one, and the obstructions, in the order of the
// plan; Things those of which the place is known.
type Room struct {
	Form            survey.Form
	Found           survey.Found
	Shape           survey.Shape
	Area            measure.Area
	Perimeter       measure.Length
	Fan             []measure.Area
	Air             measure.Volume
	Read            measure.Length
	Middle, Crossed survey.Point
	Apart           measure.Length
	Objects, Things []Thing
}

// Find works out the shape of the ceiling, how well it is known, and what is on it.
func Find(p *plan.Plan) (r Room, wrong problem.List) {
	read := p.Room
	if r.Form = read.Form; r.Form == "" {
		r.Form = survey.Rectangle
	}
	notation := p.Units.Notation()
	r.Found = read.Find(notation.System)
	r.Shape = r.Found.Shape
	wrong.Report("/room", r.Found.Problems)
	wrong.Report("/room/fixture", p.Fixture.CheckIn(r.Shape))
	for _, o := range p.Obstructions {
		wrong.Report(o.At, o.CheckIn(r.Shape))
	}
	r.findThings(p)
	if !r.Shape.Usable() {
		return r, wrong
	}
	r.Area, r.Perimeter, r.Fan = r.Shape.Area(), r.Shape.Perimeter(), r.Shape.Fan()
	r.Air = measure.VolumeOver(r.Area, read.Height)
	r.Read = r.closingRead(&read)
	if middle, crossed, apart, ok := r.Shape.Middles(); ok && apart > notation.Mark() {
		r.Middle, r.Crossed, r.Apart = middle, crossed, apart
	}
	return r, wrong
}

// closingRead is the reading that misses closing: a diagonal, or the line that misses
// most.
func (r *Room) closingRead(read *survey.Room) measure.Length {
	c := r.Found.Closing
	for _, l := range r.Found.Lines {
		if l.At == c.At {
			return l.Taken()
		}
	}
	if c.Line == survey.LineBD {
		return read.DiagonalBD
	}
	return read.DiagonalAC
}

// findThings finds the light and the obstructions in the room.
func (r *Room) findThings(p *plan.Plan) {
	if f := p.Fixture; f.At != survey.NoFixture && f.At != "" {
		r.findThing(f, Thing{At: "/room/fixture", Kind: "fixture", Light: true})
	}
	for _, o := range p.Obstructions {
		r.findThing(o.Fixture, Thing{At: o.At, Name: o.Name, Kind: string(o.Kind)})
	}
}

func (r *Room) findThing(f survey.Fixture, t Thing) {
	if t.Middle, t.Placed = f.Middle(r.Shape); t.Placed {
		x, y, own := f.Axis(r.Shape)
		t.InMiddle, t.OwnAxis = f.At == survey.InMiddle, own
		t.Round, t.Length, t.Width = !f.Rectangular, f.Across, f.Across
		if f.Rectangular {
			t.Width = f.Deep
		}
		if y != 0 || x < 0 {
			t.Lies = setout.Turn{AlongX: x, AlongY: y}
		}
		r.Things = append(r.Things, t)
	}
	r.Objects = append(r.Objects, t)
}
