package tell

import (
	"ceilingwright/core/air"
	"ceilingwright/core/finish"
)

// toWrite is where something is written by hand.
const toWrite = "__________"

// label is what stands on the pot of a liquid: what it is and for which job, what
// is in it, its batch and date, and where its safety is told. made is the mix in
// it, nil where it is used as it comes.
func (w *step) label(made *finish.Mix) {
	name := w.Name
	if w.Colour != "" {
		name += ", " + w.Colour
	}
	lines := []string{name}
	if title := w.builder.Plan.Title; title != "" {
		lines = append(lines, title)
	}
	if made != nil {
		for _, line := range w.out.Mix {
			amount := line.Measured
			if amount == "" {
				amount = line.Exact
			}
			lines = append(lines, line.Name+": "+amount)
		}
		lines = append(lines, "Together "+w.Notation.Volume(made.Total))
	}
	if thinned := w.thinnedLine(); thinned != "" {
		lines = append(lines, thinned)
	}
	lines = append(lines, "Batch: "+orToWrite(w.Batch)+"  Made on: "+orToWrite(w.MadeOn), w.labelSafety())
	w.out.Label = lines
}

func orToWrite(text string) string {
	if text == "" {
		return toWrite
	}
	return text
}

// labelSafety is what is in the pot, as far as the plan says, and where the rest
// is told.
func (w *step) labelSafety() string {
	text := ""
	switch w.Binder {
	case air.Water:
		text = "Thinned with water. "
	case air.Solvent:
		text = "Thinned with solvent: keep from flames, and open a window. "
	case air.DryingOil:
		text = "Drying oil: its rags can catch fire by themselves, lay them out flat or keep them under water. "
	}
	if w.VOC.Known {
		text += "VOC " + w.Notation.NumberTrimmed(w.VOC.Value, 0) + " g/L. "
	}
	return text + "Keep with the product’s own sheet, and away from children."
}
