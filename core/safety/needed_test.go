package safety

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// madeJob is a job of a few products and coats over a few days, from a seed.
func madeJob(seed uint64) Job {
	r := rand.New(rand.NewPCG(seed, 7))
	tenths := func(from, to int) measure.Fact {
		return measure.FactOf(measure.NumberFromFraction(int64(from+r.IntN(to-from+1)), 10))
	}
	job := Job{Job: air.Job{
		RoomVolume: measure.Volume{Litres: measure.NumberFromInt(int64(20_000 + r.IntN(200_000)))},
		Air:        air.Plan{Limit: measure.FactOf(measure.NumberFromInt(int64(50 + r.IntN(900)))), Shut: tenths(0, 8), Mixing: tenths(10, 100)},
	}}
	if r.IntN(2) == 0 {
		job.Air.Nights = air.NightsOpen
	}
	if r.IntN(2) == 0 {
		job.Air.Fan = tenths(100, 9000)
	}
	if r.IntN(3) == 0 {
		job.Air.ShortTerm = measure.FactOf(measure.NumberFromInt(int64(200 + r.IntN(2000))))
	}
	for i := range 1 + r.IntN(3) {
		p := air.Product{Litres: tenths(2, 80), VOC: tenths(50, 6000), Coats: int64(1 + r.IntN(3)), DryHours: tenths(3, 300), Binder: []air.Binder{air.Water, air.Solvent, air.DryingOil}[r.IntN(3)]}
		if r.IntN(3) == 0 {
			p.Limit = measure.FactOf(measure.NumberFromInt(int64(50 + r.IntN(900))))
		}
		job.Products = append(job.Products, p)
		for range p.Coats {
			job.Coats = append(job.Coats, air.Coat{Product: i, Start: int64(r.IntN(4)*1440 + r.IntN(420)), Minutes: int64(r.IntN(4) * 37)})
		}
	}
	for day := range int64(4) {
		job.Shifts = append(job.Shifts, air.Shift{From: day * 1440, To: day*1440 + 480})
	}
	if r.IntN(4) == 0 {
		job.Coats, job.Shifts = nil, nil
	}
	return job
}

func aired(job Job, changes measure.Number) Job {
	job.Air.Opened = measure.FactOf(changes)
	return job
}

// The fresh air that is asked for, put in, is never above the limits; a tenth of
// a change less always is, unless the windows could as well be shut. The rules
// that ask for it are then silent.
func TestAskedAirClearsTheLimits(t *testing.T) {
	tenth, told := number("0.1"), map[string]int{}
	for seed := range uint64(150) {
		job := madeJob(seed)
		needed := air.CourseOf(aired(job, number("4")).Job).Needed.Changes
		assert.Equal(t, needed, air.CourseOf(job.Job).Needed.Changes, "it does not depend on what is opened now")
		if !needed.Known {
			continue
		}
		ids := ids(Notes(aired(job, needed.Value), words.Style{}))
		require.NotContains(t, ids, "air-over-limit", "%d", seed)
		require.NotContains(t, ids, "air-over-short-limit", "%d", seed)
		less := needed.Value.Sub(tenth)
		if less.Cmp(job.Air.Shut.Value) < 0 || less.Sign() <= 0 {
			told["shut"]++
			continue
		}
		short := air.CourseOf(aired(job, less).Job)
		require.True(t, exceeds(short.Share, measure.FactOf(once), once) || exceeds(short.ShortPart, measure.FactOf(once), once), "%d: %s asked for, and a tenth less would do", seed, needed.Value.Trimmed(1))
		told["asked"]++
	}
	assert.Greater(t, told["asked"], 80)
	assert.Greater(t, told["shut"], 10)
}

// The caution asks for what leaves half of it to spare, neither less nor more.
func TestAskedAirClearsTheCaution(t *testing.T) {
	tried := 0
	for seed := range uint64(60) {
		job := madeJob(seed)
		ample := air.AmpleAir(job.Job).Changes
		less := ample.Value.Sub(number("0.1"))
		if !ample.Known || less.Cmp(job.Air.Shut.Value) < 0 || less.Sign() <= 0 {
			continue
		}
		tried++
		require.NotContains(t, ids(Notes(aired(job, ample.Value), words.Style{})), "air-near-limit", "%d", seed)
		near := Notes(aired(job, less), words.Style{})
		require.True(t, slices.ContainsFunc(near, func(n read) bool { return n.ID == "air-near-limit" }), "%d", seed)
	}
	assert.Greater(t, tried, 30)
}

// The words of both rules name the same air that the course asks for.
func TestAskedAirInWords(t *testing.T) {
	job := quietJob()
	paints(air.Water, "4", "100")(&job)
	c := air.CourseOf(job.Job)
	stop := find(t, Notes(job, words.Style{}), "air-over-limit")
	assert.Contains(t, stop.Words, "Bring at least "+c.Needed.Changes.Value.Trimmed(1)+" air changes an hour (")
	assert.NotContains(t, stop.Words, "besides")
	job.Air.Fan = fact("10")
	assert.Contains(t, find(t, Notes(job, words.Style{}), "air-over-limit").Words, "of fresh air) besides the fan’s, or use less")
	all(paints(air.Water, "400", "100"))(&job)
	assert.Contains(t, find(t, Notes(job, words.Style{}), "air-over-limit").Words, "Use less, or another product: no windows and fan bring fresh air enough.")
	near := quietJob()
	paints(air.Water, "3.8", "100")(&near)
	assert.Contains(t, find(t, Notes(near, words.Style{}), "air-near-limit").Words, "Bring "+air.AmpleAir(near.Job).Changes.Value.Trimmed(1)+" air changes an hour")
}

// An amount without end asks for no number of changes.
func TestAskedAirHasAnEnd(t *testing.T) {
	for litres, known := range map[string]bool{"1": true, "100": true, "1000000000": false} {
		job := aired(quietJob(), number("4"))
		paints(air.Water, litres, "100")(&job)
		assert.Equal(t, known, air.CourseOf(job.Job).Needed.Changes.Known, litres)
	}
}

func BenchmarkAskedAir(b *testing.B) {
	for i := range 3 {
		job := madeJob(uint64(i))
		b.Run(strconv.Itoa(i), func(b *testing.B) {
			for b.Loop() {
				air.CourseOf(job.Job)
			}
		})
	}
}
