package core_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// A reader of printed sums, made apart from the engine: it knows nothing but the
// text a person reads, works it out again and says between which limits the result
// may lie, given how the numbers in it are rounded.

// between is what a printed amount can stand for, in SI units to the powers in
// dims: metres, grams, hours, kelvins, money.
type between struct {
	low, high float64
	dims      [5]int
}

func exactly(x float64) between { return between{low: x, high: x} }

func (a between) each(b between, op func(x, y float64) float64) between {
	all := [4]float64{op(a.low, b.low), op(a.low, b.high), op(a.high, b.low), op(a.high, b.high)}
	return between{low: min(all[0], all[1], all[2], all[3]), high: max(all[0], all[1], all[2], all[3]), dims: a.dims}
}

func (a between) mapped(f func(float64) float64) between {
	one, other := f(a.low), f(a.high)
	return between{low: min(one, other), high: max(one, other), dims: a.dims}
}

// meets tells whether two can be the same amount.
func (a between) meets(b between) bool {
	slack := 1e-9 * max(math.Abs(a.low), math.Abs(a.high), 1e-12)
	return a.dims == b.dims && a.low <= b.high+slack && b.low <= a.high+slack
}

// unit is a word after a number: what it is worth, its dimensions, and how much a
// whole number with it may be rounded by (nothing where it is counted or typed).
type unit struct {
	worth   float64
	dims    [5]int
	rounded float64
}

const (
	foot   = 0.3048
	gallon = 3.785411784e-3
	ounce  = gallon / 128
	mil    = 25.4e-6
)

var (
	length = [5]int{1}
	area   = [5]int{2}
	volume = [5]int{3}
	mass   = [5]int{0, 1}
	hours  = [5]int{0, 0, 1}
)

// units are those that are written, the longer before those they begin with.
var units = []struct {
	name string
	unit
}{
	{"ft²·mil/gal", unit{foot * foot * mil / gallon, [5]int{}, 0}}, {"m²·µm/L", unit{1e-3, [5]int{}, 0}},
	{"ft²/gal", unit{foot * foot / gallon, [5]int{-1}, 0}}, {"m²/L", unit{1e3, [5]int{-1}, 0}},
	{"ft²/h", unit{foot * foot, [5]int{2, 0, -1}, 0}}, {"m²/h", unit{1, [5]int{2, 0, -1}, 0}},
	{"ft/h", unit{foot, [5]int{1, 0, -1}, 0}}, {"m/h", unit{1, [5]int{1, 0, -1}, 0}},
	{"ft³/min", unit{foot * foot * foot * 60, [5]int{3, 0, -1}, 0.5}}, {"m³/h", unit{1, [5]int{3, 0, -1}, 0.5}}, {"cfm", unit{foot * foot * foot * 60, [5]int{3, 0, -1}, 0.5}},
	{"an hour", unit{1, [5]int{0, 0, -1}, 0}}, {"g/h", unit{1, [5]int{0, 1, -1}, 0.5}}, {"mg/m³", unit{1e-3, [5]int{-3, 1}, 0.5}}, {"g/m³", unit{1, [5]int{-3, 1}, 0}},
	{"mg/g", unit{1e-3, [5]int{}, 0}}, {"min/h", unit{1.0 / 60, [5]int{}, 0}}, {"g/L", unit{1e3, [5]int{-3, 1}, 0}}, {"lb/gal", unit{453.59237 / gallon, [5]int{-3, 1}, 0}}, {"kg/L", unit{1e6, [5]int{-3, 1}, 0}},
	{"ft²", unit{foot * foot, area, 0.5}}, {"m²", unit{1, area, 0.5}}, {"ft³", unit{foot * foot * foot, volume, 0.5}}, {"m³", unit{1, volume, 0.5}},
	{"fl oz", unit{ounce, volume, 0}}, {"gal", unit{gallon, volume, 0}}, {"qt", unit{gallon / 4, volume, 0}}, {"tsp", unit{ounce / 6, volume, 0}}, {"tbsp", unit{ounce / 2, volume, 0}}, {"cup", unit{8 * ounce, volume, 0}},
	{"mL", unit{1e-6, volume, 0.5}}, {"L", unit{1e-3, volume, 0}},
	{"mm", unit{1e-3, length, 0}}, {"cm", unit{1e-2, length, 0}}, {"µm", unit{1e-6, length, 0.5}}, {"mil", unit{mil, length, 0}}, {"m", unit{1, length, 0}},
	{"min", unit{1.0 / 60, hours, 0}}, {"h", unit{1, hours, 0}}, {"days", unit{1, [5]int{}, 0}}, {"day", unit{1, [5]int{}, 0}},
	{"kg", unit{1e3, mass, 0}}, {"lb", unit{453.59237, mass, 0}}, {"oz", unit{28.349523125, mass, 0}}, {"g", unit{1, mass, 0.5}},
	{"°F", unit{5.0 / 9, [5]int{0, 0, 0, 1}, 0}}, {"°C", unit{1, [5]int{0, 0, 0, 1}, 0}},
	{"%", unit{0.01, [5]int{}, 0}}, {"°", unit{math.Pi / 180, [5]int{}, 0}},
}

// sumReader goes through one sum from left to right.
type sumReader struct {
	rest string
	by   rounding
}

// rounding is how a plan wants things written: half of the mark that lengths in
// feet and inches are rounded to, in metres, and whether gallons are imperial.
type rounding struct {
	half     float64
	imperial bool
}

// readSum works out one side of a sum. What is no sum is an error.
func readSum(text string, by rounding) (got between, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("%v in %q", fault, text)
		}
	}()
	r := &sumReader{rest: strings.TrimSpace(text), by: by}
	if at := strings.LastIndex(r.rest, ": "); at >= 0 {
		r.rest = r.rest[at+2:]
	}
	if least, ok := strings.CutPrefix(r.rest, "the smaller of "); ok {
		one, other, _ := strings.Cut(least, " and ")
		return smaller(one, other, by)
	}
	got = r.terms()
	if r.take(", rounded up") {
		got = up(got)
		if r.take("+ ") {
			got = joined(got, r.terms(), func(x, y float64) float64 { return x + y })
		}
	}
	if r.skip(); r.rest != "" {
		return got, fmt.Errorf("%q is left over in %q", r.rest, text)
	}
	return got, nil
}

// up is a count rounded up. What is a whole number but for how it is printed may
// go either way.
func up(got between) between {
	return between{low: math.Ceil(got.low - 1e-9), high: math.Ceil(got.high + 1e-9)}
}

// smaller is the smaller of two amounts, each with where it is.
func smaller(one, other string, by rounding) (between, error) {
	a, err := readSum(one, by)
	if err != nil {
		return a, err
	}
	b, err := readSum(other, by)
	return a.each(b, math.Min), err
}

func (r *sumReader) skip() { r.rest = strings.TrimLeft(r.rest, " ") }

func (r *sumReader) take(what string) bool {
	r.skip()
	if !strings.HasPrefix(r.rest, what) {
		return false
	}
	r.rest = r.rest[len(what):]
	return true
}

func (r *sumReader) terms() between {
	got := r.factors()
	for {
		switch {
		case r.take("+ "):
			got = joined(got, r.factors(), func(x, y float64) float64 { return x + y })
		case r.take("− "):
			got = joined(got, r.factors(), func(x, y float64) float64 { return x - y })
		default:
			return got
		}
	}
}

// joined is a sum or a difference, which only like can have.
func joined(a, b between, op func(x, y float64) float64) between {
	if a.dims != b.dims {
		panic("unlike things are added")
	}
	return a.each(b, op)
}

func (r *sumReader) factors() between {
	got := r.power()
	for {
		switch {
		case r.take("× "):
			by := r.power()
			got = times(got, by, 1, func(x, y float64) float64 { return x * y })
		case r.take("÷ "):
			by := r.power()
			got = times(got, by, -1, func(x, y float64) float64 { return x / y })
		default:
			return got
		}
	}
}

func times(a, b between, sign int, op func(x, y float64) float64) between {
	got := a.each(b, op)
	for i := range got.dims {
		got.dims[i] += sign * b.dims[i]
	}
	return got
}

func (r *sumReader) power() between {
	got := r.value()
	for _, p := range []struct {
		sign string
		up   int
	}{{"²", 2}, {"³", 3}} {
		if strings.HasPrefix(r.rest, p.sign) {
			r.rest = r.rest[len(p.sign):]
			base := got
			for range p.up - 1 {
				got = times(got, base, 1, func(x, y float64) float64 { return x * y })
			}
		}
	}
	return got
}

// of are the functions that sums use.
var of = []struct {
	name string
	do   func(float64) float64
}{{"ln", math.Log}, {"tan", math.Tan}, {"√", math.Sqrt}, {"exp", math.Exp}}

func (r *sumReader) value() between {
	for _, f := range of {
		if !r.take(f.name) {
			continue
		}
		x := r.value()
		got := x.mapped(f.do)
		if f.name == "√" {
			for i := range got.dims {
				if got.dims[i]%2 != 0 {
					panic("the root of what is no square")
				}
				got.dims[i] /= 2
			}
		}
		return got
	}
	if r.take("(") {
		got := r.terms()
		if r.take(", rounded up") {
			got = up(got)
		}
		if !r.take(")") {
			panic("no bracket closes")
		}
		return got
	}
	return r.amount()
}

var (
	feetInches = regexp.MustCompile(`^(−?)(?:(\d+)′ ?)?(?:(\d+)(?: (\d+)⁄(\d+))?([½¼¾⅛⅜⅝⅞])?″|([½¼¾⅛⅜⅝⅞])″|(\d+)⁄(\d+)″)`)
	plainOne   = regexp.MustCompile(`^(−?)(\d{1,3}(?:[\x{a0}\x{2009}\x{202f}]\d{3})+|\d+)(\.\d+)?`)
	named      = regexp.MustCompile(`^[A-Z]{2,3} `) // a wall or a triangle before its amount
	label      = regexp.MustCompile(`^ ?(?:\p{L}[\p{L}’'│-]*)(?: [\p{L}’'│-]+)*`)
	quoted     = regexp.MustCompile(`^ “[^”]*”`)
	forOne     = regexp.MustCompile(`^ 1[ \x{a0}](m²|ft²)[\p{L} ]*`) // "2.50 GBP for 1 m² that shows"
	again      = regexp.MustCompile(`^ \(−?[\d.]+ °C\)`)             // degrees in the other scale
	vulgar     = map[string]float64{"½": 0.5, "¼": 0.25, "¾": 0.75, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875}
)

// amount is a number with its unit and what it counts: "12 missing".
func (r *sumReader) amount() between {
	r.skip()
	r.rest = strings.TrimPrefix(r.rest, named.FindString(r.rest))
	about := r.take("≈")
	if r.take("π") {
		return exactly(math.Pi)
	}
	if day, ok := r.date(); ok {
		if !r.take("at ") {
			return exactly(day)
		}
		hour, _ := r.clock()
		at := exactly(24*day + hour)
		at.dims = hours
		return at
	}
	if hour, ok := r.clock(); ok {
		at := exactly(hour)
		at.dims = hours
		return at
	}
	if m := feetInches.FindStringSubmatch(r.rest); m != nil {
		r.rest = r.rest[len(m[0]):]
		r.label()
		return r.length(m, about)
	}
	m := plainOne.FindStringSubmatch(r.rest)
	if m == nil {
		panic("no number")
	}
	r.rest = r.rest[len(m[0]):]
	digits := strings.NewReplacer("\u00a0", "", "\u2009", "", "\u202f", "").Replace(m[2]) + m[3]
	x, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		panic(err)
	}
	half := 0.0
	if m[3] != "" {
		half = 0.5 * math.Pow10(1-len(m[3]))
	}
	if m[1] != "" {
		x = -x
	}
	u := r.unit()
	switch {
	case m[3] != "":
	case about:
		half = 0.5
	case x >= 10:
		half = u.rounded
	}
	got := between{low: (x - half) * u.worth, high: (x + half) * u.worth, dims: u.dims}
	if u.dims == hours && u.worth == 1 {
		// 1 h 47 min is one amount.
		if next := regexp.MustCompile(`^ (\d+) min`).FindStringSubmatch(r.rest); next != nil {
			r.rest = r.rest[len(next[0]):]
			minutes, _ := strconv.ParseFloat(next[1], 64)
			got.low, got.high = got.low+minutes/60, got.high+minutes/60
			r.label()
		}
	}
	return got
}

func (r *sumReader) length(m []string, about bool) between {
	number := func(text string) float64 { x, _ := strconv.ParseFloat(text, 64); return x }
	inches := 12*number(m[2]) + number(m[3]) + vulgar[m[6]] + vulgar[m[7]]
	if m[5] != "" {
		inches += number(m[4]) / number(m[5])
	}
	if m[9] != "" {
		inches += number(m[8]) / number(m[9])
	}
	half := 0.0
	if about {
		half = r.by.half
	}
	x := inches * foot / 12
	if m[1] != "" {
		x = -x
	}
	return between{low: x - half, high: x + half, dims: length}
}

// unit is the unit that follows a number, for one of an area where that is said.
func (r *sumReader) unit() unit {
	u := r.plainUnit()
	if m := forOne.FindStringSubmatch(r.rest); m != nil {
		r.rest = r.rest[len(m[0]):]
		u.dims[0] -= 2
		if m[1] == "ft²" {
			u.worth /= foot * foot
		}
	}
	return u
}

// plainUnit is the unit that follows a number; else what follows is what is
// counted.
func (r *sumReader) plainUnit() unit {
	rest := strings.Replace(strings.TrimLeft(r.rest, " \u00a0\u202f"), "imp gal", "gal", 1)
	for _, u := range units {
		if !strings.HasPrefix(rest, u.name) {
			continue
		}
		after := rest[len(u.name):]
		if next := strings.TrimLeft(after, "0123456789"); after != "" && (next != after || regexp.MustCompile(`^\p{L}`).MatchString(after)) {
			continue
		}
		r.rest = after
		r.label()
		if r.by.imperial {
			return imperial(u.name, u.unit)
		}
		return u.unit
	}
	r.label()
	return unit{worth: 1}
}

// onDay is a date as it is printed, Mon 22 Mar 2027.
var onDay = regexp.MustCompile(`^(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun) \d{1,2} [A-Z][a-z]{2} \d{4}`)

// date is a date as a count of days. One on another day of the week is wrong.
func (r *sumReader) date() (days float64, ok bool) {
	text := onDay.FindString(r.rest)
	if text == "" {
		return 0, false
	}
	at, err := time.Parse("Mon 2 Jan 2006", text)
	if err != nil || at.Format("Mon 2 Jan 2006") != text {
		panic("no such date: " + text)
	}
	r.rest = r.rest[len(text):]
	return float64(at.Unix() / 86400), true
}

// clock is a time of day, 16:30, in hours.
var clock = regexp.MustCompile(`^(\d{2}):(\d{2})\b`)

func (r *sumReader) clock() (hours float64, ok bool) {
	m := clock.FindStringSubmatch(r.rest)
	if m == nil {
		return 0, false
	}
	r.rest = r.rest[len(m[0]):]
	hour, _ := strconv.ParseFloat(m[1], 64)
	minute, _ := strconv.ParseFloat(m[2], 64)
	return hour + minute/60, true
}

// label passes over what is counted or measured: "missing", "on the floor", or a
// name in quotation marks.
func (r *sumReader) label() {
	r.rest = r.rest[len(quoted.FindString(r.rest)):]
	r.rest = r.rest[len(label.FindString(r.rest)):]
	r.rest = r.rest[len(again.FindString(r.rest)):]
}

// imperial is a unit where gallons are imperial ones, 4.54609 L of 160 fl oz.
func imperial(name string, u unit) unit {
	switch {
	case strings.HasPrefix(name, "fl oz"):
		u.worth = 4.54609e-3 / 160
	case strings.HasSuffix(name, "/gal"):
		u.worth *= gallon / 4.54609e-3
	case name == "gal" || name == "qt":
		u.worth *= 4.54609e-3 / gallon
	}
	return u
}
