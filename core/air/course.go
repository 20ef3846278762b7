package air

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
//
// Needed is solved on this same course: its Changes, put into Plan.Opened with
// all else as it is, are the least whole tenth that keeps Share and ShortPart at 1
// or below, and never less than comes in with the windows shut. They do not depend
// on Opened, and are not known above 1000.
type Course struct {
	Peak      measure.Fact // mg/m³
	PeakAt    int64
	Average   measure.Fact // mg/m³, the worst shift over eight hours
	AverageOn int          // which shift
	Share     measure.Fact // of the limits, the worst shift over eight hours
	ShortTerm measure.Fact // mg/m³, the worst quarter of an hour with people in the room
	ShortPart measure.Fact // of what is allowed for fifteen minutes: the job's short-term limit, or three times the eight-hour limits
	Burning   measure.Fact // mg/m³, the highest that the products that may burn come to together
	Night     measure.Fact // mg/m³, the highest with nobody at work
	NightPart measure.Fact // the same as a share of the limits
	Over      measure.Fact // hours above the limits, people in the room or not
	Reentry   measure.Fact // hours after the last coat is on until the air stays below the limits
	Needed    Needed
	Curve     []Moment

	// How the figures above came about, to a thousandth.
	Given, Carried measure.Fact // grams given off and carried out until the peak: what is left is in the air
	OfAverage      Balance      // of the shift of Average
	OfShortTerm    Balance      // of the quarter of an hour, or the piece of one, of ShortTerm
	OfShare        []OfLimit    // of the shift of Share
}

// Balance is a stretch with people in the room: milligrams a cubic metre that
// were in the air before it, that were given off in it, and that are there after
// it. What is missing was carried out, so that its average is (before + given −
// after) ÷ (the changes that count, by the mixing × hours).
type Balance struct {
	Before, Given, After measure.Fact
	Minutes              int64
}

// OfLimit is the average over eight hours of what goes by one limit, both in
// mg/m³.
type OfLimit struct{ Average, Limit measure.Fact }

const (
	tick        int64 = 15           // minutes between two points of the curve
	aDay        int64 = 24 * 60      // minutes
	fullShift   int64 = workday * 60 // minutes
	longestTail       = 14 * aDay    // how long after the last coat the air is followed
	mostMoments       = 12_000       // a year of quarters of an hour with something wet in a third of them
	negligible        = 0.001        // of a coat: what is left is not followed further
	harmless          = 0.05         // of the limit: nor is that
	lnTen             = math.Ln10
	slowest           = 1e-4 // an hour: a coat that takes years to dry is no coat
	roundingUp        = 1 + 1e-9
)

// CourseOf follows the air of a job, quarter of an hour by quarter of an hour:
// the longest piece of work of a sheet. Put it into Job.Course for Notes.
//
// What a coat holds evaporates in proportion to what is left of it, nine tenths
// in the time the coat takes to dry (derived: k = ln 10 ÷ drying time), or in ten
// hours where a solvent or oil product takes longer to harden. The room
// follows dC/dt = given off ÷ volume − air changes ÷ mixing × C, solved exactly
// from one point to the next. The air is changed as with the windows open in the
// shifts, with what the fan brings besides; between them as the plan says.
//
// Problems are those of Of, which is asked first; here none is added.
func CourseOf(job Job) Course {
	job.Coats, job.Shifts = timesOf(job)
	room, ok := roomOf(job)
	if !ok {
		return Course{}
	}
	opened := Positive(job.Air.Opened)
	switch {
	case room.empty() && !opened.Known:
		return Course{}
	case room.empty():
		zero := measure.FactOf(measure.Number{})
		return Course{Peak: zero, Average: zero, Share: zero, ShortTerm: zero, ShortPart: zero, Burning: zero, Night: zero, NightPart: zero, Over: zero, Reentry: zero}
	}
	needed := room.leastChanges(1)
	if !opened.Known || !finite(opened.Value.Float()/room.mixing) {
		return Course{Needed: needed}
	}
	aired := room.aired(opened.Value.Float())
	course := aired.follow()
	course.Needed = needed
	return course
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
		hours := Positive(product.DryHours)
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
	burns    bool
	decay    float64 // 1/h
	limit    float64 // g/m³; +Inf where there is none
	coat     float64 // grams in one coat
	left     float64 // grams wet
	level    float64 // g/m³
	input    float64 // grams an hour being put on
	mean     float64 // g/m³, over the last step
	wasLeft  float64 // at the beginning of the step
	wasLevel float64
	given    float64    // grams, over the last step
	shift    float64    // g/m³ × hours of this shift
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
	volume, mixing float64 // m³
	fan            float64 // air changes an hour
	open, shut     float64 // air changes an hour that count, by the mixing
	nights         bool    // the windows are as open with nobody at work
	brief          float64 // g/m³ for fifteen minutes, 0 where it goes by the eight-hour limits
	coats          []Coat
	shifts         []Shift
	wets           []wet
	of             []int // by product: its place in wets, or −1
	limited        bool  // every product has a limit
	trial          bool  // only Share and ShortPart are wanted
	slow           int64 // a morning that is not reached in one step
	evening        []wet // before such a step
	lastOn         int64 // when the last coat is on
	done           int   // coats before this one are on
	steps          int
	given          float64 // grams, up to the last step
	today          balance // of this shift
	shiftShare     float64
	course         Course
	all, burning   crest
	average, share float64
	short          float64
	shortPart      float64
	night, nightly float64 // g/m³, and the share of the limits, with nobody at work
	over           int64
	above          int64 // the last minute above the limits
}

// crest is the highest level of all products, or of those that may burn, when it
// is reached and what had been given off by then.
type crest struct {
	burning      bool
	level, given float64
	at           int64
}

// balance is Balance in grams, with the sum of level × hours.
type balance struct {
	before, given, after, sum float64
	minutes                   int64
}

// threefold is how much of an eight-hour limit a quarter of an hour may come to
// where no limit for fifteen minutes is given: HSE, EH40/2005, guidance on
// short-term exposure (from memory).
const threefold = 3

func roomOf(job Job) (*room, bool) {
	r := &room{shifts: job.Shifts, limited: true, of: make([]int, len(job.Products)), nights: job.Air.Nights == NightsOpen, burning: crest{burning: true}}
	shut, mixing := job.Air.Shut, atLeastOne(job.Air.Mixing)
	r.volume = job.RoomVolume.Litres.Quo(measure.CubicMetre).Float()
	if !shut.Known || shut.Value.Sign() < 0 || !mixing.Known || !(r.volume > 0) || math.IsInf(r.volume, 0) {
		return nil, false
	}
	if job.Air.Fan.Known && job.Air.Fan.Value.Sign() > 0 {
		r.fan = job.Air.Fan.Value.Float() / r.volume
	}
	if short := Positive(job.Air.ShortTerm); short.Known {
		r.brief = short.Value.Quo(milligrams).Float()
	}
	r.mixing = mixing.Value.Float()
	r.shut = shut.Value.Float() / r.mixing
	if !finite(r.fan/r.mixing) || !finite(r.shut) {
		return nil, false
	}
	return r, r.take(job)
}

// aired is the room before anything is wet, with so many air changes an hour
// through the open windows.
func (r *room) aired(opened float64) *room {
	again := *r
	again.wets, again.evening = slices.Clone(r.wets), nil
	again.open = (opened + r.fan) / r.mixing
	if r.nights {
		again.shut = opened / r.mixing
	}
	return &again
}

func finite(x float64) bool { return !math.IsInf(x, 0) && !math.IsNaN(x) }

// take takes in what the products give off. False where one of them is outside
// what can be reckoned with.
func (r *room) take(job Job) bool {
	for i, product := range job.Products {
		r.of[i] = -1
		gone := evaporates(product)
		if !gone.Known || !IsCounted(product) || IsZero(product.VOC) || IsZero(product.Litres) {
			continue
		}
		coats := max(1, product.Coats)
		w := wet{burns: MayBurn(product), decay: lnTen / gone.Value.Float(), coat: product.Litres.Value.Mul(product.VOC.Value).Float() / float64(coats), limit: math.Inf(1)}
		limit := Positive(product.Limit)
		if !limit.Known {
			limit = Positive(job.Air.Limit)
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
	for ; r.steps < mostMoments; r.steps++ {
		for shift < len(r.shifts) && r.shifts[shift].To <= minute {
			r.endShift(shift)
			shift++
		}
		if r.trial && shift == len(r.shifts) {
			break
		}
		r.begin(minute)
		inside := shift < len(r.shifts) && r.shifts[shift].From <= minute
		if morning, ok := r.tried(minute, shift, inside); ok {
			minute = morning
			continue
		}
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
	if r.trial && !inside {
		r.carry(minutes, changes)
		return
	}
	hours := float64(minutes) / 60
	var all, burning reach
	share, before, given, meanLevel, meanShare := 0.0, 0.0, 0.0, 0.0, 0.0
	for i := range r.wets {
		w := &r.wets[i]
		if w.idle() {
			continue
		}
		highest := w.over(hours, changes, w.factors(minutes, changes, inside), r.volume)
		all.add(w.level, highest)
		if w.burns {
			burning.add(w.level, highest)
		}
		before += w.wasLevel
		given += w.given
		meanLevel += w.mean
		share += w.level / w.limit
		meanShare += w.mean / w.limit
		if inside {
			w.shift += float64(w.mean * hours)
		}
	}
	end := minute + minutes
	if !r.trial {
		r.rise(&r.all, all, minute, minutes, changes, given)
		r.rise(&r.burning, burning, minute, minutes, changes, given)
		r.given += given
		r.course.Curve = append(r.course.Curve, Moment{end, all.level * 1000, share})
	}
	if meanShare > 1 {
		r.over += minutes
		r.above = end
	}
	if !inside {
		r.night, r.nightly = max(r.night, all.level), max(r.nightly, share)
		return
	}
	here := balance{before, given / r.volume, all.level, float64(meanLevel * hours), minutes}
	r.today.add(here)
	r.shiftShare += float64(meanShare * hours)
	if meanLevel > r.short {
		r.short, r.course.OfShortTerm = meanLevel, here.written()
	}
	r.shortPart = max(r.shortPart, r.briefShare(meanLevel, meanShare))
}

// tried carries a trial to the next shift in one step, where no coat goes on before and
// something is left then: what is wet and in the air only falls until then, so it never
// was next to nothing in between, and step by step would come to the same.
func (r *room) tried(minute int64, shift int, inside bool) (morning int64, ok bool) {
	if !r.trial || inside || r.shifts[shift].From == r.slow {
		return 0, false
	}
	morning = r.shifts[shift].From
	for _, c := range r.coats[r.done:] {
		if c.Start < morning && c.Start+c.Minutes >= minute {
			return 0, false
		}
	}
	steps := int((morning - minute) / tick)
	if steps < 2 || minute <= r.lastOn && r.steps+steps >= mostMoments {
		return 0, false
	}
	r.evening = append(r.evening[:0], r.wets...)
	r.carry(morning-minute, r.shut)
	if r.still() {
		copy(r.wets, r.evening)
		r.slow = morning
		return 0, false
	}
	r.steps += steps - 1
	return morning, true
}

// carry is step where nobody is in the room and only what people breathe is wanted.
func (r *room) carry(minutes int64, changes float64) {
	for i := range r.wets {
		w := &r.wets[i]
		if w.left == 0 && w.level == 0 && w.input == 0 {
			continue
		}
		f := w.factors(minutes, changes, false)
		w.wasLeft, w.wasLevel = w.left, w.level
		w.level = w.levelAfter(f, r.volume)
		w.left = w.leftAfter(f)
		w.forget(r.volume)
	}
}

// briefShare is how much of what is allowed for fifteen minutes a level is.
func (r *room) briefShare(level, share float64) float64 {
	if r.brief > 0 {
		return level / r.brief
	}
	return share / threefold
}

// reach is the level at the end of a step, and what it cannot have been above
// meanwhile.
type reach struct{ level, highest float64 }

func (r *reach) add(level, highest float64) {
	r.level += level
	r.highest += highest
}

// rise takes the crest on where the step that was just made comes above it.
func (r *room) rise(c *crest, to reach, minute, minutes int64, changes, given float64) {
	if to.level > c.level {
		c.level, c.at, c.given = to.level, minute+minutes, r.given+given
	}
	if float64(to.highest*roundingUp) <= c.level {
		return
	}
	if top, after := r.top(float64(minutes)/60, changes, c.burning); top > c.level {
		c.level, c.at, c.given = top, minute+int64(float64(after*60)), r.given+r.givenIn(after)
	}
}

// givenIn is how many grams were given off in the first hours of the step that
// was just made.
func (r *room) givenIn(hours float64) (grams float64) {
	for i := range r.wets {
		w := &r.wets[i]
		grams += w.givenIn(hours, decayed(float64(w.decay*hours)))
	}
	return grams
}

// add joins a step to the balance of the shift.
func (b *balance) add(next balance) {
	if b.minutes == 0 {
		b.before = next.before
	}
	b.given += next.given
	b.after = next.after
	b.sum += next.sum
	b.minutes += next.minutes
}

func (b *balance) written() Balance {
	return Balance{nearest(b.before * 1000), nearest(b.given * 1000), nearest(b.after * 1000), b.minutes}
}

// idle tells whether nothing of the product is wet, in the air or being put on;
// it then forgets the step before.
func (w *wet) idle() bool {
	if w.left != 0 || w.level != 0 || w.input != 0 {
		return false
	}
	w.wasLeft, w.wasLevel, w.mean, w.given = 0, 0, 0, 0
	return true
}

// over carries one product over so many hours: what is wet by its own decay,
// what is in the air by the balance of the room. The level is never above
// highest meanwhile, which is all that is given off in the step and none of it
// carried out.
func (w *wet) over(hours, changes float64, f factors, volume float64) (highest float64) {
	w.wasLeft, w.wasLevel = w.left, w.level
	w.level = w.levelAfter(f, volume)
	w.left = w.leftAfter(f)
	w.given = w.givenIn(hours, f.keep)
	if turned := float64(changes * hours); turned > 1e-3 {
		w.mean = (w.given/volume + w.wasLevel - w.level) / turned
	} else {
		w.mean = (w.wasLevel + w.level) / 2
	}
	w.forget(volume)
	return w.wasLevel + w.given/volume
}

// leftAfter is what is still wet at the end of a step with these factors.
func (w *wet) leftAfter(f factors) float64 {
	steady := w.input / w.decay
	return steady + float64((w.wasLeft-steady)*f.keep)
}

// forget takes next to nothing for nothing.
func (w *wet) forget(volume float64) {
	if w.input == 0 && w.left < gone && float64(w.level*volume) < gone {
		w.left, w.level = 0, 0
	}
}

// gone is how many grams of a product, wet and in the air, count as none: a
// millionth of what a sheet rounds to. Without it every coat of a long job would be
// followed to its end.
const gone = 1e-9

// givenIn is how many grams are given off in the first hours of a step, when this
// share of what is wet is then still wet.
func (w *wet) givenIn(hours, keep float64) float64 {
	return float64(w.input*hours) + float64(w.extra()*(1-keep))/w.decay
}

// extra is the grams an hour given off at the beginning of the step above what
// is being put on.
func (w *wet) extra() float64 { return float64(w.decay*w.wasLeft) - w.input }

// levelAfter is the level at the end of a step with these factors.
func (w *wet) levelAfter(f factors, volume float64) float64 {
	added := float64(w.input*f.steady) + float64(w.extra()*f.fading)
	return float64(w.wasLevel*f.kept) + added/volume
}

// top is the highest level in the step that was just made, of all products or of
// those that may burn, and how far into it. It lies inside where the level rises
// at the beginning and falls at the end, and is then found by halving.
func (r *room) top(hours, changes float64, burning bool) (level, after float64) {
	rising, falling := 0.0, 0.0
	for i := range r.wets {
		w := &r.wets[i]
		if burning && !w.burns {
			continue
		}
		rising += float64(w.decay*w.wasLeft)/r.volume - float64(changes*w.wasLevel)
		falling += float64(w.decay*w.left)/r.volume - float64(changes*w.level)
	}
	if !(rising > 0 && falling < 0) {
		return 0, 0
	}
	low, high := 0.0, hours
	for range 30 {
		middle := (low + high) / 2
		at, slope := r.inside(middle, changes, burning)
		if level = max(level, at); slope > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return level, low
}

// inside is the level so many hours into the step, and how fast it rises.
func (r *room) inside(hours, changes float64, burning bool) (level, slope float64) {
	for i := range r.wets {
		w := &r.wets[i]
		if burning && !w.burns {
			continue
		}
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

// still tells whether what is wet and in the air is next to nothing, of a coat
// and of what is allowed.
func (r *room) still() bool {
	for i := range r.wets {
		w := &r.wets[i]
		if rest := w.left/r.volume + w.level; rest > float64(w.coat/r.volume*negligible) || rest > float64(w.limit*harmless) {
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
	if mean := r.today.sum / workday; mean > r.average {
		r.average, r.course.AverageOn, r.course.OfAverage = mean, shift, r.today.written()
	}
	if share := r.shiftShare / workday; share > r.share {
		r.share = share
		if !r.trial {
			r.course.OfShare = r.byLimit()
		}
	}
	r.today, r.shiftShare = balance{}, 0
	for i := range r.wets {
		r.wets[i].shift = 0
	}
}

// byLimit is what the shift's share is the sum of, one for each limit.
func (r *room) byLimit() []OfLimit {
	var limits, means []float64
	for i := range r.wets {
		w := &r.wets[i]
		at := slices.Index(limits, w.limit)
		if at < 0 {
			at, limits, means = len(limits), append(limits, w.limit), append(means, 0)
		}
		means[at] += w.shift / workday
	}
	var list []OfLimit
	for i := range limits {
		if means[i] > 0 {
			list = append(list, OfLimit{nearest(means[i] * 1000), nearest(limits[i] * 1000)})
		}
	}
	return list
}

// finish rounds what was found: levels up to a thousandth of a milligram, shares
// up to a millionth, hours up to a quarter.
func (r *room) finish() Course {
	c := r.course
	c.Peak, c.PeakAt = upTo(r.all.level*1000, 1000), r.all.at
	c.Given, c.Carried = nearest(r.all.given), nearest(r.all.given-float64(r.all.level*r.volume))
	c.Average, c.ShortTerm = upTo(r.average*1000, 1000), upTo(r.short*1000, 1000)
	c.Burning, c.Night = upTo(r.burning.level*1000, 1000), upTo(r.night*1000, 1000)
	if r.brief > 0 || r.limited {
		c.ShortPart = upTo(r.shortPart, millionth)
	}
	if r.limited {
		c.Share, c.NightPart = upTo(r.share, millionth), upTo(r.nightly, millionth)
		c.Over = measure.FactOf(measure.NumberFromFraction(r.over, 60))
		wait := max(0, (r.above-r.lastOn+tick-1)/tick*tick)
		c.Reentry = measure.FactOf(measure.NumberFromFraction(wait, 60))
	}
	return c
}

const millionth = 1_000_000

// upTo is x rounded up to a whole multiple of 1/parts; not known where that is
// beyond counting.
func upTo(x float64, parts int64) measure.Fact {
	scaled := math.Ceil(float64(x*float64(parts)) - 1e-6)
	if !(scaled >= 0 && scaled < 1e15) {
		return measure.Fact{}
	}
	return measure.FactOf(measure.NumberFromFraction(int64(scaled), parts))
}

// nearest is x to the nearest thousandth; not known where that is beyond
// counting.
func nearest(x float64) measure.Fact {
	scaled := math.Round(float64(x * 1000))
	if !(math.Abs(scaled) < 1e15) {
		return measure.Fact{}
	}
	return measure.FactOf(measure.NumberFromFraction(int64(scaled), 1000))
}
