package bundle

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"ceilingwright/build/bundle/slim"
)

// Toolchain is the Go that builds the engine. Its glue (wasm_exec.js) talks to
// an engine of the same version only, so both are taken from it and from
// nowhere else.
type Toolchain struct {
	Version string // such as go1.26.8
	Root    string // GOROOT
}

// ToolchainAt asks the go command which toolchain it uses in dir, which a
// go.mod there may decide.
func ToolchainAt(dir string) (Toolchain, error) {
	command := exec.Command("go", "env", "GOVERSION", "GOROOT")
	command.Dir = dir
	out, err := command.Output()
	if err != nil {
		return Toolchain{}, fmt.Errorf("go env: %w", err)
	}
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	if len(lines) != 2 {
		return Toolchain{}, fmt.Errorf("go env answered %q, want a version and a folder", out)
	}
	return Toolchain{Version: strings.TrimSpace(lines[0]), Root: strings.TrimSpace(lines[1])}, nil
}

// Glue is the JavaScript that starts an engine of this toolchain.
func (t Toolchain) Glue() (string, error) {
	text, err := os.ReadFile(filepath.Join(t.Root, "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return "", fmt.Errorf("the glue of %s: %w", t.Version, err)
	}
	return string(text), nil
}

// engineFlags make the same source give the same bytes in any folder
// (-trimpath, no version control stamp) and leave out the symbol table. The
// bench builds the bare runtime with them too.
//
// Without inlining the compressed engine is some 160 kB smaller. It costs no
// time that can be measured where code runs a few times in a sheet: all of
// ours but the numbers, which everything counts with, and of Go's own what does
// not work on every byte. Everywhere it would be a fifth slower.
func engineFlags() []string {
	flags := []string{"-trimpath", "-buildvcs=false", "-ldflags=-s -w"}
	for _, cold := range []string{
		"ceilingwright/...", "github.com/hack-pad/safejs/...", "github.com/shopspring/decimal", "math/big",
		"errors", "fmt", "os", "reflect", "slices", "strconv", "strings", "sync", "syscall", "syscall/js", "time",
		"internal/abi", "internal/bisect", "internal/godebug", "internal/poll", "internal/reflectlite", "internal/strconv", "internal/sync",
	} {
		flags = append(flags, "-gcflags="+cold+"=-l")
	}
	// Of several patterns that a package matches, go build takes the last.
	flags = append(flags, "-gcflags=ceilingwright/core/measure=")
	return flags
}

// Engine compiles the package at path (as "./wasm") in dir to WebAssembly, without
// what is never on in it, and makes it small.
func (t Toolchain) Engine(dir, path string) ([]byte, error) {
	if err := slim.CheckVersion(t.Version); err != nil {
		return nil, err // before the compiler is waited for
	}
	folder, err := os.MkdirTemp("", "sources")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	overlay, err := t.overlay(folder)
	if err != nil {
		return nil, err
	}
	linked, err := t.link(dir, path, "-overlay="+overlay)
	if err != nil {
		return nil, err
	}
	return slim.Rewrite(linked, t.Version)
}

// Linked compiles the package at path in dir to WebAssembly and leaves it as the
// linker wrote it: a panic in it says where it was.
func (t Toolchain) Linked(dir, path string) ([]byte, error) { return t.link(dir, path) }

func (t Toolchain) link(dir, path string, more ...string) ([]byte, error) {
	folder, err := os.MkdirTemp("", "engine")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	target := filepath.Join(folder, "engine.wasm")
	arguments := slices.Concat([]string{"build"}, engineFlags(), more, []string{"-o", target, path})
	command := exec.Command("go", arguments...)
	command.Dir = dir
	// GOWASM switches instructions on and off, so it is pinned like the flags.
	command.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "GOWASM=")
	if out, err := command.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("go build %s for the browser: %w\n%s", path, err, out)
	}
	engine, err := os.ReadFile(target)
	if err != nil {
		return nil, err
	}
	return engine, t.checkEngine(engine)
}

// checkEngine refuses an engine of another Go version than the glue. The
// version is in every Go program as text.
func (t Toolchain) checkEngine(engine []byte) error {
	if !bytes.Contains(engine, []byte(t.Version)) {
		return fmt.Errorf("the engine was not built by %s, whose glue would start it", t.Version)
	}
	return nil
}
