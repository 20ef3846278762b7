package tell_test

import (
	"encoding/xml"
	"errors"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell"
)

// shape is one element of a drawing as a reader of the SVG sees it.
type shape struct {
	element, class, figure, panel string
	at                            map[string]float64
	words, transform              string
	points                        [][2]float64
}

// shapes reads a drawing back, with the width of its sheet.
func shapes(t *testing.T, svg string) (found []shape, wide float64, title, caption string) {
	t.Helper()
	decoder := xml.NewDecoder(strings.NewReader(svg))
	var path []string
	figure, panel := "", ""
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return found, wide, title, caption
		}
		require.NoError(t, err)
		switch e := token.(type) {
		case xml.StartElement:
			path = append(path, e.Name.Local)
			attributes := map[string]string{}
			for _, a := range e.Attr {
				attributes[a.Name.Local] = a.Value
			}
			switch e.Name.Local {
			case "svg":
				box := strings.Fields(attributes["viewBox"])
				require.Len(t, box, 4)
				wide, err = strconv.ParseFloat(box[2], 64)
				require.NoError(t, err)
			case "g":
				figure, panel = attributes["data-figure"], attributes["data-panel"]
			case "title", "desc":
			default:
				s := shape{element: e.Name.Local, class: attributes["class"], figure: figure, panel: panel, at: map[string]float64{}, transform: attributes["transform"]}
				for _, name := range []string{"x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry", "width", "height", "font-size"} {
					if text, ok := attributes[name]; ok {
						s.at[name], err = strconv.ParseFloat(text, 64)
						require.NoError(t, err)
					}
				}
				for pair := range strings.FieldsSeq(attributes["points"]) {
					x, y, _ := strings.Cut(pair, ",")
					s.points = append(s.points, [2]float64{parsed(t, x), parsed(t, y)})
				}
				found = append(found, s)
			}
		case xml.EndElement:
			path = path[:len(path)-1]
			if e.Name.Local == "g" {
				figure, panel = "", ""
			}
		case xml.CharData:
			switch path[len(path)-1] {
			case "title":
				title += string(e)
			case "desc":
				caption += string(e)
			case "text":
				found[len(found)-1].words += string(e)
			}
		}
	}
}

func parsed(t *testing.T, text string) float64 {
	t.Helper()
	n, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return n
}

func only(list []shape, keep func(shape) bool) []shape {
	return slices.DeleteFunc(slices.Clone(list), func(s shape) bool { return !keep(s) })
}

func ofClass(list []shape, class string) []shape {
	return only(list, func(s shape) bool { return s.class == class })
}

func sheetOf(t *testing.T, name string) *sheet.Sheet {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "plans", "v1", name+".json"))
	require.NoError(t, err)
	return tell.Build(plan.Read(text), "test", nil)
}

func drawn(t *testing.T, s *sheet.Sheet, id string) sheet.Drawing {
	t.Helper()
	for _, d := range s.Drawings {
		if d.ID == id {
			return d
		}
	}
	require.Fail(t, "no drawing "+id)
	return sheet.Drawing{}
}

// near is a tenth of a millimetre twice rounded.
const near = 0.21

func TestLookingDownIsTheMirrorOfLookingUp(t *testing.T) {
	for _, name := range []string{"full", "metric", "fixture-centred", "sizes-short", "sizes-long", "one-panel"} {
		s := sheetOf(t, name)
		for _, l := range s.Layers {
			up, wide, upTitle, _ := shapes(t, drawn(t, s, l.ID+".up").SVG)
			down, wideDown, downTitle, _ := shapes(t, drawn(t, s, l.ID+".down").SVG)
			require.Equal(t, wide, wideDown)
			assert.Contains(t, upTitle, "looking up")
			assert.NotContains(t, upTitle, "down")
			assert.Contains(t, downTitle, "looking down")
			assert.NotContains(t, downTitle, "up")
			require.Len(t, down, len(up), name)
			for i := range up {
				mirrored(t, wide, up[i], down[i])
			}
		}
	}
}

// Every drawing of every plan says from where it is seen, and is: the corners
// A B C run clockwise looking up and anticlockwise looking down (y points down
// on the page, so the area they span is above 0 clockwise).
func TestNoDrawingMixesTheTwoReadings(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "plans", "v1", "*.json"))
	require.NoError(t, err)
	drawings := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		for _, d := range tell.Build(plan.Read(text), "test", nil).Drawings {
			drawings++
			list, _, title, _ := shapes(t, d.SVG)
			at := filepath.Base(file) + " " + d.ID
			assert.Equal(t, d.Looking == "up", strings.Contains(title, "looking up"), at)
			assert.Equal(t, d.Looking == "down", strings.Contains(title, "looking down"), at)
			assert.Equal(t, d.Shows == "side", strings.Contains(title, "seen from the side"), at)
			assert.Equal(t, slices.Contains([]string{"side", "days", "air"}, d.Shows), d.Looking == "", "%s is no plan of the ceiling", at)
			var corners [][2]float64
			for _, s := range ofClass(list, "cw-text-corner") {
				if strings.HasPrefix(s.words, string(rune('A'+len(corners)))) {
					corners = append(corners, [2]float64{s.at["x"], s.at["y"]})
				}
			}
			area := 0.0
			for i, p := range corners {
				q := corners[(i+1)%len(corners)]
				area += p[0]*q[1] - p[1]*q[0]
			}
			if len(corners) > 0 {
				assert.Equal(t, d.Looking == "up", area > 0, at)
			}
		}
	}
	assert.Greater(t, drawings, 60)
}

// mirrored tells whether two shapes are the same, one looked at from the other
// side. Texts need only stand on the mirrored side by their own height.
func mirrored(t *testing.T, wide float64, up, down shape) {
	t.Helper()
	assert.Equal(t, up.element, down.element)
	assert.Equal(t, up.class, down.class)
	assert.Equal(t, up.panel, down.panel)
	assert.Equal(t, up.figure, down.figure)
	for _, name := range []string{"y", "y1", "y2", "cy", "r", "width", "height", "font-size"} {
		assert.InDelta(t, up.at[name], down.at[name], near, "%s of %v", name, up)
	}
	switch up.element {
	case "rect":
		assert.InDelta(t, wide-up.at["x"]-up.at["width"], down.at["x"], near, "%v", up)
	case "polygon", "polyline":
		require.Len(t, down.points, len(up.points))
		for i, p := range up.points {
			assert.InDelta(t, wide-p[0], down.points[i][0], near, "%v", up)
			assert.InDelta(t, p[1], down.points[i][1], near, "%v", up)
		}
	case "ellipse", "circle":
		assert.InDelta(t, wide-up.at["cx"], down.at["cx"], near, "%v", up)
	case "line":
		assert.InDelta(t, wide-up.at["x1"], down.at["x1"], near, "%v", up)
		assert.InDelta(t, wide-up.at["x2"], down.at["x2"], near, "%v", up)
	case "text":
		if up.class != "cw-text-label" {
			assert.InDelta(t, wide-up.at["x"], down.at["x"], up.at["font-size"], "%v", up)
			if up.words != down.words {
				assert.Fail(t, "another word", "%v %v", up, down)
			}
		}
	}
}

func TestCornersRunClockwiseLookingUp(t *testing.T) {
	s := sheetOf(t, "full")
	for id, clockwise := range map[string]bool{"L1.up": true, "L1.down": false, "L1.marks": true} {
		list, _, _, _ := shapes(t, drawn(t, s, id).SVG)
		corners := map[string]map[string]float64{}
		for _, c := range ofClass(list, "cw-text-corner") {
			corners[c.words] = c.at
		}
		require.Len(t, corners, 4, id)
		assert.Equal(t, clockwise, corners["W"]["x"] < corners["X"]["x"], "%s: W left of X", id)
		assert.Equal(t, clockwise, corners["Z"]["x"] < corners["Y"]["x"], "%s: Z left of Y", id)
		assert.Less(t, corners["W"]["y"], corners["Z"]["y"], id)
		assert.Less(t, corners["X"]["y"], corners["Y"]["y"], id)
	}
}

func TestTextIsNeverMirrored(t *testing.T) {
	for _, name := range []string{"full", "metric", "fixture-centred", "empty", "mask-too-large"} {
		for _, d := range sheetOf(t, name).Drawings {
			list, _, _, _ := shapes(t, d.SVG)
			for _, s := range list {
				if s.transform != "" {
					assert.True(t, strings.HasPrefix(s.transform, "rotate(-90 "), "%s: %s", d.ID, s.transform)
					assert.Equal(t, "text", s.element)
				}
			}
			assert.NotContains(t, d.SVG, "scale(")
			assert.NotContains(t, d.SVG, "matrix(")
		}
	}
}

// Every drawing says on its face and to those who cannot see it what it is and
// from where it is seen.
func TestDrawingsNameThemselves(t *testing.T) {
	s := sheetOf(t, "full")
	ids := []string{}
	for _, d := range s.Drawings {
		ids = append(ids, d.ID)
		list, _, title, caption := shapes(t, d.SVG)
		assert.Equal(t, d.Title, title)
		assert.Greater(t, len(caption), 40)
		assert.NotEmpty(t, only(list, func(s shape) bool { return s.words == d.Title }), "%s does not carry its title", d.ID)
	}
	assert.Equal(t, []string{"L1.up", "L1.down", "L1.panels", "L1.marks", "L2.up", "L2.down", "L2.panels", "L2.marks", "room.up", "platform.side", "air"}, ids)
}

func TestEveryPanelHasItsGroupAndItsTurn(t *testing.T) {
	s := sheetOf(t, "full")
	for _, l := range s.Layers {
		for _, side := range []string{".up", ".down"} {
			list, _, _, _ := shapes(t, drawn(t, s, l.ID+side).SVG)
			want, got := map[string]int{}, map[string]int{}
			for _, p := range l.Panels {
				want[l.ID+":"+p.Label] = p.Order
			}
			first := ""
			for _, shape := range list {
				switch shape.class {
				case "cw-text-order":
					turn, err := strconv.Atoi(shape.words)
					require.NoError(t, err)
					got[shape.panel] = turn
				case "cw-first":
					first = shape.panel
				case "cw-text-label":
					if shape.panel != "" {
						assert.Equal(t, shape.panel, l.ID+":"+shape.words)
					}
				}
			}
			assert.Equal(t, want, got, l.ID+side)
			assert.Equal(t, 1, got[first])
			assert.Len(t, ofClass(list, "cw-panel"), len(l.Panels)-1)
			assert.Len(t, ofClass(list, "cw-first"), 1)
		}
	}
}

// Places on the drawing are true to the millimetre: the room of 17' 9½" × 13' 4",
// the mask of 15' 9" × 11' 3½" in its middle, the light 8' 9" from DA and 6' 8"
// from AB (worked by hand).
func TestPlacesAreTrueToSize(t *testing.T) {
	list, _, _, _ := shapes(t, drawn(t, sheetOf(t, "full"), "L1.up").SVG)
	walls, box, lamp := ofClass(list, "cw-wall"), ofClass(list, "cw-box"), ofClass(list, "cw-fixture")
	require.Len(t, walls, 1)
	require.Len(t, box, 1)
	require.Len(t, lamp, 1)
	wall := walls[0].at
	assert.InDelta(t, 5422.9, wall["width"], near)
	assert.InDelta(t, 4064, wall["height"], near)
	assert.InDelta(t, 4800.6, box[0].at["width"], near)
	assert.InDelta(t, 3441.7, box[0].at["height"], near)
	assert.InDelta(t, 311.15, box[0].at["x"]-wall["x"], near)
	assert.InDelta(t, 311.15, box[0].at["y"]-wall["y"], near)
	assert.InDelta(t, 2667, lamp[0].at["cx"]-wall["x"], near)
	assert.InDelta(t, 2032, lamp[0].at["cy"]-wall["y"], near)
	assert.InDelta(t, 114.3, lamp[0].at["r"], near)
	for figure, axis := range map[string]string{"border.DA": "x", "border.BC": "x", "border.AB": "y", "border.CD": "y"} {
		line := only(list, func(s shape) bool { return s.figure == figure && s.element == "line" })
		require.Len(t, line, 1, figure)
		ends := []float64{line[0].at[axis+"1"], line[0].at[axis+"2"]}
		side := map[string]string{"x": "width", "y": "height"}[axis]
		near0, far := box[0].at[axis], box[0].at[axis]+box[0].at[side]
		assert.True(t, slices.ContainsFunc(ends, func(e float64) bool { return e > near0-near && e < near0+near || e > far-near && e < far+near }), "%s does not touch the box", figure)
		words := only(list, func(s shape) bool { return s.figure == figure && s.element == "text" })
		require.Len(t, words, 1)
		assert.Equal(t, "1′ 0¼″", words[0].words)
	}
}

// The ticks on the drawing are the marks of the table, each at its place.
func TestTicksStandAtTheirMarks(t *testing.T) {
	s := sheetOf(t, "full")
	list, _, _, _ := shapes(t, drawn(t, s, "L1.marks").SVG)
	wall := ofClass(list, "cw-wall")[0].at
	texts := ofClass(list, "cw-text-tick")
	for _, w := range s.Walls {
		for _, m := range w.Marks {
			if strings.Contains(m.Layer, "Second") {
				continue
			}
			exact, err := strconv.ParseFloat(m.Exact, 64)
			require.NoError(t, err)
			place := exact / 1e6
			found := only(ofClass(list, "cw-tick"), func(s shape) bool {
				switch w.Wall {
				case "AB":
					return is(s.at["x1"]-wall["x"], place) && is(s.at["x2"], s.at["x1"]) && is(s.at["y1"], wall["y"])
				case "CD":
					return is(s.at["x1"]-wall["x"], place) && is(s.at["x2"], s.at["x1"]) && is(s.at["y1"], wall["y"]+wall["height"])
				case "DA":
					return is(s.at["y1"]-wall["y"], place) && is(s.at["y2"], s.at["y1"]) && is(s.at["x1"], wall["x"])
				}
				return is(s.at["y1"]-wall["y"], place) && is(s.at["y2"], s.at["y1"]) && is(s.at["x1"], wall["x"]+wall["width"])
			})
			assert.NotEmpty(t, found, "%s %s at %s", w.Wall, m.Label, m.Text)
			assert.NotEmpty(t, only(texts, func(s shape) bool { return s.words == m.Text }), m.Text)
		}
	}
}

func is(a, b float64) bool { return a-b < near && b-a < near }

func TestWhatIsDrawnWhereThereIsLittleToDraw(t *testing.T) {
	for name, ids := range map[string][]string{
		"empty": {}, "blank": {}, "mask-too-large": {"room.up", "platform.side"}, "one-panel": {"L1.up", "L1.down", "L1.panels", "L1.marks", "room.up", "platform.side"}, "ten-thousand": {"L1.up", "L1.down", "L1.panels", "L1.marks", "room.up", "platform.side"},
	} {
		got := []string{}
		for _, d := range sheetOf(t, name).Drawings {
			got = append(got, d.ID)
		}
		assert.Equal(t, ids, got, name)
	}
	many := drawn(t, sheetOf(t, "ten-thousand"), "L1.up")
	assert.Less(t, len(many.SVG), 60_000, "ten thousand panels are drawn by their seams")
	list, _, _, _ := shapes(t, many.SVG)
	assert.Len(t, ofClass(list, "cw-seam"), 198)
}

// Every figure a drawing lights is on the sheet, or is a size of the room.
func TestDrawingsLightFiguresOfTheSheet(t *testing.T) {
	s := sheetOf(t, "full")
	ids := map[string]bool{"room.length": true, "room.width": true}
	for _, f := range s.Figures {
		ids[f.ID] = true
	}
	lit := map[string]bool{}
	for _, d := range s.Drawings {
		list, _, _, _ := shapes(t, d.SVG)
		for _, shape := range list {
			if shape.figure != "" {
				assert.True(t, ids[shape.figure], "%s lights %s", d.ID, shape.figure)
				lit[shape.figure] = true
			}
		}
	}
	assert.Subset(t, slices.Collect(maps.Keys(lit)), []string{"room.area", "mask.area", "border.AB", "border.BC", "border.CD", "border.DA", "box.diagonal", "seams.length"})
}
