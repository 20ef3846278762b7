package survey_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// crooked is a room as crooked as rooms are: sides of 2 to 9 m, each corner off
// its place by what DIN 18202 table 2 allows over such a side, 8 to 16 mm, along
// and across. A is at the origin and B on +x.
func crooked(random *rand.Rand) []survey.Point {
	long, wide := 2000+7000*random.Float64(), 2000+5000*random.Float64()
	allowed := func(side float64) float64 {
		switch {
		case side <= 3000:
			return 8
		case side <= 6000:
			return 12
		}
		return 16
	}
	off := func(side float64) float64 { return (2*random.Float64() - 1) * allowed(side) }
	return []survey.Point{{}, {X: inMM(long)},
		{X: inMM(long + off(wide)), Y: inMM(wide + off(long))}, {X: inMM(off(wide)), Y: inMM(wide + off(long))}}
}

// lineOf is the length of a line in a room, in millimetres.
func lineOf(line survey.Line, at [][2]float64) float64 {
	middle := func(i, k int) [2]float64 { return [2]float64{(at[i][0] + at[k][0]) / 2, (at[i][1] + at[k][1]) / 2} }
	ends := map[survey.Line][2][2]float64{
		survey.LineAB: {at[0], at[1]}, survey.LineBC: {at[1], at[2]}, survey.LineCD: {at[2], at[3]}, survey.LineDA: {at[3], at[0]},
		survey.LineAC: {at[0], at[2]}, survey.LineBD: {at[1], at[3]},
		survey.LineABCD: {middle(0, 1), middle(2, 3)}, survey.LineDABC: {middle(3, 0), middle(1, 2)},
	}[line]
	return math.Hypot(ends[1][0]-ends[0][0], ends[1][1]-ends[0][1])
}

func floats(corners []survey.Point) [][2]float64 {
	at := make([][2]float64, len(corners))
	for i, p := range corners {
		at[i] = [2]float64{float64(p.X) / 1e6, float64(p.Y) / 1e6}
	}
	return at
}

// outside is the same adjustment by other means: an outside library's QR
// factors, on derivatives taken by differences.
func outside(t *testing.T, start []survey.Point, readings []survey.Reading) [][2]float64 {
	t.Helper()
	at := floats(start)
	unknowns := []*float64{&at[1][0], &at[2][0], &at[2][1], &at[3][0], &at[3][1]}
	for range 12 {
		design, right := mat.NewDense(len(readings), 5, nil), mat.NewVecDense(len(readings), nil)
		for i, r := range readings {
			right.SetVec(i, float64(r.Taken())/1e6-lineOf(r.Line, at))
			for k, u := range unknowns {
				was := *u
				*u = was + 1e-3
				more := lineOf(r.Line, at)
				*u = was - 1e-3
				design.Set(i, k, (more-lineOf(r.Line, at))/2e-3)
				*u = was
			}
		}
		var qr mat.QR
		qr.Factorize(design)
		var step mat.VecDense
		require.NoError(t, qr.SolveVecTo(&step, false, right))
		for k, u := range unknowns {
			*u += step.AtVec(k)
		}
	}
	return at
}

func TestFind_AgainstAnotherLibrary(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	for range 200 {
		truth := crooked(random)
		var room survey.Room
		room.Form, room.Tape = survey.Lines, unitTape
		for _, line := range order {
			times := random.Intn(3)
			if line != survey.LineABCD && line != survey.LineDABC {
				times++
			}
			for range times {
				room.Readings = append(room.Readings, survey.Reading{Line: line, Length: inMM(lineOf(line, floats(truth)) + random.NormFloat64())})
			}
		}
		random.Shuffle(len(room.Readings), func(i, k int) {
			room.Readings[i], room.Readings[k] = room.Readings[k], room.Readings[i]
		})
		got := room.Find(measure.Metric)
		require.True(t, got.Shape.Usable(), "%v", got.Problems)
		want := outside(t, truth, room.Readings)
		for i, p := range floats(got.Shape.Corners) {
			require.InDelta(t, want[i][0], p[0], 2e-6)
			require.InDelta(t, want[i][1], p[1], 2e-6)
		}
		// Within what the tape can do of where the corners are.
		for i, p := range floats(truth) {
			require.InDelta(t, p[0], float64(got.Shape.Corners[i].X)/1e6, 12)
			require.InDelta(t, p[1], float64(got.Shape.Corners[i].Y)/1e6, 12)
		}
	}
}

// How often readings that are only off by what the tape does are called a
// contradiction: three standard deviations, so 3 in 1000 for one spare reading.
func TestFind_FalseAlarms(t *testing.T) {
	random := rand.New(rand.NewSource(8))
	alarms, missed := 0, 0
	for range 1200 {
		truth := floats(crooked(random))
		room := survey.Room{Form: survey.Lines, Tape: unitTape}
		for _, line := range order[:6] {
			room.Readings = append(room.Readings, survey.Reading{Line: line, Length: inMM(lineOf(line, truth) + random.NormFloat64())})
		}
		if room.Find(measure.Metric).Proof != survey.Proved {
			alarms++
		}
		room.Readings[random.Intn(6)].Length += 25 * mm
		if room.Find(measure.Metric).Proof != survey.Contradicted {
			missed++
		}
	}
	assert.Less(t, alarms, 12, "3 are expected")
	assert.Positive(t, alarms)
	assert.Less(t, missed, 60, "25 mm are some 7 to 12 standard deviations of the closing error")
}

// turnedLabels is the same room with each corner given the next letter.
func turnedLabels(room survey.Room) survey.Room {
	next := map[survey.Line]survey.Line{survey.LineAB: survey.LineBC, survey.LineBC: survey.LineCD, survey.LineCD: survey.LineDA, survey.LineDA: survey.LineAB,
		survey.LineAC: survey.LineBD, survey.LineBD: survey.LineAC, survey.LineABCD: survey.LineDABC, survey.LineDABC: survey.LineABCD}
	turned := room
	turned.Readings = nil
	for _, r := range room.Readings {
		r.Line = next[r.Line]
		turned.Readings = append(turned.Readings, r)
	}
	return turned
}

func TestFind_LabelsAndScaleDoNotMatter(t *testing.T) {
	random := rand.New(rand.NewSource(9))
	for range 200 {
		truth := floats(crooked(random))
		room := survey.Room{Form: survey.Lines, Tape: survey.Tape{Deviation: 3 * mm, ReadTo: mm}}
		for _, line := range order[:5+random.Intn(4)] {
			room.Readings = append(room.Readings, survey.Reading{Line: line, Length: inMM(lineOf(line, truth) + 2*random.NormFloat64())})
		}
		one, other := room.Find(measure.Metric), turnedLabels(room).Find(measure.Metric)
		require.True(t, one.Shape.Usable())
		for i := range 4 {
			require.InDelta(t, one.Corners[i].Degrees, other.Corners[(i+1)%4].Degrees, 1e-7)
			require.InDelta(t, one.Corners[i].Deviation, other.Corners[(i+1)%4].Deviation, 1e-7)
		}
		require.Equal(t, one.Proof, other.Proof)
		require.InDelta(t, float64(one.Closing.Amount.Abs()), float64(other.Closing.Amount.Abs()), 1e5, "to the second order where it is another diagonal")
		for i := range one.Lines {
			require.InDelta(t, float64(one.Lines[i].Adjusted), float64(other.Lines[i].Adjusted), 2)
		}

		larger := room
		larger.Tape = survey.Tape{Deviation: 6 * mm, ReadTo: 2 * mm}
		larger.Readings = append([]survey.Reading(nil), room.Readings...)
		for i := range larger.Readings {
			larger.Readings[i].Length *= 2
		}
		double := larger.Find(measure.Metric)
		for i, p := range one.Shape.Corners {
			require.InDelta(t, float64(2*p.X), float64(double.Shape.Corners[i].X), 3)
			require.InDelta(t, float64(2*p.Y), float64(double.Shape.Corners[i].Y), 3)
		}
		require.Equal(t, one.Proof, double.Proof)
	}
}

// Whatever is read, the answer is a room or the reason why not.
func FuzzFind(f *testing.F) {
	f.Add(int64(4000), int64(3000), int64(4000), int64(3000), int64(5000), int64(5000), int64(0), uint8(1)) // a rectangle
	f.Add(int64(4000), int64(3000), int64(4000), int64(3000), int64(0), int64(0), int64(3000), uint8(1))    // leaning freely
	f.Add(int64(1), int64(100000), int64(1), int64(100000), int64(99999), int64(3), int64(7), uint8(0))     // slivers
	f.Add(int64(1), int64(1), int64(1), int64(1), int64(1), int64(1), int64(1), uint8(0))                   // no room is a point
	f.Fuzz(func(t *testing.T, ab, bc, cd, da, ac, bd, across int64, scale uint8) {
		unit := measure.Length(1)
		for range scale % 9 {
			unit *= 10
		}
		room := survey.Room{Form: survey.Lines}
		for i, length := range []int64{ab, bc, cd, da, ac, bd, across} {
			if length > 0 && length < int64(10*measure.Longest/unit) {
				room.Readings = append(room.Readings, survey.Reading{Line: order[i], Length: measure.Length(length) * unit})
			}
		}
		got := room.Find(measure.FeetInches)
		if !got.Shape.Usable() {
			require.NotEmpty(t, stops(got.Problems))
			return
		}
		require.True(t, got.Shape.IsConvex())
		require.Positive(t, got.Shape.Area().SquareMetres.Sign())
		sum := 0.0
		for _, c := range got.Corners {
			sum += c.Degrees
			require.False(t, math.IsNaN(c.Deviation) || math.IsInf(c.Deviation, 0))
		}
		require.InDelta(t, 360, sum, 1e-3)
	})
}
