package tell_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell"
)

// layered is the sheet of a mask of 3600 × 2400 with two layers; what is given
// goes into the first and the second.
func layered(t *testing.T, first, second string) sheet.Sheet {
	t.Helper()
	return *built(t, `{"ceilingwright":1,"id":"x","units":{"show":"metric","bare":"mm","inchMark":"1/16 in","metricMark":"1 mm"},
		"room":{"length":"4400","width":"3100","height":"2600"},
		"mask":{"length":"3600","width":"2400","layers":[
			{"id":"L1","split":"count","columns":"3","rows":"3","gap":"2"`+first+`},
			{"id":"L2","split":"count","columns":"3","rows":"3","gap":"2"`+second+`}]},
		"setting":{"on":"room"},"seams":{"cover":"seams"},"finish":{"steps":[]}}`)
}

func built(t *testing.T, text string) *sheet.Sheet {
	t.Helper()
	doc := plan.Read([]byte(text))
	require.True(t, doc.Usable, text)
	return tell.Build(doc, "test", nil)
}

// registered is how the second layer lies when its marks are measured so: four
// numbers a mark, where it should be and where it is.
func registered(t *testing.T, tolerance string, marks ...[4]string) (sheet.Registered, []sheet.Problem) {
	t.Helper()
	var list []string
	for i, m := range marks {
		list = append(list, fmt.Sprintf(`{"name":%q,"x":%q,"y":%q,"gotX":%q,"gotY":%q}`, string(rune('a'+i)), m[0], m[1], m[2], m[3]))
	}
	s := layered(t, "", `,"register":{"tolerance":"`+tolerance+`","marks":[`+strings.Join(list, ",")+`]}`)
	var problems []sheet.Problem
	for _, p := range s.Problems {
		if strings.HasPrefix(p.At, "/mask/layers/1/register") {
			problems = append(problems, p)
		}
	}
	return s.Layers[1].Register, problems
}

// The fits are the worked ones of the register package; here they are words.
func TestRegister_Words(t *testing.T) {
	k2 := [][4]string{{"0", "0", "3", "-2"}, {"3600", "0", "3603", "6"}, {"3600", "2400", "3597", "2407"}, {"0", "2400", "-2", "2397"}}
	k3 := [][4]string{k2[0], k2[1], {"3600", "2400", "3603", "2413"}, k2[3]}
	k5 := [][4]string{{"0", "0", "0", "0"}, {"3600", "0", "3605", "0"}, {"3600", "2400", "3605", "2403"}, {"0", "2400", "0", "2403"}}
	mirrored := [][4]string{{"0", "0", "3600", "0"}, {"3600", "0", "0", "0"}, {"3600", "2400", "0", "2400"}, {"0", "2400", "3600", "2400"}}
	for _, c := range []struct {
		name, tolerance string
		marks           [][4]string
		verdict, text   string
		shift, turn     string
		remedy          []string
	}{
		{"within the tolerance as it lies", "8", k2, "pass", "As the layer lies every mark is within 7.6 mm, and 8 mm is allowed.",
			"2 mm towards YZ", "9 mm clockwise looking up over 3.600 m", []string{"Leave it as it lies."}},
		{"to be moved", "2", k2, "pass", "After the best shift and turn every mark is within 1 mm, and 2 mm is allowed.",
			"2 mm towards YZ", "9 mm clockwise looking up over 3.600 m",
			[]string{"Shift the layer 2 mm towards WX and turn it 9 mm anticlockwise looking up over 3.600 m, about its middle."}},
		{"a bad mark", "1", k3, "fail", "Even after the best shift and turn c is off by 6 mm, and 1 mm is allowed.",
			"2 mm towards XY and 4 mm towards YZ", "9 mm clockwise looking up over 3.600 m",
			[]string{"Without c the others agree: measure it again first, before anything is moved."}},
		{"a bad mark of three", "1", k3[:3], "fail", "Even after the best shift and turn c is off by 6 mm, and 1 mm is allowed.",
			"2 mm towards XY and 4 mm towards YZ", "8 mm clockwise looking up over 3.600 m",
			[]string{"Without c the other two agree, but two marks show no more than the distance between them. Measure all three again, that one first."}},
		{"stretched, no tolerance", "", k5, "", "After the best shift and turn every mark is within 3 mm. Give a tolerance to have it judged.",
			"3 mm towards XY and 2 mm towards YZ", "0 mm over 3.600 m",
			[]string{"Shift the layer 3 mm towards ZW and 2 mm towards WX.",
				"By its marks the layer is 5 mm longer over its length than by the design (0.139 %). Line it up on the centre cross: it then misses by 3 mm at either edge, lined up on a corner by all of it at the far edge.",
				"By its marks the layer is 3 mm longer over its width than by the design (0.125 %). Line it up on the centre cross: it then misses by 2 mm at either edge, lined up on a corner by all of it at the far edge."}},
		{"mirrored", "5", mirrored, "unsure", "The marks fit only with left and right exchanged.", "", "",
			[]string{"Measure again looking up at the ceiling, from the mask's edges towards ZW and towards WX."}},
		{"half way round", "5", [][4]string{{"0", "0", "3600", "2400"}, {"3600", "2400", "0", "0"}}, "unsure",
			"The marks come out turned by 180°, more than any layer is hung off.", "", "", []string{"Two marks seem to be exchanged: check which is which."}},
		{"two marks", "3", [][4]string{{"0", "0", "5", "1"}, {"3600", "0", "3604", "10"}}, "pass",
			"After the best shift and turn every mark is within 0.5 mm, and 3 mm is allowed. Two marks show a bad reading only by the distance between them; a third makes it sure.",
			"1 mm towards XY and 5 mm towards YZ", "9 mm clockwise looking up over 3.600 m",
			[]string{"Shift the layer 1 mm towards ZW and 5 mm towards WX and turn it 9 mm anticlockwise looking up over 3.600 m, about its middle."}},
		{"one mark", "3", [][4]string{{"100", "200", "104", "199"}}, "unsure",
			"The layer lies 4 mm towards XY and 1 mm towards WX from its place at a. A turn cannot be seen.", "4 mm towards XY and 1 mm towards WX", "",
			[]string{"Shift the layer 4 mm towards ZW and 1 mm towards YZ."}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, _ := registered(t, c.tolerance, c.marks...)
			assert.Equal(t, c.verdict, got.Verdict)
			assert.Equal(t, c.text, got.Text)
			assert.Equal(t, c.shift, got.Shift)
			assert.Equal(t, c.turn, got.Turn)
			assert.Equal(t, c.remedy, got.Remedy)
			assert.Len(t, got.Marks, len(c.marks))
		})
	}
}

// A sign supplier's note on layered graphics: 96 in shrunk by 0.15 % since it
// was fitted is 0.144 in, 0.072 in at each edge from the centre cross.
func TestRegister_ShrunkLayer(t *testing.T) {
	s := built(t, `{"ceilingwright":1,"id":"x","units":{"show":"feet-inches","bare":"in","inchMark":"1/16 in","metricMark":"1 mm"},
		"room":{"length":"120","width":"90"},"mask":{"length":"96","width":"60","layers":[{"id":"L1","split":"count","columns":"2","rows":"1",
		"register":{"marks":[{"x":"0","y":"0","gotX":"0.072","gotY":"0.045"},{"x":"96","y":"0","gotX":"95.928","gotY":"0.045"},
			{"x":"96","y":"60","gotX":"95.928","gotY":"59.955"},{"x":"0","y":"60","gotX":"0.072","gotY":"59.955"}]}}]}}`)
	assert.Equal(t, []string{
		"By its marks the layer is ⅛″ shorter over its length than by the design (0.15 %). Line it up on the centre cross: it then misses by 1⁄16″ at either edge, lined up on a corner by all of it at the far edge.",
		"By its marks the layer is 1⁄16″ shorter over its width than by the design (0.15 %). Line it up on the centre cross: it then misses by 1⁄16″ at either edge, lined up on a corner by all of it at the far edge.",
	}, s.Layers[0].Register.Remedy)
	assert.Equal(t, "by nothing", s.Layers[0].Register.Shift)
}

func TestRegister_SeamsAndCut(t *testing.T) {
	// Two seams of 2 mm between three columns, each hung 4 mm too wide.
	wide, _ := registered(t, "1", [4]string{"0", "0", "0", "0"}, [4]string{"3600", "0", "3608", "0"}, [4]string{"3600", "2400", "3608", "2400"}, [4]string{"0", "2400", "0", "2400"})
	assert.Equal(t, "fail", wide.Verdict)
	assert.NotContains(t, strings.Join(wide.Remedy, " "), "lose", "seams of 2 mm cannot be closed by 4 mm")
	tight, _ := registered(t, "1", [4]string{"0", "0", "0", "0"}, [4]string{"3600", "0", "3592", "0"}, [4]string{"3600", "2400", "3592", "2400"}, [4]string{"0", "2400", "0", "2400"})
	assert.Equal(t, "Open each of the 2 seams along the length by 4 mm, then shift the layer 4 mm towards XY. Every mark is then within 0 mm.", tight.Remedy[0])
	assert.Equal(t, "Or cut the layer apart along seam 1│2 and set each part by itself: shift the part towards XY 8 mm towards XY. "+
		"Every mark is then within 0 mm. This rests on parts with two marks, which show only the distance between them.", tight.Remedy[1])
	far, _ := registered(t, "1", [4]string{"0", "0", "0", "0"}, [4]string{"3600", "0", "3600", "0"}, [4]string{"3600", "2400", "3640", "2400"}, [4]string{"0", "2400", "0", "2450"})
	assert.Equal(t, "No shift, turn, seam or cut brings every mark within the tolerance: take the layer down as far as the marks that are off, and hang it again.", far.Remedy[0])
}

func TestRegister_Problems(t *testing.T) {
	at := func(list []sheet.Problem) (places []string) {
		for _, p := range list {
			places = append(places, string(p.Severity)+" "+strings.TrimPrefix(p.At, "/mask/layers/1/register"))
		}
		return places
	}
	full := [4]string{"0", "0", "1", "1"}
	for _, c := range []struct {
		name  string
		marks [][4]string
		want  []string
	}{
		{"none", nil, nil},
		{"two", [][4]string{full, {"100", "0", "101", "1"}}, nil},
		{"one shows no turn", [][4]string{full}, []string{"note /marks"}},
		{"not measured yet", [][4]string{full, {"100", "0", "", ""}}, []string{"note /marks"}},
		{"no design", [][4]string{full, {"100", "0", "101", "1"}, {"", "", "5", "5"}}, []string{"stop /marks/2/x"}},
		{"half a place", [][4]string{full, {"100", "0", "101", "1"}, {"5", "", "5", "5"}}, []string{"stop /marks/2/y", "stop /marks/2/x"}},
		{"half a reading", [][4]string{full, {"100", "0", "101", "1"}, {"5", "5", "", "5"}}, []string{"stop /marks/2/gotX"}},
		{"not a length", [][4]string{full, {"100", "0", "101", "1"}, {"5", "5", "here", "5"}}, []string{"stop /marks/2/gotX"}},
		{"outside the mask", [][4]string{full, {"3601", "-2", "3602", "1"}}, []string{"caution /marks/1/x", "caution /marks/1/y"}},
	} {
		_, problems := registered(t, "1", c.marks...)
		assert.Equal(t, c.want, at(problems), c.name)
	}
}

// Three by three on three by three: the middle panel is the key, its four
// neighbours are set against it, and the one above it comes last.
func TestKey_OnTheSheet(t *testing.T) {
	s := layered(t, "", "")
	k := s.Layers[0].Key
	assert.Equal(t, sheet.Key{Panel: "B2", Chosen: "tool",
		Reason: "Only B2 of the next layer lies on it; no other panel has fewer, and of those it is nearest the middle.",
		Lies:   []string{"B2"}, Touches: []string{"A2", "B1", "B3", "C2"},
		Down:   "When 8 of 9 panels of the next layer are up, before B2.",
		Masked: "The ceiling under it is covered until then: coat the next layer when B2 is up too."}, k)
	order := s.Layers[1].Order
	assert.Equal(t, "A2", order[0].Panel)
	assert.Contains(t, order[0].Set, sheet.EdgeSet{Edge: "towards YZ", To: "to the key B2"})
	assert.Equal(t, "B2", order[8].Panel)
	for _, e := range order[8].Set {
		assert.NotContains(t, e.To, "key", "it is down by then")
	}
	assert.Equal(t, sheet.Key{Lies: s.Layers[1].Key.Lies, Touches: s.Layers[1].Key.Touches}, s.Layers[1].Key, "nothing is kept up after the last layer")

	own := layered(t, `,"key":"a1"`, "").Layers[0].Key
	assert.Equal(t, "A1", own.Panel)
	assert.Equal(t, "user", own.Chosen)
	assert.Equal(t, "Your choice. Only A1 of the next layer lies on it, as few as on any other.", own.Reason)
	missing := layered(t, `,"panels":[{"panel":"B2","state":"missing"}]`, "").Layers[0].Key
	assert.Equal(t, "A2", missing.Panel)
	assert.Equal(t, "Only A2 of the next layer lies on it; no other whole panel has fewer, and of those it is nearest the middle.", missing.Reason)
	gone := layered(t, `,"key":"B2","panels":[{"panel":"B2","state":"damaged"}]`, "").Layers[0].Key
	assert.Contains(t, gone.Reason, "It is damaged.")
	loose := layered(t, `,"pieces":[{"name":"rose","kind":"loose","shape":"round","length":"600"}]`, "").Layers[0].Key
	assert.Equal(t, "A2", loose.Panel, "the middle panel has a hole")

	for at, broken := range map[string]sheet.Sheet{"/mask/layers/0/key": layered(t, `,"key":"Z9"`, ""), "/mask/layers/1/key": layered(t, "", `,"key":"B2"`)} {
		found := false
		for _, p := range broken.Problems {
			found = found || p.At == at
		}
		assert.True(t, found, at)
	}
}

func TestKey_OnePanelOverAll(t *testing.T) {
	s := built(t, `{"ceilingwright":1,"units":{"show":"metric","bare":"mm","metricMark":"1 mm"},"room":{"length":"4400","width":"3100"},
		"mask":{"length":"3600","width":"2400","layers":[{"id":"L1","split":"count","columns":"3","rows":"3"},{"id":"L2","split":"count","columns":"1","rows":"1"}]}}`)
	assert.Equal(t, "", s.Layers[0].Key.Panel)
	assert.Equal(t, "Every panel of the next layer would lie on whichever stays up, so none can. Set the next layer to the lines and check it by marks.", s.Layers[0].Key.Reason)
}

// Every mark keeps its place in the list, whether it is measured or not.
func TestRegister_MarksInOrder(t *testing.T) {
	got, _ := registered(t, "1", [4]string{"0", "0", "", ""}, [4]string{"3600", "0", "3603", "0"}, [4]string{"", "", "1", "1"}, [4]string{"0", "2400", "3", "2400"})
	assert.Equal(t, []sheet.MarkAt{{Name: "a", Text: "Not measured yet."}, {Name: "b", Text: "Off 3 mm towards XY; 0 mm is left after the best shift and turn."},
		{Name: "c"}, {Name: "d", Text: "Off 3 mm towards XY; 0 mm is left after the best shift and turn."}}, got.Marks)
	none, _ := registered(t, "1")
	assert.Equal(t, "Nothing is measured yet. Put marks near the corners and on the centre cross, and measure each from the mask's edges towards ZW and towards WX.", none.Text)
	assert.Empty(t, layered(t, "", "").Layers[0].Register.Text, "the first layer lies on nothing")
}

// Stations that reach 2000 × 1300 of a mask of 3600 × 2400 take in whole panels
// of 1200 × 800 at its corners alone (by hand), smaller ones none at all.
func TestKey_IsInReachFromOneStation(t *testing.T) {
	kept := func(key, deck, wide string) sheet.Key {
		s := built(t, `{"ceilingwright":1,"units":{"show":"metric","bare":"mm","inchMark":"1/16 in","metricMark":"1 mm"},
			"room":{"length":"4400","width":"3100"},"mask":{"length":"3600","width":"2400","layers":[
				{"id":"L1","split":"count","columns":"3","rows":"3","gap":"0","key":"`+key+`"},{"id":"L2","split":"count","columns":"3","rows":"3","gap":"0"}]},
			"setting":{"on":"room"},"access":{"by":"platform","turn":"no","armReach":"300","deckLength":"`+deck+`","deckWidth":"`+wide+`"}}`)
		return s.Layers[0].Key
	}
	assert.Equal(t, "B2", kept("", "", "").Panel, "without a platform the middle one")
	near := kept("", "1400", "700")
	assert.Equal(t, "A1", near.Panel)
	assert.Contains(t, near.Reason, "no other panel in reach from one platform position has fewer")
	assert.Contains(t, kept("B2", "1400", "700").Reason, "Not all of it is in reach from one platform position.")
	far := kept("", "400", "100 mm")
	assert.Equal(t, "B2", far.Panel)
	assert.Contains(t, far.Reason, "No whole panel is in reach from one platform position")
	assert.Contains(t, far.Reason, "no other panel has fewer")
}
