package sheet

import (
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

// product is what a step uses up, kept for the air of the room. known is false
// where the amount could not be worked out.
type product struct {
	step  plan.Step
	need  measure.Volume
	known bool
}

// finish is the block Finish: each step's area, product, cans and leaf.
func (b *builder) finish() {
	for _, step := range b.plan.Steps {
		b.step(step)
	}
}

// step is one step on its way onto the sheet.
type step struct {
	*builder
	plan.Step
	out Step
}

func (b *builder) step(s plan.Step) {
	w := &step{builder: b, Step: s, out: Step{ID: s.ID, Name: s.Name, Kind: string(s.Kind)}}
	area, ok := w.area()
	switch {
	case s.Kind.IsLiquid():
		need, known := measure.Volume{}, false
		if ok {
			need, known = w.paint(area)
		}
		b.products = append(b.products, product{s, need, known})
		w.mix(need, known)
	case s.Kind == finish.LeafLaying && ok:
		w.leaf(area)
	}
	b.sheet.Steps = append(b.sheet.Steps, w.out)
}

// id is a figure id of the step, which is noted as one of its figures.
func (w *step) id(name string) string {
	id := "step." + w.ID + "." + name
	w.out.Figures = append(w.out.Figures, id)
	return id
}

// area is what the step covers, with its figure. False where it cannot be
// worked out; what is missing is then already said where it is missing.
func (w *step) area() (measure.Area, bool) {
	a, rule, sum, ok := w.covered()
	if !ok {
		return a, false
	}
	w.builder.area(blockFinish, w.id("area"), "area", a, rule, sum, ofArithmetic)
	return a, true
}

func (w *step) covered() (a measure.Area, rule, sum string, ok bool) {
	shape, outline := w.builder.shape, w.builder.plan.Mask.Outline
	switch w.Basis {
	case finish.Surface:
		return shape.Area(), "The whole ceiling.", w.ceiling(), shape.Usable()
	case finish.Border:
		a = shape.Area().Sub(outline.Area())
		ok = shape.Usable() && outline.IsComplete() && a.SquareMetres.Sign() >= 0
		return a, "The ceiling outside the mask.", w.n.Area(shape.Area()) + " − " + w.n.Area(outline.Area()), ok
	case finish.Mask:
		return outline.Area(), "The whole mask: a roller covers the vinyl as well as the openings.",
			w.put(outline.Length) + " × " + w.put(outline.Width), outline.IsComplete()
	case finish.Openings:
		return w.openings()
	case finish.Edges:
		return measure.AreaOf(w.EdgeLength, w.BrushWidth), "Length of the edges times the width of the brush.",
			w.put(w.EdgeLength) + " × " + w.put(w.BrushWidth), w.EdgeLength > 0 && w.BrushWidth > 0
	}
	return w.Typed, "As typed.", w.n.Area(w.Typed), w.TypedKnown
}

// ceiling is how the area of the ceiling comes about, where that can be said in
// two lengths.
func (w *step) ceiling() string {
	if shape := w.builder.shape; shape.IsRectangle() {
		return w.put(shape.Length) + " × " + w.put(shape.Width)
	}
	return "as worked out in Room"
}

// openings is the share of a layer's openings that the step goes into.
func (w *step) openings() (a measure.Area, rule, sum string, ok bool) {
	outline := w.builder.plan.Mask.Outline
	for _, l := range w.layers {
		if l.panels.ID != w.LayerID {
			continue
		}
		if !l.plan.OpenKnown {
			w.report(l.plan.At+"/open", []problem.Problem{{Severity: problem.Stop,
				What: "The step “" + w.Name + "” goes into the openings of this layer, and their share of the mask is not given.",
				Do:   "Ask the supplier what share of the mask is cut out."}})
			return a, "", "", false
		}
		a = outline.Area().Times(l.plan.Open).Times(w.Share)
		sum = w.n.Area(outline.Area()) + " × " + w.builder.share(l.plan.Open) + " × " + w.builder.share(w.Share)
		return a, "The mask, the share of it that is cut out in “" + l.panels.Name + "”, and the share of those openings.", sum, outline.IsComplete() && w.ShareKnown
	}
	w.report(w.At+"/layer", []problem.Problem{{Severity: problem.Stop,
		What: "The step “" + w.Name + "” does not say into the openings of which layer it goes.", Do: "Choose the layer."}})
	return a, "", "", false
}

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

// cans is the cheapest choice of cans for a need.
func (w *step) cans(need measure.Volume) {
	purchase, problems, ok := finish.CheapestCans(need, w.Cans)
	w.report(w.At+"/cans", problems)
	if !ok || purchase.Cans == 0 {
		return
	}
	w.out.Buy = canList(purchase, w.Cans)
	w.out.LeftOver = w.n.Volume(purchase.Left) + " left over"
	sum, price := w.out.Buy+" hold "+w.n.Volume(purchase.Bought)+" for "+w.n.Volume(need), ""
	rule := "Whole cans that hold the need and leave the least over."
	if purchase.Priced {
		rule = "Whole cans that hold the need at the lowest price, then with the least left over, then the fewest. Every choice is compared."
		price = purchase.Price.StringFixed(2)
		sum += ", " + price + " in all"
	}
	w.figure(Figure{
		ID: w.id("cans"), Block: blockFinish, Label: "cans to buy", Value: strconv.FormatInt(purchase.Cans, 10), Text: w.out.Buy,
		Working: Working{Rule: rule, Sum: sum, Source: "Exact search. What a can holds is its net contents on the label, not its name."},
	})
	w.buy(w.Name, w.out.Buy, w.n.Volume(need)+" needed, "+w.out.LeftOver)
	w.bought(cansBought(w.Name, purchase, w.Cans)...)
}

func canList(p finish.Purchase, cans []finish.Can) string {
	text := ""
	for i, n := range p.Counts {
		if n == 0 {
			continue
		}
		if text != "" {
			text += " + "
		}
		text += strconv.FormatInt(n, 10) + " × " + cans[i].Label()
	}
	return text
}

// mix is what one batch of a mix comes to, and how many the step takes.
func (w *step) mix(need measure.Volume, known bool) {
	if len(w.Mix) == 0 {
		return
	}
	mix, problems, ok := finish.MixOf(w.Mix)
	w.report(w.At+"/mix", problems)
	if !ok {
		return
	}
	sum := ""
	for i, part := range w.Mix {
		if i > 0 {
			sum += " + "
		}
		sum += finish.Amount(part.Amount, part.Unit)
		if part.Name != "" {
			sum += " " + part.Name
		}
	}
	spoons := w.n.NumberTrimmed(mix.Total.In(measure.UnitTeaspoon), 2) + " tsp"
	millilitres := w.n.NumberTrimmed(mix.Total.In(measure.UnitMillilitre), 0) + " mL"
	text, other := spoons, millilitres
	if w.n.System == measure.Metric {
		text, other = millilitres, spoons
	}
	source := "1 US fl oz = 6 tsp (NIST Handbook 44, appendix C)."
	if w.n.Imperial {
		source = "1 US fl oz = 6 tsp, so 1 tsp = 4.929 mL (NIST Handbook 44, appendix C); imperial measures by the gallon of 4.546 09 L."
	}
	w.figure(Figure{
		ID: w.id("mix"), Block: blockFinish, Label: "one batch of the mix", Value: plain(mix.Total.Litres), Unit: "L", Text: text, Other: other,
		Working: Working{Rule: "The parts together.", Sum: sum + " = " + spoons + " = " + millilitres, Source: source},
	})
	w.batches(mix, need, known)
}

func (w *step) batches(mix finish.Mix, need measure.Volume, known bool) {
	if !known {
		return
	}
	n, ok := mix.Batches(need)
	if !ok {
		return
	}
	w.count(blockFinish, w.id("batches"), "batches of the mix", n, "",
		"What the step takes, in whole batches. Stir them together in one pail before you start: two batches seldom match.",
		w.n.Volume(need)+" ÷ "+w.n.Volume(mix.Total)+", rounded up", ofArithmetic)
}

const leafSource = "Field rule: each leaf adds its size less the lap both ways. Waste of a tenth lying flat, a fifth overhead: common practice, no source."

// leaf is the leaf of a step in leaves, books and packs.
func (w *step) leaf(area measure.Area) {
	l := w.Leaf
	if l == nil || !l.Known {
		return
	}
	leaves, problems, ok := finish.Field(finish.Gilding{Area: area, Leaf: l.Leaf, Cover: l.Cover, Waste: l.Waste})
	w.report(w.At+"/leaf", problems)
	if !ok {
		return
	}
	w.count(blockFinish, w.id("leaves"), "leaves", leaves.Count, "",
		"Area times the share that gets leaf, divided by what one lapped leaf adds, and the waste; rounded up.",
		w.n.Area(area)+" × "+w.builder.share(l.Cover)+" ÷ ("+w.less(l.Leaf.Length, l.Leaf.Lap)+" × "+w.less(l.Leaf.Width, l.Leaf.Lap)+") × (1 + "+w.builder.share(l.Waste)+"), rounded up", leafSource)
	books, problems, ok := finish.BooksFor(leaves.Count, int64(l.PerBook), int64(l.BooksPerPack))
	w.report(w.At+"/leaf", problems)
	if ok {
		w.books(books)
	}
	w.seal(l.Metal)
}

func (w *step) less(side, lap measure.Length) string {
	return "(" + w.put(side) + " − " + w.put(lap) + ")"
}

func (w *step) books(books finish.Books) {
	per := strconv.Itoa(w.Leaf.PerBook)
	w.count(blockFinish, w.id("books"), "books of leaf", books.Books, plural(books.Books, "book", "books"),
		"Leaves by the leaves in a book, rounded up.", strconv.FormatInt(books.Leaves, 10)+" ÷ "+per+", rounded up",
		"A book of 25 leaves: Encyclopædia Britannica, 1911, Goldbeating.")
	w.out.Buy = plural(books.Books, "book", "books")
	if books.Packs > 0 {
		w.count(blockFinish, w.id("packs"), "packs of leaf", books.Packs, plural(books.Packs, "pack", "packs"),
			"Whole packs; where the single books left come to eight tenths of a pack, one more pack.",
			strconv.FormatInt(books.Books, 10)+" ÷ "+strconv.Itoa(w.Leaf.BooksPerPack), "Common practice, no source.")
		w.out.Buy = plural(books.Packs, "pack", "packs")
		if books.Loose > 0 {
			w.out.Buy += " + " + plural(books.Loose, "book", "books")
		}
	}
	w.out.LeftOver = plural(books.Spare, "leaf", "leaves") + " spare"
	if books.Books > 0 {
		w.buy(w.Name, w.out.Buy, plural(books.Leaves, "leaf", "leaves")+" needed, "+w.out.LeftOver)
		w.bought(leafBought(w.Name, books, w.Leaf)...)
	}
}

// seal compares the leaf with the steps before and after it.
func (w *step) seal(metal finish.Metal) {
	below, above, passed := false, false, false
	for _, s := range w.builder.plan.Steps {
		switch {
		case s.ID == w.ID:
			passed = true
		case !passed && s.Kind == finish.ClearSeal:
			below = true
		case passed && (s.Kind == finish.ClearCoat || s.Kind == finish.ClearSeal || s.Kind == finish.Glaze):
			above = true
		}
	}
	w.report(w.At+"/leaf", finish.SealingRemarks(metal, below, above))
}
