package layers

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

const mm = measure.Millimetre

// taken is the mask of a plan, and what is wrong with it.
type taken struct {
	plan.Plan
	Mask
	Problems []problem.Problem
}

func taking(text string) *taken {
	doc := plan.Read([]byte(text))
	t := &taken{Plan: doc.Plan}
	t.Mask, t.Problems = Take(&t.Plan, func(string) bool { return false })
	return t
}

// masked is a mask of 3.6 by 2.4 m, the layers and whatever else is given.
func masked(layers, more string) *taken {
	return taking(`{"ceilingwright":1,"units":{"show":"metric","bare":"mm","metricMark":"1 mm"},"mask":{"length":"3600","width":"2400","layers":[` + layers + `]}` + more + `}`)
}

const threeByTwo = `{"id":"L1","name":"First","split":"count","columns":"3","rows":"2","gap":"4"`

func at(list []problem.Problem) (places []string) {
	for _, p := range list {
		places = append(places, string(p.Severity)+" "+p.At)
	}
	return places
}

func TestTake_IDs(t *testing.T) {
	j := masked(threeByTwo+`},`+threeByTwo+`},{"id":"L1-2","split":"count","columns":"1","rows":"1"}`, "")
	require.Len(t, j.Layers, 3)
	assert.Equal(t, []string{"L1", "L1-2", "L1-2-3"}, []string{j.Layers[0].Panels.ID, j.Layers[1].Panels.ID, j.Layers[2].Panels.ID})
	assert.Equal(t, []string{"caution /mask/layers/1/id", "caution /mask/layers/2/id"}, at(j.Problems))
}

// A step that peels the mask asks for one; grain alone does not.
func TestTake_Maskless(t *testing.T) {
	maskless := func(steps, mask string) *taken {
		return taking(`{"ceilingwright":1,"mask":{` + mask + `},"finish":{"steps":[` + steps + `]}}`)
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
func TestTake_Limits(t *testing.T) {
	layer := func(columns, rows string) string {
		return `{"split":"count","columns":"` + columns + `","rows":"` + rows + `","gap":"0"}`
	}
	stops := func(layers string) (stops []string) {
		for _, p := range masked(layers, "").Problems {
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
func TestTake_Tape(t *testing.T) {
	j := masked(threeByTwo+`}`, `,"seams":{"cover":"seams-and-outside","rollLength":"5 m","waste":"10","pieceLength":"1300"}`)
	l := &j.Layers[0]
	require.Len(t, l.Bridges, 3)
	assert.Equal(t, []int{2, 2, 3}, []int{l.Bridges[0].Pieces, l.Bridges[1].Pieces, l.Bridges[2].Pieces})
	assert.Equal(t, 4*mask.JoinLap, l.Laps)
	assert.Equal(t, 8400*mm+12_000*mm+l.Laps, l.Tape)
	tape, wrong := BuyTape(&j.Plan, j.Layers)
	assert.Equal(t, []measure.Length{8400 * mm, 12_000 * mm, l.Laps, l.Tape}, []measure.Length{tape.Seams, tape.Outside, tape.Laps, tape.Length})
	assert.True(t, tape.Known)
	assert.Equal(t, int64(5), tape.Rolls.Count, "20.5 m and a tenth, 22.55 m")
	assert.Empty(t, append(wrong, j.Problems...))

	j = masked(threeByTwo+`}`, "")
	tape, wrong = BuyTape(&j.Plan, j.Layers)
	assert.False(t, tape.Known)
	assert.Equal(t, []string{"stop /seams/rollLength"}, at(wrong))
}

func TestLies(t *testing.T) {
	j := masked(`{"id":"L1","split":"sizes","columnSizes":["1200","1200","1188"],"rowSizes":["1200","1200"],"gap":"2",
		"pieces":[{"name":"Rose","kind":"span","cells":"A1 A2"},{"name":"Star","kind":"joined","cells":"B1 B2"}]}`, "")
	l := &j.Layers[0]
	require.Len(t, l.Panels.Pieces, 2)
	// 3588 and two gaps of 2 leave 8: each of the two seams that can give opens by
	// 4, to 6, and the span's place by the same.
	assert.Equal(t, Lying{Length: 2402 * mm, Width: 1200 * mm, SpareLength: 4 * mm}, l.Lies(l.Panels.Pieces[0]))
	assert.Equal(t, Lying{Length: 2406 * mm, Width: 1200 * mm, Floor: []FloorGap{{"1│2", 6 * mm}}}, l.Lies(l.Panels.Pieces[1]))
}
