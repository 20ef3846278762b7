package plan

import (
	"slices"

	"ceilingwright/core/jsondoc"
)

// Parts are parts of a plan, each what stands under one name of its top. What is
// worked out of a plan names the parts it reads, and is worked out again only where
// one of them is written otherwise.
type Parts uint16

// The parts of a plan. PartHead is its id and title and which
// pages are ticked.
const (
	PartHead Parts = 1 << iota
	PartUnits
	PartPlace
	PartRoom // with the light, the obstructions and the furniture
	PartMask
	PartSetting
	PartSeams
	PartFinish // with the steps
	PartDays
	PartPrice
	PartQuote
	PartAir
	PartAccess
	// PartPaid is of the price only whether work is paid by the hour: the days are
	// planned for it too.
	PartPaid

	// AllParts is the whole plan.
	AllParts Parts = 1<<iota - 1
)

// partNames are the names of the parts from PartUnits on, in their order.
var partNames = [...]string{"units", "place", "room", "mask", "setting", "seams", "finish", "days", "price", "quote", "air", "access"}

// partsOf are the parts as they are written, "" where one is not.
func partsOf(top *jsondoc.Node) (written [len(partNames)]string) {
	for i := range top.Fields {
		for k, name := range partNames {
			if top.Fields[i].Name == name {
				written[k] = top.Fields[i].Raw
			}
		}
	}
	return written
}

// Changed are the parts in which two plans as read may differ. What a bare number
// means stands in the units, so with them all parts change.
func (d *Document) Changed(before *Document) Parts {
	if !d.Usable || !before.Usable || d.written[0] != before.written[0] {
		return AllParts
	}
	var changed Parts
	if d.Plan.ID != before.Plan.ID || d.Plan.Title != before.Plan.Title || !slices.Equal(d.Plan.Ticked, before.Plan.Ticked) {
		changed = PartHead
	}
	for k := range partNames {
		if d.written[k] != before.written[k] {
			changed |= PartUnits << k
		}
	}
	if d.Plan.Price.Rate.Known != before.Plan.Price.Rate.Known {
		changed |= PartPaid
	}
	return changed
}

// Only is the plan with nothing but some of its parts.
func (p *Plan) Only(parts Parts) Plan {
	var some Plan
	if parts&PartHead != 0 {
		some.ID, some.Title, some.Ticked, some.Marked = p.ID, p.Title, p.Ticked, p.Marked
	}
	if parts&PartUnits != 0 {
		some.Units = p.Units
	}
	if parts&PartPlace != 0 {
		some.Place = p.Place
	}
	if parts&PartRoom != 0 {
		some.Room, some.Fixture, some.Furniture, some.Obstructions = p.Room, p.Fixture, p.Furniture, p.Obstructions
	}
	if parts&PartMask != 0 {
		some.Mask = p.Mask
	}
	if parts&PartSetting != 0 {
		some.Setting = p.Setting
	}
	if parts&PartSeams != 0 {
		some.Seams = p.Seams
	}
	if parts&PartFinish != 0 {
		some.Finish, some.Steps = p.Finish, p.Steps
	}
	if parts&PartDays != 0 {
		some.Days = p.Days
	}
	if parts&PartPrice != 0 {
		some.Price = p.Price
	}
	if parts&PartPaid != 0 {
		some.Price.Rate.Known = p.Price.Rate.Known
	}
	if parts&PartQuote != 0 {
		some.Quote = p.Quote
	}
	if parts&PartAir != 0 {
		some.Air = p.Air
	}
	if parts&PartAccess != 0 {
		some.Access = p.Access
	}
	return some
}
