package main

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"

	"ceilingwright/core"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// sheetOptions is what `sheet` was asked for.
type sheetOptions struct {
	plan    string // path, "-" for standard input
	json    bool
	drawing bool
	which   string // id of the drawing, "" for the first
	working bool
	csv     bool
	comma   bool // a decimal comma in the table
	ics     bool
	client  bool // the client's copy of the plan, as JSON
}

const sheetUse = `use: sheet PLAN.json [-json | -drawing | -drawing=ID | -csv | -csv=comma | -ics | -client] [-working]
-csv is the shopping list for a spreadsheet, with a decimal comma if asked
-ics is the days for a calendar program
-client is the plan as a client may have it: no rates, the price as quoted today
PLAN.json may be - for standard input`

// parseSheetOptions reads the arguments by hand, since flags may stand before
// or after the plan.
func parseSheetOptions(arguments []string) (sheetOptions, error) {
	var o sheetOptions
	for _, a := range arguments {
		name, value, given := strings.Cut(strings.TrimPrefix(a, "-"), "=")
		switch {
		case a == "-" || !strings.HasPrefix(a, "-"):
			if o.plan != "" {
				return o, fmt.Errorf("one plan at a time: %s or %s\n%s", o.plan, a, sheetUse)
			}
			o.plan = a
		case name == "json" && !given:
			o.json = true
		case name == "working" && !given:
			o.working = true
		case name == "csv" && (!given || value == "comma"):
			o.csv, o.comma = true, given
		case name == "ics" && !given:
			o.ics = true
		case name == "client" && !given:
			o.client = true
		case name == "drawing":
			o.drawing, o.which = true, value
		default:
			return o, fmt.Errorf("no flag %s\n%s", a, sheetUse)
		}
	}
	if o.plan == "" {
		return o, errors.New(sheetUse)
	}
	if count(o.json, o.drawing, o.csv, o.ics, o.client) > 1 {
		return o, errors.New("-json, -drawing, -csv, -ics and -client give one thing each: choose one")
	}
	return o, nil
}

// count is how many are true.
func count(asked ...bool) (n int) {
	for _, is := range asked {
		if is {
			n++
		}
	}
	return n
}

// sheetCommand prints the sheet of one plan. It fails where the plan was
// refused whole; a plan with problems in some blanks still gives its sheet.
func sheetCommand(arguments []string) error {
	o, err := parseSheetOptions(arguments)
	if err != nil {
		return err
	}
	plan, err := readPlan(o.plan)
	if err != nil {
		return err
	}
	if o.csv {
		return printTable(os.Stdout, plan, o.comma)
	}
	if o.ics {
		return printCalendar(os.Stdout, plan, time.Now())
	}
	if o.client {
		return printClient(os.Stdout, plan, time.Now())
	}
	return printSheet(os.Stdout, core.Compute(plan), o)
}

func readPlan(path string) ([]byte, error) {
	if path == "-" {
		return io.ReadAll(os.Stdin)
	}
	return os.ReadFile(path)
}

func printSheet(out io.Writer, answer []byte, o sheetOptions) error {
	var s sheet.Sheet
	if err := json.Unmarshal(answer, &s); err != nil {
		return fmt.Errorf("the engine's answer: %w", err)
	}
	if o.drawing {
		drawing, err := pick(s.Drawings, o.which)
		if err != nil {
			return err
		}
		_, err = fmt.Fprintln(out, drawing.SVG)
		return err
	}
	text := string(answer) + "\n"
	if !o.json {
		text = sheetText(s, o.working)
	}
	if _, err := io.WriteString(out, text); err != nil {
		return err
	}
	return refusal(s.Problems)
}

// printTable prints the shopping list for a spreadsheet, and fails where the plan
// was refused whole.
func printTable(out io.Writer, plan []byte, comma bool) error {
	if _, err := out.Write(core.Shopping(plan, comma)); err != nil {
		return err
	}
	return refusal(core.SheetOf(plan).Problems)
}

// printCalendar prints the days for a calendar program, and fails where there
// are none.
func printCalendar(out io.Writer, plan []byte, now time.Time) error {
	text := core.Calendar(plan, now.UTC().Format("20060102T150405Z"))
	if len(text) == 0 {
		return errors.New("this plan gives no days: it needs days.start, and what -json says of its problems")
	}
	_, err := out.Write(text)
	return err
}

// printClient prints the plan as a client may have it, quoted today.
func printClient(out io.Writer, plan []byte, now time.Time) error {
	copied := core.Quoted(plan, now.Format(time.DateOnly))
	if len(copied) == 0 {
		return cmp.Or(refusal(core.SheetOf(plan).Problems), errors.New("this day is none that can be quoted on"))
	}
	_, err := out.Write(append(copied, '\n'))
	return err
}

// pick finds a drawing by its id, or takes the first.
func pick(drawings []sheet.Drawing, id string) (sheet.Drawing, error) {
	if len(drawings) == 0 {
		return sheet.Drawing{}, errors.New("this plan gives no drawing")
	}
	if id == "" {
		return drawings[0], nil
	}
	var ids []string
	for _, d := range drawings {
		if d.ID == id {
			return d, nil
		}
		ids = append(ids, d.ID)
	}
	return sheet.Drawing{}, fmt.Errorf("no drawing %q; there are %s", id, strings.Join(ids, ", "))
}

// refusal is the problem that stopped the whole plan, if one did.
func refusal(problems []problem.Problem) error {
	for _, p := range problems {
		if p.At == "" && p.Severity == problem.Stop {
			return errors.New("the plan was refused: " + p.What)
		}
	}
	return nil
}

// paper writes the lines of a sheet.
type paper struct{ strings.Builder }

func (p *paper) line(indent int, parts ...string) {
	text := strings.TrimSpace(strings.Join(parts, ""))
	if text != "" {
		p.WriteString(strings.Repeat("  ", indent) + text + "\n")
	}
}

// block starts a part of the sheet, unless it would be empty.
func (p *paper) block(title string, entries int) bool {
	if entries > 0 {
		p.WriteString("\n" + strings.ToUpper(title) + "\n")
	}
	return entries > 0
}

// sheetText lays the sheet out as plain text, in the order of the work.
func sheetText(s sheet.Sheet, working bool) string {
	p := &paper{}
	p.line(0, s.Plan.Title)
	p.problems(s.Problems)
	p.figures(s, working)
	p.settings(s.Choices)
	p.walls(s.Walls)
	p.corners(s.Corners)
	for _, l := range s.Layers {
		p.layer(l)
	}
	p.steps(s.Steps)
	if c := s.Climate; c.Text != "" && p.block("air on the day", 1) {
		p.line(1, c.Text)
		p.line(1, c.Drying)
	}
	if p.block("shopping", len(s.Shopping)) {
		for _, buy := range s.Shopping {
			p.line(1, buy.What, ": ", buy.Amount, note(buy.Detail), " ", buy.Cost)
		}
		if s.Bill.Sum != "" {
			p.sums("", []sheet.Total{s.Bill}, working)
		}
	}
	p.days(s.Days)
	p.price(s.Price, working)
	p.record(s.Record)
	p.platform(s.Platform)
	if s.Air.Text != "" && p.block("air", 1) {
		p.line(1, s.Air.Text)
	}
	p.limits(s.Limits)
	p.findOut(s.FindOut)
	p.safety(s.Safety)
	if p.block("drawings (print one with -drawing=ID)", len(s.Drawings)) {
		for _, d := range s.Drawings {
			p.line(1, d.ID, ": ", d.Title)
		}
	}
	return p.String()
}

// days are the tasks with the reasons for them, and what would save time.
func (p *paper) days(d sheet.Days) {
	if d.Text == "" || !p.block("days", 1) {
		return
	}
	p.line(1, d.Text)
	for _, t := range d.Tasks {
		labour := t.Labour
		if t.Kind != "work" {
			labour = "" // what dries is nobody's work
		}
		p.line(1, t.Day, " ", t.From, "–", t.To, "  ", t.Name, note(labour), "  ", t.Reason)
	}
	for _, text := range d.Saves {
		p.line(1, text)
	}
}

// platform is what to work from and why, what it has against what it needs, and
// how long anyone works overhead.
func (p *paper) platform(of sheet.Platform) {
	if of.Text == "" || !p.block("what to work from", 1) {
		return
	}
	p.line(1, of.Text)
	p.line(1, of.Why)
	for _, text := range of.Refused {
		p.line(1, text)
	}
	p.line(1, of.Hire)
	for _, c := range of.Checks {
		p.line(2, c.What, ": ", c.Verdict, ". ", c.Text)
	}
	for _, s := range of.Stations {
		p.line(2, s.Text)
	}
	for _, o := range of.Overhead {
		p.line(2, o.Day, ": overhead ", o.Text)
	}
}

// limits are what each label may hold of solvent, every source once at the end.
func (p *paper) limits(limits []sheet.VOCLine) {
	if !p.block("what labels may hold", len(limits)) {
		return
	}
	var sources []string
	for _, l := range limits {
		held := ""
		if l.Limit != "" {
			held = "holds " + cmp.Or(l.Holds, "not known") + ", at most " + l.Limit + ". "
		}
		p.line(1, l.Step, note(l.Category), ": ", held, l.Text)
		if l.Source != "" && !slices.Contains(sources, l.Source) {
			sources = append(sources, l.Source)
		}
	}
	for _, source := range sources {
		p.line(2, "source: ", source)
	}
}

// findOut is what nobody has said yet and safety turns on.
func (p *paper) findOut(questions []sheet.Question) {
	if !p.block("find out first", len(questions)) {
		return
	}
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
	if !p.block("safety notes", len(notes)) {
		return
	}
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
	if a.Working != "" {
		p.line(3, "here: ", a.Working)
	}
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

func (p *paper) problems(problems []problem.Problem) {
	if !p.block("to look at", len(problems)) {
		return
	}
	for _, one := range problems {
		p.line(1, string(one.Severity), " at ", place(one.At), ": ", one.What, " ", one.Do)
	}
}

func place(pointer string) string {
	if pointer == "" {
		return "the plan"
	}
	return pointer
}

func (p *paper) figures(s sheet.Sheet, working bool) {
	owners := owners(s)
	block, owner := "", ""
	for _, f := range s.Figures {
		if f.Block != block {
			block = f.Block
			p.block(block, 1)
		}
		if owners[f.ID] != owner {
			owner = owners[f.ID]
			p.line(1, owner)
		}
		p.line(1, f.Label, ": ", f.Text, note(f.Other), "  [", f.ID, "]")
		if working {
			p.line(2, f.Working.Rule)
			p.line(2, f.Working.Sum)
			p.line(2, f.Working.Source)
		}
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

// note puts a remark in brackets, or nothing where there is none.
func note(remark string) string {
	if remark == "" {
		return ""
	}
	return " (" + remark + ")"
}

func (p *paper) settings(choices []sheet.Choice) {
	if !p.block("where the mask can go", len(choices)) {
		return
	}
	for _, c := range choices {
		taken := ""
		if c.Taken {
			taken = " (chosen)"
		}
		if c.Refused != "" {
			p.line(1, c.Title, taken, ": ", c.Refused)
			continue
		}
		p.line(1, c.Title, taken, ": AB ", c.Borders.AB, ", BC ", c.Borders.BC, ", CD ", c.Borders.CD, ", DA ", c.Borders.DA)
	}
}

func (p *paper) walls(walls []sheet.Wall) {
	for _, w := range walls {
		p.block(w.Title, 1)
		for _, m := range w.Marks {
			layer := ""
			if m.Layer != "" {
				layer = m.Layer + ", "
			}
			p.line(1, m.Text, " ", note(m.Other), "  ", layer, m.Label, hidden(m.Hides))
		}
	}
}

func hidden(hides string) string {
	if hides == "" {
		return ""
	}
	return "; rounding hides " + hides
}

func (p *paper) corners(corners []sheet.Corner) {
	if !p.block("to prove the corners square", len(corners)) {
		return
	}
	for _, c := range corners {
		p.line(1, c.Text)
	}
}

func (p *paper) layer(l sheet.Layer) {
	p.block(l.Name, 1)
	p.line(1, l.Advice)
	if l.Restart.Text != "" {
		p.line(1, l.Restart.Text)
	}
	for _, h := range l.Order {
		p.line(1, fmt.Sprint(h.N), ". ", h.Text)
	}
	if l.Route != "" {
		p.line(1, l.Route)
	}
	for _, s := range l.Stations {
		p.line(1, "position ", fmt.Sprint(s.N), ": ", s.Text, " Hung from there: ", strings.Join(s.Panels, ", "), ".")
	}
	for _, s := range l.Seams {
		p.line(1, "seam ", s.Seam, ": ", s.Length)
	}
}

func (p *paper) price(price sheet.Price, working bool) {
	if !p.block("price", len(price.Text)+len(price.Lines)+len(price.Range)) {
		return
	}
	p.line(1, price.Text)
	p.line(1, price.Quoted)
	for _, l := range price.Lines {
		sum := l.Sum
		if l.Rate != "" {
			sum = l.Amount + " at " + l.Rate + " = " + sum
		}
		p.line(1, l.Group, ": ", l.What, ": ", sum)
		p.made(l.Working, working)
	}
	p.sums("", price.Totals, working)
	p.sums("the client's copy: ", price.Client, working)
	p.sums("to be paid: ", price.Stages, working)
	if price.Range != "" {
		p.line(1, "rough price of a first visit: ", price.Range)
	}
	for _, w := range price.WhatIf {
		p.line(1, "what if: ", w.What, ": ", w.Sum, note(w.Change), " ", w.Text)
	}
}

func (p *paper) sums(before string, sums []sheet.Total, working bool) {
	for _, t := range sums {
		p.line(1, before, t.What, ": ", t.Sum, note(t.Text))
		p.made(t.Working, working)
	}
}

// made is what a sum of money is made of, where workings are asked for.
func (p *paper) made(sum string, working bool) {
	if working {
		p.line(2, sum)
	}
}

// record prints what is known: what is still to be written in has no place in
// plain text.
func (p *paper) record(record sheet.Record) {
	if !p.block("finish record", len(record.Lines)) {
		return
	}
	p.line(1, record.Text)
	for _, l := range record.Lines {
		p.line(1, l.Step, ": ", strings.Join(slices.DeleteFunc([]string{l.Where, l.Area, l.Colour, l.Mix, l.Leaf, l.Batch, l.Date}, func(text string) bool { return text == "" }), "; "))
	}
}

func (p *paper) steps(steps []sheet.Step) {
	if !p.block("finish", len(steps)) {
		return
	}
	for _, s := range steps {
		p.line(1, s.Name, ": ", s.Buy, note(s.LeftOver))
		for _, n := range s.Notes {
			p.line(2, n)
		}
		p.mix("mix", s.Mix)
		p.mix("sample board", s.Sample)
		for _, c := range s.Sections {
			p.line(2, "section ", strconv.Itoa(c.N), note(strings.Join(c.Panels, " ")), ": ", c.Text)
		}
	}
}

// mix are the parts of a mix as they are measured, with what they should be.
func (p *paper) mix(name string, lines []sheet.MixLine) {
	for _, m := range lines {
		p.line(2, name, ", ", m.Name, ": ", m.Measured, note(m.Exact), ", ", m.Error)
	}
}
