package sheet

import (
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

const labelDecides = "Arithmetic. Spread rate and loss are starting values until the label of the product says; the label decides."

// takeOff works out what a liquid step takes, and says what keeps it from being
// worked out.
func (w *step) takeOff() {
	if w.ByDryFilm && w.DryFilmKnown {
		spread, problems, ok := finish.SpreadFromDryFilm(w.dryCoat())
		w.report(w.At, problems)
		w.Spread, w.SpreadKnown = spread, ok
	}
	if !w.covers || w.Coats == 0 || !w.SpreadKnown || !w.LossKnown {
		return
	}
	product, problems, ok := finish.TakeOff(finish.Paint{Area: w.sized(w.area), Coats: int64(w.Coats), Spread: w.Spread, Loss: w.Loss})
	w.report(w.At, problems)
	if !ok {
		return
	}
	vary := finish.UsualVary
	if w.Vary.Known {
		vary = w.Vary.Share
	}
	w.product = product
	w.needs, w.takes = finish.NeedsOf(product.Need, vary)
}

func (w *step) dryCoat() finish.DryCoat {
	return finish.DryCoat{Film: w.DryFilm, Solids: w.Solids.Share, Thinned: w.Thinned.Share}
}

// shareMaterials finds which steps are bought together: each says of which
// earlier step its product is.
func (b *builder) shareMaterials(steps []*step) {
	for i, w := range steps {
		w.owner = w
		if w.SameAs != "" && w.Kind.IsLiquid() {
			w.owner = b.ownerOf(w, steps[:i])
		}
		w.owner.users = append(w.owner.users, w)
		w.out.Material = w.owner.ID
	}
}

// ownerOf is the step whose product w is. A step that is itself bought with
// another leads on to that.
func (b *builder) ownerOf(w *step, earlier []*step) *step {
	for _, before := range earlier {
		if before.ID == w.SameAs && before.Kind.IsLiquid() {
			return before.owner
		}
	}
	b.report(w.At+"/sameAs", []problem.Problem{{Severity: problem.Stop,
		What: "No earlier step with a product of its own is called “" + shortName(w.SameAs) + "”, so “" + w.Name + "” is bought for itself.", Do: "Choose an earlier step again."}})
	return w
}

// paint shows the product of a liquid step, the film it leaves and its cans.
func (w *step) paint() {
	if w.takes {
		w.productFigure(w.product)
		w.needFigures()
		w.filmFigure(w.product)
	}
	if w.owner != w {
		w.out.Buy = "bought with “" + w.owner.Name + "”"
		return
	}
	w.cans()
}

func (w *step) productFigure(p finish.Product) {
	rule := "Area times coats, divided by the spread rate and by what the loss leaves: product in tray, sleeve and air has to be bought too."
	sum := w.n.Area(p.Area) + " × " + strconv.Itoa(w.Coats) + " ÷ " + w.SpreadText
	switch {
	case w.ByFilm:
		rule = "Area times coats times the wet film, divided by what the loss leaves: product in tray, sleeve and air has to be bought too."
		sum = w.n.Area(p.Area) + " × " + strconv.Itoa(w.Coats) + " × " + w.SpreadText
	case w.ByDryFilm:
		rule = "Area times coats times the dry film, divided by the volume solids" + w.thinnedWords() + " and by what the loss leaves: product in tray, sleeve and air has to be bought too."
		sum = w.n.Area(p.Area) + " × " + strconv.Itoa(w.Coats) + " × " + w.filmText(w.DryFilm) + " ÷ " + w.builder.share(w.dryCoat().SolidsThinned())
	}
	loss := w.builder.share(p.Loss)
	if w.LossIsUsual {
		loss += ", as usual by " + string(w.Method)
	}
	text := w.n.Volume(p.Need)
	w.figure(Figure{
		ID: w.id("product"), Block: blockFinish, Label: "product", Value: plain(p.Need.Litres), Unit: "L",
		Text: text, Other: w.other.Volume(p.Need),
		Working: Working{Rule: rule, Sum: sum + " ÷ (1 − " + loss + ") = " + text, Source: labelDecides},
	})
}

func (w *step) thinnedWords() string {
	if w.Thinned.Share.IsZero() {
		return ""
	}
	return ", which " + w.builder.share(w.Thinned.Share) + " of thinner makes less,"
}

// filmText is a film in the unit of the notation.
func (w *step) filmText(f finish.Film) string {
	if w.n.System == measure.Metric {
		return w.n.NumberTrimmed(f.Micrometres, 1) + " µm"
	}
	return w.n.NumberTrimmed(f.Mils(), 2) + " mil"
}

// needFigures are what the step takes if the product spreads better or worse
// than said.
func (w *step) needFigures() {
	vary := w.builder.share(w.Vary.Share)
	source := "How far a product may be off is as typed."
	if !w.Vary.Known {
		vary, source = w.builder.share(finish.UsualVary), "15 per cent as usual: labels of one kind of paint differ by as much. Common practice, no source."
	}
	for _, c := range []struct {
		name, label, rule, sign string
		need                    measure.Volume
	}{
		{"lean", "at best", "What it takes where the product spreads better than said.", " ÷ (1 + ", w.needs.Lean},
		{"rich", "at worst", "What it takes where the product spreads worse than said.", " ÷ (1 − ", w.needs.Rich},
	} {
		text := w.n.Volume(c.need)
		w.figure(Figure{ID: w.id(c.name), Block: blockFinish, Label: c.label, Value: plain(c.need.Litres), Unit: "L", Text: text, Other: w.other.Volume(c.need),
			Working: Working{Rule: c.rule, Sum: w.n.Volume(w.needs.Likely) + c.sign + vary + ") = " + text, Source: source}})
	}
	w.out.Lean, w.out.Likely, w.out.Rich = w.n.Volume(w.needs.Lean), w.n.Volume(w.needs.Likely), w.n.Volume(w.needs.Rich)
}

// boughtFor is the need the step is bought for.
func (w *step) boughtFor() measure.Volume {
	switch w.BuyFor {
	case plan.Lean:
		return w.needs.Lean
	case plan.Rich:
		return w.needs.Rich
	}
	return w.needs.Likely
}

// filmFigure shows the other of spread rate and wet film: the one that was not
// typed.
func (w *step) filmFigure(p finish.Product) {
	mils, um := w.n.Number(p.Film.Mils(), 1)+" mil", w.n.Number(p.Film.Micrometres, 0)+" µm"
	text, other := mils, um
	if w.n.System == measure.Metric {
		text, other = um, mils
	}
	gallon := w.builder.plan.Units.Gallon.Volume(measure.UnitGallon)
	rate := w.n.Number(p.Spread.SquareFeetPer(gallon), 0) + " ft²/" + gallon.Text() + ", " + w.n.Number(p.Spread.SquareMetresPerLitre, 1) + " m²/L"
	source := "1 US gal = 231 in³ (NIST Handbook 44, appendix C), so 1604.2 ft² at 1 mil."
	if gallon == measure.UnitImperialGallon {
		source = "1 imperial gal = 4.546 09 L (NIST Handbook 44, appendix C), so 1926.5 ft² at 1 mil."
	}
	w.figure(Figure{
		ID: w.id("wet"), Block: blockFinish, Label: "wet film of one coat", Value: plain(p.Film.Micrometres), Unit: "um", Text: text, Other: other,
		Working: Working{
			Rule:   "A litre over a square metre stands a millimetre high: film and spread rate are one fact told twice. A wet-film comb checks it on the job.",
			Sum:    rate + " = " + mils + " = " + um,
			Source: source,
		},
	})
}
