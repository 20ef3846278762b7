package plan

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/air"
	"ceilingwright/core/finish"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/safety"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

func full(t testing.TB) []byte {
	t.Helper()
	text, err := os.ReadFile("../../testdata/plans/v1/full.json")
	require.NoError(t, err)
	return text
}

// at is the problems at a place.
func at(doc Document, place string) []problem.Problem {
	var found []problem.Problem
	for _, p := range doc.Problems {
		if p.At == place {
			found = append(found, p)
		}
	}
	return found
}

func TestAWholePlanIsReadWithoutAWord(t *testing.T) {
	doc := Read(full(t))
	require.True(t, doc.Usable)
	assert.Empty(t, doc.Problems)
	p := doc.Plan
	assert.Equal(t, "Supper room, the river house", p.Title)
	assert.Equal(t, Units{ShowFeetInches, measure.UnitInch, measure.Inch / 16, measure.Millimetre, USGallon}, p.Units)
	assert.Equal(t, Place{Rules: safety.US, Built: 1931, Textured: safety.No, Lead: safety.NoLeadTest, Pull: safety.PaintHeld}, p.Place)
	assert.Equal(t, survey.Room{Form: survey.Rectangle, Length: 427 * measure.Inch / 2, Width: 160 * measure.Inch, Height: 122 * measure.Inch}, p.Room)
	assert.Equal(t, survey.Fixture{At: survey.Measured, FromDA: 105 * measure.Inch, FromAB: 80 * measure.Inch, Across: 9 * measure.Inch}, p.Fixture)
	assert.Equal(t, mask.Outline{Length: 189 * measure.Inch, Width: 271 * measure.Inch / 2}, p.Mask.Outline)
	require.Len(t, p.Mask.Layers, 2)
	assert.Equal(t, mask.Cut{ID: "L1", Name: "First layer", Split: mask.ByCount, Columns: 5, Rows: 3}, p.Mask.Layers[0].Cut)
	assert.Equal(t, measure.Inch/32, p.Mask.Layers[0].Tolerance)
	assert.Equal(t, mask.Cut{ID: "L2", Name: "Second layer", Split: mask.ByGreatest, GreatestLength: 48 * measure.Inch, GreatestWidth: 46 * measure.Inch}, p.Mask.Layers[1].Cut)
	assert.True(t, p.Mask.Layers[1].OpenKnown)
	assert.Zero(t, p.Mask.Layers[1].Open.Cmp(measure.NumberFromFraction(1, 5)))
	assert.Equal(t, Setting{On: setout.OnRoom, Square: "room", Taped: true, LeastBorder: 2 * measure.Inch, WantEnds: measure.Foot, WantSides: 10 * measure.Inch, WantEndsKnown: true, WantSidesKnown: true}, p.Setting)
	assert.Equal(t, mask.CoverOutside, p.Seams.Cover)
	assert.Equal(t, 180*measure.Foot, p.Seams.Roll)
	assert.Equal(t, Access{By: safety.Platform, Stature: 67 * measure.Inch, Base: 54 * measure.Inch, Rails: safety.Yes, DeckGap: measure.Inch / 2, Turn: true}, p.Access)
	require.Len(t, p.Steps, 11)
	base, size, leaf := p.Steps[1], p.Steps[7], p.Steps[8]
	assert.Equal(t, finish.Base, base.Kind)
	assert.Equal(t, 2, base.Coats)
	assert.Equal(t, "375 ft²/gal", base.SpreadText)
	assert.Len(t, base.Cans, 2)
	assert.Zero(t, size.VOC.Value.Cmp(measure.MustNumber("2.5").Mul(air.PoundPerGallon)))
	assert.Equal(t, air.DryingOil, size.Binder)
	require.NotNil(t, leaf.Leaf)
	assert.True(t, leaf.Leaf.Known)
	assert.Equal(t, 20, leaf.Leaf.BooksPerPack)
	assert.Len(t, p.Steps[9].Mix, 3)
}

func TestPoundPerGallon(t *testing.T) {
	// NIST Handbook 44, appendix C: 453.59237 g over 3.785411784 L.
	assert.InDelta(t, 119.826427, air.PoundPerGallon.Float(), 1e-6)
}

func TestWhatIsNoPlanIsRefusedWhole(t *testing.T) {
	for _, c := range []struct{ name, text, at, words string }{
		{"nothing", "", "", "cut off"},
		{"white space", " \n ", "", "cut off"},
		{"another text", "dear customer", "", "not a plan"},
		{"a list", "[]", "", "not a plan of Ceilingwright"},
		{"a number", "1", "", "not a plan of Ceilingwright"},
		{"another program's file", `{"name":"x","version":1}`, "", "not a plan of Ceilingwright"},
		{"newer", `{"ceilingwright":2}`, "/ceilingwright", "version 2"},
		{"no version", `{"ceilingwright":null}`, "/ceilingwright", "which version"},
		{"version 0", `{"ceilingwright":0}`, "/ceilingwright", "which version"},
		{"half a version", `{"ceilingwright":1.5}`, "/ceilingwright", "which version"},
		{"version in words", `{"ceilingwright":"one"}`, "/ceilingwright", "which version"},
		{"version as a list", `{"ceilingwright":[1]}`, "/ceilingwright", "which version"},
		{"two plans", `{"ceilingwright":1}{"ceilingwright":1}`, "", "follows the end"},
		{"too deep", `{"ceilingwright":1,"a":` + strings.Repeat("[", 80) + strings.Repeat("]", 80) + `}`, "", "nested too deep"},
		{"a comma too many", `{"ceilingwright":1,}`, "", "line 1"},
	} {
		doc := Read([]byte(c.text))
		assert.False(t, doc.Usable, c.name)
		assert.Equal(t, Plan{}, doc.Plan, c.name)
		if assert.Len(t, doc.Problems, 1, c.name) {
			assert.Equal(t, problem.Stop, doc.Problems[0].Severity, c.name)
			assert.Equal(t, c.at, doc.Problems[0].At, c.name)
			assert.Contains(t, doc.Problems[0].What.String(), c.words, c.name)
			assert.NotEmpty(t, doc.Problems[0].Do.String(), c.name)
		}
	}
}

func TestAFileTooLargeIsNotLookedInto(t *testing.T) {
	doc := Read(bytes.Repeat([]byte(" "), 50<<20))
	assert.False(t, doc.Usable)
	require.Len(t, doc.Problems, 1)
	assert.Contains(t, doc.Problems[0].What.String(), "50 MB")
	edge := append([]byte(`{"ceilingwright":1}`), bytes.Repeat([]byte(" "), Largest-len(`{"ceilingwright":1}`))...)
	assert.True(t, Read(edge).Usable, "the largest that is read")
	assert.False(t, Read(append(edge, ' ')).Usable)
}

// Cut off at any byte, a plan is refused whole and says so.
func TestCutOffInTheMiddle(t *testing.T) {
	text := bytes.TrimSpace(full(t))
	for i := range text {
		doc := Read(text[:i])
		require.False(t, doc.Usable, "cut at %d", i)
		require.Len(t, doc.Problems, 1)
		require.Contains(t, doc.Problems[0].What.String(), "cut off", "cut at %d: %q", i, text[max(0, i-10):i])
	}
}

func TestBlanksThatCannotBeRead(t *testing.T) {
	step := func(fields string) string {
		return `"finish":{"steps":[{"kind":"base","area":"surface",` + fields + `}]}`
	}
	leaf := func(fields string) string {
		return `"finish":{"steps":[{"kind":"leaf","area":"surface","leaf":{` + fields + `}}]}`
	}
	for _, c := range []struct {
		body, at string
		severity problem.Severity
		words    string
	}{
		// lengths
		{`"room":{"length":"wide"}`, "/room/length", problem.Stop, ""},
		{`"room":{"width":"-3 ft"}`, "/room/width", problem.Stop, ""},
		{`"room":{"height":"41/2"}`, "/room/height", problem.Stop, ""},
		{`"room":{"length":1e400}`, "/room/length", problem.Stop, ""},
		{`"room":{"length":"NaN"}`, "/room/length", problem.Stop, ""},
		{`"room":{"length":"Infinity"}`, "/room/length", problem.Stop, ""},
		{`"room":{"length":true}`, "/room/length", problem.Stop, "nobody typed"},
		{`"room":{"length":{}}`, "/room/length", problem.Stop, "nobody typed"},
		{`"room":{"fixture":{"at":"measured","fromDA":"x"}}`, "/room/fixture/fromDA", problem.Stop, ""},
		{`"room":{"fixture":{"at":"measured","fromAB":"x"}}`, "/room/fixture/fromAB", problem.Stop, ""},
		{`"room":{"fixture":{"at":"middle","across":"x"}}`, "/room/fixture/across", problem.Stop, ""},
		{`"mask":{"length":"1/0"}`, "/mask/length", problem.Stop, ""},
		{`"mask":{"layers":[{"split":"count"},{"split":"sizes","columnSizes":["3 ft","x"]}]}`, "/mask/layers/1/columnSizes/1", problem.Stop, ""},
		{`"mask":{"layers":[{"split":"greatest","greatestWidth":"x"}]}`, "/mask/layers/0/greatestWidth", problem.Stop, ""},
		{`"mask":{"layers":[{"split":"count","gap":"x"}]}`, "/mask/layers/0/gap", problem.Stop, ""},
		{`"mask":{"layers":[{"split":"count","panelTolerance":"x"}]}`, "/mask/layers/0/panelTolerance", problem.Stop, ""},
		{`"setting":{"leastBorder":"x"}`, "/setting/leastBorder", problem.Stop, ""},
		{`"setting":{"wantEnds":"x"}`, "/setting/wantEnds", problem.Stop, ""},
		{`"setting":{"wantSides":"x"}`, "/setting/wantSides", problem.Stop, ""},
		{`"seams":{"rollLength":"x"}`, "/seams/rollLength", problem.Stop, ""},
		{`"seams":{"rollLength":"0"}`, "/seams/rollLength", problem.Stop, "nothing"},
		{`"access":{"reachBy":"x"}`, "/access/reachBy", problem.Stop, ""},
		{`"access":{"base":"x"}`, "/access/base", problem.Stop, ""},
		{`"access":{"deckGap":"x"}`, "/access/deckGap", problem.Stop, ""},
		// counts
		{`"mask":{"layers":[{"split":"count","columns":"2.5"}]}`, "/mask/layers/0/columns", problem.Stop, ""},
		{`"mask":{"layers":[{"split":"count","columns":"0"}]}`, "/mask/layers/0/columns", problem.Stop, "nothing"},
		{`"mask":{"layers":[{"split":"count","rows":"three"}]}`, "/mask/layers/0/rows", problem.Stop, ""},
		{`"mask":{"layers":[{"split":"count","rows":-1}]}`, "/mask/layers/0/rows", problem.Stop, ""},
		{step(`"coats":""`), "/finish/steps/0/coats", problem.Stop, "is missing"},
		{leaf(`"perBook":"0"`), "/finish/steps/0/leaf/perBook", problem.Stop, "nothing"},
		{leaf(`"booksPerPack":"x"`), "/finish/steps/0/leaf/booksPerPack", problem.Stop, ""},
		// shares
		{`"mask":{"layers":[{"split":"count","open":"101"}]}`, "/mask/layers/0/open", problem.Stop, "more than 100 per cent"},
		{`"seams":{"waste":"-5"}`, "/seams/waste", problem.Stop, ""},
		{`"seams":{"waste":""}`, "/seams/waste", problem.Note, "counted as 0"},
		{step(`"loss":"100"`), "/finish/steps/0/loss", problem.Stop, "more than 99 per cent"},
		{step(`"loss":""`), "/finish/steps/0/loss", problem.Note, "counted as 0"},
		{leaf(`"cover":"120"`), "/finish/steps/0/leaf/cover", problem.Stop, "more than 100 per cent"},
		{leaf(`"cover":""`), "/finish/steps/0/leaf/cover", problem.Stop, "is missing"},
		{leaf(`"waste":""`), "/finish/steps/0/leaf/waste", problem.Note, "counted as 0"},
		{leaf(`"lap":""`), "/finish/steps/0/leaf/lap", problem.Stop, "is missing"},
		{leaf(`"length":"0"`), "/finish/steps/0/leaf/length", problem.Stop, "nothing"},
		// numbers
		{step(`"spread":"0"`), "/finish/steps/0/spread", problem.Stop, "nothing"},
		{step(`"spread":""`), "/finish/steps/0/spread", problem.Stop, "is missing"},
		{step(`"spread":"many"`), "/finish/steps/0/spread", problem.Stop, ""},
		{step(`"by":"wet","film":""`), "/finish/steps/0/film", problem.Stop, "is missing"},
		{step(`"by":"wet","film":"0"`), "/finish/steps/0/film", problem.Stop, "nothing"},
		{step(`"voc":"x"`), "/finish/steps/0/voc", problem.Stop, ""},
		{step(`"dryHours":"soon"`), "/finish/steps/0/dryHours", problem.Stop, ""},
		{step(`"cans":[{"size":"0"}]`), "/finish/steps/0/cans/0/size", problem.Stop, "nothing"},
		{step(`"cans":[{"size":"1"},{"size":"x"}]`), "/finish/steps/0/cans/1/size", problem.Stop, ""},
		{step(`"cans":[{"size":"1","price":"cheap"}]`), "/finish/steps/0/cans/0/price", problem.Stop, ""},
		{step(`"mix":[{"amount":""}]`), "/finish/steps/0/mix/0/amount", problem.Stop, "is missing"},
		{`"finish":{"steps":[{"kind":"base","area":"typed","typedArea":"0"}]}`, "/finish/steps/0/typedArea", problem.Stop, "nothing"},
		{`"finish":{"steps":[{"kind":"base","area":"edges"}]}`, "/finish/steps/0/edgeLength", problem.Stop, "is missing"},
		{`"finish":{"steps":[{"kind":"base","area":"edges","brushWidth":"0"}]}`, "/finish/steps/0/brushWidth", problem.Stop, "nothing"},
		{`"finish":{"steps":[{"kind":"base","area":"openings","share":""}]}`, "/finish/steps/0/share", problem.Stop, "is missing"},
		{`"air":{"limit":"x"}`, "/air/limit", problem.Stop, ""},
		{`"air":{"opened":"x"}`, "/air/opened", problem.Stop, ""},
		{`"air":{"shut":"x"}`, "/air/shut", problem.Stop, ""},
		{`"air":{"mixing":"x"}`, "/air/mixing", problem.Stop, ""},
		{`"air":{"limit":"350"}`, "/air/limitUnit", problem.Note, "taken as mg/m3"},
		{`"place":{"built":"31"}`, "/place/built", problem.Stop, "four digits"},
		{`"place":{"built":"old"}`, "/place/built", problem.Stop, ""},
		// choices
		{`"units":{"show":""}`, "/units/show", problem.Note, "taken as feet-inches"},
		{`"units":{"bare":"mile"}`, "/units/bare", problem.Caution, "taken as in"},
		{`"units":{"inchMark":"1/10 in"}`, "/units/inchMark", problem.Caution, "taken as 1/16 in"},
		{`"place":{}`, "/place/rules", problem.Note, "taken as other"},
		{`"access":{"rails":"perhaps"}`, "/access/rails", problem.Caution, "taken as not said"},
		{step(`"binder":"milk"`), "/finish/steps/0/binder", problem.Caution, "“milk”"},
		// forms
		{`"room":[]`, "/room", problem.Stop, "form"},
		{`"mask":{"layers":{}}`, "/mask/layers", problem.Stop, "list"},
		{`"mask":{"layers":["L1"]}`, "/mask/layers/0", problem.Stop, "form"},
		{`"finish":{"steps":"all"}`, "/finish/steps", problem.Stop, "list"},
		{`"title":["x"]`, "/title", problem.Stop, "nobody typed"},
		// names
		{`"room":{"lenght":"3 ft"}`, "/room/lenght", problem.Note, "“lenght”"},
		{`"a/b~c":1`, "/a~1b~0c", problem.Note, "not known here"},
		{`"room":{"length":"9 ft","length":"8 ft"}`, "/room/length", problem.Caution, "twice"},
		{step(`"id":"a"},{"kind":"base","area":"surface","id":"a"`), "/finish/steps/1/id", problem.Note, "“a-2”"},
	} {
		doc := Read([]byte(`{"ceilingwright":1,` + c.body + `}`))
		assert.True(t, doc.Usable, c.body)
		found := at(doc, c.at)
		if !assert.NotEmpty(t, found, "%s: nothing at %s", c.body, c.at) {
			continue
		}
		assert.Equal(t, c.severity, found[0].Severity, "%s: %s", c.body, found[0].What.String())
		assert.Contains(t, found[0].What.String()+found[0].Do.String(), c.words, c.body)
		assert.NotEmpty(t, found[0].Do.String(), c.body)
	}
}

// One blank that cannot be read takes nothing else with it.
func TestABadBlankLeavesTheOthers(t *testing.T) {
	doc := Read([]byte(`{"ceilingwright":1,"room":{"length":"?","width":"8 ft","height":"9 ft"},"finish":{"steps":[3,{"kind":"base","coats":"2"}]}}`))
	assert.Equal(t, survey.Room{Form: survey.Rectangle, Width: 8 * measure.Foot, Height: 9 * measure.Foot}, doc.Plan.Room)
	require.Len(t, doc.Plan.Steps, 2)
	assert.Equal(t, 2, doc.Plan.Steps[1].Coats)
}

func TestBlanksOfAnotherChoiceAreLeftAlone(t *testing.T) {
	for _, body := range []string{
		`"mask":{"layers":[{"split":"count","columns":"2","rows":"2","columnSizes":["x"],"greatestLength":"x"}]}`,
		`"finish":{"steps":[{"kind":"peel","area":"mask","coats":"x","spread":"x","cans":[{"size":"x","lid":"x"}],"leaf":{"metal":"tin"}}]}`,
		`"finish":{"steps":[{"kind":"base","area":"surface","share":"x","typedArea":"x","edgeLength":"x","film":"x","leaf":{"metal":"tin"}}]}`,
	} {
		for _, p := range Read([]byte(`{"ceilingwright":1,` + body + `}`)).Problems {
			assert.NotContains(t, p.What.String(), "not known here", body)
			if strings.HasPrefix(p.At, "/mask/layers") || strings.HasSuffix(p.At, "/share") || strings.Contains(p.At, "/leaf") {
				assert.Fail(t, "asked about a blank nobody needs", "%s: %v", body, p)
			}
		}
	}
}

func TestBareNumbersAreWrittenWithTheirUnit(t *testing.T) {
	for _, c := range []struct{ typed, bare, written string }{
		{`"12"`, "in", "12 in"}, {`12`, "ft", "12 ft"}, {`" 12,5 "`, "cm", "12,5 cm"}, {`"4 1/2"`, "in", "4 1/2 in"},
		{`"12 in"`, "mm", ""}, {`"9' 4\""`, "m", ""}, {`"2½"`, "in", "2½ in"},
	} {
		doc := Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"units":{"bare":%q},"setting":{"leastBorder":%s}}`, c.bare, c.typed)))
		require.Len(t, doc.Readings, 1, c.typed)
		r := doc.Readings[0]
		if c.written != "" {
			assert.Equal(t, c.written, r.Written, c.typed)
		}
		if r.Written != "" {
			again, err := measure.Parse(r.Written, measure.UnitMetre)
			require.NoError(t, err, r.Written)
			assert.Equal(t, r.Length, again, "%s under another unit for bare numbers", r.Written)
		}
	}
}

func TestNumbersMayBeNumbers(t *testing.T) {
	quoted := Read([]byte(`{"ceilingwright":1,"units":{"bare":"mm"},"room":{"length":"4780"},"mask":{"layers":[{"split":"count","columns":"4","rows":"3","open":"12.5"}]}}`))
	plain := Read([]byte(`{"ceilingwright":1,"units":{"bare":"mm"},"room":{"length":4780},"mask":{"layers":[{"split":"count","columns":4,"rows":3,"open":12.5}]}}`))
	plain.written, plain.top = quoted.written, quoted.top
	assert.Equal(t, quoted, plain)
}

func TestTooManyLayersStepsAndStraysStayBounded(t *testing.T) {
	layers := strings.TrimSuffix(strings.Repeat(`{"split":"count","columns":"1","rows":"1"},`, MostLayers+1), ",")
	doc := Read([]byte(`{"ceilingwright":1,"mask":{"layers":[` + layers + `]}}`))
	assert.Len(t, doc.Plan.Mask.Layers, MostLayers)
	assert.NotEmpty(t, at(doc, "/mask/layers"))
	steps := strings.TrimSuffix(strings.Repeat(`{"kind":"peel","area":"mask"},`, MostSteps+1), ",")
	doc = Read([]byte(`{"ceilingwright":1,"finish":{"steps":[` + steps + `]}}`))
	assert.Len(t, doc.Plan.Steps, MostSteps)
	assert.NotEmpty(t, at(doc, "/finish/steps"))
	var strays strings.Builder
	for i := range 10_000 {
		fmt.Fprintf(&strays, `,"x%d":1`, i)
	}
	doc = Read([]byte(`{"ceilingwright":1` + strays.String() + `}`))
	assert.LessOrEqual(t, len(doc.Problems), 2*mostProblems)
}

func TestGallonOfThePlan(t *testing.T) {
	for _, c := range []struct {
		gallon     Gallon
		word, want measure.VolumeUnit
	}{
		{USGallon, measure.UnitGallon, measure.UnitGallon}, {ImperialGallon, measure.UnitGallon, measure.UnitImperialGallon},
		{ImperialGallon, measure.UnitQuart, measure.UnitImperialQuart}, {ImperialGallon, measure.UnitPint, measure.UnitImperialPint},
		{ImperialGallon, measure.UnitFluidOunce, measure.UnitImperialFluidOunce}, {ImperialGallon, measure.UnitTeaspoon, measure.UnitTeaspoon},
		{ImperialGallon, measure.UnitLitre, measure.UnitLitre},
	} {
		assert.Equal(t, c.want, c.gallon.Volume(c.word), "%s %s", c.gallon, c.word)
	}
}

func TestNotations(t *testing.T) {
	u := Units{Show: ShowMetric, InchMark: measure.Inch / 8, MetricMark: measure.Millimetre, Gallon: ImperialGallon}
	assert.Equal(t, measure.Notation{System: measure.Metric, InchMark: measure.Inch / 8, MetricMark: measure.Millimetre, Imperial: true}, u.Notation())
	assert.Equal(t, measure.FeetInches, u.OtherNotation().System)
	u.Show = ShowFeetInches
	assert.Equal(t, measure.Metric, u.OtherNotation().System)
}

func FuzzRead(f *testing.F) {
	f.Add(full(f))
	f.Add([]byte(`{"ceilingwright":1,"room":{"length":4780,"length":null}}`))
	f.Add([]byte(`{"ceilingwright":"1","mask":{"layers":[null,{}]}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		doc := Read(text)
		if !doc.Usable && len(doc.Problems) != 1 {
			t.Fatalf("refused with %d problems", len(doc.Problems))
		}
		for _, p := range doc.Problems {
			if p.What.String() == "" || p.Do.String() == "" || p.At != "" && p.At[0] != '/' {
				t.Fatalf("%+v", p)
			}
		}
		for _, r := range doc.Readings {
			if r.Length < 0 || r.Length > measure.Longest {
				t.Fatalf("%+v", r)
			}
		}
	})
}

// A blank is what is not there, an empty text, and a list without an entry.
func TestIsBlank(t *testing.T) {
	doc := Read([]byte(`{"ceilingwright":1,"room":{"length":"","width":"4 m"},"mask":{"layers":[],"width":"0"},"finish":{"steps":[{"name":""},{"name":"base"}]}}`))
	for at, want := range map[string]bool{
		"/room/length": true, "/room/width": false, "/room/height": true, "/room": false, "/days/start": true, "/mask/layers": true, "/mask/width": false,
		"/finish/steps/0/name": true, "/finish/steps/1/name": false, "/finish/steps/2/name": true, "/finish/steps/x": true, "/room/width/deeper": true,
	} {
		assert.Equal(t, want, doc.IsBlank(at), at)
	}
	unread := Read([]byte("no plan"))
	assert.True(t, unread.IsBlank("/room/length"))
}
