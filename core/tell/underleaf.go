package tell

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/plan"
)

// seal compares the leaf with the steps before and after it that cover it.
func (w *leafStep) seal(metal finish.Metal) {
	below, above, passed := false, false, false
	for i := range w.builder.Plan.Steps {
		s := &w.builder.Plan.Steps[i]
		switch {
		case s.ID == w.ID:
			passed = true
		case !covers(s, &w.Step):
		case !passed && (s.Kind == finish.ClearSeal || s.Kind == finish.ClearCoat):
			below = true
		case passed && (s.Kind == finish.ClearCoat || s.Kind == finish.ClearSeal || s.Kind == finish.Glaze):
			above = true
		}
	}
	w.Report(w.At+"/leaf", finish.SealingRemarks(metal, below, above))
}

// covers tells whether a coat lies over all of what a leaf goes over, as far as
// the areas tell: one that was measured by hand is taken to.
func covers(coat, leaf *plan.Step) bool {
	if coat.Surface != leaf.Surface {
		return false
	}
	switch coat.Basis {
	case finish.Edges:
		return false
	case finish.Border:
		return leaf.Basis == finish.Border
	case finish.Openings:
		return leaf.Basis == finish.Openings && coat.LayerID == leaf.LayerID && coat.Share.Cmp(leaf.Share) >= 0
	}
	return leaf.Basis != finish.Border || coat.Basis != finish.Mask
}

// underLeaf says what is wrong with the size and the colour under the leaf.
func (b *builder) underLeaf() {
	steps := make([]finish.Ground, len(b.Plan.Steps))
	for i := range b.Plan.Steps {
		s := &b.Plan.Steps[i]
		steps[i] = finish.Ground{Kind: s.Kind, Basis: s.Basis, Name: s.Name, Layer: s.LayerID, Surface: s.Surface, Share: s.Share, Known: s.ShareKnown}
	}
	b.Report("/finish/steps", finish.UnderLeaf(steps))
}
