package finish

import "ceilingwright/core/words"

// Set is a way of working that a finish often begins with, as steps in their
// order. The steps are common practice, no source; every one of them can be
// changed, moved or taken out.
type Set string

// The sets: a mask of one layer, sealed, painted and peeled; two layers, the
// second of which gets leaf, with a glaze over all; a band or field on a wall.
const (
	OneLayer     Set = "one-layer"
	LeafAndGlaze Set = "leaf-and-glaze"
	WallBand     Set = "wall-band"
)

// Sets lists the sets.
func Sets() []Set { return []Set{OneLayer, LeafAndGlaze, WallBand} }

// Words is what people choose a set by.
func (s Set) Words() string {
	switch s {
	case OneLayer:
		return "one layer, plain"
	case LeafAndGlaze:
		return "two layers, the second in leaf"
	case WallBand:
		return "a band on a wall"
	}
	return ""
}

// Begun is one step of a set: what it starts from, what it is called, and which
// layer of the mask it goes through, counted from 1; 0 is none.
type Begun struct {
	Start
	Name  words.Text
	Layer int
}

// Steps are the steps of s in the order of the work. A word that is no set has
// none.
//
// The edges of the first mask are sealed before any colour, so that what creeps
// under shows in the ground's own colour. Under leaf a clear seal does both: it
// closes the edges and keeps imitation leaf from tarnishing from behind. A wall
// band covers a wall or a part of it, so its ground is an area to be given.
func (s Set) Steps() []Begun {
	switch s {
	case OneLayer:
		return []Begun{begin(Protect, 0), begin(Base, 0), begin(EdgeSeal, 1), begin(Coat, 1), begin(Peel, 1)}
	case LeafAndGlaze:
		return []Begun{begin(Protect, 0), begin(Base, 0), begin(EdgeSeal, 1), begin(Coat, 1), begin(Peel, 1),
			begin(ClearSeal, 2), begin(Underpaint, 2), begin(SizeCoat, 2), begin(LeafLaying, 2), begin(Peel, 2),
			called(words.Say("Glaze over all"), Glaze, Surface)}
	case WallBand:
		return []Begun{called(words.Say("Ground of the wall"), Base, Typed), begin(EdgeSeal, 1), begin(Coat, 1), begin(Peel, 1)}
	}
	return nil
}

// StepOf is a step of kind k by itself. ok is false for a word that is no kind.
func StepOf(k Kind) (step Begun, ok bool) {
	start, ok := Starting(k)
	return Begun{Start: start, Name: k.Name()}, ok
}

func begin(k Kind, layer int) Begun {
	step, _ := StepOf(k)
	step.Layer = layer
	return step
}

func called(name words.Text, k Kind, basis Basis) Begun {
	step := begin(k, 0)
	step.Name, step.Basis = name, basis
	return step
}

// Name is what a step of the kind is called until a person calls it something
// else; nothing for a word that is no kind.
func (k Kind) Name() words.Text {
	switch k {
	case Protect:
		return words.Say("Protect floor and walls")
	case Base:
		return words.Say("Base coat")
	case EdgeSeal:
		return words.Say("Edge seal")
	case Coat:
		return words.Say("Coat")
	case ClearSeal:
		return words.Say("Clear seal")
	case Underpaint:
		return words.Say("Colour under the leaf")
	case SizeCoat:
		return words.Say("Size")
	case LeafLaying:
		return words.Say("Leaf")
	case Glaze:
		return words.Say("Glaze")
	case ClearCoat:
		return words.Say("Clear coat")
	case Peel:
		return words.Say("Peel the mask")
	}
	return words.Text{}
}
