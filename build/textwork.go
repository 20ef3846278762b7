package main

import (
	"strconv"
	"strings"

	"ceilingwright/core/sheet"
)

// steps are the steps of the finish: what each takes, its mix and its sections,
// and what to write on its pot.
func (p *paper) steps(steps []sheet.Step) {
	p.block("finish, step by step")
	for i := range steps {
		s := &steps[i]
		p.line(1, s.Name, between(": ", s.Buy, ""), note(s.LeftOver))
		p.told(2, "takes", some(", ", s.Likely, between("if it spreads well ", s.Lean, ""), between("badly ", s.Rich, "")))
		p.lines(2, s.Notes)
		p.mix("mix", s.Mix)
		p.mix("sample board", s.Sample)
		for _, c := range s.Sections {
			p.line(2, some(", ", "section "+strconv.Itoa(c.N)+note(strings.Join(c.Panels, " ")), c.Area, c.Hours), ": ", c.Text)
		}
		p.told(2, "label of the pot", strings.Join(s.Label, " / "))
	}
}

// mix are the parts of a mix as they are measured, with what they should be.
func (p *paper) mix(name string, lines []sheet.MixLine) {
	for _, m := range lines {
		p.line(2, name, ", ", m.Name, ": ", m.Measured, note(m.Exact), ", ", m.Error)
	}
}

// climate is whether it is fit to paint.
func (p *paper) climate(c sheet.Climate) {
	p.block("air on the day")
	p.line(1, c.Text)
	p.told(2, "dew point", c.Dew)
	p.told(2, "ceiling above it", c.Margin)
	p.line(1, c.Drying)
}

// shopping is what to buy, and what it comes to.
func (p *paper) shopping(s sheet.Sheet) {
	p.block("shopping")
	for _, buy := range s.Shopping {
		p.line(1, buy.What, ": ", buy.Amount, note(buy.Detail), " ", buy.Cost)
	}
	if s.Bill.Sum != "" {
		p.sums("", []sheet.Total{s.Bill})
	}
}

// days are the tasks with the reasons for them, the waits, and what would save
// time. A star stands on what the finish moves with.
func (p *paper) days(d sheet.Days) {
	p.block("days")
	p.line(1, d.Text)
	star := ""
	for _, t := range d.Tasks {
		mark := " "
		if t.Critical {
			mark, star = "*", "* the finish moves with it"
		}
		p.line(1, t.Day, " ", t.From, "–", t.To, mark, " ", t.Name, note(t.Labour), "  ", t.Reason)
		p.made(2, t.Sum)
	}
	p.line(1, star)
	p.lines(1, d.Waits)
	p.lines(1, d.Saves)
}

// record prints what is known: what is still to be written in has no place in
// plain text.
func (p *paper) record(record sheet.Record) {
	p.block("finish record")
	p.line(1, record.Text)
	for _, l := range record.Lines {
		p.line(1, l.Step, ": ", some("; ", l.Where, l.Area, l.Colour, l.Mix, l.Leaf, l.Batch, l.Date))
	}
}
