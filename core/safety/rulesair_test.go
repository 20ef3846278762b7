package safety

import (
	"strings"
	"testing"

	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
)

func nights(n air.Nights) change       { return func(j *Job) { j.Air.Nights = n } }
func shut(changes measure.Fact) change { return func(j *Job) { j.Air.Shut = changes } }
func shortTerm(limit string) change    { return func(j *Job) { j.Air.ShortTerm = fact(limit) } }
func flames(a Answer) change           { return func(j *Job) { j.Building.Flames = a } }
func airHandling(a Answer) change      { return func(j *Job) { j.Building.AirHandling = a } }

// bright is a product of 67.59 g, or as much as is said, that is wet at once and
// dry in an hour.
func bright(grams string) change {
	return product(air.Product{At: "/finish/steps/1", Litres: measure.FactOf(number(grams).Quo(number("100"))), VOC: fact("100"), Binder: air.Water, DryHours: fact("1")})
}

func noLimit(j *Job) { j.Air.Limit = measure.Fact{} }

// ownLimit is bright with a limit of its own.
func ownLimit(grams string) change {
	return all(bright(grams), func(j *Job) { j.Products[len(j.Products)-1].Limit = fact("350") })
}

// flash is a litre of a product with this flash point and nothing in it.
func flash(celsius string, binder air.Binder) change {
	return product(air.Product{At: "/finish/steps/1", StepName: "Glaze", Litres: fact("1"), VOC: fact("0"), Binder: binder, DryHours: fact("1"), FlashPoint: fact(celsius)})
}

// counts is a product that counts as a category, with its label.
func counts(category air.Category, binder air.Binder, label string, changes ...func(*air.Product)) change {
	p := air.Product{At: "/finish/steps/3", StepName: "Ceiling paint", Litres: fact("0"), VOC: fact("0"), Binder: binder, Category: category, Label: fact(label)}
	for _, c := range changes {
		c(&p)
	}
	return product(p)
}

func lessWater(p *air.Product) { p.LessWater = true }

func sprayed(category air.Category) change {
	return product(air.Product{At: "/finish/steps/2", StepName: "Lacquer", Litres: fact("1"), VOC: fact("0"), Binder: air.Water, DryHours: fact("1"), Sprayed: true, Category: category})
}

func brushed(category air.Category) change {
	return product(air.Product{At: "/finish/steps/2", StepName: "Lacquer", Litres: fact("1"), VOC: fact("0"), Binder: air.Water, DryHours: fact("1"), Category: category})
}

func thinned(binder air.Binder, share string) change {
	return product(air.Product{At: "/finish/steps/2", StepName: "Varnish", Litres: fact("1"), Label: fact("100"), VOC: fact("100"), Binder: binder, DryHours: fact("9"), Thinner: number(share)})
}

// The air and what burns in it.
var airCases = []ruleCase{
	// Worked by hand: of M g, 0.9 M is given off in 8 h, M × 3.0583e-4 g/m³ is in the
	// air then, and the average is (0.9 M ÷ 90 − that) ÷ (4 ÷ 3 × 8) = M × 9.0883e-4:
	// 385.11 g gives 350 mg/m³ just so, 192.55 g half.
	{"air-over-limit", paints(air.Water, "3.8512", "100"), paints(air.Water, "3.851", "100")},
	{"air-near-limit", paints(air.Water, "3.851", "100"), paints(air.Water, "3.8512", "100")},
	{"air-near-limit", paints(air.Water, "1.9256", "100"), paints(air.Water, "1.9255", "100")},
	// The average is over 8 h, the level over the worst quarter of an hour: 67.585 g
	// make 350 mg/m³ of it. Where no limit is given for it, three times the other is
	// allowed, and half of that is 1.5 times 350.
	{"air-near-limit", bright("101.39"), bright("101.37")},
	{"air-over-short-limit", all(bright("67.59"), shortTerm("350")), all(bright("67.58"), shortTerm("350"))},
	{"air-over-short-limit", all(bright("67.59"), shortTerm("350")), bright("67.59")},
	{"air-over-short-limit", bright("202.77"), bright("202.74")},
	{"respirator-programme", paints(air.Water, "3.8512", "100"), paints(air.Water, "3.851", "100")},
	{"respirator-programme", all(bright("67.59"), shortTerm("350")), all(bright("67.58"), shortTerm("350"))},
	{"respirator-programme", paints(air.Water, "3.8512", "100"), all(paints(air.Water, "3.8512", "100"), sprayed(""))},
	{"respirator-for-spray", sprayed(""), brushed("")},

	// Worked by hand: after 8 h M × 3.0583e-4 g/m³ are in the air and 0.1 M is wet.
	// Shut, with 0.4 ÷ 3 changes an hour, it comes to M × (2.3759e-3 e^−0.13333t −
	// 2.0701e-3 e^−0.28782t), at most M × 7.3933e-4 after 4.09 h: 473.4 g make 350.
	{"keep-windows-open", paints(air.Water, "4.74", "100"), paints(air.Water, "4.73", "100")},
	{"keep-windows-open", paints(air.Water, "4.74", "100"), all(paints(air.Water, "4.74", "100"), nights(air.NightsOpen))},
	{"keep-windows-open", all(paints(air.Water, "4.74", "100"), nights(air.NightsShut)), all(bright("100"), nights(air.NightsShut))},
	{"keep-windows-open", all(paints(air.Water, "1", "60"), opened(measure.Fact{})), all(paints(air.Water, "1", "30"), opened(measure.Fact{}))},
	{"no-way-out-for-vapour", all(paints(air.Solvent, "0.1", "10"), opened(measure.Fact{})), paints(air.Solvent, "0.1", "10")},
	{"no-way-out-for-vapour", all(paints(air.Solvent, "0.1", "10"), opened(fact("0"))), all(paints(air.Water, "0.1", "10"), opened(fact("0")))},
	{"no-way-out-for-vapour", all(paints(air.Water, "0.1", "150.1"), opened(fact("0"))), all(paints(air.Water, "0.1", "150"), opened(fact("0")))},
	{"vapour-goes-on", all(paints(air.Water, "0.1", "1"), airHandling(Yes)), all(paints(air.Water, "0.1", "0"), airHandling(Yes))},
	{"vapour-goes-on", all(sprayed(""), airHandling(Yes)), all(sprayed(""), airHandling(""))},
	{"air-system-not-known", paints(air.Solvent, "0.1", "1"), paints(air.Water, "0.1", "1")},
	{"air-system-not-known", paints(air.Solvent, "0.1", "1"), all(paints(air.Solvent, "0.1", "1"), airHandling(No))},
	{"smell-in-a-shut-room", paints(air.Water, "1", "0"), all(paints(air.Water, "1", "0"), nights(air.NightsOpen))},
	{"smell-in-a-shut-room", paints(air.Water, "4.73", "100"), paints(air.Water, "4.74", "100")},
	{"smell-in-a-shut-room", all(paints(air.Water, "1", "0"), nights(air.NightsOpen), opened(fact("0"))), paints(air.Solvent, "1", "0")},

	{"two-pack-sprayed", sprayed(air.TwoPack), brushed(air.TwoPack)},
	{"two-pack", brushed(air.TwoPack), sprayed(air.TwoPack)},
	{"two-pack", brushed(air.TwoPack), brushed(air.OnePack)},
	{"two-pack", all(in(UK), brushed(air.TwoPack)), all(in(EU), brushed(air.TwoPack))},
	{"two-pack-training", all(in(EU), brushed(air.TwoPack)), all(in(UK), brushed(air.TwoPack))},
	{"two-pack-training", all(in(EU), brushed(air.TwoPack)), all(in(EU), sprayed(air.TwoPack))},
	{"spray-mist", sprayed(""), brushed("")},

	// Worked by hand: M g, k = ln 10 ÷ 8 h, 4 ÷ 3 changes an hour, come to at most
	// M ÷ 90 × k ÷ 1.3333 × e^−(k × 1.4666 h) = M × 1.57277e-3 g/m³: 2161.8 g make 3.4.
	{"vapour-may-burn", paints(air.Solvent, "2.162", "1000"), paints(air.Solvent, "2.1615", "1000")},
	{"vapour-may-burn", paints(air.Solvent, "2.162", "1000"), all(paints(air.Solvent, "2.162", "1000"), opened(fact("4.1")))},
	{"vapour-may-burn", paints(air.Solvent, "2.162", "1000"), all(paints(air.Solvent, "1", "900"), paints(air.Water, "40", "100"))},
	// Where there is no course, all of it at once: 306 g in 90 m³ are 3400 mg/m³.
	{"vapour-may-burn", all(shut(measure.Fact{}), paints(air.Solvent, "1.0001", "306")), all(shut(measure.Fact{}), paints(air.Solvent, "1", "306"))},
	{"vapour-in-a-shut-room", paints(air.Solvent, "1.0001", "306"), paints(air.Solvent, "1", "306")},
	{"vapour-in-a-shut-room", all(paints(air.Solvent, "1", "306"), paints(air.DryingOil, "1", "160")), all(paints(air.Solvent, "1", "306"), paints(air.Water, "40", "100"))},
	{"vapour-in-a-shut-room", paints(air.Solvent, "1", "400"), paints(air.Solvent, "2.2", "1000")},
	{"vapour-in-a-shut-room", product(air.Product{Litres: fact("1"), VOC: fact("361"), Binder: air.Solvent, FlashPoint: fact("59.9"), DryHours: fact("9")}),
		product(air.Product{Litres: fact("1"), VOC: fact("361"), Binder: air.Solvent, FlashPoint: fact("60"), DryHours: fact("9")})},
	// A flash point of 60 °C, 140 °F, is not below it. Where there is none, solvent
	// counts as below.
	{"flames-burning", all(flames(Yes), flash("59.99", air.Water)), all(flames(Yes), flash("60", air.Water))},
	{"flames-burning", all(flames(Yes), paints(air.Solvent, "0.1", "10")), all(flames(Yes), flash("60", air.Solvent))},
	{"flames-burning", all(flames(Yes), flash("20", air.Solvent)), flash("20", air.Solvent)},
	{"flames-out", paints(air.Solvent, "0.1", "10"), paints(air.Water, "0.1", "10")},
	{"flames-out", product(air.Product{Litres: fact("1"), Binder: air.DryingOil, DryHours: fact("9")}),
		product(air.Product{Litres: fact("1"), Binder: air.Water, DryHours: fact("9")})},
	{"flames-out", flash("59.99", air.DryingOil), all(flash("59.99", air.DryingOil), flames(No))},
	{"keep-flames-out", all(flash("59.99", air.DryingOil), flames(No)), all(flash("60", air.DryingOil), flames(No))},
	{"fire-office-above-1-gallon", paints(air.Solvent, "3.785411785", "10"), paints(air.Solvent, "3.785411784", "10")},
	{"fire-office-above-1-gallon", paints(air.Solvent, "4", "10"), all(paints(air.Solvent, "4", "10"), in(UK))},
	{"fire-office-above-1-gallon", all(paints(air.Solvent, "3.7", "10"), flash("35", air.Water)), all(paints(air.Solvent, "3.7", "10"), flash("61", air.Solvent))},

	// 31.5 g in 90 m³ are 350 mg/m³, the limit. By the course the air is above it
	// only with more; where there is no limit for all, there is only the course.
	{"stay-out", paints(air.Water, "0.3151", "100"), paints(air.Water, "0.315", "100")},
	{"stay-out", all(shut(measure.Fact{}), paints(air.Water, "0.3151", "100")), all(shut(measure.Fact{}), paints(air.Water, "0.315", "100"))},
	{"stay-out", all(noLimit, ownLimit("67.59")), all(noLimit, ownLimit("67.58"))},
	{"keep-air-moving", paints(air.Water, "0.315", "100"), paints(air.Water, "0.3151", "100")},
	{"keep-air-moving", paints(air.Water, "0.1", "1"), paints(air.Water, "0.1", "0")},

	{"air-figures-too-low", product(air.Product{Litres: fact("1"), Binder: air.Water, DryHours: fact("1")}), paints(air.Water, "1", "1")},
	{"air-figures-too-low", product(air.Product{Litres: fact("1"), VOC: fact("5"), Binder: air.Water}),
		product(air.Product{Litres: fact("1"), VOC: fact("0"), Binder: air.Water})},
	// 250 g/L less water in the US, 30 g/L with it in Europe; 2.1 lb/gal as printed.
	{"above-its-category", counts(air.MattCeiling, air.Water, "250.1", lessWater), counts(air.MattCeiling, air.Water, "250", lessWater)},
	{"above-its-category", all(in(EU), counts(air.MattCeiling, air.Water, "30.1")), all(in(EU), counts(air.MattCeiling, air.Water, "30"))},
	{"above-its-category", counts(air.MattCeiling, air.Solvent, "250.1"), counts(air.MattCeiling, air.Water, "249")},
	{"above-its-category", all(in(UK), counts(air.BindingPrimer, air.Solvent, "740", func(p *air.Product) { p.Thinner = number("0.1") })), all(in(UK), counts(air.BindingPrimer, air.Solvent, "740"))},
	{"above-its-category", counts(air.MattCeiling, air.Water, "252", lessWater, func(p *air.Product) { p.InPounds = true }),
		counts(air.MattCeiling, air.Water, "251.6", lessWater, func(p *air.Product) { p.InPounds = true })},
	{"above-its-category", all(in(EU), counts(air.TrimVarnish, air.Solvent, "401")), all(in(EU), counts(air.Adhesive, air.Solvent, "900"))},
	{"thinner-adds-fumes", thinned(air.Solvent, "0.05"), thinned(air.Water, "0.05")},
	{"brush-cleaning", paints(air.Solvent, "0.1", "1"), paints(air.Water, "0.1", "1")},
	{"brush-cleaning", paints(air.DryingOil, "0.1", "1"), paints("", "0.1", "1")},
	{"brush-cleaning", thinned(air.Solvent, "0"), thinned(air.Solvent, "0.05")},
	{"thinner-adds-fumes", thinned(air.DryingOil, "0.05"), thinned(air.DryingOil, "0")},
	{"less-water-as-mass", product(air.Product{Litres: fact("1"), VOC: fact("9"), DryHours: fact("1"), Binder: air.Water, Unsplit: true}), paints(air.Water, "1", "9")},
	{"binder-not-known", paints("", "1", "0"), paints(air.Water, "1", "0")},
}

// What a rule went by is said with the numbers of the job.
func TestAirWorkings(t *testing.T) {
	for id, row := range map[string]struct {
		change  change
		working string
	}{
		// 400 g: 363.53 mg/m³ on average, 103.87 % of 350.
		"air-over-limit":             {paints(air.Water, "4", "100"), "364 mg/m³ over eight hours, 104 % of what is allowed; the rule stops above 100 %."},
		"air-over-short-limit":       {all(bright("67.59"), shortTerm("350")), "350 mg/m³ in the worst quarter of an hour, 100.1 % of what is allowed: 350 mg/m³ for fifteen minutes; the rule stops above 100 %."},
		"vapour-may-burn":            {paints(air.Solvent, "3", "1000"), "4718 mg/m³ as planned; the rule stops above 3400 mg/m³."},
		"vapour-in-a-shut-room":      {paints(air.Solvent, "1", "450"), "5000 mg/m³ at once in the shut room; the rule starts above 3400 mg/m³."},
		"flames-burning":             {all(flames(Yes), flash("59.99", air.Water), paints(air.Solvent, "1", "5")), "Flash point: Glaze 59.9 °C (139.9 °F), Glaze not given; the rule stops below 60 °C (140 °F)."},
		"fire-office-above-1-gallon": {paints(air.Solvent, "3.785411785", "10"), "3.8 L, 1.1 US gallons; the rule starts above 1 US gallon."},
		"above-its-category":         {counts(air.MattCeiling, air.Water, "250.01", lessWater), "Ceiling paint 250.1 g/L, and 250.0 g/L is the most."},
		"thinner-adds-fumes":         {thinned(air.Solvent, "0.05"), "Varnish: 100.0 g/L on the label, 100.0 g/L with 5 % of thinner."},
	} {
		assert.Equal(t, row.working, find(t, notesAfter(row.change), id).Working, id)
	}
}

// Every word in braces in what a rule of the air went by is one that is known.
func TestEveryAirAmountIsKnown(t *testing.T) {
	known := map[string]bool{}
	for _, row := range airCases {
		job := quietJob()
		row.fires(&job)
		f := factsOf(job)
		for _, r := range airRules() {
			if r.id != row.id || !r.appliesIn(job.Country) {
				continue
			}
			for _, part := range strings.Split(r.words+" "+r.working, "{")[1:] {
				name, _, _ := strings.Cut(part, "}")
				assert.NotNil(t, f.amount(name), "%s in %s", name, r.id)
				known[name] = true
			}
		}
	}
	assert.Greater(t, len(known), 20)
}

// A job whose products all have limits of their own needs none besides, and the
// air it needs goes by them.
func TestAirByOwnLimits(t *testing.T) {
	job := quietJob()
	job.Air.Limit = measure.Fact{}
	all(paints(air.Solvent, "2", "300"), paints(air.Water, "1", "8"))(&job)
	job.Products[0].Limit, job.Products[1].Limit = fact("200"), fact("350")
	_, problems := air.Of(job.Job)
	assert.Empty(t, problems)
	looser := job
	looser.Products = append([]air.Product{}, job.Products...)
	looser.Products[0].Limit = fact("350")
	assert.Greater(t, air.CourseOf(job.Job).Needed.Changes.Value.Float(), air.CourseOf(looser.Job).Needed.Changes.Value.Float())
	job.Products[1].Limit = measure.Fact{}
	_, problems = air.Of(job.Job)
	assert.Len(t, problems, 1)
	assert.Equal(t, "/air/limit", problems[0].At)
}

// One wait is told: the longer of the course's and of the airing of all at once.
func TestOneWait(t *testing.T) {
	short, long := measure.Fact{Value: number("1"), Known: true}, measure.Fact{Value: number("2"), Known: true}
	assert.Equal(t, long, air.Wait(air.Air{Purge: short}, air.Course{Reentry: long}))
	assert.Equal(t, long, air.Wait(air.Air{Purge: long}, air.Course{Reentry: short}))
	assert.Equal(t, short, air.Wait(air.Air{Purge: short}, air.Course{}))
	assert.Equal(t, short, air.Wait(air.Air{}, air.Course{Reentry: short}))
	assert.False(t, air.Wait(air.Air{}, air.Course{}).Known)
}

// What is above a limit never reads as the limit, nor what is below it.
func TestShareText(t *testing.T) {
	for share, text := range map[string]string{
		"1": "100 %", "1.000001": "100.1 %", "0.999999": "99.9 %", "1.004": "100.4 %", "1.005": "100.5 %", "1.0051": "101 %",
		"0.5": "50 %", "0.500001": "50.1 %", "0.496": "49.6 %", "0.263": "26 %", "2.729": "273 %", "0": "0 %",
	} {
		assert.Equal(t, text, air.Share(number(share)).In(words.Style{}), share)
	}
}

// Values far outside any job end in a note or in none, never in a panic.
func TestNotesOfHugeAndTiny(t *testing.T) {
	for _, huge := range []string{"1e-400", "1e-30", "1e30", "1e400"} {
		job := quietJob()
		paints(air.Solvent, "1", "300")(&job)
		job.Air = air.Plan{Limit: fact(huge), Opened: fact(huge), Shut: fact(huge), Mixing: fact("1")}
		assert.NotEmpty(t, Notes(job, words.Style{}), huge)
	}
}
