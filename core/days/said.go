package days

import (
	"strconv"

	"ceilingwright/core/words"
)

// The words for dates.
var (
	dayNames   = [7]string{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"}
	monthNames = [12]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}
)

// In is the date as Mon 1 Mar.
func (d Date) In(words.Style) string {
	_, month, day := d.Parts()
	return dayNames[d.Weekday()] + " " + strconv.Itoa(day) + " " + monthNames[month-1]
}

// WithYear is a date said as Mon 1 Mar 2027.
type WithYear Date

// In is the date with its year.
func (d WithYear) In(style words.Style) string {
	year, _, _ := Date(d).Parts()
	return Date(d).In(style) + " " + strconv.Itoa(year)
}

// In is the moment as Mon 1 Mar at 08:00.
func (m Moment) In(style words.Style) string { return m.Date().In(style) + " at " + m.Clock().String() }

// Lasting is a time of so many minutes, said in hours and minutes.
type Lasting int64

// In is the time as 2 h 15 min.
func (l Lasting) In(words.Style) string {
	hours, minutes := strconv.FormatInt(int64(l)/60, 10)+" h", strconv.FormatInt(int64(l)%60, 10)+" min"
	switch {
	case l < 60:
		return minutes
	case l%60 == 0:
		return hours
	}
	return hours + " " + minutes
}
