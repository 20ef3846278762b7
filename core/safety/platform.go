package safety

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Lengths of the rule for platforms. Rails are taken at 1.10 m above the deck
// and head room at 0.10 m for shoes and cap; both are worked out, not published.
const (
	RailHeight     = 110 * measure.Centimetre
	HeadRoom       = 10 * measure.Centimetre
	assumedStature = 170 * measure.Centimetre
	floorUpTo      = 15 * measure.Centimetre
	lowDeckUpTo    = 50 * measure.Centimetre
	leastStature   = 100 * measure.Centimetre
	mostStature    = 250 * measure.Centimetre
	mostReach      = 300 * measure.Centimetre
)

// Means is what kind of footing a ceiling height asks for.
type Means string

// From the floor up to 0.15 m, a hop-up or low deck up to 0.5 m, above that a
// platform with rails.
const (
	FromFloor   Means = "floor"
	LowDeck     Means = "low-deck"
	GuardedDeck Means = "platform"
)

// Deck is the height of deck to ask for, above the floor. None is below 0. Best
// is aimed at; between Least and Most the ceiling is in easy reach and the head
// is clear. Shared is false where a crew's heights differ too much for one
// deck: Least is then above Most. Assumed tells that nobody's height was known
// and 1.70 m was taken. Tried tells that Best goes by a reach that was tried out.
// Means is "" where nothing could be worked out.
type Deck struct {
	Best, Least, Most measure.Length
	Shared            bool
	Assumed           bool
	Tried             bool
	Means             Means
}

// DeckFor works out the deck for a ceiling at that height and people of those
// statures.
//
// Easy reach is 1.185 times the stature (the ratio of standing grip reach to
// stature, 1.182 to 1.189 in an ergonomics handbook of 1996, as
// reprinted in a course table). The aim is 1.10 times the stature under the ceiling, which is
// derived: head clear, elbows bent. Least and Best are rounded up to a whole
// nanometre; Most is exact. A crew's Best is half way between the best of the
// shortest and of the tallest, kept between Least and Most where they allow it.
//
// A height of ceiling that is not known, and a stature outside 1.0 to 2.5 m, are
// refused.
func DeckFor(ceiling measure.Length, crew ...measure.Length) (Deck, []problem.Problem) {
	if problems := deckProblems(ceiling, crew); problems != nil {
		return Deck{}, problems
	}
	shortest, tallest, assumed := staturesOf(crew)
	least, most := ceiling-EasyReach(shortest), ceiling-tallest-HeadRoom
	best := ceiling - (Clearance(shortest)+Clearance(tallest))/2
	shared := least <= most
	if shared {
		best = min(max(best, least), most)
	}
	return Deck{
		Best: max(0, best), Least: max(0, least), Most: max(0, most),
		Shared: shared, Assumed: assumed, Means: meansFor(best),
	}, nil
}

// DeckOf is the deck for a job: by the heights of its crew, or, where somebody
// has tried out how high they comfortably work, by that. The ceiling less that
// reach is then Best. Where a height is known too, Best stays as low as the
// tallest head asks, and Least is lowered to Best where the reach is longer than
// easy; where none is, the reach is taken as 1.10 times the height.
//
// A reach outside 1.0 to 3.0 m is refused, and the deck goes by the heights.
func DeckOf(job Job) (Deck, []problem.Problem) {
	if job.Reach == 0 {
		return DeckFor(job.CeilingHeight, job.Crew...)
	}
	if job.Reach < leastStature || job.Reach > mostReach {
		deck, problems := DeckFor(job.CeilingHeight, job.Crew...)
		return deck, append(problems, problem.Problem{
			At: "/access/reach", Severity: problem.Stop,
			What: words.Say("A reach of {reach} is outside {least} to {most}, so the deck goes by the fitter's height.", words.Put("reach", job.Reach), words.Length("least", leastStature), words.Length("most", mostReach)),
			Do:   words.Say("Measure from the floor to where the hands work in comfort, or leave this empty."),
		})
	}
	crew := job.Crew
	if _, _, assumed := staturesOf(crew); assumed {
		crew = []measure.Length{min(max(leastStature, job.Reach*100/110), mostStature)}
	}
	deck, problems := DeckFor(job.CeilingHeight, crew...)
	if len(problems) > 0 {
		return deck, problems
	}
	_, tallest, _ := staturesOf(crew)
	best := min(job.CeilingHeight-job.Reach, job.CeilingHeight-tallest-HeadRoom)
	deck.Best, deck.Least = max(0, best), min(deck.Least, max(0, best))
	deck.Means, deck.Tried = meansFor(best), true
	return deck, nil
}

// EasyReach is 1.185 times the stature, rounded down to a whole nanometre.
func EasyReach(stature measure.Length) measure.Length { return stature * 1185 / 1000 }

// Clearance is the height over the deck at which the ceiling is best, 1.10 times
// the stature, rounded down to a whole nanometre.
func Clearance(stature measure.Length) measure.Length { return stature * 110 / 100 }

func meansFor(best measure.Length) Means {
	switch {
	case best <= floorUpTo:
		return FromFloor
	case best <= lowDeckUpTo:
		return LowDeck
	}
	return GuardedDeck
}

// staturesOf is the shortest and tallest of the crew, leaving out those whose
// height is not known.
func staturesOf(crew []measure.Length) (shortest, tallest measure.Length, assumed bool) {
	for _, stature := range crew {
		if stature == 0 {
			continue
		}
		if shortest == 0 || stature < shortest {
			shortest = stature
		}
		tallest = max(tallest, stature)
	}
	if tallest == 0 {
		return assumedStature, assumedStature, true
	}
	return shortest, tallest, false
}

func deckProblems(ceiling measure.Length, crew []measure.Length) []problem.Problem {
	var problems []problem.Problem
	if ceiling <= 0 {
		problems = append(problems, problem.Problem{
			At: "/room/height", Severity: problem.Caution,
			What: words.Say("The height of the ceiling is not known, so no platform height can be worked out."),
			Do:   words.Say("Measure from the floor to the ceiling and fill in the height."),
		})
	}
	for _, stature := range crew {
		if stature != 0 && (stature < leastStature || stature > mostStature) {
			problems = append(problems, problem.Problem{
				At: "/access/reachBy", Severity: problem.Stop,
				What: words.Say("A fitter {tall} tall is outside {least} to {most}, so no platform height can be worked out.", words.Put("tall", stature), words.Length("least", leastStature), words.Length("most", mostStature)),
				Do:   words.Say("Fill in how tall the person is who works on the platform."),
			})
		}
	}
	return problems
}

// Total is the height of the platform to the top of its rails, which is what the
// rule for the base is about.
func (d Deck) Total() measure.Length { return d.Best + RailHeight }

// Base is the least side of the base that carries the deck at so many times its
// own width, rounded up to a whole nanometre; 0 where the floor will do. A ratio
// below 1 is taken as 1.
func (d Deck) Base(ratio int64) measure.Length {
	if d.Means == FromFloor || d.Means == "" {
		return 0
	}
	times := measure.Length(max(1, ratio))
	return (d.Total() + times - 1) / times
}

// BaseRatio is how many times the least side of its base a free-standing
// platform may be high: 4 in the US (29 CFR 1926.451(c)(1)), and 3 everywhere
// else as a screening figure, after the stricter ratio reported for California
// (seen in a secondary copy only). EN 1004-1 leaves it to the maker's table.
func BaseRatio(country Country) int64 {
	if country == US {
		return 4
	}
	return 3
}
