package finish

import (
	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Gilding is a field or the share of one that is to be laid with leaf. Area is the
// work itself, Spill what the leaf runs over beyond its edges, onto a mask that is
// peeled: leaf is bought for both and shows on the first. Cover is the share of the area that gets leaf: 1 where it is laid whole and rubbed
// later, 0.6 to 0.8 for a broken lay, 0.2 to 0.4 for scattered flakes. Waste is
// the share lost on top: 0.10 lying flat, 0.20 overhead. Both are common
// practice, no source.
type Gilding struct {
	Area  measure.Area
	Spill measure.Area
	Leaf  Leaf
	Cover measure.Number
	Waste measure.Number
}

// Shows is the area of leaf that stays visible, Gilded the area that is laid with
// leaf, what falls on the mask with it.
func (g Gilding) Shows() measure.Area { return g.Area.Times(g.Cover) }

// Gilded is described with Shows.
func (g Gilding) Gilded() measure.Area { return g.Area.Add(g.Spill).Times(g.Cover) }

// Leaves is the leaf a Gilding takes. Bare is the area that shows ÷ leaf area, what
// it would take without spill, laps, cut edges and waste; Exact what it takes with
// them, unrounded; Count the whole leaves, never fewer than Bare. Columns and Rows are
// those of a grid, Strips those of a band; Turned tells that the leaves lie
// crosswise.
type Leaves struct {
	Gilding
	Bare, Exact   measure.Number
	Count         int64
	Columns, Rows int64
	Turned        bool
	Strips        Strips
}

// MostLeaves is the greatest number of leaves that is counted.
const MostLeaves = 100_000_000

// Field counts the leaves of a large or irregular field: the area gilded ÷
// ((length − lap) × (width − lap)) × (1 + waste), rounded up. The rule takes no
// account of leaves cut at the field's edges; InGrid does, for a rectangle.
//
// Refused: what Leaf.Refusals refuses, an area below 0, a cover outside 0 to 1,
// a waste below 0 or above 1, and more than MostLeaves leaves.
func Field(g Gilding) (leaves Leaves, problems []problem.Problem, ok bool) {
	leaves = Leaves{Gilding: g}
	if problems = leaves.refusals(); len(problems) > 0 {
		return leaves, problems, false
	}
	leaves.Exact = g.Gilded().SquareMetres.Quo(g.Leaf.Laid().SquareMetres).Mul(g.withWaste())
	return leaves.counted()
}

// InGrid counts the leaves of a rectangle in whole columns and rows, × cover ×
// (1 + waste), rounded up; the leaf runs past its edges by margin. The area and
// the spill of g are those of the rectangle, whatever they were. Refused: what
// Field refuses, and a side not above 0.
func InGrid(g Gilding, along, across, margin measure.Length) (leaves Leaves, problems []problem.Problem, ok bool) {
	g.Area = measure.AreaOf(along, across)
	along, across = along+2*margin, across+2*margin
	g.Spill = measure.AreaOf(along, across).Sub(g.Area)
	leaves = Leaves{Gilding: g}
	problems = leaves.refusals()
	if along <= 0 || across <= 0 {
		problems = append(problems, problem.Problem{At: "/area", Severity: problem.Stop,
			What: words.Say("A side of the rectangle is not above 0."), Do: words.Say("Check the sizes the area is made from.")})
	}
	if len(problems) > 0 {
		return leaves, problems, false
	}
	leaves.Columns, leaves.Rows, leaves.Turned = g.Leaf.Grid(along, across)
	leaves.Exact = times(leaves.Columns, leaves.Rows).Mul(g.Cover).Mul(g.withWaste())
	return leaves.counted()
}

// Band is a long narrow field. Run is its length along the middle; Margin how
// far the leaf runs past the band on either side; Corners how many corners are
// mitred, each of which takes the width of a strip more, for the strips reach to
// the outer corner; Closed tells that the band runs round and meets itself.
type Band struct {
	Run, Width, Margin measure.Length
	Corners            int64
	Closed             bool
}

// Wide is the width of leaf that the band takes.
func (b Band) Wide() measure.Length { return b.Width + 2*b.Margin }

// Strips is how a band is laid. One narrower than the leaf is laid in one row of
// strips, FromLeaf of them cut from a leaf; a wider one in Rows of whole leaves,
// and FromLeaf is then 1. InRow is the strips or leaves of one row, Length the
// length of leaf laid in it, with corners, cover and waste, rounded up to the
// nanometre.
type Strips struct {
	FromLeaf, Rows, InRow int64
	Length                measure.Length
}

// InBand counts the leaves of a band: strips of run + corners × strip width, ×
// cover × (1 + waste), by strips per leaf, rounded up. Strips are cut across the
// leaf's width and laid lengthwise, each lapping the one before: old manuals cut
// a leaf in three or four (Workshop Receipts, first series, oil gilding). A leaf
// that is not square is cut along its width or along its length, whichever takes
// fewer; a ribbon from a roll is never cut across. Waste is put on the length and
// not on the leaves, so that a ribbon is not bought twice for a tenth more. The
// area of g is run × width and its spill run × twice the margin, whatever they
// were.
//
// Refused: what Field refuses, a run or a width not above 0, a margin or corners
// below 0.
func InBand(g Gilding, b Band) (leaves Leaves, problems []problem.Problem, ok bool) {
	g.Area = measure.AreaOf(max(0, b.Run), max(0, b.Width))
	g.Spill = measure.AreaOf(max(0, b.Run), 2*max(0, b.Margin))
	leaves = Leaves{Gilding: g}
	if problems = append(leaves.refusals(), b.refusals()...); len(problems) > 0 {
		return leaves, problems, false
	}
	length := b.Run.In(1).Add(b.Wide().In(1).Mul(measure.NumberFromInt(b.Corners))).Mul(g.Cover).Mul(g.withWaste())
	if length.Cmp((min(g.Leaf.Length, g.Leaf.Width) - g.Leaf.Lap).In(1).Mul(measure.NumberFromInt(MostLeaves))) > 0 {
		return leaves, tooManyLeaves(), false
	}
	nanometres, _ := length.Ceil()
	leaves.Strips = g.Leaf.strips(b, measure.Length(nanometres))
	leaves.Exact = leaves.Strips.leaves()
	if turned := g.Leaf.Turned().strips(b, measure.Length(nanometres)); !g.Leaf.IsRoll() && turned.leaves().Cmp(leaves.Exact) < 0 {
		leaves.Strips, leaves.Exact, leaves.Turned = turned, turned.leaves(), true
	}
	return leaves.counted()
}

// leaves are the leaves that strips are cut from.
func (s Strips) leaves() measure.Number {
	return times(s.Rows, s.InRow).Quo(measure.NumberFromInt(s.FromLeaf))
}

func (b Band) refusals() []problem.Problem {
	var found []problem.Problem
	refuse := func(at string, what, do words.Text) {
		found = append(found, problem.Problem{At: at, Severity: problem.Stop, What: what, Do: do})
	}
	if b.Run <= 0 {
		refuse("/bandRun", words.Say("The length of the band is not above 0."), words.Say("Give the length of the band along its middle."))
	}
	if b.Width <= 0 {
		refuse("/bandWidth", words.Say("The width of the band is not above 0."), words.Say("Give the width of the band."))
	}
	if b.Margin < 0 {
		refuse("/spill", words.Say("The leaf runs {length} past the edge of the band.", words.Put("length", b.Margin)), words.Say("Give 0 or more."))
	}
	if b.Corners < 0 {
		refuse("/bandCorners", words.Say("The band has fewer than no corners."), words.Say("Give 0 or more."))
	}
	return found
}

// strips are the strips of a band that is length long, all told.
func (l Leaf) strips(b Band, length measure.Length) Strips {
	line := l.Line(length)
	if b.Closed {
		line = l.Ring(length)
	}
	if b.Wide() > l.Width {
		return Strips{FromLeaf: 1, Rows: inLine(b.Wide(), l.Width, l.Lap), InRow: line, Length: length}
	}
	return Strips{FromLeaf: int64(l.Width / b.Wide()), Rows: 1, InRow: line, Length: length}
}

// counted rounds the leaves up.
func (l Leaves) counted() (Leaves, []problem.Problem, bool) {
	l.Bare = l.Shows().SquareMetres.Quo(l.Leaf.Area().SquareMetres)
	count, fits := l.Exact.Ceil()
	if !fits || count > MostLeaves {
		return l, tooManyLeaves(), false
	}
	l.Count = count
	return l, nil, true
}

func tooManyLeaves() []problem.Problem {
	return []problem.Problem{{At: "/length", Severity: problem.Stop,
		What: words.Say("This takes more than {most} leaves.", words.Name("most", words.Digits(MostLeaves))),
		Do:   words.Say("Check the size of the leaf and the area.")}}
}

// Yield is the share of the leaf that stays visible on the work, and More how much
// more is bought than that: the same fact told from either end. ok is false
// where no leaf is taken.
func (l Leaves) Yield() (yield, more measure.Number, ok bool) {
	if l.Bare.IsZero() || l.Exact.IsZero() {
		return yield, more, false
	}
	return l.Bare.Quo(l.Exact), l.Exact.Quo(l.Bare).Sub(measure.NumberFromInt(1)), true
}

func (g Gilding) withWaste() measure.Number { return measure.NumberFromInt(1).Add(g.Waste) }

func (g Gilding) refusals() []problem.Problem {
	found := g.Leaf.Refusals()
	if g.Area.SquareMetres.Sign() < 0 {
		found = append(found, problem.Problem{At: "/area", Severity: problem.Stop,
			What: words.Say("The area comes out below nothing, {area}.", words.Area("area", g.Area)),
			Do:   words.Say("Check the sizes the area is made from.")})
	}
	return append(append(found,
		upToWhole("/cover", words.Say("cover"), g.Cover)...),
		upToWhole("/waste", words.Say("waste"), g.Waste)...)
}

// upToWhole refuses a share outside 0 to 1.
func upToWhole(at string, name words.Text, share measure.Number) []problem.Problem {
	if share.Sign() >= 0 && share.Cmp(measure.NumberFromInt(1)) <= 0 {
		return nil
	}
	return []problem.Problem{{At: at, Severity: problem.Stop,
		What: words.Say("The {name} is {share}.", words.Of("name", name), words.PerCent("share", share)),
		Do:   words.Say("Give a {name} from 0 to 100 per cent.", words.Of("name", name))}}
}
