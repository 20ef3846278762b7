package days

import "strconv"

// Date is a day of the Gregorian calendar, counted from 1 January 1970. The
// zero value is that day.
type Date int32

// The dates that are read: no plan is older, and none looks further ahead.
const (
	earliestYear = 1970
	latestYear   = 2199
)

// Weekday is a day of the week, Monday 0 to Sunday 6 (ISO 8601 begins the week
// on Monday).
type Weekday int

// The days of the week.
const (
	Monday Weekday = iota
	Tuesday
	Wednesday
	Thursday
	Friday
	Saturday
	Sunday
)

// DateOf is a day of a month of a year. ok is false where there is no such
// day, or it lies outside the years 1970 to 2199.
func DateOf(year, month, day int) (d Date, ok bool) {
	if year < earliestYear || year > latestYear || month < 1 || month > 12 || day < 1 || day > daysIn(year, month) {
		return 0, false
	}
	return Date(count(year, month, day) - count(1970, 1, 1)), true
}

// ParseDate reads a date written as ISO 8601 has it, 2027-03-01. Nothing else
// is read: 1/3/2027 means two days to two people.
func ParseDate(text string) (Date, bool) {
	if len(text) != 10 || text[4] != '-' || text[7] != '-' {
		return 0, false
	}
	year, ok1 := digits(text[:4])
	month, ok2 := digits(text[5:7])
	day, ok3 := digits(text[8:])
	if !ok1 || !ok2 || !ok3 {
		return 0, false
	}
	return DateOf(year, month, day)
}

// digits reads digits and nothing else.
func digits(text string) (n int, ok bool) {
	for i := range len(text) {
		if text[i] < '0' || text[i] > '9' {
			return 0, false
		}
		n = 10*n + int(text[i]-'0')
	}
	return n, text != ""
}

func isLeap(year int) bool { return year%4 == 0 && (year%100 != 0 || year%400 == 0) }

func daysIn(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if isLeap(year) {
			return 29
		}
		return 28
	}
	return 31
}

// count is days since the first of March of the year 0. A year that begins in
// March has its leap day last, so that the months before it have the same
// lengths every year: 153 days for each five of them.
func count(year, month, day int) int {
	if month < 3 {
		year, month = year-1, month+12
	}
	return 365*year + year/4 - year/100 + year/400 + (153*(month-3)+2)/5 + day - 1
}

// Parts are the year, the month and the day of the month.
func (d Date) Parts() (year, month, day int) {
	n := int(d) + count(1970, 1, 1)
	year = n / 365 // not below the year, and never two above it
	for count(year, 3, 1) > n {
		year--
	}
	rest := n - count(year, 3, 1)
	month = (5*rest + 2) / 153
	day = rest - (153*month+2)/5 + 1
	if month += 3; month > 12 {
		year, month = year+1, month-12
	}
	return year, month, day
}

// Weekday is the day of the week; 1 January 1970 was a Thursday.
func (d Date) Weekday() Weekday { return Weekday(((int(d)+int(Thursday))%7 + 7) % 7) }

// String is the date as ParseDate reads it.
func (d Date) String() string {
	year, month, day := d.Parts()
	return padded(year, 4) + "-" + padded(month, 2) + "-" + padded(day, 2)
}

func padded(n, width int) string {
	text := strconv.Itoa(n)
	for len(text) < width {
		text = "0" + text
	}
	return text
}

// weekdayWords are the words of a plan for the days of the week.
var weekdayWords = [7]string{"mon", "tue", "wed", "thu", "fri", "sat", "sun"}

// ParseWeekday reads mon, tue, wed, thu, fri, sat or sun.
func ParseWeekday(text string) (Weekday, bool) {
	for i, word := range weekdayWords {
		if word == text {
			return Weekday(i), true
		}
	}
	return 0, false
}

// String is the word that ParseWeekday reads.
func (w Weekday) String() string { return weekdayWords[w] }
