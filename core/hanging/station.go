package hanging

import (
	"cmp"
	"slices"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Rect is a rectangle in the box frame: X and Y of the corner nearest the box's
// own corner A.
type Rect struct{ X, Y, Length, Width measure.Length }

// Platform is what the fitters stand on: the deck's two sides, how far beyond
// its edge an arm reaches (Arm), by how much what is reached from two places
// should overlap, and whether it may be turned by a quarter.
//
// Reach is taken as a rectangle, the deck and an arm all round. At its corners
// the arm must reach 1.4 times as far (√2, from a corner of the deck): what
// hangs there is the overlap's to cover.
type Platform struct {
	Length, Width measure.Length
	Arm           measure.Length
	Overlap       measure.Length
	Turn          bool
}

// Sizes outside which a platform is asked about rather than believed. A choice:
// common practice, no source.
const (
	leastDeck = 300 * measure.Millimetre
	mostArm   = 1000 * measure.Millimetre
)

// MostStations is the most places that are worked out for one box.
const MostStations = 400

// IsKnown tells whether both sides of the deck are given.
func (p Platform) IsKnown() bool { return p.Length > 0 && p.Width > 0 }

// Reach is what is reached from one place, the deck not turned.
func (p Platform) Reach() (length, width measure.Length) {
	return p.Length + 2*p.Arm, p.Width + 2*p.Arm
}

// Check says what is missing or cannot be, at "/deckLength", "/deckWidth",
// "/armReach" and "/overlap". A platform of which nothing is known is no
// problem: panels are then hung without regard to it.
func (p Platform) Check() []problem.Problem {
	found := checkDeck("/deckLength", words.Say("length"), p.Length, p.Width)
	found = append(found, checkDeck("/deckWidth", words.Say("width"), p.Width, p.Length)...)
	if p.Arm > mostArm {
		found = append(found, problem.Problem{At: "/armReach", Severity: problem.Caution,
			What: words.Say("An arm that reaches {arm} beyond the deck is longer than arms are.", words.Length("arm", p.Arm)),
			Do:   words.Say("Check the number and write its unit.")})
	}
	length, width := p.Reach()
	if reach := min(length, width); p.IsKnown() && 2*p.Overlap > reach {
		found = append(found, problem.Problem{At: "/overlap", Severity: problem.Stop,
			What: words.Say("Platform positions that overlap by {overlap} overlap by more than half of the {reach} in reach.", words.Length("overlap", p.Overlap), words.Length("reach", reach)),
			Do:   words.Say("Write an overlap of at most {most}.", words.Length("most", reach.Half()))})
	}
	return found
}

func checkDeck(at string, name words.Text, side, other measure.Length) []problem.Problem {
	which := words.Of("side", name)
	switch {
	case side <= 0 && other > 0:
		return []problem.Problem{{At: at, Severity: problem.Note,
			What: words.Say("The {side} of the platform is not given, so its positions are not worked out.", which),
			Do:   words.Say("Measure the deck.")}}
	case side > 0 && side < leastDeck:
		return []problem.Problem{{At: at, Severity: problem.Caution,
			What: words.Say("The {side} of the platform reads {length}, less than anybody stands on.", which, words.Length("length", side)),
			Do:   words.Say("Check the number and write its unit.")}}
	}
	return nil
}

// Station is one place of the platform: where its deck stands and what is
// reached from it. Turned tells that the deck's length lies along the width of
// the mask.
type Station struct {
	Deck, Reach Rect
	Turned      bool
}

// Layout is all the places of the platform that cover a box, row by row from
// the box's own corner A. Columns and Rows are the even grid they form, 0 where
// decks turned and not turned are mixed. Fewest tells that no fewer places can
// cover the box with decks that may be turned where the platform may.
type Layout struct {
	Stations      []Station
	Columns, Rows int
	Fewest        bool
}

// LayoutFor covers a box with places of the platform: as few as an even grid
// needs, of the deck as it is or turned by a quarter, whichever is fewer, then
// whichever has the shorter way; and where the platform may be turned, with
// fewer where decks of both kinds together need fewer (see cover).
//
// With the deck one way, ceil((box − overlap) ÷ (reach − overlap)) along times
// the same across is the fewest: without overlap, that many points spaced just
// over the reach apart need one place each (derived here). Where one place is
// enough its middle is on the middle of the box; else the outermost reach just
// to the edges of the box.
//
// A deck that would run into a wall is moved off it. room is the room in the
// box frame less what must stay free at the walls; the zero value where it is
// not known. No places where box or platform are not complete or Check stops
// at them; no places, and a problem at "/deckLength", where there would be more
// than MostStations.
func LayoutFor(o mask.Outline, p Platform, room Rect) (Layout, []problem.Problem) {
	length, width := p.Reach()
	if !o.IsComplete() || !p.IsKnown() || p.Arm < 0 || p.Overlap < 0 || 2*p.Overlap > min(length, width) {
		return Layout{}, nil
	}
	best := gridFor(o, p, false)
	if p.Turn {
		if turned := gridFor(o, p, true); turned.before(best) {
			best = turned
		}
	}
	if best.count() > MostStations {
		return Layout{}, []problem.Problem{{At: "/deckLength", Severity: problem.Stop,
			What: words.Say("A platform of that reach needs {n} positions to cover the mask; up to {most} are worked out.", words.Name("n", words.Digits(best.count())), words.Count("most", MostStations)),
			Do:   words.Say("Check the sizes of the platform and their units.")}}
	}
	layout := best.layout()
	if p.Turn {
		layout = p.mixed(o, layout)
	}
	for i := range layout.Stations {
		layout.Stations[i].keepIn(room)
	}
	return layout, nil
}

// grid is an even grid of places, before it is laid out.
type grid struct {
	box           mask.Outline
	length, width measure.Length // reach
	arm           measure.Length
	columns, rows int64
	isTurned      bool
}

func gridFor(o mask.Outline, p Platform, turned bool) grid {
	g := grid{box: o, arm: p.Arm, isTurned: turned}
	g.length, g.width = p.Reach()
	if turned {
		g.length, g.width = g.width, g.length
	}
	g.columns, g.rows = evenly(o.Length, g.length, p.Overlap), evenly(o.Width, g.width, p.Overlap)
	return g
}

// evenly is how many stretches that overlap cover a box.
func evenly(box, reach, overlap measure.Length) int64 {
	if box <= reach {
		return 1
	}
	step := reach - overlap
	return int64((box - overlap + step - 1) / step)
}

func (g grid) count() int64 {
	if g.columns > MostStations || g.rows > MostStations {
		return max(g.columns, g.rows) // more than are worked out in any case
	}
	return g.columns * g.rows
}

func (g grid) before(h grid) bool {
	if g.count() != h.count() {
		return g.count() < h.count()
	}
	return g.count() <= MostStations && g.way() < h.way()
}

// pitch is from the middle of one place to the middle of the next, rounded down.
func pitch(box, reach measure.Length, count int64) measure.Length {
	if count < 2 {
		return 0
	}
	return (box - reach) / measure.Length(count-1)
}

func (g grid) way() measure.Length {
	along, across := Boustrophedon(int(g.columns), int(g.rows), pitch(g.box.Length, g.length, g.columns), pitch(g.box.Width, g.width, g.rows))
	return min(along, across)
}

// Boustrophedon is the way through a grid of places, up one line and down the
// next as the ox ploughs, from one corner: in lines along, or in lines across
// (Choset and Pignon 1998, from memory). With even pitches neither can be
// beaten by any route; of uneven ones the shorter of the two is the shortest in
// every case looked at in the tests.
func Boustrophedon(columns, rows int, pitchAlong, pitchAcross measure.Length) (along, across measure.Length) {
	if columns < 1 || rows < 1 {
		return 0, 0
	}
	c, r := measure.Length(columns), measure.Length(rows)
	return r*(c-1)*pitchAlong + (r-1)*pitchAcross, c*(r-1)*pitchAcross + (c-1)*pitchAlong
}

func (g grid) layout() Layout {
	l := Layout{Columns: int(g.columns), Rows: int(g.rows), Fewest: true, Stations: make([]Station, 0, g.count())}
	for row := range g.rows {
		for column := range g.columns {
			l.Stations = append(l.Stations, stationAt(Rect{
				X: startOf(g.box.Length, g.length, column, g.columns), Length: g.length,
				Y: startOf(g.box.Width, g.width, row, g.rows), Width: g.width,
			}, g.arm, g.isTurned))
		}
	}
	return l
}

// startOf is where the reach of a place begins, rounded down to the nanometre;
// since pitches are at most reach less overlap, whole nanometres both, rounding
// opens no gap.
func startOf(box, reach measure.Length, at, count int64) measure.Length {
	if count == 1 {
		return (box - reach) >> 1
	}
	return (box - reach) * measure.Length(at) / measure.Length(count-1)
}

func stationAt(reach Rect, arm measure.Length, turned bool) Station {
	return Station{Reach: reach, Turned: turned,
		Deck: Rect{reach.X + arm, reach.Y + arm, reach.Length - 2*arm, reach.Width - 2*arm}}
}

// keepIn moves a station so that its deck stands inside the room; in a room too
// small for it, to the middle.
func (s *Station) keepIn(room Rect) {
	if room.Length <= 0 || room.Width <= 0 {
		return
	}
	dx := inside(s.Deck.X, s.Deck.Length, room.X, room.Length) - s.Deck.X
	dy := inside(s.Deck.Y, s.Deck.Width, room.Y, room.Width) - s.Deck.Y
	s.Deck.X, s.Reach.X = s.Deck.X+dx, s.Reach.X+dx
	s.Deck.Y, s.Reach.Y = s.Deck.Y+dy, s.Reach.Y+dy
}

// inside is where a stretch begins once it is moved into another.
func inside(start, length, into, room measure.Length) measure.Length {
	if length > room {
		return into + (room-length)>>1
	}
	return min(max(start, into), into+room-length)
}

// Fits tells whether the deck stands inside a room given in the box frame.
func (s Station) Fits(room Rect) bool {
	return s.Deck.X >= room.X && s.Deck.X+s.Deck.Length <= room.X+room.Length &&
		s.Deck.Y >= room.Y && s.Deck.Y+s.Deck.Width <= room.Y+room.Width
}

// byRows puts stations in the order they are numbered in.
func byRows(stations []Station) {
	slices.SortStableFunc(stations, func(a, b Station) int {
		ax, ay := a.Deck.twiceMiddle()
		bx, by := b.Deck.twiceMiddle()
		return cmp.Or(cmp.Compare(ay, by), cmp.Compare(ax, bx))
	})
}
