package core_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/sheet"
)

var update = flag.Bool("update", false, "write the golden sheets anew; read the difference before you commit it")

// golden are the plans whose whole sheet is kept: between them they show every
// block, both notations, both gallons and the refusals.
var golden = []string{"full", "metric", "imperial-gallon", "fixture-centred", "sizes-short", "sizes-long", "one-panel", "mask-too-large",
	"border-too-small", "ladder", "old-textured", "registered", "gaps-measured", "delivered-short", "pieces", "platform",
	"box-turned", "square-to-wall", "on-point", "skew-room", "l-shape", "oval", "priced", "days", "gilded", "mixes", "empty", "blank"}

func TestGoldenSheets(t *testing.T) {
	for _, name := range golden {
		held(t, name+".txt", written(sheetNamed(t, name)))
	}
	for _, d := range sheetNamed(t, "sizes-short").Drawings {
		held(t, "sizes-short."+d.ID+".svg", strings.ReplaceAll(d.SVG, "><", ">\n<")+"\n")
	}
}

func held(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("..", "testdata", "golden", name)
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), got, "%s changed; go test ./core -update writes it anew", path)
}

// writtenDays is the calendar.
func writtenDays(line func(string, ...any), d sheet.Days) {
	line("days %s | %s | %s", d.Text, d.Start, d.Finish)
	for _, t := range d.Tasks {
		line("  %s %s %t | %s | %s | %s %s %s | %s %s | %s | %s", t.Kind, t.ID, t.Critical, t.Name, t.At, t.Day, t.From, t.To, t.Start, t.End, t.Labour, t.Reason)
		line("    %s", t.Sum)
	}
	for _, w := range d.Waits {
		line("  waits %s", w)
	}
	for _, w := range d.Saves {
		line("  saves %s", w)
	}
}

// writtenPlatform is what the work is done from.
func writtenPlatform(line func(string, ...any), p sheet.Platform) {
	line("platform %s | %s | %s | %s", p.Kind, p.Text, p.Why, p.Hire)
	for _, text := range p.Refused {
		line("  not %s", text)
	}
	for _, c := range p.Checks {
		line("  check %s %s | %s | %s | %s", c.Verdict, c.What, c.Have, c.Need, c.Text)
	}
	for _, s := range p.Stations {
		line("  at %s %d clash %t | %s", s.Layer, s.N, s.Clash, s.Text)
	}
	for _, o := range p.Overhead {
		line("  overhead %t %s | %s", o.Over, o.Day, o.Text)
	}
}

// writtenPrice is the price and the finish record.
func writtenPrice(line func(string, ...any), s sheet.Sheet) {
	line("price %s | %s | %s", s.Price.Text, s.Price.PerArea, s.Price.Range)
	if s.Price.Quoted != "" {
		line("  %s", s.Price.Quoted)
	}
	for _, l := range s.Price.Lines {
		line("  %s | %s | %s | %s | %s | %s", l.Group, l.What, l.Amount, l.Rate, l.Sum, l.Working)
	}
	for what, sums := range [][]sheet.Total{s.Price.Totals, s.Price.Client, s.Price.Stages} {
		for _, sum := range sums {
			line("  %s %s | %s | %s | %s", []string{"total", "client", "stage"}[what], sum.What, sum.Sum, sum.Text, sum.Working)
		}
	}
	for _, w := range s.Price.WhatIf {
		line("  what if %s | %s | %s | %s", w.What, w.Sum, w.Change, w.Text)
	}
	line("record %s", s.Record.Text)
	for _, l := range s.Record.Lines {
		line("  %s | %s | %s | %s | %s | %s | %s | %s", l.Step, l.Where, l.Area, l.Colour, l.Mix, l.Batch, l.Leaf, l.Date)
	}
}

// writtenOverview is the job at a glance.
func writtenOverview(line func(string, ...any), o sheet.Overview) {
	for _, a := range o.Answers {
		line("answer %s | %s | %s | %s | %s", a.ID, a.Label, a.Text, a.Figure, a.Page)
	}
	for _, p := range o.Pages {
		line("page %s %s | %s | %d stops, %d cautions, ticked %t", p.Page, p.State, p.Text, p.Stops, p.Cautions, p.Ticked)
	}
	for _, f := range o.First {
		line("first %s %s | %s | %s", f.Severity, f.Page, f.At, f.Words)
	}
}

// written is a sheet line by line, all but the drawings, for people to read and
// compare.
func written(s sheet.Sheet) string {
	var b strings.Builder
	line := func(format string, values ...any) { fmt.Fprintf(&b, format+"\n", values...) }
	line("%s | %s", s.Plan.ID, s.Plan.Title)
	writtenOverview(line, s.Overview)
	for _, p := range s.Problems {
		line("%s %s | %s | %s", p.Severity, p.At, p.What, p.Do)
	}
	for _, r := range s.Readings {
		line("read %s | %s nm | %s | %s | %s", r.At, r.Nanometres, r.Text, r.Other, r.Written)
	}
	for _, f := range s.Figures {
		line("%s %s | %s | %s %s | %s | %s", f.Block, f.ID, f.Label, f.Value, f.Unit, f.Text, f.Other)
		line("  %s\n  %s\n  %s", f.Working.Rule, f.Working.Sum, f.Working.Source)
	}
	line("survey %s %s | %s | %s | %v", s.Survey.Form, s.Survey.Proved, s.Survey.Text, s.Survey.Closing, s.Survey.Again)
	for _, c := range s.Survey.Corners {
		line("  %s %s | %s | %s", c.Corner, c.Angle, c.Out, c.Text)
	}
	for _, l := range s.Survey.Lines {
		line("  %s %s | read %s | %s | %s | %s", l.At, l.Line, l.Read, l.Adjusted, l.Off, l.Flag)
	}
	for _, o := range s.Objects {
		line("object %s %s “%s” | %s", o.At, o.Kind, o.Name, o.Text)
		for _, p := range o.Panels {
			line("  %s %s | %s", p.Layer, p.Panel, p.Text)
		}
	}
	for _, c := range s.Choices {
		line("choice %s %v | %s | WX %s XY %s YZ %s ZW %s | %s %s | %s", c.On, c.Taken, c.Title, c.Borders.AB, c.Borders.BC, c.Borders.CD, c.Borders.DA, c.Ends, c.Sides, c.Refused)
		line("  square to %s, turned %s | recommended %v | %s", c.Square, c.Turned, c.Recommended, c.Reason)
		for _, p := range c.Places {
			line("  border at %s off %s | %s", p.Corner, p.Wall, p.Text)
		}
		for _, taper := range c.Tapers {
			line("  taper %s | %s", taper.Wall, taper.Text)
		}
	}
	if s.Box.Text != "" {
		line("box %s | %s", s.Box.Text, s.Box.Line)
	}
	for _, c := range s.Box.Corners {
		line("  %s | %s", c.Corner, c.Text)
	}
	for _, strike := range s.Box.Lines {
		line("  strike %s | %s | %s | %s", strike.Name, strike.Kind, strike.Layer, strike.Text)
	}
	for _, w := range s.Walls {
		line("wall %s | %s", w.Title, w.Length)
		for _, m := range w.Marks {
			line("  %s | %s | %s | %s | %s nm | %s | %s | %s", m.Kind, m.Label, m.Layer, m.Text+" "+m.Other, m.Exact, m.Hides, m.Join, m.Sum)
		}
	}
	for _, o := range s.Objects {
		line("object %s | %s | %s | %s", o.At, o.Name, o.Kind, o.Text)
		for _, p := range o.Panels {
			line("  on %s %s | %s", p.Layer, p.Panel, p.Text)
		}
	}
	for _, c := range s.Corners {
		line("corner %s", c.Text)
	}
	for _, l := range s.Layers {
		line("layer %s | %s | %d | %s", l.ID, l.Name, l.Count, l.Advice)
		line("  columns %v rows %v", l.Columns, l.Rows)
		for _, p := range l.Panels {
			line("  panel %s | %d %d | %s | %d | %s", p.Label, p.Column, p.Row, p.Size, p.Order, p.Cut)
		}
		for _, h := range l.Order {
			line("  %d %s", h.N, h.Text)
			if h.Station > 0 { // one plan shows the cards whole
				line("    station %d up %t view %s %v", h.Station, h.Up, h.View, h.Measures)
			}
		}
		for _, p := range l.Stations {
			line("  station %d %s %v", p.N, p.Text, p.Panels)
		}
		if l.Route != "" {
			line("  route %s", l.Route)
		}
		if len(l.Restart.Down) > 0 {
			line("  restart %v %s", l.Restart.Down, l.Restart.Text)
		}
		if l.Key.Reason != "" {
			line("  key %s | %s | %s | lies %v touches %v | %s | %s", l.Key.Panel, l.Key.Chosen, l.Key.Reason, l.Key.Lies, l.Key.Touches, l.Key.Down, l.Key.Masked)
		}
		if slices.ContainsFunc(l.Gaps, func(g sheet.Gap) bool { return g.Measured != "" }) {
			for _, g := range l.Gaps {
				line("  gap %s | %s | planned %s measured %s set %s | %s | %v", g.Seam, g.At, g.Planned, g.Measured, g.Set, g.Text, g.Offers)
			}
		}
		if slices.ContainsFunc(l.Bridges, func(t sheet.Bridge) bool { return t.Pieces > 1 }) {
			for _, t := range l.Bridges {
				line("  bridge %s | %d | %s | %s", t.Seam, t.Pieces, t.Length, t.Text)
			}
		}
		if r := l.Register; len(r.Marks) > 0 {
			line("  register %s | %s | shift %s | turn %s | %v", r.Verdict, r.Text, r.Shift, r.Turn, r.Marks)
			for _, remedy := range r.Remedy {
				line("    %s", remedy)
			}
		}
		for _, flag := range l.Flags {
			line("  flag %s", flag)
		}
		for _, seam := range l.Seams {
			line("  seam %s | %s", seam.Seam, seam.Length)
		}
		if d := l.Delivery; d.Unchecked < d.Total {
			line("  delivery %d found %d missing %d damaged %d recut %d measured %d unchecked %d | %s", d.Total, d.Found, d.Missing, d.Damaged, d.Recut, d.Measured, d.Unchecked, d.Text)
			for _, text := range d.Ask {
				line("  ask %s", text)
			}
			for _, text := range d.Changed {
				line("  changed %s", text)
			}
			for _, p := range l.Panels {
				line("  came %s | %s | %s | %s", p.Label, p.Supplier, p.State, p.Measured)
			}
		}
		for _, p := range l.Pieces {
			line("  piece %s | %s | %s", p.Name, p.Kind, p.Text)
			for _, c := range p.Cuts {
				line("    cut %s | %s", c.Panel, c.Text)
			}
		}
	}
	for _, step := range s.Steps {
		line("step %s %s | %s | %v | %s | %s | %v", step.Kind, step.ID, step.Name, step.Figures, step.Buy, step.LeftOver, step.Notes)
		for what, lines := range [][]sheet.MixLine{step.Mix, step.Sample} {
			for _, m := range lines {
				line("  %s %s | %s | %s | %s", []string{"mix", "sample"}[what], m.Name, m.Exact, m.Measured, m.Error)
			}
		}
		if len(step.Mix) > 0 {
			line("  label %s", strings.Join(step.Label, " / "))
		}
		for _, c := range step.Sections {
			line("  section %d %v | %s | %s | %s | %s | %s | %s", c.N, c.Panels, c.Area, c.Hours, c.SizeAt, c.LayFrom, c.LayTo, c.Text)
		}
	}
	if c := s.Climate; c.Verdict != "" {
		line("climate %s | %s | %s | %s | %s", c.Verdict, c.Dew, c.Margin, c.Text, c.Drying)
	}
	if s.Days.Text != "" {
		writtenDays(line, s.Days)
	}
	if s.Bill.Sum != "" {
		line("bill %s | %s | %s | %s", s.Bill.What, s.Bill.Sum, s.Bill.Text, s.Bill.Working)
	}
	for _, p := range s.Shopping {
		line("buy %s | %s | %s", p.What, p.Amount, p.Detail)
	}
	if s.Price.Text != "" {
		writtenPrice(line, s)
	}
	writtenPlatform(line, s.Platform)
	for _, q := range s.FindOut {
		line("find out %s | %s | %v", q.At, q.Words, q.Rules)
	}
	for _, a := range s.Safety {
		line("safety %s%s %s %s | %s %s | %s | %s | %v", strings.Join(append([]string{a.ID}, a.Also...), "+"), onDemand(a), a.Severity, a.At, a.Words, a.Decides, a.Source, a.Jurisdiction, a.Figures)
		if a.Working != "" || len(a.Bites) > 0 {
			line("  by %s %v", a.Working, a.Bites)
		}
	}
	for _, d := range s.Drawings {
		line("drawing %s | %s | %s | %s | %s", d.ID, d.Layer, d.Looking, d.Shows, d.Title)
	}
	return b.String()
}

// onDemand marks a note that is folded away.
func onDemand(a sheet.Advice) string {
	if a.OnDemand {
		return " (on demand)"
	}
	return ""
}
