// Command bench measures what the project promises about size and speed and
// prints one table: what was measured, the figure, the goal, and whether it is
// met. It needs Chromium and Node, as the tests do. Every ratio is taken on
// one machine in one run, so that it means the same on a fast and a slow one.
//
// A goal that is missed is printed as "over"; a figure that could not be
// measured is printed with the reason, and the command then fails.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"text/tabwriter"

	"ceilingwright/build/bundle"
	"ceilingwright/build/machine"
)

// row is one line of the table.
type row struct {
	what   string
	figure string
	goal   string
	met    bool
}

// bench is what the measurements share.
type bench struct {
	root      string
	toolchain bundle.Toolchain
	output    bundle.Output
	bare      []byte // the bare runtime: an empty program, built with the same flags, as linked
	plan      string // 2 layers of 30 panels, 10 steps
	job       string // the same with its days and its price
	repeats   int    // recomputes of the memory row
}

// measurement gives the rows of one question.
type measurement struct {
	name string
	run  func(context.Context, *bench) ([]row, error)
}

func measurements() []measurement {
	return []measurement{
		{"size", sizes},
		{"boot", boots},
		{"recompute", recomputes},
		{"job", job},
		{"cans", cans},
		{"spreadsheet", spreadsheet},
		{"layout", layout},
		{"growth", growth},
		{"keys", keys},
		{"start", starts},
		{"phone", slowPhone},
		{"memory", memory},
		{"same", sameBytes},
	}
}

func main() {
	only := flag.String("only", "", "measure these alone, by name, separated by commas")
	repeats := flag.Int("repeats", 100_000, "recomputes of the memory row")
	flag.Parse()
	if err := run(*only, *repeats); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(only string, repeats int) error {
	b, err := prepare(repeats)
	if err != nil {
		return err
	}
	chosen, err := choose(only)
	if err != nil {
		return err
	}
	table := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "measured\tfigure\tgoal\t")
	var failed error
	for _, m := range chosen {
		fmt.Fprintf(os.Stderr, "measuring %s\n", m.name)
		rows, err := m.run(context.Background(), b)
		if err != nil {
			failed = errors.Join(failed, fmt.Errorf("%s: %w", m.name, err))
			fmt.Fprintf(table, "%s\tnot measured\t\t\n", m.name)
			continue
		}
		for _, r := range rows {
			fmt.Fprintf(table, "%s\t%s\t%s\t%s\n", r.what, r.figure, r.goal, verdict(r))
		}
	}
	return errors.Join(table.Flush(), failed)
}

func verdict(r row) string {
	switch {
	case r.goal == "":
		return ""
	case r.met:
		return "ok"
	}
	return "over"
}

// choose picks the measurements named in a list, or all of them.
func choose(only string) ([]measurement, error) {
	if only == "" {
		return measurements(), nil
	}
	var chosen []measurement
	for name := range strings.SplitSeq(only, ",") {
		found := false
		for _, m := range measurements() {
			if m.name == name {
				chosen, found = append(chosen, m), true
			}
		}
		if !found {
			return nil, fmt.Errorf("no measurement %q", name)
		}
	}
	return chosen, nil
}

// prepare builds the page and the bare runtime and reads the plan.
func prepare(repeats int) (*bench, error) {
	root, err := bundle.Root()
	if err != nil {
		return nil, err
	}
	for _, tool := range []machine.Tool{machine.Chromium(), machine.Node(), machine.NPM()} {
		if _, err := tool.Ensure(os.Stderr); err != nil {
			return nil, err
		}
	}
	b := &bench{root: root, repeats: repeats}
	if b.toolchain, err = bundle.ToolchainAt(root); err != nil {
		return nil, err
	}
	if b.output, err = bundle.Build(root); err != nil {
		return nil, err
	}
	if b.bare, err = bareRuntime(b.toolchain); err != nil {
		return nil, err
	}
	if b.plan, err = planNamed(root, "bench"); err != nil {
		return nil, err
	}
	b.job, err = planNamed(root, "job")
	return b, err
}

func planNamed(root, name string) (string, error) {
	text, err := os.ReadFile(filepath.Join(root, "testdata", "plans", name+".json"))
	return string(text), err
}

// bareRuntime compiles a program that does nothing: what Go itself costs. It is
// left as the linker wrote it, unlike the engine: a yardstick that shrank with
// what it measures would show nothing.
func bareRuntime(toolchain bundle.Toolchain) ([]byte, error) {
	folder, err := os.MkdirTemp("", "bare")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	for name, text := range map[string]string{
		"go.mod":  "module bare\n\ngo 1.26\n",
		"main.go": "package main\n\nfunc main() {}\n",
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			return nil, err
		}
	}
	return toolchain.Linked(folder, ".")
}
