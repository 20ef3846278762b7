package days

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// dayNames and monthNames are how days and months are called in a date.
var (
	dayNames   = [7]words.Text{words.Say("Mon"), words.Say("Tue"), words.Say("Wed"), words.Say("Thu"), words.Say("Fri"), words.Say("Sat"), words.Say("Sun")}
	monthNames = [12]words.Text{words.Say("Jan"), words.Say("Feb"), words.Say("Mar"), words.Say("Apr"), words.Say("May"), words.Say("Jun"),
		words.Say("Jul"), words.Say("Aug"), words.Say("Sep"), words.Say("Oct"), words.Say("Nov"), words.Say("Dec")}
)

// In is the date without its year, "Mon 1 Mar".
func (d Date) In(style words.Style) string {
	_, month, day := d.Parts()
	return style.Say("{weekday} {day} {month}", words.Of("weekday", dayNames[d.Weekday()]), words.Count("day", day), words.Of("month", monthNames[month-1]))
}

// WithYear is a date said with its year, "Mon 1 Mar 2027".
type WithYear Date

// In is the date with its year.
func (d WithYear) In(style words.Style) string {
	year, _, _ := Date(d).Parts()
	return style.Say("{date} {year}", words.Of("date", Date(d)), words.Name("year", words.Digits(int64(year))))
}

// Basic is a date as ISO 8601 has it without hyphens, 20270301: a number.
func (d Date) Basic() string {
	text := d.String()
	return text[:4] + text[5:7] + text[8:]
}

// In is the time of day, 08:00.
func (c Clock) In(words.Style) string { return c.String() }

// In is the date and the time, "Mon 1 Mar at 08:00".
func (m Moment) In(style words.Style) string {
	return style.Say("{date} at {time}", words.Of("date", m.Date()), words.Of("time", m.Clock()))
}

// WithYear is a moment with its year, "Mon 1 Mar 2027 at 08:00".
func (m Moment) WithYear() words.Text {
	return words.Say("{date} at {time}", words.Of("date", WithYear(m.Date())), words.Of("time", m.Clock()))
}

// When is a moment as it is told on a day: its time alone where it is of that day,
// else with its date, "08:00 on Mon 1 Mar".
func (m Moment) When(day Date) words.Value {
	if m.Date() == day {
		return m.Clock()
	}
	return words.Say("{time} on {date}", words.Of("time", m.Clock()), words.Of("date", m.Date()))
}

// Ends is the end of something on a day: as When has it, but 24:00 rather than the
// 00:00 of the next day.
func (m Moment) Ends(day Date) words.Value {
	if m == (day + 1).At(0) {
		return Clock(Day)
	}
	return m.When(day)
}

// Lasting is a time of so many minutes, said as "2 h", "2 h 30 min" or "45 min".
type Lasting int64

// In is the time.
func (m Lasting) In(style words.Style) string {
	hours, minutes := words.Name("hours", words.Digits(int64(m)/60)), words.Name("minutes", words.Digits(int64(m)%60))
	switch {
	case m/60 == 0:
		return style.Say("{minutes} min", minutes)
	case m%60 == 0:
		return style.Say("{hours} h", hours)
	}
	return style.Say("{hours} h {minutes} min", hours, minutes)
}

// InHours is a time in hours, said to the minute.
type InHours measure.Number

// In is the time.
func (h InHours) In(style words.Style) string {
	n := measure.Number(h)
	minutes, ok := n.Mul(measure.NumberFromInt(60)).Add(measure.NumberFromFraction(1, 2)).Floor()
	if !ok {
		return style.Say("{hours} h", words.Number("hours", n, 0))
	}
	return Lasting(minutes).In(style)
}

// PerHour is the area that is done in an hour, in the unit of the notation.
type PerHour measure.Area

// In is the rate.
func (r PerHour) In(style words.Style) string {
	area := measure.Area(r)
	if style.Notation.System == measure.Metric {
		return style.Say("{area} m²/h", words.Trimmed("area", area.SquareMetres, 2))
	}
	return style.Say("{area} ft²/h", words.Trimmed("area", area.SquareFeet(), 1))
}
