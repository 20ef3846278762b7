package bundle

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// Licences is the terms of everything that is compiled into the engine: Go
// itself, and each module that the package at path (as "./wasm") needs for the
// browser. They ask to go along with every copy, so they lie beside the page
// and inside the single file.
func (t Toolchain) Licences(dir, path string) (string, error) {
	own, err := licenceIn(t.Root)
	if err != nil {
		return "", err
	}
	text := "The licences of what is inside the engine of this page.\n" + chapter("Go, its runtime and standard library", own)
	modules, err := modulesOf(dir, path)
	if err != nil {
		return "", err
	}
	for _, m := range modules {
		terms, err := licenceIn(m.folder)
		if err != nil {
			return "", err
		}
		text += chapter(m.path, terms)
	}
	return text, nil
}

func chapter(name, terms string) string {
	line := strings.Repeat("-", 72)
	return "\n" + line + "\n" + name + "\n" + line + "\n\n" + strings.TrimSpace(terms) + "\n"
}

type module struct{ path, folder string }

// modulesOf is the modules of others that the package is made of, by name.
func modulesOf(dir, path string) ([]module, error) {
	command := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}\t{{.Dir}}{{end}}{{end}}", path)
	command.Dir = dir
	command.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := command.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var found []module
	for line := range strings.Lines(string(out)) {
		if name, folder, ok := strings.Cut(strings.TrimSpace(line), "\t"); ok {
			found = append(found, module{name, folder})
		}
	}
	slices.SortFunc(found, func(a, b module) int { return strings.Compare(a.path, b.path) })
	return slices.Compact(found), nil
}

// licenceIn is the terms kept at the top of a folder. A module without any may
// not be given away, so that is an error.
func licenceIn(folder string) (string, error) {
	for _, pattern := range []string{"LICENSE*", "LICENCE*", "COPYING*"} {
		names, err := filepath.Glob(filepath.Join(folder, pattern))
		if err != nil {
			return "", err
		}
		if len(names) > 0 {
			terms, err := os.ReadFile(names[0])
			return strings.ReplaceAll(string(terms), "\r\n", "\n"), err
		}
	}
	return "", fmt.Errorf("no licence in %s", folder)
}
