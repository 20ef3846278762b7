package job

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/plan"
	"ceilingwright/core/safety"
)

// Record is what is handed over: the steps, by their indexes, that leave something
// behind, and how many of them lack their colour, or mix or leaf, and their batch
// number. Pull is what pulling tape off the old paint did, "" where nobody wrote down
// when or where that was.
type Record struct {
	Steps            []int
	Colours, Batches int
	Pull             safety.PullTest
}

// recordOf is what is handed over.
func recordOf(p *plan.Plan) (r Record) {
	place := &p.Place
	for i := range p.Steps {
		s := &p.Steps[i]
		if s.Kind == finish.Protect || s.Kind == finish.Peel {
			continue
		}
		r.Steps = append(r.Steps, i)
		if s.Colour == "" && (!s.MixWhole || len(s.Mix) == 0) && s.Leaf == nil {
			r.Colours++
		}
		if s.Batch == "" {
			r.Batches++
		}
	}
	if (place.PullOn != "" || place.PullAt != "") && (place.Pull == safety.PaintHeld || place.Pull == safety.Lifted) {
		r.Pull = place.Pull
	}
	return r
}
