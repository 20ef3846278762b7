package core_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// trade are the packages of the trade: whatever works a job out or tells it may use
// all of them.
var trade = []string{"core/measure", "core/sum", "core/words", "core/problem", "core/survey", "core/mask", "core/delivery", "core/setout", "core/hanging",
	"core/register", "core/mixing", "core/finish", "core/days", "core/air", "core/safety", "core/price", "core/plan"}

// mayImport is which packages of the engine each package may use. What is not
// written here is not allowed: the ladder is measure, then the trade, then the job,
// then how it is told, and nothing looks up.
var mayImport = map[string][]string{
	"core":             {"core/words", "core/jsondoc", "core/export", "core/measure", "core/plan", "core/problem", "core/job", "core/sheet", "core/tell"},
	"core/measure":     {},
	"core/words":       {"core/measure"},
	"core/sum":         {"core/measure", "core/words"},
	"core/problem":     {"core/words", "core/measure"},
	"core/jsondoc":     {},
	"core/survey":      {"core/words", "core/measure", "core/problem"},
	"core/mask":        {"core/words", "core/measure", "core/problem"},
	"core/setout":      {"core/sum", "core/words", "core/measure", "core/problem", "core/survey", "core/mask"},
	"core/hanging":     {"core/sum", "core/words", "core/measure", "core/problem", "core/survey", "core/mask"},
	"core/register":    {"core/words", "core/measure", "core/problem", "core/survey", "core/mask"},
	"core/delivery":    {"core/words", "core/measure", "core/problem", "core/mask"},
	"core/mixing":      {"core/words", "core/measure", "core/problem"},
	"core/finish":      {"core/words", "core/measure", "core/problem", "core/mixing"},
	"core/days":        {"core/words", "core/measure", "core/finish"},
	"core/air":         {"core/words", "core/measure", "core/problem"},
	"core/safety":      {"core/words", "core/measure", "core/problem", "core/air"},
	"core/price":       {"core/words", "core/measure", "core/problem"},
	"core/export":      {},
	"core/drawing":     {"core/measure"},
	"core/drawing/svg": {"core/measure", "core/drawing"},
	"core/plan": {"core/words", "core/jsondoc", "core/measure", "core/problem", "core/survey", "core/mask", "core/setout", "core/register",
		"core/mixing", "core/finish", "core/air", "core/safety", "core/price"},
	"core/job":       append(jobParts(), trade...),
	"core/sheet":     {"core/jsondoc", "core/problem", "core/words"},
	"core/tell/page": {"core/measure", "core/words", "core/sheet"},
	"core/draw":      append([]string{"core/job", "core/drawing", "core/drawing/svg"}, append(jobParts(), trade...)...),
	"core/tell": append([]string{"core/job", "core/sheet", "core/export", "core/drawing", "core/drawing/svg", "core/draw", "core/tell/page"},
		append(pagesTold(), append(jobParts(), trade...)...)...),
}

// partsOfJob are those of the work, each worked out by a package of its own from the
// plan and the parts before it, in the order of the work. None knows the job.
var partsOfJob = []string{"room", "layers", "setting", "hung", "meeting", "surface", "hours", "steps", "schedule", "pricing", "hazards"}

func jobParts() (parts []string) {
	for _, part := range partsOfJob {
		parts = append(parts, "core/job/"+part)
	}
	return parts
}

// toldPages are those of the sheet, each told by a package of its own from the job alone,
// in the order of the work: one may use what an earlier one says.
var toldPages = []string{"mask", "room", "setting", "hanging", "finish", "days", "record", "leaf", "shopping", "price", "safety", "overview"}

func pagesTold() (told []string) {
	for _, page := range toldPages {
		told = append(told, "core/tell/"+page)
	}
	return told
}

// allowed is what a package of the engine may import of the others; known tells that
// there is a rule for it.
func allowed(pkg string) (list []string, known bool) {
	told, parts := pagesTold(), jobParts()
	if i := slices.Index(told, pkg); i >= 0 {
		return slices.Concat([]string{"core/job", "core/sheet", "core/export", "core/tell/page"}, parts, told[:i], trade), true
	}
	if i := slices.Index(parts, pkg); i >= 0 {
		return slices.Concat(parts[:i], trade), true
	}
	list, known = mayImport[pkg]
	return list, known
}

// mayImportOutside is what the engine may use of the standard library and of
// others. It leaves out whatever knows a clock, a file, a network, a process or
// a random number. Reflection, which fmt has brought into the page already, serves to
// hold two findings of the job against each other and nothing else.
var mayImportOutside = []string{
	"cmp", "errors", "fmt", "math", "math/big", "math/bits", "slices", "strconv", "strings", "unicode", "unicode/utf16", "unicode/utf8",
	"github.com/shopspring/decimal",
}

const module = "ceilingwright/"

// importsOf is what the files of each package below core import, tests left
// out.
func importsOf(t *testing.T) map[string][]string {
	t.Helper()
	found := map[string][]string{}
	err := filepath.WalkDir(".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() && entry.Name() == "testdata" {
			return filepath.SkipDir
		}
		if entry.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		at := path.Join("core", filepath.ToSlash(filepath.Dir(name)))
		found[at] = append(found[at], []string{}...)
		for _, spec := range file.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			found[at] = append(found[at], imported)
		}
		return nil
	})
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(found), len(mayImport), "the walk found too few packages: %v", found)
	return found
}

func TestPackagesImportOnlyDownwards(t *testing.T) {
	for at, imports := range importsOf(t) {
		list, known := allowed(at)
		if !assert.True(t, known, "%s has no line in the rules", at) {
			continue
		}
		for _, imported := range imports {
			if inside, ok := strings.CutPrefix(imported, module); ok {
				assert.Contains(t, list, inside, "%s imports %s", at, inside)
			} else {
				if at == "core/job" && imported == "reflect" {
					continue
				}
				assert.Contains(t, mayImportOutside, imported, "%s imports %s", at, imported)
			}
		}
	}
}

// The list of what is allowed must not be widened by accident to what would end
// the engine's purity.
func TestRulesAllowNothingImpure(t *testing.T) {
	for _, never := range []string{"os", "net", "net/http", "time", "math/rand", "math/rand/v2", "crypto/rand", "log", "reflect", "encoding/json",
		"regexp", "syscall", "syscall/js", "runtime", "unsafe", "io", "sync", "text/template", "sort"} {
		assert.False(t, slices.Contains(mayImportOutside, never), never)
	}
}
