package tell

import (
	"strconv"

	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/words"

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
		w.Report(w.At, problems)
		w.Spread, w.SpreadKnown = spread, ok
	}
	if !w.covers || w.Coats == 0 || !w.SpreadKnown || !w.LossKnown {
		return
	}
	product, problems, ok := finish.TakeOff(finish.Paint{Area: w.sized(w.area), Coats: int64(w.Coats), Spread: w.Spread, Loss: w.Loss, Thinned: w.Thinned.Share})
	w.Report(w.At, problems)
	if !ok {
		return
	}
	w.product = product
	w.needs, w.takes = finish.NeedsOf(product.Need, w.vary())
}

// vary is how far the need may be off: as typed, or as usual.
func (w *step) vary() finish.Vary {
	vary := finish.Vary{Share: finish.UsualVary, OfPaint: w.VaryOfPaint}
	if w.Vary.Known {
		vary.Share = w.Vary.Share
	}
	return vary
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
	b.Report(w.At+"/sameAs", []problem.Problem{{Severity: problem.Stop,
		What: words.Raw("No earlier step with a product of its own is called “" + problem.Name(w.SameAs) + "”, so “" + w.Name + "” is bought for itself."), Do: words.Say("Choose an earlier step again.")}})
	return w
}

// paint shows the product of a liquid step, the film it leaves and its cans.
func (w *step) paint() {
	if w.takes {
		w.productFigure(w.product)
		w.needFigures()
		w.thinner()
		w.filmFigure(w.product)
	}
	if w.owner != w {
		w.out.Buy = "bought with “" + w.owner.Name + "”"
		return
	}
	w.cans()
}

const lossRule = " and by what the loss leaves: what stays in tray, sleeve and air has to be bought too."

func (w *step) productFigure(p finish.Product) {
	rule, sum := w.spreadSum(p)
	loss := w.builder.Share(p.Loss)
	if w.LossIsUsual {
		loss += ", as usual by " + string(w.Method)
	}
	w.Figure(sheet.Figure{
		ID: w.id("product"), Block: page.Finish, Label: w.called() + " needed", Value: page.Plain(p.Need.Litres), Unit: "L",
		Text: w.Notation.Volume(p.Need), Other: w.Other.Volume(p.Need),
		Working: sheet.Working{Rule: rule, Sum: sum + " ÷ (1 − " + loss + ") = " + w.sumOf(p.Need), Source: labelDecides},
	})
}

// called is what a step's product is called.
func (w *step) called() string {
	switch w.Kind {
	case finish.SizeCoat:
		return "size"
	case finish.Glaze:
		return "glaze"
	case finish.ClearSeal, finish.ClearCoat:
		return "clear coat"
	}
	return "paint"
}

// spreadSum is what stays on the surface, before the loss, as a sum in the units
// of the sheet, and the rule of the whole.
func (w *step) spreadSum(p finish.Product) (rule, sum string) {
	sum = w.Notation.Area(p.Area) + " × " + strconv.Itoa(w.Coats)
	switch {
	case w.ByFilm:
		return "Area times coats times the wet film, divided by what a film of one takes" + lossRule,
			sum + " × " + w.filmText(p.Film) + " ÷ " + w.filmRate()
	case w.ByDryFilm:
		return "Area times coats times the dry film, divided by what a film of one takes, by the volume solids" + lossRule,
			sum + " × " + w.filmText(w.DryFilm) + " ÷ " + w.filmRate() + " ÷ " + w.builder.Share(w.Solids.Share)
	}
	rate := w.spreadText(p.Spread)
	if rate != w.SpreadText {
		rate += " (" + w.SpreadText + ")"
	}
	return "Area times coats, divided by the spread rate" + lossRule, sum + " ÷ " + rate
}

// filmRate is the area that one gallon or litre covers in a film of a mil or a
// micrometre.
func (w *step) filmRate() string {
	film := finish.FilmFromMils(measure.NumberFromInt(1))
	if w.Notation.System == measure.Metric {
		film = finish.FilmFromMicrometres(measure.NumberFromInt(1))
		return w.Notation.NumberTrimmed(finish.SpreadFromFilm(film).SquareMetresPerLitre, 0) + " m²·µm/L"
	}
	gallon := w.gallon()
	return w.Notation.Number(finish.SpreadFromFilm(film).SquareFeetPer(gallon), 1) + " ft²·mil/" + gallon.Text()
}

func (w *step) gallon() measure.VolumeUnit {
	return w.builder.Plan.Units.Gallon.Volume(measure.UnitGallon)
}

// spreadText is a spread rate in the units of the sheet.
func (w *step) spreadText(s finish.Spread) string {
	if w.Notation.System == measure.Metric {
		return w.Notation.NumberTrimmed(s.SquareMetresPerLitre, 2) + " m²/L"
	}
	return w.Notation.NumberTrimmed(s.SquareFeetPer(w.gallon()), 1) + " ft²/" + w.gallon().Text()
}

// sumOf is a volume as a sum comes out: in gallons or litres, and in the smaller
// unit too where it is told in that.
func (w *step) sumOf(v measure.Volume) string {
	sum, text := w.Notation.VolumeInSum(v), w.Notation.Volume(v)
	if sum == text {
		return text
	}
	return sum + " = " + text
}

// filmText is a film in the unit of the notation.
func (w *step) filmText(f finish.Film) string {
	if w.Notation.System == measure.Metric {
		return w.Notation.NumberTrimmed(f.Micrometres, 1) + " µm"
	}
	return w.Notation.NumberTrimmed(f.Mils(), 2) + " mil"
}

// needFigures are what the step takes if the product spreads better or worse
// than said.
func (w *step) needFigures() {
	vary, source := w.vary(), "How far it may be off is as typed."
	if !w.Vary.Known {
		source = "15 per cent as usual: labels of one kind of paint differ by as much. Common practice, no source."
	}
	share := w.builder.Share(vary.Share)
	well, badly, of := " ÷ (1 + "+share+")", " ÷ (1 − "+share+")", "Where the same paint covers that much more"
	less := "Where the same paint covers that much less."
	if vary.OfPaint {
		well, badly, of = " × (1 − "+share+")", " × (1 + "+share+")", "Where the same area takes that much less paint"
		less = "Where the same area takes that much more paint."
	}
	for _, c := range []struct {
		name, label, rule, sum string
		need                   measure.Volume
	}{
		{"lean", "if it spreads well", of + ".", well, w.needs.Lean},
		{"rich", "if it spreads badly", less, badly, w.needs.Rich},
	} {
		w.Figure(sheet.Figure{ID: w.id(c.name), Block: page.Finish, Label: c.label, Value: page.Plain(c.need.Litres), Unit: "L", Text: w.Notation.Volume(c.need), Other: w.Other.Volume(c.need),
			Working: sheet.Working{Rule: c.rule, Sum: w.Notation.VolumeInSum(w.needs.Likely) + c.sum + " = " + w.sumOf(c.need), Source: source}})
	}
	w.out.Lean, w.out.Likely, w.out.Rich = w.Notation.Volume(w.needs.Lean), w.Notation.Volume(w.needs.Likely), w.Notation.Volume(w.needs.Rich)
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

// filmFigure shows the wet film of one coat, and the spread rate beside it where
// the film is what was typed.
func (w *step) filmFigure(p finish.Product) {
	mils, um := w.Notation.Number(p.Film.Mils(), 1)+" mil", w.Notation.Number(p.Film.Micrometres, 0)+" µm"
	text, other := mils, um
	source := "1 US gal = 231 in³ (NIST Handbook 44, appendix C), so 1604.2 ft² at 1 mil."
	switch {
	case w.Notation.System == measure.Metric:
		text, other = um, mils
		source = "1 L over 1 m² stands 1 mm high."
	case w.Notation.Imperial:
		source = "1 imperial gal = 4.546 09 L (NIST Handbook 44, appendix C), so 1926.5 ft² at 1 mil."
	}
	rule := "A film and a spread rate are one fact told twice. A wet-film comb checks it on the job."
	sum := w.filmRate() + " ÷ " + w.spreadText(p.Spread) + " = " + text
	if w.ByDryFilm {
		rule = "What it dries to, over the volume solids, and so much more as thinner is added. A wet-film comb checks it on the job."
		sum = w.filmText(w.DryFilm) + " ÷ " + w.builder.Share(w.Solids.Share)
		if !w.Thinned.Share.IsZero() {
			sum += " × (1 + " + w.builder.Share(w.Thinned.Share) + ")"
		}
		sum += " = " + text
	}
	w.Figure(sheet.Figure{
		ID: w.id("wet"), Block: page.Finish, Label: "wet film of one coat", Value: page.Plain(p.Film.Micrometres), Unit: "um", Text: text, Other: other,
		Working: sheet.Working{Rule: rule, Sum: sum, Source: source},
	})
}
