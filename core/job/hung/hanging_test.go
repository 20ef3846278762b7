package hung_test

import (
	"slices"
	"testing"

	"ceilingwright/core/job/hung"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/room"
	"ceilingwright/core/job/setting"
	"ceilingwright/core/job/surface"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/survey"
)

const mm = measure.Millimetre

// work is a surface worked out up to the hanging, and what is wrong with it from the
// platform on.
type work struct {
	surface.Surface
	plan  plan.Plan
	wrong []problem.Problem
}

// masked is the hanging of a mask of 3.6 by 2.4 m, the layers and whatever else is given.
func masked(t *testing.T, list, more string) *work {
	t.Helper()
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"mm","metricMark":"1 mm"},"mask":{"length":"3600","width":"2400","layers":[` + list + `]}` + more + `}`))
	require.True(t, doc.Usable)
	w := &work{plan: doc.Plan}
	w.Room, _ = room.Find(&w.plan)
	w.Mask, _ = layers.Take(&w.plan, func(string) bool { return false })
	w.Setting, _ = setting.SetOut(&w.plan, &w.Room, w.Layers)
	var stands, keys, hangs []problem.Problem
	w.Platform, stands = hung.StandPlatform(&w.plan, &w.Setting)
	w.Keys, keys = hung.KeepKeys(w.On(&w.plan))
	w.Hanging, hangs = hung.Hang(w.On(&w.plan), w.Keys)
	w.wrong = slices.Concat(stands, keys, hangs)
	return w
}

// hang is the hanging of two layers, three by three panels of 1200 by 800 without gaps,
// in a room of 4400 by 3100, and what else is given: to the first layer, to the second,
// and to the plan.
func hang(t *testing.T, first, second, more string) *work {
	t.Helper()
	const panels = `"split":"count","columns":"3","rows":"3","gap":"0"`
	return masked(t, `{"id":"L1",`+panels+first+`},{"id":"L2",`+panels+second+`}`, `,"room":{"form":"rectangle","length":"4400","width":"3100","height":"2500"`+more)
}

func at(list []problem.Problem) (places []string) {
	for _, p := range list {
		places = append(places, string(p.Severity)+" "+p.At)
	}
	return places
}

const inRoom = `},"setting":{"on":"room"}`

// The middle panel is the key: what is beside it is set to it instead of a line, and
// the one that lies on it comes last, when it is down.
func TestHang_SetsToTheKey(t *testing.T) {
	j := hang(t, "", "", inRoom)
	assert.Empty(t, j.wrong)
	k := &j.Keys[0]
	assert.Equal(t, []any{"B2", hung.ByTool, hung.KeptFrom{}, false}, []any{k.Name(), k.Chosen, k.From, k.All})
	assert.False(t, j.Keys[1].IsKept(), "nothing comes after the last layer")
	h := j.Hung(1)
	assert.Equal(t, 8, h.KeyDown)
	assert.Equal(t, k.Begin, h.Order[0].Panel)
	assert.Equal(t, mask.Panel{Column: 2, Row: 2}, h.Order[8].Panel)
	assert.Equal(t, hanging.WaitsForKey, h.Order[8].Waits)
	set := map[survey.Wall]string{}
	for i := range h.Order {
		for _, e := range h.Order[i].Edges {
			if e.To == hanging.ToKey {
				assert.Less(t, i, h.KeyDown)
				set[e.Side] += h.Order[i].Panel.Label()
			}
		}
	}
	assert.Equal(t, map[survey.Wall]string{survey.CD: "A2", survey.AB: "C2", survey.BC: "B1", survey.DA: "B3"}, set)
	for _, h := range j.Hung(0).Order {
		for _, e := range h.Edges {
			assert.NotEqual(t, hanging.ToKey, e.To, "the first layer has none before it")
		}
	}
	assert.Len(t, h.Cards, 9)
}

func TestKeepKeys_Flaws(t *testing.T) {
	for _, c := range []struct {
		first string
		more  string
		key   string
		flaw  hung.Flaw
		from  hung.KeptFrom
		at    []string
	}{
		{`,"key":"A1"`, inRoom, "A1", hung.Flaw{}, hung.KeptFrom{}, nil},
		{`,"key":"Z9"`, inRoom, "B2", hung.Flaw{}, hung.KeptFrom{}, []string{"caution /mask/layers/0/key"}},
		{`,"panels":[{"panel":"B2","state":"missing"}]`, inRoom, "A2", hung.Flaw{}, hung.KeptFrom{Whole: true}, nil},
		{`,"key":"B2","panels":[{"panel":"B2","state":"damaged"}]`, inRoom, "B2", hung.Flaw{Kind: hung.IsDamaged}, hung.KeptFrom{}, nil},
		{`,"key":"B2","pieces":[{"name":"rose","kind":"loose","shape":"round","length":"600"}]`, inRoom, "B2", hung.Flaw{Kind: hung.CutForPiece, Piece: "rose"}, hung.KeptFrom{}, nil},
		{`,"key":"B2"`, `,"fixture":{"at":"middle","across":"100"}` + inRoom, "B2", hung.Flaw{Kind: hung.CutForThing}, hung.KeptFrom{}, nil},
		// What is reached from a deck of 1400 × 700 takes in the panels at the corners
		// alone, from one of 400 × 100 none.
		{`,"key":"B2"`, inRoom + `,"access":{"armReach":"300","deckLength":"1400","deckWidth":"700"}`, "B2", hung.Flaw{Kind: hung.BeyondReach}, hung.KeptFrom{}, nil},
		{"", inRoom + `,"access":{"armReach":"300","deckLength":"1400","deckWidth":"700"}`, "A1", hung.Flaw{}, hung.KeptFrom{InReach: true}, nil},
		{"", inRoom + `,"access":{"armReach":"300","deckLength":"400","deckWidth":"300 mm"}`, "B2", hung.Flaw{}, hung.KeptFrom{OutOfReach: true}, nil},
	} {
		j := hang(t, c.first, "", c.more)
		k := &j.Keys[0]
		assert.Equal(t, []any{c.key, c.flaw, c.from}, []any{k.Name(), k.Flaw, k.From}, "%s %s", c.first, c.more)
		assert.Equal(t, c.at, at(j.wrong), "%s %s", c.first, c.more)
	}
	all := hang(t, "", `,"pieces":[{"name":"all","kind":"span","cells":"A1 C3"}]`, inRoom)
	assert.False(t, all.Keys[0].IsKept())
	assert.True(t, all.Keys[0].All)
	own := hang(t, `,"key":"B2"`, `,"pieces":[{"name":"all","kind":"span","cells":"A1 C3"}]`, inRoom)
	assert.True(t, own.Keys[0].IsKept(), "the user's choice stands")
	assert.True(t, own.Keys[0].All)
	assert.Equal(t, 0, own.Hung(1).KeyDown)
}

// Reaches of 2000 × 1300 cover 3600 × 2400 from four places; what is hung from each is
// every panel once, and the middle of the first deck is told from the walls.
func TestHang_Places(t *testing.T) {
	j := hang(t, "", "", inRoom+`,"access":{"armReach":"300","deckLength":"1400","deckWidth":"700","turn":"no"}`)
	h := j.Hung(0)
	require.Len(t, h.Places, 4)
	panels := 0
	for i, p := range h.Places {
		assert.Equal(t, i+1, p.N)
		assert.True(t, p.Walls)
		assert.Equal(t, survey.AB, p.With)
		assert.Equal(t, p.Middle.X+400*mm, p.Along, "the border at the ends is 400")
		assert.Equal(t, p.Middle.Y+350*mm, p.Out)
		panels += len(p.Panels)
	}
	assert.Equal(t, 9, panels)
	assert.Equal(t, []int{1, 2, 3, 4}, h.Route)
	assert.Equal(t, h.Sequence.Moves, len(h.Route)-1)
}

// Panels of 1190 leave 30: each of two seams opens by 15, to 15.
func TestHang_ComesOut(t *testing.T) {
	j := masked(t, `{"id":"L1","split":"sizes","columnSizes":["1190","1190","1190"],"rowSizes":["2400"],"gap":"0","panelTolerance":"1"}`, "")
	h := j.Hung(0)
	along, across := &h.RunOuts[0], &h.RunOuts[1]
	assert.Equal(t, []any{2, 15 * mm, 15 * mm, -30 * mm}, []any{along.Free, along.Change, along.Narrowest, along.Run.Over})
	assert.Equal(t, 3*mm, along.BuildUp.End.Worst)
	assert.Zero(t, across.Free)
	assert.False(t, across.BuildUp.Known, "one panel builds up nothing")
	assert.Equal(t, hung.Ends{Known: true, Mark: mm, Degrees: h.Ends.Degrees, Grown: h.Ends.Grown}, h.Ends)
	assert.InDelta(t, 1.0/1190*57.2958, h.Ends.Degrees, 1e-5)
}

// Above a thousand panels nobody hangs by cards, and all layers together have those of
// three thousand.
func TestHang_Cards(t *testing.T) {
	grid := func(columns, rows string) string {
		return `{"split":"count","columns":"` + columns + `","rows":"` + rows + `","gap":"0"}`
	}
	cards := func(layers string) (counts []int) {
		j := masked(t, layers, "")
		for i := range j.Layers {
			counts = append(counts, len(j.Hung(i).Cards))
		}
		return counts
	}
	assert.Equal(t, []int{1000, 0}, cards(grid("50", "20")+","+grid("91", "11")))
	assert.Equal(t, []int{1000, 1000, 1000, 0}, cards(grid("50", "20")+","+grid("50", "20")+","+grid("50", "20")+","+grid("2", "2")))
}

// What stands in the room is named as it is spoken of, and stands in the way where the
// foot of the platform comes.
func TestStand(t *testing.T) {
	stood := func(furniture string) *work {
		j := hang(t, "", "", `,"furniture":[`+furniture+`]`+inRoom+`,"access":{"by":"platform","armReach":"300","deckLength":"1400","deckWidth":"700","turn":"no","footLength":"1400","footWidth":"900"}`)
		j.Standing, j.wrong = hung.Stand(j.On(&j.plan), &j.Hanging, 0)
		return j
	}
	j := stood("")
	require.Len(t, j.Standing.Layers, 2)
	assert.Equal(t, []int{8, 0, 0}, []int{j.Standing.Tried, j.Standing.Clashes, j.Standing.Left})
	assert.False(t, j.Standing.Taken)
	j = stood(`{"name":"piano","fromDA":"500","fromAB":"400","length":"3400","width":"2300"},{"name":"The bed","fromDA":"9000","fromAB":"0","length":"900","width":"900"},{"fromDA":"9000","fromAB":"0","length":"900","width":"900"}`)
	assert.Equal(t, 8, j.Standing.Clashes)
	assert.Equal(t, []int{0, 1, 2}, j.Standing.Things)
	assert.Equal(t, []int{0}, j.Standing.Layers[0][0].Things)
	var said []string
	for _, p := range j.wrong {
		said = append(said, p.What.String())
	}
	assert.Equal(t, []string{"The bed would stand outside the room.", "What stands there would stand outside the room."}, said)
	assert.Equal(t, "the piano", hung.FurnitureName(&j.plan.Furniture[0]).String())
}
