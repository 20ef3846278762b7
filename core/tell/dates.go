package tell

import (
	"ceilingwright/core/days"
	"ceilingwright/core/words"
)

// A date with its year, and so many minutes, as the pages say
// them that put their sentences together.
func longDate(d days.Date) string      { return days.WithYear(d).In(words.Style{}) }
func minutesText(minutes int64) string { return days.Lasting(minutes).In(words.Style{}) }
