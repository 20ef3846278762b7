package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"ceilingwright/build/bundle"
	"ceilingwright/build/machine"
)

// browserTests is the package that needs a browser. It runs alone and last, so
// that compiling the others does not slow its pages.
const browserTests = "ceilingwright/build/browsertest"

// tally counts what ran. A check that is no Go test (formatting, types) counts
// as one.
type tally struct{ passed, failed, skipped int }

// testCommand sets up what the tests need, runs all of them and ends with a
// line of counts. It goes on after a failure, so that one run shows them all.
func testCommand(arguments []string) error {
	if len(arguments) > 0 {
		return errors.New("test takes no arguments: it runs everything; for a part use go test")
	}
	root, err := bundle.Root()
	if err != nil {
		return err
	}
	if err := os.Chdir(root); err != nil {
		return err
	}
	count := tally{}
	for _, group := range stages() {
		count.add(runBeside(os.Stdout, group))
	}
	fmt.Printf("%d passed, %d failed", count.passed, count.failed)
	if count.skipped > 0 {
		fmt.Printf(", %d skipped", count.skipped)
	}
	fmt.Println()
	if count.failed > 0 {
		return errors.New("the tests failed")
	}
	return nil
}

func (t *tally) add(more tally) {
	t.passed += more.passed
	t.failed += more.failed
	t.skipped += more.skipped
}

// stage is a part of the run. It writes what it has to say to out.
type stage struct {
	name string
	run  func(out io.Writer, count *tally) error
}

// stages are what is run, one group after the other, those of a group side by side:
// each has times when it keeps one processor busy and no more.
func stages() [][]stage {
	return [][]stage{
		{{"what the tests need", setUp}},
		{{"format", checked(formatted)}, {"vet", checked(vetted)}, {"types of the page", checked(typed)}},
		{{"tests", nativeTests}, {"tests of the core as WebAssembly", wasmTests}},
		{{"tests in the browser", inBrowser}},
	}
}

// lockedWriter takes from one at a time: a command has two ways to write.
type lockedWriter struct {
	lock sync.Mutex
	to   io.Writer
}

func (w *lockedWriter) Write(text []byte) (int, error) {
	w.lock.Lock()
	defer w.lock.Unlock()
	return w.to.Write(text)
}

// runBeside runs stages side by side. What they say comes whole, one after the
// other: of the first as it says it, of the others once those before them are done.
func runBeside(out io.Writer, group []stage) (count tally) {
	said := make([]bytes.Buffer, len(group))
	counts := make([]tally, len(group))
	took := make([]time.Duration, len(group))
	done := make([]chan struct{}, len(group))
	for i, s := range group {
		done[i] = make(chan struct{})
		to := &lockedWriter{to: &said[i]}
		if i == 0 {
			to.to = out
			fmt.Fprintf(out, "== %s\n", s.name)
		}
		go func() {
			defer close(done[i])
			started := time.Now()
			if err := s.run(to, &counts[i]); err != nil {
				counts[i].failed++
				fmt.Fprintf(to, "FAIL %s: %v\n", s.name, err)
			}
			took[i] = time.Since(started)
		}()
	}
	for i, s := range group {
		<-done[i]
		if i > 0 {
			fmt.Fprintf(out, "== %s\n%s", s.name, said[i].String())
		}
		fmt.Fprintf(out, "   %.0f s\n", took[i].Seconds())
		count.add(counts[i])
	}
	return count
}

// checked is a stage that counts as one test.
func checked(check func(io.Writer) error) func(io.Writer, *tally) error {
	return func(out io.Writer, count *tally) error {
		if err := check(out); err != nil {
			return err
		}
		count.passed++
		return nil
	}
}

// setUp finds or installs the programs. One that cannot be had is a failure
// of the run, never a reason to skip.
func setUp(out io.Writer, _ *tally) error {
	var missing error
	for _, tool := range []machine.Tool{machine.Chromium(), machine.Display(), machine.Keys(), machine.Node(), machine.NPM()} {
		path, err := tool.Ensure(out)
		if err != nil {
			missing = errors.Join(missing, err)
			continue
		}
		fmt.Fprintf(out, "%s: %s\n", tool.Name, path)
	}
	if missing != nil {
		return missing
	}
	return fetchTools(out, filepath.Join("build", "judges"))
}

func formatted(io.Writer) error {
	out, err := exec.Command("gofmt", "-l", "core", "wasm", "build").CombinedOutput()
	if err != nil {
		return fmt.Errorf("gofmt: %w\n%s", err, out)
	}
	if len(out) > 0 {
		return fmt.Errorf("not as gofmt writes it:\n%s", out)
	}
	return nil
}

// vetted looks at the code twice: natively, and as the browser gets it.
func vetted(out io.Writer) error {
	if err := shown(out, exec.Command("go", "vet", "./...")); err != nil {
		return err
	}
	browser := exec.Command("go", "vet", "./wasm/...")
	browser.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	return shown(out, browser)
}

// shown runs a command with its output on ours.
func shown(out io.Writer, command *exec.Cmd) error {
	command.Stdout, command.Stderr = out, out
	if err := command.Run(); err != nil {
		return fmt.Errorf("%s: %w", strings.Join(command.Args, " "), err)
	}
	return nil
}

// typed checks the page's TypeScript. The bundler only strips types.
func typed(out io.Writer) error {
	if err := fetchTools(out, "site"); err != nil {
		return err
	}
	node, err := machine.Node().Find()
	if err != nil {
		return err
	}
	return shown(out, exec.Command(node, filepath.Join("site", "node_modules", "typescript", "bin", "tsc"), "--noEmit", "--project", "site"))
}

// fetchTools installs what a folder's package-lock.json names, unless it is
// there already: the note of the last install is a copy of the lock file.
func fetchTools(out io.Writer, folder string) error {
	lock, err := os.ReadFile(filepath.Join(folder, "package-lock.json"))
	if err != nil {
		return err
	}
	note := filepath.Join(folder, "node_modules", ".installed-lock.json")
	if last, err := os.ReadFile(note); err == nil && bytes.Equal(last, lock) {
		return nil
	}
	npm, err := machine.NPM().Find()
	if err != nil {
		return err
	}
	command := exec.Command(npm, "ci", "--no-audit", "--no-fund", "--ignore-scripts")
	command.Dir = folder
	if err := shown(out, command); err != nil {
		return err
	}
	return os.WriteFile(note, lock, 0o644)
}

func nativeTests(out io.Writer, count *tally) error {
	list, err := exec.Command("go", "list", "./...").Output()
	if err != nil {
		return fmt.Errorf("go list: %w", err)
	}
	var packages []string
	for _, name := range strings.Fields(string(list)) {
		if name != browserTests {
			packages = append(packages, name)
		}
	}
	return goTest(out, count, os.Environ(), packages...)
}

// wasmTests runs tests of the core once more as the browser will run it.
func wasmTests(out io.Writer, count *tally) error {
	toolchain, err := bundle.ToolchainAt(".")
	if err != nil {
		return err
	}
	starter := "-exec=" + filepath.Join(toolchain.Root, "lib", "wasm", "go_js_wasm_exec")
	environment := wasmEnvironment(os.Environ())
	return errors.Join(
		goTest(out, count, environment, append([]string{starter, "-skip=" + named(once)}, twice...)...),
		goTest(out, count, environment, starter, "-run="+named(golden), "./core"),
	)
}

// wasmEnvironment keeps what the go command needs. Go's glue gives a program
// 8 kB for its whole environment and stops where there is more.
func wasmEnvironment(all []string) []string {
	kept := []string{"GOOS=js", "GOARCH=wasm"}
	for _, v := range all {
		switch name, _, _ := strings.Cut(v, "="); name {
		case "PATH", "HOME", "TMPDIR", "GOCACHE", "GOPATH", "GOMODCACHE", "GOFLAGS", "GOPROXY", "GOSUMDB", "GONOSUMDB", "GOTOOLCHAIN":
			kept = append(kept, v)
		}
	}
	return kept
}

// inBrowser runs the browser's tests, never from the cache: it cannot see
// that the site's files have changed.
func inBrowser(out io.Writer, count *tally) error {
	if _, err := machine.Chromium().Find(); err != nil {
		return err
	}
	return goTest(out, count, os.Environ(), "-count=1", browserTests)
}

// goTest runs go test, prints what it prints without -v, and counts. Tests
// that fail are counted; the error is for a run that could not be made.
func goTest(out io.Writer, count *tally, environment []string, arguments ...string) error {
	// Go stops a package after ten minutes, which the browser's tests can take on
	// a slow or busy machine.
	command := exec.Command("go", append([]string{"test", "-json", "-timeout=30m"}, arguments...)...)
	command.Env = environment
	command.Stderr = out
	events, err := command.StdoutPipe()
	if err != nil {
		return err
	}
	if err := command.Start(); err != nil {
		return err
	}
	before := *count
	if err := readEvents(out, events, count); err != nil {
		return errors.Join(err, command.Wait())
	}
	err = command.Wait()
	switch {
	case err != nil && count.failed == before.failed:
		return fmt.Errorf("go test: %w", err) // it failed to build, or outside any test
	case count.passed == before.passed && count.failed == before.failed:
		return errors.New("go test ran no test")
	}
	return nil
}

// event is one line of go test -json (go doc test2json).
type event struct {
	Action, Package, Test, Output string
}

// readEvents prints the output of packages as it comes, that of a test only
// once it has failed, and counts tests.
func readEvents(out io.Writer, events io.Reader, count *tally) error {
	said := map[[2]string][]string{}
	lines := bufio.NewScanner(events)
	lines.Buffer(nil, 16<<20)
	for lines.Scan() {
		var e event
		if err := json.Unmarshal(lines.Bytes(), &e); err != nil {
			fmt.Fprintf(out, "%s\n", lines.Bytes()) // what go itself says on the way
			continue
		}
		key := [2]string{e.Package, e.Test}
		switch {
		case strings.HasSuffix(e.Action, "output"):
			if e.Test == "" {
				io.WriteString(out, packageOutput(e.Output))
			} else {
				said[key] = append(said[key], e.Output)
			}
		case e.Test == "":
		case e.Action == "fail":
			count.failed++
			io.WriteString(out, strings.Join(said[key], ""))
			delete(said, key)
		case e.Action == "pass":
			count.passed++
			delete(said, key)
		case e.Action == "skip":
			count.skipped++
			io.WriteString(out, strings.Join(said[key], ""))
			delete(said, key)
		}
	}
	return lines.Err()
}

// packageOutput leaves out the bare PASS that go test prints only with -v.
func packageOutput(line string) string {
	if line == "PASS\n" {
		return ""
	}
	return line
}
