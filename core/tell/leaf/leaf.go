package leaf

import (
	"ceilingwright/core/job"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Step tells the leaf of a step: how many leaves, what they weigh, how they are bought
// and what they cost.
func Step(p *page.Page, j *job.Job, step int, out *sheet.Step) {
	w := leaves{Page: p, Job: j, step: &j.Plan.Steps[step], laid: &j.Finish.Steps[step].Leaf, area: j.Covers[step].Area, out: out}
	if !w.laid.Counted {
		return
	}
	w.leaf = w.step.Leaf
	w.count()
	w.yield()
	w.weight()
	if w.laid.Bought {
		w.books()
		w.cost()
	}
}

// leaves tells the leaf of one step.
type leaves struct {
	*page.Page
	*job.Job
	step *plan.Step
	leaf *plan.Leaf
	laid *steps.Laid
	area measure.Area // that the step covers
	out  *sheet.Step
}

// id is a figure id of the step, which is noted as one of its figures.
func (w *leaves) id(name string) string {
	id := "step." + w.step.ID + "." + name
	w.out.Figures = append(w.out.Figures, id)
	return id
}

func (w *leaves) fieldSource() string {
	return w.Say("Field rule: each leaf adds its size less the lap both ways. Waste of a tenth lying flat, a fifth overhead: common practice, no source.")
}

func (w *leaves) gridSource() string {
	return w.Say("A gilder's notes of November 2012 count a ceiling so, by rows. Waste of a tenth lying flat, a fifth overhead: common practice, no source.")
}

func (w *leaves) bandSource() string {
	return w.Say("Leaf cut in strips, each lapping the one before (Workshop Receipts, first series, oil gilding). Waste: common practice, no source.")
}

// count is how many leaves, as they are laid.
func (w *leaves) count() {
	switch w.laid.As {
	case plan.Band:
		w.strips()
		w.ofBand()
	case plan.Grid:
		w.ofGrid()
	default:
		w.ofField()
	}
}

func (w *leaves) ofField() {
	l, covered := w.leaf, w.Notation.Area(w.area)
	if l.Spill > 0 && l.OpeningsEdge > 0 {
		covered = "(" + covered + " + " + w.Put(l.OpeningsEdge) + " × " + w.Put(l.Spill) + ")"
	}
	w.figure(w.Say("Area times the share that gets leaf, divided by what one lapped leaf adds, and the waste; rounded up."),
		covered+" × "+w.Page.Share(l.Cover)+" ÷ ("+w.less(l.Leaf.Length, l.Leaf.Lap)+" × "+w.less(l.Leaf.Width, l.Leaf.Lap)+") × "+w.wasted(), w.fieldSource())
}

func (w *leaves) ofGrid() {
	along, across, n := words.Put("along", w.laid.Along), words.Put("across", w.laid.Across), &w.laid.Leaves
	rule := w.Say("Whole columns and rows over {along} × {across}, times the share that gets leaf, and the waste; rounded up. The first leaf of a row covers its size, each other its size less the lap.", along, across)
	if n.Turned {
		rule = w.Say("Whole columns and rows over {along} × {across}, times the share that gets leaf, and the waste; rounded up. The first leaf of a row covers its size, each other its size less the lap. The leaves lie crosswise, which takes fewer.", along, across)
	}
	w.figure(rule, words.Digits(n.Columns)+" × "+words.Digits(n.Rows)+" × "+w.Page.Share(w.leaf.Cover)+" × "+w.wasted(), w.gridSource())
}

func (w *leaves) ofBand() {
	s := &w.laid.Leaves.Strips
	if s.Rows > 1 || s.FromLeaf == 1 {
		w.figure(w.Say("The leaves of one row times the rows."), w.whole(s.InRow)+" × "+w.whole(s.Rows), w.bandSource())
		return
	}
	w.figure(w.Say("Strips by how many are cut from a leaf, rounded up."), w.whole(s.InRow)+" ÷ "+w.whole(s.FromLeaf), w.bandSource())
}

// strips is how many strips a band takes, and how they are cut.
func (w *leaves) strips() {
	b, leaf, s := &w.laid.Band, w.leaf.Leaf, &w.laid.Leaves.Strips
	if w.laid.Leaves.Turned {
		leaf = leaf.Turned()
	}
	sum := w.Put(b.Run)
	if b.Corners > 0 {
		sum = "(" + sum + " + " + w.Say("{n|corner|corners}", words.Count("n", b.Corners)) + " × " + w.Put(b.Wide()) + ")"
	}
	sum += " × " + w.Page.Share(w.leaf.Cover) + " × (1 + " + w.Page.Share(w.leaf.Waste) + ")"
	if !b.Closed {
		sum = "(" + sum + " − " + w.Put(leaf.Lap) + ")"
	}
	sum = w.Say("{sum}, rounded up", words.Name("sum", sum+" ÷ "+w.less(leaf.Length, leaf.Lap)))
	rule := w.Say("The run, with the width of a strip more for each mitred corner, the share that gets leaf and the waste, by what a lapped strip adds.")
	label := w.Say("strips of leaf")
	if s.Rows > 1 {
		label = w.Say("leaves in a row")
		rule += " " + w.Say("The band is wider than a leaf: {n} rows of whole leaves.", words.Count("n", s.Rows))
	} else {
		rule += " " + w.Say("A leaf of {width} gives {n|strip|strips} of {wide}.", words.Put("width", leaf.Width), words.Count("n", s.FromLeaf), words.Put("wide", b.Wide()))
	}
	if w.laid.Leaves.Turned {
		rule += " " + w.Say("It is cut the other way round, which takes fewer.")
	}
	w.Count(page.Finish, w.id("strips"), label, s.InRow, "", rule, sum, w.bandSource())
}

func (w *leaves) whole(n int64) string { return w.Notation.Number(measure.NumberFromInt(n), 0) }

// wasted is the waste in a sum.
func (w *leaves) wasted() string {
	return w.Say("(1 + {waste}), rounded up", words.Share("waste", w.leaf.Waste))
}

func (w *leaves) less(side, lap measure.Length) string {
	return "(" + w.Put(side) + " − " + w.Put(lap) + ")"
}

// figure is the figure of the leaves.
func (w *leaves) figure(rule, sum, source string) {
	n := w.laid.Leaves.Count
	label := w.Say("{n?leaf|leaves}", words.Count("n", n))
	if w.leaf.Leaf.IsRoll() {
		label = w.Say("{n?roll of leaf|rolls of leaf}", words.Count("n", n))
	}
	w.Count(page.Finish, w.id("leaves"), label, n, "", rule, sum, source)
}

// yield tells from either end how much of the leaf shows on the work.
func (w *leaves) yield() {
	n := &w.laid.Leaves
	yield, more, ok := n.Yield()
	if !ok {
		return
	}
	of := func(part measure.Number) string {
		return w.Notation.Number(part.Mul(measure.NumberFromInt(100)), 1) + " %"
	}
	bare, exact := w.Notation.Number(n.Bare, 2), w.Notation.Number(n.Exact, 2)
	w.Figure(sheet.Figure{
		ID: w.id("yield"), Block: page.Finish, Label: w.Say("leaf that stays visible"), Value: page.Plain(yield), Text: of(yield),
		Working: sheet.Working{
			Rule:   w.Say("The area where leaf shows, in bare leaves, by the leaves it takes with what falls on the mask, laps, cut edges and waste. The second line is the same fact from the other end, how much more than shows is bought: say which you mean when you ask for leaf."),
			Sum:    bare + " ÷ " + exact + " = " + of(yield) + "\n" + exact + " ÷ " + bare + " − 1 = " + of(more),
			Source: w.Arithmetic(),
		},
	})
}

// An ounce is 28.349 523 125 g (NIST Handbook 44, appendix C).
var ounce = measure.MustNumber("28.349523125")

// weight is what the leaves weigh.
func (w *leaves) weight() {
	if !w.laid.Weighed {
		return
	}
	grams, text := w.laid.Grams, w.grams(w.laid.Grams)
	w.Figure(sheet.Figure{
		ID: w.id("weight"), Block: page.Finish, Label: w.Say("weight of the leaf"), Value: page.Plain(grams), Unit: "g", Text: text, Other: w.Notation.Number(grams.Quo(ounce), 2) + " oz",
		Working: sheet.Working{Rule: w.byTwoAreas(w.Say("Leaves by what a thousand weigh.")),
			Sum: w.whole(w.laid.Leaves.Count) + " × " + w.Notation.NumberTrimmed(w.leaf.GramsPer1000.Value, 2) + " g ÷ 1000 = " + text +
				w.byAreas(text, func(area measure.Area) string { return w.gramsFor(grams, area) }),
			Source: w.Say("Arithmetic. 1 oz = 28.349 523 125 g (NIST Handbook 44, appendix C).")},
	})
}

// grams is a weight of leaf, to the tenth of a gram or, of a few leaves, finer: what
// it comes to for an area is worked out again from it.
func (w *leaves) grams(n measure.Number) string {
	return w.Notation.NumberTrimmed(n, page.Finer(n, 1)) + " g"
}

// gramsFor is what leaf weighs by the unit of area of the plan.
func (w *leaves) gramsFor(grams measure.Number, area measure.Area) string {
	if w.Notation.System == measure.FeetInches {
		return w.Say("{grams} g for 1 ft²", words.Number("grams", grams.Quo(area.SquareFeet()), 2))
	}
	return w.Say("{grams} g for 1 m²", words.Number("grams", grams.Quo(area.SquareMetres), 1))
}

// byTwoAreas is a rule that says which areas a cost or a weight goes by, where they
// differ.
func (w *leaves) byTwoAreas(rule string) string {
	if w.laid.Leaves.Spill.SquareMetres.IsZero() {
		return rule
	}
	return rule + " " + w.Say("By area it is told for what shows when the mask is off, and for all that is gilded, what falls on the mask with it.")
}

// byAreas are the lines of a sum that go on from a total to what it comes to for
// the area that shows, and for the area gilded where that is more.
func (w *leaves) byAreas(total string, each func(measure.Area) string) string {
	text, shows, gilded := "", w.laid.Leaves.Shows(), w.laid.Leaves.Gilded()
	if shows.SquareMetres.Sign() > 0 {
		text = "\n" + w.Say("{sum} = {each} that shows", words.Name("sum", total+" ÷ "+w.ExactArea(shows)), words.Name("each", each(shows)))
	}
	if w.laid.Leaves.Spill.SquareMetres.Sign() > 0 && gilded.SquareMetres.Sign() > 0 {
		text += "\n" + w.Say("{sum} = {each} gilded", words.Name("sum", total+" ÷ "+w.ExactArea(gilded)), words.Name("each", each(gilded)))
	}
	return text
}

// lastOnRoll bounds what is said of the length left on rolls.
const lastOnRoll = 1000

// spare is what is left over: leaves, or the length of ribbon on the last roll.
func (w *leaves) spare() words.Text {
	n, books, l := &w.laid.Leaves, &w.laid.Books, w.leaf.Leaf
	if s := &n.Strips; s.Rows == 1 && s.FromLeaf <= lastOnRoll && l.IsRoll() && n.Count <= lastOnRoll {
		used := s.Length + measure.Length(max(0, s.InRow-1))*l.Lap
		if left := measure.Length(s.FromLeaf*(books.Leaves+books.Spare))*l.Length - used; left >= 0 {
			return words.Say("{length} of ribbon left", words.Length("length", left))
		}
	}
	return words.Say("{leaves} spare", words.Of("leaves", steps.Pieces(w.leaf, books.Spare)))
}
