package tell

import (
	"slices"

	"ceilingwright/core/sheet"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/survey"
)

// safety is the block Safety: the platform, the air and the notes.
func (b *builder) safety() {
	job := b.job()
	b.platform(&job)
	b.air(&job)
	b.limits(&job)
	told := safety.Tell(job, b.safetyStyle())
	for _, q := range told.FindOut {
		b.Sheet.FindOut = append(b.Sheet.FindOut, sheet.Question(q))
	}
	for _, note := range told.Notes {
		advice := sheet.Advice{
			ID: note.ID, Also: note.Also, Severity: string(note.Severity), Words: note.Words, Decides: note.Decides, Source: note.Source,
			Jurisdiction: note.Jurisdiction, At: note.At, Figures: b.onSheet(note.Figures), Working: note.Working, OnDemand: note.OnDemand,
		}
		for _, block := range note.Bites {
			advice.Bites = append(advice.Bites, string(block))
		}
		b.Sheet.Safety = append(b.Sheet.Safety, advice)
	}
}

// onSheet are those of the figures that the sheet has: what a rule speaks of may
// not be known yet.
func (b *builder) onSheet(ids []string) []string {
	var found []string
	for _, id := range ids {
		if slices.ContainsFunc(b.Sheet.Figures, func(f sheet.Figure) bool { return f.ID == id }) {
			found = append(found, id)
		}
	}
	return found
}

// job is what the rules read, taken from the plan and from what the steps use.
func (b *builder) job() safety.Job {
	p := b.Plan
	job := safety.Job{
		Country: p.Place.Rules, Year: p.Place.Built, Textured: p.Place.Textured, Lead: p.Place.Lead, Pull: p.Place.Pull, Asbestos: p.Place.Asbestos,
		CeilingHeight: p.Room.Height, RoomVolume: b.Room.Air, Fixture: safety.Yes,
		Access: p.Access.By, Reach: p.Access.Reach, Base: p.Access.Base, Rails: p.Access.Rails, DeckGap: p.Access.DeckGap,
		MaskArea: p.Mask.Area(), Air: p.Air, Hands: p.Days.People,
	}
	if p.Fixture.At == survey.NoFixture {
		job.Fixture = safety.No
	}
	for _, stature := range []measure.Length{p.Access.Stature, p.Access.OtherStature} {
		if stature > 0 {
			job.Crew = append(job.Crew, stature)
		}
	}
	job.Building = safety.Building{
		Detectors: b.inCeiling(survey.Detector, p.Place.Detectors), Sprinklers: b.inCeiling(survey.Sprinkler, p.Place.Sprinklers), Isolated: p.Place.Isolated, Flames: p.Place.Flames,
		AirHandling: p.Place.AirHandling, Below: p.Place.Below, Fixings: p.Place.Fixings, FloorLoad: p.Place.FloorLoad,
		Use: p.Place.Use, LeadFirm: p.Place.LeadFirm, LeadPlan: p.Place.LeadPlan, SprinklersAgreed: p.Place.SprinklersAgreed,
		Drop: p.Place.Drop, DropDepth: p.Place.DropDepth,
	}
	a := &p.Access
	job.Gear = safety.Gear{
		Kind: a.Kind, DeckLength: a.DeckLength, DeckWidth: a.DeckWidth, LadderHeight: a.LadderHeight, RailHeight: a.RailHeight, RailGap: a.RailGap,
		FootLength: a.FootLength, FootWidth: a.FootWidth, Wheels: a.Wheels, Rides: a.Rides, ToeBoards: a.ToeBoards,
		WayUp: a.WayUp, Tied: a.Tied, BaseChecked: a.BaseChecked, Rated: a.Rated, Load: a.Load, Mass: a.Mass, Panel: a.Panel, OnDeck: a.OnDeck, Minutes: a.Minutes,
	}
	for i := range b.products {
		job.Products = append(job.Products, b.safetyProduct(&b.products[i]))
	}
	for _, s := range p.Steps {
		if s.Kind == finish.LeafLaying && s.Leaf != nil {
			job.Leaf = append(job.Leaf, safety.Metal(s.Leaf.Metal))
		}
	}
	if air := b.measured().Air; air.Known && finish.IsReadable(air.Value) {
		job.Warmth = safety.Fact(air)
	}
	job.Coats, job.Shifts, _ = b.inTheRoom()
	job.OverheadHours = overheadHours(b.overheadDays())
	return job
}

// inCeiling is whether there are obstructions of a kind in the ceiling: one that
// is drawn there counts, whatever was answered.
func (b *builder) inCeiling(kind survey.Kind, answer safety.Answer) safety.Answer {
	for _, o := range b.Plan.Obstructions {
		if o.Kind == kind {
			return safety.Yes
		}
	}
	return answer
}

// safetyProduct is what a step uses up, as the rules read it.
func (b *builder) safetyProduct(made *product) safety.Product {
	s := made.step
	p := safety.Product{
		At: s.At, StepName: s.Name, Litres: safety.Fact{Value: made.used.Litres, Known: made.known},
		Label: s.VOC, Binder: s.Binder, Coats: int64(s.Coats), DryHours: s.DryHours, Limit: s.Limit,
		FlashPoint: s.FlashPoint, Sprayed: s.Method == finish.Spray, Size: s.Kind == finish.SizeCoat, Category: s.Category, LessWater: s.LessWater, InPounds: s.VOCInPounds,
		Water: safety.Fact{Value: s.WaterPart.Share, Known: s.WaterPart.Known}, Exempt: s.ExemptPart.Share, Thinner: s.Thinned.Share,
	}
	p.VOC, p.Unsplit = safety.AsUsed(p)
	return p
}

func (b *builder) safetyStyle() safety.Style {
	return safety.Style{Length: b.Notation.Length, Area: b.Notation.Area, Number: b.Notation.Number, Flow: b.flowText, Mass: b.mass, Step: b.step(), LimitStep: b.limitStep()}
}

// mass is a number of kilograms as the sheet's own system has it: to a tenth of
// a pound or a hundredth of a kilogram where it is carried in the hands, to a tenth
// from a hundred on, so that sums of them can be worked out again.
func (b *builder) mass(kilograms measure.Number) string { return b.massIn(b.Notation, kilograms) }

func (b *builder) massIn(notation measure.Notation, kilograms measure.Number) string {
	n, unit, places := kilograms, " kg", int32(2)
	if notation.System == measure.FeetInches {
		n, unit, places = kilograms.Quo(measure.Pound), " lb", 1
	}
	if n.Cmp(measure.NumberFromInt(100)) >= 0 {
		places = 1
	}
	return notation.NumberTrimmed(n, places) + unit
}
