package job

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/register"
	"ceilingwright/core/survey"
)

const mm = measure.Millimetre

// masked is the job of a plan of which nothing but the mask is worked out: 3.6 by
// 2.4 m, the layers and whatever else is given.
func masked(t *testing.T, layers, more string) *Job {
	t.Helper()
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"mm","metricMark":"1 mm"},"mask":{"length":"3600","width":"2400","layers":[` + layers + `]}` + more + `}`))
	require.True(t, doc.Usable)
	j := From(doc)
	j.Problems = nil
	j.TakeMask()
	return j
}

const threeByTwo = `{"id":"L1","name":"First","split":"count","columns":"3","rows":"2","gap":"4"`

func at(list []problem.Problem) (places []string) {
	for _, p := range list {
		places = append(places, string(p.Severity)+" "+p.At)
	}
	return places
}

func TestTakeMask_IDs(t *testing.T) {
	j := masked(t, threeByTwo+`},`+threeByTwo+`},{"id":"L1-2","split":"count","columns":"1","rows":"1"}`, "")
	require.Len(t, j.Layers, 3)
	assert.Equal(t, []string{"L1", "L1-2", "L1-2-3"}, []string{j.Layers[0].Panels.ID, j.Layers[1].Panels.ID, j.Layers[2].Panels.ID})
	assert.Equal(t, []string{"caution /mask/layers/1/id", "caution /mask/layers/2/id"}, at(j.Problems))
}

// A step that peels the mask asks for one; grain alone does not.
func TestTakeMask_Maskless(t *testing.T) {
	maskless := func(steps, mask string) *Job {
		j := From(plan.Read([]byte(`{"ceilingwright":1,"mask":{` + mask + `},"finish":{"steps":[` + steps + `]}}`)))
		j.Problems = nil
		j.TakeMask()
		return j
	}
	grain, peel := `{"id":"a","kind":"base","area":"surface"}`, `{"id":"b","kind":"peel"}`
	assert.True(t, maskless(grain, "").Maskless)
	assert.Equal(t, []string{"note /mask/length"}, at(maskless(grain, "").Problems))
	assert.False(t, maskless(grain+","+peel, "").Maskless)
	assert.False(t, maskless(grain, `"length":"3 m"`).Maskless)
	assert.False(t, maskless("", "").Maskless)
	assert.False(t, maskless(grain, `"layers":[{"id":"L1","split":"count","columns":"3"}]`).Maskless)
}

// All layers together may have 10 000 panels, and 2000 columns and rows.
func TestTakeMask_Limits(t *testing.T) {
	layer := func(columns, rows string) string {
		return `{"split":"count","columns":"` + columns + `","rows":"` + rows + `","gap":"0"}`
	}
	stops := func(layers string) (stops []string) {
		for _, p := range masked(t, layers, "").Problems {
			if p.Severity == problem.Stop {
				stops = append(stops, p.At)
			}
		}
		return stops
	}
	assert.Empty(t, stops(layer("100", "50")+","+layer("100", "50")))
	assert.Equal(t, []string{"/mask/layers/1"}, stops(layer("100", "50")+","+layer("100", "51")))
	assert.Empty(t, stops(layer("999", "1")+","+layer("999", "1")))
	assert.Equal(t, []string{"/mask/layers/1"}, stops(layer("999", "1")+","+layer("1000", "1")))
}

// 2400 and 3600 in pieces of at most 1300, lapping by 25.4: two cover 2574.6,
// three 3849.2. So 2 + 2 + 3 pieces with four laps, 101.6 mm, over 8.4 m; a roll of
// 5 m with a tenth for waste makes two.
func TestTakeMask_Tape(t *testing.T) {
	j := masked(t, threeByTwo+`}`, `,"seams":{"cover":"seams-and-outside","rollLength":"5 m","waste":"10","pieceLength":"1300"}`)
	l := &j.Layers[0]
	require.Len(t, l.Bridges, 3)
	assert.Equal(t, []int{2, 2, 3}, []int{l.Bridges[0].Pieces, l.Bridges[1].Pieces, l.Bridges[2].Pieces})
	assert.Equal(t, 4*mask.JoinLap, l.Laps)
	assert.Equal(t, 8400*mm+12_000*mm+l.Laps, l.Tape)
	j.BuyTape()
	assert.Equal(t, []measure.Length{8400 * mm, 12_000 * mm, l.Laps, l.Tape}, []measure.Length{j.Tape.Seams, j.Tape.Outside, j.Tape.Laps, j.Tape.Length})
	assert.True(t, j.Tape.Known)
	assert.Equal(t, int64(5), j.Tape.Rolls.Count, "20.5 m and a tenth, 22.55 m")
	assert.Empty(t, j.Problems)

	j = masked(t, threeByTwo+`}`, "")
	j.BuyTape()
	assert.False(t, j.Tape.Known)
	assert.Equal(t, []string{"stop /seams/rollLength"}, at(j.Problems))
}

func TestLies(t *testing.T) {
	j := masked(t, `{"id":"L1","split":"sizes","columnSizes":["1200","1200","1188"],"rowSizes":["1200","1200"],"gap":"2",
		"pieces":[{"name":"Rose","kind":"span","cells":"A1 A2"},{"name":"Star","kind":"joined","cells":"B1 B2"}]}`, "")
	l := &j.Layers[0]
	require.Len(t, l.Panels.Pieces, 2)
	// 3588 and two gaps of 2 leave 8: each of the two seams that can give opens by
	// 4, to 6, and the span's place by the same.
	assert.Equal(t, Lying{Length: 2402 * mm, Width: 1200 * mm, SpareLength: 4 * mm}, l.Lies(l.Panels.Pieces[0]))
	assert.Equal(t, Lying{Length: 2406 * mm, Width: 1200 * mm, Floor: []FloorGap{{"1│2", 6 * mm}}}, l.Lies(l.Panels.Pieces[1]))
}

// Three columns of 1197⅓ mm with 4 mm at two seams, hung from the middle one. The
// stage needs nothing but the layers, where the mask goes and what is hung first.
func TestMeetLayers_Gaps(t *testing.T) {
	j := masked(t, threeByTwo+`,"gaps":[{"seam":"2│3","gap":"9"}]}`, `,"seams":{"cover":"seams","tapeWidth":"28"}`)
	j.Hanging.Layers = []Hung{{Order: []hanging.Hang{{Panel: mask.Panel{Column: 2, Row: 1}}}}}
	j.MeetLayers()
	met := &j.Meeting.Layers[0]
	require.Len(t, met.Gaps, 3)
	first, second := met.Gaps[0], met.Gaps[1]
	assert.Equal(t, Gap{Seam: "1│2", Planned: 4 * mm, Set: 4 * mm, Edge: first.Edge, Wall: survey.DA, Offers: [5]measure.Length{2 * mm, 3 * mm, 4 * mm, 5 * mm, 6 * mm}}, first)
	assert.Equal(t, 3592*mm/3, first.Edge.ToMark(measure.Nanometre), "one column from the tape line")
	assert.Equal(t, []any{"2│3", 9 * mm, "/mask/layers/0/gaps/0/gap"}, []any{second.Seam, second.Set, second.At})
	require.Len(t, met.Landings, 1, "of the other side nothing is measured")
	side := met.Landings[0]
	assert.Equal(t, Landing{Wall: survey.BC, Past: 5 * mm, Panels: side.Panels, Gaps: 9 * mm, Room: side.Room}, side)
	assert.Equal(t, side.Past, side.Panels+side.Gaps-side.Room)
	assert.Equal(t, 9*mm, j.Meeting.Widest)
	assert.Equal(t, "2│3", j.Meeting.WidestAt)
	assert.Equal(t, []string{"caution /mask/layers/0/gaps/0/gap", "caution /seams/tapeWidth"}, at(j.Problems), "9.5 mm of hold on either side")
}

// A layer that is shifted by 3 mm towards BC, and has grown by 2 in a thousand.
func TestMeetLayers_Register(t *testing.T) {
	mark := func(x, y, gotX, gotY string) string {
		return `{"x":"` + x + `","y":"` + y + `","gotX":"` + gotX + `","gotY":"` + gotY + `"}`
	}
	j := masked(t, threeByTwo+`},`+threeByTwo+`,"register":{"marks":[`+
		mark("0", "0", "3", "0")+`,{"name":"Rose","x":"100","y":"100"},`+mark("3600", "0", "3610.2", "0")+`,`+mark("0", "2400", "3", "2400")+`,`+mark("3600", "2400", "3610.2", "2400")+`]}}`, "")
	j.MeetLayers()
	assert.Equal(t, register.NoFit, j.Meeting.Layers[0].Register.Kind)
	assert.False(t, j.Meeting.Layers[0].Register.Beneath)
	r := &j.Meeting.Layers[1].Register
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
