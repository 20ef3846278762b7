package job

import (
	"ceilingwright/core/measure"
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

// FindRoom works out the shape of the ceiling, how well it is known, and what is on
// it.
func (j *Job) FindRoom() {
	read, r := j.Plan.Room, &j.Room
	*r = Room{}
	if r.Form = read.Form; r.Form == "" {
		r.Form = survey.Rectangle
	}
	notation := j.Plan.Units.Notation()
	r.Found = read.Find(notation.System)
	r.Shape = r.Found.Shape
	j.Report("/room", r.Found.Problems)
	j.Report("/room/fixture", j.Plan.Fixture.CheckIn(r.Shape))
	for _, o := range j.Plan.Obstructions {
		j.Report(o.At, o.CheckIn(r.Shape))
	}
	j.findThings()
	if !r.Shape.Usable() {
		return
	}
	r.Area, r.Perimeter, r.Fan = r.Shape.Area(), r.Shape.Perimeter(), r.Shape.Fan()
	r.Air = measure.VolumeOver(r.Area, read.Height)
	r.Read = j.closingRead()
	if middle, crossed, apart, ok := r.Shape.Middles(); ok && apart > notation.Mark() {
		r.Middle, r.Crossed, r.Apart = middle, crossed, apart
	}
}

// closingRead is the reading that misses closing: a diagonal, or the line that misses
// most.
func (j *Job) closingRead() measure.Length {
	c := j.Room.Found.Closing
	for _, l := range j.Room.Found.Lines {
		if l.At == c.At {
			return l.Taken()
		}
	}
	if c.Line == survey.LineBD {
		return j.Plan.Room.DiagonalBD
	}
	return j.Plan.Room.DiagonalAC
}

// findThings finds the light and the obstructions in the room.
func (j *Job) findThings() {
	if f := j.Plan.Fixture; f.At != survey.NoFixture && f.At != "" {
		j.findThing(f, Thing{At: "/room/fixture", Kind: "fixture", Light: true})
	}
	for _, o := range j.Plan.Obstructions {
		j.findThing(o.Fixture, Thing{At: o.At, Name: o.Name, Kind: string(o.Kind)})
	}
}

func (j *Job) findThing(f survey.Fixture, t Thing) {
	if t.Middle, t.Placed = f.Middle(j.Room.Shape); t.Placed {
		x, y, own := f.Axis(j.Room.Shape)
		t.InMiddle, t.OwnAxis = f.At == survey.InMiddle, own
		t.Round, t.Length, t.Width = !f.Rectangular, f.Across, f.Across
		if f.Rectangular {
			t.Width = f.Deep
		}
		if y != 0 || x < 0 {
			t.Lies = setout.Turn{AlongX: x, AlongY: y}
		}
		j.Room.Things = append(j.Room.Things, t)
	}
	j.Room.Objects = append(j.Room.Objects, t)
}
