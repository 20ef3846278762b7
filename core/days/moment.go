package days

import "slices"

// Day is how many minutes a day without a change of clocks has.
const Day = 24 * 60

// Clock is a time of day in minutes after midnight, 0 to 1440.
type Clock int

// ParseClock reads a time of day on the clock of 24 hours, 8:00, 08:00 or
// 16:30; 24:00 is midnight at the end of a day.
func ParseClock(text string) (Clock, bool) {
	if len(text) == 4 {
		text = "0" + text
	}
	if len(text) != 5 || text[2] != ':' {
		return 0, false
	}
	hours, ok1 := digits(text[:2])
	minutes, ok2 := digits(text[3:])
	c := Clock(60*hours + minutes)
	return c, ok1 && ok2 && minutes < 60 && c <= Day
}

// String is the time of day as 08:00.
func (c Clock) String() string { return padded(int(c)/60, 2) + ":" + padded(int(c)%60, 2) }

// Moment is what a clock on the wall and a calendar beside it show: minutes
// since the beginning of 1 January 1970, as if the clocks had never changed.
type Moment int64

// At is a time of a day.
func (d Date) At(c Clock) Moment { return Moment(d)*Day + Moment(c) }

// Date is the day of a moment.
func (m Moment) Date() Date {
	if m < 0 {
		return Date((m - Day + 1) / Day)
	}
	return Date(m / Day)
}

// Clock is the time of day of a moment, below 24:00.
func (m Moment) Clock() Clock { return Clock(m - Moment(m.Date())*Day) }

// String is the moment as ISO 8601 has it, without a zone: 2027-03-01T08:00.
func (m Moment) String() string { return m.Date().String() + "T" + m.Clock().String() }

// ParseMoment reads what String writes, or with a space for the T.
func ParseMoment(text string) (Moment, bool) {
	if len(text) != 16 || text[10] != 'T' && text[10] != ' ' {
		return 0, false
	}
	d, ok1 := ParseDate(text[:10])
	c, ok2 := ParseClock(text[11:])
	return d.At(c), ok1 && ok2 && c < Day
}

// Change is a change of the clocks: at the moment At they are put on by so many
// Minutes, or back where that is below zero. At is what they show just before.
type Change struct {
	At      Moment
	Minutes int64
}

// UsualChange is the time of day at which clocks change where only the day is
// known. Zones differ (01:00, 02:00, 03:00); for work that stops overnight it is
// all one. A choice.
const UsualChange Clock = 2 * 60

// Instant is a moment on a clock that is never changed: drying goes by it. It
// agrees with the clock on the wall until the first change of the Zone.
type Instant int64

// Zone is the changes of the clocks about the time of the work, in order. The
// zero value is a clock that never changes.
type Zone struct{ changes []Change }

// ZoneFrom is a zone with the given changes, in any order.
func ZoneFrom(changes []Change) Zone {
	sorted := slices.Clone(changes)
	slices.SortStableFunc(sorted, func(a, b Change) int { return int(a.At - b.At) })
	return Zone{sorted}
}

// Instant is when the clock on the wall shows m. Of a moment that it shows
// twice, the first is meant; one that it skips is the instant at which it does.
func (z Zone) Instant(m Moment) Instant {
	on := Moment(0) // how far the clock has been put on
	for _, c := range z.changes {
		switch {
		case m < c.At:
			return Instant(m - on)
		case m < c.At+Moment(c.Minutes):
			return Instant(c.At - on)
		}
		on += Moment(c.Minutes)
	}
	return Instant(m - on)
}

// Moment is what the clock on the wall shows at an instant.
func (z Zone) Moment(i Instant) Moment {
	m := Moment(i)
	for _, c := range z.changes {
		if m < c.At {
			return m
		}
		m += Moment(c.Minutes)
	}
	return m
}
