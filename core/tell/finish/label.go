package finish

import (
	"ceilingwright/core/air"
	"ceilingwright/core/finish"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/words"
)

// toWrite is where something is written by hand.
const toWrite = "__________"

// label is what stands on the pot of a liquid: what it is and for which job, what is in
// it, its batch and date, and where its safety is told.
func (t *teller) label() {
	s := t.step
	lines := []string{s.Name}
	if s.Colour != "" {
		lines[0] += ", " + s.Colour
	}
	if title := t.Plan.Title; title != "" {
		lines = append(lines, title)
	}
	for _, line := range t.out.Mix {
		amount := line.Measured
		if amount == "" {
			amount = line.Exact
		}
		lines = append(lines, t.Say("{part}: {amount}", words.Name("part", line.Name), words.Name("amount", amount)))
	}
	if len(t.out.Mix) > 0 {
		lines = append(lines, t.Say("Together {total}", words.Volume("total", t.taken.Mixed.Made.Total)))
	}
	if !t.taken.Thinner.Litres.IsZero() {
		lines = append(lines, t.thinned())
	}
	t.out.Label = append(lines, t.Say("Batch: {batch}  Made on: {date}", words.Name("batch", orToWrite(s.Batch)), words.Name("date", orToWrite(s.MadeOn))), t.labelSafety())
}

// thinned says how it is thinned.
func (t *teller) thinned() string {
	share, amount, made := words.Share("share", t.step.Thinned.Share), words.Volume("amount", t.taken.Thinner), words.Volume("made", t.taken.WithSpare(t.step))
	if steps.Dries(t.step) == finish.Evaporates {
		return t.Say("Thin by {share}: {amount} of water to {made}", share, amount, made)
	}
	return t.Say("Thin by {share}: {amount} of thinner to {made}", share, amount, made)
}

func orToWrite(text string) string {
	if text == "" {
		return toWrite
	}
	return text
}

// labelSafety is what is in the pot, as far as the plan says, and where the rest is
// told.
func (t *teller) labelSafety() string {
	var binder, solvent words.Text
	switch t.step.Binder {
	case air.Water:
		binder = words.Say("Thinned with water.")
	case air.Solvent:
		binder = words.Say("Thinned with solvent: keep from flames, and open a window.")
	case air.DryingOil:
		binder = words.Say("Drying oil: its rags can catch fire by themselves, lay them out flat or keep them under water.")
	}
	if t.step.VOC.Known {
		solvent = words.Say("VOC {voc} g/L.", words.Trimmed("voc", t.step.VOC.Value, 0))
	}
	return t.Told(words.Sentences(binder, solvent, words.Say("Keep with the product’s own sheet, and away from children.")))
}
