package tell

import (
	"slices"
	"strings"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	tellrecord "ceilingwright/core/tell/record"
)

// workedPart is a part of the room that is worked on: what it is called in a
// sentence, and its area.
type workedPart struct {
	name string
	area measure.Area
}

// workedOn are the parts of the room that the steps go over, each once: a price by
// area is one for these. A step over the whole ceiling covers its border and its
// mask too. Areas that were typed count where no other is worked on, the greatest
// of them once: they may lie in one another. Without any step it is the mask, or
// the ceiling where there is no mask.
func (b *builder) workedOn() []workedPart {
	var parts []workedPart
	add := func(name string, area measure.Area) {
		if area.SquareMetres.Sign() > 0 && !slices.ContainsFunc(parts, func(p workedPart) bool { return p.name == name }) {
			parts = append(parts, workedPart{name, area})
		}
	}
	ceiling, mask := workedPart{"the ceiling", b.Room.Shape.Area()}, workedPart{"the mask", b.Plan.Mask.Area()}
	if !b.Room.Shape.Usable() {
		ceiling.area = measure.Area{}
	}
	whole := b.steps(func(basis finish.Basis) bool { return basis == finish.Surface })
	switch {
	case len(whole) > 0:
		add(ceiling.name, ceiling.area)
	default:
		if len(b.steps(func(basis finish.Basis) bool { return basis != finish.Typed && basis.IsOnMask() })) > 0 {
			add(mask.name, mask.area)
		}
		if border := b.steps(func(basis finish.Basis) bool { return basis == finish.Border }); len(border) > 0 {
			area, _ := b.AreaOf(border[0])
			add("the border", area)
		}
	}
	for _, i := range b.steps(func(basis finish.Basis) bool { return basis == finish.SurfaceOf }) {
		area, _ := b.AreaOf(i)
		add("“"+b.Told(tellrecord.Where(b.Job, &b.Plan.Steps[i]))+"”", area)
	}
	if len(parts) == 0 {
		add("the area typed", b.greatestTyped())
	}
	if len(parts) == 0 {
		add(mask.name, mask.area)
	}
	if len(parts) == 0 {
		add(ceiling.name, ceiling.area)
	}
	return parts
}

// steps are the places of the steps that put something on what is asked for;
// covering up and peeling put nothing.
func (b *builder) steps(on func(finish.Basis) bool) (places []int) {
	for i := range b.Plan.Steps {
		if s := &b.Plan.Steps[i]; s.Kind != finish.Protect && s.Kind != finish.Peel && on(s.Basis) {
			places = append(places, i)
		}
	}
	return places
}

func (b *builder) greatestTyped() (greatest measure.Area) {
	for _, i := range b.steps(func(basis finish.Basis) bool { return basis == finish.Typed }) {
		if area, _ := b.AreaOf(i); area.SquareMetres.Cmp(greatest.SquareMetres) > 0 {
			greatest = area
		}
	}
	return greatest
}

// exactArea is an area with so many decimals that a sum of money made of it comes to
// the coin that is printed.
func (b *builder) exactArea(a measure.Area) string {
	if b.Notation.System == measure.FeetInches {
		return b.Notation.NumberTrimmed(a.SquareFeet(), finer(a.SquareFeet(), 4)) + " ft²"
	}
	return b.Notation.NumberTrimmed(a.SquareMetres, finer(a.SquareMetres, 4)) + " m²"
}

// finer is how many decimals an amount is written with in a sum: places of one of 10
// and more, and one more for each digit that a smaller one has less.
func finer(n measure.Number, places int32) int32 {
	for least := measure.NumberFromInt(10); n.Cmp(least) < 0 && n.Sign() > 0 && places < 8; places++ {
		least = least.Quo(measure.NumberFromInt(10))
	}
	return places
}

// together is the area of parts, what they are called in a sentence, and the sum
// they make.
func (b *builder) together(parts []workedPart) (all measure.Area, names, sum string) {
	named, areas := make([]string, len(parts)), make([]string, len(parts))
	for i, part := range parts {
		all.SquareMetres = all.SquareMetres.Add(part.area.SquareMetres)
		named[i], areas[i] = part.name, b.exactArea(part.area)
	}
	names, sum = strings.Join(named, " and "), strings.Join(areas, " + ")
	if len(parts) > 1 {
		sum = "(" + sum + ")"
	}
	return all, names, sum
}
