package plan

import (
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/air"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// volumeUnits are the words for units of volume in a plan.
func volumeUnits() []measure.VolumeUnit {
	return []measure.VolumeUnit{measure.UnitGallon, measure.UnitQuart, measure.UnitPint, measure.UnitCup, measure.UnitFluidOunce,
		measure.UnitTablespoon, measure.UnitTeaspoon, measure.UnitLitre, measure.UnitMillilitre}
}

func readSteps(s section) []Step {
	entries := s.items("steps")
	if len(entries) > MostSteps {
		s.report(s.at+"/steps", problem.Stop, words.Say("The finish has {n} steps; {most} are read.", words.Count("n", len(entries)), words.Count("most", MostSteps)), words.Say("Take out the steps that are not needed."))
		entries = entries[:MostSteps]
	}
	steps := make([]Step, 0, len(entries))
	used := map[string]bool{}
	for i, entry := range entries {
		step := readStep(s.object(entry.at, entry.node), i)
		given := step.ID
		for used[step.ID] {
			step.ID += "-" + strconv.Itoa(i+1)
		}
		if step.ID != given {
			s.report(step.At+"/id", problem.Note, words.Say("Another step is called {given} too; this one is {id} on the sheet.", words.Name("given", problem.Quote(given)), words.Name("id", problem.Quote(step.ID))), words.Say("Give each step a word of its own."))
		}
		used[step.ID] = true
		steps = append(steps, step)
	}
	return steps
}

// readStep reads one step. Blanks that its kind has no use for are known and
// left alone: they keep what was typed before the kind was changed.
func readStep(s section, i int) Step {
	step := Step{At: s.at, ID: s.id("id"), Name: s.name("name")}
	if step.ID == "" {
		step.ID = "step" + strconv.Itoa(i+1)
	}
	step.Kind = word(s, "kind", words.Say("what kind of step this is"), kindsFirstBase()...)
	if step.Name == "" {
		step.Name = string(step.Kind)
	}
	readArea(s, &step)
	switch {
	case step.Kind.IsLiquid():
		readPaint(s, &step)
	case step.Kind == finish.LeafLaying:
		step.Leaf = readLeaf(s.section("leaf"))
	}
	readWork(s, &step)
	for _, name := range []string{"layer", "share", "typedArea", "typedUnit", "brushWidth", "edgeLength", "coats", "by", "spread", "spreadUnit",
		"film", "filmUnit", "loss", "cans", "voc", "vocUnit", "binder", "dryHours", "mix", "leaf", "openHours",
		"surface", "dryFilm", "dryFilmUnit", "solids", "thinned", "method", "vary", "varyOf", "buyFor", "sameAs", "oneBatch", "keep", "keepUnit",
		"spare", "potLife", "sample", "sampleUnit",
		"limit", "flash", "flashUnit", "vocAs", "waterPart", "exemptPart", "category"} {
		s.setAside(name)
	}
	return step
}

// kindsFirstBase puts the commonest kind first, which is taken for a word that
// is none.
func kindsFirstBase() []finish.Kind {
	return append([]finish.Kind{finish.Base}, finish.Kinds()...)
}

func readArea(s section, step *Step) {
	step.Basis = word(s, "area", words.Say("which area the step covers"), finish.Bases()...)
	step.LayerID = s.id("layer")
	switch step.Basis {
	case finish.Openings:
		step.Share, step.ShareKnown = s.share("share", words.Say("the share of the openings"), 100)
	case finish.Edges:
		step.EdgeLength, _ = s.run("edgeLength", words.Say("the length of the edges"))
		step.BrushWidth, _ = s.positive("brushWidth", words.Say("the width of the brush"))
	case finish.Typed:
		n, ok := s.positiveNumber("typedArea", words.Say("the area"))
		if word(s, "typedUnit", words.Say("the unit of the area"), "ft2", "m2") == "ft2" {
			n = n.Mul(measure.SquareFoot)
		}
		step.Typed, step.TypedKnown = measure.Area{SquareMetres: n}, ok
	case finish.SurfaceOf:
		step.Surface = s.id("surface")
	}
}

// readWork reads what the days, the gilding and the record need.
func readWork(s section, step *Step) {
	rate, ok := s.number("rate", optional)
	if choice(s, "rateUnit", words.Say("the unit of the rate"), "ft2/h", "m2/h") == "ft2/h" {
		rate = rate.Mul(measure.SquareFoot)
	}
	step.Rate, step.RateKnown = measure.Area{SquareMetres: rate}, ok && !rate.IsZero()
	step.RecoatHours = s.fact("recoatHours")
	sizing := step.Kind == finish.SizeCoat
	s.when(sizing, func() {
		step.TackHours, step.OpenHours = s.span("tackHours"), s.span("openHours")
		if s.text("gilders") != "" {
			step.Gilders, _ = s.count("gilders", optional)
		}
		step.ReadyAt = s.text("readyAt")
		step.Reserve = s.percent("reserve", 99)
		step.Beyond, _ = s.length("sizeBeyond", optional)
	})
	step.Batch, step.Colour, step.MadeOn = s.name("batch"), s.name("colour"), s.name("madeOn")
}

func readPaint(s section, step *Step) {
	if step.Coats, _ = s.count("coats", words.Say("the number of coats")); step.Coats > finish.MostCoats {
		s.report(s.at+"/coats", problem.Stop, words.Say("There are {n} coats; {most} are the most that are taken.", words.Count("n", step.Coats), words.Count("most", finish.MostCoats)), words.Say("Check the number."))
		step.Coats = 0
	}
	readSpread(s, step)
	readLoss(s, step)
	step.Cans = readCans(s)
	step.Mix, step.MixWhole = readMix(s)
	readBuying(s, step)
	step.VOC = readVOC(s)
	step.VOCInPounds = s.text("vocUnit") == "lb/gal"
	readLabel(s, step)
	step.Binder = word(s, "binder", words.Say("what the product is thinned with"), air.Binder(""), air.Water, air.Solvent, air.DryingOil)
	step.DryHours = s.fact("dryHours")
}

// readLabel reads what the label and the safety data sheet say besides the VOC.
func readLabel(s section, step *Step) {
	step.Limit = s.fact("limit")
	step.FlashPoint = s.degrees("flash", choice(s, "flashUnit", words.Say("the unit of the flash point"), "C", "F") == "F")
	step.LessWater = choice(s, "vocAs", words.Say("what the VOC figure counts"), "material", "less-water") == "less-water"
	step.Category = choice(s, "category", words.Say("what category the product is"), append([]air.Category{""}, air.Categories()...)...)
	s.when(step.LessWater || step.Category != "", func() {
		step.WaterPart, step.ExemptPart = s.percent("waterPart", 100), s.percent("exemptPart", 100)
	})
}

// readLoss reads how the product is put on and what is lost by it. Without a loss
// it is the usual one of the method, which the sheet says.
func readLoss(s section, step *Step) {
	step.Method = choice(s, "method", words.Say("how it is put on"), append([]finish.Method{""}, finish.Methods()...)...)
	if usual, ok := finish.UsualLoss(step.Method); ok && s.text("loss") == "" {
		step.Loss, step.LossKnown, step.LossIsUsual = usual, true, true
		return
	}
	step.Loss, step.LossKnown = s.shareOrNone("loss", words.Say("loss"), 99)
}

// readBuying reads how surely and from where the product is bought.
func readBuying(s section, step *Step) {
	step.Vary = s.percent("vary", 90)
	step.VaryOfPaint = choice(s, "varyOf", words.Say("what may be off"), "cover", "paint") == "paint"
	step.BuyFor = choice(s, "buyFor", words.Say("which need is bought for"), Likely, Rich, Lean)
	step.SameAs = s.id("sameAs")
	step.OneBatch = choice(s, "oneBatch", words.Say("whether it must be one batch"), "no", "yes") == "yes"
	step.Keep = s.volumeBlank("keep", "keepUnit", words.Say("the unit of what is kept"))
	step.Spare = s.percent("spare", 1000)
	step.PotLife = s.fact("potLife")
	step.Sample = s.volumeBlank("sample", "sampleUnit", words.Say("the unit of the sample"))
}

// volumeBlank reads a volume in two blanks; an empty one is none.
func (s section) volumeBlank(name, unitName string, what words.Text) measure.Volume {
	unit := s.units.Gallon.Volume(choice(s, unitName, what, volumeUnits()...))
	if s.text(name) == "" {
		return measure.Volume{}
	}
	n, _ := s.amount(name)
	return measure.VolumeOf(n, unit)
}

// pointed is a number as it was typed, with the decimal point that the sheet is
// written with.
func pointed(text string) string { return strings.ReplaceAll(text, ",", ".") }

func readSpread(s section, step *Step) {
	by := word(s, "by", words.Say("whether to go by spread rate or film"), "spread", "wet", "dry")
	step.ByFilm = by == "wet"
	if by == "dry" {
		readDryFilm(s, step)
		return
	}
	if step.ByFilm {
		n, ok := s.positiveNumber("film", words.Say("the wet film"))
		if word(s, "filmUnit", words.Say("the unit of the film"), "mil", "um") == "mil" {
			step.Spread, step.SpreadText = finish.SpreadFromFilm(finish.FilmFromMils(n)), pointed(s.text("film"))+" mil"
		} else {
			step.Spread, step.SpreadText = finish.SpreadFromFilm(finish.FilmFromMicrometres(n)), pointed(s.text("film"))+" µm"
		}
		step.SpreadKnown = ok
		return
	}
	n, ok := s.positiveNumber("spread", words.Say("the spread rate"))
	if word(s, "spreadUnit", words.Say("the unit of the spread rate"), "ft2/gal", "m2/L") == "ft2/gal" {
		step.Spread, step.SpreadText = finish.SpreadFromSquareFeet(n, s.units.Gallon.Volume(measure.UnitGallon)), pointed(s.text("spread"))+" ft²/"+s.units.Gallon.Volume(measure.UnitGallon).Text()
	} else {
		step.Spread, step.SpreadText = finish.SpreadFromSquareMetres(n), pointed(s.text("spread"))+" m²/L"
	}
	step.SpreadKnown = ok
}

// readDryFilm reads the dry film, the volume solids and the thinner. What spread
// they come to is for the finish to say.
func readDryFilm(s section, step *Step) {
	n, film := s.positiveNumber("dryFilm", words.Say("the dry film"))
	unit := word(s, "dryFilmUnit", words.Say("the unit of the dry film"), "mil", "um")
	step.DryFilm = finish.FilmFromMicrometres(n)
	if unit == "mil" {
		step.DryFilm = finish.FilmFromMils(n)
	}
	solids, known := s.share("solids", words.Say("the volume solids"), 100)
	step.Solids = Percent{solids, known && !solids.IsZero()}
	step.Thinned = s.percent("thinned", 1000)
	step.ByDryFilm, step.DryFilmKnown = true, film
}

func readCans(s section) []finish.Can {
	var cans []finish.Can
	for _, can := range s.some("cans", finish.MostSizes, words.Say("sizes of can")) {
		size, ok := can.positiveAmount("size", words.Say("the size of the can"))
		unit := s.units.Gallon.Volume(word(can, "unit", words.Say("the unit of the can"), volumeUnits()...))
		price, priced := can.money("price")
		if !ok {
			continue
		}
		c := finish.CanOf(size, unit)
		if priced {
			c = c.At(price)
		}
		cans = append(cans, c)
	}
	return cans
}

// mostParts is more than any recipe has, mostPartsInAll more than a whole job.
const (
	mostParts      = 24
	mostPartsInAll = 400
)

// readMix reads the parts of a mix. whole is false where one could not be read,
// or there are more than are read: the shares of the others would be wrong
// without it.
func readMix(s section) (parts []mixing.Part, whole bool) {
	read := s.objects(s.shared("mix", &s.taken.parts, min(mostPartsInAll, s.taken.parts+mostParts), words.Say("parts")))
	whole = len(read) == len(s.items("mix"))
	for _, part := range read {
		p, ok := readPart(part)
		parts, whole = append(parts, p), whole && ok
	}
	return parts, whole
}

// An ounce is 28.349 523 125 g (NIST Handbook 44, appendix C).
var ounce = measure.MustNumber("28.349523125")

// isCalled tells whether one of the words of a name is word. A part of a mix is water or
// paint by what it is called: nothing else in a plan says so.
func isCalled(name, word string) bool {
	return slices.ContainsFunc(strings.Fields(strings.ToLower(name)), func(w string) bool { return strings.Trim(w, ",.;:()") == word })
}

func readPart(s section) (mixing.Part, bool) {
	amount, ok := s.positiveAmount("amount", words.Say("the amount"))
	p := mixing.Part{Name: s.name("name"), Amount: amount, Tint: choice(s, "tint", words.Say("whether the part is a tint"), "no", "yes") == "yes"}
	p.Paint, p.Water = isCalled(p.Name, "paint"), isCalled(p.Name, "water")
	if s.text("density") != "" {
		p.Density, _ = s.positiveNumber("density", optional)
	}
	switch unit := word(s, "unit", words.Say("the unit of the part"), append(kitUnits(), "%")...); unit {
	case "%":
		p.Shared, p.Amount = true, amount.Quo(measure.NumberFromInt(100))
	case "g":
		p.Weighed = true
	case "oz":
		p.Weighed, p.Amount = true, amount.Mul(ounce)
	default:
		p.Unit = s.units.Gallon.Volume(measure.VolumeUnit(unit))
	}
	return p, ok
}

func readVOC(s section) measure.Fact {
	voc := s.fact("voc")
	if s.text("vocUnit") == "" && !voc.Known {
		return voc
	}
	if word(s, "vocUnit", words.Say("the unit of the VOC figure"), "g/L", "lb/gal") == "lb/gal" {
		voc.Value = voc.Value.Mul(air.PoundPerGallon)
	}
	return voc
}

func readLeaf(s section) *Leaf {
	leaf := &Leaf{Metal: word(s, "metal", words.Say("which metal the leaf is"), finish.Metals()...)}
	var known [6]bool
	leaf.Leaf.Length, known[0] = s.positive("length", words.Say("the length of a leaf"))
	leaf.Leaf.Width, known[1] = s.positive("width", words.Say("the width of a leaf"))
	leaf.Leaf.Lap, known[2] = s.length("lap", words.Say("the lap of a leaf"))
	leaf.Cover, known[3] = s.share("cover", words.Say("the share that gets leaf"), 100)
	leaf.Waste, known[4] = s.shareOrNone("waste", words.Say("waste of leaf"), 100)
	leaf.PerBook, known[5] = s.count("perBook", words.Say("the number of leaves in a book"))
	if s.text("booksPerPack") != "" {
		leaf.BooksPerPack, _ = s.count("booksPerPack", optional)
	}
	readLay(s, leaf)
	leaf.Known = known == [6]bool{true, true, true, true, true, true}
	return leaf
}

// readLay reads how the leaf is laid and what it costs.
func readLay(s section, leaf *Leaf) {
	leaf.Lay = choice(s, "lay", words.Say("how the leaf is laid"), Field, Grid, Band)
	s.when(leaf.Lay == Band, func() {
		leaf.BandWidth, _ = s.positive("bandWidth", words.Say("the width of the band"))
		var ok bool
		leaf.BandRun, ok = s.run("bandRun", optional)
		leaf.BandRunWrong = !ok && s.text("bandRun") != ""
		leaf.BandMeets = choice(s, "bandEnds", words.Say("whether the band runs round"), "open", "meet") == "meet"
		if s.text("bandCorners") != "" {
			leaf.BandCorners, _ = s.count("bandCorners", optional)
		}
	})
	leaf.Spill, _ = s.length("spill", optional)
	leaf.OpeningsEdge, _ = s.run("openingsEdge", optional)
	leaf.PerBookPrice, leaf.PerPackPrice = s.sum("pricePerBook"), s.sum("pricePerPack")
	leaf.GramsPer1000 = s.fact("gramsPer1000")
}
