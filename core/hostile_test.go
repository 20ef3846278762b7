package core_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// What each hostile input must be told: where, how bad, and some of the words.
// whole tells that the file is refused as a whole, with no figure at all.
// Otherwise at least the figures of the room or of the mask are there.
var told = map[string]struct {
	at       string
	severity problem.Severity
	words    string
	whole    bool
}{
	"air-of-nothing":                {at: "/air/limit", severity: problem.Caution},
	"air-past-all-reason":           {at: "/finish/steps/0/voc", severity: problem.Stop},
	"arrays-for-objects":            {at: "/room", severity: problem.Stop},
	"bad-utf8":                      {at: "", words: ""},
	"code-numbers":                  {at: "/room/length", severity: problem.Stop},
	"columns-that-do-not-add-up":    {at: "/mask/layers/0/columnSizes", severity: problem.Stop, words: "10′ 9″ less"},
	"corners-that-cross":            {at: "/room/points/2", severity: problem.Stop, words: "cross or touch"},
	"band-of-a-hair":                {at: "/finish/steps/0/leaf/length", severity: problem.Stop, words: "takes more than 100000000 leaves"},
	"cut-off":                       {severity: problem.Stop, words: "cut off", whole: true},
	"days-of-everything":            {at: "/days/weekdays/2", severity: problem.Stop, words: "no such day of the week"},
	"empty-blanks":                  {at: "/room/length", severity: problem.Stop, words: "not given"},
	"empty-file":                    {severity: problem.Stop, words: "cut off", whole: true},
	"exponent-400":                  {at: "/room/length", severity: problem.Stop},
	"far-too-many-leaves":           {at: "/finish/steps/0/leaf/length", severity: problem.Stop},
	"fixture-outside":               {at: "/room/fixture/fromDA", severity: problem.Stop, words: "outside the room"},
	"gaps-larger-than-the-mask":     {at: "/mask/layers/0/gap", severity: problem.Stop, words: "leaves no panel"},
	"gilded-panel-by-panel":         {at: "/days", severity: problem.Stop, words: "the 1000 pieces that are planned"},
	"half-a-panel":                  {at: "/mask/layers/0/columns", severity: problem.Stop},
	"huge-exponent":                 {at: "/finish/steps/0/spread", severity: problem.Stop},
	"huge-version":                  {at: "/ceilingwright", severity: problem.Stop, whole: true},
	"labels-nobody-sees":            {at: "/mask/layers/0/labels", severity: problem.Stop, words: "too few"},
	"lap-as-wide-as-the-leaf":       {at: "/finish/steps/0/leaf/lap", severity: problem.Stop},
	"layer-nobody-has":              {at: "/finish/steps/0/layer", severity: problem.Stop},
	"letters":                       {at: "/room/width", severity: problem.Stop},
	"lone-surrogates":               {at: "/room/length", severity: problem.Stop},
	"long-number":                   {at: "/finish/steps/0/spread", severity: problem.Stop},
	"loss-of-all":                   {at: "/finish/steps/0/loss", severity: problem.Stop, words: "99 per cent"},
	"many-cans":                     {at: "/finish/steps/0/cans", severity: problem.Stop},
	"many-coats":                    {at: "/finish/steps/0/coats", severity: problem.Stop},
	"many-layers":                   {at: "/mask/layers", severity: problem.Stop, words: "40 layers"},
	"many-steps":                    {at: "/finish/steps", severity: problem.Stop, words: "100 steps"},
	"marks-beyond-belief":           {at: "/mask/layers/1/register/marks", severity: problem.Stop, words: "100 are read"},
	"mask-larger-than-room":         {at: "/mask/length", severity: problem.Stop, words: "12′ 2½″ too much"},
	"mixes-past-reason":             {at: "/finish/climate/air", severity: problem.Stop, words: "would be at"},
	"million-columns":               {at: "/mask/layers/0/columns", severity: problem.Stop},
	"negative":                      {at: "/room/length", severity: problem.Stop},
	"nested-deep":                   {severity: problem.Stop, words: "nested too deep", whole: true},
	"newer-version":                 {at: "/ceilingwright", severity: problem.Stop, words: "version 2", whole: true},
	"no-platform-so-high":           {at: "/access/reachBy", severity: problem.Stop},
	"not-json":                      {severity: problem.Stop, words: "line 1", whole: true},
	"null-bytes":                    {severity: problem.Stop, words: "control character", whole: true},
	"null-characters":               {at: "/room/length", severity: problem.Stop},
	"objects-for-texts":             {at: "/room/length", severity: problem.Stop, words: "nobody typed"},
	"one-over-zero":                 {at: "/mask/length", severity: problem.Stop},
	"other-program":                 {severity: problem.Stop, words: "not a plan", whole: true},
	"other-program-list":            {severity: problem.Stop, words: "not a plan", whole: true},
	"panels-measured-past-reason":   {at: "/mask/layers/0/panels/0/length", severity: problem.Caution, words: "was ordered"},
	"pieces-over-each-other":        {at: "/mask/layers/0/pieces/1/cells", severity: problem.Stop, words: "belongs to the piece “P” already"},
	"price-past-reason":             {at: "/price/tax", severity: problem.Stop, words: "negative"},
	"readings-past-reason":          {at: "/room/readings", severity: problem.Stop},
	"repeated-names":                {at: "/room/length", severity: problem.Caution, words: "stands twice"},
	"room-of-a-nanometre":           {at: "/room/length", severity: problem.Caution},
	"same-ids-twice":                {at: "/mask/layers/1/id", severity: problem.Caution, words: "“L1-2”"},
	"script-everywhere":             {at: "/room/width", severity: problem.Stop},
	"spread-of-almost-nothing":      {at: "/finish/steps/0/spread", severity: problem.Stop},
	"spread-of-nothing":             {at: "/finish/steps/0/spread", severity: problem.Stop},
	"thousand-kilometres":           {at: "/room/length", severity: problem.Stop},
	"thousand-kilometres-in-metres": {at: "/room/length", severity: problem.Stop, words: "100 m"},
	"tiny-can":                      {at: "/finish/steps/0/cans/0/size", severity: problem.Stop},
	"tolerance-of-a-mile":           {at: "/mask/layers/0/panelTolerance", severity: problem.Caution},
	"too-many-panels":               {at: "/mask/layers/0/columns", severity: problem.Stop},
	"unknown-fields":                {at: "/fin~1ish~0", severity: problem.Note, words: "not known here"},
	"walls-without-end":             {at: "/room/walls", severity: problem.Stop},
	"version-in-words":              {at: "/ceilingwright", severity: problem.Stop, whole: true},
	"words-for-no-number":           {at: "/finish/steps/0/spread", severity: problem.Stop},
	"year-of-none":                  {at: "/place/built", severity: problem.Stop},
	"zero":                          {at: "/room/height", severity: problem.Stop},
}

// That each gets a whole sheet, FuzzCompute holds.
func TestHostileInputsGetASheetAndAReason(t *testing.T) {
	t.Parallel()
	files := kept(t, "hostile")
	assert.Equal(t, slices.Sorted(maps.Keys(told)), slices.Sorted(maps.Keys(files)), "each hostile input has a line here")
	for name, text := range files {
		want := told[name]
		s := sheetOf(t, text)
		if want.severity != "" {
			assert.True(t, slices.ContainsFunc(s.Problems, func(p sheet.Problem) bool {
				return p.At == want.at && p.Severity == want.severity && strings.Contains(p.What+p.Do, want.words)
			}), "%s: nothing at %q among %v", name, want.at, s.Problems)
		}
		rest := figures(s)
		_, room := rest["room.area"]
		_, mask := rest["mask.area"]
		_, deck := rest["platform.height"]
		assert.Equal(t, want.whole, len(s.Figures) == 0, "%s: %d figures", name, len(s.Figures))
		assert.Equal(t, want.whole, !room && !mask && !deck, name)
	}
}

// A plan cut off anywhere is refused as a whole: half a job is never computed.
func TestAPlanCutOffAnywhereIsRefused(t *testing.T) {
	text := planNamed(t, "numbers")
	end := strings.LastIndexByte(string(text), '}')
	for i := range end + 1 {
		s := sheetOf(t, text[:i])
		if assert.Len(t, s.Problems, 1, "cut at %d", i) {
			assert.Equal(t, problem.Stop, s.Problems[0].Severity)
			assert.Contains(t, s.Problems[0].What, "cut off", "cut at %d", i)
		}
		assert.Empty(t, s.Figures)
	}
}

// What a plan says stands in the sheet as text and nowhere as a tag.
func TestScriptStaysText(t *testing.T) {
	files := kept(t, "hostile")
	text := changed(t, files["script-everywhere"], "/room/width", "13' 4\"")
	s := sheetOf(t, text)
	named := 0
	for _, d := range s.Drawings {
		if d.Layer != "" {
			named++
			assert.Contains(t, d.SVG, "&lt;script&gt;", d.ID)
		}
		assert.NotContains(t, d.SVG, "<script", d.ID)
		assert.NotContains(t, d.SVG, "onload=alert(1)>", d.ID)
	}
	assert.Equal(t, 4, named)
	assert.Contains(t, s.Plan.Title, "<script>", "the title is kept as typed")
}

// However many layers a plan has, all of them together have no more panels than
// one may have, or no page could hold the sheet.
func TestAllLayersTogetherAreBounded(t *testing.T) {
	layer := `{"id":"%","split":"count","columns":"100","rows":"60","gap":"0"}`
	text := `{"ceilingwright":1,"room":{"length":"30 m","width":"30 m"},"mask":{"length":"20 m","width":"20 m","layers":[` +
		strings.ReplaceAll(layer, "%", "A") + "," + strings.ReplaceAll(layer, "%", "B") + "," + strings.ReplaceAll(layer, `"60"`, `"40"`) + `]}}`
	s := sheetOf(t, []byte(text))
	assert.Equal(t, []int{6000, 0, 4000}, []int{s.Layers[0].Count, s.Layers[1].Count, s.Layers[2].Count})
	assert.True(t, slices.ContainsFunc(s.Problems, func(p sheet.Problem) bool {
		return p.At == "/mask/layers/1" && p.Severity == problem.Stop && strings.Contains(p.What, "12\u202f000 panels")
	}))
}
