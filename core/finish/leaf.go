package finish

import (
	"strconv"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Leaf is one leaf of metal and how far each lies over the next. Leaves are
// laid in a grid, so that a leaf past the first adds its length less the lap
// one way and its width less the lap the other. Sizes differ between makers
// and ages (a gold leaf was 3¼ in and is 3⅜ in today), so none is assumed.
type Leaf struct{ Length, Width, Lap measure.Length }

// Refusals is what is wrong with l: a length or width that is not above 0, a
// lap below 0, or a lap that leaves nothing of the leaf. The other methods
// answer only for a leaf without refusals; for one with them they answer 0.
func (l Leaf) Refusals() []problem.Problem {
	var found []problem.Problem
	for _, side := range []struct {
		at, name string
		size     measure.Length
	}{{"/length", "length", l.Length}, {"/width", "width", l.Width}} {
		switch {
		case side.size <= 0:
			found = append(found, problem.Problem{At: side.at, Severity: problem.Stop,
				What: "The " + side.name + " of a leaf is " + millimetres(side.size) + ".",
				Do:   "Give the " + side.name + " of one leaf."})
		case l.Lap >= side.size:
			found = append(found, problem.Problem{At: "/lap", Severity: problem.Stop,
				What: "The lap of " + millimetres(l.Lap) + " is not less than the leaf's " + side.name + " of " + millimetres(side.size) + ".",
				Do:   "Give a lap smaller than the leaf."})
		}
	}
	if l.Lap < 0 {
		found = append(found, problem.Problem{At: "/lap", Severity: problem.Stop,
			What: "The lap is below nothing, " + millimetres(l.Lap) + ".",
			Do:   "Give a lap of 0 or more."})
	}
	return found
}

func (l Leaf) isLaid() bool { return len(l.Refusals()) == 0 }

// Area is the whole of one leaf.
func (l Leaf) Area() measure.Area { return measure.AreaOf(l.Length, l.Width) }

// Laid is the area one leaf adds to a field: (length − lap) × (width − lap).
func (l Leaf) Laid() measure.Area { return measure.AreaOf(l.Length-l.Lap, l.Width-l.Lap) }

// Gilding is a field or the share of one that is to be laid with leaf. Cover
// is the share of the area that gets leaf: 1 where it is laid whole and rubbed
// later, 0.6 to 0.8 for a broken lay, 0.2 to 0.4 for scattered flakes. Waste is
// the share lost on top: 0.10 lying flat, 0.20 overhead. Both are common
// practice, no source.
type Gilding struct {
	Area  measure.Area
	Leaf  Leaf
	Cover measure.Number
	Waste measure.Number
}

// Leaves is the leaf a Gilding takes. PerLeaf is the area one leaf adds once it
// is lapped; Laid the leaves that the area takes and Exact those with the
// waste, both unrounded; Count the whole leaves.
type Leaves struct {
	Gilding
	PerLeaf measure.Area
	Laid    measure.Number
	Exact   measure.Number
	Count   int64
}

// MostLeaves is the greatest number of leaves that is counted.
const MostLeaves = 100_000_000

// Field counts the leaves of a large or irregular field: area × cover ÷
// ((length − lap) × (width − lap)) × (1 + waste), rounded up. It is never
// fewer than area × cover ÷ leaf area. The rule takes no account of leaves cut
// at the field's edges; Grid does, for a rectangle.
//
// Refused: what Leaf.Refusals refuses, an area below 0, a cover outside 0 to 1,
// a waste below 0 or above 1, and more than MostLeaves leaves.
func Field(g Gilding) (leaves Leaves, problems []problem.Problem, ok bool) {
	leaves = Leaves{Gilding: g}
	problems = append(g.Leaf.Refusals(), g.refusals()...)
	if len(problems) > 0 {
		return leaves, problems, false
	}
	leaves.PerLeaf = g.Leaf.Laid()
	leaves.Laid = g.Area.Times(g.Cover).SquareMetres.Quo(leaves.PerLeaf.SquareMetres)
	leaves.Exact = leaves.Laid.Mul(measure.NumberFromInt(1).Add(g.Waste))
	count, fits := leaves.Exact.Ceil()
	if !fits || count > MostLeaves {
		return leaves, []problem.Problem{{At: "/length", Severity: problem.Stop,
			What: "The field takes more than " + strconv.Itoa(MostLeaves) + " leaves.",
			Do:   "Check the size of the leaf and the area."}}, false
	}
	leaves.Count = count
	return leaves, nil, true
}

func (g Gilding) refusals() []problem.Problem {
	var found []problem.Problem
	if g.Area.SquareMetres.Sign() < 0 {
		found = append(found, problem.Problem{At: "/area", Severity: problem.Stop,
			What: "The area comes out below nothing, " + figure(g.Area.SquareMetres) + " m².",
			Do:   "Check the sizes the area is made from."})
	}
	return append(append(found,
		upToWhole("/cover", "cover", g.Cover)...),
		upToWhole("/waste", "waste", g.Waste)...)
}

// upToWhole refuses a share outside 0 to 1.
func upToWhole(at, name string, share measure.Number) []problem.Problem {
	if share.Sign() >= 0 && share.Cmp(measure.NumberFromInt(1)) <= 0 {
		return nil
	}
	return []problem.Problem{{At: at, Severity: problem.Stop,
		What: "The " + name + " is " + perCent(share) + ".",
		Do:   "Give a " + name + " from 0 to 100 per cent."}}
}

// Reach is the area that leaves whole, lapped leaves add to a field: the field
// rule read backwards, without waste.
func (l Leaf) Reach(leaves int64) measure.Area {
	if !l.isLaid() || leaves < 0 {
		return measure.Area{}
	}
	return l.Laid().Times(measure.NumberFromInt(leaves))
}

// Line is the whole leaves in an open run, laid lengthwise: the first covers
// its length and every other its length less the lap. A run of any length
// takes at least one leaf, no run none.
func (l Leaf) Line(run measure.Length) int64 {
	if !l.isLaid() || run <= 0 {
		return 0
	}
	return inLine(run, l.Length, l.Lap)
}

// Ring is the whole leaves in a closed run, where the last leaf laps onto the
// first: every leaf covers its length less the lap.
func (l Leaf) Ring(run measure.Length) int64 {
	if !l.isLaid() || run <= 0 {
		return 0
	}
	return roundUp(run, l.Length-l.Lap)
}

// Grid is the whole leaves over a rectangle, counted as rows and columns with
// the leaf's length along the first side.
func (l Leaf) Grid(along, across measure.Length) int64 {
	if !l.isLaid() || along <= 0 || across <= 0 {
		return 0
	}
	return inLine(along, l.Length, l.Lap) * inLine(across, l.Width, l.Lap)
}

func inLine(run, side, lap measure.Length) int64 {
	return max(1, roundUp(run-lap, side-lap))
}

func roundUp(l, unit measure.Length) int64 {
	if l <= 0 {
		return 0
	}
	return int64((l + unit - 1) / unit)
}

// Band is a long narrow field, open or closed in a ring. Margin is how far the
// leaf runs past the band on either side.
type Band struct {
	Run, Width, Margin measure.Length
	Closed             bool
}

// Strips is the leaf a band takes. A band narrower than the leaf is laid in
// strips, FromLeaf of them cut from a leaf; a wider one in Rows of whole
// leaves, and FromLeaf is then 1.
type Strips struct {
	FromLeaf, Rows, Count, Leaves int64
}

// Strips counts the leaves of a band. Strips are cut across the leaf's width
// and laid lengthwise: old manuals cut a leaf in three or four (Workshop
// Receipts, first series, oil gilding).
func (l Leaf) Strips(b Band) Strips {
	if !l.isLaid() || b.Run <= 0 || b.Width <= 0 || b.Margin < 0 {
		return Strips{}
	}
	wide, line := b.Width+2*b.Margin, l.Line(b.Run)
	if b.Closed {
		line = l.Ring(b.Run)
	}
	if wide > l.Width {
		rows := inLine(wide, l.Width, l.Lap)
		return Strips{FromLeaf: 1, Rows: rows, Count: rows * line, Leaves: rows * line}
	}
	cut := int64(l.Width / wide)
	return Strips{FromLeaf: cut, Rows: 1, Count: line, Leaves: (line + cut - 1) / cut}
}

// WithMargin is the area of openings with the leaf run past their edges:
// area + perimeter × margin. The corners are left out, as skewings mend them.
func WithMargin(openings measure.Area, perimeter, margin measure.Length) measure.Area {
	return openings.Add(measure.AreaOf(perimeter, margin))
}

// Books is how a number of leaves is bought. Books is all of them in books,
// rounded up. Packs and Loose split them: whole packs, and what is left in
// single books; where the single books would come to at least 0.8 of a pack
// one more pack is taken in their place and OneMore is true (common practice,
// no source). Spare is the leaves left over with all books, or packs, bought.
type Books struct {
	Leaves, Books, Packs, Loose int64
	OneMore                     bool
	Spare                       int64
}

// BooksFor counts books and packs. A book is 25 leaves and a pack 20 books in
// most trades (Encyclopædia Britannica 1911, Goldbeating; a leaf specification
// sheet), but books of 24 and 48 are known, so both are asked for. A pack of 0
// books means that there are none to be had.
//
// Refused: leaves below 0 or above MostLeaves, a book outside 1 to 10 000
// leaves, a pack outside 0 to 10 000 books.
func BooksFor(leaves, perBook, booksPerPack int64) (books Books, problems []problem.Problem, ok bool) {
	books = Books{Leaves: leaves}
	problems = append(problems, countRefusals("/leaves", "number of leaves", leaves, 0, MostLeaves)...)
	problems = append(problems, countRefusals("/perBook", "number of leaves in a book", perBook, 1, 10_000)...)
	problems = append(problems, countRefusals("/booksPerPack", "number of books in a pack", booksPerPack, 0, 10_000)...)
	if len(problems) > 0 {
		return books, problems, false
	}
	books.Books = (leaves + perBook - 1) / perBook
	books.Loose = books.Books
	if booksPerPack > 0 {
		books.Packs, books.Loose = books.Books/booksPerPack, books.Books%booksPerPack
		if books.Loose > 0 && 5*books.Loose >= 4*booksPerPack {
			books.Packs, books.Loose, books.OneMore = books.Packs+1, 0, true
		}
	}
	books.Spare = (books.Packs*booksPerPack+books.Loose)*perBook - leaves
	return books, nil, true
}

func countRefusals(at, name string, n, least, most int64) []problem.Problem {
	if n >= least && n <= most {
		return nil
	}
	return []problem.Problem{{At: at, Severity: problem.Stop,
		What: "The " + name + " is " + strconv.FormatInt(n, 10) + ".",
		Do:   "Give a whole number from " + strconv.FormatInt(least, 10) + " to " + strconv.FormatInt(most, 10) + "."}}
}
