package svg

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/drawing"
	"ceilingwright/core/measure"
)

// element is one element as a reader of the SVG sees it.
type element struct {
	name       string
	attributes map[string]string
	words      string
}

func read(t testing.TB, text string) []element {
	t.Helper()
	decoder := xml.NewDecoder(strings.NewReader(text))
	var found []element
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return found
		}
		require.NoError(t, err, text)
		switch e := token.(type) {
		case xml.StartElement:
			attributes := map[string]string{}
			for _, a := range e.Attr {
				_, twice := attributes[a.Name.Local]
				require.False(t, twice, "%s stands twice in %s", a.Name.Local, e.Name.Local)
				attributes[a.Name.Local] = a.Value
			}
			found = append(found, element{e.Name.Local, attributes, ""})
		case xml.CharData:
			found[len(found)-1].words += string(e)
		}
	}
}

func mm(n float64) measure.Length { return measure.Length(n * 1e6) }

func point(x, y float64) drawing.Point { return drawing.Point{X: mm(x), Y: mm(y)} }

// one is a drawing from (-100, -50) to (300, 150) with one item.
func one(item drawing.Item) *drawing.Drawing {
	d := &drawing.Drawing{Title: "Title", Caption: "Caption", Min: point(-100, -50), Max: point(300, 150)}
	d.Put(&item)
	return d
}

func TestItemsKeepTheirPlace(t *testing.T) {
	for _, c := range []struct {
		name string
		item drawing.Item
		want element
	}{
		{"line", drawing.Item{Shape: drawing.Line, Part: drawing.Seam, From: point(0, 0), To: point(10.25, -0.04)},
			element{name: "line", attributes: map[string]string{"x1": "100", "y1": "50", "x2": "110.3", "y2": "50", "class": "cw-seam"}}},
		{"rect", drawing.Item{Shape: drawing.Rect, Part: drawing.Wall, From: point(0, 0), To: point(200, 100)},
			element{name: "rect", attributes: map[string]string{"x": "100", "y": "50", "width": "200", "height": "100", "class": "cw-wall"}}},
		{"rect from any corner", drawing.Item{Shape: drawing.Rect, Part: drawing.Box, From: point(200, 0), To: point(0, 100)},
			element{name: "rect", attributes: map[string]string{"x": "100", "y": "50", "width": "200", "height": "100", "class": "cw-box"}}},
		{"circle", drawing.Item{Shape: drawing.Circle, Part: drawing.Fixture, From: point(12.7, 25.4), Size: mm(114.3)},
			element{name: "circle", attributes: map[string]string{"cx": "112.7", "cy": "75.4", "r": "114.3", "class": "cw-fixture"}}},
		{"ellipse", drawing.Item{Shape: drawing.Ellipse, Part: drawing.Wall, From: point(100, 50), To: point(0, 100)},
			element{name: "ellipse", attributes: map[string]string{"cx": "200", "cy": "100", "rx": "100", "ry": "50", "class": "cw-wall"}}},
		{"polygon", drawing.Item{Shape: drawing.Polygon, Part: drawing.Panel, Corners: []drawing.Point{point(0, 0), point(10, 1.04), point(9.96, 20)}},
			element{name: "polygon", attributes: map[string]string{"points": "100,50 110,51 110,70", "class": "cw-panel"}}},
		{"path", drawing.Item{Shape: drawing.Path, Part: drawing.Route, Corners: []drawing.Point{point(0, 0), point(-100.5, 1)}},
			element{name: "polyline", attributes: map[string]string{"points": "100,50 -0.5,51", "class": "cw-route"}}},
		{"left of the sheet", drawing.Item{Shape: drawing.Line, Part: drawing.Tick, From: point(-100.5, 0), To: point(-101, 0)},
			element{name: "line", attributes: map[string]string{"x1": "-0.5", "x2": "-1", "class": "cw-tick"}}},
		{"text", drawing.Item{Shape: drawing.Text, Part: drawing.Order, From: point(0, 0), Size: mm(20), Words: "12"},
			element{name: "text", attributes: map[string]string{"x": "100", "y": "50", "font-size": "20", "text-anchor": "middle", "class": "cw-text-order"}, words: "12"}},
		{"turned text", drawing.Item{Shape: drawing.Text, Part: drawing.Dimension, Anchor: drawing.End, From: point(1.5, 2), Size: mm(20), Words: "9′ 2½″", Turned: true},
			element{name: "text", attributes: map[string]string{"text-anchor": "end", "transform": "rotate(-90 101.5 52)", "class": "cw-text-dimension"}, words: "9′ 2½″"}},
	} {
		found := read(t, written(one(c.item)))
		got := found[len(found)-1]
		assert.Equal(t, c.want.name, got.name, c.name)
		assert.Equal(t, c.want.words, got.words, c.name)
		for name, v := range c.want.attributes {
			assert.Equal(t, v, got.attributes[name], "%s: %s", c.name, name)
		}
	}
	start := read(t, written(one(drawing.Item{Shape: drawing.Text, Anchor: drawing.Start, Words: "x"})))
	assert.Empty(t, start[len(start)-1].attributes["text-anchor"], "the start is what SVG takes unsaid")
}

func TestSheetNamesAndSizesItself(t *testing.T) {
	found := read(t, written(one(drawing.Item{})))
	require.Equal(t, "svg", found[0].name)
	assert.Equal(t, "0 0 400 200", found[0].attributes["viewBox"])
	assert.Equal(t, "img", found[0].attributes["role"])
	assert.Equal(t, element{"title", map[string]string{}, "Title"}, found[1])
	assert.Equal(t, element{"desc", map[string]string{}, "Caption"}, found[2])
}

func TestGroupsCarryWhatTheyBelongTo(t *testing.T) {
	d := one(drawing.Item{Shape: drawing.Line})
	d.Begin("border.DA", "")
	d.Put(&drawing.Item{Shape: drawing.Line})
	d.Begin("", "L1:B3")
	d.Put(&drawing.Item{Shape: drawing.Rect, Part: drawing.FirstUp})
	var groups []map[string]string
	for _, e := range read(t, written(d)) {
		if e.name == "g" {
			groups = append(groups, e.attributes)
		}
	}
	assert.Equal(t, []map[string]string{{"data-figure": "border.DA"}, {"data-panel": "L1:B3"}}, groups, "what belongs to nothing has no group")
}

// Every part has a look as a line and as a text, so that a drawing is whole
// without any style sheet.
func TestEveryPartHasALook(t *testing.T) {
	for part := drawing.Wall; part <= drawing.Order; part++ {
		line := read(t, written(one(drawing.Item{Shape: drawing.Line, Part: part})))
		assert.NotEmpty(t, part.String())
		assert.Equal(t, "cw-"+part.String(), line[len(line)-1].attributes["class"])
		if part != drawing.Corner && part != drawing.Label { // texts alone
			assert.NotEmpty(t, line[len(line)-1].attributes["stroke"], part.String())
		}
		text := read(t, written(one(drawing.Item{Shape: drawing.Text, Part: part, Words: "x"})))
		assert.NotEmpty(t, text[0].attributes["font-family"], "letters are inherited from the root")
		assert.NotEmpty(t, text[0].attributes["fill"], "ink is inherited from the root")
		assert.Equal(t, "cw-text-"+part.String(), text[len(text)-1].attributes["class"])
	}
}

var hostile = []string{
	`</text><script>alert(1)</script>`, `"><svg onload="alert(1)">`, `' onload='alert(1)`, `]]>`, `<!--`, `&amp;&lt;&#0;`, "\x00\x01\x1f\u007f", "\ufffe\uffff",
	"\xff\xfe", "\u202eגבוה", strings.Repeat("W", 10_000), "tab\tand\nline",
}

func TestHostileTextStaysText(t *testing.T) {
	for _, words := range hostile {
		d := &drawing.Drawing{Title: words, Caption: words, Max: point(10, 10)}
		d.Begin(words, words)
		d.Put(&drawing.Item{Shape: drawing.Text, Words: words})
		assertHarmless(t, written(d), words)
	}
}

func assertHarmless(t testing.TB, text, words string) {
	t.Helper()
	found := read(t, text)
	require.Len(t, found, 5, "%q put an element into %s", words, text)
	want := readable(words)
	for i, name := range []string{"svg", "title", "desc", "g", "text"} {
		require.Equal(t, name, found[i].name)
		for a := range found[i].attributes {
			require.False(t, strings.HasPrefix(a, "on") || strings.Contains(a, "href"), "%q put %s into %s", words, a, name)
		}
	}
	require.Equal(t, want, found[1].words)
	require.Equal(t, want, found[4].words)
	require.Equal(t, want, found[3].attributes["data-panel"], text)
}

// readable is a text without what XML cannot hold.
func readable(words string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0xFFFE || r == 0xFFFF {
			return -1
		}
		return r
	}, strings.ToValidUTF8(strings.Map(func(r rune) rune { return r }, words), "\uFFFD"))
}

func FuzzWrite(f *testing.F) {
	for _, words := range hostile {
		f.Add(words)
	}
	f.Fuzz(func(t *testing.T, words string) {
		if readable(words) == "" {
			return // an empty name is no attribute
		}
		d := &drawing.Drawing{Title: words, Caption: words, Max: point(10, 10)}
		d.Begin(words, words)
		d.Put(&drawing.Item{Shape: drawing.Text, Words: words})
		assertHarmless(t, written(d), words)
	})
}

// written is a drawing as SVG, in room of its own.
func written(d *drawing.Drawing) string { return string(Append(nil, d)) }
