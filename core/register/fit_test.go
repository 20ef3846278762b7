package register_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"ceilingwright/core/measure"
	"ceilingwright/core/register"
	"ceilingwright/core/survey"
)

const (
	inch = measure.Inch
	foot = measure.Foot
	mm   = measure.Millimetre
)

// at is a place given in millimetres, to the nanometre.
func at(x, y float64) survey.Point {
	return survey.Point{X: measure.Length(math.Round(x * 1e6)), Y: measure.Length(math.Round(y * 1e6))}
}

// marks pairs places, both given as x, y, x, y in millimetres.
func marks(want, got []float64) []register.Mark {
	list := make([]register.Mark, len(want)/2)
	for i := range list {
		list[i] = register.Mark{Name: string(rune('a' + i)), Want: at(want[2*i], want[2*i+1]), Got: at(got[2*i], got[2*i+1])}
	}
	return list
}

func inches(values ...float64) []float64 {
	for i := range values {
		values[i] *= 25.4
	}
	return values
}

// corners are the marks of the worked values unless they give others.
var corners = []float64{0, 0, 3600, 0, 3600, 2400, 0, 2400}

// worked are fits worked out twice, by the closed form and by the singular
// values of the matrix of products (the method of Kabsch 1976 and of Arun and
// others 1987, from memory), to nine decimals; here to the nanometre.
var worked = []struct {
	name      string
	marks     []register.Mark
	kind      register.Kind
	degrees   float64
	x, y      float64 // shift of the box's corner A, mm
	left      []float64
	deviation float64
	scale     float64
}{
	{"K1 turned half a degree", marks(corners, []float64{12, -7, 3611.862923031, 24.415527794, 3590.919237835, 2424.324143148, -8.943685196, 2392.908615354}),
		register.Rigid, 0.5, 12, -7, []float64{0, 0, 0, 0}, 0, 1},
	{"K2", marks(corners, []float64{3, -2, 3603, 6, 3597, 2407, -2, 2397}),
		register.Rigid, 0.139579787, 3.178690581, -2.381463184, []float64{0.421241599, 0.423349616, 0.697013297, 0.905573478}, 0.576638577, 0.999906813},
	{"K3 one bad", marks(corners, []float64{3, -2, 3603, 6, 3603, 2413, -2, 2397}),
		register.Rigid, 0.150454514, 4.907314298, -1.222525247, []float64{2.059688040, 2.926964823, 6.499898794, 1.869816118}, 3.422114392, 1.000868835},
	{"K3 without it", marks([]float64{0, 0, 3600, 0, 0, 2400}, []float64{3, -2, 3603, 6, -2, 2397}),
		register.Rigid, 0.130405300, 3.157241343, -2.395794444, []float64{0.425885057, 0.250523888, 0.671351526}, 0.481266790, 0.999842333},
	{"K4 two marks", marks([]float64{0, 0, 3600, 0}, []float64{2, 1, 3601, 10}),
		register.Rigid, 0.143278950, 1.505628100, 0.998763727, []float64{0.494373446, 0.494373446}, 0.699149632, 0.999725348},
	{"K5 stretched", marks(corners, []float64{0, 0, 3605, 0, 3605, 2403, 0, 2403}),
		register.Rigid, 0, 2.5, 1.5, []float64{2.915475947, 2.915475947, 2.915475947, 2.915475947}, 2.607680962, 1.001346154},
	{"K6 in inches", marks(inches(0, 0, 96, 0, 48, 60), inches(1./16, -1./8, 96+1./16, 1./4, 47+13./16, 60+1./8)),
		register.Rigid, 0.228838641, 0.059429055 * 25.4, -0.108218050 * 25.4,
		inches(0.017060614, 0.025494098, 0.042550136), 0.030284912 * 25.4, 1.000364714},
	{"K7 mirrored", marks(corners, []float64{3600, 0, 0, 0, 0, 2400, 3600, 2400}),
		register.Mirrored, 180, 3600, 2400, []float64{2400, 2400, 2400, 2400}, 2400 * 2 / math.Sqrt(5), 0.384615385},
}

func TestFitMarks_WorkedValues(t *testing.T) {
	for _, c := range worked {
		t.Run(c.name, func(t *testing.T) {
			f := register.FitMarks(c.marks)
			assert.Equal(t, c.kind, f.Kind)
			// Half a digit for the worked value, and as much for marks that are
			// rounded to the nanometre here.
			assert.InDelta(t, c.degrees, math.Abs(f.Degrees()), 1e-9)
			assert.InDelta(t, c.scale-1, f.Stretch, 6e-10)
			origin := f.At(survey.Point{})
			nanometre(t, c.x, origin.X, "shift x")
			nanometre(t, c.y, origin.Y, "shift y")
			for i, left := range c.left {
				nanometre(t, left, f.Left[i].Size(), "left at a mark")
			}
			deviation, ok := f.Deviation()
			assert.True(t, ok)
			nanometre(t, c.deviation, deviation, "deviation")
		})
	}
}

// nanometre holds a length against millimetres, to one nanometre for the
// rounding of the worked value and one for ours.
func nanometre(t *testing.T, want float64, got measure.Length, what string) {
	t.Helper()
	assert.InDelta(t, want, float64(got)/1e6, 2e-6, what)
}

// The singular values of the matrix of products give the same turn by another
// road: H = Σ u v', H = U S V', R = V diag(1, det) U' (Kabsch 1976, from memory).
func TestFitMarks_AgreesWithSingularValues(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	all := [][]register.Mark{}
	for _, c := range worked {
		if c.kind == register.Rigid {
			all = append(all, c.marks)
		}
	}
	for range 200 {
		list := make([]register.Mark, 2+random.Intn(8))
		angle := (random.Float64() - 0.5) * 6
		for i := range list {
			x, y := random.Float64()*9000, random.Float64()*6000
			list[i] = register.Mark{Want: at(x, y), Got: at(
				x*math.Cos(angle)-y*math.Sin(angle)+random.Float64()*8, x*math.Sin(angle)+y*math.Cos(angle)+random.Float64()*8)}
		}
		all = append(all, list)
	}
	for _, list := range all {
		f := register.FitMarks(list)
		turn, shift := bySingularValues(list)
		require.InDelta(t, math.Atan2(turn.At(1, 0), turn.At(0, 0))*180/math.Pi, f.Degrees(), 1e-9)
		origin := f.At(survey.Point{})
		require.InDelta(t, shift[0], float64(origin.X)/1e6, 2e-6)
		require.InDelta(t, shift[1], float64(origin.Y)/1e6, 2e-6)
	}
}

func bySingularValues(list []register.Mark) (turn *mat.Dense, shift [2]float64) {
	u, v := mat.NewDense(len(list), 2, nil), mat.NewDense(len(list), 2, nil)
	var meanU, meanV [2]float64
	for i, m := range list {
		for k, l := range [2]measure.Length{m.Want.X, m.Want.Y} {
			u.Set(i, k, float64(l)/1e6)
			meanU[k] += float64(l) / 1e6 / float64(len(list))
		}
		for k, l := range [2]measure.Length{m.Got.X, m.Got.Y} {
			v.Set(i, k, float64(l)/1e6)
			meanV[k] += float64(l) / 1e6 / float64(len(list))
		}
	}
	for i := range list {
		for k := range 2 {
			u.Set(i, k, u.At(i, k)-meanU[k])
			v.Set(i, k, v.At(i, k)-meanV[k])
		}
	}
	var h, left, right mat.Dense
	h.Mul(u.T(), v)
	var svd mat.SVD
	if !svd.Factorize(&h, mat.SVDFull) {
		panic("no singular values")
	}
	svd.UTo(&left)
	svd.VTo(&right)
	sign := math.Copysign(1, mat.Det(&left)*mat.Det(&right))
	turn = mat.NewDense(2, 2, nil)
	turn.Product(&right, mat.NewDense(2, 2, []float64{1, 0, 0, sign}), left.T())
	shift[0] = meanV[0] - turn.At(0, 0)*meanU[0] - turn.At(0, 1)*meanU[1]
	shift[1] = meanV[1] - turn.At(1, 0)*meanU[0] - turn.At(1, 1)*meanU[1]
	return turn, shift
}

func TestFitMarks_WhatMarksCannotTell(t *testing.T) {
	assert.Equal(t, register.NoFit, register.FitMarks(nil).Kind)
	assert.Equal(t, register.Offset{}, register.FitMarks(nil).At(at(5, 5)))

	one := register.FitMarks(marks([]float64{100, 200}, []float64{103, 196}))
	assert.Equal(t, register.Shift, one.Kind)
	assert.Equal(t, register.Offset{X: 3 * mm, Y: -4 * mm}, one.At(at(4000, 17)), "one mark shows a shift alone")
	assert.Equal(t, 5*mm, one.At(at(0, 0)).Size())
	_, spare := one.Deviation()
	assert.False(t, spare)
	_, spare = one.Expected(at(0, 0), mm)
	assert.False(t, spare)

	same := register.FitMarks(marks([]float64{50, 50, 50, 50, 50, 50}, []float64{51, 50, 53, 50, 52, 50}))
	assert.Equal(t, register.Shift, same.Kind, "marks all at one point show no direction")
	assert.Equal(t, register.Offset{X: 2 * mm}, same.At(at(0, 0)))
	assert.Zero(t, same.Stretch)
	assert.Zero(t, same.Along)

	// Measured marks that balance: two opposite corners turned one way, two the
	// other, so that A = B = 0.
	mess := register.FitMarks(marks([]float64{0, 0, 100, 0, 100, 100, 0, 100}, []float64{100, 0, 0, 0, 0, 100, 100, 100}))
	assert.Equal(t, register.Shift, mess.Kind, "a square mirrored balances exactly")

	line := register.FitMarks(marks([]float64{0, 0, 1000, 0, 3000, 0}, []float64{0, 1, 1000, 1, 3000, 1}))
	assert.Equal(t, register.Rigid, line.Kind, "marks in one line are not mirrored")
	assert.Zero(t, line.Across, "no spread, no stretch")

	many := make([]register.Mark, register.MostMarks+50)
	for i := range many {
		many[i] = register.Mark{Want: at(float64(i), 0), Got: at(float64(i), 0)}
	}
	assert.Len(t, register.FitMarks(many).Marks, register.MostMarks)
}

// Reversing two names of a rectangle's marks is no mirror; reading x from the
// wrong wall is.
func TestFitMarks_Mirrored(t *testing.T) {
	for _, c := range []struct {
		name string
		got  []float64
		want register.Kind
	}{
		{"x from the other wall, carelessly measured", []float64{3601, 3, 2, -2, -3, 2399, 3598, 2401}, register.Mirrored},
		{"y from the other wall", []float64{0, 2400, 3600, 2400, 3600, 0, 0, 0}, register.Mirrored},
		{"x and y exchanged", []float64{0, 0, 0, 3600, 2400, 3600, 2400, 0}, register.Mirrored},
		{"half way round", []float64{3600, 2400, 0, 2400, 0, 0, 3600, 0}, register.Rigid},
		{"a bad mark", []float64{0, 0, 3600, 0, 3600, 2400, 0, 2300}, register.Rigid},
	} {
		assert.Equal(t, c.want, register.FitMarks(marks(corners, c.got)).Kind, c.name)
	}
}

// Stretch by direction, derived: 3605/3600 and 2403/2400, whatever the turn.
func TestFitMarks_StretchByDirection(t *testing.T) {
	k5 := register.FitMarks(worked[5].marks)
	assert.InDelta(t, 5./3600, k5.Along, 1e-12)
	assert.InDelta(t, 3./2400, k5.Across, 1e-12)
	turned := register.FitMarks(turn(worked[5].marks, 3, 4, 5))
	assert.InDelta(t, 5./3600, turned.Along, 1e-9)
	assert.InDelta(t, 3./2400, turned.Across, 1e-9)
}

// turn is the measured marks turned by the angle of a whole triangle a, b, c
// and shifted: exact in whole nanometres to the rounding of one.
func turn(list []register.Mark, a, b, c float64) []register.Mark {
	turned := make([]register.Mark, len(list))
	for i, m := range list {
		x, y := float64(m.Got.X), float64(m.Got.Y)
		m.Got = survey.Point{X: measure.Length(math.Round((x*a - y*b) / c)), Y: measure.Length(math.Round((x*b + y*a) / c))}
		turned[i] = m
	}
	return turned
}

func TestFitMarks_FindsEveryRigidMotion(t *testing.T) {
	random := rand.New(rand.NewSource(11))
	for range 300 {
		angle := (random.Float64()*2 - 1) * math.Pi
		x, y := random.Float64()*200-100, random.Float64()*200-100
		list := make([]register.Mark, 2+random.Intn(9))
		for i := range list {
			px, py := random.Float64()*20000, random.Float64()*15000
			list[i] = register.Mark{Want: at(px, py), Got: at(
				px*math.Cos(angle)-py*math.Sin(angle)+x, px*math.Sin(angle)+py*math.Cos(angle)+y)}
		}
		f := register.FitMarks(list)
		require.Equal(t, register.Rigid, f.Kind)
		_, left := f.Worst()
		require.LessOrEqual(t, left, measure.Length(3), "nothing is left but the rounding of the marks")
		require.Less(t, math.Abs(f.Stretch), 1e-6)
		for i, m := range list {
			off := f.At(m.Want)
			require.LessOrEqual(t, (m.Want.X + off.X - m.Got.X - f.Left[i].X).Abs(), measure.Length(2), "At and Left say the same of a mark")
		}
	}
}

func TestFitMarks_NothingOffIsNothing(t *testing.T) {
	f := register.FitMarks(marks(corners, corners))
	assert.Equal(t, register.Offset{}, f.At(at(1234, 567)))
	assert.Zero(t, f.Degrees())
	assert.Zero(t, f.Stretch)
	_, left := f.Worst()
	_, off := f.AsItLies()
	assert.Zero(t, left)
	assert.Zero(t, off)
}

// Shift all measured marks and the fit shifts with them; turn them and what is
// left stays as long.
func TestFitMarks_FollowsTheMarks(t *testing.T) {
	k2 := worked[1].marks
	f := register.FitMarks(k2)
	moved := make([]register.Mark, len(k2))
	for i, m := range k2 {
		m.Got.X, m.Got.Y = m.Got.X+30*measure.Metre, m.Got.Y-7*mm
		moved[i] = m
	}
	g := register.FitMarks(moved)
	assert.Equal(t, f.Left, g.Left)
	p := at(777, 888)
	assert.LessOrEqual(t, (g.At(p).X - f.At(p).X - 30*measure.Metre).Abs(), measure.Length(1))
	turned := register.FitMarks(turn(k2, 20, 21, 29))
	for i := range k2 {
		assert.LessOrEqual(t, (f.Left[i].Size() - turned.Left[i].Size()).Abs(), measure.Length(3))
	}
	assert.InDelta(t, f.Degrees()+math.Atan2(21, 20)*180/math.Pi, turned.Degrees(), 1e-7)
}

// A tile setter's check, 48 in held at one end and two degrees off, runs off
// 48 × tan 2° = 1.676 in at the other.
func TestFit_RunOff(t *testing.T) {
	angle := 2 * math.Pi / 180
	f := register.FitMarks(marks([]float64{0, 0, 1000, 0}, []float64{0, 0, 1000 * math.Cos(angle), 1000 * math.Sin(angle)}))
	off, ok := f.RunOff(48 * inch)
	assert.True(t, ok)
	assert.InDelta(t, 1.676197, float64(off)/float64(inch), 1e-6)
	k1, ok := register.FitMarks(worked[0].marks).RunOff(3600 * mm)
	assert.True(t, ok)
	assert.InDelta(t, 3600*math.Tan(0.5*math.Pi/180), float64(k1)/1e6, 3e-6)
	_, ok = register.FitMarks(worked[7].marks).RunOff(foot)
	assert.False(t, ok, "turned half way round there is no run-off")
}

// After Fitzpatrick and others 1998 (from memory), derived and simulated: for
// the four corner marks and a deviation of 1 the squared error expected is 0.5
// in the middle, 0.75 at a corner, 1.442307692 at 4200 mm from the middle.
func TestFit_Expected(t *testing.T) {
	f := register.FitMarks(worked[1].marks)
	for _, c := range []struct{ x, y, square float64 }{
		{1800, 1200, 0.5}, {0, 0, 0.75}, {3600, 2400, 0.75}, {1800 + 4200, 1200, 1.442307692},
	} {
		expected, ok := f.Expected(at(c.x, c.y), mm)
		assert.True(t, ok)
		nanometre(t, math.Sqrt(c.square), expected, "expected")
	}
}

// The formula against a simulation: marks with readings off by chance.
func TestFit_ExpectedAgreesWithChance(t *testing.T) {
	random := rand.New(rand.NewSource(3))
	corner, sum := at(3600, 2400), 0.0
	const times = 4000
	for range times {
		list := marks(corners, corners)
		for i := range list {
			list[i].Got.X += measure.Length(random.NormFloat64() * 1e6)
			list[i].Got.Y += measure.Length(random.NormFloat64() * 1e6)
		}
		off := float64(register.FitMarks(list).At(corner).Size()) / 1e6
		sum += off * off
	}
	assert.InDelta(t, 0.75, sum/times, 0.05)
}

// Swapping the axes of everything, a mirror, turns the other way by as much.
func TestFitMarks_MirrorTurnsTheOtherWay(t *testing.T) {
	for _, c := range worked[:7] {
		flipped := make([]register.Mark, len(c.marks))
		for i, m := range c.marks {
			m.Want.X, m.Got.X = -m.Want.X, -m.Got.X
			flipped[i] = m
		}
		f, g := register.FitMarks(c.marks), register.FitMarks(flipped)
		assert.InDelta(t, -f.Degrees(), g.Degrees(), 1e-9, c.name)
		for i := range f.Left {
			assert.LessOrEqual(t, (f.Left[i].Size() - g.Left[i].Size()).Abs(), measure.Length(1), c.name)
		}
	}
}

func FuzzFitMarks(f *testing.F) {
	f.Add(int64(0), int64(0), int64(3600e6), int64(0), int64(2e6), int64(1e6), int64(3601e6), int64(10e6))
	f.Add(int64(0), int64(0), int64(0), int64(0), int64(0), int64(0), int64(0), int64(0))
	f.Add(int64(measure.Longest), int64(-measure.Longest), int64(1), int64(1), int64(-1), int64(0), int64(0), int64(1))
	f.Fuzz(func(t *testing.T, a, b, c, d, e, g, h, i int64) {
		l := func(n int64) measure.Length { return measure.Length(n) % (measure.Longest + 1) }
		list := []register.Mark{
			{Want: survey.Point{X: l(a), Y: l(b)}, Got: survey.Point{X: l(c), Y: l(d)}},
			{Want: survey.Point{X: l(e), Y: l(g)}, Got: survey.Point{X: l(h), Y: l(i)}},
			{Want: survey.Point{X: l(c), Y: l(e)}, Got: survey.Point{X: l(b), Y: l(i)}},
		}
		fit := register.FitMarks(list)
		_, left := fit.Worst()
		if math.IsNaN(fit.Degrees()) || math.IsNaN(fit.Stretch) || math.IsNaN(fit.Along) || math.IsNaN(fit.Across) || left < 0 || left > 8*measure.Longest {
			t.Fatalf("%+v gives %+v", list, fit)
		}
		register.Judge(list, register.Grid{}, mm)
	})
}
