package bundle

import (
	"encoding/json"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What stands between the tags of blocks is one sentence, with its blanks as holes.
func TestSentencesOf(t *testing.T) {
	for page, want := range map[string][]string{
		`<p>Nothing <b>is</b> here.</p>`: {"Nothing <b>is</b> here."},
		`<p>It is <input data-at="/room/length" aria-label="Length"> long.</p><p>Then.</p>`:                                          {"It is {room.length} long.", "Length", "Then."},
		`<p>On <select data-at="/a" aria-label="What"><option value="x">this</option><option>that</option></select>.</p>`:            {"On {a}.", "What", "this", "that"},
		`<p>A<span data-when="/a=b">, <i>so</i></span></p>`:                                                                          {"A<when /a=b>, <i>so</i></when>"},
		`<p><span class="cw-nobreak"><input data-at="/days"> <span data-one="/days" data-words="day|days">days</span></span> on</p>`: {"<keep>{days} {days?day|days}</keep> on"},
		`<p>From <span class="cw-nobreak"><input data-at="/a"> %</span> of <button class="cw-term" data-do="word">laid</button></p>`: {"From {a} of <term>laid</term>"},
		`<p>Off <button data-do="add">more</button> &amp; so</p>`:                                                                    {"Off {add} & so", "more"},
		`<a href="#x">To the sheet</a>`: {"To the sheet"},
		`<div data-figure="a" data-label="area"></div><p><b data-nth="letter">A</b></p>`:                                                       {"area"},
		`<script type="text/html" id="t"><li>One <input data-rel="x" placeholder="12" title="why"></li></script><script>let word = 1</script>`: {"One {x}", "why"},
	} {
		got, err := sentencesOf(page)
		require.NoError(t, err, page)
		assert.Equal(t, want, got, page)
	}
}

// Another language puts the parts of a sentence where it wants them, each once.
func TestInLanguage(t *testing.T) {
	const page = `<html lang="en"><head></head><p>It is <input data-at="/l" aria-label="Length"> long<span data-when="/a=b">, <span data-one="/n" data-words="day|days">days</span></span>.</p></html>`
	in := func(theirs string) (string, error) {
		text, err := json.Marshal(map[string]string{"It is {l} long<when /a=b>, {n?day|days}</when>.": theirs, "Length": "“L”", "{language}": "de"})
		require.NoError(t, err)
		return inLanguage(page, text)
	}
	got, err := in("<when /a=b>{n?Tag|Tage} & </when>{l} lang.")
	require.NoError(t, err)
	assert.Contains(t, got, `<p><span data-when="/a=b"><span data-one="/n" data-words="Tag|Tage">Tage</span> &amp; </span><input data-at="/l" aria-label="“L”"> lang.</p>`)
	assert.Contains(t, got, `<html lang="de">`)
	assert.Contains(t, got, `<script type="application/json" id="language">{`)
	_, block, _ := strings.Cut(got, `id="language">`)
	block, _, _ = strings.Cut(block, "</head>")
	assert.Equal(t, 1, strings.Count(block, "<"), "nothing in the block ends it but its end")
	for theirs, why := range map[string]string{
		"{l} lang<when /a=b>{n?a|b}":          "left out or not closed",
		"<when /a=b>{n?a|b}</when>":           "left out or not closed",
		"{l}{l}<when /a=b>{n?a|b}</when>":     "{l} is not in ours, or not so often",
		"{l}</b><when /a=b>{n?a|b}</when>":    "closes nothing",
		"{l}{m}<when /a=b>{n?a|b}</when>":     "{m} is not in ours",
		"{l}<when /a=c>{n?a|b}</when>":        "<when /a=c> is not in ours",
		"{l}<when /a=b>{n}{n?a|b}</when>":     "{n} is not in ours",
		"{l}<when /a=b>{n?a|b}</when></when>": "closes nothing",
	} {
		_, err := in(theirs)
		assert.ErrorContains(t, err, why, theirs)
	}
	same, err := inLanguage(page, nil)
	require.NoError(t, err)
	assert.Equal(t, page, same)
	_, err = inLanguage(page, []byte("["))
	assert.Error(t, err)
}

// thePage is the page of the project, put together.
func thePage(t *testing.T) string {
	t.Helper()
	root, err := Root()
	require.NoError(t, err)
	schema, err := os.ReadFile(filepath.Join(root, "core", "plan", "plan.schema.json"))
	require.NoError(t, err)
	page, err := putTogether(os.DirFS(filepath.Join(root, "site")), schema)
	require.NoError(t, err)
	return page
}

// Put into its own words the page is what it was.
func TestThePageInItsOwnWords(t *testing.T) {
	page := thePage(t)
	same, err := inWords(page, func(ours string) string { return ours })
	require.NoError(t, err)
	assert.Equal(t, html.UnescapeString(page), html.UnescapeString(same))
}

// elsewhere is a language in which every letter of ours is another.
func elsewhere(ours string) string {
	var theirs strings.Builder
	forms, inMark := false, false
	for _, r := range ours {
		switch {
		case r == '{' || r == '<':
			inMark, forms = true, false
		case r == '}' || r == '>':
			inMark = false
		case r == '?' && inMark:
			forms = true
		}
		if (!inMark || forms) && (r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z') {
			r += 'Ａ' - 'A'
		}
		theirs.WriteRune(r)
	}
	return theirs.String()
}

var (
	program  = regexp.MustCompile(`(?s)<script(?: [^>]*)?type="application[^>]*>.*?</script>|<!--.*?-->`)
	heard    = regexp.MustCompile(` (?:aria-label|aria-description|title|placeholder|alt|label|data-label|data-name|data-noun|data-words)="([^"]*)"`)
	ourWords = regexp.MustCompile(`[A-Za-z]{2,}`)
	holes    = regexp.MustCompile(`\{[^}]*\}`)
)

// Every word of the page that is read or heard is said in another language.
func TestThePageInAnotherLanguage(t *testing.T) {
	page := thePage(t)
	list, err := sentencesOf(page)
	require.NoError(t, err)
	require.Greater(t, len(list), 600)
	words := map[string]string{}
	for _, sentence := range list {
		words[sentence] = elsewhere(sentence)
	}
	text, err := json.Marshal(words)
	require.NoError(t, err)
	theirs, err := inLanguage(page, text)
	require.NoError(t, err)
	theirs = program.ReplaceAllString(theirs, "")
	for _, read := range heard.FindAllStringSubmatch(theirs, -1) {
		assert.Empty(t, ourWords.FindString(holes.ReplaceAllString(read[1], "")), read[0])
	}
	// What stands for the name of a corner or a wall the script writes anew.
	theirs = regexp.MustCompile(`<[^>]* data-nth="[^>]*>[^<]*<`).ReplaceAllString(theirs, "<")
	for _, between := range split(theirs) {
		if !strings.HasPrefix(between, "<") {
			assert.Empty(t, ourWords.FindString(holes.ReplaceAllString(html.UnescapeString(between), "")), between)
		}
	}
}
