package days

// Part is a stretch of work without a pause or a night in it.
type Part struct{ From, To Moment }

// Parts are the stretches in which a task is done. Work through a pause is one.
func (s *Schedule) Parts(task int) []Part {
	one := &s.Placed[task]
	if s.isUnbroken(task) {
		return []Part{{s.Zone.Moment(one.Start), s.Zone.Moment(one.End)}}
	}
	var parts []Part
	// Stretches lie within their day, so none of before the day's eve is asked for.
	hours := shifts{hours: &s.Hours, zone: s.Zone, start: max(s.Start, s.Zone.Moment(one.Start).Date()-1)}
	for i := hours.find(one.Start); ; i++ {
		stretch, ok := hours.at(i)
		if !ok || stretch.from >= one.End {
			return parts
		}
		to := min(one.End, stretch.to)
		if one.End <= hours.late(&stretch) {
			to = one.End
		}
		parts = append(parts, Part{s.Zone.Moment(max(one.Start, stretch.from)), s.Zone.Moment(to)})
	}
}

// isUnbroken tells whether a task takes no longer than its own minutes.
func (s *Schedule) isUnbroken(task int) bool {
	_, minutes := s.takes(task)
	return s.Placed[task].End == s.Placed[task].Start+Instant(minutes)
}

// Opens is when leaf can be laid on the size of a leaf task; tested tells that it
// goes by the test on the job and not by the hours of tack.
func (s *Schedule) Opens(leaf int) (at Instant, tested bool) {
	w := s.Tasks[leaf].Window
	return s.opens(w, s.Placed[w.Sizing].End)
}

// Minutes is how long a task is worked at, and Labour how many minutes of one
// person's work that is.
func (s *Schedule) Minutes(task int) (minutes, labour int64) {
	crew, minutes := s.takes(task)
	if s.Tasks[task].Aside {
		return minutes, 0 // counted in the task that it is done beside
	}
	return minutes, minutes * int64(crew)
}

// Critical tells of each task whether the finish moves with it: from the last
// to end, back through what each waited for.
func (s *Schedule) Critical() []bool {
	critical := make([]bool, len(s.Placed))
	last := -1
	for i := range s.Placed {
		if last < 0 || s.Placed[i].End > s.Placed[last].End {
			last = i
		}
	}
	for i := last; i >= 0 && !critical[i]; i = s.Placed[i].After {
		critical[i] = true
	}
	return critical
}

// Begins is when the first task does.
func (s *Schedule) Begins() Instant {
	first := s.Finish
	for i := range s.Placed {
		first = min(first, s.Placed[i].Start)
	}
	return first
}

// Span is the first and the last day with work on it. What ends at midnight ends
// on the day that it was done on.
func (s *Schedule) Span() (first, last Date) {
	begin := s.Begins()
	return s.Zone.Moment(begin).Date(), s.Zone.Moment(max(begin, s.Finish-1)).Date()
}

// Count is how many days there are from the first to the last with work on
// them: working days, days on which people would work but wait, and days off.
func (s *Schedule) Count() (working, waiting, off int) {
	if len(s.Placed) == 0 {
		return 0, 0, 0
	}
	from, to := s.Span()
	busy := make([]bool, to-from+1)
	for i := range s.Placed {
		one := &s.Placed[i]
		a, b := s.Zone.Moment(one.Start).Date(), s.Zone.Moment(max(one.Start, one.End-1)).Date()
		for d := a; d <= b; d++ {
			if d >= from && d <= to && s.Hours.Works(d) {
				busy[d-from] = true
			}
		}
	}
	for i, is := range busy {
		switch d := from + Date(i); {
		case is:
			working++
		case s.Hours.Works(d):
			waiting++
		default:
			off++
		}
	}
	return working, waiting, off
}
