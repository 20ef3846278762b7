package job

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
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

// BuyTape works out the tape of the layers as they are now. It reads the plan and the
// layers.
func (j *Job) BuyTape() {
	outline, seams := j.Plan.Mask.Outline, &j.Plan.Seams
	j.Tape = Tape{}
	if !outline.IsComplete() || len(j.Layers) == 0 {
		return
	}
	t := &j.Tape
	for i := range j.Layers {
		l := &j.Layers[i]
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
		j.Report("/seams/rollLength", []problem.Problem{{Severity: problem.Stop, What: words.Say("The length of a roll of tape is missing."), Do: words.Say("Fill in the length of a roll of tape.")}})
		return
	}
	rolls, problems, ok := finish.RollsFor(finish.Tape{Length: t.Length, Waste: seams.Waste, Roll: seams.Roll})
	j.Report("/seams", problems)
	t.Rolls, t.Known = rolls, ok
}
