package measure

import "strings"

// Unit is a unit of length as the plan writes it. The zero value is no unit: a
// reader with no unit refuses a bare number.
type Unit string

// The units a length is read in.
const (
	UnitInch       Unit = "in"
	UnitFoot       Unit = "ft"
	UnitYard       Unit = "yd" // tape and leaf are sold by the roll of so many yards
	UnitMillimetre Unit = "mm"
	UnitCentimetre Unit = "cm"
	UnitMetre      Unit = "m"
)

// Length is one of the unit, or 0 for a unit that is not known.
func (u Unit) Length() Length {
	switch u {
	case UnitInch:
		return Inch
	case UnitFoot:
		return Foot
	case UnitYard:
		return Yard
	case UnitMillimetre:
		return Millimetre
	case UnitCentimetre:
		return Centimetre
	case UnitMetre:
		return Metre
	}
	return 0
}

// decimals is how many decimals of the unit are always a whole count of
// nanometres.
func (u Unit) decimals() int {
	switch u {
	case UnitMillimetre:
		return 6
	case UnitCentimetre:
		return 7
	case UnitMetre:
		return 9
	}
	return 5
}

func (u Unit) isMetric() bool {
	return u == UnitMillimetre || u == UnitCentimetre || u == UnitMetre
}

// ParseUnit reads the name of a unit of length in either case, with or without
// a point: in, ins, inch, inches, ft, foot, feet, mm, cm, m, and metre or
// meter with its plural, alone or after milli or centi. Anything else is
// refused with a *ParseError.
func ParseUnit(text string) (Unit, error) {
	word := strings.TrimSuffix(strings.ToLower(strings.TrimSpace(text)), ".")
	if unit := unitNamed(word); unit != "" {
		return unit, nil
	}
	return "", &ParseError{
		Text: text, Rest: text,
		Reason: Say("This is no unit of length that is read here."),
		Do:     Say("Choose in, ft, yd, mm, cm or m."),
	}
}

// unitNamed is the unit of a word in small letters, or "".
func unitNamed(word string) Unit {
	switch word {
	case "in", "ins", "inch", "inches":
		return UnitInch
	case "ft", "foot", "feet":
		return UnitFoot
	case "yd", "yds", "yard", "yards":
		return UnitYard
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return UnitMillimetre
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return UnitCentimetre
	case "m", "metre", "metres", "meter", "meters":
		return UnitMetre
	}
	return ""
}
