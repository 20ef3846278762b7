package survey_test

import (
	"math"
	"testing"

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
			got := read(c.unit, c.lines[:]...).Find(metric)
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

// Both diagonals: Gauss–Newton and a condition equation, agreeing to 1e-17
// (Ghilani, Adjustment Computations; method from memory).
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
			got := read(c.unit, c.lines[:]...).Find(metric)
			require.True(t, got.Shape.Usable(), "%v", got.Problems)
			for i, want := range c.residual {
				near(t, want, c.unit, got.Lines[i].Off(), string(got.Lines[i].Line))
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
	l1 := read(mm, 4115, 3048, 4102, 3061, 5120, 5114).Find(metric).Shape
	for i, want := range [][2]float64{{0, 0}, {4113.984008762, 0}, {4116.031447540, 3047.241163258}, {15.071152130, 3060.207953137}} {
		near(t, want[0], mm, l1.Corners[i].X, "x")
		near(t, want[1], mm, l1.Corners[i].Y, "y")
	}
	assert.InDelta(t, 12543144.076230989, l1.Area().SquareMetres.Float()*1e6, 0.01)
}
