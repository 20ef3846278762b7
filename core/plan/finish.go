package plan

import (
	"slices"
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
	"ceilingwright/core/words"
)

// Finish is what the whole finish shares.
type Finish struct {
	Surfaces []Surface
	Kit      []mixing.Measure // spoons, jugs and scales at hand
	Climate  finish.Climate
}

// SurfaceKind says what a surface is.
type SurfaceKind string

// The kinds of surface besides the ceiling.
const (
	Cornice SurfaceKind = "cornice"
	Walls   SurfaceKind = "walls"
)

// Surface is a surface besides the ceiling, with its pointer. Run is 0 for
// round the room. Girth and Corners are for a cornice, Height and Openings for
// walls.
type Surface struct {
	At, ID, Name       string
	Kind               SurfaceKind
	Run, Girth, Height measure.Length
	Corners            int
	Openings           []SurfaceOpening
}

// IsWalls tells whether another surface is walls; one that is not known counts as a
// cornice, which is the less safe.
func (p *Plan) IsWalls(surface string) bool {
	return slices.ContainsFunc(p.Finish.Surfaces, func(s Surface) bool { return s.ID == surface && s.Kind == Walls })
}

// SurfaceOpening is Count doors or windows of one size.
type SurfaceOpening struct {
	At            string
	Length, Width measure.Length
	Count         int
}

const (
	mostSurfaces = 40
	mostOpenings = 40
	mostKit      = 40
)

func readFinish(s section) Finish {
	var f Finish
	for i, e := range s.some("surfaces", mostSurfaces, words.Say("surfaces")) {
		f.Surfaces = append(f.Surfaces, readSurface(e, i))
	}
	for _, e := range s.some("kit", mostKit, words.Say("measures")) {
		unit := word(e, "unit", words.Say("the unit of the measure"), kitUnits()...)
		if size, ok := e.positiveAmount("size", words.Say("the size of the measure")); ok {
			f.Kit = append(f.Kit, s.measureOf(size, unit))
		}
	}
	f.Climate = readClimate(s.section("climate"))
	return f
}

// measureOf is a spoon, a jug or a scale of one of the kit's units.
func (s section) measureOf(size measure.Number, unit string) mixing.Measure {
	switch unit {
	case "g":
		return mixing.ScaleOf(size, unit, measure.NumberFromInt(1))
	case "oz":
		return mixing.ScaleOf(size, unit, ounce)
	}
	return mixing.MeasureOf(size, s.units.Gallon.Volume(measure.VolumeUnit(unit)))
}

// kitUnits are the units that are measured with: those of volume, and weights.
func kitUnits() []string {
	units := make([]string, 0, 12)
	for _, u := range volumeUnits() {
		units = append(units, string(u))
	}
	return append(units, "g", "oz")
}

func readSurface(s section, i int) Surface {
	f := Surface{At: s.at, ID: s.id("id"), Name: s.name("name"), Kind: word(s, "kind", words.Say("what the surface is"), Cornice, Walls)}
	if f.ID == "" {
		f.ID = "surface" + strconv.Itoa(i+1)
	}
	if f.Name == "" {
		f.Name = string(f.Kind)
	}
	f.Run, _ = s.run("run", optional)
	s.when(f.Kind == Cornice, func() {
		f.Girth, _ = s.positive("girth", words.Say("the girth of the profile"))
		if s.text("corners") != "" {
			f.Corners, _ = s.count("corners", optional)
		}
	})
	s.when(f.Kind == Walls, func() {
		f.Height, _ = s.positive("height", words.Say("the height of the walls"))
		for _, e := range s.some("openings", mostOpenings, words.Say("openings")) {
			f.Openings = append(f.Openings, readOpening(e))
		}
	})
	return f
}

func readOpening(s section) SurfaceOpening {
	o := SurfaceOpening{At: s.at, Count: 1}
	o.Length, _ = s.positive("length", words.Say("the length of the opening"))
	o.Width, _ = s.positive("width", words.Say("the width of the opening"))
	if s.text("count") != "" {
		o.Count, _ = s.count("count", optional)
	}
	return o
}

// readClimate turns degrees Fahrenheit into Celsius, exactly.
func readClimate(s section) finish.Climate {
	c := finish.Climate{Fahrenheit: choice(s, "unit", words.Say("the unit of the temperatures"), "F", "C") == "F"}
	c.Air, c.Surface = s.degrees("air", c.Fahrenheit), s.degrees("surface", c.Fahrenheit)
	c.Humidity.Value, c.Humidity.Known = s.share("humidity", optional, 100)
	return c
}

// degrees reads a temperature, which may be below 0.
func (s section) degrees(name string, fahrenheit bool) measure.Fact {
	text := s.text(name)
	if text == "" {
		return measure.Fact{}
	}
	d, err := measure.ParseSigned(text)
	if err != nil {
		s.unreadable(s.at+"/"+name, err)
		return measure.Fact{}
	}
	n := measure.NumberFromDecimal(d)
	if fahrenheit {
		n = n.Sub(measure.NumberFromInt(32)).Mul(measure.NumberFromFraction(5, 9))
	}
	return measure.Fact{Value: n, Known: true}
}
