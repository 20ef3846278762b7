package days

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestMostLaidInWorkingHours(t *testing.T) {
	day := func(from, to, pause int) Hours {
		h := everyDay()
		h.From, h.To, h.Pause = Clock(from*60), Clock(to*60), int64(pause)
		return h
	}
	for name, c := range map[string]struct {
		hours              Hours
		sizing, tack, open int64
		want               int64
	}{
		// Sized by 18:00, slow size opens at 06:00 and closes at 16:00: worked from 08:00.
		"a night's tack":          {day(8, 18, 0), 30, 720, 600, 480},
		"the early end of it":     {day(6, 18, 0), 30, 720, 600, 600},
		"closes before the day":   {day(8, 18, 0), 30, 720, 90, 0},
		"mixed size":              {day(8, 18, 0), 20, 180, 180, 180},
		"from the morning on":     {day(8, 16, 0), 60, 180, 480, 240},
		"two days of it":          {day(8, 16, 0), 0, 15, 1440, 480},
		"the pause is no work":    {day(8, 16, 30), 20, 180, 180, 180},
		"a pause in every window": {day(8, 16, 60), 20, 180, 480, 220},
	} {
		assert.Equal(t, c.want, c.hours.MostLaid(c.sizing, c.tack, c.open), name)
	}
	weekdays := workdays(0)
	assert.Equal(t, int64(510), weekdays.MostLaid(30, 64*60, Day), "over a week's end too")
	assert.Equal(t, int64(8*Day), weekdays.MostLaid(30, 60, 8*Day), "past a week nothing is held against it")
}

// Every minute of a week tried as the end of the sizing.
func TestMostLaidAgainstEveryMinute(t *testing.T) {
	seed := uint32(7)
	next := func(n int) int { seed = seed*1664525 + 1013904223; return int(seed>>16) % n }
	for range 120 {
		h := Hours{From: Clock(60 * (6 + next(4))), To: Clock(60 * (13 + next(8))), Pause: int64(15 * next(4)), Weekdays: [7]bool{true, true, next(2) > 0, true, true, next(2) > 0}}
		sizing, tack, open := int64(5*next(12)), int64(30*next(50)), int64(30*(1+next(40)))
		monday := Date(4)
		s := shifts{hours: &h, start: monday}
		for s.next < 22 {
			s.at(len(s.list))
		}
		worked := make([]bool, 22*Day)
		for _, one := range s.list {
			for m := one.from; m < one.to && int(m-Instant(monday.At(0))) < len(worked); m++ {
				worked[m-Instant(monday.At(0))] = true
			}
		}
		best := int64(0)
		for end := sizing; end < week; end++ {
			free := true
			for m := end - sizing; m < end && free; m++ {
				free = worked[m]
			}
			if !free || !worked[max(0, end-1)] && !worked[end] {
				continue
			}
			sum := int64(0)
			for m := end + tack; m < end+tack+open; m++ {
				if worked[m] {
					sum++
				}
			}
			best = max(best, sum)
		}
		require.Equal(t, best, h.MostLaid(sizing, tack, open), "%+v %d %d %d", h, sizing, tack, open)
	}
}

func TestHoursThatWouldDo(t *testing.T) {
	// An hour of leaf on size ready after 12 h and open for 2: sized by 16:30 it
	// takes leaf from 04:30 to 06:30.
	h := workdays(0)
	fits := func(h *Hours) bool { return h.MostLaid(20, 720, 120) >= 60 }
	at, ok := h.LatestBegin(fits)
	assert.True(t, ok)
	assert.Equal(t, "05:30", at.String())
	at, ok = h.EarliestEnd(fits)
	assert.True(t, ok)
	assert.Equal(t, "19:00", at.String(), "sized by then it takes leaf from 07:00 to 09:00")
	_, ok = h.LatestBegin(func(*Hours) bool { return false })
	assert.False(t, ok)
}
