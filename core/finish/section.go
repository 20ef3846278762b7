package finish

import (
	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Sizing is an area to be sized and gilded part by part, because size can be
// laid on only while it is open. Rate is the area one gilder lays in an hour;
// Window the hours the size stays open; Reserve the share of the window kept
// back, 0.2 by common practice. Worked are the hours of it, the reserve taken
// off, in which anyone works; 0 where that is all.
type Sizing struct {
	Area    measure.Area
	Rate    measure.Area
	Gilders int64
	Window  measure.Number
	Reserve measure.Number
	Worked  measure.Number
}

// Sectioned is how a Sizing is divided. Most is the area that fits the window;
// Count the sections and Each the area of one, all equal; Hours how long one
// takes to lay, never longer than the window less the reserve. All but Count
// are exact.
type Sectioned struct {
	Sizing
	Most  measure.Area
	Count int64
	Each  measure.Area
	Hours measure.Number
}

// MostSections is the greatest number of sections that is counted.
const MostSections = 10_000

// Sections divides the area by what the gilders lay in the window: most = rate
// × gilders × window × (1 − reserve), or × the hours of it that are worked; count
// = area ÷ most rounded up. No area has no sections.
//
// Refused: an area below 0, a rate, a number of gilders or a window not above
// 0, more than 100 gilders, a reserve outside 0 to below 1, and more than
// MostSections sections.
func Sections(s Sizing) (sectioned Sectioned, problems []problem.Problem, ok bool) {
	sectioned = Sectioned{Sizing: s}
	if problems = s.refusals(); len(problems) > 0 {
		return sectioned, problems, false
	}
	sectioned.Most = s.most()
	count, fits := s.Area.SquareMetres.Quo(sectioned.Most.SquareMetres).Ceil()
	if !fits || count > MostSections {
		return sectioned, tooManySections(), false
	}
	sectioned.Count = count
	if count > 0 {
		sectioned.Each = s.Area.Times(measure.NumberFromFraction(1, count))
		sectioned.Hours = sectioned.Each.SquareMetres.Quo(s.crew().SquareMetres)
	}
	return sectioned, nil, true
}

func tooManySections() []problem.Problem {
	return []problem.Problem{{At: "/window", Severity: problem.Stop,
		What: words.Say("The area would have to be sized in more than {most} sections.", words.Name("most", words.Digits(MostSections))),
		Do:   words.Say("Use a size that stays open longer, or more gilders.")}}
}

// crew is what all gilders lay in an hour.
func (s Sizing) crew() measure.Area { return s.Rate.Times(measure.NumberFromInt(s.Gilders)) }

// usable are the hours of the window in which leaf is laid.
func (s Sizing) usable() measure.Number {
	hours := s.Window.Mul(measure.NumberFromInt(1).Sub(s.Reserve))
	if s.Worked.Sign() > 0 && s.Worked.Cmp(hours) < 0 {
		return s.Worked
	}
	return hours
}

// most is the area that is laid in the window less the reserve, as far as it is
// worked in.
func (s Sizing) most() measure.Area { return s.crew().Times(s.usable()) }

// mostGilders is the greatest number of gilders that is read.
const mostGilders = 100

func (s Sizing) refusals() []problem.Problem {
	var found []problem.Problem
	if s.Area.SquareMetres.Sign() < 0 {
		found = append(found, problem.Problem{At: "/area", Severity: problem.Stop,
			What: words.Say("The area comes out below nothing, {area}.", words.Area("area", s.Area)),
			Do:   words.Say("Check the sizes the area is made from.")})
	}
	if s.Rate.SquareMetres.Sign() <= 0 {
		found = append(found, problem.Problem{At: "/rate", Severity: problem.Stop,
			What: words.Say("There is no rate of laying above 0."),
			Do:   words.Say("Give the area one gilder lays in an hour.")})
	}
	if s.Window.Sign() <= 0 {
		found = append(found, problem.Problem{At: "/window", Severity: problem.Stop,
			What: words.Say("The size stays open for {hours} hours.", words.Trimmed("hours", s.Window, 3)),
			Do:   words.Say("Give the hours the size stays open, from its label or a test patch.")})
	}
	found = append(found, countRefusals("/gilders", words.Say("number of gilders"), s.Gilders, 1, mostGilders)...)
	return append(found, shareRefusals("/reserve", words.Say("reserve"), s.Reserve)...)
}
