package measure

import (
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// System is which of the two notations a length is written in.
type System uint8

// The two systems.
const (
	Metric System = iota
	FeetInches
)

// tick is the finest mark of an inch tape.
const tick = Inch / 64

// Notation is how figures are written for a person.
//
// Feet-inches is set typographically, 17′ 9½″, or with the keys of a keyboard
// when Plain, 17' 9 1/2". Metric is written in metres from 1 m and in
// millimetres below. A mark of 0 or less does not round: the figure is then
// written exactly. With Imperial, feet-inches goes with the imperial gallon in
// place of the US one. Everything written is read back by Parse or ParseOffset.
type Notation struct {
	System     System
	InchMark   Length
	MetricMark Length
	Imperial   bool
	Plain      bool
	// Under is how it is said that something is less than {least}, which is the least
	// that can be told; "" is our way.
	Under string
}

func (n Notation) under(least string) string {
	said := Say("under {least}", put("least", least))
	if n.Under != "" {
		said.Sentence = n.Under
	}
	return said.String()
}

// Mark is the mark that lengths are rounded to in this notation.
func (n Notation) Mark() Length {
	if n.System == FeetInches {
		return n.InchMark
	}
	return n.MetricMark
}

// ToMark is l rounded to the nearest whole number of marks, a half going away
// from zero. What is a ten-thousandth of a mark or less short of a half counts as the
// half: halves and shares are cut off to the nanometre, and one place reached two
// ways must not get two marks. A mark of 0 or less leaves l as it is. Rounding is
// done in whole marks before feet and inches are split, so that 35.9999 in is 3 ft
// and never 2 ft 12 in.
func (l Length) ToMark(mark Length) Length {
	if mark <= 0 {
		return l
	}
	over := l % mark
	whole := l - over
	short := mark / 10_000
	switch {
	case over+short >= mark-over:
		return whole + mark
	case short-over >= mark+over:
		return whole - mark
	}
	return whole
}

// Length is l rounded to the mark of the notation and written out.
func (n Notation) Length(l Length) string {
	mark := n.Mark()
	if mark <= 0 {
		return n.Exact(l)
	}
	rounded := l.ToMark(mark)
	if n.System == FeetInches {
		if rounded%tick != 0 {
			return n.Exact(rounded)
		}
		return n.feetInches(rounded)
	}
	return n.metric(rounded, decimalsOf(mark))
}

// Hides is what Length keeps from the reader: the rounded length less the
// exact one.
func (n Notation) Hides(l Length) Length { return l.ToMark(n.Mark()) - l }

// finest is how fine a length is ever told: a 64th of an inch or a tenth of a
// millimetre, or the mark where that is finer. Nobody reads a tape or a rule any
// finer, and a figure that is looks surer than it is. A choice.
func (n Notation) finest() Length {
	grid := Millimetre / 10
	if n.System == FeetInches {
		grid = tick
	}
	if mark := n.Mark(); mark > 0 {
		return min(grid, mark)
	}
	return grid
}

// Fine is l as finely as it can be measured, for a small length of which the tape
// mark hides too much: 39⁄64″, 0.3 mm or 4.2012 m, and less than can be told as
// under 1⁄64″ or under 0.1 mm. What the mark does not hide is written as Length
// writes it.
func (n Notation) Fine(l Length) string {
	finest := n.finest()
	told := l.ToMark(finest)
	switch {
	case n.Mark() > 0 && n.Hides(l) == 0:
		return n.Length(l)
	case n.IsTooFine(l):
		return n.under(n.Fine(finest))
	case n.System == FeetInches:
		return n.Exact(told)
	case told%Millimetre == 0:
		return n.metric(told, 0)
	}
	return n.metric(told, decimalsOf(finest))
}

// IsTooFine tells whether l is less than can be told, and not nothing.
func (n Notation) IsTooFine(l Length) bool { return l != 0 && l.ToMark(n.finest()) == 0 }

// IsFine tells whether Fine writes l exactly.
func (n Notation) IsFine(l Length) bool { return l%n.finest() == 0 || n.Hides(l) == 0 }

// Amount is l as Length writes it, or as Fine does where the tape mark would hide
// it all: a difference that is there is never said to be nothing.
func (n Notation) Amount(l Length) string {
	if l != 0 && l+n.Hides(l) == 0 {
		return n.Fine(l)
	}
	return n.Length(l)
}

// AtMost is a limit from above, written on the tape mark inside it, so that
// whoever does as told is not refused again. l is not below 0.
func (n Notation) AtMost(l Length) string {
	if mark := n.Mark(); mark > 0 {
		l -= l % mark
	}
	return n.Length(l)
}

// AtLeast is a limit from below, written on the first tape mark not below it.
// l is not below 0.
func (n Notation) AtLeast(l Length) string { return n.Length(l.UpToMark(n.Mark())) }

// UpToMark is the first tape mark not below l, which is not below 0.
func (l Length) UpToMark(mark Length) Length {
	if mark > 0 {
		return (l + mark - 1) / mark * mark
	}
	return l
}

// Exact is l without rounding: in feet and inches where l is a whole number of
// 64ths of an inch and the notation is feet-inches, otherwise in millimetres
// with as many decimals as it takes, at most 6. Parse reads it back to the
// same Length.
func (n Notation) Exact(l Length) string {
	if n.System == FeetInches && l%tick == 0 {
		return n.feetInches(l)
	}
	return n.minus(l) + millimetres(magnitude(l)) + " mm"
}

// String is l exactly, in millimetres: "2387.6 mm". ParseOffset reads it back.
func (l Length) String() string { return Notation{System: Metric, Plain: true}.Exact(l) }

// feetInches writes a whole number of 64ths of an inch. Feet are left out below
// 1 ft; inches below 1 in only where there are no feet.
func (n Notation) feetInches(l Length) string {
	ticks := magnitude(l) / uint64(tick)
	feet, inches, parts := ticks/768, ticks/64%12, ticks%64
	var room [48]byte // more than the longest takes, so that only the text itself is made
	out := append(room[:0], n.minus(l)...)
	if feet > 0 {
		out = strconv.AppendUint(out, feet, 10)
		out = append(out, n.either("′ ", "' ")...)
	}
	if inches > 0 || parts == 0 || feet > 0 {
		out = strconv.AppendUint(out, inches, 10)
		if parts > 0 && (n.Plain || fractionCharacter(parts) == "") {
			out = append(out, ' ')
		}
	}
	if parts > 0 {
		out = append(out, n.fraction(parts)...)
	}
	return string(append(out, n.either("″", `"`)...))
}

// fraction is parts/64 reduced: one character where Unicode has it, else with
// the fraction slash U+2044, or with a plain slash.
func (n Notation) fraction(parts uint64) string {
	if c := fractionCharacter(parts); c != "" && !n.Plain {
		return c
	}
	below := uint64(64)
	for parts%2 == 0 {
		parts, below = parts/2, below/2
	}
	return strconv.FormatUint(parts, 10) + n.either("⁄", "/") + strconv.FormatUint(below, 10)
}

func fractionCharacter(parts uint64) string {
	switch parts {
	case 8:
		return "⅛"
	case 16:
		return "¼"
	case 24:
		return "⅜"
	case 32:
		return "½"
	case 40:
		return "⅝"
	case 48:
		return "¾"
	case 56:
		return "⅞"
	}
	return ""
}

// metric writes a rounded length: metres from 1 m with three decimals more than
// millimetres take, so that both show the same mark.
func (n Notation) metric(l Length, places int) string {
	if l == 0 {
		return "0 mm"
	}
	size := magnitude(l)
	if size < uint64(Metre) {
		return n.minus(l) + fixed(size, 6, places) + " mm"
	}
	return n.minus(l) + fixed(size, 9, places+3) + " m"
}

// decimalsOf is how many decimals of a millimetre the mark takes.
func decimalsOf(mark Length) int {
	places := 6
	for places > 0 && mark%10 == 0 {
		mark, places = mark/10, places-1
	}
	return places
}

// millimetres writes nanometres as millimetres without needless zeros.
func millimetres(nanometres uint64) string {
	places := 6
	for rest := nanometres; places > 0 && rest%10 == 0; rest /= 10 {
		places--
	}
	return fixed(nanometres, 6, places)
}

// fixed writes count / 10^scale cut to places decimals, which the caller has
// rounded to. scale is at most 18.
func fixed(count uint64, scale, places int) string {
	whole, rest := count/uint64(tens[scale]), count%uint64(tens[scale])
	var room [40]byte
	out := strconv.AppendUint(room[:0], whole, 10)
	if places > 0 {
		out = append(out, '.')
	}
	for i := 1; i <= places; i++ {
		out = append(out, byte('0'+rest/uint64(tens[scale-i])%10))
	}
	return string(out)
}

// magnitude is |l|, also for the least int64.
func magnitude(l Length) uint64 {
	if l < 0 {
		return -uint64(l)
	}
	return uint64(l)
}

func (n Notation) minus(l Length) string {
	if l < 0 {
		return n.either("−", "-")
	}
	return ""
}

func (n Notation) either(set, plain string) string {
	if n.Plain {
		return plain
	}
	return set
}

// Area is a in square feet with one decimal or square metres with two, an
// exact half going to the even digit. Below five of the last place (0.5 ft²,
// 0.05 m²) it keeps three significant digits, so that a small area is not
// written as none.
func (n Notation) Area(a Area) string {
	if n.System == FeetInches {
		return n.quantity(a.SquareFeet(), 1) + n.either(" ft²", " ft2")
	}
	return n.quantity(a.SquareMetres, 2) + n.either(" m²", " m2")
}

// Volume is v in gallons or litres with two decimals, an exact half going to
// the even digit. Below a quarter gallon it is in fluid ounces with one
// decimal and below a tenth of a litre in millilitres, as it is measured out; half
// an ounce and less has two decimals. No spoon or syringe shows more, so what is
// less is under 0.01 fl oz or under 0.1 mL.
func (n Notation) Volume(v Volume) string {
	large, small, least := n.volumeUnits()
	if whole := v.In(large); whole.IsZero() || whole.Abs().Cmp(least) >= 0 {
		return n.quantity(whole, 2) + " " + large.Text()
	}
	q, places := v.In(small), int32(1)
	if small != UnitMillilitre && q.Abs().Cmp(NumberFromFraction(1, 2)) < 0 {
		places = 2
	}
	if least := NumberFromDecimal(decimal.New(1, -places)); !q.IsZero() && q.Abs().Cmp(least) < 0 {
		return n.under(n.Number(least, places) + " " + small.Text())
	}
	return n.Number(q, places) + " " + small.Text()
}

// VolumeInSum is v in gallons or litres however small, for a sum in which all is
// counted in one unit: with two decimals, or four where Volume takes the smaller
// unit.
func (n Notation) VolumeInSum(v Volume) string {
	large, _, least := n.volumeUnits()
	whole, places := v.In(large), int32(2)
	if whole.Abs().Cmp(least) < 0 {
		places = 4
	}
	return n.quantity(whole, places) + " " + large.Text()
}

// volumeUnits are the two units that volumes are written in, and from how much on
// the larger one is taken.
func (n Notation) volumeUnits() (large, small VolumeUnit, least Number) {
	switch {
	case n.System == Metric:
		return UnitLitre, UnitMillilitre, NumberFromFraction(1, 10)
	case n.Imperial:
		return UnitImperialGallon, UnitImperialFluidOunce, NumberFromFraction(1, 4)
	}
	return UnitGallon, UnitFluidOunce, NumberFromFraction(1, 4)
}

// quantity is q with the given decimals, or with three significant digits where
// it is below five of the last place and would lose most of itself.
func (n Notation) quantity(q Number, places int32) string {
	size := q.Abs()
	if size.IsZero() || size.Cmp(NumberFromDecimal(decimal.New(5, -places))) >= 0 {
		return n.Number(q, places)
	}
	digits := int32(3)
	for size.Cmp(NumberFromDecimal(decimal.New(1, 2-digits))) < 0 && digits < mostPlaces {
		digits++
	}
	return n.NumberTrimmed(q, digits)
}

// Number is q with exactly that many decimals, an exact half going to the even
// digit. From five digits before the point on, these stand in threes apart by
// a narrow no-break space (SI Brochure, 9th edition, 5.4.4); Plain leaves them
// together.
func (n Notation) Number(q Number, places int32) string {
	return n.grouped(q.Fixed(places))
}

// NumberTrimmed is Number without the zeros that end its decimals.
func (n Notation) NumberTrimmed(q Number, places int32) string {
	return n.grouped(q.Trimmed(places))
}

func (n Notation) grouped(text string) string {
	text, negative := strings.CutPrefix(text, "-")
	sign := ""
	if negative && strings.Trim(text, "0.") != "" {
		sign = n.either("−", "-")
	}
	whole := strings.IndexByte(text, '.')
	if whole < 0 {
		whole = len(text)
	}
	if !n.Plain && whole > 4 {
		for at := whole - 3; at > 0; at -= 3 {
			text = text[:at] + "\u202f" + text[at:]
		}
	}
	return sign + text
}
