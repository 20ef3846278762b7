package safety

import "ceilingwright/core/measure"

// Country says whose rules are read. The zero value means nobody has said; it
// and Other are answered with the strictest rule known here.
type Country string

// The countries whose rules are in the table.
const (
	US    Country = "US"
	UK    Country = "UK"
	EU    Country = "EU"
	Other Country = "other"
)

// Answer is yes, no, or not known. The zero value is not known, and a rule then
// takes the less safe of the two.
type Answer string

// The two answers a person can give.
const (
	Yes Answer = "yes"
	No  Answer = "no"
)

// Access says what the work is done from. The zero value is not known.
type Access string

// The three ways up.
const (
	Platform Access = "platform"
	Ladder   Access = "ladder"
	Floor    Access = "floor"
)

// LeadTest is what a test of the old paint for lead gave. The zero value and
// NoLeadTest both mean that there is no result.
type LeadTest string

// The results of a lead test.
const (
	NoLeadTest    LeadTest = "none"
	LeadFoundFree LeadTest = "found-free"
	LeadFound     LeadTest = "found"
)

// AsbestosTest is what a laboratory said of the coat of the ceiling. The zero
// value and NoAsbestosTest both mean that there is no result.
type AsbestosTest string

// The results of a laboratory's look for asbestos.
const (
	NoAsbestosTest AsbestosTest = "none"
	AsbestosFree   AsbestosTest = "found-free"
	AsbestosFound  AsbestosTest = "found"
	// AsbestosGone: it was found, and the coat was taken down or boarded over since.
	AsbestosGone AsbestosTest = "gone"
)

// Use says what the building is used for. The zero value is not known, and
// counts as a home.
type Use string

// The uses the rules tell apart: homes; schools, nurseries and other places that
// young children come to again and again; buildings open to the public; other
// places of work.
const (
	Home     Use = "home"
	Children Use = "children"
	Public   Use = "public"
	Works    Use = "work"
)

// PullTest is what a strip of tape pulled off the old paint did. The zero value
// and NoPullTest both mean that nobody has tried.
type PullTest string

// The results of a tape-pull test.
const (
	NoPullTest PullTest = "none"
	PaintHeld  PullTest = "held"
	Lifted     PullTest = "lifted"
)

// Binder is what a product is thinned with or hardens by. The zero value is not
// known.
type Binder string

// The three binders.
const (
	Water     Binder = "water"
	Solvent   Binder = "solvent"
	DryingOil Binder = "drying-oil"
)

// Metal is what leaf is made of.
type Metal string

// The metals of leaf. Imitation gold is brass: copper and zinc.
const (
	Gold      Metal = "gold"
	Imitation Metal = "imitation"
	Silver    Metal = "silver"
	Aluminium Metal = "aluminium"
	Copper    Metal = "copper"
)

// Fact is a number that may not be known. The zero value is not known, which is
// not the same as 0.
type Fact struct {
	Value measure.Number
	Known bool
}

// FactOf is the known number n.
func FactOf(n measure.Number) Fact { return Fact{Value: n, Known: true} }

// Product is the paint, glaze, varnish or size of one step.
type Product struct {
	At       string // pointer to the step in the plan, "/finish/steps/2"
	StepName string // as the plan names it, used in the words of notes
	Litres   Fact   // used up in all coats, loss and thinner included
	VOC      Fact   // grams of solvent a litre, as it is in the can
	Binder   Binder
	Coats    int64 // less than 1 counts as one coat
	DryHours Fact  // hours one coat takes to dry
	Limit    Fact  // the product's own highest eight-hour average, mg/m³; not known: the job's

	FlashPoint Fact // degrees Celsius
	Sprayed    bool
	Size       bool     // it is laid to hold leaf
	Category   Category // what it counts as where VOC is limited
	// Label is the VOC as the label has it, grams a litre. LessWater tells that it
	// leaves water and exempt solvents out; Water and Exempt are these as shares of
	// the volume, Thinner what is added as a share of the product's. VOC above is
	// what a litre holds as it is put on (AsUsed); Unsplit tells that it was taken
	// from a label less water of which nobody has said how much is water, and is
	// then too high.
	Label              Fact
	LessWater, Unsplit bool
	InPounds           bool // the label was read in pounds a US gallon
	Water              Fact
	Exempt, Thinner    measure.Number
}

// AirPlan is how the room is aired. The limit is the highest eight-hour average
// that the product's data sheet or the country allows, in milligrams a cubic
// metre. Opened and Shut are changes of the whole air of the room in an hour,
// with the windows so. Mixing says how badly the fresh air reaches every
// corner: 1 is perfect, 10 very poor.
//
// ShortTerm is the highest average over fifteen minutes, milligrams a cubic
// metre. Fan is what a fan brings besides, in cubic metres an hour, while people
// work. Nights says whether the windows stay open when nobody is at work.
type AirPlan struct {
	Limit, ShortTerm Fact
	Opened, Shut     Fact
	Mixing           Fact
	Fan              Fact
	Nights           Nights
}

// Nights says whether the windows stay open when nobody is at work. The zero
// value counts as shut, which is the less safe.
type Nights string

// The two ways to leave the windows.
const (
	NightsShut Nights = "shut"
	NightsOpen Nights = "open"
)

// Kind is what kind of platform the work is done from. The zero value is not
// known.
type Kind string

// The kinds of platform: a low deck to step on, a small wheeled or folding
// platform with rails of its own, a mobile tower, a scaffold built in the room.
const (
	HopUp    Kind = "hop-up"
	Podium   Kind = "podium"
	Tower    Kind = "tower"
	Scaffold Kind = "scaffold"
)

// Category is what a coating counts as where its VOC is limited by law. The zero
// value is not said.
type Category string

// The categories, in words that the laws of all countries here can be read with.
const (
	MattCeiling      Category = "matt-ceiling"
	GlossCeiling     Category = "gloss-ceiling"
	TrimPaint        Category = "trim-paint"
	TrimVarnish      Category = "trim-varnish"
	SealingPrimer    Category = "sealing-primer"
	BindingPrimer    Category = "binding-primer"
	OnePack          Category = "one-pack"
	TwoPack          Category = "two-pack"
	MultiColoured    Category = "multi-coloured"
	DecorativeEffect Category = "decorative-effect"
	MetallicPaint    Category = "metallic"
	Lacquer          Category = "lacquer"
	ClearShellac     Category = "clear-shellac"
	OpaqueShellac    Category = "opaque-shellac"
	Adhesive         Category = "adhesive"
)

// Categories are all categories.
func Categories() []Category {
	return []Category{MattCeiling, GlossCeiling, TrimPaint, TrimVarnish, SealingPrimer, BindingPrimer, OnePack, TwoPack,
		MultiColoured, DecorativeEffect, MetallicPaint, Lacquer, ClearShellac, OpaqueShellac, Adhesive}
}

// Job is what the rules read. A length, area or volume of 0 is not known.
type Job struct {
	Country       Country
	Year          int    // year the building was built, 0 not known
	Textured      Answer // it is, or ever was
	Lead          LeadTest
	Asbestos      AsbestosTest
	Pull          PullTest
	CeilingHeight measure.Length
	RoomVolume    measure.Volume
	Fixture       Answer // a light, fan or rose in the ceiling
	Access        Access
	Crew          []measure.Length // heights of the people who work up there; 0 or none: not known
	Reach         measure.Length   // how high the fitter comfortably works above the own feet; 0: worked out from the height
	Base          measure.Length   // least side of the platform's base, outriggers included
	Rails         Answer
	DeckGap       measure.Length // from the edge of the deck to the wall or face of the work
	MaskArea      measure.Area
	Products      []Product
	Leaf          []Metal // of every step that lays leaf
	Hands         int     // people who work on the job, 0 not known
	OverheadHours Fact    // hours a day one person works with the hands above the head
	Air           AirPlan
	Warmth        Fact    // of the air as measured, degrees Celsius
	Coats         []Coat  // when they go on; none: not known
	Shifts        []Shift // when people are in the room
	Course        *Course // what CourseOf gave for this job; nil: the rules have it worked out

	Building Building
	Gear     Gear
}

// Building is what else of the house bears on the work.
type Building struct {
	Detectors, Sprinklers Answer // in the ceiling
	Isolated              Answer // the light's circuit is off at the board, locked and proved dead
	Flames                Answer // pilot lights, heaters or stoves
	AirHandling           Answer // air is taken from this room and sent to others
	Below                 Answer // others may pass under the platform
	Fixings               Answer // ground is drilled or boards are lifted
	FloorLoad             Fact   // kilograms a square metre the floor may carry

	Use      Use
	LeadFirm Answer // the firm is certified for lead, as US rules ask in homes
	LeadPlan Answer // how the lead that was found is dealt with is planned in writing
	// SprinklersAgreed: the firm that looks after them has said how they stay clean.
	SprinklersAgreed bool
	// Drop: beside the platform the floor falls away, at a stairwell, a gallery or a
	// low window. DropDepth is how far down the lowest level there is from the floor
	// of the room, 0 not known.
	Drop      Answer
	DropDepth measure.Length
}

// Gear is what else is known of what the work is done from. A length of 0 is not
// known. Deck is what people stand on; Foot what a platform stands on, outriggers
// included; Rated what its deck, or a ladder, may carry; Load the tools and
// materials on it; Mass the platform itself; Panel the heaviest panel, all in
// kilograms.
type Gear struct {
	Kind                              Kind
	DeckLength, DeckWidth             measure.Length
	LadderHeight, RailHeight, RailGap measure.Length
	FootLength, FootWidth             measure.Length
	Wheels, Rides, ToeBoards          Answer
	WayUp, Tied                       Answer
	BaseChecked                       Answer // the maker's table allows this height on this base
	Rated, Load, Mass, Panel          Fact
	OnDeck                            int  // people on the deck, 0 not known
	Minutes                           Fact // in one spot, without a pause
}
