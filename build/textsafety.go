package main

import (
	"cmp"
	"slices"
	"strconv"

	"ceilingwright/core/sheet"
)

// platform is what to work from and why, what it has against what it needs, and
// how long anyone works overhead.
func (p *paper) platform(s sheet.Sheet) {
	of := &s.Platform
	p.block("what to work from")
	p.line(1, of.Text)
	p.line(1, of.Why)
	p.lines(1, of.Refused)
	p.line(1, of.Hire)
	for _, c := range of.Checks {
		p.line(2, c.What, ": ", c.Have, ", needed ", c.Need, ": ", c.Verdict, between(". ", c.Text, ""))
	}
	for _, at := range of.Stations {
		p.line(2, layerName(s.Layers, at.Layer), ", position ", strconv.Itoa(at.N), ": ", at.Text)
	}
	for _, o := range of.Overhead {
		p.line(2, o.Day, ": overhead ", o.Text)
	}
}

// layerName is what the layer of an id is called.
func layerName(layers []sheet.Layer, id string) string {
	for i := range layers {
		if layers[i].ID == id {
			return layers[i].Name
		}
	}
	return id
}

// limits are what each label may hold of solvent, every source once at the end.
func (p *paper) limits(limits []sheet.VOCLine) {
	p.block("what labels may hold")
	var sources []string
	for _, l := range limits {
		held := between("holds ", l.Holds, ". ")
		if l.Limit != "" {
			held = "holds " + cmp.Or(l.Holds, "not known") + ", at most " + l.Limit + ". "
		}
		p.line(1, l.Step, note(l.Category), ": ", held, some(" ", l.Text, l.Rule))
		source := some("; ", l.Source, l.AsOf)
		if source != "" && !slices.Contains(sources, source) {
			sources = append(sources, source)
		}
	}
	for _, source := range sources {
		p.line(2, "source: ", source)
	}
}

// findOut is what nobody has said yet and safety turns on.
func (p *paper) findOut(questions []sheet.Question) {
	p.block("find out first")
	for _, q := range questions {
		p.line(1, "– ", q.Words)
	}
}

// parts are the headings the notes stand under, most severe first.
var parts = []struct {
	severity string
	onDemand bool
	heading  string
}{
	{"stop", false, "STOP: do not start until this is done"},
	{"caution", false, "TAKE CARE"},
	{"note", false, "ALSO KNOW"},
	{"note", true, "MORE"},
}

// safety is what to do, most severe first, with the numbers it went by, who has
// the last word, and who says so.
func (p *paper) safety(notes []sheet.Advice) {
	p.block("safety notes")
	for _, part := range parts {
		heading := part.heading
		for i := range notes {
			if a := &notes[i]; a.Severity == part.severity && a.OnDemand == part.onDemand {
				p.line(1, heading)
				heading = ""
				p.advice(a)
			}
		}
	}
}

func (p *paper) advice(a *sheet.Advice) {
	p.line(2, "– ", a.Words)
	p.told(3, "here", a.Working)
	p.line(3, a.Decides)
	p.line(3, "source", note(jurisdictionOf(a)), ": ", a.Source)
}

// jurisdictionOf is whose rule a note is, "" where it is everybody's.
func jurisdictionOf(a *sheet.Advice) string {
	if a.Jurisdiction == "all" {
		return ""
	}
	return jurisdictions[a.Jurisdiction]
}
