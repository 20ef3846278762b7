package plan

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/register"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

func readBody(t *testing.T, body string) Document {
	t.Helper()
	doc := Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"mm","inchMark":"1/16 in","metricMark":"1 mm","gallon":"US"},` + body + `}`))
	require.True(t, doc.Usable)
	return doc
}

// problemsUnder are the problems at a place or below it.
func problemsUnder(doc Document, at string) []problem.Problem {
	var found []problem.Problem
	for _, p := range doc.Problems {
		if p.At == at || strings.HasPrefix(p.At, at+"/") {
			found = append(found, p)
		}
	}
	return found
}

const mm = measure.Millimetre

func TestRoomFormsAreRead(t *testing.T) {
	doc := readBody(t, `"room":{"form":"lines","length":"9 ft","height":"2700","tape":{"deviation":"1.5","readTo":"1 mm"},
		"readings":[{"line":"AB","length":"4115"},{"line":"DA-BC","length":"4110 mm","start":"100"}]}`)
	assert.Empty(t, problemsUnder(doc, "/room/readings"))
	assert.Equal(t, survey.Room{
		Form: survey.Lines, Height: 2700 * mm, Tape: survey.Tape{Deviation: 3 * mm / 2, ReadTo: mm},
		Readings: []survey.Reading{
			{Line: survey.LineAB, Length: 4115 * mm, At: "/readings/0"},
			{Line: survey.LineDABC, Length: 4110 * mm, Start: 100 * mm, At: "/readings/1"},
		},
	}, doc.Plan.Room, "a length kept from another form is not one of this room")
	assert.Len(t, doc.Readings, 7, "every length that was typed is read, asked for or not")

	doc = readBody(t, `"room":{"form":"points","points":[{"x":"0","y":"-5"},{"x":"4000","y":""}]}`)
	assert.Equal(t, []survey.CornerReading{{Point: survey.Point{Y: -5 * mm}, Known: true}, {Point: survey.Point{X: 4000 * mm}}}, doc.Plan.Room.Points)

	doc = readBody(t, `"room":{"form":"walls","walls":[{"length":"4000","angle":"90"},{"length":"","angle":"135.5"},{}]}`)
	require.Len(t, doc.Plan.Room.Walls, 3)
	assert.Equal(t, 4000*mm, doc.Plan.Room.Walls[0].Length)
	assert.Zero(t, doc.Plan.Room.Walls[1].Angle.Cmp(measure.MustNumber("135.5")))
	assert.False(t, doc.Plan.Room.Walls[2].AngleKnown)

	doc = readBody(t, `"room":{"length":"4000","width":"3000","diagonalAC":"5000"}`)
	assert.Equal(t, survey.Room{Form: survey.Rectangle, Length: 4000 * mm, Width: 3000 * mm, DiagonalAC: 5000 * mm}, doc.Plan.Room,
		"a plan that does not say its form is a rectangle")
	assert.Empty(t, problemsUnder(doc, "/room/form"))
}

func TestThingsOnTheCeilingAreRead(t *testing.T) {
	doc := readBody(t, `"room":{"fixture":{"at":"corners","cornerOne":"a","fromOne":"2000","cornerTwo":" B ","fromTwo":"2100","side":"d","shape":"rectangular","across":"600","deep":"300","axisDA":"1","axisAB":"2"},
		"obstructions":[{"name":"Grille","kind":"vent","at":"measured","across":"200","fromDA":"400","fromAB":"500","deep":"9"},{"kind":"hatch","at":"middle","axisDA":"7"}]}`)
	assert.Equal(t, survey.Fixture{At: survey.FromCorners, CornerOne: "A", CornerTwo: "B", Side: "D", FromOne: 2000 * mm, FromTwo: 2100 * mm,
		Rectangular: true, Across: 600 * mm, Deep: 300 * mm, AxisDA: mm, AxisAB: 2 * mm}, doc.Plan.Fixture)
	require.Len(t, doc.Plan.Obstructions, 2)
	grille := doc.Plan.Obstructions[0]
	assert.Equal(t, "/room/obstructions/0", grille.At)
	assert.Equal(t, survey.Obstruction{Name: "Grille", Kind: survey.Vent, Fixture: survey.Fixture{At: survey.Measured, FromDA: 400 * mm, FromAB: 500 * mm, Across: 200 * mm}},
		clean(grille.Obstruction))
	assert.Len(t, problemsUnder(doc, "/room/obstructions/1/axisAB"), 1, "one distance of two is asked about where it is missing")
}

// clean takes out what was read of blanks that nobody asks for.
func clean(o survey.Obstruction) survey.Obstruction {
	o.Deep = 0
	return o
}

func TestDeliveryHangingAndRegistrationAreRead(t *testing.T) {
	doc := readBody(t, `"mask":{"layers":[{"labels":"1 2\n3 4","start":"b 2","crooked":"","key":"A1","up":["a1","","b1"],
		"panels":[{"panel":"a 1","state":"damaged","length":"1200"},{"panel":"A2"}],
		"pieces":[{"name":"Rose","kind":"loose","shape":"round","length":"900","width":"x","fromDA":"1000","fromAB":"800"},{"kind":"span","cells":"A1 B2","length":"x"}],
		"gaps":[{"seam":"1│2","gap":"2"},{"seam":"A│B","gap":"?"}],
		"register":{"tolerance":"2","marks":[{"name":"M1","x":"0","y":"0","gotX":"-3","gotY":"1"},{"x":"1","y":"1","gotX":"1"}]}}]}`)
	l := doc.Plan.Mask.Layers[0]
	assert.Equal(t, "1 2\n3 4", l.Labels)
	assert.Equal(t, []PanelNote{{At: "/mask/layers/0/panels/0", Panel: "A1", State: Damaged, Length: 1200 * mm}, {At: "/mask/layers/0/panels/1", Panel: "A2", State: Unchecked}}, l.Panels)
	assert.Equal(t, []mask.GivenPiece{
		{At: "/mask/layers/0/pieces/0", Name: "Rose", Kind: mask.CutLoose, Round: true, Placed: true, X: 1000 * mm, Y: 800 * mm, Length: 900 * mm},
		{At: "/mask/layers/0/pieces/1", Kind: mask.Span, Cells: "A1 B2"},
	}, l.Pieces)
	assert.Equal(t, []string{"B2", "A1", "B1", "A1"}, append([]string{l.Start, l.Key}, l.Up[1], l.Up[0]))
	assert.Equal(t, []GapNote{{At: "/mask/layers/0/gaps/0", Seam: "1│2", Gap: 2 * mm, Known: true}, {At: "/mask/layers/0/gaps/1", Seam: "A│B"}}, l.Gaps)
	assert.Equal(t, 2*mm, l.Register.Tolerance)
	assert.Equal(t, []MarkNote{
		{Mark: register.Mark{Name: "M1", Got: survey.Point{X: -3 * mm, Y: mm}}, At: "/mask/layers/0/register/marks/0", WantKnown: true, GotKnown: true},
		{Mark: register.Mark{Want: survey.Point{X: mm, Y: mm}, Got: survey.Point{X: mm}}, At: "/mask/layers/0/register/marks/1", WantKnown: true},
	}, l.Register.Marks)
	assert.Len(t, problemsUnder(doc, "/mask/layers/0/register/marks/1/gotY"), 1, "one measured distance says nothing")
	assert.Len(t, problemsUnder(doc, "/mask/layers/0/gaps"), 1)
	assert.Empty(t, problemsUnder(doc, "/mask/layers/0/pieces"), "blanks that a piece of this kind has no use for are left alone")
}

func TestSettingAndPlatformAreRead(t *testing.T) {
	doc := readBody(t, `"setting":{"on":"point","pointDA":"1000","pointAB":"900","square":"BC","turned":"yes","line":"chalk","tapeWidth":"x","leastBorder":"1"},
		"seams":{"cover":"seams","tapeWidth":"50","pieceLength":"1200","waste":"1"},
		"access":{"by":"platform","deckLength":"1800","deckWidth":"600","armReach":"450","overlap":"50","turn":"no"}`)
	assert.Equal(t, Setting{On: setout.OnPoint, PointDA: 1000 * mm, PointAB: 900 * mm, PointKnown: true, Square: "BC", Turned: true, LeastBorder: mm}, doc.Plan.Setting)
	assert.Equal(t, 50*mm, doc.Plan.Seams.Width)
	assert.Equal(t, 1200*mm, doc.Plan.Seams.Piece)
	a := doc.Plan.Access
	assert.Equal(t, []measure.Length{1800 * mm, 600 * mm, 450 * mm, 50 * mm}, []measure.Length{a.DeckLength, a.DeckWidth, a.ArmReach, a.Overlap})
	assert.False(t, a.Turn)

	doc = readBody(t, `"setting":{"on":"point","pointDA":"1000","square":"wall AB"}`)
	assert.Equal(t, "room", doc.Plan.Setting.Square)
	assert.False(t, doc.Plan.Setting.PointKnown)
	assert.Len(t, problemsUnder(doc, "/setting/square"), 1)
	assert.Len(t, problemsUnder(doc, "/setting/pointAB"), 1)
}

func TestListsAreReadUpToALimit(t *testing.T) {
	many := func(n int) string { return "[" + strings.TrimSuffix(strings.Repeat("{},", n), ",") + "]" }
	for at, body := range map[string]string{
		"/room/readings":                `"room":{"form":"lines","readings":%s}`,
		"/room/points":                  `"room":{"form":"points","points":%s}`,
		"/room/walls":                   `"room":{"form":"walls","walls":%s}`,
		"/room/obstructions":            `"room":{"obstructions":%s}`,
		"/mask/layers/0/pieces":         `"mask":{"layers":[{"pieces":%s}]}`,
		"/mask/layers/0/register/marks": `"mask":{"layers":[{"register":{"marks":%s}}]}`,
	} {
		doc := readBody(t, fmt.Sprintf(body, many(300)))
		found := false
		for _, p := range doc.Problems {
			found = found || p.At == at && strings.Contains(p.What.String(), "300")
		}
		assert.True(t, found, at)
	}
}
