package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"ceilingwright/core/safety"
)

// rulesCommand prints the table of safety rules as Markdown, for a reviewer who
// knows the regulations and no Go.
func rulesCommand(arguments []string) error {
	if len(arguments) > 0 {
		return errors.New("use: rules")
	}
	return writeRules(os.Stdout, safety.Table())
}

// jurisdictions is whose a rule is, in words.
var jurisdictions = map[string]string{
	"all": "anywhere", "US": "United States", "UK": "United Kingdom", "EU": "European Union", "UK and EU": "United Kingdom and European Union",
}

func writeRules(w io.Writer, rows []safety.Row) error {
	p := &printer{w: w}
	// What the country calls a thing is an amount to who reads the table.
	plain := strings.NewReplacer("{~", "{").Replace
	p.f("# Safety rules\n\n")
	p.f("One entry is one rule: when it is told, how heavily it weighs (stop, caution or note), whose rule it is, its words with who has the last word, the numbers it went by, where in the work it is seen too, what it is told with, the question that stands in its place while nobody has answered, and where it comes from. Amounts stand in braces: the sheet puts in those of the job. Where the country is not known every rule is read, and of those about one subject only the most severe is told. What is marked “from memory” or “seen in a secondary copy” has to be checked before anybody relies on it. This list is printed by `go run ./build rules` from `core/safety/rules*.go`, where it can be corrected.\n")
	section := ""
	for _, r := range rows {
		if r.Section != section {
			section = r.Section
			p.f("\n## %s\n", section)
		}
		p.f("\n### %s\n\n", r.ID)
		p.f("- **%s**, %s", r.Severity, jurisdictions[r.Jurisdiction])
		if r.Subject != "" {
			p.f(", subject “%s”", r.Subject)
		}
		p.f("\n- When: %s\n- Words: %s *%s*\n", r.When, plain(r.Words), r.Decides)
		if r.Working != "" {
			p.f("- By: %s\n", plain(r.Working))
		}
		if len(r.Bites) > 0 {
			p.f("- Seen too in: %s\n", bites(r.Bites))
		}
		p.telling(r)
		p.f("- Source: %s\n", r.Source)
	}
	return p.err
}

// telling is how a rule is told: with which others, as a question, on demand.
func (p *printer) telling(r safety.Row) {
	switch {
	case r.With != "" && r.Adds != "":
		p.f("- Told with: “%s”, behind another as: %s\n", r.With, r.Adds)
	case r.With != "":
		p.f("- Told with: “%s”, and behind another in no words of its own\n", r.With)
	}
	if r.Asks != "" {
		p.f("- Asks: %s\n", r.Asks)
	}
	if r.OnDemand {
		p.f("- On demand\n")
	}
}

// bites are the parts of the work in which a rule is seen too, in words.
func bites(blocks []safety.Block) string {
	words := make([]string, len(blocks))
	for i, block := range blocks {
		words[i] = string(block)
	}
	return strings.Join(words, ", ")
}

// printer writes until the first error, and keeps it.
type printer struct {
	w   io.Writer
	err error
}

func (p *printer) f(format string, values ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format, values...)
	}
}
