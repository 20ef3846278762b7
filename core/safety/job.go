package safety

import (
	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Country says whose rules are read. One that nobody has said, and one that is not
// among these, is answered with the strictest rule known here.
type Country = words.Country

// The countries whose rules are in the table.
const (
	US    = words.US
	UK    = words.UK
	EU    = words.EU
	Other = words.Other
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

// Job is what the rules read. A length, area or volume of 0 is not known.
type Job struct {
	air.Job       // the room, how it is aired and what is used in it
	Country       Country
	Year          int    // year the building was built, 0 not known
	Textured      Answer // it is, or ever was
	Lead          LeadTest
	Asbestos      AsbestosTest
	Pull          PullTest
	CeilingHeight measure.Length
	Fixture       Answer // a light, fan or rose in the ceiling
	Access        Access
	Crew          []measure.Length // heights of the people who work up there; 0 or none: not known
	Reach         measure.Length   // how high the fitter comfortably works above the own feet; 0: worked out from the height
	Base          measure.Length   // least side of the platform's base, outriggers included
	Rails         Answer
	DeckGap       measure.Length // from the edge of the deck to the wall or face of the work
	MaskArea      measure.Area
	Leaf          []Metal      // of every step that lays leaf
	Hands         int          // people who work on the job, 0 not known
	OverheadHours measure.Fact // hours a day one person works with the hands above the head
	Warmth        measure.Fact // of the air as measured, degrees Celsius
	Course        *air.Course  // what CourseOf gave for this job; nil: the rules have it worked out

	Building Building
	Gear     Gear
}

// Building is what else of the house bears on the work.
type Building struct {
	Detectors, Sprinklers Answer       // in the ceiling
	Isolated              Answer       // the light's circuit is off at the board, locked and proved dead
	Flames                Answer       // pilot lights, heaters or stoves
	AirHandling           Answer       // air is taken from this room and sent to others
	Below                 Answer       // others may pass under the platform
	Fixings               Answer       // ground is drilled or boards are lifted
	FloorLoad             measure.Fact // kilograms a square metre the floor may carry

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
	Rated, Load, Mass, Panel          measure.Fact
	OnDeck                            int          // people on the deck, 0 not known
	Minutes                           measure.Fact // in one spot, without a pause
}
