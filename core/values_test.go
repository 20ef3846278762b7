package core_test

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/sheet"
)

// Values from outside, from the text of a plan through to the figures of its
// sheet. Each names where it comes from.

func value(t *testing.T, s sheet.Sheet, id string) float64 {
	t.Helper()
	f, ok := figures(s)[id]
	require.True(t, ok, "no figure %s; problems: %v", id, s.Problems)
	n, err := strconv.ParseFloat(f.Value, 64)
	require.NoError(t, err)
	return n
}

func text(t *testing.T, s sheet.Sheet, id string) string {
	t.Helper()
	f, ok := figures(s)[id]
	require.True(t, ok, "no figure %s; problems: %v", id, s.Problems)
	return f.Text
}

const (
	inch  = 25_400_000.0 // nm
	metre = 1e9          // nm
	foot2 = 0.09290304   // m²
	usGal = 3.785411784  // L, NIST Handbook 44, appendix C
)

// job is the plan of an even grid with some places changed.
func job(t *testing.T, places map[string]any) sheet.Sheet {
	t.Helper()
	plan := planNamed(t, "even-grid")
	for _, at := range []string{"/units/show", "/units/bare", "/units/gallon", "/place/rules", "/room/length", "/room/width", "/room/height", "/mask/length", "/mask/width",
		"/mask/layers", "/setting/on", "/seams/cover", "/seams/waste", "/seams/rollLength", "/finish/steps", "/air", "/access/reachBy"} {
		if v, ok := places[at]; ok {
			plan = changed(t, plan, at, v)
			delete(places, at)
		}
	}
	require.Empty(t, places)
	return sheetOf(t, plan)
}

// paint is one liquid step over a typed area.
func paint(fields map[string]any) []any {
	step := map[string]any{"id": "p", "kind": "coat", "name": "Paint", "area": "typed", "typedUnit": "ft2", "coats": "1", "by": "spread",
		"spreadUnit": "ft2/gal", "loss": "0", "cans": []any{}, "mix": []any{}, "binder": "water", "vocUnit": "g/L", "filmUnit": "mil"}
	for name, v := range fields {
		step[name] = v
	}
	return []any{step}
}

func can(size, unit, price string) map[string]any {
	return map[string]any{"size": size, "unit": unit, "price": price}
}

func TestBordersOfTheTrade(t *testing.T) {
	// Room 188 × 122 in, mask 180 × 115 in: common practice, no source.
	s := sheetNamed(t, "trade-border")
	assert.Equal(t, 4*inch, value(t, s, "border.DA"))
	assert.Equal(t, 4*inch, value(t, s, "border.BC"))
	assert.Equal(t, 3.5*inch, value(t, s, "border.AB"))
	assert.Equal(t, 3.5*inch, value(t, s, "border.CD"))
	assert.Equal(t, "143.8 ft²", text(t, s, "mask.area"))
	assert.InDelta(t, 143.75*foot2, value(t, s, "mask.area"), 1e-12)
	assert.InDelta(t, 159.27777777777777*foot2, value(t, s, "room.area"), 1e-9)
}

func TestLampOffTheMiddle(t *testing.T) {
	// A reader's question on a ceiling light off the middle: room 14'3" × 11'7", field
	// 10 × 8 ft, lamp 3½ in and 1¼ in off the middle.
	s := sheetNamed(t, "fixture-centred")
	assert.Equal(t, 29*inch, value(t, s, "border.DA"))
	assert.Equal(t, 22*inch, value(t, s, "border.BC"))
	assert.Equal(t, 20.25*inch, value(t, s, "border.AB"))
	assert.Equal(t, 22.75*inch, value(t, s, "border.CD"))
	require.Len(t, s.Choices, 2)
	assert.Equal(t, sheet.Borders{AB: "1′ 9½″", BC: "2′ 1½″", CD: "1′ 9½″", DA: "2′ 1½″"}, s.Choices[0].Borders, "on the room: 25½ and 21½ in")
	assert.True(t, s.Choices[1].Taken)
	assert.Equal(t, "7″", s.Choices[1].Ends, "twice 3½ in")
	assert.Equal(t, "2½″", s.Choices[1].Sides, "twice 1¼ in")
}

func TestTapeRoundEveryPanel(t *testing.T) {
	// A guide to wall stencils: 4 × 3 panels of 48 × 36 in, every seam
	// and the outside once: 109 ft a layer; a roll of 180 ft does one layer of two.
	s := sheetNamed(t, "tape-and-roller")
	assert.Equal(t, 218*12*inch, value(t, s, "tape.length"))
	assert.Equal(t, 2.0, value(t, s, "tape.rolls"))
	assert.Equal(t, (324+384)*inch, value(t, s, "L1.seams.length"))
	assert.Equal(t, 6.0, value(t, s, "L1.seams.crossings"), "(4 − 1) × (3 − 1)")
}

func TestRollerGoesOverTheWholeMask(t *testing.T) {
	// A sign maker's page on paint masks: 168 ft², 4 coats at 400 ft²/gal is
	// 1.68 gal to buy, whatever share is open.
	s := sheetNamed(t, "tape-and-roller")
	assert.InDelta(t, 1.68*usGal, value(t, s, "step.roller.product"), 1e-9)
	assert.Equal(t, value(t, s, "mask.area"), value(t, s, "step.open.area"))
}

func TestMixAndFilm(t *testing.T) {
	s := sheetNamed(t, "mix-and-film")
	// NIST Handbook 44, appendix C: 1 fl oz = 6 tsp, so 12 fl oz + 6 tsp + 8 tsp.
	assert.Equal(t, "14.33 fl oz", text(t, s, "step.mix.mix"))
	assert.Contains(t, figures(s)["step.mix.mix"].Working.Sum, " = 86 tsp = ")
	assert.InDelta(t, 86*usGal/768, value(t, s, "step.mix.mix"), 1e-12)
	// MIL-HDBK-1110 §2.1.5 prints 1600 ft² for a gallon one mil thick, coating
	// bulletins 1604; 231 in³ over 0.001 in is 1604.1667 ft².
	assert.InDelta(t, 1.2*usGal, value(t, s, "step.gallon.product"), 1e-11, "1925 ft² at 1 mil")
	assert.InEpsilon(t, 1600*foot2, 1925*foot2/value(t, s, "step.gallon.product")*usGal, 0.003)
	assert.Contains(t, figures(s)["step.gallon.wet"].Working.Sum, "÷ 1604.2 ft²/gal = 1.0 mil")
	assert.InDelta(t, 25.4, value(t, s, "step.gallon.wet"), 1e-9, "1 mil in µm")
	// A litre over 10 m² stands 0.1 mm high: arithmetic.
	assert.InDelta(t, 1, value(t, s, "step.litre.product"), 1e-12)
	assert.InDelta(t, 100, value(t, s, "step.litre.wet"), 1e-12)
}

func TestLengthsPeopleWrite(t *testing.T) {
	for _, c := range []struct {
		typed, bare string
		millimetres float64
		source      string
	}{
		{`5' 3/4"`, "in", 1543.05, "ruby-units issue 276"},
		{`60 ft 1 in`, "in", 18313.4, "UnitsNet issue 72"},
		{`4 1/2`, "in", 114.3, "numi issue 179"},
		{`9' 2½"`, "in", 2806.7, "vanilla-cookbook issue 192"},
		{`7-0-1/2`, "in", 2146.3, "obsidian-unit-converter issue 47"},
		{`1 ft 2 inches`, "in", 355.6, "Everything-Metric-Firefox issue 35"},
		{`9’ 4”`, "in", 2844.8, "instant-smart-quotes issue 16"},
		{`9' 4''`, "in", 2844.8, "333.fm issue 15"},
		{`3,85 m`, "in", 3850, "adevinta-spain-components issue 289"},
		{"3 850 mm", "in", 3850, "numbro issue 765"},
		{`4 in`, "cm", 101.6, "thoth issue 259"},
	} {
		s := job(t, map[string]any{"/room/length": c.typed, "/units/bare": c.bare})
		for _, r := range s.Readings {
			if r.At == "/room/length" {
				assert.Equal(t, fmt.Sprintf("%.0f", c.millimetres*1e6), r.Nanometres, "%s (%s)", c.typed, c.source)
			}
		}
	}
	for typed, source := range map[string]string{"41/2": "numi issue 179", "nan": "Go issue 30990", "Inf": "Go issue 30990", "0x10": "Go issue 30990",
		"1_0": "Go issue 30990", "1e400": "Go issue 30990"} {
		s := job(t, map[string]any{"/room/length": typed})
		require.NotEmpty(t, s.Problems, "%s (%s)", typed, source)
		assert.Equal(t, "/room/length", s.Problems[0].At, "%s (%s)", typed, source)
	}
}

func TestPanelsAgainstTheBox(t *testing.T) {
	// A tiler's question: 7 panels of 36 in with 1/16 in at each of 6
	// seams are 252 3/8 in.
	layer := map[string]any{"id": "L1", "split": "sizes", "columnSizes": []any{"36", "36", "36", "36", "36", "36", "36"}, "rowSizes": []any{"48"}, "gap": "1/16"}
	s := job(t, map[string]any{"/room/length": "24'", "/mask/length": "252", "/mask/width": "48", "/mask/layers": []any{layer}})
	assert.Equal(t, 0.375*inch, value(t, s, "L1.runout.length"))
	assert.Equal(t, 0.0, value(t, s, "L1.seam.length"), "closing each of 6 gaps by 1/16 in lands on both lines")

	// A large-format printer's article on shrinkage: 6 panels of 48 in, each off
	// by 0.2 %, are 0.576 in off at the far end and 0.288 in hung from the centre.
	layer = map[string]any{"id": "L1", "split": "count", "columns": "6", "rows": "1", "panelTolerance": "0.096"}
	s = job(t, map[string]any{"/room/length": "26'", "/mask/length": "288", "/mask/layers": []any{layer}})
	assert.Equal(t, 0.576*inch, value(t, s, "L1.worst.length"))
	assert.Contains(t, figures(s)["L1.worst.length"].Working.Rule, "it is 9⁄32″", "0.288 in")
}

func TestProductAndCans(t *testing.T) {
	// An almanac's page on paint: a ceiling of 150 ft² at 100 ft² a quart takes
	// 2 quarts.
	s := job(t, map[string]any{"/finish/steps": paint(map[string]any{"typedArea": "150", "spread": "400", "cans": []any{can("1", "qt", "9")}})})
	assert.Equal(t, "2 × 1 qt", text(t, s, "step.p.cans"))

	// A paint coverage page: 359 ft², 2 coats at 350 is 2.051 gal;
	// two gallons are short.
	s = job(t, map[string]any{"/finish/steps": paint(map[string]any{"typedArea": "359", "coats": "2", "spread": "350", "cans": []any{can("1", "gal", "30"), can("1", "qt", "10")}})})
	assert.InDelta(t, 2.051*usGal, value(t, s, "step.p.product"), 0.002)
	assert.Equal(t, "2 × 1 gal + 1 × 1 qt", text(t, s, "step.p.cans"))

	// Pages on the sizes of tins: 7.3 L from 2.5 L at 28, 5 L at 48 and 10 L at 85
	// is 5 + 2.5 for 76.
	s = job(t, map[string]any{"/finish/steps": paint(map[string]any{"typedArea": "7.3", "typedUnit": "m2", "spread": "1", "spreadUnit": "m2/L",
		"cans": []any{can("2.5", "L", "28"), can("5", "L", "48"), can("10", "L", "85")}})})
	assert.Equal(t, "1 × 2.5 L + 1 × 5 L", text(t, s, "step.p.cans"))
	assert.Contains(t, figures(s)["step.p.cans"].Working.Sum, "76.00")

	// A consumer column, April 2021: a jug of 116 fl oz is no gallon.
	s = job(t, map[string]any{"/finish/steps": paint(map[string]any{"typedArea": "400", "spread": "400", "cans": []any{can("116", "floz", "30")}})})
	assert.Equal(t, 2.0, value(t, s, "step.p.cans"))

	// A worked example of a coating column quoted on the web: 9.310489 L with 30 %
	// loss takes 13.3 L.
	s = job(t, map[string]any{"/finish/steps": paint(map[string]any{"typedArea": "9.310489", "typedUnit": "m2", "spread": "1", "spreadUnit": "m2/L", "loss": "30"})})
	assert.InDelta(t, 13.30069857, value(t, s, "step.p.product"), 1e-8)
}

func TestTwoGallons(t *testing.T) {
	// A page on gallons: the two differ by 1.20095; 12 L are 3.170
	// US and 2.640 imperial gallons.
	step := paint(map[string]any{"typedArea": "100", "spread": "100"})
	us := value(t, job(t, map[string]any{"/finish/steps": step}), "step.p.product")
	imperial := value(t, job(t, map[string]any{"/finish/steps": step, "/units/gallon": "imperial"}), "step.p.product")
	assert.InDelta(t, 1.20095, imperial/us, 1e-5)
	assert.InDelta(t, 3.170, 12/us, 5e-4)
	assert.InDelta(t, 2.640, 12/imperial, 5e-4)
}

func TestLeafOfAWholeCeiling(t *testing.T) {
	leaf := func(side, lap, waste string) []any {
		return []any{map[string]any{"id": "l", "kind": "leaf", "name": "Leaf", "area": "surface",
			"leaf": map[string]any{"metal": "imitation", "length": side, "width": side, "lap": lap, "cover": "100", "waste": waste, "perBook": "25"}}}
	}
	// A gilder's notes, November 2012: 168 × 144 in in leaf of 5½ in is 799.7
	// leaves by bare area and 877.7 with ¼ in lap.
	s := job(t, map[string]any{"/room/length": "168", "/room/width": "144", "/finish/steps": leaf("5 1/2", "0", "0")})
	assert.Equal(t, 800.0, value(t, s, "step.l.leaves"))
	s = job(t, map[string]any{"/room/length": "168", "/room/width": "144", "/finish/steps": leaf("5 1/2", "1/4", "0")})
	assert.Equal(t, 878.0, value(t, s, "step.l.leaves"))
	assert.Equal(t, 36.0, value(t, s, "step.l.books"))
	// An early Encyclopædia Britannica, Gold-leaf: 1600 leaves of 3 in cover 100 ft².
	s = job(t, map[string]any{"/room/length": "120", "/room/width": "120", "/finish/steps": leaf("3", "0", "0")})
	assert.Equal(t, 1600.0, value(t, s, "step.l.leaves"))
	// A leaf specification sheet: 200 ft² at 75.85 % yield of leaves of 3 3/8 in is
	// 134 books of 25; 31.84 % more than the bare area.
	s = job(t, map[string]any{"/room/length": "20'", "/room/width": "10'", "/finish/steps": leaf("3 3/8", "0", "31.8359")})
	assert.Equal(t, 134.0, value(t, s, "step.l.books"))
}

func TestDeckUnderTheCeiling(t *testing.T) {
	// A page on overhead work: a ceiling of 14 ft reached comfortably at
	// 6 ft 10 in asks for a deck of 7 ft 2 in. That reach is 1.10 times 1893.4545 mm.
	s := job(t, map[string]any{"/room/height": "14'", "/access/reachBy": "1893.4545 mm"})
	assert.InDelta(t, 86*inch, value(t, s, "platform.height"), 1000)
	assert.Equal(t, "7′ 2″", text(t, s, "platform.height"))
}

func TestPurgeTimes(t *testing.T) {
	// CDC, Guidelines for Environmental Infection Control in Health-Care Facilities,
	// 2003, table B.1: minutes to remove 99 and 99.9 per cent; 90 per cent from
	// MMWR 43 RR-13, 1994, table S3-1. Printed to the nearest minute; here the next
	// whole minute is taken, so that nobody airs too little. 9 L at 100 g/L in 90 m³ are 10 000 mg/m³.
	changes := []string{"1", "2", "4", "6", "8", "10", "12", "15", "20", "50"}
	for limit, minutes := range map[string][]float64{
		"1000": {138, 69, 35, 23, 17, 14, 12, 9, 7, 3},
		"100":  {276, 138, 69, 46, 35, 28, 23, 18, 14, 6},
		"10":   {414, 207, 104, 69, 52, 41, 35, 28, 21, 8},
	} {
		for i, opened := range changes {
			s := job(t, map[string]any{"/room/length": "6 m", "/room/width": "5 m", "/room/height": "3 m", "/mask/length": "4 m", "/mask/width": "3 m",
				"/finish/steps": paint(map[string]any{"typedArea": "9", "typedUnit": "m2", "spread": "1", "spreadUnit": "m2/L", "voc": "100", "dryHours": "4"}),
				"/air":          map[string]any{"limit": limit, "limitUnit": "mg/m3", "opened": opened, "shut": "0", "mixing": "1"}})
			assert.InDelta(t, 10000, value(t, s, "air.atOnce"), 1e-9)
			over := math.Round(60*value(t, s, "air.purge")) - minutes[i]
			assert.True(t, over == 0 || over == 1, "to %s at %s changes an hour: %v minutes over", limit, opened, over)
		}
	}
}

// Four sides and a diagonal, 4115, 3048, 4102, 3061 and 5120 mm, with a pattern
// of 3600 × 2600 at the mean of the corners: law of cosines, the crossing of two
// circles and double precision agree on the borders at both ends of each wall.
func TestBordersInARoomOutOfSquare(t *testing.T) {
	plan := planNamed(t, "square-to-wall")
	var readings []any
	for line, length := range map[string]string{"AB": "4115", "BC": "3048", "CD": "4102", "DA": "3061", "AC": "5120"} {
		readings = append(readings, map[string]any{"line": line, "length": length + " mm", "start": ""})
	}
	plan = changed(t, plan, "/room/readings", readings)
	for square, want := range map[string]map[string]float64{
		"AB": {"border.AB": 227.244155706, "border.BC": 253.770572046, "border.CD": 221.557108487, "border.DA": 249.196867860,
			"border.CD.C": 221.557108487, "border.CD.D": 232.946015214, "border.DA.D": 249.196867860, "border.DA.A": 259.314267573,
			"border.BC.B": 254.716769461, "border.CD.taper": 11.388906727},
		"room": {"border.AB.A": 230.088502594, "border.AB.B": 224.403051232, "border.BC.B": 256.773127672, "border.BC.C": 251.720772392,
			"border.CD.C": 224.394953150, "border.CD.D": 230.098422763, "border.DA.D": 251.241121094, "border.DA.A": 257.252379961,
			"border.DA.taper": 6.011258867},
	} {
		s := sheetOf(t, changed(t, plan, "/setting/square", square))
		for id, millimetres := range want {
			assert.InDelta(t, millimetres, value(t, s, id)/1e6, 3e-6, "square to %s: %s", square, id)
		}
	}
	for _, c := range sheetOf(t, plan).Choices {
		// The centre line halves the worst taper; the light, a hair off the
		// middle, is to be hit.
		assert.Equal(t, c.On == "fixture" && c.Square == "room", c.Recommended, "%s %s", c.On, c.Square)
	}
}

// A mask typed the wrong way round is shown the way it fits.
func TestAMaskThatFitsTurned(t *testing.T) {
	s := job(t, map[string]any{"/room/length": "17'", "/room/width": "13'", "/mask/length": "12'", "/mask/width": "16'"})
	require.Len(t, s.Choices, 2)
	assert.True(t, s.Choices[0].Taken)
	assert.NotEmpty(t, s.Choices[0].Refused)
	assert.Equal(t, "yes", s.Choices[1].Turned)
	assert.True(t, s.Choices[1].Recommended)
	assert.Empty(t, s.Choices[1].Refused)
}
