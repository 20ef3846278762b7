package steps

import (
	"fmt"
	"strings"
	"testing"

	"ceilingwright/core/job/hours"

	"ceilingwright/core/job/surface"

	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/room"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/days"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
)

// gilded is a ceiling so many millimetres long and 4 m wide, with leaf all
// over it: one gilder lays 2 m² an hour, two are at it, on a size that takes leaf 3 h after
// it is laid, for 4 h, a fifth kept back; it goes past the lines by so much.
func gilded(t *testing.T, length int, beyond, more string) *work {
	t.Helper()
	return dividing(t, fmt.Sprintf(`"room":{"form":"rectangle","length":"%d","width":"4000"},"finish":{"steps":[
		{"id":"size","kind":"size","name":"Size","area":"surface","coats":"1","tackHours":"3","openHours":"4","gilders":"2","reserve":"20","sizeBeyond":%q,"rate":"10","rateUnit":"m2/h"},
		{"id":"gold","kind":"leaf","name":"Gold","area":"surface","rate":"2","rateUnit":"m2/h","leaf":{"metal":"gold","length":"80 mm","width":"80 mm","lap":"3 mm","cover":"100","waste":"20","perBook":"25","lay":"field"}}]}%s`, length, beyond, more))
}

// dividing is what is found of the steps of a plan, on a surface of which no more is given
// than the room and the layers.
func dividing(t *testing.T, parts string) *work {
	t.Helper()
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"mm","metricMark":"1 mm"},` + parts + `}`))
	require.True(t, doc.Usable)
	s := &surface.Surface{}
	s.Room, _ = room.Find(&doc.Plan)
	s.Mask, _ = layers.Take(&doc.Plan, func(string) bool { return false })
	h, _ := hours.Read(&doc.Plan.Days)
	return divided(&doc.Plan, s, h)
}

// saidAt is what is wrong at a blank.
func (w *work) saidAt(at string) string {
	var said []string
	for _, p := range w.List {
		if strings.HasSuffix(p.At, at) {
			said = append(said, p.What.String())
		}
	}
	return strings.Join(said, " ")
}

// Worked: 2 × 2 m² × 4 h × 0.8 are 12.8 m², 3.2 m of the ceiling.
func TestGild_AsFewAsFit(t *testing.T) {
	for _, c := range []struct {
		length, sections int
		stops            measure.Length
	}{{3200, 1, 0}, {3201, 2, 3201 * measure.Millimetre}, {6400, 2, 4 * measure.Metre}, {6401, 3, 8 * measure.Metre}} {
		j := gilded(t, c.length, "100 mm", "")
		require.Len(t, j.Gilding, 1, c.length)
		g := &j.Gilding[0]
		assert.True(t, g.Divided)
		assert.Len(t, g.Sections, c.sections, c.length)
		assert.Equal(t, c.stops, g.Stops, c.length)
		beyond, stops := j.sizedTwice(g.Size)
		assert.Equal(t, c.stops, stops)
		assert.Equal(t, measure.AreaOf(c.stops, 100*measure.Millimetre), beyond)
	}
	g := &gilded(t, 6400, "100 mm", "").Gilding[0]
	assert.Equal(t, 3200*measure.Millimetre, g.StopAt(0), "the lines run across the longer side")
	assert.Equal(t, int64(2), g.WholeNeeds())
}

// A ceiling of 6.4 × 4 m has one line of 4 m. Size that goes 3.2 m past it is laid twice
// on half of the ceiling.
func TestSizedTwice_Remarks(t *testing.T) {
	for beyond, want := range map[string]string{
		"79 mm":   "The size goes 79 mm past the line, less than a leaf of 80 mm.",
		"80 mm":   "",
		"3200 mm": "",
		"3201 mm": "Past the lines 12.80 m² are sized twice, more than half of the 25.60 m² in all.",
	} {
		j := gilded(t, 6400, beyond, "")
		j.sizedTwice(0)
		assert.Equal(t, want, j.saidAt("/sizeBeyond"), beyond)
	}
}

// Nothing is divided of which the area one gilder lays is not known, unless days are
// asked for; then the usual one counts.
func TestGild_AsksForARate(t *testing.T) {
	const step = `"room":{"form":"rectangle","length":"6000","width":"4000"},"finish":{"steps":[{"id":"size","kind":"size","name":"Size","area":"surface"},{"id":"gold","kind":"leaf","name":"Gold","area":"surface","leaf":{"metal":"gold"}}]}`
	assert.Nil(t, dividing(t, step).giltOn(1))
	asked := dividing(t, step+`,"days":{"start":"2027-03-01"}`)
	require.NotNil(t, asked.giltOn(1))
	assert.Equal(t, days.UsualRate("leaf", "gold"), asked.giltOn(1).Rate)
	assert.True(t, asked.giltOn(1).UntilDust)
}

// giltOn is the gilding of a leaf step, nil where it is not divided.
func (w *work) giltOn(leaf int) *Gilt {
	for i := range w.Gilding {
		if g := &w.Gilding[i]; g.Leaf == leaf && g.Divided {
			return g
		}
	}
	return nil
}
