package days

import "slices"

// Placed is a task with its time. Ready is when all it waits for is over, and
// Because which of those was last: the Wait, and the index of the task it waits
// for, −1 for none. Crew is how many people do it. Missed tells that leaf cannot
// be laid in its window; it is then placed as if it had none.
type Placed struct {
	Start, End, Ready Instant
	Because           Wait
	After             int
	Crew              int
	Missed            bool
	busy              Instant // until then the crew is not free
}

// Schedule is work with its times. Finish is when the last task ends; Earliest
// tells that it cannot end sooner.
type Schedule struct {
	*Work
	Placed   []Placed
	Finish   Instant
	Earliest bool
}

// mostTried is how many times a task is placed in looking for an earlier finish,
// shared out over the tasks.
const mostTried = 4000

// ScheduleOf gives every task the earliest time at which it can be done. Each
// is worked at by as many as can share it, from its beginning to its end. Work
// is done in working hours, drying goes on day and night, and a window that
// would close overnight moves the sizing, not the leaf. Where tasks can be done
// in several orders, a search that leaves none out looks for a better one;
// Earliest tells whether it came to its end. Where it does not, or leaf cannot be
// laid in its window, orders are tried with leaf laid as soon as its size takes
// it, as far as a bound does not show that there is nothing to gain.
//
// ok is false where there is no time to work in, or it takes more than MostDays.
func ScheduleOf(w *Work) (s Schedule, ok bool) {
	return scheduleWithin(w, mostTried)
}

func scheduleWithin(w *Work, tries int) (Schedule, bool) {
	s := Schedule{Work: w, Placed: make([]Placed, len(w.Tasks))}
	if !w.Hours.IsUsable() {
		return s, false
	}
	p := newPlacing(w)
	if !p.inOrder() {
		return s, false
	}
	s.Earliest = len(p.units) == len(w.Tasks) && p.isChain()
	copy(s.Placed, p.placed)
	s.Finish = p.finish()
	if s.Earliest {
		return s, true
	}
	found, settled := p.settle(s.Finish, tries)
	if found != nil {
		s.Placed = found
		s.Finish = 0
		for i := range found {
			s.Finish = max(s.Finish, found[i].End)
		}
	}
	if s.Earliest = settled; !settled {
		p.look(&s, tries)
	}
	return s, true
}

// placing is work on its way to a schedule. Units are what is placed together:
// a task, or a sizing and the leaf on it.
type placing struct {
	*Work
	shifts shifts
	begin  Instant
	units  [][2]int // the second is −1 for a task by itself
	unit   []int    // of each task
	placed []Placed
	isIn   []bool  // tasks that are placed
	taken  []taken // in the order of placing
}

// taken is people at work.
type taken struct {
	from, to Instant
	crew     int
	task     int
}

// roomFor is stretches for two months of work.
const roomFor = 96

func newPlacing(w *Work) *placing {
	p := &placing{
		Work: w, shifts: shifts{hours: &w.Hours, zone: w.Zone, start: w.Start, list: make([]shift, 0, roomFor)}, begin: w.Zone.Instant(w.Start.At(w.Hours.From)),
		unit: make([]int, len(w.Tasks)), placed: make([]Placed, len(w.Tasks)), isIn: make([]bool, len(w.Tasks)),
		units: make([][2]int, 0, len(w.Tasks)), taken: make([]taken, 0, len(w.Tasks)),
	}
	leaf := make([]int, len(w.Tasks))
	for i := range w.Tasks {
		if window := w.Tasks[i].Window; window != nil {
			leaf[window.Sizing] = i
		}
	}
	for i := range w.Tasks {
		switch {
		case w.Tasks[i].Window != nil:
			p.unit[i] = p.unit[w.Tasks[i].Window.Sizing]
			continue
		case leaf[i] > 0:
			p.units = append(p.units, [2]int{i, leaf[i]})
		default:
			p.units = append(p.units, [2]int{i, -1})
		}
		p.unit[i] = len(p.units) - 1
	}
	return p
}

// inOrder places everything in the order given.
func (p *placing) inOrder() bool {
	for i := range p.units {
		if !p.place(i) {
			return false
		}
	}
	return true
}

// isChain tells whether every unit waits for the one before it, so that there is
// no other order.
func (p *placing) isChain() bool {
	for i := 1; i < len(p.units); i++ {
		if !p.waitsFor(i, i-1) {
			return false
		}
	}
	return true
}

func (p *placing) waitsFor(unit, before int) bool {
	for _, task := range p.units[unit] {
		if task < 0 {
			continue
		}
		for _, link := range p.Tasks[task].After {
			if p.unit[link.Task] == before {
				return true
			}
		}
	}
	return false
}

func (p *placing) finish() (finish Instant) {
	for i := range p.placed {
		if p.isIn[i] {
			finish = max(finish, p.placed[i].End)
		}
	}
	return finish
}

// place gives a unit the earliest time that is left.
func (p *placing) place(unit int) bool {
	one, leaf := p.units[unit][0], p.units[unit][1]
	if leaf >= 0 {
		return p.placePair(one, leaf)
	}
	found := p.ready(one)
	if !p.fit(one, &found) {
		return false
	}
	p.put(one, found)
	return true
}

// put notes a task as placed.
func (p *placing) put(task int, found Placed) {
	p.placed[task], p.isIn[task] = found, true
	if found.Crew > 0 {
		p.taken = append(p.taken, taken{found.Start, found.busy, found.Crew, task})
	}
}

// ready is when all is over that a task waits for, but its own sizing.
func (p *placing) ready(task int) Placed {
	t := &p.Tasks[task]
	found := Placed{Ready: p.begin, After: -1}
	if t.NotBefore > 0 {
		if from := p.Zone.Instant(t.NotBefore); from > found.Ready {
			found.Ready, found.Because = from, Ages
		}
	}
	for _, link := range t.After {
		if !p.isIn[link.Task] {
			continue
		}
		at := p.placed[link.Task].End + Instant(link.Minutes)
		if link.Days > 0 {
			at = max(at, p.Zone.Instant(p.Zone.Moment(p.placed[link.Task].End)+Moment(link.Days*Day)))
		}
		if at > found.Ready || at == found.Ready && found.After < 0 {
			found.Ready, found.Because, found.After = at, link.Wait, link.Task
		}
	}
	return found
}

// fit finds the earliest time from found.Ready on at which a task can be done
// and its people are free.
func (p *placing) fit(task int, found *Placed) bool {
	t := &p.Tasks[task]
	crew, minutes := p.takes(task)
	from := found.Ready
	for {
		done, ok := p.span(t.Whole, from, minutes)
		if !ok {
			return false
		}
		if t.Aside {
			crew = 0
		}
		next, by := p.clash(done, crew)
		if by < 0 {
			found.Start, found.End, found.busy, found.Crew = done.from, done.to, done.busy, crew
			return true
		}
		from, found.Because, found.After = next, Staffed, by
	}
}

func (p *placing) span(whole bool, from Instant, minutes int64) (span, bool) {
	if whole {
		return p.shifts.whole(from, minutes)
	}
	return p.shifts.split(from, minutes)
}

// clash is when people are free again where too few are free for a crew in that
// time, and the task that keeps them; −1 where enough are.
func (p *placing) clash(done span, crew int) (free Instant, by int) {
	if crew == 0 {
		return 0, -1
	}
	sum := crew
	for i := range p.taken {
		if other := &p.taken[i]; other.from < done.busy && other.to > done.from {
			sum += other.crew
		}
	}
	if sum <= p.People {
		return 0, -1
	}
	// The most people are at work when one of the tasks begins.
	by = p.over(done.from, crew, &free)
	for i := range p.taken {
		if other := &p.taken[i]; by < 0 && other.from > done.from && other.from < done.busy && other.to > done.from {
			by = p.over(other.from, crew, &free)
		}
	}
	return free, by
}

// over is the first task to end of those at work at a moment, where with the
// crew they are too many.
func (p *placing) over(at Instant, crew int, free *Instant) int {
	sum, by := crew, -1
	for i := range p.taken {
		other := &p.taken[i]
		if other.from > at || other.to <= at {
			continue
		}
		sum += other.crew
		if by < 0 || other.to < *free {
			*free, by = other.to, other.task
		}
	}
	if sum <= p.People {
		return -1
	}
	return by
}

// longestPut is how far a sizing is put off in looking for hours in which the
// leaf can be laid: they come again with the weeks, and days off are fewer.
const longestPut = 60 * Day

// placePair places a sizing and the leaf on it: the leaf as early as it can be
// inside its window, and the size as late as that allows, so that it is fresh.
func (p *placing) placePair(sizing, leaf int) bool {
	window := p.Tasks[leaf].Window
	found := p.ready(sizing)
	first, most := found, found.Ready+longestPut
	for found.Ready <= most {
		if !p.fit(sizing, &found) {
			return false
		}
		laid := p.ready(leaf)
		open, tested := p.opens(window, found.End)
		if open >= laid.Ready {
			laid.Ready, laid.Because, laid.After = open, Tacks, sizing
		}
		p.put(sizing, found)
		ok := p.fit(leaf, &laid)
		p.drop(sizing)
		if !ok {
			return false
		}
		late := laid.End - open - Instant(window.Open)
		if late <= 0 {
			found.Ready = first.Ready
			p.putPair(sizing, leaf, found, laid)
			return true
		}
		if tested {
			break // it is ready when it is, whenever it was laid
		}
		// Sized less than that later, the leaf is laid no earlier, and its window
		// still closes too soon.
		found.Ready, found.Because, found.After = found.Start+late, Matched, first.After
	}
	found = first
	if !p.fit(sizing, &found) {
		return false
	}
	p.put(sizing, found)
	laid := p.ready(leaf)
	open, _ := p.opens(window, found.End)
	laid.Ready, laid.Because, laid.After = max(laid.Ready, open), Tacks, sizing
	if !p.fit(leaf, &laid) {
		return false
	}
	laid.Missed = true
	p.put(leaf, laid)
	return true
}

// drop takes back what was put last.
func (p *placing) drop(task int) {
	p.isIn[task] = false
	if last := len(p.taken) - 1; last >= 0 && p.taken[last].task == task {
		p.taken = p.taken[:last]
	}
}

// putPair puts both, the sizing moved as late as the leaf lets it be.
func (p *placing) putPair(sizing, leaf int, found, laid Placed) {
	p.put(leaf, laid)
	p.putLate(sizing, leaf, found, laid)
}

// putLate puts a sizing as late as its leaf, which is put, lets it be.
func (p *placing) putLate(sizing, leaf int, found, laid Placed) {
	ready := laid.Start
	if open, tested := p.opens(p.Tasks[leaf].Window, found.End); tested {
		ready = open
	}
	ready -= Instant(p.Tasks[leaf].Window.Tack)
	crew, minutes := p.takes(sizing)
	if p.Tasks[sizing].Aside {
		crew = 0
	}
	for i := p.shifts.find(ready - 1); i >= 0; i-- {
		one, ok := p.shifts.at(i)
		if !ok {
			break
		}
		end := min(ready, one.to)
		start := end - Instant(minutes)
		if start <= found.Start || one.to <= found.Start {
			break
		}
		if start < one.from {
			continue
		}
		if _, by := p.clash(span{start, end, end}, crew); by < 0 {
			found.Start, found.End, found.busy, found.Because = start, end, end, Matched
			break
		}
	}
	p.put(sizing, found)
	if laid.Because == Tacks {
		p.placed[leaf].Ready, _ = p.opens(p.Tasks[leaf].Window, found.End)
	}
}

// look tries other orders, where the schedule found is not shown to be the
// earliest.
func (p *placing) look(s *Schedule, tries int) {
	clear(p.isIn)
	p.taken = p.taken[:0]
	if s.Finish <= p.bound() {
		s.Earliest = true
		return
	}
	if p.isChain() {
		return
	}
	l := looking{placing: p, best: s, tries: tries/max(1, len(p.units)) + len(p.units)}
	l.next(len(p.units))
	s.Earliest = l.tries > 0 && len(p.units) == len(p.Tasks)
}

// bound is what no order goes below: everything placed that is not yet, as if
// there were people enough.
func (p *placing) bound() Instant {
	people := p.taken
	in := slices.Clone(p.isIn)
	p.taken = p.taken[:0:0]
	finish := Instant(0)
	for i := range p.units {
		if !p.isIn[p.units[i][0]] {
			p.place(i)
			p.taken = p.taken[:0]
		}
	}
	finish = p.finish()
	copy(p.isIn, in)
	p.taken = people
	return finish
}

// looking is a search through the orders.
type looking struct {
	*placing
	best  *Schedule
	tries int
}

// next places each of the units that can be placed now, of those that are left.
func (l *looking) next(left int) {
	if left == 0 {
		if finish := l.finish(); finish < l.best.Finish {
			l.best.Finish = finish
			copy(l.best.Placed, l.placed)
		}
		return
	}
	for i := range l.units {
		if l.isIn[l.units[i][0]] || !l.isOpen(i) {
			continue
		}
		if l.tries--; l.tries <= 0 {
			return
		}
		before := len(l.taken)
		if l.place(i) && l.bound() < l.best.Finish {
			l.next(left - 1)
		}
		l.taken = l.taken[:before]
		for _, task := range l.units[i] {
			if task >= 0 {
				l.isIn[task] = false
			}
		}
	}
}

// isOpen tells whether all is placed that a unit waits for.
func (l *looking) isOpen(unit int) bool {
	for _, task := range l.units[unit] {
		if task < 0 {
			continue
		}
		for _, link := range l.Tasks[task].After {
			if !l.isIn[link.Task] && l.unit[link.Task] != unit {
				return false
			}
		}
	}
	return true
}
