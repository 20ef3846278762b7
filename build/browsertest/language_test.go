package browsertest

import (
	"encoding/json"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/build/bundle"
	"ceilingwright/build/sentences"
	"ceilingwright/build/serve"
)

// inWide is a sentence in a language in which every letter of ours is another, the
// same as wide as a Chinese one. Holes, and the tags of a sentence of the page, stay.
func inWide(ours string) string {
	var theirs strings.Builder
	last := 0
	for _, at := range regexp.MustCompile(`\{~?[^{}|?]*|<[^>]*>`).FindAllStringIndex(ours, -1) {
		theirs.WriteString(wide(ours[last:at[0]]) + ours[at[0]:at[1]])
		last = at[1]
	}
	return theirs.String() + wide(ours[last:])
}

func wide(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' {
			return r + 'Ａ' - 'A'
		}
		return r
	}, text)
}

// builtElsewhere is the folder of the page in that language, built once.
var builtElsewhere = sync.OnceValues(func() (string, error) {
	all, err := sentences.All(root)
	if err != nil {
		return "", err
	}
	language := map[string]string{}
	for _, sentence := range all {
		if sentence != "{form}" {
			language[sentence] = inWide(sentence)
		}
	}
	language["{language}"] = "zxx"
	text, err := json.Marshal(language)
	if err != nil {
		return "", err
	}
	output, err := bundle.BuildIn(root, text)
	if err != nil {
		return "", err
	}
	folder := filepath.Join(filepath.Dir(dist), "elsewhere")
	return folder, output.Write(folder)
})

// openElsewhere opens the page in that language, with a plan on it.
func openElsewhere(t *testing.T, plan string) *view {
	t.Helper()
	folder, err := builtElsewhere()
	require.NoError(t, err)
	server := httptest.NewServer(serve.Handler(os.DirFS(folder)))
	t.Cleanup(server.Close)
	v := anotherDevice(t, desk)
	v.visit(server.URL + "/" + "?working=open" + fragment(plan))
	v.ready()
	return v
}

// read is every text of the page that is read or heard, each with what it stands in.
const read = `(() => {
	const found = [["title", document.title]];
	const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let n = walk.nextNode(); n; n = walk.nextNode()) {
		const at = n.parentElement;
		if (!at.closest("script, style, noscript, textarea")) found.push([at.tagName + "." + (at.getAttribute("class") ?? "") + " in " + (at.closest("[id], [data-fill], [class]")?.id || at.closest("[data-fill]")?.dataset.fill || ""), n.data]);
	}
	for (const e of document.body.querySelectorAll("*"))
		for (const name of ["aria-label", "title", "placeholder", "alt", "label", "aria-description", "data-head"])
			if (e.hasAttribute(name)) found.push([e.tagName + " " + name + " " + (e.dataset.at ?? e.dataset.do ?? ""), e.getAttribute(name)]);
	return found;
})()`

// noWord are signs of units, panels, walls and corners, and what is not ours to say.
var (
	ourWord  = regexp.MustCompile(`[A-Za-z]{2,}`)
	fileName = regexp.MustCompile(`[\w-]+(?:\.[a-z-]+)+`)
	noWord   = regexp.MustCompile(`^(mm|cm|ft|in|yd|mil|mils|gal|imp|qt|pt|fl|oz|tsp|tbsp|mL|mg|cfm|lb|kg|min|ln|[A-Z]{1,3}|Ceilingwright|example|GBP|EUR|USD|AM|PM|Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)$`)
)

// saysNothingOfOurs asks that no word in sight or hearing is one of our language.
func (v *view) saysNothingOfOurs(where string) {
	v.t.Helper()
	seen := map[string]bool{}
	texts := value[[][2]string](v, read)
	assert.Greater(v.t, len(texts), 1000, where)
	for _, text := range texts {
		for _, word := range ourWord.FindAllString(fileName.ReplaceAllString(text[1], ""), -1) {
			if !noWord.MatchString(word) && !seen[text[1]] {
				seen[text[1]] = true
				assert.Fail(v.t, "not said in the other language", "%s, %s: “%s” in %q", where, text[0], word, text[1])
			}
		}
	}
}

// nameless is a plan of testdata with numbers for the names that people gave.
func nameless(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(root + "/testdata/plans/v1/" + name + ".json")
	require.NoError(t, err)
	var plan any
	require.NoError(t, json.Unmarshal(text, &plan))
	n := 0
	var unname func(node any)
	unname = func(node any) {
		switch node := node.(type) {
		case []any:
			for _, one := range node {
				unname(one)
			}
		case map[string]any:
			for key, one := range node {
				if typed, ok := one.(string); ok && typed != "" && strings.Contains(" name title colour batch currency labels ", " "+key+" ") {
					n++
					node[key] = strconv.Itoa(100 + n)
				}
				unname(one)
			}
		}
	}
	unname(plan)
	text, err = json.Marshal(plan)
	require.NoError(t, err)
	return string(text)
}

// The page, in every part that can be brought into sight here, has no word but those of
// the language it is made in.
func TestAnotherLanguage(t *testing.T) {
	v := openElsewhere(t, nameless(t, "full"))
	assert.Equal(t, "zxx", v.text(`document.documentElement.lang`))
	v.saysNothingOfOurs("the sheet")
	v.run(`for (const b of document.querySelectorAll("[data-do=measures]")) b.click()`)
	v.saysNothingOfOurs("with measures")

	for _, to := range []string{"marks", "hanging"} {
		v.run(`document.querySelector("[data-do=ladder][data-to=" + $1 + "]").click()`, to)
		v.wait(`document.querySelector(".cw-ladder[open]")`)
		v.readStops()
		for range 3 {
			v.saysNothingOfOurs("on the ladder, " + to)
			v.goOn()
		}
		v.run(unhurried)
		v.press(".cw-ladder-leave")
		v.run(unhurried)
		v.wait(`!document.querySelector(".cw-ladder[open]")`)
	}

	for _, press := range []string{"earlier", "remove", "undo", "redo", "save-file", "copy-text", "jobs", "job-copy", "job-delete", "jobs-close", "empty", "example"} {
		if press == "earlier" || press == "remove" { // in a step, which is opened for it
			v.openStep("/finish/steps/1")
			v.run(`document.querySelector(".cw-step [data-do=" + $1 + "]").click()`, press)
		} else {
			v.run(`document.querySelector("[data-do=" + $1 + "]").click()`, press)
		}
		if press != "example" { // its names are in our language
			v.saysNothingOfOurs("after " + press)
		}
	}
}

// What waits for its readings, came otherwise or lies crooked is said in the other
// language too, and so is a client's copy.
func TestAnotherLanguage_OtherPlans(t *testing.T) {
	for _, name := range []string{"delivered-short", "pieces", "l-shape", "gilded", "priced", "empty"} {
		v := openElsewhere(t, nameless(t, name))
		v.saysNothingOfOurs(name)
		v.run(`window.print = () => {}`)
		for _, press := range []string{"print-safety", "print-days", "print-price", "print-record", "print-shopping", "print-labels", "print-cards", "look][data-to=client", "print-price"} {
			v.run(`document.querySelector("[data-do=" + $1 + "]")?.click()`, press)
			v.saysNothingOfOurs(name + ", " + press)
		}
	}
}
