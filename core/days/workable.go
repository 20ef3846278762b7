package days

// week is how often the hours of work come again, but for days off; what is sized in one
// is laid in the next two.
const (
	week  = 7 * Day
	weeks = 3
)

// MostLaid is how many minutes of work at most lie in the time in which a size
// takes leaf: open minutes of it, from tack minutes after the end of the sizing,
// which takes sizing minutes of one day's work. Any days of the week may be taken;
// days off only put the work off.
func (h *Hours) MostLaid(sizing, tack, open int64) int64 {
	if open >= week || !h.IsUsable() {
		return max(0, open)
	}
	monday := Date(4)             // 5 January 1970
	var room [2 * 7 * weeks]shift // a week to size in, and two to lay in
	list := room[:0]
	for day := range 7 * weeks {
		if d := monday + Date(day); h.Weekdays[d.Weekday()] {
			list = h.stretches(list, Zone{}, d, day)
		}
	}
	tack %= week
	most := int64(0)
	for _, one := range list {
		if one.day >= 7 {
			break
		}
		most = max(most, mostFrom(list, one, sizing, tack, open))
	}
	return most
}

// mostFrom is the most for a sizing that ends in a stretch of work. What is laid
// changes evenly between the moments at which the window opens or closes with a
// stretch, so only those are tried.
func mostFrom(list []shift, one shift, sizing, tack, open int64) int64 {
	last := one.to
	first := min(one.from+Instant(sizing), last)
	most := max(within(list, first+Instant(tack), open), within(list, last+Instant(tack), open))
	for _, other := range list {
		for _, end := range [2]Instant{other.from - Instant(tack), other.to - Instant(tack+open)} {
			if end > first && end < last {
				most = max(most, within(list, end+Instant(tack), open))
			}
		}
	}
	return most
}

// within is how much of a window is worked.
func within(list []shift, from Instant, open int64) (sum int64) {
	to := from + Instant(open)
	for _, one := range list {
		if one.from >= to {
			break
		}
		sum += max(0, int64(min(to, one.to)-max(from, one.from)))
	}
	return sum
}

// LatestBegin is the latest time, in steps of five minutes, at which the day has to
// begin for what fits to be true, where longer days fit no less. ok is false where
// none before the present one does.
func (h *Hours) LatestBegin(fits func(h *Hours) bool) (at Clock, ok bool) {
	low, high := 0, int(h.From)/begins
	try := func(n int) bool {
		longer := *h
		longer.From = Clock(n * begins)
		return fits(&longer)
	}
	if high == 0 || !try(0) {
		return 0, false
	}
	for low < high {
		if middle := (low + high + 1) / 2; try(middle) {
			low = middle
		} else {
			high = middle - 1
		}
	}
	return Clock(low * begins), Clock(low*begins) < h.From
}

// EarliestEnd is the earliest time, in the same steps, at which the day has to end.
func (h *Hours) EarliestEnd(fits func(h *Hours) bool) (at Clock, ok bool) {
	low, high := int(h.To)/begins+1, Day/begins
	try := func(n int) bool {
		longer := *h
		longer.To = Clock(n * begins)
		return fits(&longer)
	}
	if low > high || !try(high) {
		return 0, false
	}
	for low < high {
		if middle := (low + high) / 2; try(middle) {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return Clock(low * begins), true
}

// begins is the step of minutes in which a day's hours are told.
const begins = 5
