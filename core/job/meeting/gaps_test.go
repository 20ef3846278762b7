package meeting

import (
	"testing"

	"ceilingwright/core/hanging"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/setting"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/register"
	"ceilingwright/core/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const mm = measure.Millimetre

// met is how the layers of a mask of 3.6 by 2.4 m meet, in the order hung.
func met(layersOf, more string, h hung.Hanging) (Meeting, []problem.Problem) {
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"mm","metricMark":"1 mm"},"mask":{"length":"3600","width":"2400","layers":[` + layersOf + `]}` + more + `}`))
	m, _ := layers.Take(&doc.Plan, func(string) bool { return false })
	return Of(&doc.Plan, m.Layers, &setting.Setting{}, &h)
}

const threeByTwo = `{"id":"L1","name":"First","split":"count","columns":"3","rows":"2","gap":"4"`

// Three columns of 1197⅓ mm with 4 mm at two seams, hung from the middle one.
func TestOf_Gaps(t *testing.T) {
	m, wrong := met(threeByTwo+`,"gaps":[{"seam":"2│3","gap":"9"}]}`, `,"seams":{"cover":"seams","tapeWidth":"28"}`,
		hung.Hanging{Layers: []hung.Hung{{Order: []hanging.Hang{{Panel: mask.Panel{Column: 2, Row: 1}}}}}})
	met := &m.Layers[0]
	require.Len(t, met.Gaps, 3)
	first, second := met.Gaps[0], met.Gaps[1]
	assert.Equal(t, Gap{Seam: "1│2", Planned: 4 * mm, Set: 4 * mm, Edge: first.Edge, Wall: survey.DA, Offers: [5]measure.Length{2 * mm, 3 * mm, 4 * mm, 5 * mm, 6 * mm}}, first)
	assert.Equal(t, 3592*mm/3, first.Edge.ToMark(measure.Nanometre), "one column from the tape line")
	assert.Equal(t, []any{"2│3", 9 * mm, "/mask/layers/0/gaps/0/gap"}, []any{second.Seam, second.Set, second.At})
	require.Len(t, met.Landings, 1, "of the other side nothing is measured")
	side := met.Landings[0]
	assert.Equal(t, Landing{Wall: survey.BC, Past: 5 * mm, Panels: side.Panels, Gaps: 9 * mm, Room: side.Room}, side)
	assert.Equal(t, side.Past, side.Panels+side.Gaps-side.Room)
	assert.Equal(t, 9*mm, m.Widest)
	assert.Equal(t, "2│3", m.WidestAt)
	require.Len(t, wrong, 2)
	assert.Equal(t, []string{"/mask/layers/0/gaps/0/gap", "/seams/tapeWidth"}, []string{wrong[0].At, wrong[1].At}, "9.5 mm of hold on either side")
	assert.Equal(t, []problem.Severity{problem.Caution, problem.Caution}, []problem.Severity{wrong[0].Severity, wrong[1].Severity})
}

// A layer that is shifted by 3 mm towards BC, and has grown by 2 in a thousand.
func TestOf_Register(t *testing.T) {
	mark := func(x, y, gotX, gotY string) string {
		return `{"x":"` + x + `","y":"` + y + `","gotX":"` + gotX + `","gotY":"` + gotY + `"}`
	}
	m, _ := met(threeByTwo+`},`+threeByTwo+`,"register":{"marks":[`+
		mark("0", "0", "3", "0")+`,{"name":"Rose","x":"100","y":"100"},`+mark("3600", "0", "3610.2", "0")+`,`+mark("0", "2400", "3", "2400")+`,`+mark("3600", "2400", "3610.2", "2400")+`]}}`, "", hung.Hanging{})
	assert.Equal(t, register.NoFit, m.Layers[0].Register.Kind)
	assert.False(t, m.Layers[0].Register.Beneath)
	r := &m.Layers[1].Register
	assert.True(t, r.Beneath)
	assert.Equal(t, register.Rigid, r.Kind)
	assert.Equal(t, []int{0, 2, 3, 4}, r.Places)
	assert.Equal(t, []bool{false, true, false, false, false}, r.Waits)
	assert.Equal(t, []string{"mark 1", "Rose"}, []string{r.Mark(0).String(), r.Names[1].String()})
	require.Len(t, r.Stretches, 1, "its width is as designed")
	assert.True(t, r.Stretches[0].Along)
	assert.Equal(t, 72*mm/10, r.Stretches[0].Whole)
	assert.Zero(t, r.Stretches[0].Share.Cmp(measure.NumberFromFraction(2, 1000)))
	assert.Equal(t, register.Offset{X: 66 * mm / 10}, r.Lies(), "3 mm and half of what it has grown")
	assert.True(t, r.CornerKnown)
}

// Where the panels have been moved by a measured gap, the cards leave the gaps that are
// to be set: four columns of 898½ mm in 3600, hung from the first, with 6 mm for their
// three gaps. With 9 mm measured at the first seam the second ends 6 mm past the middle
// and the fourth 3 mm past the tape line, so that it is measured by its other edge.
func TestOf_CardsFollowTheGaps(t *testing.T) {
	order := make([]hanging.Hang, 4)
	for k := range order {
		order[k].Panel = mask.Panel{Column: k + 1, Row: 1}
		order[k].Block = hanging.Block{Column: k + 1, Row: 1, Columns: 1, Rows: 1}
	}
	planned := make([]hanging.Card, len(order))
	for _, row := range []struct {
		gaps           string
		second, fourth hanging.Offset
	}{
		{gaps: ``},
		{`,"gaps":[{"seam":"1│2","gap":"3"}]`,
			hanging.Offset{Edge: survey.DA, Line: hanging.ToCentreLine, Length: 1797 * mm / 2},
			hanging.Offset{Edge: survey.DA, Line: hanging.ToTapeLine, Side: survey.BC, Length: 1797 * mm / 2}},
		{`,"gaps":[{"seam":"1│2","gap":"9"}]`,
			hanging.Offset{Edge: survey.BC, Line: hanging.ToCentreLine, Length: 6 * mm},
			hanging.Offset{Edge: survey.DA, Line: hanging.ToTapeLine, Side: survey.BC, Length: 1791 * mm / 2}},
	} {
		m, _ := met(`{"id":"L1","name":"First","split":"count","columns":"4","rows":"1","gap":"2"`+row.gaps+`}`, "",
			hung.Hanging{Layers: []hung.Hung{{Order: order, Cards: planned}}})
		met := &m.Layers[0]
		require.Len(t, met.Cards, 4)
		assert.Equal(t, []hanging.Offset{row.second, row.fourth}, []hanging.Offset{met.Cards[1].Along, met.Cards[3].Along}, row.gaps)
		for i := range met.Gaps {
			assert.Equal(t, met.Gaps[i].Set, met.Columns.Starts[i+1]-met.Columns.Starts[i]-met.Columns.Sizes[i], "%s, seam %d", row.gaps, i+1)
		}
	}
}
