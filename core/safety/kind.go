package safety

import "ceilingwright/core/measure"

// OnFloor stands among the kinds of platform where none is needed.
const OnFloor Kind = "floor"

// Heights of the deck up to which a kind is asked for. A podium, or steps with a
// railed platform, goes to about 2.5 m: common practice, no source. The standard
// for mobile towers, EN 1004-1:2020, ends at 12 m indoors (its scope); where
// another one holds that is a guide.
const (
	PodiumUpTo = 250 * measure.Centimetre
	TowerUpTo  = 12 * measure.Metre
)

// LowDeckUpTo is the height of deck above which a platform has rails, in this
// table; FloorUpTo that up to which none is needed. Both are choices, common
// practice, no source.
const (
	LowDeckUpTo = lowDeckUpTo
	FloorUpTo   = floorUpTo
)

// KindFor is the lowest kind of platform that carries people to a deck: none up
// to 0.15 m, a hop-up to 0.5 m, a podium to 2.5 m, a mobile tower to 12 m, and
// above that a scaffold that is designed for the room. "" where the deck is not
// known.
func KindFor(deck Deck) Kind {
	switch {
	case deck.Means == "":
		return ""
	case deck.Means == FromFloor:
		return OnFloor
	case deck.Means == LowDeck:
		return HopUp
	case deck.Best <= PodiumUpTo:
		return Podium
	case deck.Best <= TowerUpTo:
		return Tower
	}
	return Scaffold
}

// Carries tells whether a kind that is there goes as high as the one asked for.
// A kind that is not known does not.
func (k Kind) Carries(asked Kind) bool { return k.step() >= asked.step() }

func (k Kind) step() int {
	for i, kind := range [...]Kind{OnFloor, HopUp, Podium, Tower, Scaffold} {
		if k == kind {
			return i
		}
	}
	return -1
}
