package days

import (
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLeafIsLaidLaterWhereThatIsSooner(t *testing.T) {
	// Derived: size of an hour, three hours to tack, four hours' leaf in a window of
	// nine, and four hours of other work, for one person. Leaf as soon as it can be
	// ends at 16:00, and the other work four hours after that; the other work first
	// ends at 12:00, and the leaf at 20:00. With the other work in between it is all
	// done at 17:00.
	hours := everyDay()
	hours.To = 22 * 60
	w := &Work{People: 1, Start: date(t, "2027-03-02"), Hours: hours, Tasks: []Task{
		{Name: words.Verbatim("size"), Labour: 60, Share: 1, Whole: true},
		{Name: words.Verbatim("leaf"), Labour: 240, Share: 1, Whole: true, After: []Link{{0, Tacks, 180, 0}}, Window: &Window{0, 180, 540, 0}},
		{Name: words.Verbatim("other work"), Labour: 240, Share: 1, Whole: true},
	}}
	s := scheduled(t, w)
	assert.True(t, s.Earliest)
	assert.Equal(t, []string{"2027-03-02T09:00", "2027-03-02T17:00", "2027-03-02T13:00"}, []string{s.to(0), s.to(1), s.to(2)})
	assert.Equal(t, Staffed, s.Placed[1].Because)
	assert.Equal(t, 2, s.Placed[1].After)
}

func TestShortestFirstIsNotAlwaysSoonest(t *testing.T) {
	// Derived: two people, a coat for both that dries for six hours before an hour
	// of glaze, and a wall for both of three hours. The coat first: 08:00–10:00, the
	// wall to 13:00, the glaze 16:00–17:00. The wall first: the glaze the next day.
	w := &Work{People: 2, Start: date(t, "2027-03-02"), Hours: everyDay(), Tasks: []Task{
		{Name: words.Verbatim("wall"), Labour: 360, Share: 2, Whole: true},
		{Name: words.Verbatim("coat"), Labour: 240, Share: 2, Whole: true},
		{Name: words.Verbatim("glaze"), Labour: 60, Share: 2, Whole: true, After: []Link{{1, Dries, 360, 0}}},
	}}
	s := scheduled(t, w)
	assert.True(t, s.Earliest)
	assert.Equal(t, "2027-03-02T16:30", s.to(2))
	assert.Equal(t, "2027-03-02T10:00", s.from(0))
}

func TestSearchThatRunsOutClaimsNothing(t *testing.T) {
	// Forty pieces for three people, none after another: too many orders.
	w := &Work{People: 3, Start: date(t, "2027-03-02"), Hours: workdays(30)}
	for i := range 40 {
		w.Tasks = append(w.Tasks, Task{Name: words.Verbatim("piece"), Labour: int64(40 + 37*i%150), Share: 1 + i%2, Whole: i%3 == 0})
	}
	s := scheduled(t, w)
	assert.False(t, s.Earliest)
	one, ok := scheduleWithin(w, 1)
	require.True(t, ok)
	isKept(t, &one)
	assert.LessOrEqual(t, s.Finish, one.Finish)
}

// Derived by counting on a calendar: nights on which the clocks change in Europe
// (last Sunday of March and of October, Directive 2000/84/EC) and in the United
// States (second Sunday of March, first of November, Energy Policy Act 2005), a
// leap day, the end of a year, and days off.
func TestWaitsOverOddNights(t *testing.T) {
	europe := ZoneFrom([]Change{{moment(t, "2027-03-28T02:00"), 60}, {moment(t, "2027-10-31T03:00"), -60}})
	states := ZoneFrom([]Change{{moment(t, "2027-03-14T02:00"), 60}, {moment(t, "2027-11-07T02:00"), -60}})
	for _, c := range []struct {
		why, start string
		zone       Zone
		wait       Link
		off, begun string
	}{
		{"16 h over a plain night", "2027-06-05", europe, Link{0, Dries, 16 * 60, 0}, "", "2027-06-06T08:30"},
		{"16 h over a spring night in Europe", "2027-03-27", europe, Link{0, Dries, 16 * 60, 0}, "", "2027-03-28T09:30"},
		{"16 h over an autumn night in Europe", "2027-10-30", europe, Link{0, Dries, 16 * 60, 0}, "", "2027-10-31T08:00"},
		{"17 h over an autumn night in Europe", "2027-10-30", europe, Link{0, Dries, 17 * 60, 0}, "", "2027-10-31T08:30"},
		{"16 h over a spring night in the States", "2027-03-13", states, Link{0, Dries, 16 * 60, 0}, "", "2027-03-14T09:30"},
		{"17 h over an autumn night in the States", "2027-11-06", states, Link{0, Dries, 17 * 60, 0}, "", "2027-11-07T08:30"},
		{"a day of age over a spring night", "2027-03-27", europe, Link{0, Ages, 0, 1}, "", "2027-03-28T16:30"},
		{"a day of age over an autumn night", "2027-10-30", europe, Link{0, Ages, 0, 1}, "", "2027-10-31T16:30"},
		{"a week of age to a leap day", "2028-02-22", Zone{}, Link{0, Ages, 0, 7}, "", "2028-02-29T16:30"},
		{"a fortnight of age over a leap day", "2028-02-22", Zone{}, Link{0, Ages, 0, 14}, "", "2028-03-07T16:30"},
		{"a fortnight of age in a common year", "2027-02-22", Zone{}, Link{0, Ages, 0, 14}, "", "2027-03-08T16:30"},
		{"2100 has no leap day", "2100-02-22", Zone{}, Link{0, Ages, 0, 7}, "", "2100-03-01T16:30"},
		{"30 days of age over the end of a year", "2026-12-15", Zone{}, Link{0, Ages, 0, 30}, "", "2027-01-14T16:30"},
		{"4 h that end on a day off", "2027-03-01", Zone{}, Link{0, Dries, 240, 0}, "2027-03-02", "2027-03-03T08:00"},
		{"a day of age that ends on a day off", "2027-03-01", Zone{}, Link{0, Ages, 0, 1}, "2027-03-02", "2027-03-03T08:00"},
	} {
		hours := everyDay()
		hours.To = 17 * 60 // so that what is due at 16:30 begins then
		if c.off != "" {
			hours.Off = []Date{date(t, c.off)}
		}
		s := scheduled(t, &Work{People: 1, Start: date(t, c.start), Hours: hours, Zone: c.zone, Tasks: []Task{
			{Name: words.Verbatim("coat"), Labour: 510, Share: 1, Whole: true},
			{Name: words.Verbatim("next"), Labour: 10, Share: 1, After: []Link{c.wait}},
		}})
		assert.Equal(t, c.start+"T16:30", s.to(0), c.why)
		assert.Equal(t, c.begun, s.from(1), c.why)
		assert.True(t, s.Earliest, c.why)
	}
}

func TestWorkToMidnight(t *testing.T) {
	hours := everyDay()
	hours.From, hours.To = 14*60, Day
	s := scheduled(t, &Work{People: 1, Start: date(t, "2027-12-31"), Hours: hours, Tasks: []Task{{Name: words.Verbatim("stage"), Labour: 660, Share: 1}}})
	parts := s.Parts(0)
	require.Len(t, parts, 2)
	assert.Equal(t, "2028-01-01T00:00", parts[0].To.String(), "midnight is the end of the day it ends")
	assert.Equal(t, [2]string{"2028-01-01T14:00", "2028-01-01T15:00"}, [2]string{parts[1].From.String(), parts[1].To.String()})
	working, waiting, off := s.Count()
	assert.Equal(t, [3]int{2, 0, 0}, [3]int{working, waiting, off})
}
