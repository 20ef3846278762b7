package tell

import (
	"ceilingwright/core/draw"
	"ceilingwright/core/finish"
	"ceilingwright/core/job"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/job/pricing"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	telldays "ceilingwright/core/tell/days"
	tellfinish "ceilingwright/core/tell/finish"
	tellhanging "ceilingwright/core/tell/hanging"
	tellleaf "ceilingwright/core/tell/leaf"
	tellmask "ceilingwright/core/tell/mask"
	"ceilingwright/core/tell/page"
	tellprice "ceilingwright/core/tell/price"
	tellrecord "ceilingwright/core/tell/record"
	"ceilingwright/core/tell/room"
	"ceilingwright/core/tell/safety"
	"ceilingwright/core/tell/setting"
	"ceilingwright/core/tell/shopping"
	"ceilingwright/core/words"
)

// chapter is a part of the sheet that is told by itself: on a sheet of its own, from the
// parts of the plan and the findings of the job that it names. What it does not name it
// cannot see, so it is kept until one of those changes. What several pages write into
// together is one chapter.
type chapter struct {
	pages Pages
	reads plan.Parts
	after job.Findings
	// hand hands over what it puts on the sheet, but for the figures.
	hand func(to, from *sheet.Sheet)
}

// The chapters.
const (
	ofRoom = iota
	ofMask
	ofFinish
	ofClimate
	ofShopping
	ofDays
	ofPrice
	ofRecord
	ofSafety
	chapterCount
)

func chapters() [chapterCount]chapter {
	return [chapterCount]chapter{
		ofRoom: {InPages(page.Room, page.Setting), plan.PartRoom | plan.PartMask | plan.PartSetting, job.TheRoom | job.TheMask | job.TheSetting,
			func(to, from *sheet.Sheet) {
				to.Survey, to.Objects, to.Choices = from.Survey, from.Objects, from.Choices
				to.Box, to.Walls, to.Corners = from.Box, from.Walls, from.Corners
			}},
		ofMask: {InPages(page.Mask, page.Hanging), plan.PartMask | plan.PartSeams | plan.PartAccess,
			job.TheRoom | job.TheMask | job.TheSetting | job.ThePlatform | job.TheKeys | job.TheHanging | job.TheTape | job.TheMeeting | job.TheDeck,
			func(to, from *sheet.Sheet) { to.Layers = from.Layers }},
		ofFinish: {InPages(page.Finish), plan.PartHead | plan.PartFinish | plan.PartPrice | plan.PartMask | plan.PartDays, job.TheRoom | job.TheMask | job.TheFinish | job.TheClimate | job.TheDays | job.ThePrice,
			func(to, from *sheet.Sheet) { to.Steps = from.Steps }},
		ofClimate: {InPages(page.Finish), plan.PartFinish, job.TheClimate,
			func(to, from *sheet.Sheet) { to.Climate = from.Climate }},
		ofShopping: {InPages(page.Finish), plan.PartFinish | plan.PartPrice | plan.PartMask | plan.PartSeams | plan.PartSetting | plan.PartRoom | plan.PartQuote, job.TheRoom | job.TheMask | job.TheSetting | job.TheTape | job.TheFinish,
			func(to, from *sheet.Sheet) { to.Shopping, to.Bill = from.Shopping, from.Bill }},
		ofDays: {InPages(page.Days), plan.PartFinish | plan.PartMask | plan.PartDays | plan.PartQuote, job.TheRoom | job.TheMask | job.TheKeys | job.TheHanging | job.TheFinish | job.TheDays | job.TheSaves,
			func(to, from *sheet.Sheet) { to.Days = from.Days }},
		ofPrice: {InPages(page.Price), plan.AllParts, job.TheMask | job.TheHanging | job.TheTape | job.TheFinish | job.TheDays | job.ThePrice,
			func(to, from *sheet.Sheet) { to.Price = from.Price }},
		ofRecord: {InPages(page.Record), plan.PartFinish | plan.PartMask | plan.PartPlace, job.TheMask | job.TheFinish | job.TheRecord,
			func(to, from *sheet.Sheet) { to.Record = from.Record }},
		ofSafety: {InPages(page.Safety), plan.PartRoom | plan.PartMask | plan.PartAccess | plan.PartDays | plan.PartFinish | plan.PartPlace, job.TheRoom | job.TheMask | job.TheSetting | job.TheHanging | job.TheDays | job.TheVapours | job.TheDeck | job.TheAir | job.TheRules,
			func(to, from *sheet.Sheet) {
				to.Air, to.Platform, to.Limits, to.FindOut, to.Safety = from.Air, from.Platform, from.Limits, from.FindOut, from.Safety
			}},
	}
}

// telling is one step of telling a chapter. name is what it tells, to follow "could not
// work out".
type telling struct {
	name    string
	chapter int
	do      func(*page.Page, *job.Job)
}

// tellings are in the order of the work, in which the figures stand on the sheet.
func tellings() []telling {
	return []telling{
		{"the room", ofRoom, room.Tell},
		{"the mask", ofMask, tellmask.Figures},
		{"where the mask goes", ofRoom, setting.Tell},
		{"the hanging", ofMask, tellHanging},
		{"how the layers meet", ofMask, tellmask.Meeting},
		{"the finish", ofFinish, tellFinish},
		{"the climate", ofClimate, tellfinish.Climate},
		{"the costs of what is bought", ofShopping, tellShopping},
		{"the gilding", ofFinish, tellleaf.Sections},
		{"the hours of the steps", ofFinish, tellfinish.Hours},
		{"the days", ofDays, tellDays},
		{"the price", ofPrice, tellPrice},
		{"the record", ofRecord, tellrecord.Tell},
		{"the safety notes", ofSafety, tellSafety},
	}
}

// tellHanging puts the layers on the sheet, and gives each step of hanging that has a
// card its part of the drawing.
func tellHanging(p *page.Page, j *job.Job) {
	tellhanging.Tell(p, j)
	for i := range j.Layers {
		l := j.Hung(i)
		for k := range p.Sheet.Layers[i].Order {
			step := &p.Sheet.Layers[i].Order[k]
			switch {
			case !j.Setting.Placed:
			case k >= len(l.Order):
				step.View = draw.ViewRound(&j.Room.Shape, hung.PlaceOfLoose(&j.Setting.Choice.Box, &l.Panels.Loose[k-len(l.Order)]))
			case len(l.Cards) > 0:
				step.View = draw.ViewRound(&j.Room.Shape, hung.PlaceOf(&j.Setting.Choice.Box, l.Layer, &l.Order[k]))
			}
		}
	}
}

// tellFinish is each step's area, product, cans and leaf.
func tellFinish(p *page.Page, j *job.Job) {
	p.Sheet.Steps = make([]sheet.Step, len(j.Plan.Steps))
	for i := range j.Plan.Steps {
		p.Sheet.Steps[i] = tellfinish.Step(j, i)
	}
	for i := range j.Plan.Steps {
		out, kind := &p.Sheet.Steps[i], j.Plan.Steps[i].Kind
		tellfinish.Area(p, j, i, out)
		switch {
		case kind.IsLiquid():
			tellfinish.Product(p, j, i, out)
		case kind == finish.LeafLaying:
			tellleaf.Step(p, j, i, out)
		}
	}
}

// tellShopping is the list of what to buy, and what it costs. A client's copy has none.
func tellShopping(p *page.Page, j *job.Job) {
	if !j.Plan.Quote.Known {
		shoppingList(p, j).Tell()
	}
}

func shoppingList(p *page.Page, j *job.Job) *shopping.List {
	return &shopping.List{Page: p, Job: j, Bought: pricing.ToBuy(&j.Plan, &j.Surface, &j.Found), Leaf: func(step int) (amount, detail string) { return tellleaf.Line(p, j, step) }}
}

// tellDays is the calendar. A client's copy has the last day of it.
func tellDays(p *page.Page, j *job.Job) {
	telldays.Tell(p, j)
	out := &p.Sheet.Days
	if done := j.Plan.Quote.Done; done != "" {
		out.Text = p.Say("The work is planned to be done on {day}.", words.Of("day", tellprice.Day(done)))
	}
}

// tellPrice is the price, and what one thing otherwise would cost.
func tellPrice(p *page.Page, j *job.Job) {
	tellprice.Tell(p, j)
	for i := range j.WhatIfs {
		tellprice.WhatIf(p, j, &j.WhatIfs[i])
	}
}

// tellSafety is the platform, the air and the notes. Safety is not on a client's copy: it
// is judged by the days of the work, which stay with those who do it.
func tellSafety(p *page.Page, j *job.Job) {
	if j.Plan.Quote.Known {
		return
	}
	safety.Checks(p, j)
	tellhanging.Stands(p, j)
	safety.Tell(p, j)
}
