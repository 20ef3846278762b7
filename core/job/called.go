package job

import (
	"ceilingwright/core/mixing"
	"ceilingwright/core/words"
)

// SeamTapeCalled is what the tape over the seams is called.
func SeamTapeCalled() words.Text { return words.Say("Tape for the seams") }

// ProductCalled is what is in the cans of a step: the step's own product, or the main
// part of its mix.
func (j *Job) ProductCalled(step int) words.Text {
	name := words.Name("step", j.Plan.Steps[step].Name)
	if main := j.Finish.Steps[step].Cans.Main; main != "" {
		return words.Say("{part}, for “{step}”", words.Name("part", main), name)
	}
	return words.Say("{step}", name)
}

// Called is what one of a pack is sold as.
func (p *Pack) Called() words.Text {
	whole, _ := p.Size.Floor()
	n := words.Count("n", whole)
	switch p.As {
	case PanelSet:
		return words.Say("set")
	case TapeRoll, LeafRoll:
		return words.Say("roll of {length}", words.Put("length", p.Length))
	case LeafPack:
		return words.Say("pack of {n|leaf|leaves}", n)
	case LeafBook:
		return words.Say("book of {n|leaf|leaves}", n)
	case RollPack:
		return words.Say("pack of {n|roll of leaf|rolls of leaf}", n)
	case RollBook:
		return words.Say("book of {n|roll of leaf|rolls of leaf}", n)
	}
	return words.Say("{can}", words.Of("can", mixing.MeasureOf(p.Size, p.Unit)))
}
