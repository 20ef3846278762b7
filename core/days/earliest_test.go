package days

import (
	"testing"

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
		{Name: "size", Labour: 60, Share: 1, Whole: true},
		{Name: "leaf", Labour: 240, Share: 1, Whole: true, After: []Link{{0, Tacks, 180, 0}}, Window: &Window{0, 180, 540, 0}},
		{Name: "other work", Labour: 240, Share: 1, Whole: true},
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
		{Name: "wall", Labour: 360, Share: 2, Whole: true},
		{Name: "coat", Labour: 240, Share: 2, Whole: true},
		{Name: "glaze", Labour: 60, Share: 2, Whole: true, After: []Link{{1, Dries, 360, 0}}},
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
		w.Tasks = append(w.Tasks, Task{Name: "piece", Labour: int64(40 + 37*i%150), Share: 1 + i%2, Whole: i%3 == 0})
	}
	s := scheduled(t, w)
	assert.False(t, s.Earliest)
	one, ok := scheduleWithin(w, 1)
	require.True(t, ok)
	isKept(t, &one)
	assert.LessOrEqual(t, s.Finish, one.Finish)
}
