package schedule

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/room"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/job/surface"
	"ceilingwright/core/plan"
)

// coated is one coat on the whole ceiling and nothing else, 10 h of one person's
// work, begun on a Friday, worked from 08:00 to an hour.
func coated(t *testing.T, to, more string) done {
	t.Helper()
	return worked(t, `"room":{"form":"rectangle","length":"5000","width":"4000"},
		"finish":{"steps":[{"id":"coat","kind":"coat","name":"Coat","area":"surface","coats":"1","rate":"2","rateUnit":"m2/h","dryHours":"4"}]},
		"days":{"start":"2027-03-05","from":"08:00","to":"`+to+`","rates":{"protect":"0","survey":"0","touchUp":"0","clear":"0"}`+more+`}`)
}

// Worked: of 600 min 510 are done by 16:30 on Friday; a coat that is longer than a day
// goes on, here on Monday. Two do it in 5 h.
func TestTryOtherwise(t *testing.T) {
	j := coated(t, "16:30", "")
	require.True(t, j.Days.Dated)
	last := j.Days.LastDay()
	assert.Equal(t, "2027-03-08", last.String())
	saves := map[Otherwise]Saved{}
	for _, s := range j.Saves {
		saves[s.By] = s
	}
	require.Len(t, saves, 3)
	assert.Equal(t, Saved{By: OneMore, Then: (last - 3).At(13 * 60), Days: 3}, saves[OneMore])
	assert.Equal(t, Saved{By: OneHourMore, Then: last.At(8*60 + 30), Minutes: 60}, saves[OneHourMore])
	assert.Equal(t, Saved{By: Saturdays, Then: (last - 2).At(9*60 + 30), Days: 2}, saves[Saturdays])
}

// Twenty minutes past the day's hours are worked where that ends the coat, and no more.
func TestOf_RunsOver(t *testing.T) {
	over := coated(t, "17:40", "")
	require.Len(t, over.Days.Rows, 1)
	_, runs := over.Days.RunsOver(0)
	assert.True(t, runs)
	assert.Len(t, coated(t, "17:39", "").Days.Rows, 2)
}

// The labour to pay is there where only a price asks for it, without days.
func TestOf_ForAPrice(t *testing.T) {
	j := worked(t, `"room":{"form":"rectangle","length":"5000","width":"4000"},"price":{"hourly":"40"},
		"finish":{"steps":[{"id":"coat","kind":"coat","name":"Coat","area":"surface","coats":"2","rate":"2","rateUnit":"m2/h"}]}`)
	assert.False(t, j.Days.Dated)
	assert.Empty(t, j.Saves)
	i := 0
	for i < len(j.Days.Labour) && j.Days.Labour[i].Step != 0 {
		i++
	}
	require.Less(t, i, len(j.Days.Labour))
	assert.Equal(t, int64(1200), j.Days.Labour[i].Minutes)
	assert.Equal(t, []Share{{Tasks: 2, Crew: 1, Minutes: 600}}, j.Days.Labour[i].Shares)
}

// done is the work of a plan, and what would save days of it.
type done struct {
	Days  Days
	Saves []Saved
}

func worked(t *testing.T, parts string) (d done) {
	t.Helper()
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"mm","metricMark":"1 mm"},` + parts + `}`))
	require.True(t, doc.Usable)
	p, s := &doc.Plan, &surface.Surface{}
	s.Room, _ = room.Find(p)
	s.Mask, _ = layers.Take(p, func(string) bool { return false })
	f, _ := steps.WorkOut(p, s)
	d.Days, _ = Of(p, s, &f)
	d.Saves = TryOtherwise(p, s, &f, &d.Days)
	return d
}
