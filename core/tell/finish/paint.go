package finish

import (
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

func (t *teller) labelDecides() string {
	return t.Say("Arithmetic. Spread rate and loss are starting values until the label of the product says; the label decides.")
}

// need is what the step takes.
func (t *teller) need() {
	label := t.Say("paint needed")
	switch t.step.Kind.Liquid() {
	case finish.SizeOf:
		label = t.Say("size needed")
	case finish.GlazeOf:
		label = t.Say("glaze needed")
	case finish.ClearOf:
		label = t.Say("clear coat needed")
	}
	rule, sum := t.spread()
	t.volume("product", label, t.taken.Product.Need, rule, sum+" ÷ (1 − "+t.loss()+")", t.labelDecides())
}

// loss is the share that is lost, and by what where that is the usual one.
func (t *teller) loss() string {
	loss := words.Share("loss", t.taken.Product.Loss)
	switch {
	case !t.step.LossIsUsual:
		return t.Say("{loss}", loss)
	case t.step.Method == finish.Brush:
		return t.Say("{loss}, as usual by brush", loss)
	case t.step.Method == finish.Roller:
		return t.Say("{loss}, as usual by roller", loss)
	case t.step.Method == finish.Pad:
		return t.Say("{loss}, as usual by pad", loss)
	}
	return t.Say("{loss}, as usual by spray", loss)
}

// spread is what stays on the surface, before the loss, as a sum in the units of the
// sheet, and the rule of the whole.
func (t *teller) spread() (rule, sum string) {
	s, p := t.step, &t.taken.Product
	sum = t.Notation.Area(p.Area) + " × " + strconv.Itoa(s.Coats)
	switch {
	case s.ByFilm:
		return t.Say("Area times coats times the wet film, divided by what a film of one takes and by what the loss leaves: what stays in tray, sleeve and air has to be bought too."),
			sum + " × " + t.thickness(p.Film) + " ÷ " + t.filmRate()
	case s.ByDryFilm:
		return t.Say("Area times coats times the dry film, divided by what a film of one takes, by the volume solids and by what the loss leaves: what stays in tray, sleeve and air has to be bought too."),
			sum + " × " + t.thickness(s.DryFilm) + " ÷ " + t.filmRate() + " ÷ " + t.Share(s.Solids.Share)
	}
	rate := t.rate(p.Spread)
	if rate != s.SpreadText {
		rate += " (" + s.SpreadText + ")"
	}
	return t.Say("Area times coats, divided by the spread rate and by what the loss leaves: what stays in tray, sleeve and air has to be bought too."), sum + " ÷ " + rate
}

// filmRate is the area that one gallon or litre covers in a film of a mil or a
// micrometre.
func (t *teller) filmRate() string {
	one := measure.NumberFromInt(1)
	if t.Notation.System == measure.Metric {
		return t.Notation.NumberTrimmed(finish.SpreadFromFilm(finish.FilmFromMicrometres(one)).SquareMetresPerLitre, 0) + " m²·µm/L"
	}
	gallon := t.gallon()
	return t.Notation.Number(finish.SpreadFromFilm(finish.FilmFromMils(one)).SquareFeetPer(gallon), 1) + " ft²·mil/" + gallon.Text()
}

func (t *teller) gallon() measure.VolumeUnit {
	return t.Plan.Units.Gallon.Volume(measure.UnitGallon)
}

// rate is a spread rate in the units of the sheet.
func (t *teller) rate(s finish.Spread) string {
	if t.Notation.System == measure.Metric {
		return t.Notation.NumberTrimmed(s.SquareMetresPerLitre, 2) + " m²/L"
	}
	return t.Notation.NumberTrimmed(s.SquareFeetPer(t.gallon()), 1) + " ft²/" + t.gallon().Text()
}

// thickness is a film in the unit of the notation.
func (t *teller) thickness(f finish.Film) string {
	if t.Notation.System == measure.Metric {
		return t.Notation.NumberTrimmed(f.Micrometres, 1) + " µm"
	}
	return t.Notation.NumberTrimmed(f.Mils(), 2) + " mil"
}

// needs are what the step takes if the product spreads better or worse than said.
func (t *teller) needs() {
	needs, vary, likely := &t.taken.Needs, steps.Vary(t.step), t.Notation.VolumeInSum(t.taken.Needs.Likely)
	source := t.Say("How far it may be off is as typed.")
	if !t.step.Vary.Known {
		source = t.Say("15 per cent as usual: labels of one kind of paint differ by as much. Common practice, no source.")
	}
	more, less := "(1 + "+t.Share(vary.Share)+")", "(1 − "+t.Share(vary.Share)+")"
	well, badly := t.Say("if it spreads well"), t.Say("if it spreads badly")
	if vary.OfPaint {
		t.volume("lean", well, needs.Lean, t.Say("Where the same area takes that much less paint."), likely+" × "+less, source)
		t.volume("rich", badly, needs.Rich, t.Say("Where the same area takes that much more paint."), likely+" × "+more, source)
	} else {
		t.volume("lean", well, needs.Lean, t.Say("Where the same paint covers that much more."), likely+" ÷ "+more, source)
		t.volume("rich", badly, needs.Rich, t.Say("Where the same paint covers that much less."), likely+" ÷ "+less, source)
	}
	t.out.Lean, t.out.Likely, t.out.Rich = t.Notation.Volume(needs.Lean), t.Notation.Volume(needs.Likely), t.Notation.Volume(needs.Rich)
}

// film is the wet film of one coat, and the spread rate beside it where the film is
// what was typed.
func (t *teller) film() {
	s, p := t.step, &t.taken.Product
	text, other := t.Notation.Number(p.Film.Mils(), 1)+" mil", t.Notation.Number(p.Film.Micrometres, 0)+" µm"
	source := t.Say("1 US gal = 231 in³ (NIST Handbook 44, appendix C), so 1604.2 ft² at 1 mil.")
	switch {
	case t.Notation.System == measure.Metric:
		text, other = other, text
		source = t.Say("1 L over 1 m² stands 1 mm high.")
	case t.Notation.Imperial:
		source = t.Say("1 imperial gal = 4.546 09 L (NIST Handbook 44, appendix C), so 1926.5 ft² at 1 mil.")
	}
	rule := t.Say("A film and a spread rate are one fact told twice. A wet-film comb checks it on the job.")
	sum := t.filmRate() + " ÷ " + t.rate(p.Spread)
	if s.ByDryFilm {
		rule = t.Say("What it dries to, over the volume solids, and so much more as thinner is added. A wet-film comb checks it on the job.")
		sum = t.thickness(s.DryFilm) + " ÷ " + t.Share(s.Solids.Share)
		if !s.Thinned.Share.IsZero() {
			sum += " × (1 + " + t.Share(s.Thinned.Share) + ")"
		}
	}
	t.Figure(sheet.Figure{
		ID: t.id("wet"), Block: page.Finish, Label: t.Say("wet film of one coat"), Value: page.Plain(p.Film.Micrometres), Unit: "um", Text: text, Other: other,
		Working: sheet.Working{Rule: rule, Sum: sum + " = " + text, Source: source},
	})
}
