package layers

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Tape is the tape over the seams of all layers. Seams are those closed overhead,
// Floor those closed on the floor, Loose the lines round loose pieces and Outside the
// way round the mask where it is covered, of each layer that is Hung; Length is all of
// it, laps and all. Rolls are what to buy, where that is Known.
type Tape struct {
	Seams, Floor, Loose, Outside, Laps, Length measure.Length
	Hung                                       int
	Rolls                                      finish.Rolls
	Known                                      bool
}

// BuyTape works out the tape of the layers as they are now.
func BuyTape(p *plan.Plan, list []Layer) (t Tape, wrong problem.List) {
	outline, seams := p.Mask.Outline, &p.Seams
	if !outline.IsComplete() || len(list) == 0 {
		return t, nil
	}
	for i := range list {
		l := &list[i]
		if !l.Panels.IsEmpty() {
			t.Hung++
		}
		t.Seams += l.Panels.SeamLength(outline)
		t.Floor += l.Panels.FloorLength(outline)
		t.Loose += l.Panels.LooseLength()
		t.Laps += l.Laps
		t.Length += l.Tape
	}
	if seams.Cover == mask.CoverOutside {
		t.Outside = outline.Perimeter()
	}
	if seams.Roll <= 0 {
		wrong.Remark("/seams/rollLength", problem.Stop, words.Say("The length of a roll of tape is missing."), words.Say("Fill in the length of a roll of tape."))
		return t, wrong
	}
	rolls, problems, ok := finish.RollsFor(finish.Tape{Length: t.Length, Waste: seams.Waste, Roll: seams.Roll})
	wrong.Report("/seams", problems)
	t.Rolls, t.Known = rolls, ok
	return t, wrong
}
