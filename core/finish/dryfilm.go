package finish

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// DryCoat is a coat as a data sheet asks for it: the film once dry, the share of
// the product that stays (Solids, by volume) and the thinner added to it, as a
// share of the product.
type DryCoat struct {
	Film            Film
	Solids, Thinned measure.Number
}

// SolidsThinned is the share that stays once the thinner is in: solids ÷ (1 +
// thinner).
func (d DryCoat) SolidsThinned() measure.Number {
	return d.Solids.Quo(measure.NumberFromInt(1).Add(d.Thinned))
}

// SpreadFromDryFilm is the rate that leaves the dry film, of the product as it
// is put on, thinner and all: 1000 × solids ÷ film in µm. In US units a gallon
// at 1 mil dry covers 1604.17 ft² times the solids (MIL-HDBK-1110, 2.1.5, prints
// 1600). ok is false where a stop leaves no rate.
//
// Refused: no film, solids not above 0 or above 100 per cent, thinner below 0.
func SpreadFromDryFilm(d DryCoat) (spread Spread, problems []problem.Problem, ok bool) {
	if d.Film.Micrometres.Sign() <= 0 {
		problems = append(problems, problem.Problem{At: "/dryFilm", Severity: problem.Stop,
			What: words.Say("There is no dry film above 0."), Do: words.Say("Copy it from the data sheet.")})
	}
	if d.Solids.Sign() <= 0 || d.Solids.Cmp(measure.NumberFromInt(1)) > 0 {
		problems = append(problems, problem.Problem{At: "/solids", Severity: problem.Stop,
			What: words.Say("The volume solids are {solids}.", words.PerCent("solids", d.Solids)), Do: words.Say("Copy them from the data sheet: above 0 and at most 100 per cent.")})
	}
	if d.Thinned.Sign() < 0 {
		problems = append(problems, lessThanNoThinner(d.Thinned))
	}
	if len(problems) > 0 {
		return Spread{}, problems, false
	}
	return SpreadFromFilm(Film{d.Film.Micrometres.Quo(d.SolidsThinned())}), nil, true
}

func lessThanNoThinner(share measure.Number) problem.Problem {
	return problem.Problem{At: "/thinned", Severity: problem.Stop,
		What: words.Say("The thinner is below nothing, {share}.", words.PerCent("share", share)), Do: words.Say("Give 0 per cent or more.")}
}
