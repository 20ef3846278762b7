package days

import "slices"

// Hours are when people work: From and To on the days of Weekdays, without a
// Pause of so many minutes and without the days Off. Over is how many minutes
// longer they stay where that ends a piece of work; To and Over come to no more than
// a day.
type Hours struct {
	From, To Clock
	Pause    int64
	Over     int64
	Weekdays [7]bool // by Weekday
	Off      []Date  // in order
}

// IsUsable tells whether there is any time to work in.
func (h *Hours) IsUsable() bool { return h.Net() > 0 && slices.Contains(h.Weekdays[:], true) }

// Net is the minutes of work in a day.
func (h *Hours) Net() int64 { return int64(h.To-h.From) - h.Pause }

// PauseFrom is when the pause begins: it lies in the middle of the day, on the
// quarter of an hour at or before.
func (h *Hours) PauseFrom() Clock {
	from := (int64(h.From+h.To) - h.Pause) / 2
	return max(h.From, Clock(from-from%15))
}

// Works tells whether a day is worked.
func (h *Hours) Works(d Date) bool {
	if !h.Weekdays[d.Weekday()] {
		return false
	}
	_, off := slices.BinarySearch(h.Off, d)
	return !off
}

// MostDays is how many days ahead the work is planned, days off among them.
const MostDays = 3660

// shift is a stretch of work without a pause. dayTo is the end of its day's
// work; day counts the days from the start.
type shift struct {
	from, to, dayTo Instant
	day             int
}

// shifts are the stretches of work from a day on, worked out as far as they are
// asked for.
type shifts struct {
	hours *Hours
	zone  Zone
	start Date
	next  int // the next day to look at, counted from start
	list  []shift
}

// at is stretch i, from 0. ok is false past MostDays.
func (s *shifts) at(i int) (one shift, ok bool) {
	for i >= len(s.list) {
		if s.next > MostDays {
			return one, false
		}
		if d := s.start + Date(s.next); s.hours.Works(d) {
			s.list = s.hours.stretches(s.list, s.zone, d, s.next)
		}
		s.next++
	}
	return s.list[i], true
}

// stretches are those of a day that is worked, behind list.
func (h *Hours) stretches(list []shift, zone Zone, d Date, day int) []shift {
	from, to := zone.Instant(d.At(h.From)), zone.Instant(d.At(h.To))
	if h.Pause <= 0 {
		return append(list, shift{from, to, to, day})
	}
	pause := zone.Instant(d.At(h.PauseFrom()))
	if pause > from {
		list = append(list, shift{from, pause, to, day})
	}
	if after := pause + Instant(h.Pause); after < to {
		list = append(list, shift{after, to, to, day})
	}
	return list
}

// late is until when a stretch is worked where that ends a piece of work.
func (s *shifts) late(one *shift) Instant {
	if one.to < one.dayTo {
		return one.to
	}
	return one.to + Instant(s.hours.Over)
}

// find is the first stretch that ends after t, the time it may run over counted.
func (s *shifts) find(t Instant) int {
	for len(s.list) == 0 || s.late(&s.list[len(s.list)-1]) <= t {
		if _, ok := s.at(len(s.list)); !ok {
			return len(s.list)
		}
	}
	low, high := 0, len(s.list)-1
	for low < high {
		if middle := (low + high) / 2; s.late(&s.list[middle]) > t {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return low
}

// span is when something is done: work from and to, and busy, when those who
// did it are free again.
type span struct{ from, to, busy Instant }

// split is when minutes of work that may be stopped and gone on with are done,
// begun as early as can be from t on.
func (s *shifts) split(t Instant, minutes int64) (done span, ok bool) {
	i := s.find(t)
	for first := true; ; i++ {
		one, ok := s.at(i)
		if !ok {
			return done, false
		}
		from := max(t, one.from)
		to := from + Instant(minutes)
		if to > s.late(&one) && from >= one.to {
			continue // what runs over is not begun to be stopped
		}
		if first {
			done.from, first = from, false
		}
		if to > s.late(&one) {
			minutes -= int64(one.to - from)
			continue
		}
		done.to = to
		done.busy = done.to
		return done, true
	}
}

// whole is when work that may not be stopped is done: before the pause or after
// it, or where it is longer than either, through it, the pause had at its end.
// Work longer than a day is stopped at its end, as split.
func (s *shifts) whole(t Instant, minutes int64) (done span, ok bool) {
	if minutes > s.hours.Net() {
		return s.split(t, minutes)
	}
	for i := s.find(t); ; i++ {
		one, ok := s.at(i)
		if !ok {
			return done, false
		}
		from := max(t, one.from)
		to := from + Instant(minutes)
		if to <= s.late(&one) {
			return span{from, to, to}, true
		}
		if busy := to + Instant(s.hours.Pause); busy <= one.dayTo && !s.fitsHalf(minutes) {
			return span{from, to, busy}, true
		}
	}
}

// fitsHalf tells whether minutes fit before the pause or after it.
func (s *shifts) fitsHalf(minutes int64) bool {
	pause := int64(s.hours.PauseFrom())
	return minutes <= max(pause-int64(s.hours.From), int64(s.hours.To)-pause-s.hours.Pause)
}
