package main

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
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
func refusal(problems []sheet.Problem) error {
	for _, p := range problems {
		if p.At == "" && p.Severity == problem.Stop {
			return errors.New("the plan was refused: " + p.What)
		}
	}
	return nil
}
