package air

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ceilingwright/core/measure"
)

// anyJob has products of all kinds, put on at odd times and in stretches, by day and by
// night, in a room that is hardly aired or as in a gale.
func anyJob(t *rapid.T) Job {
	count := func(name string, from, to int64) int64 { return rapid.Int64Range(from, to).Draw(t, name) }
	some := func(name string, from, to, parts int64) measure.Fact {
		return measure.FactOf(measure.NumberFromFraction(count(name, from, to), parts))
	}
	job := airyJob()
	job.Air.Opened, job.Air.Shut, job.Air.Mixing = some("opened", 1, 200, 10), some("shut", 0, 20, 20), some("mixing", 10, 50, 10)
	if rapid.Bool().Draw(t, "nights") {
		job.Air.Nights = NightsOpen
	}
	if rapid.Bool().Draw(t, "brief") {
		job.Air.ShortTerm = some("short", 10, 2000, 1)
	}
	job.Products = nil
	for i := range int(count("products", 1, 4)) {
		job.Products = append(job.Products, Product{
			Litres: some("litres", 1, 300, 10), VOC: some("voc", 1, 500, 1), DryHours: some("dry", 1, 300, 10),
			Binder: Water, Coats: count("coats", 1, 3), Limit: some("limit", 5, 1000, 1)})
		for range int(count("stretches", 1, 3)) {
			job.Coats = append(job.Coats, Coat{Product: i, Start: count("start", 0, 9000), Minutes: count("minutes", 0, 400)})
		}
	}
	for day := range count("days", 1, 8) {
		from := day*aDay + count("from", 0, 500)
		job.Shifts = append(job.Shifts, Shift{from, from + count("long", 1, 900)})
	}
	return job
}

// What a trial comes to by leaps is what the whole course comes to, quarter of an hour
// by quarter of an hour, but for the last digit of its rounding.
func TestTrialLeapsToWhatTheCourseComesTo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		room, ok := roomOf(job)
		require.True(t, ok)
		tenths := rapid.Int64Range(1, 3000).Draw(t, "tenths")
		course := room.aired(float64(tenths) / 10).follow()
		want := max(course.Share.Value.Float(), course.ShortPart.Value.Float())
		require.InDelta(t, want, room.breathed(tenths), max(2e-6, want*1e-9), "%+v", job)
	})
}

// The highest level of a coat that is wet at once is the highest of all its seconds,
// wherever in a quarter of an hour that lies: of every minute of two days, and of
// every second around the highest of those.
func TestPeakIsTheHighestOfAllSeconds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		job.Coats, job.Shifts = job.Coats[:1], []Shift{{0, 12000}}
		job.Coats[0].Minutes = 0
		room, _ := roomOf(job)
		aired := room.aired(job.Air.Opened.Value.Float())
		peak, highest := aired.follow().Peak.Value.Float(), 0.0
		w := wet{decay: aired.wets[0].decay, wasLeft: aired.wets[0].coat}
		at := 0
		look := func(from, to, step int) {
			for second := from; second < to; second += step {
				s := spanOf(float64(second)/3600, aired.open)
				_, fading := w.factors(&s)
				if level := w.levelAfter(&s, fading) * 1000; level > highest {
					highest, at = level, second
				}
			}
		}
		look(0, 50*3600, 60)
		look(max(0, at-60), at+60, 1)
		require.GreaterOrEqual(t, peak+1e-6, highest)
		require.InDelta(t, highest, peak, 0.002+highest*1e-5)
	})
}
