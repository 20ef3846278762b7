package mask

import (
	"ceilingwright/core/measure"
)

// Bridging is the tape that covers seams. Piece is the longest piece one person
// lays without creases, 0 for the whole seam; Width is the width of the tape, 0
// where it is not known.
type Bridging struct{ Width, Piece measure.Length }

// JoinLap is how far one piece of bridging tape laps the next, and LeastHold
// what the tape must cover of the panel on either side of the gap. Common
// practice, no source.
const (
	JoinLap   = measure.Inch
	LeastHold = 10 * measure.Millimetre
)

// ShortestPiece is the shortest piece that is reckoned with: below it most of
// the tape would be laps. A choice.
const ShortestPiece = 4 * JoinLap

// Bridge is the tape over one seam: so many pieces of at most Piece each, and
// the Length of all with their laps. Where two seams cross, both tapes run
// through, one over the other, so that no join lies on a crossing; where a seam
// ends on another its tape ends on the middle of the other's.
type Bridge struct {
	Seam   Seam
	Pieces int
	Piece  measure.Length
	Length measure.Length
}

// Bridges are the tapes over the given seams. Pieces of one seam are equally
// long, rounded up to the nanometre: n pieces with a lap between two cover
// n × piece − (n − 1) × lap, so n is the least with that not below the seam.
func (t Bridging) Bridges(seams []Seam) []Bridge {
	bridges := make([]Bridge, len(seams))
	for i, s := range seams {
		bridges[i] = t.bridge(s)
	}
	return bridges
}

func (t Bridging) bridge(s Seam) Bridge {
	if t.Piece < ShortestPiece || s.Length <= t.Piece {
		return Bridge{Seam: s, Pieces: 1, Piece: s.Length, Length: s.Length}
	}
	n := (s.Length - JoinLap + t.Piece - JoinLap - 1) / (t.Piece - JoinLap)
	length := s.Length + (n-1)*JoinLap
	return Bridge{Seam: s, Pieces: int(n), Piece: (length + n - 1) / n, Length: length}
}

// Hold is what the tape covers of the panel on either side of a gap when it is
// laid in the middle: (width − gap) ÷ 2, rounded towards nothing.
func (t Bridging) Hold(gap measure.Length) measure.Length { return (t.Width - gap).Half() }

// WidestGap is the widest gap that the tape bridges with LeastHold on either
// side; below zero it bridges none.
func (t Bridging) WidestGap() measure.Length { return t.Width - 2*LeastHold }
