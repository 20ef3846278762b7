package mask

import (
	"strconv"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Outline is the whole mask: Length along walls AB and CD, Width along BC and
// DA. A length of zero counts as not given.
type Outline struct{ Length, Width measure.Length }

// Area is the whole mask, exact.
func (o Outline) Area() measure.Area { return measure.AreaOf(o.Length, o.Width) }

// Perimeter is the way round the mask, exact.
func (o Outline) Perimeter() measure.Length { return 2 * (o.Length + o.Width) }

// IsComplete tells whether both sides are usable.
func (o Outline) IsComplete() bool {
	return o.Length > 0 && o.Width > 0 && o.Length <= measure.Longest && o.Width <= measure.Longest
}

// Check says what is missing, at "/length" and "/width".
func (o Outline) Check() []problem.Problem {
	var found []problem.Problem
	found = append(found, checkSide("/length", words.Say("length"), o.Length)...)
	found = append(found, checkSide("/width", words.Say("width"), o.Width)...)
	return found
}

func checkSide(at string, name words.Text, side measure.Length) []problem.Problem {
	switch {
	case side <= 0:
		return []problem.Problem{{At: at, Severity: problem.Stop,
			What: words.Say("The {side} of the mask is not given.", words.Of("side", name)),
			Do:   words.Say("Write the {side} of the whole mask, all panels hung.", words.Of("side", name))}}
	case side < LeastPanel:
		return []problem.Problem{{At: at, Severity: problem.Caution,
			What: words.Say("The {side} of the mask reads {read}, less than one panel can be.", words.Of("side", name), words.Length("read", side)),
			Do:   words.Say("Check the number and write its unit.")}}
	case side > measure.Longest:
		return []problem.Problem{{At: at, Severity: problem.Stop,
			What: words.Say("The {side} of the mask reads {read}, more than the {most} that is taken.",
				words.Of("side", name), words.Length("read", side), words.Length("most", measure.Longest)),
			Do: words.Say("Check the number and its unit.")}}
	}
	return nil
}

// Layer is one layer of the mask: a grid of panels. Columns are panel sizes
// along the length in order from wall DA, Rows along the width in order from
// wall AB; Gap is left open at each seam. Pieces are the blocks of panels that
// are hung as one, none over another; Loose the pieces cut out of their
// neighbours. A layer whose panels could not be worked out has no columns or no
// rows.
type Layer struct {
	ID, Name      string
	Columns, Rows []measure.Length
	Gap           measure.Length
	Pieces        []Piece
	Loose         []Loose
}

// IsEmpty tells whether there are no panels to hang.
func (l Layer) IsEmpty() bool { return len(l.Columns) == 0 || len(l.Rows) == 0 }

// Count is how many panels the layer has.
func (l Layer) Count() int { return len(l.Columns) * len(l.Rows) }

// Panel names one panel of a layer by its column and row, both from 1.
type Panel struct{ Column, Row int }

// Label is the row's letters and the column's number: A1 is the panel in the
// corner of walls DA and AB. After row Z comes AA.
func (p Panel) Label() string { return RowLetters(p.Row) + strconv.Itoa(p.Column) }
