package bundle

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// What the page says is found in it as it is put together: a sentence is all that
// stands between two tags of blocks, whole, by which another language finds its own.
// In it stand, as the sentences of the engine have them:
//
//	{room.length}                  a blank, a choice, a figure, a button: what it is of
//	{days.people?person|people}    the word that goes with the number in a blank
//	<term>lapped</term>            words that are shown, pressed or hidden by themselves:
//	<when line=tape> wide</when>   by the name of their tag, or of what it is for
//
// Names for who cannot see (aria-label), what stands in an empty blank, what a figure
// is called and the choices of a blank are sentences of their own.

// languageKey is the entry that says which language it is, as BCP 47 has it.
const languageKey = "{language}"

// readWords are the attributes that people read or hear.
var readWords = map[string]bool{"aria-label": true, "title": true, "placeholder": true, "alt": true, "data-label": true, "data-name": true, "data-noun": true}

// inWords goes through a page and puts it into words, in the order of the page: every
// sentence is handed to in, which gives what stands there instead.
func inWords(page string, in func(ours string) string) (string, error) {
	s := &saying{in: in}
	root := &element{kids: treeOf(page)}
	s.block(root.kids)
	return s.out.String(), s.err
}

// inLanguage is a page in another language, which stands in it for its script and the
// engine: a JSON object of texts by what the page says in ours. What it lacks, or has no
// text for, stays ours. Without a language the page is as it was.
func inLanguage(page string, language []byte) (string, error) {
	if len(language) == 0 {
		return page, nil
	}
	var words map[string]string
	if err := json.Unmarshal(language, &words); err != nil {
		return "", err
	}
	page, err := inWords(page, func(ours string) string { return cmp.Or(words[ours], ours) })
	if err != nil {
		return "", err
	}
	kept := &bytes.Buffer{}
	if err := json.Compact(kept, language); err != nil {
		return "", err
	}
	block := `<script type="application/json" id="language">` + strings.ReplaceAll(kept.String(), "<", `\u003c`) + "</script>\n</head>"
	return strings.Replace(page, "</head>", block, 1), nil
}

// PageSentences are what the page of the project at root says, each sentence once, in
// the order of the page.
func PageSentences(root string) ([]string, error) {
	schema, err := os.ReadFile(filepath.Join(root, "core", "plan", "plan.schema.json"))
	if err != nil {
		return nil, err
	}
	page, err := putTogether(os.DirFS(filepath.Join(root, "site")), schema)
	if err != nil {
		return nil, err
	}
	return sentencesOf(page)
}

func sentencesOf(page string) (list []string, err error) {
	_, err = inWords(page, func(ours string) string {
		if !slices.Contains(list, ours) {
			list = append(list, ours)
		}
		return ours
	})
	return list, err
}

// element is a tag with what it holds, or, without a start, a text.
type element struct {
	start, end string
	text       string
	kids       []*element
}

var (
	voids     = regexp.MustCompile(`^<(?:!|(?:input|link|meta|br|img|hr)\b)`)
	attribute = regexp.MustCompile(` ([a-z-]+)="([^"]*)"`)
	letters   = regexp.MustCompile(`\pL`)
)

// treeOf makes a tree of a page whose tags are all closed.
func treeOf(page string) []*element {
	root := &element{}
	open := []*element{root}
	for _, piece := range split(page) {
		last := open[len(open)-1]
		switch {
		case piece == "":
		case !strings.HasPrefix(piece, "<"):
			last.kids = append(last.kids, &element{text: piece})
		case strings.HasPrefix(piece, "</"):
			last.end = piece
			open = open[:max(1, len(open)-1)]
		default:
			e := &element{start: piece}
			last.kids = append(last.kids, e)
			if !voids.MatchString(piece) {
				open = append(open, e)
			}
		}
	}
	return root.kids
}

func (e *element) tag() string {
	if found := tagName.FindStringSubmatch(e.start); found != nil {
		return found[1]
	}
	return ""
}

// get is an attribute as it is written, "" where it has none.
func (e *element) get(name string) string {
	for _, found := range attribute.FindAllStringSubmatch(e.start, -1) {
		if found[1] == name {
			return html.UnescapeString(found[2])
		}
	}
	return ""
}

// isBlock tells whether a sentence ends before an element: it is a block, or holds one.
func (e *element) isBlock() bool {
	if e.start == "" || e.tag() == "select" {
		return false
	}
	return e.tag() == "" || blocks.MatchString(e.tag()) || slices.ContainsFunc(e.kids, (*element).isBlock)
}

// isPart tells whether an element's words are part of the sentence it stands in. A
// button that does something says what by itself, and some words the script writes.
func (e *element) isPart() bool {
	switch tag := e.tag(); {
	case e.start == "" || tag == "select" || tag == "textarea" || tag == "button" && !strings.Contains(e.get("class"), "cw-term") || e.isWritten():
		return false
	}
	return slices.ContainsFunc(e.kids, func(k *element) bool { return letters.MatchString(k.text) || k.get("data-one") != "" || k.isPart() })
}

// isWritten tells whether the page's script writes what stands in an element.
func (e *element) isWritten() bool { return e.get("data-one") != "" || e.get("data-nth") != "" }

// name is what an element is called in a sentence.
func (e *element) name() string {
	if when := e.get("data-when") + e.get("data-asked"); when != "" && e.isPart() {
		return "when " + when
	}
	for _, of := range [...]string{"data-one", "data-at", "data-rel", "data-figure", "data-figure-rel", "data-fill", "data-list", "data-list-rel", "data-nth", "data-do"} {
		if at := e.get(of); at != "" && !(e.isPart() && of == "data-do") {
			at = strings.ReplaceAll(strings.TrimPrefix(at, "/"), "/", ".")
			if of == "data-one" {
				at += "?" + e.get("data-words")
			}
			return at
		}
	}
	switch class := e.get("class"); {
	case strings.Contains(class, "cw-term"):
		return "term"
	case strings.Contains(class, "cw-nobreak"):
		if !e.isPart() && len(e.kids) > 0 {
			if at := slices.IndexFunc(e.kids, func(k *element) bool { return k.start != "" }); at >= 0 {
				return e.kids[at].name()
			}
		}
		return "keep"
	}
	return e.tag()
}

// saying writes a page in words.
type saying struct {
	in  func(string) string
	out strings.Builder
	err error
}

// block writes what stands between the tags of a block: blocks, and between them
// sentences.
func (s *saying) block(kids []*element) {
	for from := 0; from < len(kids); {
		to := from
		for to < len(kids) && !kids[to].isBlock() {
			to++
		}
		if to > from {
			s.sentence(kids[from:to])
			from = to
			continue
		}
		s.whole(kids[from])
		from++
	}
}

// whole writes an element whose words are no part of the sentence around it.
func (s *saying) whole(e *element) {
	s.out.WriteString(s.startOf(e))
	if e.isWritten() || e.tag() == "script" && !strings.Contains(e.start, "text/html") {
		for _, k := range e.kids {
			s.out.WriteString(k.text)
		}
	} else {
		s.block(e.kids)
	}
	s.out.WriteString(e.end)
}

// sentence writes one sentence, or, where there are no words, what stands there. A
// single element that holds it all stands around it.
func (s *saying) sentence(run []*element) {
	if len(run) == 1 && run[0].isPart() {
		s.whole(run[0])
		return
	}
	ours := keyOf(run)
	if !letters.MatchString(withoutHoles(ours)) {
		for _, e := range run {
			s.out.WriteString(e.text)
			s.wholeIfAny(e)
		}
		return
	}
	inner := strings.TrimSpace(ours)
	lead, _, _ := strings.Cut(ours, inner)
	s.out.WriteString(lead)
	s.fill(inner, s.in(inner), run)
	s.out.WriteString(ours[len(lead)+len(inner):])
}

func (s *saying) wholeIfAny(e *element) {
	if e.start != "" {
		s.whole(e)
	}
}

// keyOf is a sentence as another language finds it.
func keyOf(run []*element) string {
	var key strings.Builder
	for _, e := range run {
		switch {
		case e.start == "":
			key.WriteString(html.UnescapeString(e.text))
		case e.isPart():
			name := e.name()
			tag, _, _ := strings.Cut(name, " ")
			key.WriteString("<" + name + ">" + keyOf(e.kids) + "</" + tag + ">")
		default:
			key.WriteString("{" + e.name() + "}")
		}
	}
	return key.String()
}

// marks are the holes and the tags of a sentence.
var marks = regexp.MustCompile(`\{[^}]*\}|<[^>]*>`)

func withoutHoles(sentence string) string {
	for _, hole := range marks.FindAllString(sentence, -1) {
		if _, forms, counted := strings.Cut(hole, "?"); counted && letters.MatchString(forms) && strings.HasPrefix(hole, "{") {
			return sentence
		}
	}
	return marks.ReplaceAllString(sentence, "")
}

// fill writes a sentence as a language has it, with the elements of ours in their
// places, each of them once.
func (s *saying) fill(ours, theirs string, run []*element) {
	left := gathered(run, nil)
	take := func(mark string) *element {
		name, forms, counted := strings.Cut(strings.Trim(mark, "{}<>"), "?")
		for i, e := range left {
			own, _, ownCounted := strings.Cut(e.name(), "?")
			if own == name && counted == ownCounted && e.isPart() == strings.HasPrefix(mark, "<") {
				left = slices.Delete(left, i, i+1)
				if counted {
					return e.counting(forms)
				}
				return e
			}
		}
		s.fail(ours, theirs, mark+" is not in ours, or not so often")
		return nil
	}
	var open []*element
	rest := theirs
	for {
		at := marks.FindStringIndex(rest)
		if at == nil {
			break
		}
		s.out.WriteString(escaped(rest[:at[0]]))
		mark := rest[at[0]:at[1]]
		rest = rest[at[1]:]
		switch {
		case strings.HasPrefix(mark, "</"):
			if len(open) == 0 {
				s.fail(ours, theirs, mark+" closes nothing")
				return
			}
			s.out.WriteString(open[len(open)-1].end)
			open = open[:len(open)-1]
		case strings.HasPrefix(mark, "<"):
			if e := take(mark); e != nil {
				s.out.WriteString(s.startOf(e))
				open = append(open, e)
			}
		default:
			if e := take(mark); e != nil {
				s.whole(e)
			}
		}
	}
	s.out.WriteString(escaped(rest))
	if len(open) > 0 || len(left) > 0 {
		s.fail(ours, theirs, "something of ours is left out or not closed")
	}
}

// gathered are all elements of a sentence that have a name in it.
func gathered(run, list []*element) []*element {
	for _, e := range run {
		if e.start != "" {
			list = append(list, e)
		}
		if e.isPart() {
			list = gathered(e.kids, list)
		}
	}
	return list
}

// counting is the word that goes with a number, with other forms, the last as it is
// before a number is there.
func (e *element) counting(forms string) *element {
	all := strings.Split(forms, "|")
	return &element{
		start: strings.Replace(e.start, pair("data-words", e.get("data-words")), pair("data-words", forms), 1),
		kids:  []*element{{text: escaped(all[len(all)-1])}}, end: e.end,
	}
}

// startOf is the start of an element with what is read of it in words.
func (s *saying) startOf(e *element) string {
	return attribute.ReplaceAllStringFunc(e.start, func(written string) string {
		found := attribute.FindStringSubmatch(written)
		name, ours := found[1], html.UnescapeString(found[2])
		switch {
		case readWords[name] && letters.MatchString(marks.ReplaceAllString(ours, "")):
		case name == "content" && e.get("name") == "description":
		case name == "lang" && e.tag() == "html":
			theirs := s.in(languageKey)
			if theirs == languageKey {
				return written
			}
			return " " + pair(name, theirs)
		default:
			return written
		}
		theirs := s.in(ours)
		if theirs == ours {
			return written
		}
		return " " + pair(name, theirs)
	})
}

func (s *saying) fail(ours, theirs, why string) {
	if s.err == nil {
		s.err = fmt.Errorf("%q for %q: %s", theirs, ours, why)
	}
}

// escaped is a text between tags.
func escaped(text string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;").Replace(text)
}
