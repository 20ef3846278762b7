package days

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Go's time package is held against the dates, which have to do without it.
func TestEveryDateAgreesWithGo(t *testing.T) {
	start := time.Date(1970, 1, 1, 0, 0, 0, 0, time.UTC)
	days := 0
	for at := start; at.Year() <= latestYear; at = at.AddDate(0, 0, 1) {
		d := Date(days)
		year, month, day := d.Parts()
		if year != at.Year() || month != int(at.Month()) || day != at.Day() {
			t.Fatalf("day %d is %v, got %d-%d-%d", days, at, year, month, day)
		}
		back, ok := DateOf(year, month, day)
		if !ok || back != d || d.Weekday() != Weekday((at.Weekday()+6)%7) {
			t.Fatalf("day %d, %v: got back %d, weekday %v", days, at, back, d.Weekday())
		}
		days++
	}
	assert.Equal(t, 84006, days)
	assert.Equal(t, "1970-01-01", Date(0).String())
}

func TestParseDate(t *testing.T) {
	for text, ok := range map[string]bool{
		"2027-03-01": true, "2028-02-29": true, "2027-02-29": false, "2100-02-29": false, "2000-02-29": true, "2027-13-01": false,
		"2027-00-10": false, "2027-04-31": false, "2027-4-30": false, "1/3/2027": false, "": false, "1969-12-31": false, "2200-01-01": false,
		"2027-03-0a": false, "２０２７-03-01": false, "-027-03-01": false,
	} {
		d, got := ParseDate(text)
		require.Equal(t, ok, got, text)
		if ok {
			assert.Equal(t, text, d.String())
		}
	}
}

func FuzzParseDate(f *testing.F) {
	f.Add("2027-03-01") // plain
	f.Add("2028-02-29") // a leap day
	f.Add("2027-02-30") // no day
	f.Add("9999-99-99") // no month
	f.Fuzz(func(t *testing.T, text string) {
		d, ok := ParseDate(text)
		_, err := time.Parse(time.DateOnly, text)
		if ok {
			require.NoError(t, err)
			require.Equal(t, text, d.String())
		}
		if m, ok := ParseMoment(text); ok {
			require.Equal(t, text[:10]+"T"+text[11:], m.String())
		}
		if c, ok := ParseClock(text); ok {
			require.Contains(t, []string{text, "0" + text}, c.String())
		}
	})
}

func TestParseClock(t *testing.T) {
	for text, want := range map[string]Clock{"08:00": 480, "8:00": 480, "16:30": 990, "00:00": 0, "24:00": 1440} {
		c, ok := ParseClock(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, c, text)
	}
	for _, text := range []string{"", "8", "24:01", "25:00", "08:60", "8.30", "08:0", "8:000", "+8:00", "ab:cd", "123:00"} {
		_, ok := ParseClock(text)
		assert.False(t, ok, text)
	}
}

func TestParseWeekday(t *testing.T) {
	for i := range 7 {
		w, ok := ParseWeekday(Weekday(i).String())
		assert.True(t, ok)
		assert.Equal(t, Weekday(i), w)
	}
	_, ok := ParseWeekday("Mon")
	assert.False(t, ok)
}

func date(t *testing.T, text string) Date {
	t.Helper()
	d, ok := ParseDate(text)
	require.True(t, ok, text)
	return d
}

func moment(t *testing.T, text string) Moment {
	t.Helper()
	m, ok := ParseMoment(text)
	require.True(t, ok, text)
	return m
}

// Clocks by Go's own copy of the zones, from noon to noon over every change of
// five years in zones with changes at one, two and three o'clock, and of half
// an hour.
func TestZonesAgreeWithGo(t *testing.T) {
	for _, name := range []string{"Europe/London", "Europe/Copenhagen", "America/New_York", "Australia/Lord_Howe", "Asia/Tokyo"} {
		place, err := time.LoadLocation(name)
		require.NoError(t, err)
		start := time.Date(2024, 1, 1, 12, 0, 0, 0, place)
		wall := func(at time.Time) Moment {
			d, ok := DateOf(at.Year(), int(at.Month()), at.Day())
			require.True(t, ok)
			return d.At(Clock(60*at.Hour() + at.Minute()))
		}
		offset := func(at time.Time) int64 { _, s := at.Zone(); return int64(s) / 60 }
		var changes []Change
		for at := start; at.Year() < 2029; at = at.Add(time.Minute * 30) {
			if by := offset(at.Add(30*time.Minute)) - offset(at); by != 0 {
				changes = append(changes, Change{wall(at) + 30, by})
			}
		}
		if name != "Asia/Tokyo" {
			require.GreaterOrEqual(t, len(changes), 10, name)
		}
		zone := ZoneFrom(changes)
		first := zone.Instant(wall(start))
		for at := start; at.Year() < 2029; at = at.Add(97 * time.Minute) {
			i := zone.Instant(wall(at))
			require.Equal(t, wall(at), zone.Moment(first+Instant(at.Sub(start)/time.Minute)), "%v", at)
			if zone.Moment(i-60) != zone.Moment(i) {
				elapsed := Instant(at.Sub(start) / time.Minute)
				// A time shown twice is taken for the first.
				require.True(t, i == first+elapsed || i < first+elapsed && zone.Moment(i) == wall(at), "%v", at)
			}
		}
	}
}

func TestClockChange(t *testing.T) {
	zone := ZoneFrom([]Change{{moment(t, "2027-10-31T02:00"), -60}, {moment(t, "2027-03-28T01:00"), 60}})
	evening, morning := zone.Instant(moment(t, "2027-03-27T20:00")), zone.Instant(moment(t, "2027-03-28T08:00"))
	assert.Equal(t, Instant(11*60), morning-evening, "a night of spring is an hour shorter")
	evening, morning = zone.Instant(moment(t, "2027-10-30T20:00")), zone.Instant(moment(t, "2027-10-31T08:00"))
	assert.Equal(t, Instant(13*60), morning-evening, "a night of autumn is an hour longer")
	assert.Equal(t, zone.Instant(moment(t, "2027-03-28T02:00")), zone.Instant(moment(t, "2027-03-28T01:30")), "what the clock skips is when it does")
}

func FuzzZone(f *testing.F) {
	f.Add(int64(1000), int64(60), int64(1030)) // skipped
	f.Add(int64(1000), int64(-60), int64(970)) // shown twice
	f.Add(int64(-5), int64(1440), int64(-3))   // a whole day, before 1970
	f.Fuzz(func(t *testing.T, at, by, m int64) {
		change := Change{Moment(at % 1e6), by % 1440}
		zone := ZoneFrom([]Change{change})
		wall := Moment(m % 1e7)
		if wall >= change.At && wall < change.At+Moment(change.Minutes) {
			require.Equal(t, zone.Instant(change.At), zone.Instant(wall), "what is skipped is when it is")
			return
		}
		require.Equal(t, wall, zone.Moment(zone.Instant(wall)))
	})
}
