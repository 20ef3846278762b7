package tell

import (
	"strings"

	"ceilingwright/core/problem"
	telldays "ceilingwright/core/tell/days"
	tellfinish "ceilingwright/core/tell/finish"
	tellleaf "ceilingwright/core/tell/leaf"
	tellrecord "ceilingwright/core/tell/record"
	"ceilingwright/core/tell/room"
	"ceilingwright/core/tell/setting"
)

// stage is one part of the work on a sheet. name is what it works out, to follow
// "could not work out".
type stage struct {
	name string
	do   func()
}

// stages are all of the sheet but its drawings, in the order in which one needs
// the other.
func (b *builder) stages() []stage {
	last := stage{"the safety notes", b.safety}
	if b.Plan.Quote.Known {
		last = stage{"the client's copy", b.forClient}
	}
	return []stage{
		{"the room", b.room},
		{"the mask", b.mask},
		{"where the mask goes", b.setting},
		{"the hanging", b.hanging},
		{"how the layers meet", b.registering},
		{"the finish", b.finish},
		{"the climate", func() { tellfinish.Climate(&b.Page, b.Job) }},
		{"the costs of what is bought", b.costs},
		{"the gilding", func() { tellleaf.Sections(&b.Page, b.Job) }},
		{"the hours of the steps", func() { tellfinish.Hours(&b.Page, b.Job) }},
		{"the days", func() { telldays.Tell(&b.Page, b.Job) }},
		{"the price", b.price},
		{"the record", b.record},
		last,
	}
}

func (b *builder) setting() {
	setting.Tell(&b.Page, b.Job)
}

func (b *builder) record() {
	tellrecord.Tell(&b.Page, b.Job)
}

func (b *builder) room() {
	room.Tell(&b.Page, b.Job)
}

// workOut is all of the sheet but its drawings.
func (b *builder) workOut() { b.workThrough(b.stages()) }

func (b *builder) workThrough(stages []stage) {
	for _, s := range stages {
		b.guarded(s.name, s.do)
	}
	b.tellFaults()
}

// guarded does one part of the work so that a fault in it takes nothing of the
// others: what was worked out stays, and what comes after goes on with it.
func (b *builder) guarded(name string, do func()) {
	defer func() {
		if panicked := recover(); panicked != nil {
			b.cutShort(name, panicked)
		}
	}()
	do()
}

// cutShort notes that a panic cut a part of the work short.
func (b *builder) cutShort(name string, panicked any) {
	if len(b.faults) == 0 {
		b.fault = panicked
	}
	b.faults = append(b.faults, name)
}

// tellFaults reports once what could not be worked out, however much that is:
// one fault brings others after it, in the drawings too.
func (b *builder) tellFaults() {
	if len(b.faults) == 0 || b.faultsTold {
		return
	}
	b.faultsTold = true
	b.Problems = append(b.Problems, problem.Fault(strings.Join(b.faults, ", "), b.fault))
}
