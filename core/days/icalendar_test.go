package days

import (
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/emersion/go-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const stamp = "20270102T030405Z"

// read gives a calendar to another library.
func read(t *testing.T, text string) []ical.Event {
	t.Helper()
	calendar, err := ical.NewDecoder(strings.NewReader(text)).Decode()
	require.NoError(t, err, text)
	version, err := calendar.Props.Text(ical.PropVersion)
	require.NoError(t, err)
	require.Equal(t, "2.0", version)
	// What it writes of what it read it has checked against the standard: one
	// DTSTAMP and one UID in each event.
	require.NoError(t, ical.NewEncoder(&strings.Builder{}).Encode(calendar))
	return calendar.Events()
}

func property(t *testing.T, e ical.Event, name string) string {
	t.Helper()
	text, err := e.Props.Text(name)
	require.NoError(t, err)
	return text
}

func TestAllDayEndsAreNotCountedIn(t *testing.T) {
	// Faults reported of two calendar programs: the end of an entry for whole days
	// is exclusive. One day, 29 December 2026, and three.
	text, ok := ICalendar("job", "", stamp, []Entry{
		{ID: "one", From: moment(t, "2026-12-29T09:30"), To: moment(t, "2026-12-29T16:00"), AllDay: true, Note: true},
		{ID: "three", From: moment(t, "2026-12-29T00:00"), To: moment(t, "2026-12-31T12:00"), AllDay: true},
	})
	require.True(t, ok)
	assert.Contains(t, text, "DTSTART;VALUE=DATE:20261229\r\nDTEND;VALUE=DATE:20261230\r\n")
	assert.Contains(t, text, "DTSTART;VALUE=DATE:20261229\r\nDTEND;VALUE=DATE:20270101\r\n")
	assert.Equal(t, 1, strings.Count(text, "TRANSP:TRANSPARENT\r\n"))
	for _, e := range read(t, text) {
		start, err := e.DateTimeStart(time.UTC)
		require.NoError(t, err)
		assert.Equal(t, time.Date(2026, 12, 29, 0, 0, 0, 0, time.UTC), start)
	}
}

func TestEventsAreReadBack(t *testing.T) {
	name := "Goldfläche, Nord; „Ränder“ " + strings.Repeat("ü", 60)
	why := "First line\nsecond \\ line, with a bell \a"
	text, ok := ICalendar("job/1", "Küche; oben", stamp, []Entry{{ID: "step.leaf.s1", Name: name, Text: why, From: moment(t, "2027-03-28T08:00"), To: moment(t, "2027-03-28T11:45")}})
	require.True(t, ok)
	events := read(t, text)
	require.Len(t, events, 1)
	assert.Equal(t, name, property(t, events[0], ical.PropSummary))
	assert.Equal(t, strings.ReplaceAll(why, "\a", ""), property(t, events[0], ical.PropDescription))
	start, err := events[0].DateTimeStart(time.UTC)
	require.NoError(t, err)
	end, err := events[0].DateTimeEnd(time.UTC)
	require.NoError(t, err)
	assert.Equal(t, [2]time.Time{time.Date(2027, 3, 28, 8, 0, 0, 0, time.UTC), time.Date(2027, 3, 28, 11, 45, 0, 0, time.UTC)}, [2]time.Time{start, end})
	assert.Contains(t, text, "DTSTART:20270328T080000\r\n", "floating: the clock on the wall")
	assert.NotContains(t, text, "METHOD:", "no message to others: RFC 5546 wants an organizer of one")
	isFolded(t, text)
}

// isFolded asserts RFC 5545, 3.1: lines of at most 75 octets, ended by CRLF, no
// character torn.
func isFolded(t *testing.T, text string) {
	t.Helper()
	require.True(t, strings.HasSuffix(text, "\r\n"))
	for _, line := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		require.LessOrEqual(t, len(line), 75)
		require.True(t, utf8.ValidString(line), "%q", line)
		require.NotContains(t, line, "\n")
		require.NotContains(t, line, "\r")
	}
}

func TestEventsOfTwoJobsNeverMeet(t *testing.T) {
	// A fault reported of three programs: ids made anew each time made doubles, and
	// ids 0, 1, 2 made one job wipe out another.
	one := []Entry{{ID: "protect", Name: "Protect", From: moment(t, "2027-03-01T08:00"), To: moment(t, "2027-03-01T09:00")}}
	uid := func(plan, id, at string) (string, string) {
		one[0].ID = id
		text, ok := ICalendar(plan, "", at, one)
		require.True(t, ok)
		e := read(t, text)[0]
		return property(t, e, ical.PropUID), e.Props.Get(ical.PropSequence).Value
	}
	a1, s1 := uid("A", "protect", "20270101T080000Z")
	a2, s2 := uid("A", "protect", "20270101T080100Z")
	b, _ := uid("B", "protect", "20270101T080000Z")
	assert.Equal(t, a1, a2, "the same again replaces itself")
	assert.Equal(t, [2]string{"3682560", "3682561"}, [2]string{s1, s2}, "minutes since 2020: 2557 days × 1440 + 480")
	assert.NotEqual(t, a1, b)
	left, _ := uid("a-b", "c", stamp)
	right, _ := uid("a", "b-c", stamp)
	assert.NotEqual(t, left, right)
}

func TestNoCalendarWithoutAMoment(t *testing.T) {
	one := []Entry{{ID: "protect"}}
	for _, stamp := range []string{"", "now", "20270101", "20270101T240000Z", "20270101T080060Z", "20270132T080000Z", "20270101T080000", "20270101T080000+"} {
		_, ok := ICalendar("a", "", stamp, one)
		assert.False(t, ok, stamp)
	}
	_, ok := ICalendar("a", "", stamp, nil)
	assert.False(t, ok, "the standard has no calendar without an entry")
}

func FuzzICalendar(f *testing.F) {
	f.Add("plan", "title", "id", "name", "text")
	f.Add("", "a\r\nEND:VCALENDAR", "\x00", "ü;,\\\n", "\xff\xfe") // what would end the calendar early
	f.Add("🎨", "🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨🎨", "a b", "", "\u2028")
	f.Fuzz(func(t *testing.T, plan, title, id, name, text string) {
		got, ok := ICalendar(plan, title, stamp, []Entry{{ID: id, Name: name, Text: text, From: 28000000, To: 28000060}})
		require.True(t, ok)
		isFolded(t, got)
		require.Len(t, read(t, got), 1)
	})
}
