package setting

import (
	"fmt"
	"testing"

	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/room"
	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

const mm = measure.Millimetre

// set is a mask set out: the room, the mask and the setting as given.
func set(t require.TestingT, inRoom, mask, setting string) (Setting, []problem.Problem) {
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"mm","metricMark":"1 mm"},"room":{` + inRoom + `},"mask":{` + mask + `},"setting":{` + setting + `}}`))
	require.True(t, doc.Usable)
	r, _ := room.Find(&doc.Plan)
	m, _ := layers.Take(&doc.Plan, func(string) bool { return false })
	return SetOut(&doc.Plan, &r, m.Layers)
}

const oneLayer = `,"layers":[{"id":"L1","name":"First","split":"count","columns":"3","rows":"2","gap":"4"}]`

// The borders that are summed up are those of the outline as it was placed, and the
// mark where the outline begins is that border; so each wall adds up.
func TestSetOut_SumsAreTheOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string, least, most int) int { return rapid.IntRange(least, most).Draw(t, name) }
		nanometres := length("length", 2_000_000, 6_000_000)
		room := fmt.Sprintf(`"form":"rectangle","length":"%d.%03d","width":"%d","height":"2500","fixture":{"at":"measured","fromDA":"%d","fromAB":"%d"}`,
			nanometres/1000, nanometres%1000, length("width", 2000, 5000), length("fromDA", 900, 1100), length("fromAB", 900, 1100))
		mask := fmt.Sprintf(`"length":"%d","width":"%d"`, length("long", 1000, 2000), length("wide", 1000, 2000)) + oneLayer
		setting := fmt.Sprintf(`"on":%q,"turned":%q`, rapid.SampledFrom([]string{"room", "fixture"}).Draw(t, "on"), rapid.SampledFrom([]string{"no", "yes"}).Draw(t, "turned"))
		s, _ := set(t, room, mask, setting)
		require.True(t, s.Upright)
		for _, e := range s.Edges {
			require.Equal(t, s.Placed, !s.Edges[0].NearBorder.IsNone() && !s.Edges[1].NearBorder.IsNone())
			if s.Placed {
				assert.Equal(t, s.Choice.Borders.At(e.Near), e.NearBorder.Value())
				assert.Equal(t, s.Choice.Borders.At(e.Far), e.FarBorder.Value())
			}
		}
		for _, w := range s.Walls {
			for _, m := range w.Marks {
				if !m.Sum.IsNone() {
					assert.InDelta(t, int64(m.At), int64(m.Sum.Value()), float64(2*measure.OnePlace), "%s %s on %s", m.Kind, m.Label, w.Wall)
				} else {
					assert.Equal(t, setout.FixtureMark, m.Kind, "only a light that was measured has no sum")
				}
			}
		}
	})
}

// 4 m × 3 m with 300 at the ends and 200 at the sides: 3400 × 2600; the largest with
// 250 all round is 3500 × 2500. Turned, the ends are where the mask is wide.
func TestSetOut_SizesToOrder(t *testing.T) {
	const room, wanted = `"form":"rectangle","length":"4000","width":"3000","height":"2500"`, `"wantEnds":"300","wantSides":"200","leastBorder":"250"`
	for turned, want := range map[string][4]measure.Length{
		"no":  {3400 * mm, 2600 * mm, 3500 * mm, 2500 * mm},
		"yes": {2600 * mm, 3400 * mm, 2500 * mm, 3500 * mm},
	} {
		s, _ := set(t, room, `"length":"2000","width":"1500"`+oneLayer, `"on":"room","turned":"`+turned+`",`+wanted)
		for i, list := range [][]SizedSide{s.Order, s.Largest} {
			long, _ := Sized(list, setout.LongSide)
			wide, ok := Sized(list, setout.WideSide)
			assert.True(t, ok)
			assert.Equal(t, want[2*i:2*i+2], []measure.Length{long, wide}, turned)
		}
	}
	s, _ := set(t, room, `"length":"2000","width":"1500"`+oneLayer, `"on":"room","wantEnds":"300"`)
	_, ok := Sized(s.Order, setout.WideSide)
	assert.False(t, ok, "not asked for")
	refused, wrong := set(t, room, `"length":"2000","width":"1500"`+oneLayer, `"on":"room","wantEnds":"2000"`)
	assert.Empty(t, refused.Order)
	require.Len(t, wrong, 1)
	assert.Equal(t, []any{"/setting/wantEnds", problem.Stop}, []any{wrong[0].At, wrong[0].Severity})
}

// In a room of 4000 by 3000 with a side that runs 100 in over its length the border
// widens along that wall, and every line is named once.
func TestSetOut_OutOfSquare(t *testing.T) {
	const room = `"form":"points","height":"2500","points":[{"x":"0","y":"0"},{"x":"4000","y":"0"},{"x":"4000","y":"3000"},{"x":"0","y":"2900"}]`
	s, _ := set(t, room, `"length":"2000","width":"1500"`+oneLayer, `"on":"room","square":"AB"`)
	require.True(t, s.Placed)
	assert.False(t, s.Upright)
	require.Len(t, s.Sides, 4)
	for _, side := range s.Sides {
		assert.Equal(t, s.Choice.Borders.At(side.Side), side.Least)
		assert.Equal(t, side.Side == survey.CD, !side.Widens.IsNone(), side.Side)
	}
	assert.InDelta(t, 2000*100/4001.2, s.Sides[2].Widens.Value().Millimetres(), 0.1, "the mask's share of the slope, square to the wall")
	struck := 0
	for _, w := range s.Walls {
		for _, m := range w.Marks {
			if m.Struck {
				struck++
			}
		}
	}
	assert.Equal(t, 4+2+2+1, struck, "four sides, two centre lines, two seams one way and one the other")
}
