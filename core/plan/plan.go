package plan

import (
	"strings"

	"ceilingwright/core/air"
	"ceilingwright/core/finish"
	"ceilingwright/core/jsondoc"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
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
	Ticked    []string // pages of the job that are ticked as done
	Marked    []string // marks of the setting out that are on the walls
	Units     Units
	Place     Place
	Room      survey.Room
	Fixture   survey.Fixture
	// Obstructions are the other things on the ceiling, by their pointers.
	Furniture    []Furniture
	Obstructions []Obstruction
	Mask         Mask
	Setting      Setting
	Seams        Seams
	Steps        []Step
	Finish       Finish
	Days         Days
	Price        Price
	Quote        Quote
	Air          air.Plan
	Access       Access
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
// not known), what the surface is, what tests of the old paint gave, and what
// else of the building bears on the work.
type Place struct {
	Rules    safety.Country
	Built    int
	Textured safety.Answer
	Lead     safety.LeadTest
	Pull     safety.PullTest
	// PullOn and PullAt say when and where the tape was pulled, for the record.
	PullOn, PullAt string
	Asbestos       safety.AsbestosTest
	// Detectors and Sprinklers: there are some in the ceiling, whether or not
	// they are among the obstructions. Isolated: the light's circuit is off at the
	// board, locked and proved dead. Flames: pilot lights, heaters or stoves.
	// AirHandling: air is taken from this room and sent to others. Below: others
	// may pass under the platform. Fixings: ground is drilled or boards lifted.
	Detectors, Sprinklers, Isolated, Flames, AirHandling, Below, Fixings safety.Answer
	FloorLoad                                                            measure.Fact // kilograms a square metre the floor may carry
	Use                                                                  safety.Use
	// LeadFirm: the firm is certified for lead. LeadPlan: how the lead found is
	// dealt with is planned in writing. SprinklersAgreed: the firm that looks after
	// the sprinklers has said how they stay clean. Drop: the floor falls away beside
	// the platform, by DropDepth to the lowest level, 0 where nobody has said.
	LeadFirm, LeadPlan safety.Answer
	SprinklersAgreed   bool
	Drop               safety.Answer
	DropDepth          measure.Length
}

// Obstruction is one obstruction with its pointer.
type Obstruction struct {
	At string
	survey.Obstruction
}

// Mask is the whole mask and its layers.
type Mask struct {
	mask.Outline
	Layers []Layer
}

// Setting is where the mask goes and how wide a border is wanted.
type Setting struct {
	On setout.On
	// PointDA and PointAB are the point the box is centred on, where On says so
	// and PointKnown.
	PointDA, PointAB measure.Length
	PointKnown       bool
	// Square is what the box is square to: "room" for the long centre line,
	// "fixture" for the fixture's axis, or the name of a wall.
	Square string
	// Turned tells that the box is turned a quarter, its length along BC.
	Turned bool
	// Taped tells that the line round the box is a strip of tape, TapeWidth
	// wide; else it is a chalk line.
	Taped       bool
	TapeWidth   measure.Length
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
	// Width is how wide the tape is, Piece the longest piece one person lays;
	// 0 where the plan does not say.
	Width, Piece measure.Length
}

// Span is a time that is known within limits: hours from From to To, alike where one
// number was given. Known tells that it was.
type Span struct {
	From, To measure.Number
	Known    bool
}

// IsRange tells whether the two ends differ.
func (s Span) IsRange() bool { return s.Known && s.From.Cmp(s.To) != 0 }

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
	SpreadText  string
	ByFilm      bool
	Loss        measure.Number
	LossKnown   bool
	LossIsUsual bool // the method's, as the plan gives none
	Cans        []finish.Can
	// Mix are the parts of a mix, MixWhole that all of them could be read.
	Mix      []mixing.Part
	MixWhole bool
	VOC      measure.Fact
	Binder   air.Binder
	DryHours measure.Fact
	Leaf     *Leaf

	Surface string // the id of the surface, where Basis is SurfaceOf
	// DryFilm, Solids and Thinned are the film once dry, the volume solids and
	// the thinner as a share of the paint, where ByDryFilm.
	ByDryFilm, DryFilmKnown bool
	DryFilm                 finish.Film
	Solids, Thinned         Percent
	Method                  finish.Method
	Vary                    Percent // how far the need may be off either way
	VaryOfPaint             bool    // that is a share of the paint it takes, not of the area it covers
	BuyFor                  Need
	SameAs                  string // the id of an earlier step whose product this is
	OneBatch                bool
	Keep, Sample            measure.Volume
	Spare                   Percent
	// PotLife are the minutes a mix that sets stays workable.
	PotLife measure.Fact

	// Rate is the area one person does in an hour, where RateKnown.
	// Limit is the highest eight-hour average of the product's own sheet, mg/m³;
	// FlashPoint in degrees Celsius. LessWater tells that VOC is reckoned without
	// the water and the exempt solvents in the product, WaterPart and ExemptPart
	// of it.
	Limit, FlashPoint     measure.Fact
	LessWater             bool
	VOCInPounds           bool // typed in pounds a US gallon
	WaterPart, ExemptPart Percent
	Category              air.Category

	Rate                  measure.Area
	RateKnown             bool
	RecoatHours           measure.Fact
	TackHours, OpenHours  Span
	ReadyAt               string // when size was tested and found ready, as it was typed
	Gilders               int    // 0 where the plan does not say
	Reserve               Percent
	Beyond                measure.Length // sized past a stop line
	Batch, Colour, MadeOn string
}

// Need is which of the three needs is bought for.
type Need string

// What is needed if the product spreads as the label says, worse, or better.
const (
	Likely Need = "likely"
	Rich   Need = "rich"
	Lean   Need = "lean"
)

// Lay is how leaf is laid.
type Lay string

// Over a field by its area, in a grid of whole leaves, or as a band of strips.
const (
	Field Lay = "field"
	Grid  Lay = "grid"
	Band  Lay = "band"
)

// Leaf is the leaf of a step. Band blanks count where Lay is Band; Spill is how
// far the leaf runs past the edge of the openings or the band, OpeningsEdge all
// edges of the openings together, 0 where not known. A BandRun of 0 is round the
// whole mask, unless BandRunWrong tells that it was typed and not read; BandMeets
// tells that the band runs round and meets itself.
type Leaf struct {
	Lay                        Lay
	BandWidth, BandRun         measure.Length
	BandCorners                int
	BandMeets, BandRunWrong    bool
	Spill, OpeningsEdge        measure.Length
	PerBookPrice, PerPackPrice Money
	GramsPer1000               measure.Fact

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
	// The platform's deck, how far one reaches beyond its edge, and by how much
	// what is reached from two places overlaps; 0 where the plan does not say.
	// Turn tells whether the platform may be turned a quarter.
	DeckLength, DeckWidth measure.Length
	ArmReach, Overlap     measure.Length
	Turn                  bool

	Kind  safety.Kind    // of platform
	Reach measure.Length // how high the fitter comfortably works above the own feet, 0 not tried out
	// OtherStature is how tall the fitter is whose height differs most; LadderHeight
	// the height of a stepladder; RailHeight and RailGap those of the rails;
	// FootLength and FootWidth what the platform stands on, outriggers included.
	OtherStature, LadderHeight, RailHeight, RailGap, FootLength, FootWidth measure.Length
	Wheels, Rides, ToeBoards, WayUp, Tied, BaseChecked                     safety.Answer
	// Kilograms: what the deck may carry, the tools and materials on it, the
	// platform itself and the heaviest panel.
	Rated, Load, Mass, Panel measure.Fact
	OnDeck                   int          // people on the deck, 0 where the plan does not say
	Minutes                  measure.Fact // in one spot, without a pause
}

// Furniture is what stays in the room, on the floor, with its pointer: a
// rectangle along the walls, its corner nearest to A FromDA and FromAB.
type Furniture struct {
	At, Name                      string
	FromDA, FromAB, Length, Width measure.Length
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

	top     *jsondoc.Node
	written [len(partNames)]string // each part as it is written
}

// IsBlank tells whether nothing is written at a pointer (RFC 6901): it names nothing
// that is there, a text without a letter, or a list without an entry. Names with a slash in them
// are not looked for: no blank has one.
func (d *Document) IsBlank(pointer string) bool {
	node := d.top
	for step := range strings.SplitSeq(pointer, "/") {
		if step != "" {
			node = node.At(step)
		}
	}
	return node == nil || node.Text == "" && !node.HoldsOthers()
}
