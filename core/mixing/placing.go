package mixing

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Placing is putting on a mix that sets in the pail: how much of it is mixed at
// once and needed in all, the area of all coats together, what all hands put on
// in an hour, and for how many minutes it stays workable.
type Placing struct {
	Batch, Need measure.Volume
	Area, Rate  measure.Area
	Life        measure.Number
}

// Placed is how that goes: Minutes is what putting on one batch takes, Spare what
// is then left of its life, below 0 where it sets before, Most the largest batch
// that is on in time, and Batches how many batches that makes, of the size given
// or of the largest that is on in time.
type Placed struct {
	Minutes, Spare measure.Number
	Most           measure.Volume
	Batches        int64
}

// Place works out whether a batch is put on before it sets. ok is false where an
// amount, an area, a rate or the life is not above 0, or the batches are beyond
// counting. A batch that would set first is a stop.
//
// A batch covers its share of the area; nothing is kept back, since the time to
// mix and to wash out is not known.
func (p Placing) Place() (placed Placed, problems []problem.Problem, ok bool) {
	for _, n := range []measure.Number{p.Batch.Litres, p.Need.Litres, p.Area.SquareMetres, p.Rate.SquareMetres, p.Life} {
		if n.Sign() <= 0 {
			return placed, nil, false
		}
	}
	hour := measure.NumberFromInt(60)
	batch := p.Batch
	if batch.Litres.Cmp(p.Need.Litres) > 0 {
		batch = p.Need
	}
	perMinute := p.Rate.SquareMetres.Quo(hour).Mul(p.Need.Litres).Quo(p.Area.SquareMetres) // litres
	placed.Minutes = batch.Litres.Quo(perMinute)
	placed.Spare = p.Life.Sub(placed.Minutes)
	placed.Most = measure.Volume{Litres: perMinute.Mul(p.Life)}
	if placed.Spare.Sign() < 0 {
		batch = placed.Most
		problems = []problem.Problem{{Severity: problem.Stop,
			What: words.Say("One batch takes {minutes} minutes to put on and stays workable for {life}: it would set in the pail.",
				words.Number("minutes", placed.Minutes, 0), words.Trimmed("life", p.Life, 3)),
			Do: words.Say("Mix less at a time, put more people on it, or use one that sets more slowly.")}}
	}
	placed.Batches, ok = p.Need.Litres.Quo(batch.Litres).Ceil()
	return placed, problems, ok
}
