package mask

import (
	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Split says how the panels of a layer are given.
type Split string

// By how many columns and rows, by every size, or by the greatest panel that
// the roll or the arms allow.
const (
	ByCount    Split = "count"
	BySizes    Split = "sizes"
	ByGreatest Split = "greatest"
)

// Cut is how one layer is to be divided. Only the fields of the chosen Split
// count. A length or count of zero counts as not given, Gap apart.
type Cut struct {
	ID, Name                      string
	Split                         Split
	Columns, Rows                 int
	ColumnSizes, RowSizes         []measure.Length
	GreatestLength, GreatestWidth measure.Length
	Gap                           measure.Length
}

// Limits on panels. MostPanels keeps a slip of the keyboard from asking for a
// grid nobody can hang; ManyPanels is more than a crew hangs in one layer;
// LeastPanel is narrower than anyone cuts one. Choices: common practice, no
// source.
const (
	MostPanels = 10_000
	ManyPanels = 400
	LeastPanel = 100 * measure.Millimetre
)

// axis is one direction of a cut, with the fields that belong to it and the
// places to blame.
type axis struct {
	line, lines, side            words.Text // column, columns, length of the mask
	countAt, sizesAt, greatestAt string
	total                        measure.Length
	count                        int
	sizes                        []measure.Length
	greatest                     measure.Length
	gap                          measure.Length
	split                        Split
}

// LayerFromCut divides the mask into the panels of one layer, with what is
// wrong at "/columns", "/columnSizes", "/greatestLength" and their likes for
// the rows, "/gap" or "/split". A direction that cannot be divided has no
// panels; the other still has its own. Above MostPanels the layer is empty.
func LayerFromCut(o Outline, cut Cut) (Layer, []problem.Problem) {
	layer := Layer{ID: cut.ID, Name: cut.Name, Gap: cut.Gap}
	if cut.Split != ByCount && cut.Split != BySizes && cut.Split != ByGreatest {
		return layer, []problem.Problem{{At: "/split", Severity: problem.Stop,
			What: words.Say("“{split}” is no way of giving panels.", words.Name("split", string(cut.Split))),
			Do:   words.Say("Choose how many, every size, or the greatest panel.")}}
	}
	if cut.Gap < 0 {
		return layer, []problem.Problem{{At: "/gap", Severity: problem.Stop,
			What: words.Say("A gap below zero would be an overlap."),
			Do:   words.Say("Write 0 for panels that touch.")}}
	}
	along := axis{words.Say("column"), words.Say("columns"), words.Say("length"), "/columns", "/columnSizes", "/greatestLength",
		o.Length, cut.Columns, cut.ColumnSizes, cut.GreatestLength, cut.Gap, cut.Split}
	across := axis{words.Say("row"), words.Say("rows"), words.Say("width"), "/rows", "/rowSizes", "/greatestWidth",
		o.Width, cut.Rows, cut.RowSizes, cut.GreatestWidth, cut.Gap, cut.Split}
	var found, more []problem.Problem
	layer.Columns, found = along.divide()
	layer.Rows, more = across.divide()
	found = append(found, more...)
	return limited(layer, along.blame(), found)
}

// limited empties a layer of too many panels, and says when there are many.
func limited(layer Layer, at string, found []problem.Problem) (Layer, []problem.Problem) {
	count := layer.Count()
	if count > MostPanels {
		layer.Columns, layer.Rows = nil, nil
		return layer, append(found, problem.Problem{At: at, Severity: problem.Stop,
			What: words.Say("The layer would have {count} panels, more than the {most} that are taken.", words.Count("count", count), words.Count("most", MostPanels)),
			Do:   words.Say("Give fewer or larger panels.")})
	}
	if count > ManyPanels {
		found = append(found, problem.Problem{At: at, Severity: problem.Caution,
			What: words.Say("The layer has {count} panels, more than a crew hangs.", words.Count("count", count)),
			Do:   words.Say("Check columns and rows, or give larger panels.")})
	}
	return layer, found
}

// blame is the field that decides how many panels there are.
func (a axis) blame() string {
	switch a.split {
	case BySizes:
		return a.sizesAt
	case ByGreatest:
		return a.greatestAt
	}
	return a.countAt
}

func stop(at string, what, do words.Text) []problem.Problem {
	return []problem.Problem{{At: at, Severity: problem.Stop, What: what, Do: do}}
}

// divide is the panel sizes along one direction. A mask side that is not given
// is no fault of the cut, so it is left unsaid here.
func (a axis) divide() ([]measure.Length, []problem.Problem) {
	switch a.split {
	case BySizes:
		return a.given()
	case ByGreatest:
		return a.fewest()
	}
	return a.equal(a.countAt, a.count)
}
