package survey_test

import (
	"math"
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

var metric = measure.Notation{System: measure.Metric, InchMark: inch / 16, MetricMark: mm, Plain: true}

// unitTape has a standard deviation of a millimetre, read as finely as can be.
var unitTape = survey.Tape{Deviation: mm, ReadTo: 1}

// inMM is a length from millimetres, to the nearest nanometre.
func inMM(millimetres float64) measure.Length {
	return measure.Length(math.Round(millimetres * 1e6))
}

var order = []survey.Line{survey.LineAB, survey.LineBC, survey.LineCD, survey.LineDA, survey.LineAC, survey.LineBD, survey.LineABCD, survey.LineDABC}

// read is a room of four walls and more, in the order AB, BC, CD, DA, AC, BD,
// AB-CD, DA-BC; 0 where a line was not read.
func read(unit measure.Length, lengths ...float64) survey.Room {
	room := survey.Room{Form: survey.Lines, Height: 2500 * mm, Tape: unitTape}
	for i, length := range lengths {
		if length != 0 {
			room.Readings = append(room.Readings, survey.Reading{Line: order[i], Length: measure.Length(math.Round(length * float64(unit))), At: "/readings" + problem.Index(i)})
		}
	}
	return room
}

// near holds two lengths equal to the nearest nanometre, and one more where
// what was checked against is itself rounded.
func near(t *testing.T, want float64, unit measure.Length, got measure.Length, say string) {
	t.Helper()
	assert.InDelta(t, want*float64(unit), float64(got), 1.01, say)
}

// Four walls and one diagonal: law of cosines and the crossing of two circles,
// worked out both ways in double precision.
func TestFind_OneDiagonal(t *testing.T) {
	for _, c := range []struct {
		name           string
		unit           measure.Length
		lines          [5]float64
		xC, yC, xD, yD float64
		other          float64
		area           float64
		angles         [4]float64
	}{
		{"Q1", mm, [5]float64{4000, 3000, 4000, 3000, 5000}, 4000, 3000, 0, 3000, 5000, 12000000, [4]float64{90, 90, 90, 90}},
		{"Q2", mm, [5]float64{4000, 3000, 4000, 3000, 5012}, 4015.018, 2999.962409710, 15.018, 2999.962409710, 4987.971130630, 11999849.638841980,
			[4]float64{89.713176130, 90.286823870, 89.713176130, 90.286823870}},
		{"Q3", mm, [5]float64{4115, 3048, 4102, 3061, 5120}, 4113.890765492, 3047.999798163, 11.911292508, 3060.976824661, 5119.073750461, 12549368.922318136,
			[4]float64{89.777043936, 89.979148800, 90.202111582, 90.041695681}},
		{"Q4 an isosceles trapezoid has equal diagonals too", mm, [5]float64{4000, 3000, 3900, 3000, math.Sqrt(24600000)}, 3950, 2999.583304394, 50, 2999.583304394, 4959.838707055, 11848354.052356808,
			[4]float64{89.045026126, 89.045026126, 90.954973874, 90.954973874}},
		{"Q5", inch, [5]float64{144, 119.5, 144.25, 120.125, 187.125}, 143.998318142, 119.499999988, -0.250328995, 120.124739169, 187.718167409, 17267.837360402,
			[4]float64{90.119399003, 89.999193612, 90.248952178, 89.632455206}},
		{"Q6", mm, [5]float64{9144, 2438, 9150, 2430, 9470}, 9150.797900262, 2437.990522654, 0.801389365, 2429.999867855, 9460.601470905, 22263734.623939480,
			[4]float64{89.981104432, 90.159758613, 89.790205228, 90.068931726}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := read(c.unit, c.lines[:]...).Find(measure.Metric)
			require.True(t, got.Shape.Usable(), "%v", got.Problems)
			assert.Empty(t, got.Problems)
			assert.Equal(t, survey.Assumed, got.Proof, "nothing checks five lines")
			assert.Equal(t, survey.Point{}, got.Shape.Corners[0])
			near(t, c.lines[0], c.unit, got.Shape.Corners[1].X, "B")
			assert.Zero(t, got.Shape.Corners[1].Y)
			near(t, c.xC, c.unit, got.Shape.Corners[2].X, "C")
			near(t, c.yC, c.unit, got.Shape.Corners[2].Y, "C")
			near(t, c.xD, c.unit, got.Shape.Corners[3].X, "D")
			near(t, c.yD, c.unit, got.Shape.Corners[3].Y, "D")
			one, other := got.Shape.Corners[1], got.Shape.Corners[3]
			near(t, c.other, c.unit, inMM(math.Hypot(float64(one.X-other.X)/1e6, float64(one.Y-other.Y)/1e6)), "BD")
			square := float64(c.unit) / 1e9
			assert.InDelta(t, c.area, got.Shape.Area().SquareMetres.Float()/(square*square), 0.01)
			for i, want := range c.angles {
				assert.InDelta(t, want, got.Corners[i].Degrees, 1e-7, got.Corners[i].Corner)
			}
			for _, l := range got.Lines {
				assert.Zero(t, l.Off(), "five lines leave nothing to adjust")
			}
		})
	}
}

// The two places that pass for the middle, of the room Q3: the mean of its corners
// and the crossing of its diagonals, worked out in double precision from corners
// that were found another way. In a parallelogram (Q2) they are one.
func TestShape_Middles(t *testing.T) {
	q3 := read(mm, 4115, 3048, 4102, 3061, 5120).Find(measure.Metric).Shape
	joined, crossed, apart, ok := q3.Middles()
	require.True(t, ok)
	near(t, 2060.200514500, mm, joined.X, "joined")
	near(t, 1527.244155706, mm, joined.Y, "joined")
	near(t, 2064.575429403, mm, crossed.X, "crossed")
	near(t, 1529.653034275, mm, crossed.Y, "crossed")
	assert.InDelta(t, 1e6*math.Hypot(4.374914903, 2.408878569), float64(apart), 3)
	assert.Equal(t, crossed, q3.FromA(crossed), "A is at the origin and WX along x")
	_, _, apart, ok = read(mm, 4000, 3000, 4000, 3000, 5012).Find(measure.Metric).Shape.Middles()
	require.True(t, ok)
	assert.LessOrEqual(t, apart, 2*measure.Nanometre)
	for _, none := range []survey.Shape{{}, survey.ShapeFromSides(survey.Round, mm, mm), survey.ShapeFromCorners(survey.Points, []survey.Point{{}, {X: mm}, {Y: mm}})} {
		_, _, _, ok := none.Middles()
		assert.False(t, ok)
	}
	// A room whose A is at (1, 2) m and whose AB goes down y: 3 m along it and 1 m
	// to its right is (0, 5) m.
	turned := survey.ShapeFromCorners(survey.Points, []survey.Point{{X: inMM(1000), Y: inMM(2000)}, {X: inMM(1000), Y: inMM(6000)}, {X: inMM(-2000), Y: inMM(6000)}, {X: inMM(-2000), Y: inMM(2000)}})
	assert.Equal(t, survey.Point{X: inMM(3000), Y: inMM(1000)}, turned.FromA(survey.Point{Y: inMM(5000)}))
}

// Both diagonals: Gauss–Newton and a condition equation, agreeing to 1e-17
// (any text on adjustment; method from memory).
func TestFind_BothDiagonals(t *testing.T) {
	for _, c := range []struct {
		name     string
		unit     measure.Length
		lines    [6]float64
		residual [6]float64
		closing  float64
		proof    survey.Proof
	}{
		{"L1", mm, [6]float64{4115, 3048, 4102, 3061, 5120, 5114},
			[6]float64{-1.015991238, -0.758148906, -1.019204852, -0.754935292, 1.268747507, 1.267277739}, -5.073750461, survey.Proved},
		{"L2", mm, [6]float64{4000, 3000, 4000, 3000, 5003, 4999},
			[6]float64{0.400159968, 0.300119976, 0.400159968, 0.300119976, -0.500399960, -0.499999880}, 2.001801081, survey.Proved},
		{"L3 carries 35 mm", mm, [6]float64{4115, 3048, 4102, 3061, 5120, 5154},
			[6]float64{7.007284007, 5.229187879, 7.029723989, 5.206747897, -8.716597546, -8.774599996}, 34.926249539, survey.Contradicted},
		{"L4", inch, [6]float64{144, 119.5, 144.25, 120.125, 187.125, 187},
			[6]float64{-0.138271010, -0.115146168, -0.138030090, -0.114545596, 0.179713404, 0.179591719}, -0.718167409, survey.Contradicted},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := read(c.unit, c.lines[:]...).Find(measure.Metric)
			require.True(t, got.Shape.Usable(), "%v", got.Problems)
			for i, want := range c.residual {
				near(t, want, c.unit, measure.Length(got.Lines[i].Off()), string(got.Lines[i].Line))
			}
			assert.Equal(t, 1, got.Closing.Spare)
			assert.Equal(t, survey.LineBD, got.Closing.Line)
			near(t, c.closing, c.unit, got.Closing.Amount, "closing")
			assert.Equal(t, c.proof, got.Proof)
			if c.proof == survey.Contradicted {
				assert.Len(t, got.Again, 6, "one spare reading blames none: all six again")
			}
		})
	}
	l1 := read(mm, 4115, 3048, 4102, 3061, 5120, 5114).Find(measure.Metric).Shape
	for i, want := range [][2]float64{{0, 0}, {4113.984008762, 0}, {4116.031447540, 3047.241163258}, {15.071152130, 3060.207953137}} {
		near(t, want[0], mm, l1.Corners[i].X, "x")
		near(t, want[1], mm, l1.Corners[i].Y, "y")
	}
	assert.InDelta(t, 12543144.076230989, l1.Area().SquareMetres.Float()*1e6, 0.01)
}

// stops are the stops among problems.
func stops(list []problem.Problem) []problem.Problem {
	var found []problem.Problem
	for _, p := range list {
		if p.Severity == problem.Stop {
			found = append(found, p)
		}
	}
	return found
}

func TestFind_LinesThatMakeNoRoom(t *testing.T) {
	for _, c := range []struct {
		name  string
		lines []float64
		want  []problem.Problem
	}{
		{"four walls alone", []float64{4000, 3000, 4000, 3000}, []problem.Problem{{At: "/readings", Severity: problem.Stop,
			What: words.Say("Four walls alone do not fix the room: like a gate without a brace it can lean to either side and keep every wall."),
			Do:   words.Say("Measure diagonal WY from corner to corner, and XZ to check it.")}}},
		{"nothing read", nil, []problem.Problem{{At: "/readings", Severity: problem.Stop,
			What: words.Say("The room is not fixed yet: it takes five different lines, and 0 are read."),
			Do:   words.Say("Measure WX, XY, YZ, ZW and diagonal WY.")}}},
		{"two walls and a diagonal", []float64{4000, 0, 0, 3000, 5000}, []problem.Problem{{At: "/readings", Severity: problem.Stop,
			What: words.Say("The room is not fixed yet: it takes five different lines, and 3 are read."),
			Do:   words.Say("Measure XY and YZ.")}}},
		// The law of cosines gives cosines of 1.000107145 and 1.000190473.
		{"Q8: a + b < p", []float64{4000, 3000, 4000, 3000, 7001}, []problem.Problem{
			{At: "/readings/4/length", Severity: problem.Stop,
				What: words.Say("XY and WX together are 7.000 m, but WY between their ends is 7.001 m, 1 mm more than they reach: these three lines cannot meet."),
				Do:   words.Say("Measure WY again, then XY and WX.")},
			{At: "/readings/4/length", Severity: problem.Stop,
				What: words.Say("ZW and YZ together are 7.000 m, but WY between their ends is 7.001 m, 1 mm more than they reach: these three lines cannot meet."),
				Do:   words.Say("Measure WY again, then ZW and YZ.")}}},
		// cos α2 = 1.011231884.
		{"Q9: c + d < p", []float64{4000, 3000, 1500, 3000, 4600}, []problem.Problem{
			{At: "/readings/4/length", Severity: problem.Stop,
				What: words.Say("YZ and ZW together are 4.500 m, but WY between their ends is 4.600 m, 100 mm more than they reach: these three lines cannot meet."),
				Do:   words.Say("Measure WY again, then YZ and ZW.")}}},
		// The corners are at 62.9°, 55.9°, 88.9° and 152.3°.
		{"Q10: closes, but no room", []float64{4000, 3000, 2000, 1500, 3400}, []problem.Problem{
			{At: "/readings", Severity: problem.Stop,
				What: words.Say("These lines close, but corner Z would be 152.25°: that is no room with four corners."),
				Do:   words.Say("Check YZ, ZW and the diagonals, and which corner each was taken from. If the corner really is like that, give the corners by their offsets or the walls with their angles.")}}},
		// The corners are at 0.618865948° and 179.381134052°.
		{"Q7: near flat", []float64{4000, 3000, 4000, 3000, 6999.9}, []problem.Problem{
			{At: "/readings", Severity: problem.Stop,
				What: words.Say("These lines close, but corner W would be 0.62°: that is no room with four corners."),
				Do:   words.Say("Check ZW, WX and the diagonals, and which corner each was taken from. If the corner really is like that, give the corners by their offsets or the walls with their angles.")}}},
		{"walls and lines across a true rectangle", []float64{4000, 3000, 4000, 3000, 0, 0, 3000, 4000}, []problem.Problem{
			{At: "/readings", Severity: problem.Stop,
				What: words.Say("These lines do not fix the room: a slip of the tape would move a corner more than 50 times as far, or they cannot meet at all."),
				Do:   words.Say("Measure diagonal WY, and XZ to check it.")}}},
		{"D inside the triangle ABC", []float64{4000, 3000, 2600, 2600, 5000, 2900}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := read(mm, c.lines...).Find(measure.Metric)
			assert.False(t, got.Shape.Usable())
			if c.want == nil {
				assert.NotEmpty(t, stops(got.Problems))
				return
			}
			assert.Equal(t, c.want, said(metric, got.Problems))
		})
	}
}

func TestFind_ReadingsThatCannotBe(t *testing.T) {
	room := read(mm, 4000, 3000, 4000, 3000, 5000)
	room.Readings = append(room.Readings,
		survey.Reading{Line: "AE", Length: foot, At: "/readings/5"},
		survey.Reading{Line: survey.LineBD, Length: 20 * mm, Start: 25 * mm, At: "/readings/6"},
		survey.Reading{Line: survey.LineBD, Length: measure.Longest + 1, At: "/readings/7"},
		survey.Reading{Line: survey.LineBD, Length: 9 * mm, At: "/readings/8"},
		survey.Reading{Line: survey.LineBD, Length: 0, At: "/readings/9"})
	got := room.Find(measure.Metric)
	assert.True(t, got.Shape.IsRectangle(), "what can be used still gives the room")
	assert.Equal(t, []problem.Problem{
		{At: "/readings/5/line", Severity: problem.Stop, What: words.Say("There is no line “AE” in a room with four corners."), Do: words.Say("Choose a wall, a diagonal, or a line across the middle.")},
		{At: "/readings/6/start", Severity: problem.Stop, What: words.Say("The tape began at 25 mm, but XZ reads only 20 mm."), Do: words.Say("Check both: the reading is what stands at the far end of the tape.")},
		{At: "/readings/7/length", Severity: problem.Stop, What: words.Say("Diagonal XZ reads 100.000 m, more than the 100.000 m that is taken."), Do: words.Say("Check the number and its unit.")},
		{At: "/readings/8/length", Severity: problem.Stop, What: words.Say("Diagonal XZ reads 9 mm, which is no length of a room."), Do: words.Say("Check the number and write its unit.")},
	}, said(metric, got.Problems))
	room = read(mm, 4000, 3000, 4000, 3000, 5000)
	for len(room.Readings) <= survey.MostReadings {
		room.Readings = append(room.Readings, survey.Reading{Line: survey.LineBD, Length: 5000 * mm})
	}
	got = room.Find(measure.Metric)
	assert.True(t, got.Shape.IsRectangle())
	assert.Equal(t, "There are 201 readings; the first 200 are used.", got.Problems[0].What.In(inMetric))
	small := read(mm, 40, 30, 40, 30, 50).Find(measure.Metric)
	assert.Equal(t, "Wall WX reads 40 mm, less than any room.", small.Problems[0].What.In(inMetric))
}

// A tape begun at its 1-inch mark, from a timber merchant's page on using one:
// 97 3/8 in read is 96 3/8 in, 2447.925 mm.
func TestFind_BurntInch(t *testing.T) {
	room := survey.Room{Form: survey.Lines, Tape: unitTape, Height: 10 * foot, Readings: []survey.Reading{
		{Line: survey.LineAB, Length: 97*inch + 3*inch/8, Start: inch}}}
	for _, l := range []survey.Reading{{Line: survey.LineBC, Length: 8 * foot}, {Line: survey.LineCD, Length: 96*inch + 3*inch/8}, {Line: survey.LineDA, Length: 8 * foot}, {Line: survey.LineAC, Length: 11 * foot}} {
		room.Readings = append(room.Readings, l)
	}
	got := room.Find(measure.FeetInches)
	require.NotEmpty(t, got.Lines)
	assert.Equal(t, inMM(2447.925), got.Lines[0].Taken())
	assert.Equal(t, 97*inch+3*inch/8, got.Lines[0].Length, "the reading itself is kept")
	assert.Equal(t, inMM(2447.925), got.Shape.Corners[1].X)
}

func TestFind_HowWellTheTapeKnows(t *testing.T) {
	// Q3 with a standard deviation of 1 mm on each of five lengths: corners
	// ±0.033°, the other diagonal ±1.732 mm (worked out from the covariance).
	q3 := read(mm, 4115, 3048, 4102, 3061, 5120).Find(measure.Metric)
	most := 0.0
	for _, c := range q3.Corners {
		most = max(most, c.Deviation)
	}
	assert.InDelta(t, 0.033, most, 0.0005)
	withBD := read(mm, 4115, 3048, 4102, 3061, 5120, 5119).Find(measure.Metric)
	own := float64(withBD.Closing.Limit) / 1e6 / 3
	assert.InDelta(t, 1.732, math.Sqrt(own*own-1), 0.0005, "less the diagonal's own")
	// In a rectangle the closing error has exactly twice the standard deviation
	// of one reading, whatever its sides: weights 0.8, 0.6, 0.8, 0.6 and −1 for
	// 3:4:5. Three times that is 6 mm.
	for _, sides := range [][2]float64{{4000, 3000}, {9144, 2438}, {5000, 5000}} {
		p := math.Hypot(sides[0], sides[1])
		got := read(mm, sides[0], sides[1], sides[0], sides[1], p, p).Find(measure.Metric)
		assert.InDelta(t, 6e6, float64(got.Closing.Limit), 10)
		assert.Equal(t, survey.Proved, got.Proof)
	}
	// L1: every standardised residual is 2.536029749.
	l1 := read(mm, 4115, 3048, 4102, 3061, 5120, 5114).Find(measure.Metric)
	assert.InDelta(t, 2.536029749, 3*float64(l1.Closing.Amount.Abs())/float64(l1.Closing.Limit), 2e-3, "to first order")
	// The mark the tape is read to adds a twelfth of its square: 1.5 mm read to
	// 1 mm is √(2.25 + 1/12) = 1.527525.
	usual := read(mm, 4000, 3000, 4000, 3000, 5000, 5000)
	usual.Tape = survey.Tape{}
	got := usual.Find(measure.Metric)
	assert.False(t, got.TapeSaid)
	assert.InDelta(t, 6*1.527525232e6, float64(got.Closing.Limit), 10)
	// 1/16 in read to 1/16 in is 1/16 × √(13/12).
	got = usual.Find(measure.FeetInches)
	assert.InDelta(t, 6*float64(inch)/16*math.Sqrt(13.0/12), float64(got.Closing.Limit), 10)
}

// How 1 mm of the diagonal turns a corner of a room of 4000 × 3000 mm: δ p ÷ (a b
// sin B), worked out.
func TestFind_OneMillimetreTurnsACorner(t *testing.T) {
	for _, c := range []struct{ p, want float64 }{{5000, 0.023873241}, {6000, 0.032232811}} {
		more := read(mm, 4000, 3000, 4000, 3000, c.p+0.05).Find(measure.Metric).Corners[1].Degrees
		less := read(mm, 4000, 3000, 4000, 3000, c.p-0.05).Find(measure.Metric).Corners[1].Degrees
		assert.InDelta(t, c.want, (more-less)*10, 1e-6)
	}
	// US home builders' performance guidelines: the 20 ft diagonal of 12 × 16 ft
	// within 1/2 in; worked out that is +0.248939423° and −0.248421336°,
	// 0.625651042 in over 12 ft and 0.834201389 in over 16 ft.
	for _, c := range []struct{ p, angle, over12, over16 float64 }{{240.5, 0.248939423, 0.625651042, 0.834201389}, {239.5, -0.248421336, -0.624348958, -0.832465278}} {
		got := read(inch, 192, 144, 192, 144, c.p).Find(measure.FeetInches)
		assert.InDelta(t, c.angle, got.Corners[1].Degrees-90, 1e-7)
		sine := math.Sin((got.Corners[1].Degrees - 90) * math.Pi / 180)
		assert.InDelta(t, c.over12, 144*sine, 1e-6)
		assert.InDelta(t, c.over16, 192*sine, 1e-6)
		assert.InDelta(t, math.Tan((got.Corners[1].Degrees-90)*math.Pi/180)*36*float64(inch), float64(got.Corners[1].Out), 2)
	}
}

func TestFind_SkewOfTheTables(t *testing.T) {
	// DIN 18202 table 2 allows 8 mm off a right angle over 1–3 m and 12 mm over
	// 3–6 m. 8 mm in 4000 × 3000 makes diagonals of 5006.395909235 and
	// 4993.595898749; 12 mm in 5000 × 4000 a difference of 18.740871494.
	for _, c := range []struct{ long, wide, skew, ac, bd, difference float64 }{
		{4000, 3000, 8, 5006.395909235, 4993.595898749, 12.800010486},
		{5000, 4000, 12, 0, 0, 18.740871494},
	} {
		deep := math.Sqrt(c.wide*c.wide - c.skew*c.skew)
		ac, bd := math.Hypot(c.long+c.skew, deep), math.Hypot(c.long-c.skew, deep)
		assert.InDelta(t, c.difference, ac-bd, 1e-8)
		if c.ac > 0 {
			assert.InDelta(t, c.ac, ac, 1e-8)
			assert.InDelta(t, c.bd, bd, 1e-8)
		}
		got := read(mm, c.long, c.wide, c.long, c.wide, ac, bd).Find(measure.Metric)
		assert.Equal(t, survey.Proved, got.Proof)
		near(t, c.skew, mm, got.Shape.Corners[3].X, "D")
		near(t, deep, mm, got.Shape.Corners[3].Y, "D")
		worst, ok := got.Worst()
		assert.True(t, ok)
		assert.InDelta(t, 1000*c.skew/deep, float64(worst.Out.Abs())/1e6, 1e-5, "over a metre")
	}
}

func TestFind_Contradictions(t *testing.T) {
	// From the four sides and AC, BD must be 219.814 in; read 0.56 in long (a
	// flooring layer's notes). The limit of a usual inch
	// tape is 6 × 1/16 × √(13/12) = 0.39 in.
	room := read(inch, 171, 139, 170.5, 138.75, 220.375, 220.375)
	room.Tape = survey.Tape{}
	got := room.Find(measure.FeetInches)
	assert.InDelta(t, 0.56, float64(got.Closing.Amount)/float64(inch), 0.005)
	assert.InDelta(t, 219.814, 220.375-float64(got.Closing.Amount)/float64(inch), 0.001)
	assert.Equal(t, survey.Contradicted, got.Proof)
	assert.Equal(t, []problem.Problem{{At: "/readings/5/length", Severity: problem.Caution,
		What: words.Say("Diagonal XZ reads 9/16\" longer than the other readings make it, and no more than 3/8\" can be the tape."),
		Do:   words.Say("Measure all 6 lines again: with one spare reading a mistake shows, but not which reading it is in.")}}, said(inches, got.Problems))
	for _, l := range got.Lines {
		assert.True(t, l.Check, l.Line)
	}

	// With each diagonal read twice and both lines across as well, a mistake of
	// 30 mm in one wall stands out, but opposite walls cannot be told apart.
	room = read(mm, 4000, 3000, 4030, 3000, 5000, 5000, 3000, 4000)
	room.Readings = append(room.Readings, survey.Reading{Line: survey.LineAC, Length: 5000 * mm, At: "/readings/8"}, survey.Reading{Line: survey.LineBD, Length: 5000 * mm, At: "/readings/9"})
	got = room.Find(measure.Metric)
	assert.Equal(t, survey.Contradicted, got.Proof)
	assert.Equal(t, []survey.Line{survey.LineAB, survey.LineCD}, got.Again)
	assert.Equal(t, "Measure these again first: they miss most. Wall WX and wall YZ.", got.Problems[0].Do.String())
	assert.Equal(t, 5, got.Closing.Spare)
	room.Readings = append(room.Readings, survey.Reading{Line: survey.LineAB, Length: 4000 * mm, At: "/readings/10"})
	got = room.Find(measure.Metric)
	assert.Equal(t, survey.LineCD, got.Closing.Line, "WX read twice alike is not it")
	assert.Equal(t, []survey.Line{survey.LineCD}, got.Again)
	assert.InDelta(t, 30, float64(got.Closing.Amount)/1e6, 0.2)

	// One wall read twice, 1/8 in apart over 36 in: a slanted tape. √(36.125² −
	// 36²) = √9.015625 = 3.00 in out of line (a joiner's notes).
	assert.InDelta(t, math.Sqrt(9.015625)*float64(inch), float64(survey.Slant(36*inch+inch/8, 36*inch)), 2)
	room = read(mm, 4000, 3000, 4000, 3000, 5000)
	room.Readings = append(room.Readings, survey.Reading{Line: survey.LineAB, Length: 4012 * mm, At: "/readings/5"})
	got = room.Find(measure.Metric)
	assert.Equal(t, []survey.Line{survey.LineAB}, got.Again, "the line that was read twice, not all of them")
	assert.Equal(t, survey.Contradicted, got.Proof)
	assert.Equal(t, problem.Problem{At: "/readings/5/length", Severity: problem.Caution,
		What: words.Say("Wall WX was read as 4.000 m and as 4.012 m, 12 mm apart. A tape whose end is 310 mm out of line reads that much too long."),
		Do:   words.Say("Measure WX again with the tape straight. A tape held at a slant or over a bump reads long, so the shorter reading is nearer the truth.")}, said(metric, got.Problems)[0])
	assert.Len(t, got.Problems, 1)
	// Three standard deviations of a difference are 3 × √2 = 4.24 mm.
	room.Readings[5].Length = 4004 * mm
	got = room.Find(measure.Metric)
	assert.Equal(t, survey.Assumed, got.Proof, "WX is checked by itself, and nothing else is")
	assert.Equal(t, 1, got.Closing.Spare)
	assert.Equal(t, survey.LineBD, got.Unread)
	room.Readings = append(room.Readings, survey.Reading{Line: survey.LineBD, Length: 5000 * mm, At: "/readings/6"})
	assert.Equal(t, survey.Proved, room.Find(measure.Metric).Proof)
}

func TestFind_SwappedDigits(t *testing.T) {
	// A joiner read 1102 and wrote 1012 (a joiners' page): the
	// parts make 3410 of a wall of 3500, 90 short, a multiple of nine.
	other, ok := survey.Swapped(1012*mm, 1102*mm, 3*mm, measure.Metric)
	assert.True(t, ok)
	assert.Equal(t, 1102*mm, other)
	_, ok = survey.Swapped(1012*mm, 1092*mm, 3*mm, measure.Metric)
	assert.False(t, ok, "80 is no multiple of nine")
	other, ok = survey.Swapped(97*inch+3*inch/8, 79*inch, inch, measure.FeetInches)
	assert.True(t, ok)
	assert.Equal(t, 79*inch+3*inch/8, other, "of the inches all told")
	other, ok = survey.Swapped(12*foot+10*inch, 21*foot+10*inch, inch, measure.FeetInches)
	assert.True(t, ok)
	assert.Equal(t, 21*foot+10*inch, other, "of the feet")
	_, ok = survey.Swapped(1100*mm, 1100*mm, 3*mm, measure.Metric)
	assert.False(t, ok, "equal digits")

	// Wall CD of 4125 mm written down as 4152.
	p := math.Hypot(4125, 3048)
	got := read(mm, 4125, 3048, 4152, 3048, p, p, 3048, 4125).Find(measure.Metric)
	assert.Contains(t, said(metric, got.Problems), problem.Problem{At: "/readings/2/length", Severity: problem.Note,
		What: words.Say("Wall YZ reads 4.152 m. With two digits the other way round it would be 4.125 m, and the readings would agree."),
		Do:   words.Say("See whether the digits were swapped when it was written down.")})
	for _, other := range got.Problems {
		assert.NotContains(t, other.What.In(inMetric), "Wall ZW reads", "only what would help is offered")
	}
}

func TestFind_OtherLinesFixTheRoom(t *testing.T) {
	want := read(mm, 4115, 3048, 4102, 3061, 5120).Find(measure.Metric).Shape
	at := func(i int) (float64, float64) {
		return float64(want.Corners[i].X) / 1e6, float64(want.Corners[i].Y) / 1e6
	}
	distance := func(i, k int) float64 {
		x, y := at(i)
		u, v := at(k)
		return math.Hypot(u-x, v-y)
	}
	across := func(i, k, l, m int) float64 {
		x, y := at(i)
		u, v := at(k)
		p, q := at(l)
		r, s := at(m)
		return math.Hypot((p+r-x-u)/2, (q+s-y-v)/2)
	}
	all := []float64{4115, 3048, 4102, 3061, 5120, distance(1, 3), across(0, 1, 2, 3), across(3, 0, 1, 2)}
	for _, c := range []struct {
		name    string
		missing []int
	}{
		{"XZ alone", []int{4, 6, 7}}, {"both diagonals, no YZ", []int{2, 6, 7}}, {"both diagonals, no WX", []int{0, 6, 7}},
		{"no ZW", []int{3, 6, 7}}, {"no XY but a line across", []int{1, 5, 7}}, {"no YZ but a line across", []int{2, 5, 6}}, {"all eight", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			lines := append([]float64(nil), all...)
			for _, i := range c.missing {
				lines[i] = 0
			}
			got := read(mm, lines...).Find(measure.Metric)
			require.True(t, got.Shape.Usable(), "%v", got.Problems)
			for i := range want.Corners {
				assert.InDelta(t, float64(want.Corners[i].X), float64(got.Shape.Corners[i].X), 200, "readings are rounded to the nanometre")
				assert.InDelta(t, float64(want.Corners[i].Y), float64(got.Shape.Corners[i].Y), 200)
			}
		})
	}
}

func TestFind_TapePastReason(t *testing.T) {
	room := read(mm, 4000, 3000, 4000, 3000, 5000, 5000)
	room.Tape = survey.Tape{Deviation: 10 * inch, ReadTo: foot}
	assert.Equal(t, []problem.Problem{
		{At: "/tape/deviation", Severity: problem.Caution, What: words.Say("The tape is said to be off by 10\" in a usual reading, more than any tape."), Do: words.Say("Check the number and write its unit.")},
		{At: "/tape/readTo", Severity: problem.Caution, What: words.Say("The tape is said to be read to 1' 0\", coarser than any tape."), Do: words.Say("Check the number and write its unit.")},
	}, said(inches, room.Find(measure.FeetInches).Problems)[:2])
}
