package main

import (
	"cmp"
	"strings"

	"ceilingwright/core/sheet"
)

// paper writes the lines of a sheet.
type paper struct {
	strings.Builder
	working bool // every sum is wanted too
	heading string
}

func (p *paper) line(indent int, parts ...string) {
	text := strings.TrimSpace(strings.Join(parts, ""))
	if text == "" {
		return
	}
	if p.heading != "" {
		p.WriteString("\n" + strings.ToUpper(p.heading) + "\n")
		p.heading = ""
	}
	p.WriteString(strings.Repeat("  ", indent) + text + "\n")
}

// lines writes one line of each text.
func (p *paper) lines(indent int, texts []string) {
	for _, text := range texts {
		p.line(indent, text)
	}
}

// block starts a part of the sheet. Its heading is written with the first line of
// it, so that an empty part has none.
func (p *paper) block(title string) { p.heading = title }

// told writes what stands behind a word, or nothing where there is nothing.
func (p *paper) told(indent int, word, text string) {
	if text != "" {
		p.line(indent, word, ": ", text)
	}
}

// made is how something comes about, where workings are asked for.
func (p *paper) made(indent int, sums ...string) {
	if p.working {
		p.lines(indent, sums)
	}
}

// note puts a remark in brackets, or nothing where there is none.
func note(remark string) string { return between(" (", remark, ")") }

// between puts a text between two marks, or nothing where there is none.
func between(before, text, after string) string {
	if text == "" {
		return ""
	}
	return before + text + after
}

// some are the texts that are not empty, with the mark between them.
func some(mark string, texts ...string) string {
	var kept []string
	for _, text := range texts {
		if text != "" {
			kept = append(kept, text)
		}
	}
	return strings.Join(kept, mark)
}

// sheetText lays the sheet out as plain text, in the order of the work. It says
// all that the JSON says to a person.
func sheetText(s sheet.Sheet, working bool) string {
	p := &paper{working: working}
	p.line(0, s.Plan.Title)
	p.overview(s.Overview)
	p.findOut(s.FindOut)
	p.problems(s.Problems)
	p.figures(s)
	p.room(s.Survey)
	p.objects(s)
	p.settings(s.Choices)
	p.outline(s.Box)
	p.walls(s.Walls)
	p.corners(s.Corners)
	for i := range s.Layers {
		p.layer(&s.Layers[i])
	}
	p.steps(s.Steps)
	p.climate(s.Climate)
	p.shopping(s)
	p.days(s.Days)
	p.price(s.Price)
	p.record(s.Record)
	p.platform(s)
	p.block("air")
	p.line(1, s.Air.Text)
	p.limits(s.Limits)
	p.safety(s.Safety)
	p.readings(s.Readings)
	p.drawings(s.Drawings)
	p.block("made by")
	p.told(1, "Ceilingwright", s.Version)
	return p.String()
}

// overview is the job at a glance.
func (p *paper) overview(o sheet.Overview) {
	p.block("the job")
	for _, a := range o.Answers {
		p.line(1, a.Label, ": ", a.Text)
	}
	for _, of := range o.Pages {
		p.line(1, between("on the page ", of.Page, ": "), of.Text)
	}
	for _, f := range o.First {
		p.line(1, "first: ", f.Words)
	}
}

func (p *paper) problems(problems []sheet.Problem) {
	p.block("to look at")
	for _, one := range problems {
		p.line(1, string(one.Severity), " at ", cmp.Or(one.At, "the plan"), ": ", one.What, " ", one.Do,
			between(" Write ", strings.Join(one.Answers, " or "), "."))
	}
}

// figures are all numbers, each step's own behind its name.
func (p *paper) figures(s sheet.Sheet) {
	owners := owners(s)
	block, owner := "", ""
	for _, f := range s.Figures {
		if f.Block != block {
			block = f.Block
			p.block(block)
		}
		if owners[f.ID] != owner {
			owner = owners[f.ID]
			p.line(1, owner)
		}
		p.line(1, f.Label, ": ", f.Text, note(f.Other), "  [", f.ID, "]")
		p.made(2, f.Working.Rule, f.Working.Sum, f.Working.Source)
	}
}

// owners names the step of each figure that is one step's own.
func owners(s sheet.Sheet) map[string]string {
	names := map[string]string{}
	for _, step := range s.Steps {
		for _, id := range step.Figures {
			names[id] = "– " + step.Name
		}
	}
	return names
}

// readings are the lengths of the plan as they were read.
func (p *paper) readings(readings []sheet.Reading) {
	p.block("lengths of the plan, as read")
	for _, r := range readings {
		p.line(1, r.At, ": ", r.Text, note(r.Other))
	}
}

func (p *paper) drawings(drawings []sheet.Drawing) {
	p.block("drawings (print one with -drawing=ID)")
	for _, d := range drawings {
		p.line(1, d.ID, ": ", d.Title)
	}
}
