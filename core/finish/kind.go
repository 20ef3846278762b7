package finish

import (
	"slices"

	"ceilingwright/core/words"
)

// Kind is what a step of the finish does.
type Kind string

// The kinds of step, in the order of the work.
const (
	Protect    Kind = "protect"
	Base       Kind = "base"
	EdgeSeal   Kind = "edge-seal"
	Coat       Kind = "coat"
	ClearSeal  Kind = "clear-seal"
	Underpaint Kind = "underpaint"
	SizeCoat   Kind = "size"
	LeafLaying Kind = "leaf"
	Glaze      Kind = "glaze"
	ClearCoat  Kind = "clear-coat"
	Peel       Kind = "peel"
)

// Kinds lists the kinds of step in the order of the work.
func Kinds() []Kind {
	return []Kind{Protect, Base, EdgeSeal, Coat, ClearSeal, Underpaint, SizeCoat, LeafLaying, Glaze, ClearCoat, Peel}
}

// ParseKind reads a kind of step. Only the exact words of Kinds are read.
func ParseKind(text string) (Kind, bool) {
	if !slices.Contains(Kinds(), Kind(text)) {
		return "", false
	}
	return Kind(text), true
}

// IsLiquid tells whether a step of this kind uses up paint, size or another
// product that is spread. Protecting, leaf and peeling do not.
func (k Kind) IsLiquid() bool { return k != Protect && k != LeafLaying && k != Peel }

// Liquid is what a step of a kind that uses up a liquid puts on.
type Liquid int

// The liquids.
const (
	PaintOf Liquid = iota
	SizeOf
	GlazeOf
	ClearOf
)

// Liquid is what a step of this kind puts on, where it is a liquid.
func (k Kind) Liquid() Liquid {
	switch k {
	case SizeCoat:
		return SizeOf
	case Glaze:
		return GlazeOf
	case ClearSeal, ClearCoat:
		return ClearOf
	}
	return PaintOf
}

// Basis is which area a step covers.
type Basis string

// The area bases: the whole surface, the border outside the mask, the whole
// mask (a roller covers the vinyl as well as the openings), the openings of a
// layer, the edges of the openings (their length times a brush width), another
// surface such as a cornice, or an area that was typed.
const (
	Surface   Basis = "surface"
	Border    Basis = "border"
	Mask      Basis = "mask"
	Openings  Basis = "openings"
	Edges     Basis = "edges"
	SurfaceOf Basis = "surface-of"
	Typed     Basis = "typed"
)

// IsOnMask tells whether a step with this area lies in the openings of a mask or over
// it.
func (b Basis) IsOnMask() bool { return b == Openings || b == Mask || b == Edges || b == Typed }

// Bases lists the area bases.
func Bases() []Basis { return []Basis{Surface, Border, Mask, Openings, Edges, SurfaceOf, Typed} }

// Metal is what a leaf is beaten from.
type Metal string

// The metals. Imitation is the brass-like leaf also called Dutch metal or
// composition leaf.
const (
	Gold      Metal = "gold"
	Imitation Metal = "imitation"
	Silver    Metal = "silver"
	Aluminium Metal = "aluminium"
	Copper    Metal = "copper"
)

// Metals lists the metals.
func Metals() []Metal { return []Metal{Gold, Imitation, Silver, Aluminium, Copper} }

// Called is a metal as it is called.
func (m Metal) Called() words.Text {
	switch m {
	case Gold:
		return words.Say("gold")
	case Imitation:
		return words.Say("imitation")
	case Silver:
		return words.Say("silver")
	case Aluminium:
		return words.Say("aluminium")
	case Copper:
		return words.Say("copper")
	}
	return words.Verbatim(string(m))
}
