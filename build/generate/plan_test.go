package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/jsondoc"
	"ceilingwright/core/plan"
)

// job is what something new is made for, as the page has it.
type job struct {
	metric bool
	rules  string
	index  int
}

func (j job) text(v *value) string {
	switch {
	case v.feet != "" && j.metric:
		return v.metric
	case v.feet != "":
		return v.feet
	case v.us != "" && j.rules == "US":
		return v.us
	case v.us != "":
		return v.elsewhere
	case v.nth != nil:
		return j.text(&v.nth[min(j.index, len(v.nth)-1)])
	case v.named || v.counted:
		return v.text + strconv.Itoa(j.index+1)
	}
	return v.text
}

// write writes what is begun with as JSON; at the list called fill, as many new
// entries as asked for.
func (j job) write(w *jsondoc.Writer, at string, b *begun, fill string, entry *begun) {
	switch {
	case b.isObject():
		w.Open('{')
		for i := range b.fields {
			w.Key(b.fields[i].name)
			j.write(w, at+"/"+b.fields[i].name, &b.fields[i].begun, fill, entry)
		}
		w.Close('}')
	case b.isList:
		w.Open('[')
		for i := range b.items {
			j.write(w, at+"/[]", &b.items[i], fill, entry)
		}
		if at == fill {
			for i := range 8 {
				next := job{j.metric, j.rules, len(b.items) + i}
				next.write(w, at+"/[]", entry, "", nil)
			}
		}
		w.Close(']')
	case b.blank.number:
		n, _ := strconv.Atoi(b.blank.text)
		w.Int(n)
	default:
		w.String(j.text(&b.blank))
	}
}

func jobs() []job {
	return []job{{false, "US", 0}, {true, "US", 0}, {false, "UK", 0}, {true, "EU", 0}}
}

// The engine takes an empty plan as it is: nothing of it is unknown, nothing no
// choice, nothing out of bounds.
func TestEngineReadsTheEmptyPlan(t *testing.T) {
	s, err := readSchema(root)
	require.NoError(t, err)
	empty, err := s.emptyPlan()
	require.NoError(t, err)
	for _, j := range jobs() {
		var w jsondoc.Writer
		j.write(&w, "", &empty, "", nil)
		doc := plan.Read(w.Bytes())
		require.True(t, doc.Usable)
		assert.Empty(t, doc.Problems, string(w.Bytes()))
		assert.Len(t, doc.Plan.Mask.Layers, 1)
	}
}

// Nor does it find fault with what the lists grow by, but that blanks are still to
// be filled in.
func TestEngineReadsNewEntries(t *testing.T) {
	s, err := readSchema(root)
	require.NoError(t, err)
	empty, err := s.emptyPlan()
	require.NoError(t, err)
	entries, err := s.entries()
	require.NoError(t, err)
	require.Greater(t, len(entries), 10)
	tried := 0
	for _, e := range entries {
		if strings.Count(e.name, "[]") > 0 && !strings.HasPrefix(e.name, "/mask/layers") || e.name == "/finish/steps" {
			continue // inside entries that an empty plan does not have
		}
		tried++
		for _, j := range jobs() {
			var w jsondoc.Writer
			j.write(&w, "", &empty, e.name, &e.begun)
			for _, p := range plan.Read(w.Bytes()).Problems {
				said := p.What.String()
				assert.NotContains(t, said, "not known here", "%s: %s", e.name, p.At)
				assert.NotContains(t, said, "not among the choices", "%s: %s", e.name, p.At)
				assert.NotContains(t, said, "twice", "%s: %s", e.name, p.At)
			}
		}
	}
	assert.Greater(t, tried, 10)
}

// A step turned into leaf on the page gets what the engine begins a leaf step with.
func TestLeafBeginsAsTheEngineHasIt(t *testing.T) {
	leaf, err := startingLeaf()
	require.NoError(t, err)
	begins := map[string]string{}
	for _, f := range leaf.fields {
		begins[f.name] = job{metric: true}.text(&f.begun.blank)
	}
	assert.Equal(t, "20", begins["waste"])
	assert.Equal(t, "140 mm", begins["length"])
	assert.Equal(t, "25", begins["perBook"])
}

// scripts are the page's scripts that are written by hand, by their name.
func scripts(t *testing.T) map[string]string {
	t.Helper()
	found := map[string]string{}
	source := filepath.Join(root, "site", "src")
	require.NoError(t, filepath.WalkDir(source, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() && entry.Name() == "generated" {
			return filepath.SkipDir
		}
		if strings.HasSuffix(name, ".ts") && entry.Name() != "contract.ts" {
			text, err := os.ReadFile(name)
			found[strings.TrimPrefix(name, source+string(filepath.Separator))] = string(text)
			return err
		}
		return nil
	}))
	require.Greater(t, len(found), 50)
	return found
}

// quoted is a text in a script or the name of a property.
var quoted = regexp.MustCompile(`"([^"\\\n]*)"|\b([A-Za-z]\w*): `)

// spared is what the tests below let stand, by the place or the name of a blank.
var spared = []string{
	"/mask/layers/[]/panels/[]/state", "state", // the sign each is drawn with, and what a press notes
	"/room/readings/[]/line", // the walls, in the order their borders are told
	"/units/bare",            // the signs that a number pad lacks
	"rows",                   // of a text field
}

// No list of choices stands in a script: of no blank are three of the words
// written on one or two lines.
func TestNoScriptListsTheChoicesOfABlank(t *testing.T) {
	s, err := readSchema(root)
	require.NoError(t, err)
	choices := map[string][]string{}
	for _, p := range s.parts() {
		enum := slices.DeleteFunc(texts(s.word(p.node, "enum")), func(w string) bool { return w == "" })
		if len(enum) >= 3 {
			choices[p.at] = enum
		}
	}
	require.Greater(t, len(choices), 25)
	for name, text := range scripts(t) {
		lines := strings.Split(text, "\n")
		for i := range lines {
			found := map[string]bool{}
			for _, m := range quoted.FindAllStringSubmatch(strings.Join(lines[i:min(i+3, len(lines))], "\n"), -1) {
				found[m[1]+m[2]] = true
			}
			for at, words := range choices {
				if slices.Contains(spared, at) {
					continue
				}
				count := 0
				for _, w := range words {
					if found[w] {
						count++
					}
				}
				assert.Less(t, count, 3, "%s:%d lists the choices of %s: take them from generated/plan.ts", name, i+1, at)
			}
		}
	}
}

// Nothing is written into a blank that the page does not get from the schema or
// the engine: no object of a script has a blank of the plan with a number or a
// choice in it.
func TestNoScriptFillsABlank(t *testing.T) {
	s, err := readSchema(root)
	require.NoError(t, err)
	blanks := map[string]map[string]bool{} // what may stand in a blank, by its name
	for _, p := range s.parts() {
		blank := p.at[strings.LastIndex(p.at, "/")+1:]
		if blanks[blank] == nil {
			blanks[blank] = map[string]bool{}
		}
		for _, w := range texts(s.word(p.node, "enum")) {
			blanks[blank][w] = w != ""
		}
	}
	filled := regexp.MustCompile(`\b(\w+): "([^"\n]+)"|put\([^\n]*/(\w+)[\x60"], "([^"\n]+)"\)`)
	number := regexp.MustCompile(`^\d[\d.,/ ]*$`)
	for name, text := range scripts(t) {
		for _, m := range filled.FindAllStringSubmatch(text, -1) {
			blank, word := m[1]+m[3], m[2]+m[4]
			if words := blanks[blank]; words != nil && !slices.Contains(spared, blank) {
				assert.False(t, words[word] || number.MatchString(word), "%s fills %s with %q: say so in the schema (begins)", name, blank, word)
			}
		}
	}
}

// Where a sentence of the page offers a list of choices, they are those of its
// blank in the schema. Choices that stand in the sentence the build holds to it.
func TestPageOffersTheChoicesOfTheSchema(t *testing.T) {
	s, err := readSchema(root)
	require.NoError(t, err)
	lists, err := s.choiceLists()
	require.NoError(t, err)
	pages, err := filepath.Glob(filepath.Join(root, "site", "pages", "*.html"))
	require.NoError(t, err)
	seen := map[string]bool{}
	offers := regexp.MustCompile(`choice "([^"]+)" "[^"]*"[^}]*data-options="([^"]+)"|question "([^"]+)"`)
	for _, name := range pages {
		html, err := os.ReadFile(name)
		require.NoError(t, err)
		for _, m := range offers.FindAllStringSubmatch(string(html), -1) {
			at, of := m[1]+m[3], m[2]
			if of == "" {
				of = "answers"
			}
			i := slices.IndexFunc(lists, func(l choiceList) bool { return l.name == of })
			if i < 0 {
				continue // follows from the plan
			}
			seen[of] = true
			assert.True(t, s.isOffered(at, lists[i]), "%s: %s does not offer the choices of %s", name, of, at)
		}
	}
	for _, list := range lists {
		assert.True(t, seen[list.name] || list.name == "states", "no sentence offers %s", list.name)
	}
}

// isOffered tells whether a blank whose place ends so has these choices, an empty
// one apart.
func (s schema) isOffered(at string, list choiceList) bool {
	var offered []string
	for _, pair := range list.pairs {
		offered = append(offered, pair[0])
	}
	isEmpty := func(w string) bool { return w == "" }
	offered = slices.Sorted(slices.Values(slices.DeleteFunc(offered, isEmpty)))
	return slices.ContainsFunc(s.parts(), func(p part) bool {
		enum := slices.DeleteFunc(texts(s.word(p.node, "enum")), isEmpty)
		slices.Sort(enum)
		return (p.at == at || !strings.HasPrefix(at, "/") && strings.HasSuffix(p.at, "/"+at)) && slices.Equal(enum, offered)
	})
}
