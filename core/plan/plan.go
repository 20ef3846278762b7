package plan

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/safety"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// Version is the version of the plan that is written and read here.
const Version = 1

// Plan is a plan as far as it could be read. A length of 0 that makes no sense
// as a length (a side of a room) is one that is missing or could not be read;
// where 0 makes sense, a value comes with whether it is known.
type Plan struct {
	ID, Title string
	Units     Units
	Place     Place
	Room      survey.Room
	Fixture   survey.Fixture
	Mask      Mask
	Setting   Setting
	Seams     Seams
	Steps     []Step
	Air       safety.AirPlan
	Access    Access
}

// Units is how answers are written and bare numbers are read.
type Units struct {
	Show       Show
	Bare       measure.Unit
	InchMark   measure.Length
	MetricMark measure.Length
	Gallon     Gallon
}

// Gallon says which gallon is meant by "gal", and by its quart, pint and fluid
// ounce: the two differ by a fifth.
type Gallon string

// The two gallons.
const (
	USGallon       Gallon = "US"
	ImperialGallon Gallon = "imperial"
)

// Volume is the unit of volume that a word of the plan means with this gallon.
// Cups and spoons are the US ones with either: no imperial ones are fixed.
func (g Gallon) Volume(word measure.VolumeUnit) measure.VolumeUnit {
	if g == ImperialGallon {
		switch word {
		case measure.UnitGallon:
			return measure.UnitImperialGallon
		case measure.UnitQuart:
			return measure.UnitImperialQuart
		case measure.UnitPint:
			return measure.UnitImperialPint
		case measure.UnitFluidOunce:
			return measure.UnitImperialFluidOunce
		}
	}
	return word
}

// Show is the plan's word for the notation of answers.
type Show string

// The two notations.
const (
	ShowFeetInches Show = "feet-inches"
	ShowMetric     Show = "metric"
)

// Notation is the notation answers are written in.
func (u Units) Notation() measure.Notation {
	n := measure.Notation{System: measure.FeetInches, InchMark: u.InchMark, MetricMark: u.MetricMark, Imperial: u.Gallon == ImperialGallon}
	if u.Show == ShowMetric {
		n.System = measure.Metric
	}
	return n
}

// OtherNotation is the one answers are not written in.
func (u Units) OtherNotation() measure.Notation {
	n := u.Notation()
	if n.System == measure.Metric {
		n.System = measure.FeetInches
	} else {
		n.System = measure.Metric
	}
	return n
}

// Place is the building: whose safety rules are read, how old it is (Built 0:
// not known), what the surface is and what tests of the old paint gave.
type Place struct {
	Rules    safety.Country
	Built    int
	Textured safety.Answer
	Lead     safety.LeadTest
	Pull     safety.PullTest
}

// Mask is the whole mask and its layers.
type Mask struct {
	mask.Outline
	Layers []Layer
}

// Layer is one layer as the plan gives it. At is its pointer. Tolerance is how
// far one panel may be off, 0 where the plan does not say. Open is the share of
// the mask that is cut out; OpenKnown tells whether the plan says.
type Layer struct {
	At        string
	Cut       mask.Cut
	Tolerance measure.Length
	Open      measure.Number
	OpenKnown bool
}

// Setting is where the mask goes and how wide a border is wanted.
type Setting struct {
	On          setout.On
	LeastBorder measure.Length
	WantEnds    measure.Length
	WantSides   measure.Length
	// Wanted tells which of the two wanted borders are known.
	WantEndsKnown, WantSidesKnown bool
}

// Seams is how seams are bridged with tape.
type Seams struct {
	Cover mask.Cover
	Roll  measure.Length
	Waste measure.Number
}

// Step is one step of the finish. Which fields count depends on Kind and
// Basis. A problem in one step leaves the others as they are: the Known fields
// tell what could be read.
type Step struct {
	At, ID, Name string
	Kind         finish.Kind
	Basis        finish.Basis
	LayerID      string
	Share        measure.Number
	ShareKnown   bool
	Typed        measure.Area
	TypedKnown   bool
	EdgeLength   measure.Length
	BrushWidth   measure.Length
	Coats        int
	Spread       finish.Spread
	SpreadKnown  bool
	// SpreadText is the spread or the film as typed, with its unit, for the
	// working; ByFilm tells which of the two it is.
	SpreadText string
	ByFilm     bool
	Loss       measure.Number
	LossKnown  bool
	Cans       []finish.Can
	Mix        []finish.Part
	VOC        safety.Fact
	Binder     safety.Binder
	DryHours   safety.Fact
	Leaf       *Leaf
}

// Leaf is the leaf of a step.
type Leaf struct {
	Metal        finish.Metal
	Leaf         finish.Leaf
	Cover, Waste measure.Number
	PerBook      int
	BooksPerPack int
	Known        bool
}

// Access is what the work is done from.
type Access struct {
	By      safety.Access
	Stature measure.Length
	Base    measure.Length
	Rails   safety.Answer
	DeckGap measure.Length
}

// Reading is how one length blank was understood.
type Reading struct {
	At      string
	Length  measure.Length
	Written string
}

// Document is what reading gave: the plan, how each length was read, and what
// is wrong. Usable is false where the text is no plan at all; there is then
// nothing to compute.
type Document struct {
	Plan     Plan
	Readings []Reading
	Problems []problem.Problem
	Usable   bool
}
