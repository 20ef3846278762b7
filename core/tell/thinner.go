package tell

import (
	"ceilingwright/core/air"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
)

// thinnerOf is the thinner to stir in, for the need the step is bought for: what
// is made of a mix to spare is thinned too, what is kept is not.
func (w *step) thinnerOf() measure.Volume {
	if !w.takes {
		return measure.Volume{}
	}
	return w.withSpare(w.boughtFor()).Times(w.Thinned.Share)
}

// thinner shows how much thinner is stirred in, and puts it on the list to shop
// by; water comes from the tap.
func (w *step) thinner() {
	amount := w.thinnerOf()
	if amount.Litres.IsZero() {
		return
	}
	w.Figure(sheet.Figure{
		ID: w.id("thinner"), Block: page.Finish, Label: w.thinnerName() + " to thin it", Value: page.Plain(amount.Litres), Unit: "L", Text: w.Notation.Volume(amount), Other: w.Other.Volume(amount),
		Working: sheet.Working{Rule: "The share of thinner, of the paint as it is in the can.",
			Sum: w.needInSum() + " × " + w.builder.Share(w.Thinned.Share) + " = " + w.sumOf(amount), Source: labelDecides},
	})
	if w.Binder != air.Water {
		unit := w.unitOf(finish.Part{})
		w.builder.have(ingredient{name: "thinner, for “" + w.owner.Name + "”", volume: amount, unit: unit, steps: []string{w.Name}}, 0)
	}
}

func (w *step) thinnerName() string {
	if w.Binder == air.Water {
		return "water"
	}
	return "thinner"
}

// thinnedLine says on the pot how it is thinned, "" where it is not.
func (w *step) thinnedLine() string {
	amount := w.thinnerOf()
	if amount.Litres.IsZero() {
		return ""
	}
	return "Thin by " + w.builder.Share(w.Thinned.Share) + ": " + w.Notation.Volume(amount) + " of " + w.thinnerName() + " to " +
		w.Notation.Volume(w.withSpare(w.boughtFor()))
}
