package register

import (
	"math"

	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Mark is one check mark of a layer: Want is where it should be by the design,
// Got where it was measured.
type Mark struct {
	Name      string
	Want, Got survey.Point
}

// MostMarks is how many marks are fitted. Nobody measures more, and sums of the
// longest lengths stay exact. A choice.
const MostMarks = 100

// Kind says what the marks can tell.
type Kind string

// Nothing without a mark; a shift from one mark or from marks that show no
// direction; a shift and a turn from two or more; and marks that only fit
// mirrored, so that left and right were exchanged.
const (
	NoFit    Kind = ""
	Shift    Kind = "shift"
	Rigid    Kind = "rigid"
	Mirrored Kind = "mirrored"
)

// Fit is the shift and the turn that bring the design nearest to the marks as
// measured: the sum of the squared distances left is the least. It is the plane
// case of the fits by Kabsch 1976, Arun and others 1987, Horn 1987 and Umeyama
// 1991 (papers from memory): with both sets of marks taken from their centres,
// A the sum of the dot products and B of the cross products, the turn is the
// angle of (A, B). A Mirrored fit holds the best turn there is without
// mirroring.
type Fit struct {
	Kind  Kind
	Marks []Mark
	// Left is what the fit leaves at each mark: where it puts the mark, less
	// where it was measured.
	Left []Offset
	// Stretch is how much farther apart the marks were measured than designed,
	// as a share: 0.001 is one in a thousand. The fit reports it and does not
	// apply it. Along and Across are the same for each direction of the mask,
	// 0 where the marks are not spread that way.
	Stretch, Along, Across float64

	wantX, wantY float64 // centre of the design marks, mm
	gotX, gotY   float64 // centre of the measured marks, mm
	cos, sin     float64 // the turn as a unit vector
	spread       float64 // sum of squared distances of the design from its centre, mm²
	squares      float64 // sum of the squared distances left, mm²
}

// Offset is a small way on the ceiling, towards BC and towards CD.
type Offset struct{ X, Y measure.Length }

// Size is how long the way is, to the nearest nanometre.
func (o Offset) Size() measure.Length {
	return measure.LengthFromMillimetres(root(o.X.Millimetres(), o.Y.Millimetres()))
}

// FitMarks fits the marks; those past MostMarks are left out.
func FitMarks(marks []Mark) Fit {
	marks = marks[:min(len(marks), MostMarks)]
	f := Fit{Marks: marks, cos: 1}
	if len(marks) == 0 {
		return f
	}
	s := sumsOf(marks)
	f.wantX, f.wantY, f.gotX, f.gotY = s.centres()
	f.spread = s.spread
	f.Kind = Shift
	if r := root(s.a, s.b); len(marks) > 1 && r > hair*(s.spread+s.gotSpread) {
		f.Kind = Rigid
		f.cos, f.sin = s.a/r, s.b/r
		f.Stretch = r/s.spread - 1
		if s.isMirrored(r) {
			f.Kind = Mirrored
		}
	}
	f.leave(s)
	return f
}

// hair is the share of the marks' spread below which a sum counts as nothing:
// far above what float64 leaves of sums that cancel, far below a tape mark.
const hair = 1e-9

// sums are what a fit is made of. Distances from the centres are taken in whole
// nanometres, times the number of marks so that the centre is whole too, and
// only then turned into millimetres, so that nothing is lost to large numbers.
type sums struct {
	marks             []Mark
	n                 measure.Length
	want, got         survey.Point // sums, not means
	a, b              float64
	mirrorA, mirrorB  float64
	spread, gotSpread float64
	spreadX, spreadY  float64 // of the design, by direction
}

func sumsOf(marks []Mark) sums {
	s := sums{marks: marks, n: measure.Length(len(marks))}
	for _, m := range marks {
		s.want.X, s.want.Y = s.want.X+m.Want.X, s.want.Y+m.Want.Y
		s.got.X, s.got.Y = s.got.X+m.Got.X, s.got.Y+m.Got.Y
	}
	for _, m := range marks {
		ux, uy, vx, vy := s.apart(m)
		s.a += float64(ux*vx) + float64(uy*vy)
		s.b += float64(ux*vy) - float64(uy*vx)
		s.mirrorA += float64(uy*vy) - float64(ux*vx)
		s.mirrorB += float64(ux*vy) + float64(uy*vx)
		s.spreadX += float64(ux * ux)
		s.spreadY += float64(uy * uy)
		s.gotSpread += float64(vx*vx) + float64(vy*vy)
	}
	s.spread = s.spreadX + s.spreadY
	return s
}

// apart is a mark from the centres of all marks, in millimetres.
func (s sums) apart(m Mark) (ux, uy, vx, vy float64) {
	of := func(l, sum measure.Length) float64 {
		return float64(l*s.n-sum) / (float64(s.n) * float64(measure.Millimetre))
	}
	return of(m.Want.X, s.want.X), of(m.Want.Y, s.want.Y), of(m.Got.X, s.got.X), of(m.Got.Y, s.got.Y)
}

func (s sums) centres() (wantX, wantY, gotX, gotY float64) {
	of := func(sum measure.Length) float64 {
		return float64(sum) / (float64(s.n) * float64(measure.Millimetre))
	}
	return of(s.want.X), of(s.want.Y), of(s.got.X), of(s.got.Y)
}

// isMirrored tells whether three or more marks fit much better with left and
// right exchanged; r is what the fit without mirroring reaches. Marks in one
// line fit either way as well and are not called mirrored. Half the distances
// left, a quarter of their squares, is called much better: a choice.
func (s sums) isMirrored(r float64) bool {
	straight := s.spread + s.gotSpread - float64(2*r)
	mirrored := s.spread + s.gotSpread - float64(2*root(s.mirrorA, s.mirrorB))
	return s.n > 2 && mirrored+hair*s.spread < straight/4
}

// leave works out what the fit leaves at each mark, and the stretch by
// direction, which takes the turn back off the measured marks.
func (f *Fit) leave(s sums) {
	f.Left = make([]Offset, len(f.Marks))
	var along, across float64
	for i, m := range f.Marks {
		ux, uy, vx, vy := s.apart(m)
		x := float64(f.cos*ux) - float64(f.sin*uy) - vx
		y := float64(f.sin*ux) + float64(f.cos*uy) - vy
		f.Left[i] = Offset{measure.LengthFromMillimetres(x), measure.LengthFromMillimetres(y)}
		f.squares += float64(x*x) + float64(y*y)
		along += float64(ux * (float64(f.cos*vx) + float64(f.sin*vy)))
		across += float64(uy * (float64(f.cos*vy) - float64(f.sin*vx)))
	}
	if f.Kind != Rigid {
		return
	}
	if s.spreadX > hair*s.spread {
		f.Along = along/s.spreadX - 1
	}
	if s.spreadY > hair*s.spread {
		f.Across = across/s.spreadY - 1
	}
}

// At is how far the layer is off at a place of the design: where the fit puts
// it, less where it should be.
func (f Fit) At(p survey.Point) Offset {
	if f.Kind == NoFit {
		return Offset{}
	}
	px, py := p.X.Millimetres(), p.Y.Millimetres()
	ux, uy := px-f.wantX, py-f.wantY
	return Offset{
		measure.LengthFromMillimetres(float64(f.cos*ux) - float64(f.sin*uy) + f.gotX - px),
		measure.LengthFromMillimetres(float64(f.sin*ux) + float64(f.cos*uy) + f.gotY - py),
	}
}

// Degrees is the turn, clockwise looking up, from −180 to 180. The last digits
// of the arc depend on the processor: write at most six decimals.
func (f Fit) Degrees() float64 { return math.Atan2(f.sin, f.cos) * 180 / math.Pi }

// Turn is the same as a number with six decimals.
func (f Fit) Turn() measure.Number {
	return measure.NumberFromFraction(int64(math.Round(f.Degrees()*1e6)), 1_000_000)
}

// Share is a share as a number, to a hundred-thousandth of one per cent.
func Share(share float64) measure.Number {
	return measure.NumberFromFraction(int64(math.Round(share*1e7)), 10_000_000)
}

// RunOff is how far a line of that length runs off at its far end by the turn:
// length times its tangent, above zero clockwise looking up. False where the
// turn is 45° or more and a run-off says nothing.
func (f Fit) RunOff(length measure.Length) (measure.Length, bool) {
	if f.cos <= math.Abs(f.sin) {
		return 0, false
	}
	return measure.LengthFromMillimetres(length.Millimetres() * f.sin / f.cos), true
}

// Spare is how many readings the fit has more than it needs: two for each mark,
// less three for shift and turn.
func (f Fit) Spare() int {
	if f.Kind != Rigid && f.Kind != Mirrored {
		return 0
	}
	return 2*len(f.Marks) - 3
}

// Deviation is the standard deviation of one reading along one direction, as
// the marks show it: √(sum of squares left ÷ (2N − 3)). False where nothing is
// spare.
func (f Fit) Deviation() (measure.Length, bool) {
	spare := f.Spare()
	if spare < 1 {
		return 0, false
	}
	return measure.LengthFromMillimetres(math.Sqrt(f.squares / float64(spare))), true
}

// Expected is how far the fit is likely to be off at a place of the design when
// each reading has that standard deviation: the root of 2σ²/N + d²σ²/Σ|u|², d
// from the centre of the marks and u the marks from it (after Fitzpatrick and
// others 1998, from memory). Marks spread wide keep it small. False without a
// turn.
func (f Fit) Expected(p survey.Point, deviation measure.Length) (measure.Length, bool) {
	if f.Spare() < 1 {
		return 0, false
	}
	x, y := p.X.Millimetres()-f.wantX, p.Y.Millimetres()-f.wantY
	d := float64(x*x) + float64(y*y)
	return measure.LengthFromMillimetres(deviation.Millimetres() * math.Sqrt(2/float64(len(f.Marks))+d/f.spread)), true
}

// KnownTo is the most that the fit is expected to be off at a corner of the layer,
// each reading as good as the marks show. False where they are too few to show it.
func (f Fit) KnownTo(g Grid) (worst measure.Length, ok bool) {
	deviation, ok := f.Deviation()
	if !ok || len(f.Marks) < 3 {
		return 0, false
	}
	for _, x := range [2]measure.Length{0, g.Columns.Box} {
		for _, y := range [2]measure.Length{0, g.Rows.Box} {
			off, _ := f.Expected(survey.Point{X: x, Y: y}, deviation)
			worst = max(worst, off)
		}
	}
	return worst, true
}

// Worst is the mark at which the fit leaves the most, and how much; −1 without
// marks.
func (f Fit) Worst() (mark int, left measure.Length) {
	mark = -1
	for i, o := range f.Left {
		if size := o.Size(); mark < 0 || size > left {
			mark, left = i, size
		}
	}
	return mark, left
}

// AsItLies is the mark that is farthest from its place while nothing is moved,
// and how far; −1 without marks.
func (f Fit) AsItLies() (mark int, off measure.Length) {
	mark = -1
	for i, m := range f.Marks {
		if size := m.Off().Size(); mark < 0 || size > off {
			mark, off = i, size
		}
	}
	return mark, off
}

// Off is how far the mark was measured from its place.
func (m Mark) Off() Offset { return Offset{m.Got.X - m.Want.X, m.Got.Y - m.Want.Y} }

// root is √(x² + y²), written so that no processor fuses it.
func root(x, y float64) float64 { return math.Sqrt(float64(x*x) + float64(y*y)) }
