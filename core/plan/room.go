package plan

import (
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// mostObstructions is more than any ceiling has.
const mostObstructions = 60

// readRoom reads all blanks of the room, whatever its form; only those of the
// form taken are remarked on.
func readRoom(s section) survey.Room {
	room := survey.Room{Form: choice(s, "form", words.Say("how the room was measured"), survey.Rectangle, survey.Lines, survey.Points, survey.Walls, survey.Round)}
	sides, square := room.Form == survey.Rectangle || room.Form == survey.Round, room.Form == survey.Rectangle
	s.when(sides, func() {
		room.Length, _ = s.length("length", optional)
		room.Width, _ = s.length("width", optional)
	})
	if !sides {
		room.Length, room.Width = 0, 0
	}
	room.Height, _ = s.length("height", optional)
	s.when(square, func() {
		room.DiagonalAC, _ = s.run("diagonalAC", optional)
		room.DiagonalBD, _ = s.run("diagonalBD", optional)
	})
	s.when(square || room.Form == survey.Lines, func() { room.Tape = readTape(s.section("tape")) })
	s.when(room.Form == survey.Lines, func() { room.Readings = readReadings(s) })
	s.when(room.Form == survey.Points, func() {
		for _, e := range s.some("points", survey.MostCorners, words.Say("corners")) {
			room.Points = append(room.Points, readCorner(e))
		}
	})
	s.when(room.Form == survey.Walls, func() {
		for _, e := range s.some("walls", survey.MostCorners, words.Say("walls")) {
			room.Walls = append(room.Walls, readWall(e))
		}
	})
	return room
}

// readTape reads how good the tape is. What the plan does not say is a
// sixteenth of an inch, or in metric a millimetre and a half and a millimetre
// to read to; whoever reckons with it says so.
func readTape(s section) survey.Tape {
	var tape survey.Tape
	tape.Deviation, _ = s.positive("deviation", optional)
	tape.ReadTo, _ = s.positive("readTo", optional)
	return tape
}

func readReadings(s section) []survey.Reading {
	var readings []survey.Reading
	for _, e := range s.some("readings", survey.MostReadings, words.Say("readings")) {
		reading := survey.Reading{
			Line: word(e, "line", words.Say("which line was measured"), survey.LineAB, survey.LineBC, survey.LineCD, survey.LineDA,
				survey.LineAC, survey.LineBD, survey.LineABCD, survey.LineDABC),
			At: e.at[len(s.at):],
		}
		reading.Length, _ = e.length("length", optional)
		reading.Start, _ = e.length("start", optional)
		readings = append(readings, reading)
	}
	return readings
}

func readCorner(s section) survey.CornerReading {
	var c survey.CornerReading
	var x, y bool
	c.X, x = s.offset("x", optional)
	c.Y, y = s.offset("y", optional)
	c.Known = x && y
	return c
}

func readWall(s section) survey.WallReading {
	var w survey.WallReading
	w.Length, _ = s.length("length", optional)
	w.Angle, w.AngleKnown = s.number("angle", optional)
	return w
}

func readFixture(s section) survey.Fixture {
	return readObject(s, word(s, "at", words.Say("where the light hangs"), survey.NoFixture, survey.InMiddle, survey.Measured, survey.FromCorners))
}

func readObstructions(s section) []Obstruction {
	var found []Obstruction
	for _, e := range s.some("obstructions", mostObstructions, words.Say("obstructions")) {
		o := Obstruction{At: e.at}
		o.Name = e.name("name")
		o.Kind = word(e, "kind", words.Say("what the obstruction is"), survey.Vent, survey.Hatch, survey.Detector, survey.Sprinkler, survey.Beam, survey.OtherKind)
		o.Fixture = readObject(e, word(e, "at", words.Say("where the obstruction is"), survey.Measured, survey.FromCorners, survey.InMiddle))
		found = append(found, o)
	}
	return found
}

// readObject reads where a thing is on the ceiling and how large. What the way
// it was measured in has no use for is not remarked on.
func readObject(s section, at survey.Place) survey.Fixture {
	f := survey.Fixture{At: at, Rectangular: choice(s, "shape", words.Say("what shape it has"), "round", "rectangular") == "rectangular"}
	s.when(at == survey.Measured, func() {
		f.FromDA, _ = s.length("fromDA", optional)
		f.FromAB, _ = s.length("fromAB", optional)
	})
	s.when(at == survey.FromCorners, func() {
		f.CornerOne, f.CornerTwo, f.Side = corner(s.text("cornerOne")), corner(s.text("cornerTwo")), corner(s.text("side"))
		f.FromOne, _ = s.length("fromOne", optional)
		f.FromTwo, _ = s.length("fromTwo", optional)
	})
	s.when(at != survey.NoFixture, func() {
		f.Across, _ = s.length("across", optional)
		f.AxisDA, f.AxisAB, _ = s.both("axisDA", "axisAB", words.Say("to the second point on the axis"), words.Say("none"))
	})
	s.when(at != survey.NoFixture && f.Rectangular, func() { f.Deep, _ = s.length("deep", optional) })
	return f
}

// corner is the name of a corner as typed, in a capital.
func corner(text string) survey.Corner { return survey.Corner(label(text)) }

// mostFurniture is more than is left standing in any room.
const mostFurniture = 40

func readFurniture(s section) []Furniture {
	var found []Furniture
	for _, e := range s.some("furniture", mostFurniture, words.Say("things on the floor")) {
		f := Furniture{At: e.at, Name: e.name("name")}
		f.FromDA, _ = e.length("fromDA", optional)
		f.FromAB, _ = e.length("fromAB", optional)
		f.Length, _ = e.positive("length", words.Say("the length of what stands there"))
		f.Width, _ = e.positive("width", words.Say("the width of what stands there"))
		found = append(found, f)
	}
	return found
}
