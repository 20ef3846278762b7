package days

import "slices"

// The search for the earliest finish. Were there people enough, every task would
// have one earliest time: links, windows and working hours only ever push a task
// later. Where too many are at work at a moment, some task of those then under
// way has to wait until another is over, in any schedule there is; each such
// pair is tried. So nothing is left out, leaf laid later than it could be not
// either, and the search is short where few tasks meet. (Branching on forbidden
// sets, Bartusch, Möhring and Radermacher 1988, from memory.)

// settling is that search. budget is how many more times a task may be put in its
// place, found the best schedule so far that ends before best.
type settling struct {
	*placing
	best   Instant
	budget int
	pairs  [][2]int // the second waits for the first, by the search
	depths [][]earliest
	found  []Placed
}

// earliest is the least time of a task: done from least on, where the task may
// not begin before least for the sake of the leaf on it.
type earliest struct {
	span
	ready, least Instant
	isSet        bool
}

// settle looks for a schedule that ends before finish, and tells whether the
// search came to its end, so that there is no better one. It is no use where leaf
// cannot be laid in its window, or size was tested, which settles its time.
func (p *placing) settle(finish Instant, tries int) (found []Placed, settled bool) {
	for i := range p.Tasks {
		t := &p.Tasks[i]
		if t.Window == nil {
			continue
		}
		if _, minutes := p.takes(t.Window.Sizing); t.Window.Tested > 0 || minutes > p.Hours.Net() || p.placed[i].Missed {
			return nil, false
		}
	}
	s := settling{placing: p, best: finish, budget: tries}
	start := make([]earliest, len(p.Tasks))
	if s.push(start) {
		s.branch(start, 0)
	}
	return s.found, s.budget > 0
}

// branch looks among the schedules that keep the pairs so far.
func (s *settling) branch(at []earliest, depth int) {
	together := s.together(at)
	if s.budget <= 0 {
		return
	}
	if together == nil {
		s.note(at)
		return
	}
	if depth == len(s.depths) {
		s.depths = append(s.depths, make([]earliest, len(at)))
	}
	next := s.depths[depth]
	for _, before := range together {
		for _, after := range together {
			if before == after || s.budget <= 0 {
				continue
			}
			copy(next, at)
			s.pairs = append(s.pairs, [2]int{before, after})
			if s.push(next) {
				s.branch(next, depth+1)
			}
			s.pairs = s.pairs[:len(s.pairs)-1]
		}
	}
}

// push moves every task to its earliest time. It fails where that is no better
// than the best there is.
func (s *settling) push(at []earliest) bool {
	for moved := true; moved; {
		moved = false
		for i := range at {
			ready := s.readyIn(at, i)
			if at[i].isSet && ready <= at[i].ready {
				continue
			}
			_, minutes := s.takes(i)
			done, ok := s.span(s.Tasks[i].Whole, ready, minutes)
			if s.budget--; !ok || s.budget <= 0 || done.to >= s.best {
				return false
			}
			at[i].span, at[i].ready, at[i].isSet, moved = done, ready, true, true
			if w := s.Tasks[i].Window; w != nil {
				size := &at[w.Sizing]
				if late := done.to - size.to - Instant(w.Tack+w.Open); late > 0 {
					size.least = size.from + late
				}
			}
		}
	}
	return true
}

// readyIn is when all is over that a task waits for.
func (s *settling) readyIn(at []earliest, task int) Instant {
	t := &s.Tasks[task]
	ready := max(s.begin, at[task].least)
	if t.NotBefore > 0 {
		ready = max(ready, s.Zone.Instant(t.NotBefore))
	}
	for _, link := range t.After {
		ready = max(ready, at[link.Task].to+Instant(link.Minutes))
		if link.Days > 0 {
			ready = max(ready, s.Zone.Instant(s.Zone.Moment(at[link.Task].to)+Moment(link.Days*Day)))
		}
	}
	if t.Window != nil {
		ready = max(ready, at[t.Window.Sizing].to+Instant(t.Window.Tack))
	}
	for _, pair := range s.pairs {
		if pair[1] == task {
			ready = max(ready, at[pair[0]].busy)
		}
	}
	return ready
}

// together are tasks of the first moment at which too many people are at work:
// no more of them than it takes to be too many. nil where there is no such moment.
func (s *settling) together(at []earliest) []int {
	first := -1
	for i := range at {
		if first >= 0 && at[i].from >= at[first].from {
			continue
		}
		sum := 0
		for j := range at {
			if at[j].from <= at[i].from && at[i].from < at[j].busy {
				sum += s.crewOf(j)
			}
		}
		if s.budget -= len(at)/mostBeside + 1; sum > s.People {
			first = i
		}
	}
	if first < 0 {
		return nil
	}
	var list []int
	sum := 0
	for j := range at {
		if at[j].from <= at[first].from && at[first].from < at[j].busy && s.crewOf(j) > 0 {
			list, sum = append(list, j), sum+s.crewOf(j)
		}
	}
	for i := 0; i < len(list); {
		if rest := sum - s.crewOf(list[i]); rest > s.People {
			list, sum = slices.Delete(list, i, i+1), rest
			continue
		}
		i++
	}
	slices.SortStableFunc(list, func(a, b int) int { return int(at[a].from - at[b].from) })
	return list
}

// mostBeside is how many tasks are held against one in the time it takes to put
// a task in its place, roughly.
const mostBeside = 64

func (s *settling) crewOf(task int) int {
	if s.Tasks[task].Aside {
		return 0
	}
	crew, _ := s.takes(task)
	return crew
}

// note keeps a schedule, with the reason for each time in it.
func (s *settling) note(at []earliest) {
	s.best = 0
	s.taken = s.taken[:0]
	for i := range at {
		s.best = max(s.best, at[i].to)
		s.put(i, Placed{Start: at[i].from, End: at[i].to, busy: at[i].busy, Crew: s.crewOf(i)})
	}
	for i := range at {
		why := s.ready(i)
		if w := s.Tasks[i].Window; w != nil {
			if open := at[w.Sizing].to + Instant(w.Tack); open >= why.Ready {
				why.Ready, why.Because, why.After = open, Tacks, w.Sizing
			}
		}
		for _, pair := range s.pairs {
			if pair[1] == i && at[pair[0]].busy > why.Ready && at[pair[0]].busy == at[i].ready {
				why.Because, why.After = Staffed, pair[0]
			}
		}
		if at[i].least > why.Ready && at[i].least == at[i].ready {
			why.Because = Matched
		}
		one := &s.placed[i]
		one.Ready, one.Because, one.After = why.Ready, why.Because, why.After
	}
	for i := range at {
		if w := s.Tasks[i].Window; w != nil {
			s.taken = slices.DeleteFunc(s.taken, func(t taken) bool { return t.task == w.Sizing })
			s.putLate(w.Sizing, i, s.placed[w.Sizing], s.placed[i])
		}
	}
	s.found = append(s.found[:0], s.placed...)
}
