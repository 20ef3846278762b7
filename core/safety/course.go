package safety

import (
	"cmp"
	"math"
	"slices"

	"ceilingwright/core/measure"
)

// Coat is one coat on its way into the air: which of the job's products it is,
// when it is begun, in minutes from the beginning of the job, and how many
// minutes it takes to put on; 0 where that is not known, and all of it is then
// wet at once, which is the less safe. A coat that is put on in stretches is one
// Coat for each: Part of the Whole, both 0 for all of it.
type Coat struct {
	Product        int
	Start, Minutes int64
	Part, Whole    int64
}

// share is the part of the coat that goes on in this stretch.
func (c Coat) share() float64 {
	if c.Whole <= 0 {
		return 1
	}
	return float64(c.Part) / float64(c.Whole)
}

// Shift is a time in which people are in the room, in minutes from the beginning
// of the job. The windows are open and the fan runs meanwhile. Shifts do not
// overlap and are in order.
type Shift struct{ From, To int64 }

// Moment is the air at one minute of the job: milligrams a cubic metre of all
// products together, and Share, their levels by their limits, added up: 1 is
// the limit.
type Moment struct {
	Minute       int64
	Level, Share float64
}

// Course is the air of the room over the job, a screening figure for a well
// mixed room with clean fresh air. Levels are milligrams a cubic metre of all
// products together. A field is not known where something it needs is missing;
// a job that gives off nothing has 0 in every field and no curve.
//
// Each product is counted by its own limit, or by the job's where it has none,
// and what is in the air at once is added up by those shares (29 CFR
// 1910.1000(d)(2)(i), from memory): Share is the worst average of a working day,
// 1 being the limit.
type Course struct {
	Peak      Fact // mg/m³
	PeakAt    int64
	Average   Fact // mg/m³, the worst shift over eight hours
	AverageOn int  // which shift
	Share     Fact // of the limits, the worst shift over eight hours
	ShortTerm Fact // mg/m³, the worst quarter of an hour with people in the room
	ShortPart Fact // the same as a share of the eight-hour limits
	Night     Fact // mg/m³, the highest with nobody at work
	NightPart Fact // the same as a share of the limits
	Over      Fact // hours above the limits, people in the room or not
	Reentry   Fact // hours after the last coat is on until the air stays below the limits
	Curve     []Moment
}

const (
	tick        int64 = 15           // minutes between two points of the curve
	aDay        int64 = 24 * 60      // minutes
	fullShift   int64 = workday * 60 // minutes
	longestTail       = 14 * aDay    // how long after the last coat the air is followed
	mostMoments       = 12_000       // a year of quarters of an hour with something wet in a third of them
	negligible        = 0.001        // of the peak: what is left is not followed further
	harmless          = 0.05         // of the limit: nor is that
	lnTen             = math.Ln10
	slowest           = 1e-4 // an hour: a coat that takes years to dry is no coat
	roundingUp        = 1 + 1e-9
)

// CourseOf follows the air of a job, quarter of an hour by quarter of an hour:
// the longest piece of work of a sheet. Put it into Job.Course for Notes.
//
// What a coat holds evaporates in proportion to what is left of it, nine tenths
// in the time the coat takes to dry (derived: k = ln 10 ÷ drying time). The room
// follows dC/dt = given off ÷ volume − air changes ÷ mixing × C, solved exactly
// from one point to the next. The air is changed as with the windows open in the
// shifts, with what the fan brings besides; between them as the plan says.
//
// Problems are those of AirOf, which is asked first; here none is added.
func CourseOf(job Job) Course {
	job.Coats, job.Shifts = timesOf(job)
	room, ok := roomOf(job)
	if !ok {
		return Course{}
	}
	if room.empty() {
		zero := FactOf(measure.Number{})
		return Course{Peak: zero, Average: zero, Share: zero, ShortTerm: zero, ShortPart: zero, Night: zero, NightPart: zero, Over: zero, Reentry: zero}
	}
	return room.follow()
}

// timesOf is when the coats go on and people are in the room. Where the job does
// not say, each coat follows as soon as the last is dry, in working days of
// eight hours.
func timesOf(job Job) ([]Coat, []Shift) {
	if len(job.Coats) > 0 {
		return job.Coats, job.Shifts
	}
	var coats []Coat
	ready := int64(0)
	for i, product := range job.Products {
		hours := above(product.DryHours, 0)
		dry, fits := hours.Value.Mul(measure.NumberFromInt(60)).Ceil()
		if !hours.Known || !fits || dry > 60*aDay {
			continue
		}
		for range min(max(1, product.Coats), 20) {
			if into := ready % aDay; into >= fullShift {
				ready += aDay - into
			}
			coats = append(coats, Coat{Product: i, Start: ready})
			ready += dry
		}
	}
	var shifts []Shift
	for from := int64(0); from <= ready; from += aDay {
		shifts = append(shifts, Shift{from, from + fullShift})
	}
	return coats, shifts
}

// wet is a product in the room: how fast what is wet evaporates, how much is
// wet and how much is in the air, in grams and grams a cubic metre.
type wet struct {
	product  int
	decay    float64 // 1/h
	limit    float64 // g/m³; +Inf where there is none
	coat     float64 // grams in one coat
	left     float64 // grams wet
	level    float64 // g/m³
	input    float64 // grams an hour being put on
	mean     float64 // g/m³, over the last step
	wasLeft  float64 // at the beginning of the step
	wasLevel float64
	whole    [2]factors // of a whole quarter of an hour, shut and open
}

// factors carry a product over one step: Keep is the share of what is wet that
// is still wet at its end, Kept that of what is in the air, Steady and Fading
// what a gram an hour put on, and a gram an hour given off besides, leave in the
// air. They are the same for every whole quarter of an hour.
type factors struct {
	keep, kept, steady, fading float64
	known                      bool
}

func factorsOf(decay, changes, hours float64) factors {
	return factors{decayed(float64(decay * hours)), decayed(float64(changes * hours)), between(0, changes, hours), between(decay, changes, hours), true}
}

// factors are those of a step of so many minutes.
func (w *wet) factors(minutes int64, changes float64, inside bool) factors {
	if minutes != tick {
		return factorsOf(w.decay, changes, float64(minutes)/60)
	}
	which := 0
	if inside {
		which = 1
	}
	if !w.whole[which].known {
		w.whole[which] = factorsOf(w.decay, changes, float64(tick)/60)
	}
	return w.whole[which]
}

// room is a job as the course needs it.
type room struct {
	volume        float64 // m³
	open, shut    float64 // air changes an hour that count, by the mixing
	coats         []Coat
	shifts        []Shift
	wets          []wet
	of            []int // by product: its place in wets, or −1
	limited       bool  // every product has a limit
	lastOn        int64 // when the last coat is on
	done          int   // coats before this one are on
	shiftMean     float64
	shiftShare    float64
	course        Course
	peak, average float64
	share, short  float64
	shortPart     float64
	night, nights float64 // g/m³, and the share of the limits, with nobody at work
	over          int64
	above         int64 // the last minute above the limits
}

func roomOf(job Job) (*room, bool) {
	r := &room{shifts: job.Shifts, limited: true, of: make([]int, len(job.Products))}
	opened, shut, mixing := above(job.Air.Opened, 0), job.Air.Shut, atLeastOne(job.Air.Mixing)
	r.volume = job.RoomVolume.Litres.Quo(measure.CubicMetre).Float()
	if !opened.Known || !shut.Known || shut.Value.Sign() < 0 || !mixing.Known || !(r.volume > 0) || math.IsInf(r.volume, 0) {
		return nil, false
	}
	fan := 0.0
	if job.Air.Fan.Known && job.Air.Fan.Value.Sign() > 0 {
		fan = job.Air.Fan.Value.Float() / r.volume
	}
	r.open = (opened.Value.Float() + fan) / mixing.Value.Float()
	r.shut = shut.Value.Float() / mixing.Value.Float()
	if job.Air.Nights == NightsOpen {
		r.shut = opened.Value.Float() / mixing.Value.Float()
	}
	if !finite(r.open) || !finite(r.shut) {
		return nil, false
	}
	return r, r.take(job)
}

func finite(x float64) bool { return !math.IsInf(x, 0) && !math.IsNaN(x) }

// take takes in what the products give off. False where one of them is outside
// what can be reckoned with.
func (r *room) take(job Job) bool {
	for i, product := range job.Products {
		r.of[i] = -1
		dry := above(product.DryHours, 0)
		if !dry.Known || productProblem(product) != nil || isZero(product.VOC) || isZero(product.Litres) {
			continue
		}
		coats := max(1, product.Coats)
		w := wet{decay: lnTen / dry.Value.Float(), coat: product.Litres.Value.Mul(product.VOC.Value).Float() / float64(coats), limit: math.Inf(1)}
		limit := above(product.Limit, 0)
		if !limit.Known {
			limit = above(job.Air.Limit, 0)
		}
		if limit.Known {
			w.limit = limit.Value.Quo(milligrams).Float()
		} else {
			r.limited = false
		}
		if !finite(w.decay) || w.decay < slowest || !finite(w.coat/r.volume) || !(w.limit > 0) {
			return false
		}
		r.of[i] = len(r.wets)
		r.wets = append(r.wets, w)
	}
	r.place(job.Coats)
	return true
}

// place keeps the coats of products that give something off, in order.
func (r *room) place(coats []Coat) {
	for _, c := range coats {
		if r.placed(c) {
			r.coats = append(r.coats, c)
			r.lastOn = max(r.lastOn, c.Start+c.Minutes)
		}
	}
	slices.SortStableFunc(r.coats, func(a, b Coat) int { return cmp.Compare(a.Start, b.Start) })
}

func (r *room) placed(c Coat) bool {
	return c.Product >= 0 && c.Product < len(r.of) && r.of[c.Product] >= 0 && c.Start >= 0 && c.Minutes >= 0 && c.Part >= 0 && c.Part <= c.Whole
}

func (r *room) empty() bool { return len(r.coats) == 0 }

// follow goes from one point of time to the next until nothing is left.
func (r *room) follow() Course {
	minute, shift := r.coats[0].Start, 0
	for len(r.course.Curve) < mostMoments {
		for shift < len(r.shifts) && r.shifts[shift].To <= minute {
			r.endShift(shift)
			shift++
		}
		r.begin(minute)
		inside := shift < len(r.shifts) && r.shifts[shift].From <= minute
		next := r.next(minute, shift)
		changes := r.shut
		if inside {
			changes = r.open
		}
		r.step(minute, next-minute, changes, inside)
		minute = next
		if minute > r.lastOn && (r.still() || minute > r.lastOn+longestTail) {
			break
		}
		if after, waits := r.waits(minute); waits {
			minute = after
		}
	}
	if shift < len(r.shifts) {
		r.endShift(shift)
	}
	return r.finish()
}

// begin takes in the coats that begin at this minute, and stops those that are
// on.
func (r *room) begin(minute int64) {
	for i := range r.wets {
		r.wets[i].input = 0
	}
	for r.done < len(r.coats) && r.coats[r.done].Start+r.coats[r.done].Minutes < minute {
		r.done++
	}
	for _, c := range r.coats[r.done:] {
		if c.Start > minute {
			break
		}
		w := &r.wets[r.of[c.Product]]
		switch {
		case c.Minutes == 0 && c.Start == minute:
			w.left += float64(w.coat * c.share())
		case minute < c.Start+c.Minutes:
			w.input += float64(w.coat*c.share()) * 60 / float64(c.Minutes)
		}
	}
}

// next is the end of the step that begins at a minute: the next quarter of an
// hour, or whatever happens before it.
func (r *room) next(minute int64, shift int) int64 {
	next := (minute/tick + 1) * tick
	for _, c := range r.coats[r.done:] {
		if c.Start >= next {
			break
		}
		for _, at := range [...]int64{c.Start, c.Start + c.Minutes} {
			if at > minute {
				next = min(next, at)
			}
		}
	}
	if shift < len(r.shifts) {
		for _, at := range [...]int64{r.shifts[shift].From, r.shifts[shift].To} {
			if at > minute {
				next = min(next, at)
			}
		}
	}
	return next
}

// step carries every product over so many minutes.
func (r *room) step(minute, minutes int64, changes float64, inside bool) {
	hours := float64(minutes) / 60
	level, share, meanLevel, meanShare := 0.0, 0.0, 0.0, 0.0
	highest := 0.0
	for i := range r.wets {
		w := &r.wets[i]
		if w.idle() {
			continue
		}
		highest += w.over(hours, changes, w.factors(minutes, changes, inside), r.volume)
		level += w.level
		meanLevel += w.mean
		share += w.level / w.limit
		meanShare += w.mean / w.limit
	}
	end := minute + minutes
	r.course.Curve = append(r.course.Curve, Moment{end, level * 1000, share})
	if level > r.peak {
		r.peak, r.course.PeakAt = level, end
	}
	if float64(highest*roundingUp) > r.peak {
		if top, after := r.top(hours, changes); top > r.peak {
			r.peak, r.course.PeakAt = top, minute+int64(float64(after*60))
		}
	}
	if meanShare > 1 {
		r.over += minutes
		r.above = end
	}
	if inside {
		r.shiftMean += float64(meanLevel * hours)
		r.shiftShare += float64(meanShare * hours)
		r.short, r.shortPart = max(r.short, meanLevel), max(r.shortPart, meanShare)
	} else {
		r.night, r.nights = max(r.night, level), max(r.nights, share)
	}
}

// idle tells whether nothing of the product is wet, in the air or being put on;
// it then forgets the step before.
func (w *wet) idle() bool {
	if w.left != 0 || w.level != 0 || w.input != 0 {
		return false
	}
	w.wasLeft, w.wasLevel, w.mean = 0, 0, 0
	return true
}

// over carries one product over so many hours: what is wet by its own decay,
// what is in the air by the balance of the room. The level is never above
// highest meanwhile, which is all that is given off in the step and none of it
// carried out.
func (w *wet) over(hours, changes float64, f factors, volume float64) (highest float64) {
	w.wasLeft, w.wasLevel = w.left, w.level
	w.level = w.levelAfter(f, volume)
	w.left = w.input/w.decay + float64((w.left-w.input/w.decay)*f.keep)
	given := float64(w.input*hours) + float64(w.extra()*(1-f.keep))/w.decay
	if turned := float64(changes * hours); turned > 1e-3 {
		w.mean = (given/volume + w.wasLevel - w.level) / turned
	} else {
		w.mean = (w.wasLevel + w.level) / 2
	}
	return w.wasLevel + given/volume
}

// extra is the grams an hour given off at the beginning of the step above what
// is being put on.
func (w *wet) extra() float64 { return float64(w.decay*w.wasLeft) - w.input }

// levelAfter is the level at the end of a step with these factors.
func (w *wet) levelAfter(f factors, volume float64) float64 {
	added := float64(w.input*f.steady) + float64(w.extra()*f.fading)
	return float64(w.wasLevel*f.kept) + added/volume
}

// top is the highest level in the step that was just made, and how far into it.
// It lies inside where the level rises at the beginning and falls at the end,
// and is then found by halving.
func (r *room) top(hours, changes float64) (level, after float64) {
	rising, falling := 0.0, 0.0
	for i := range r.wets {
		w := &r.wets[i]
		rising += float64(w.decay*w.wasLeft)/r.volume - float64(changes*w.wasLevel)
		falling += float64(w.decay*w.left)/r.volume - float64(changes*w.level)
	}
	if !(rising > 0 && falling < 0) {
		return 0, 0
	}
	low, high := 0.0, hours
	for range 30 {
		middle := (low + high) / 2
		at, slope := r.inside(middle, changes)
		if level = max(level, at); slope > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return level, low
}

// inside is the level so many hours into the step, and how fast it rises.
func (r *room) inside(hours, changes float64) (level, slope float64) {
	for i := range r.wets {
		w := &r.wets[i]
		f := factorsOf(w.decay, changes, hours)
		at := w.levelAfter(f, r.volume)
		level += at
		slope += (w.input+float64(w.extra()*f.keep))/r.volume - float64(changes*at)
	}
	return level, slope
}

// decayed is e^−x for an x of 0 or more.
func decayed(x float64) float64 { return 1 + measure.ExpMinusOne(-x) }

// between is (e^−at − e^−bt) ÷ (b − a), also where a and b are alike.
func between(a, b, t float64) float64 {
	low, apart := min(a, b), math.Abs(b-a)
	gone := float64(apart * t)
	if gone < 1e-9 {
		return float64(t * decayed(float64(low*t)))
	}
	return float64(decayed(float64(low*t))*-measure.ExpMinusOne(-gone)) / apart
}

// still tells whether what is wet and in the air is next to nothing, of what it
// was and of what is allowed.
func (r *room) still() bool {
	for i := range r.wets {
		w := &r.wets[i]
		if rest := w.left/r.volume + w.level; rest > float64(r.peak*negligible) || rest > float64(w.limit*harmless) {
			return false
		}
	}
	return true
}

// waits is when the next coat is begun, where nothing is left in the room until
// then.
func (r *room) waits(minute int64) (int64, bool) {
	if !r.still() {
		return 0, false
	}
	for _, c := range r.coats[r.done:] {
		if c.Start+c.Minutes <= minute {
			continue
		}
		return c.Start, c.Start/tick*tick > minute
	}
	return 0, false
}

// endShift takes the average of a shift, over eight hours however long it was:
// 29 CFR 1915.1000(d)(1)(i).
func (r *room) endShift(shift int) {
	if mean := r.shiftMean / workday; mean > r.average {
		r.average, r.course.AverageOn = mean, shift
	}
	r.share = max(r.share, r.shiftShare/workday)
	r.shiftMean, r.shiftShare = 0, 0
}

// finish rounds what was found: levels up to a whole milligram, shares up to a
// thousandth, hours up to a quarter.
func (r *room) finish() Course {
	c := r.course
	c.Peak, c.Average, c.ShortTerm = upTo(r.peak*1000, 1), upTo(r.average*1000, 1), upTo(r.short*1000, 1)
	c.Night = upTo(r.night*1000, 1)
	if r.limited {
		c.Share, c.ShortPart, c.NightPart = upTo(r.share, 1000), upTo(r.shortPart, 1000), upTo(r.nights, 1000)
		c.Over = FactOf(measure.NumberFromFraction(r.over, 60))
		wait := max(0, (r.above-r.lastOn+tick-1)/tick*tick)
		c.Reentry = FactOf(measure.NumberFromFraction(wait, 60))
	}
	return c
}

// upTo is x rounded up to a whole multiple of 1/parts; not known where that is
// beyond counting.
func upTo(x float64, parts int64) Fact {
	scaled := math.Ceil(float64(x*float64(parts)) - 1e-6)
	if !(scaled >= 0 && scaled < 1e15) {
		return Fact{}
	}
	return FactOf(measure.NumberFromFraction(int64(scaled), parts))
}
