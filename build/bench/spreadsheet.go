package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"

	"ceilingwright/build/machine"
	"ceilingwright/core"
)

// spreadsheet compares our engine with a general spreadsheet engine that
// works out the same figures, both under Node.
func spreadsheet(_ context.Context, b *bench) ([]row, error) {
	folder := filepath.Join(b.root, "build", "bench", "spreadsheet")
	if err := fetch(folder); err != nil {
		return nil, err
	}
	engine, found := b.output.Find("assets/engine-", ".wasm")
	if !found {
		return nil, fmt.Errorf("the build has no engine")
	}
	path := filepath.Join(os.TempDir(), filepath.Base(engine.Path))
	if err := os.WriteFile(path, engine.Content, 0o644); err != nil {
		return nil, err
	}
	defer os.Remove(path)
	got, err := race(b, folder, path)
	if err != nil {
		return nil, err
	}
	ratio := got.Built / got.Ours
	return []row{
		{"same figures in a spreadsheet, set up from the plan ÷ ours",
			fmt.Sprintf("%.1f (%.1f ms ÷ %.2f ms, %d figures compared)", ratio, got.Built, got.Ours, got.Figures), "≥ 10", ratio >= 10},
		{"same, spreadsheet set up before and one side changed ÷ ours",
			fmt.Sprintf("%.1f (%.2f ms ÷ %.2f ms)", got.Changed/got.Ours, got.Changed, got.Ours), "", true},
	}, nil
}

// fetch installs the spreadsheet engine, unless it is there.
func fetch(folder string) error {
	if _, err := os.Stat(filepath.Join(folder, "node_modules", "hyperformula")); err == nil {
		return nil
	}
	npm, err := machine.NPM().Find()
	if err != nil {
		return err
	}
	command := exec.Command(npm, "ci", "--no-audit", "--no-fund", "--ignore-scripts")
	command.Dir, command.Stdout, command.Stderr = folder, os.Stderr, os.Stderr
	return command.Run()
}

// outcome is what compare.js prints: times in ms.
type outcome struct {
	Figures              int
	Built, Changed, Ours float64
}

func race(b *bench, folder, engine string) (outcome, error) {
	node, err := machine.Node().Find()
	if err != nil {
		return outcome{}, err
	}
	input, err := json.Marshal(map[string]any{"plan": b.plan, "sheet": json.RawMessage(core.Compute([]byte(b.plan)))})
	if err != nil {
		return outcome{}, err
	}
	command := exec.Command(node, "compare.js", filepath.Join(b.toolchain.Root, "lib", "wasm", "wasm_exec.js"), engine)
	command.Dir, command.Stdin, command.Stderr = folder, bytes.NewReader(input), os.Stderr
	out, err := command.Output()
	if err != nil {
		return outcome{}, fmt.Errorf("compare.js: %w", err)
	}
	var got outcome
	return got, json.Unmarshal(out, &got)
}
