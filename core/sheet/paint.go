package sheet

import (
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
)

const labelDecides = "Arithmetic. Spread rate and loss are starting values until the label of the product says; the label decides."

// paint is the product of a liquid step, the film it leaves and its cans.
func (w *step) paint(area measure.Area) (measure.Volume, bool) {
	if w.Coats == 0 || !w.SpreadKnown || !w.LossKnown {
		return measure.Volume{}, false
	}
	product, problems, ok := finish.TakeOff(finish.Paint{Area: area, Coats: int64(w.Coats), Spread: w.Spread, Loss: w.Loss})
	w.report(w.At, problems)
	if !ok {
		return measure.Volume{}, false
	}
	w.productFigure(product)
	w.filmFigure(product)
	w.cans(product.Need)
	return product.Need, true
}

func (w *step) productFigure(p finish.Product) {
	rule := "Area times coats, divided by the spread rate and by what the loss leaves: product in tray, sleeve and air has to be bought too."
	sum := w.n.Area(p.Area) + " × " + strconv.Itoa(w.Coats) + " ÷ " + w.SpreadText
	if w.ByFilm {
		rule = "Area times coats times the wet film, divided by what the loss leaves: product in tray, sleeve and air has to be bought too."
		sum = w.n.Area(p.Area) + " × " + strconv.Itoa(w.Coats) + " × " + w.SpreadText
	}
	text := w.n.Volume(p.Need)
	w.figure(Figure{
		ID: w.id("product"), Block: blockFinish, Label: "product", Value: plain(p.Need.Litres), Unit: "L",
		Text: text, Other: w.other.Volume(p.Need),
		Working: Working{Rule: rule, Sum: sum + " ÷ (1 − " + w.builder.share(p.Loss) + ") = " + text, Source: labelDecides},
	})
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
