package air

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
)

func number(text string) measure.Number { return measure.MustNumber(text) }

func fact(text string) measure.Fact { return measure.FactOf(number(text)) }

// CDC, Guidelines for Environmental Infection Control, 2003, table B.1: minutes
// for 90, 99 and 99.9 % to be carried off; the same table in MMWR 43 RR-13, 1994.
func TestPurgeAgainstCDC(t *testing.T) {
	changes := []string{"1", "2", "4", "6", "8", "10", "12", "15", "20", "50"}
	for left, minutes := range map[string][]float64{
		"0.1":   {138, 69, 35, 23, 17, 14, 12, 9, 7, 3},
		"0.01":  {276, 138, 69, 46, 35, 28, 23, 18, 14, 6},
		"0.001": {414, 207, 104, 69, 52, 41, 35, 28, 21, 8},
	} {
		for i, ach := range changes {
			hours, ok := purgeHours(number(ach), number("1"), number("1"), number(left))
			require.True(t, ok)
			assert.Equal(t, minutes[i], math.Round(60*hours.Float()), "%s changes an hour, %s left", ach, left)
		}
	}
}

// A US federal HVAC design guide, 2000/2006, p. 106: from 20 to 1.4 % at a mixing
// efficiency of 0.20, which is a factor of 5, and 2 changes a minute: 13.30
// changes, 6.65 minutes.
func TestPurgeWithPoorMixing(t *testing.T) {
	minutes, ok := purgeHours(number("2"), number("5"), number("20"), number("1.4"))
	require.True(t, ok)
	assert.InDelta(t, 6.65, minutes.Float(), 0.005)
}

// An on-line engineering table of 2005: c = (q/nV)(1 − e^−nt) with q = V = 1.
func TestBuiltUpAgainstGrowthTable(t *testing.T) {
	minutes := []float64{10, 20, 40, 80, 160}
	for changes, levels := range map[float64][]float64{
		0.5: {.1599, .3070, .5669, .9732, 1.4728},
		1:   {.1535, .2835, .4866, .7364, .9305},
		2:   {.1417, .2433, .3682, .4653, .4976},
		4:   {.1216, .1841, .2326, .2488, .2500},
	} {
		for i, minute := range minutes {
			changed := measure.NumberFromFraction(int64(changes*minute), 60)
			level := builtUp(changed).Float() * minute / 60
			assert.InDelta(t, levels[i], level, 0.00005, "%g changes an hour after %g min", changes, minute)
		}
	}
}

// From memory, after an ACGIH manual example whose arithmetic was run again:
// 100 000 ft³, 1.2 ft³/min of vapour, 2 000 ft³/min of air: 200 ppm after
// 20.3 min and 419 ppm after 60 min.
func TestBuiltUpAgainstManual(t *testing.T) {
	for minute, ppm := range map[float64]float64{20.3: 200, 60: 419} {
		changed := number("0.02").Mul(measure.NumberFromFraction(int64(minute*10), 10))
		assert.InDelta(t, ppm, 1.2*minute/100_000*1e6*builtUp(changed).Float(), 0.5)
	}
}

func TestBuiltUpEnds(t *testing.T) {
	assert.Equal(t, 1.0, builtUp(number("0")).Float(), "no air changed: all of it stays")
	assert.Equal(t, 1.0, builtUp(number("-1")).Float())
	assert.InDelta(t, 1e-6, builtUp(number("1000000")).Float(), 1e-8)
	huge := number("1e200").Mul(number("1e200"))
	assert.InDelta(t, 0, builtUp(huge).Float(), 1e-9, "a number beyond float64 is no NaN")
}

// NIOSH Pocket Guide, turpentine: molar mass 136, 1 ppm = 5.56 mg/m³; its limit of
// 100 ppm was printed as 556 mg/m³.
func TestMilligramsFromPPM(t *testing.T) {
	assert.Equal(t, "5.56", milligramsFromPPM(number("1"), number("136")).RoundHalfEven(2).String())
	assert.Equal(t, "556", milligramsFromPPM(number("100"), number("136")).RoundHalfEven(0).String())
	// 800 ppm is a tenth of the 0.8 % at which turpentine burns: 4450 mg/m³.
	assert.Equal(t, "4450", milligramsFromPPM(number("800"), number("136")).RoundHalfEven(0).String())
}

// airyJob is the hand example of a 6 × 5 × 3 m room: 2 L at 300 g/L drying over
// 4 h, 4 changes an hour, a mixing factor of 3, a limit of 350 mg/m³.
func airyJob() Job {
	return Job{
		RoomVolume: measure.Volume{Litres: number("90000")},
		Air:        Plan{Limit: fact("350"), Opened: fact("4"), Shut: fact("0.4"), Mixing: fact("3")},
		Products: []Product{{
			At: "/finish/steps/0", StepName: "Glaze", Litres: fact("2"), VOC: fact("300"),
			Binder: Solvent, Coats: 1, DryHours: fact("4"),
		}},
	}
}

// Worked by hand: 600 g, 6667 mg/m³ if shut.
func TestAirOfHandExample(t *testing.T) {
	air, problems := Of(airyJob())
	require.Empty(t, problems)
	assert.True(t, air.Complete)
	assert.Equal(t, "600", air.Mass.Value.RoundHalfEven(6).String())
	assert.Equal(t, "6667", air.Peak.Value.RoundHalfEven(0).String())
	// 6666.67 × (1 − e^−x)/x with x = 0.4 ÷ 3 × 4 = 0.5333 and e^−x = 0.58665:
	// 5166.9, up to the next.
	assert.Equal(t, "5167", air.Shut.Value.RoundHalfEven(6).String())
	// 0.75 h × ln(6666.67 ÷ 350) = 2.21 h, 132.6 minutes.
	assert.Equal(t, "132.6", air.Purge.Value.Mul(number("60")).RoundHalfEven(1).String())
}

// An oil that hardens in two days gives off its solvent no slower than one that
// is dry in ten hours, in every figure; what is thinned with water does.
func TestAHardeningOilEvaporatesInTenHours(t *testing.T) {
	after := func(hours string, binder Binder) (Course, measure.Fact) {
		job := airyJob()
		job.Products[0].DryHours, job.Products[0].Binder = fact(hours), binder
		job.Coats, job.Shifts = []Coat{{Minutes: 120}}, []Shift{{0, 480}}
		air, _ := Of(job)
		return CourseOf(job), air.Shut
	}
	for _, binder := range []Binder{Solvent, DryingOil, ""} {
		ten, shut := after("10", binder)
		for _, hours := range []string{"10.1", "24", "96"} {
			longer, also := after(hours, binder)
			assert.Equal(t, ten, longer, "%s h, %s", hours, binder)
			assert.Equal(t, shut, also)
		}
		shorter, _ := after("9.9", binder)
		assert.Greater(t, shorter.Average.Value.Float(), ten.Average.Value.Float())
	}
	ten, _ := after("10", Water)
	day, _ := after("24", Water)
	assert.Less(t, day.Average.Value.Float(), ten.Average.Value.Float())
}

// Fresh air by the dilution formula of an industrial ventilation manual (ACGIH,
// from memory): cfm = 403 × 10⁶ × SG × pints a minute × K ÷ (MW × ppm). Its 403
// is for 70 °F; at the 25 °C of milligrams and ppm here it would be 408.6, so
// that ours are 1.4 % above. 1.5 pint/h of SG 1.32 and MW 133.4 for 350 ppm:
// 284.8 cfm, times 5 for mixing 1424 (the manual prints 285 and 1425). 0.5 pint/h
// of SG 0.78 and MW 142 for 100 ppm, mixing 3: 553.4 cfm; worked by hand for
// 25 °C 953.2 m³/h.
func TestFreshAirAgainstTheDilutionFormula(t *testing.T) {
	const cubicFootAMinute = 1.699010796 // in m³/h
	for _, row := range []struct {
		pints, gravity, mole, ppm, mixing string
		cfm                               float64
	}{
		{"1.5", "1.32", "133.4", "350", "1", 284.8},
		{"1.5", "1.32", "133.4", "350", "5", 1424},
		{"0.5", "0.78", "142", "100", "3", 553.4},
	} {
		limit := measure.FactOf(milligramsFromPPM(number(row.ppm), number(row.mole)))
		grams := measure.FactOf(number(row.gravity).Mul(number("1000")))
		flow := flowFor(row.pints, grams, limit, row.mixing)
		assert.InDelta(t, row.cfm*408.6/403, flow/cubicFootAMinute, row.cfm*0.001+5.3, row.ppm)
		if row.ppm == "100" {
			assert.InDelta(t, 953.2, flow, 9)
		}
	}
}

// flowFor is the fresh air in m³/h, to a tenth of a change of 90 m³, that keeps so
// many pints an hour at a limit for as long as they are given off.
func flowFor(pints string, grams, limit measure.Fact, mixing string) float64 {
	job := airyJob()
	job.Air = Plan{Limit: fact("1e9"), ShortTerm: limit, Shut: fact("0"), Mixing: fact(mixing)}
	job.Products[0].Litres = measure.FactOf(number(pints).Mul(number("0.473176473")).Mul(number("24")))
	job.Products[0].VOC, job.Products[0].DryHours = grams, fact("0.0001")
	job.Coats, job.Shifts = []Coat{{Minutes: 1440}}, []Shift{{0, 1440}}
	return CourseOf(job).Needed.Changes.Value.Float() * 90
}

// Air for 350 mg/m³ in the hand example, 150 g/h and mixing 3: 1285.7 m³/h, 14.29
// air changes an hour, up to the tenth.
func TestFreshAirOfHandExample(t *testing.T) {
	assert.InDelta(t, 14.3*90, flowFor("150", measure.FactOf(number("1").Quo(number("0.473176473"))), fact("350"), "3"), 1e-6)
}

// From the level after 4 h, 1243.97 mg/m³, down to 350 in 0.9511 h and to 35 in
// 2.6780 h: worked by hand for the same room.
func TestPurgeHandExample(t *testing.T) {
	for to, want := range map[string]float64{"350": 0.9511, "35": 2.6780} {
		hours, ok := purgeHours(number("4"), number("3"), number("1243.97"), number(to))
		require.True(t, ok)
		assert.InDelta(t, want, hours.Float(), 0.00005)
	}
}

// A metal-finishing handbook of 2013, p. 817: 3 parts of 3.1 lb/gal, 1 part of 1.8
// and 7 of water hold 1.009 lb/gal, 120.9 g/L, in what is in the can (the sum
// worked by hand). Whether the parts are counted singly or as the mix, the mass
// is the same.
func TestMassIsTheSumOfTheParts(t *testing.T) {
	job := airyJob()
	part := func(litres, poundsPerGallon string) Product {
		return Product{Litres: fact(litres), VOC: measure.FactOf(number(poundsPerGallon).Mul(number("453.59237")).Quo(measure.USGallon)), DryHours: fact("1")}
	}
	job.Products = []Product{part("3", "3.1"), part("1", "1.8"), part("7", "0")}
	air, problems := Of(job)
	require.Empty(t, problems)
	assert.Equal(t, "120.9", air.Mass.Value.Quo(number("11")).RoundHalfEven(1).String())
}

func TestAirOfSeveralSteps(t *testing.T) {
	job := airyJob()
	job.Products = append(job.Products,
		Product{Litres: fact("9"), VOC: fact("100"), Coats: 3, DryHours: fact("1")},
		Product{Litres: fact("10"), VOC: fact("200"), Coats: 1, DryHours: fact("16")})
	air, problems := Of(job)
	require.Empty(t, problems)
	assert.Equal(t, "3500", air.Mass.Value.RoundHalfEven(6).String(), "all steps")
}

func TestAirOfNothingGivenOff(t *testing.T) {
	for name, products := range map[string][]Product{
		"no product":             nil,
		"no solvent":             {{Litres: fact("4"), VOC: fact("0"), DryHours: fact("2")}},
		"no solvent, rest blank": {{VOC: fact("0")}},
		"no litres":              {{Litres: fact("0")}},
	} {
		air, problems := Of(Job{Products: products})
		assert.Empty(t, problems, name)
		assert.True(t, air.Complete, name)
		for _, figure := range figures(air) {
			assert.True(t, figure.Known && figure.Value.IsZero(), name)
		}
	}
}

func figures(air Air) []measure.Fact {
	return []measure.Fact{air.Mass, air.Peak, air.Shut, air.Purge}
}

func TestAirOfMissing(t *testing.T) {
	for _, row := range []struct {
		name    string
		change  func(*Job)
		at      string
		unknown []string
	}{
		{"no volume", func(j *Job) { j.RoomVolume = measure.Volume{} }, "/room", []string{"Peak", "Shut", "Purge"}},
		{"volume below 0", func(j *Job) { j.RoomVolume.Litres = number("-1") }, "/room", []string{"Peak", "Shut", "Purge"}},
		{"no limit", func(j *Job) { j.Air.Limit = measure.Fact{} }, "/air/limit", []string{"Purge"}},
		{"limit 0", func(j *Job) { j.Air.Limit = fact("0") }, "/air/limit", []string{"Purge"}},
		{"no opening", func(j *Job) { j.Air.Opened = measure.Fact{} }, "/air/opened", []string{"Purge"}},
		{"opening 0", func(j *Job) { j.Air.Opened = fact("0") }, "/air/opened", []string{"Purge"}},
		{"shut unknown", func(j *Job) { j.Air.Shut = measure.Fact{} }, "/air/shut", []string{"Shut"}},
		{"shut below 0", func(j *Job) { j.Air.Shut = fact("-0.1") }, "/air/shut", []string{"Shut"}},
		{"shut 0 is allowed", func(j *Job) { j.Air.Shut = fact("0") }, "", nil},
		{"no mixing", func(j *Job) { j.Air.Mixing = measure.Fact{} }, "/air/mixing", []string{"Shut", "Purge"}},
		{"mixing below 1", func(j *Job) { j.Air.Mixing = fact("0.99") }, "/air/mixing", []string{"Shut", "Purge"}},
		{"mixing 1 is allowed", func(j *Job) { j.Air.Mixing = fact("1") }, "", nil},
		{"no drying time", func(j *Job) { j.Products[0].DryHours = measure.Fact{} }, "/finish/steps/0/dryHours", []string{"Shut"}},
		{"drying time 0", func(j *Job) { j.Products[0].DryHours = fact("0") }, "/finish/steps/0/dryHours", []string{"Shut"}},
		{"no litres", func(j *Job) { j.Products[0].Litres = measure.Fact{} }, "/finish/steps/0", []string{"Mass", "Peak", "Shut", "Purge"}},
		{"litres below 0", func(j *Job) { j.Products[0].Litres = fact("-1") }, "/finish/steps/0", []string{"Mass", "Peak", "Shut", "Purge"}},
		{"no solvent figure", func(j *Job) { j.Products[0].VOC = measure.Fact{} }, "/finish/steps/0/voc", []string{"Mass", "Peak", "Shut", "Purge"}},
		{"solvent below 0", func(j *Job) { j.Products[0].VOC = fact("-1") }, "/finish/steps/0/voc", []string{"Mass", "Peak", "Shut", "Purge"}},
		{"too much solvent", func(j *Job) { j.Products[0].VOC = fact("3000.1") }, "/finish/steps/0/voc", []string{"Mass", "Peak", "Shut", "Purge"}},
		{"most solvent is allowed", func(j *Job) { j.Products[0].VOC = fact("3000") }, "", nil},
	} {
		job := airyJob()
		row.change(&job)
		air, problems := Of(job)
		if row.at == "" {
			assert.Empty(t, problems, row.name)
		} else if assert.Len(t, problems, 1, row.name) {
			assert.Equal(t, row.at, problems[0].At, row.name)
			assert.NotEmpty(t, problems[0].Do.String(), row.name)
		}
		for i, name := range []string{"Mass", "Peak", "Shut", "Purge"} {
			assert.Equal(t, !contains(row.unknown, name), figures(air)[i].Known, "%s: %s", row.name, name)
		}
	}
}

func contains(list []string, name string) bool {
	for _, entry := range list {
		if entry == name {
			return true
		}
	}
	return false
}

// What several steps lack is said once, with all their names; what cannot be is
// said of each.
func TestOneRemarkForWhatSeveralLack(t *testing.T) {
	job := airyJob()
	for i, name := range []string{"Base", "Glaze coat", "Varnish"} {
		at := "/finish/steps/" + string(rune('1'+i))
		job.Products = append(job.Products, Product{At: at, StepName: name, Litres: fact("1")},
			Product{At: at, StepName: name, Litres: fact("1"), VOC: fact("5")}, Product{At: at, StepName: name, VOC: fact("4000"), Litres: fact("1")})
	}
	_, problems := Of(job)
	require.Len(t, problems, 5)
	assert.Equal(t, "/finish/steps/1/voc", problems[0].At)
	assert.Equal(t, "How much solvent they hold is not known of “Base”, “Glaze coat”, “Varnish”, so the air figures leave them out and are too low.", problems[0].What.String())
	assert.Equal(t, "/finish/steps/1/dryHours", problems[1].At)
	assert.Equal(t, "/finish/steps/3/voc", problems[4].At)
}

// One bad step never hides the others.
func TestAirOfKeepsTheRest(t *testing.T) {
	job := airyJob()
	job.Products = append(job.Products, Product{At: "/finish/steps/1", StepName: "Size", Litres: fact("1")})
	air, problems := Of(job)
	require.Len(t, problems, 1)
	assert.Equal(t, "/finish/steps/1/voc", problems[0].At)
	assert.False(t, air.Complete)
	assert.Equal(t, "600", air.Mass.Value.RoundHalfEven(0).String())
}

// Values far outside any job end in a figure or in none, never in a panic.
func TestAirOfHugeAndTiny(t *testing.T) {
	for _, huge := range []string{"1e-400", "1e-30", "1e30", "1e400"} {
		job := airyJob()
		job.Products[0].Litres = fact(huge)
		job.Products[0].DryHours = fact(huge)
		Of(job)
		job = airyJob()
		job.Air = Plan{Limit: fact(huge), Opened: fact(huge), Shut: fact(huge), Mixing: fact("1")}
		air, _ := Of(job)
		assert.True(t, air.Peak.Known, huge)
	}
}

// More litres or less air never makes a figure better.
func TestAirIsMonotone(t *testing.T) {
	litres := []string{"0.1", "0.5", "1", "2.3", "8", "40"}
	for i := 1; i < len(litres); i++ {
		for _, opened := range []string{"8", "4", "1.5", "0.2"} {
			less, more := airyJob(), airyJob()
			less.Air.Opened, more.Air.Opened = fact(opened), fact(opened)
			less.Products[0].Litres, more.Products[0].Litres = fact(litres[i-1]), fact(litres[i])
			requireNoBetter(t, less, more)
			aired := more
			aired.Air.Opened = measure.FactOf(number(opened).Add(number("0.3")))
			aired.Air.Shut = fact("0.5")
			requireNoBetter(t, aired, more)
			poorer := more
			poorer.Air.Mixing = fact("3.7")
			requireNoBetter(t, more, poorer)
			smaller := more
			smaller.RoomVolume.Litres = number("60000")
			requireNoBetter(t, more, smaller)
		}
	}
}

func requireNoBetter(t *testing.T, better, worse Job) {
	t.Helper()
	a, _ := Of(better)
	b, _ := Of(worse)
	for i, figure := range figures(a) {
		require.True(t, figure.Known && figures(b)[i].Known)
		require.LessOrEqual(t, figure.Value.Cmp(figures(b)[i].Value), 0, "figure %d", i)
	}
}

// milligramsFromPPM turns a limit in parts per million into milligrams a cubic
// metre at 25 °C and one atmosphere, where a mole of vapour fills 24.45 L:
// ppm × grams a mole ÷ 24.45 (NIOSH Pocket Guide to Chemical Hazards).
func milligramsFromPPM(ppm, gramsPerMole measure.Number) measure.Number {
	return ppm.Mul(gramsPerMole).Quo(measure.NumberFromFraction(2445, 100))
}
