package bundle

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// switchedOff is a place in Go's own sources that says whether a thing is on
// which can never be on in the engine: with the answer written there, the compiler
// leaves the thing out, and every question whether it is on.
type switchedOff struct{ file, was, is string }

// never are the places, as go1.26 has them:
//
//   - the execution tracer: only runtime.StartTrace starts it, which only
//     runtime/trace calls;
//   - the metrics: registered by settings of GODEBUG that differ from the usual,
//     for runtime/metrics to read;
//   - what other settings of GODEBUG have the runtime print, and patterns in them.
//     The page gives the engine an empty environment;
//   - stack traces: they are empty in any case, since the tables have no names
//     (slim).
var never = []switchedOff{
	{"runtime/traceruntime.go", "return trace.enabled\n", "return false\n"},
	{"runtime/traceruntime.go", "return trace.enabledWithAllocFree\n", "return false\n"},
	{"runtime/traceruntime.go", "return trace.shutdown.Load()\n", "return false\n"},
	{"runtime/metrics.go", "func godebug_registerMetric(name string, read func() uint64) {\n", "func godebug_registerMetric(name string, read func() uint64) {\n\treturn\n"},
	{"runtime/proc.go", "func schedtrace(detailed bool) {\n", "func schedtrace(detailed bool) {\n\treturn\n"},
	{"runtime/mcheckmark.go", "func checkFinalizersAndCleanups() {\n", "func checkFinalizersAndCleanups() {\n\treturn\n"},
	{"runtime/traceback.go", "func traceback(pc, sp, lr uintptr, gp *g) {\n", "func traceback(pc, sp, lr uintptr, gp *g) {\n\treturn\n"},
	{"runtime/traceback.go", "func tracebackothers(me *g) {\n", "func tracebackothers(me *g) {\n\treturn\n"},
	{"internal/godebug/godebug.go", "if v.bisect != nil && !v.bisect.Stack(&stderr) {\n", "if false {\n"},
	{"internal/godebug/godebug.go", "v.bisect, _ = bisect.New(arg[j+1:])\n", "v.bisect = nil\n"},
}

// overlay writes the sources with everything of never switched off into a folder,
// and the file that go build takes them by.
func (t Toolchain) overlay(folder string) (string, error) {
	texts := map[string]string{}
	for _, s := range never {
		path := filepath.Join(t.Root, "src", filepath.FromSlash(s.file))
		if texts[path] == "" {
			text, err := os.ReadFile(path)
			if err != nil {
				return "", fmt.Errorf("a source of %s: %w", t.Version, err)
			}
			texts[path] = string(text)
		}
		if n := strings.Count(texts[path], s.was); n != 1 {
			return "", fmt.Errorf("%s of %s says %q %d times, not once", s.file, t.Version, s.was, n)
		}
		texts[path] = strings.Replace(texts[path], s.was, s.is, 1)
	}
	replaced := map[string]string{}
	for path, text := range texts {
		replaced[path] = filepath.Join(folder, fmt.Sprintf("%d-%s", len(replaced), filepath.Base(path)))
		if err := os.WriteFile(replaced[path], []byte(text), 0o600); err != nil {
			return "", err
		}
	}
	list, err := json.Marshal(map[string]any{"Replace": replaced})
	if err != nil {
		return "", err
	}
	name := filepath.Join(folder, "overlay.json")
	return name, os.WriteFile(name, list, 0o600)
}
