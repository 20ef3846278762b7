package air

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
)

// levelAt is the level of the curve at a minute, in mg/m³.
func levelAt(t *testing.T, c Course, minute int64) float64 {
	t.Helper()
	for _, m := range c.Curve {
		if m.Minute == minute {
			return m.Level
		}
	}
	require.Fail(t, "no point", "%d", minute)
	return 0
}

// wetAtOnce is the 6 × 5 × 3 m room with 600 g wet at one moment, of which 1/e
// is left after an hour.
func wetAtOnce() Job {
	job := airyJob()
	job.Products[0].DryHours = measure.FactOf(measure.NumberFromFraction(2302585092994, 1000000000000))
	job.Coats, job.Shifts = []Coat{{}}, []Shift{{0, 480}}
	return job
}

// Worked by hand and by step-wise integration: 600 g at t = 0, k = 1/h, 4 changes
// an hour mixed by 3 in 90 m³.
func TestCourseOfHandExample(t *testing.T) {
	c := CourseOf(wetAtOnce())
	assert.Equal(t, "2109.375", c.Peak.Value.RoundHalfEven(3).String(), "at 0.86305 h")
	assert.Equal(t, int64(51), c.PeakAt)
	for minute, want := range map[int64]float64{30: 1862.27, 60: 2085.65, 120: 1317.04, 240: 269.75} {
		assert.InDelta(t, want, levelAt(t, c, minute), 0.01, "%d min", minute)
	}
}

// The same with a second coat alike at 3 h: 1426.34 mg/m³ at 5 h.
func TestCourseOfTwoCoats(t *testing.T) {
	job := wetAtOnce()
	job.Products[0].Litres, job.Products[0].Coats = fact("4"), 2
	job.Coats = []Coat{{Start: 180}, {}}
	assert.InDelta(t, 1426.34, levelAt(t, CourseOf(job), 300), 0.01)
}

// Worked by hand: decay and air changes alike, 1 an hour, where the formula
// divides by nothing.
func TestCourseOfEqualRates(t *testing.T) {
	job := wetAtOnce()
	job.Air.Opened, job.Air.Mixing = fact("1"), fact("1")
	c := CourseOf(job)
	for minute, want := range map[int64]float64{30: 2021.77, 60: 2452.53, 120: 1804.47} {
		assert.InDelta(t, want, levelAt(t, c, minute), 0.01, "%d min", minute)
	}
	assert.Equal(t, "2452.53", c.Peak.Value.RoundHalfEven(2).String())
}

// Worked by hand: 600 g put on over 4 h and gone as soon as they are on: 1243.97
// mg/m³ at 4 h, 1016.76 on average until then, 625 × (1 − what is left) over the
// eight hours; from there to 350 mg/m³ in 0.9511 h.
func TestCourseOfSteadySource(t *testing.T) {
	job := airyJob()
	job.Products[0].DryHours = fact("0.0001")
	job.Coats, job.Shifts = []Coat{{Minutes: 240}}, []Shift{{0, 240}}
	c := CourseOf(job)
	assert.InDelta(t, 1243.97, levelAt(t, c, 240), 0.05)
	assert.InDelta(t, 508.38, c.Average.Value.Float(), 0.02, "as an average of eight hours")
	job.Shifts = []Shift{{0, 480}}
	c = CourseOf(job)
	assert.Equal(t, "1", c.Reentry.Value.RoundHalfEven(2).String(), "0.9511 h, up to a quarter of an hour")
}

// An on-line engineering table of 2005: c = (q/nV)(1 − e^−nt) with q = V = 1.
func TestCourseAgainstGrowthTable(t *testing.T) {
	minutes := []int64{10, 20, 40, 80, 160}
	for changes, levels := range map[string][]float64{
		"0.5": {.1599, .3070, .5669, .9732, 1.4728},
		"1":   {.1535, .2835, .4866, .7364, .9305},
		"2":   {.1417, .2433, .3682, .4653, .4976},
		"4":   {.1216, .1841, .2326, .2488, .2500},
	} {
		for i, minute := range minutes {
			// 1 g an hour for 3 h into 1 m³.
			job := Job{RoomVolume: measure.Volume{Litres: number("1000")}, Air: Plan{Limit: fact("1"), Opened: fact(changes), Shut: fact("0"), Mixing: fact("1")},
				Products: []Product{{Litres: fact("1"), VOC: measure.FactOf(measure.NumberFromFraction(minute, 60)), DryHours: fact("0.00001")}},
				Coats:    []Coat{{Minutes: minute}}, Shifts: []Shift{{0, 480}}}
			assert.InDelta(t, levels[i], levelAt(t, CourseOf(job), minute)/1000, 0.0001, "%s changes an hour, %d min", changes, minute)
		}
	}
}

// CDC, Guidelines for Environmental Infection Control, 2003, table B.1: 99 % is
// carried off by 2 changes an hour in 138 minutes.
func TestCoursePurgesAsCDC(t *testing.T) {
	job := airyJob()
	job.Products[0].DryHours = fact("0.0001")
	job.Air = Plan{Limit: fact("66.667"), Opened: fact("2"), Shut: fact("0"), Mixing: fact("1")}
	job.Coats, job.Shifts = []Coat{{}}, []Shift{{0, 480}}
	c := CourseOf(job)
	assert.InDelta(t, 6666.67*0.01, levelAt(t, c, 138/15*15)*math.Exp(-2*3.0/60), 0.4)
}

// integrated follows the same room in steps of a second, by the rule of Runge
// and Kutta: another road to the same curve.
func integrated(job Job, until int64) (levels []float64) {
	volume := job.RoomVolume.Litres.Float() / 1000
	type pool struct{ left, level, decay, input float64 }
	pools := make([]pool, len(job.Products))
	const seconds = 4
	for at := int64(0); at < until*60; at += seconds {
		minute := at / 60
		open := job.Air.Shut.Value.Float()
		if job.Air.Nights == NightsOpen {
			open = job.Air.Opened.Value.Float()
		}
		for _, s := range job.Shifts {
			if s.From <= minute && minute < s.To {
				open = job.Air.Opened.Value.Float() + job.Air.Fan.Value.Float()/volume
			}
		}
		changes := open / job.Air.Mixing.Value.Float()
		for i := range pools {
			p := &pools[i]
			p.decay, p.input = math.Ln10/job.Products[i].DryHours.Value.Float(), 0
			grams := job.Products[i].Litres.Value.Float() * job.Products[i].VOC.Value.Float() / float64(max(1, job.Products[i].Coats))
			for _, c := range job.Coats {
				if c.Product != i {
					continue
				}
				if c.Minutes == 0 && c.Start*60 == at {
					p.left += grams
				}
				if c.Minutes > 0 && c.Start <= minute && minute < c.Start+c.Minutes {
					p.input += grams * 60 / float64(c.Minutes)
				}
			}
			rate := func(left, level float64) (float64, float64) {
				return p.input - p.decay*left, p.decay*left/volume - changes*level
			}
			h := float64(seconds) / 3600
			a1, b1 := rate(p.left, p.level)
			a2, b2 := rate(p.left+h/2*a1, p.level+h/2*b1)
			a3, b3 := rate(p.left+h/2*a2, p.level+h/2*b2)
			a4, b4 := rate(p.left+h*a3, p.level+h*b3)
			p.left += h / 6 * (a1 + 2*a2 + 2*a3 + a4)
			p.level += h / 6 * (b1 + 2*b2 + 2*b3 + b4)
		}
		if (at+seconds)%60 == 0 {
			sum := 0.0
			for _, p := range pools {
				sum += p.level * 1000
			}
			levels = append(levels, sum)
		}
	}
	return levels
}

// busyJob has three products, six coats, two shifts and a fan.
func busyJob() Job {
	job := airyJob()
	job.Air.Fan = fact("500")
	job.Products = append(job.Products,
		Product{Litres: fact("9"), VOC: fact("45"), Coats: 3, DryHours: fact("1.5"), Limit: fact("200")},
		Product{Litres: fact("1.2"), VOC: fact("400"), Coats: 2, DryHours: fact("12"), Binder: Water})
	job.Coats = []Coat{{Product: 0, Start: 30, Minutes: 95}, {Product: 1, Start: 300, Minutes: 60}, {Product: 1, Start: 437, Minutes: 61}, {Product: 2, Start: 460, Minutes: 20}, {Product: 1, Start: 1500}, {Product: 2, Start: 1583, Minutes: 240}}
	job.Shifts = []Shift{{0, 210}, {240, 480}, {1440, 1925}}
	return job
}

func TestCourseAgainstIntegration(t *testing.T) {
	for _, nights := range []Nights{NightsShut, NightsOpen} {
		job := busyJob()
		job.Air.Nights = nights
		c := CourseOf(job)
		levels := integrated(job, 3000)
		compared := 0
		for _, m := range c.Curve {
			if m.Minute <= 3000 {
				require.InDelta(t, levels[m.Minute-1], m.Level, 0.02, "%d min", m.Minute)
				compared++
			}
		}
		require.Greater(t, compared, 150)
		peak, mean := 0.0, 0.0
		for i, l := range levels {
			peak = max(peak, l)
			if i >= 1440 && i < 1925 {
				mean += l / 480
			}
		}
		assert.InDelta(t, peak, c.Peak.Value.Float(), 1.01)
		if c.AverageOn == 2 {
			assert.InDelta(t, mean, c.Average.Value.Float(), 2)
		}
	}
}

// Two products at half their own limits come to the limit together.
func TestCourseAddsUpShares(t *testing.T) {
	one := airyJob()
	one.Coats, one.Shifts = []Coat{{Minutes: 240}}, []Shift{{0, 480}}
	single := CourseOf(one)
	two := one
	two.Products = []Product{one.Products[0], one.Products[0]}
	two.Products[1].Limit = fact("700")
	two.Coats = []Coat{{Product: 0, Minutes: 240}, {Product: 1, Minutes: 240}}
	both := CourseOf(two)
	assert.InDelta(t, single.Share.Value.Float()*1.5, both.Share.Value.Float(), 0.003)
	assert.InDelta(t, single.Average.Value.Float()*2, both.Average.Value.Float(), 2)
}

// More litres, less air, a smaller room or poorer mixing never lower the peak.
func TestCourseIsMonotone(t *testing.T) {
	base := CourseOf(busyJob())
	for name, change := range map[string]func(*Job){
		"litres": func(j *Job) {
			j.Products = append([]Product{}, j.Products...)
			j.Products[1].Litres = fact("9.3")
		},
		"opened":  func(j *Job) { j.Air.Opened = fact("3.9") },
		"shut":    func(j *Job) { j.Air.Shut = fact("0.3") },
		"fan":     func(j *Job) { j.Air.Fan = fact("480") },
		"mixing":  func(j *Job) { j.Air.Mixing = fact("3.2") },
		"volume":  func(j *Job) { j.RoomVolume.Litres = number("89000") },
		"no fan":  func(j *Job) { j.Air.Fan = measure.Fact{} },
		"solvent": func(j *Job) { j.Products[2].VOC = fact("410") },
	} {
		job := busyJob()
		change(&job)
		worse := CourseOf(job)
		for i, pair := range [][2]measure.Fact{{base.Peak, worse.Peak}, {base.Average, worse.Average}, {base.Share, worse.Share}, {base.Over, worse.Over}, {base.Reentry, worse.Reentry}} {
			require.True(t, pair[1].Known, name)
			assert.LessOrEqual(t, pair[0].Value.Cmp(pair[1].Value), 0, "%s: %d", name, i)
		}
	}
}

// A coat in two stretches gives off what it would in one; with the second far
// off the peak is lower.
func TestCourseOfACoatInStretches(t *testing.T) {
	whole := airyJob()
	whole.Coats, whole.Shifts = []Coat{{Minutes: 120}}, []Shift{{0, 480}}
	split := whole
	split.Coats = []Coat{{Minutes: 30, Part: 30, Whole: 120}, {Start: 30, Minutes: 90, Part: 90, Whole: 120}}
	a, b := CourseOf(whole), CourseOf(split)
	assert.Equal(t, a.Peak, b.Peak)
	assert.Equal(t, a.Average, b.Average)
	split.Coats[1].Start, split.Shifts = 1440, []Shift{{0, 480}, {1440, 1920}}
	assert.Less(t, CourseOf(split).Peak.Value.Float(), a.Peak.Value.Float())
}

func TestCourseOfNothing(t *testing.T) {
	job := airyJob()
	job.Products[0].VOC = fact("0")
	c := CourseOf(job)
	assert.Empty(t, c.Curve)
	for _, f := range []measure.Fact{c.Peak, c.Average, c.Share, c.ShortTerm, c.Over, c.Reentry} {
		assert.True(t, f.Known && f.Value.IsZero())
	}
	assert.False(t, CourseOf(Job{Products: job.Products}).Peak.Known, "nothing is known of the room")
	job = airyJob()
	job.Air.Limit = measure.Fact{}
	c = CourseOf(job)
	assert.True(t, c.Peak.Known)
	assert.False(t, c.Share.Known, "no limit, no share of it")
}

// Without times each coat follows as soon as the last is dry, in days of eight
// hours.
func TestCourseWithoutTimes(t *testing.T) {
	job := airyJob()
	job.Products[0].Coats = 4
	coats, shifts := timesOf(job)
	assert.Equal(t, []Coat{{}, {Start: 240}, {Start: 1440}, {Start: 1680}}, coats)
	assert.Equal(t, Shift{0, 480}, shifts[0])
	assert.NotEmpty(t, CourseOf(job).Curve)
}

// Values far outside any job end in a course or in none, never in a panic, a
// hang or a number that is none.
func TestCourseOfHugeAndTiny(t *testing.T) {
	for _, n := range []string{"1e-400", "1e-30", "1e-9", "1e9", "1e30", "1e400"} {
		for _, change := range []func(*Job){
			func(j *Job) { j.Products[0].Litres = fact(n) },
			func(j *Job) { j.Products[0].DryHours = fact(n) },
			func(j *Job) { j.Air.Opened = fact(n) },
			func(j *Job) { j.Air.Shut = fact(n) },
			func(j *Job) { j.Air.Limit = fact(n) },
			func(j *Job) { j.Air.Fan = fact(n) },
			func(j *Job) { j.RoomVolume.Litres = number(n) },
		} {
			for _, coats := range [][]Coat{nil, {{Minutes: 60}}, {{Minutes: 60}, {Start: math.MaxInt32, Minutes: 5}, {Product: 7, Start: 1, Minutes: 1}, {Product: -1, Start: -1, Minutes: -1}}} {
				job := airyJob()
				change(&job)
				job.Coats = coats
				c := CourseOf(job)
				for _, m := range c.Curve {
					require.False(t, math.IsNaN(m.Level) || math.IsInf(m.Level, 0), n)
				}
				require.LessOrEqual(t, len(c.Curve), mostMoments)
			}
		}
	}
}

func BenchmarkCourse(b *testing.B) {
	job := busyJob()
	for b.Loop() {
		CourseOf(job)
	}
}
