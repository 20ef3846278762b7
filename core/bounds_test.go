package core_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/sheet"
)

// What any plan may cost, whatever is in it. A page is some three times as slow
// as the engine outside it.
const (
	longestWork  = time.Second
	mostMemory   = 100 << 20
	largestSheet = 10 << 20
	mostProblems = 300
)

// overBounds is the sheet of a plan, as it is written, and which bound it breaks, ""
// for none. longest is how long it may take: the best of three tries, since others use the
// machine too. What is asked of memory is counted for the whole process, so its
// tests never run beside others.
func overBounds(text []byte, schema schemaNode, longest time.Duration) (s *sheet.Sheet, answer []byte, fault string) {
	var before, after runtime.MemStats
	took := time.Duration(0)
	for try := range 3 {
		runtime.ReadMemStats(&before)
		start := time.Now()
		s = core.SheetOf(text)
		answer = s.JSON()
		now := time.Since(start)
		runtime.ReadMemStats(&after)
		if try == 0 || now < took {
			took = now
		}
		if took <= longest {
			break
		}
	}
	switch asked := after.TotalAlloc - before.TotalAlloc; {
	case took > longest:
		return s, answer, fmt.Sprintf("takes %v", took)
	case asked > mostMemory:
		return s, answer, fmt.Sprintf("asks for %d MB in all", asked>>20)
	case len(answer) > largestSheet:
		return s, answer, fmt.Sprintf("its sheet has %d kB", len(answer)>>10)
	case len(s.Problems) > mostProblems:
		return s, answer, fmt.Sprintf("%d problems, as %v", len(s.Problems), s.Problems[len(s.Problems)/2])
	}
	return s, answer, untrue(s, text, schema)
}

// untrue is what a sheet says that cannot be: a fault of the engine, a length
// below nothing, a place that is none, a figure that is not there.
func untrue(s *sheet.Sheet, text []byte, schema schemaNode) string {
	for _, p := range s.Problems {
		if strings.Contains(p.What, "a fault of its own") {
			return p.What
		}
		if len(p.What)+len(p.Do) > 2000 {
			return "a problem of " + strconv.Itoa(len(p.What)+len(p.Do)) + " bytes at " + p.At
		}
		if !schema.knows(p.At) && !stands(text, p.At) {
			return "a problem at " + p.At + ", which is nowhere: " + p.What
		}
	}
	seen := map[string]bool{}
	for _, f := range s.Figures {
		if seen[f.ID] {
			return "two figures " + f.ID
		}
		seen[f.ID] = true
		if f.Unit != "C" && !mayBeBelow(f.ID) && strings.HasPrefix(f.Value, "-") {
			return f.ID + " is " + f.Value + " " + f.Unit + ": " + f.Working.Sum
		}
	}
	for _, l := range s.Layers {
		for _, seam := range l.Seams {
			if strings.HasPrefix(seam.Length, "-") || strings.HasPrefix(seam.Length, "−") {
				return "seam " + seam.Seam + " is " + seam.Length
			}
		}
	}
	return strangers(s, seen, schema, text)
}

// mayBeBelow tells of which figures a value below zero has a meaning: a
// difference between two lengths, and money.
func mayBeBelow(id string) bool {
	return strings.HasPrefix(id, "border.") || strings.HasPrefix(id, "price.") || strings.Contains(id, ".runout.") || strings.Contains(id, ".gap.") ||
		id == "room.out" || id == "room.closing"
}

// strangers is a figure or a place that something on the sheet names and that is not
// there.
func strangers(s *sheet.Sheet, figures map[string]bool, schema schemaNode, text []byte) string {
	for _, a := range s.Safety {
		if !schema.knows(a.At) {
			return "the note " + a.ID + " is at " + a.At + ", which is nowhere"
		}
		for _, id := range a.Figures {
			if !figures[id] {
				return "the note " + a.ID + " names " + id + ", which is not there"
			}
		}
	}
	for _, step := range s.Steps {
		for _, id := range step.Figures {
			if !figures[id] {
				return "the step " + step.ID + " names " + id + ", which is not there"
			}
		}
	}
	for _, r := range s.Readings {
		if !schema.knows(r.At) {
			return "a reading at " + r.At + ", which is nowhere"
		}
	}
	return ""
}

// stands tells whether a plan has something at a pointer.
func stands(text []byte, pointer string) bool {
	var node any
	if json.Unmarshal(text, &node) != nil {
		return false
	}
	for _, step := range strings.Split(pointer, "/")[1:] {
		step = strings.ReplaceAll(strings.ReplaceAll(step, "~1", "/"), "~0", "~")
		switch value := node.(type) {
		case map[string]any:
			next, ok := value[step]
			if !ok {
				return false
			}
			node = next
		case []any:
			i, err := strconv.Atoi(step)
			if err != nil || i >= len(value) {
				return false
			}
			node = value[i]
		default:
			return false
		}
	}
	return true
}

// Made-up plans, valid and broken, keep all bounds. In the short run time is
// given generously, since the machine may be busy; the memory that is asked for
// is counted, and grows with the work. CEILINGWRIGHT_MADE=10m makes plans for ten
// minutes and is strict with time too; CEILINGWRIGHT_MADE=4711 tries that one
// alone. A plan that breaks a bound is kept in the folder for things to throw
// away, cut down as far as it still breaks one.
func TestMadeUpPlansKeepAllBounds(t *testing.T) {
	m := newMaker(t)
	asked := os.Getenv("CEILINGWRIGHT_MADE")
	if n, err := strconv.ParseUint(asked, 10, 64); err == nil {
		m.try(t, n, longestWork)
		return
	}
	if asked == "" {
		for n := range uint64(60) {
			m.try(t, n, 20*longestWork)
		}
		return
	}
	long, err := time.ParseDuration(asked)
	require.NoError(t, err)
	first := uint64(time.Now().UnixNano())
	tried, broken := 0, 0
	for end := time.Now().Add(long); time.Now().Before(end) && broken < 20; tried++ {
		if !m.try(t, first+uint64(tried), longestWork) {
			broken++
		}
	}
	t.Logf("%d plans made, %d broke a bound", tried, broken)
}

// try holds plan number n to the bounds.
func (m *maker) try(t *testing.T, n uint64, longest time.Duration) bool {
	t.Helper()
	text := m.plan(n)
	_, _, fault := overBounds(text, m.schema, longest)
	if fault == "" {
		return true
	}
	least := cutDown(text, func(smaller []byte) bool {
		_, _, still := overBounds(smaller, m.schema, longest)
		return boundOf(still) == boundOf(fault)
	})
	name := filepath.Join(os.TempDir(), "made-"+strconv.FormatUint(n, 10)+".json")
	_ = os.WriteFile(name, least, 0o600)
	t.Errorf("plan %d: %s\n%s", n, fault, name)
	return false
}

// boundOf is which bound was broken, whatever the numbers.
func boundOf(fault string) string {
	words := strings.Fields(fault)
	if len(words) > 3 {
		words = words[:3]
	}
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return -1
		}
		return r
	}, strings.Join(words, " "))
}

// cutDown takes out of a plan whatever it still fails without, for so many tries.
func cutDown(text []byte, fails func([]byte) bool) []byte {
	for tries := 300; tries > 0; {
		var tree map[string]any
		if json.Unmarshal(text, &tree) != nil {
			return text
		}
		smaller := text
		for _, s := range spots(tree, "", schemaNode{}, nil) {
			if tries--; tries < 0 {
				break
			}
			was := s.value()
			if list, ok := was.([]any); ok && len(list) > 1 {
				s.put(slices.Clone(list[:len(list)/2]))
			} else if s.object != nil && s.at != "/ceilingwright" {
				delete(s.object, s.name)
			} else {
				continue
			}
			if next, err := json.Marshal(tree); err == nil && fails(next) {
				smaller = next
				break
			}
			s.put(was)
		}
		if len(smaller) == len(text) {
			break
		}
		text = smaller
	}
	return text
}
