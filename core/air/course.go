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
	aired.course.Curve = make([]Moment, 0, min(len(aired.coats)*int(3*aDay/tick), mostMoments)) // a coat is followed for some days
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
	slow           int64 // until then a trial goes step by step
	before         []wet // before a leap
	lastOn         int64 // when the last coat is on
	done           int   // coats before this one are on
	steps          int
	whole          [2]span // of a whole quarter of an hour, shut and open
	odd            span    // of another
	given          float64 // g/m³, up to the last step
	today          balance // of this shift
	shiftShare     float64
	course         Course
	all, burning   crest
	average, share float64
	short          float64
	shortly        balance // of the quarter of an hour of short
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

// balance is Balance in grams a cubic metre, with the sum of level × hours.
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
	again.wets, again.before = slices.Clone(r.wets), nil
	again.open = (opened + r.fan) / r.mixing
	if r.nights {
		again.shut = opened / r.mixing
	}
	for i, changes := range [...]float64{again.shut, again.open} {
		s := spanOf(float64(tick)/60, changes)
		for k := range again.wets {
			w := &again.wets[k]
			w.keep, w.fading[i] = w.factors(&s)
		}
		s.whole, s.inside = true, i
		again.whole[i] = s
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
		w := wet{burns: MayBurn(product), decay: lnTen / gone.Value.Float(), coat: product.Litres.Value.Mul(product.VOC.Value).Float() / float64(coats) / r.volume, limit: math.Inf(1)}
		limit := Positive(product.Limit)
		if !limit.Known {
			limit = Positive(job.Air.Limit)
		}
		if limit.Known {
			w.limit = limit.Value.Quo(milligrams).Float()
		} else {
			r.limited = false
		}
		if !finite(w.decay) || w.decay < slowest || !finite(w.coat) || !(w.limit > 0) {
			return false
		}
		w.part, w.little = 1/w.limit, min(float64(w.coat*negligible), float64(w.limit*harmless))
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
		next, leapt := r.leap(minute, shift, inside)
		if !leapt {
			next = r.next(minute, shift)
			r.step(minute, next-minute, inside)
		}
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

// spanOver is a step of so many minutes.
func (r *room) spanOver(minutes int64, inside bool) *span {
	which, changes := 0, r.shut
	if inside {
		which, changes = 1, r.open
	}
	if minutes == tick {
		return &r.whole[which]
	}
	r.odd = spanOf(float64(minutes)/60, changes)
	return &r.odd
}

// step carries every product over so many minutes.
func (r *room) step(minute, minutes int64, inside bool) {
	s := r.spanOver(minutes, inside)
	if r.trial && !inside {
		r.carry(s)
		return
	}
	var all, burning balance
	share, dose := 0.0, 0.0
	for i := range r.wets {
		w := &r.wets[i]
		if w.idle() {
			continue
		}
		w.over(s, r.volume)
		all.take(w)
		if w.burns {
			burning.take(w)
		}
		breathed := s.dose(w.wasLevel, w.given, w.level)
		share += float64(w.level * w.part)
		dose += float64(breathed * w.part)
		if inside {
			w.shift += breathed
		}
	}
	end, meanShare := minute+minutes, dose/s.hours
	if !r.trial {
		r.rise(&r.all, &all, minute, s)
		r.rise(&r.burning, &burning, minute, s)
		r.given += all.given
		r.course.Curve = append(r.course.Curve, Moment{end, all.after * 1000, share})
	}
	if meanShare > 1 {
		r.over += minutes
		r.above = end
	}
	if !inside {
		r.night, r.nightly = max(r.night, all.after), max(r.nightly, share)
		return
	}
	all.sum, all.minutes = s.dose(all.before, all.given, all.after), minutes
	r.today.add(all)
	r.shiftShare += dose
	meanLevel := all.sum / s.hours
	if meanLevel > r.short {
		r.short, r.shortly = meanLevel, all
	}
	r.shortPart = max(r.shortPart, r.briefShare(meanLevel, meanShare))
}

// leap carries a trial over several quarters of an hour in one step, in which no coat is
// begun or ended, nobody comes or goes, and no quarter of an hour can be worse than the
// worst so far: to the end of that time or, with no coat going on, to the quarter of an
// hour at which next to nothing is left. That is found by halving, as what is wet and in
// the air then only falls.
func (r *room) leap(minute int64, shift int, inside bool) (to int64, ok bool) {
	if !r.trial || minute < r.slow {
		return 0, false
	}
	to, on := r.unchanged(minute, shift, inside)
	first := minute / tick
	steps := (to-1)/tick - first + 1
	if steps < 2 || r.steps+int(steps) >= mostMoments || to > r.lastOn+longestTail {
		return 0, false
	}
	r.before = append(r.before[:0], r.wets...)
	s := r.spanOver(to-minute, inside)
	r.carry(s)
	if inside && r.worst(s) > max(r.share, r.shortPart) {
		copy(r.wets, r.before)
		r.slow = to
		return 0, false
	}
	if !on && r.still() {
		least := int64(1)
		for least < steps {
			middle := (least + steps) / 2
			if r.again((first+middle)*tick-minute, inside); r.still() {
				steps = middle
			} else {
				least = middle + 1
			}
		}
		to = min(to, (first+steps)*tick)
		s = r.again(to-minute, inside)
	}
	if inside {
		for i := range r.wets {
			w := &r.wets[i]
			r.shiftShare += float64(s.dose(w.wasLevel, w.given, w.level) * w.part)
		}
	}
	r.steps += int(steps) - 1
	return to, true
}

// unchanged is until when no coat is begun or ended and nobody comes or goes, and whether
// a coat is going on until then.
func (r *room) unchanged(minute int64, shift int, inside bool) (until int64, on bool) {
	until = r.shifts[shift].From
	if inside {
		until = r.shifts[shift].To
	}
	for _, c := range r.coats[r.done:] {
		if c.Start > minute {
			return min(until, c.Start), on
		}
		if end := c.Start + c.Minutes; end > minute {
			until, on = min(until, end), true
		}
	}
	return until, on
}

// again is the step before done again, over so many minutes.
func (r *room) again(minutes int64, inside bool) *span {
	copy(r.wets, r.before)
	s := r.spanOver(minutes, inside)
	r.carry(s)
	return s
}

// worst is what no quarter of an hour of the step that was just made can be worse than, of
// what is allowed for one. A product's level is never above what was there before and all
// that was given off; nor does it rise above where as much is carried out as is given
// off, and what is given off goes one way, from its beginning to its end.
func (r *room) worst(s *span) float64 {
	level, share := 0.0, 0.0
	for i := range r.wets {
		w := &r.wets[i]
		most := max(w.wasLevel, float64(w.decay*max(w.wasLeft, w.left))/s.changes)
		if all := w.wasLevel + w.given; !(most < all) {
			most = all
		}
		level += most
		share += float64(most * w.part)
	}
	return float64(r.briefShare(level, share) * roundingUp)
}

// carry is step where only what people breathe is wanted.
func (r *room) carry(s *span) {
	for i := range r.wets {
		if w := &r.wets[i]; !w.idle() {
			w.over(s, r.volume)
		}
	}
}

// briefShare is how much of what is allowed for fifteen minutes a level is.
func (r *room) briefShare(level, share float64) float64 {
	if r.brief > 0 {
		return level / r.brief
	}
	return share / threefold
}

// rise takes the crest on where the step that was just made comes above it. The level is
// never above what was there before and all that was given off.
func (r *room) rise(c *crest, step *balance, minute int64, s *span) {
	if step.after > c.level {
		c.level, c.at, c.given = step.after, minute+int64(math.Round(float64(s.hours*60))), r.given+step.given
	}
	if float64((step.before+step.given)*roundingUp) <= c.level {
		return
	}
	if top, given, after := r.top(s, c.burning); top > c.level {
		c.level, c.at, c.given = top, minute+int64(float64(after*60)), r.given+given
	}
}

// take adds a product to the step that was just made.
func (b *balance) take(w *wet) {
	b.before += w.wasLevel
	b.given += w.given
	b.after += w.level
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

// top is the highest level in the step that was just made, of all products or of
// those that may burn, with what is given off until then of all, and how far into it. It
// lies inside where the level rises at the beginning and falls at the end, and is then
// found on the line between the two, half of which is taken off the end that stays.
func (r *room) top(s *span, burning bool) (level, given, after float64) {
	low, high, side := 0.0, s.hours, 0
	_, _, rising := r.inside(&span{kept: 1, changes: s.changes}, burning)
	_, _, falling := r.inside(s, burning)
	if !(rising > 0 && falling < 0) {
		return 0, 0, 0
	}
	for range 60 {
		middle := low + float64((high-low)*rising)/(rising-falling)
		if !(low < middle && middle < high) {
			middle = (low + high) / 2
		}
		into := spanOf(middle, s.changes)
		at, off, slope := r.inside(&into, burning)
		if at > level {
			level, given, after = at, off, middle
		}
		switch {
		case float64(math.Abs(slope)*s.hours) <= float64(1e-12*level):
			return level, given, after
		case slope > 0:
			if low, rising = middle, slope; side > 0 {
				falling /= 2
			}
			side = 1
		default:
			if high, falling = middle, slope; side < 0 {
				rising /= 2
			}
			side = -1
		}
	}
	return level, given, after
}

// inside is the level at the end of a span into the step, what all products have given
// off until then, and how fast the level rises.
func (r *room) inside(s *span, burning bool) (level, given, slope float64) {
	for i := range r.wets {
		w := &r.wets[i]
		if w.wasLeft == 0 && w.wasLevel == 0 && w.input == 0 {
			continue
		}
		keep, fading := w.factors(s)
		left, at := w.leftAfter(keep), w.levelAfter(s, fading)
		given += w.givenUntil(s, left)
		if !burning || w.burns {
			level += at
			slope += float64(w.decay*left) - float64(s.changes*at)
		}
	}
	return level, given, slope
}

// still tells whether what is wet and in the air is next to nothing, of a coat
// and of what is allowed.
func (r *room) still() bool {
	for i := range r.wets {
		if w := &r.wets[i]; w.left+w.level > w.little {
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
	c.Given, c.Carried = nearest(float64(r.all.given*r.volume)), nearest(float64((r.all.given-r.all.level)*r.volume))
	c.Average, c.ShortTerm = upTo(r.average*1000, 1000), upTo(r.short*1000, 1000)
	if r.short > 0 {
		c.OfShortTerm = r.shortly.written()
	}
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
