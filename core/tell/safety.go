package tell

import (
	"ceilingwright/core/air"
	"ceilingwright/core/finish"
	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	tellhanging "ceilingwright/core/tell/hanging"
	safetypage "ceilingwright/core/tell/safety"
)

// safety is the block Safety: the platform, the air and the notes.
func (b *builder) safety() {
	used := job.UsedUp{Warmth: b.Climate().Air}
	for i := range b.Plan.Steps {
		if b.Plan.Steps[i].Kind.IsLiquid() {
			used.Products = append(used.Products, b.safetyProduct(i))
		}
	}
	b.FindPlatform(used, &b.Days.Scheduled, b.People())
	safetypage.Checks(&b.Page, b.Job)
	tellhanging.Stands(&b.Page, b.Job)
	b.FindAir()
	safetypage.Tell(&b.Page, b.Job)
	if len(b.Safety.Course.Curve) > 0 {
		b.drawAir(&b.Safety.Course, b.Safety.Room.Midnight)
	}
}

// safetyProduct is what a step uses up, as the rules read it.
func (b *builder) safetyProduct(step int) air.Product {
	s := &b.Plan.Steps[step]
	used, known := b.UsedBy(step)
	p := air.Product{
		At: s.At, StepName: s.Name, Litres: measure.Fact{Value: used.Litres, Known: known},
		Label: s.VOC, Binder: s.Binder, Coats: int64(s.Coats), DryHours: s.DryHours, Limit: s.Limit,
		FlashPoint: s.FlashPoint, Sprayed: s.Method == finish.Spray, Size: s.Kind == finish.SizeCoat, Category: s.Category, LessWater: s.LessWater, InPounds: s.VOCInPounds,
		Water: measure.Fact{Value: s.WaterPart.Share, Known: s.WaterPart.Known}, Exempt: s.ExemptPart.Share, Thinner: s.Thinned.Share,
	}
	p.VOC, p.Unsplit = air.AsUsed(p)
	return p
}
