package air

import (
	"math"

	"ceilingwright/core/measure"
)

// mostTenths is the highest number of air changes that is looked for, in tenths
// an hour.
const mostTenths = 10_000

// Needed is fresh air that was found by trying it: Changes an hour, what part of
// what is allowed people then breathe, and what part with a tenth less, which is
// not known where the windows could as well be shut.
type Needed struct{ Changes, Part, Less measure.Fact }

// leastChanges is how many air changes an hour the open windows have to bring so
// that people breathe at most this part of what is allowed, over eight hours and
// for a quarter of an hour: a whole tenth, found by trying it on the course.
// Where the windows could as well be shut it is what comes in then. Not known
// where a product has no limit, or above mostTenths.
func (r *room) leastChanges(part float64) Needed {
	if !r.limited || float64(r.shut*r.mixing*10) > mostTenths {
		return Needed{}
	}
	low := max(1, int64(math.Ceil(float64(r.shut*r.mixing*10)-1e-9)))
	atLow := r.breathed(low)
	if atLow <= part {
		return Needed{Changes: inTenths(low), Part: upTo(atLow, millionth)}
	}
	high, atHigh := low, atLow
	for atHigh > part {
		if high == mostTenths {
			return Needed{}
		}
		// What is breathed falls about as the air is changed.
		low, atLow = high, atHigh
		high = max(low+1, int64(min(float64(float64(low)*atLow/part*1.1), mostTenths)))
		atHigh = r.breathed(high)
	}
	for try := 1; high-low > 1; try++ {
		middle := (low + high) / 2
		if try%3 > 0 { // on the line between the two, of what is breathed the other way up
			middle = low + int64(float64(high-low)*(part/atLow-1)/(part/atLow-part/atHigh))
			middle = min(max(middle, low+1), high-1)
		}
		if at := r.breathed(middle); at > part {
			low, atLow = middle, at
		} else {
			high, atHigh = middle, at
		}
	}
	return Needed{inTenths(high), upTo(atHigh, millionth), upTo(atLow, millionth)}
}

func inTenths(n int64) measure.Fact { return measure.FactOf(measure.NumberFromFraction(n, 10)) }

// breathed is the larger of what is breathed of the eight-hour limits and of
// those for a quarter of an hour, with so many tenths of an air change an hour:
// rounded as in the course, so that the two agree.
func (r *room) breathed(tenths int64) float64 {
	trial := r.aired(float64(tenths) / 10)
	trial.trial = true
	course := trial.follow()
	if !course.Share.Known || !course.ShortPart.Known {
		return math.Inf(1)
	}
	return max(course.Share.Value.Float(), course.ShortPart.Value.Float())
}

// AmpleAir is Course.Needed for half of what is allowed, so that there is
// something to spare: a well mixed room is not what the painter's face is in.
// That it is one half is derived.
func AmpleAir(job Job) Needed {
	job.Coats, job.Shifts = timesOf(job)
	room, ok := roomOf(job)
	if !ok || room.empty() {
		return Needed{}
	}
	return room.leastChanges(0.5)
}
