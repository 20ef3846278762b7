package bundle

import (
	"fmt"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"text/template"
	"text/template/parse"
)

// The page is written as site/index.html, its frame, and one file for each page
// of the job in site/pages. They are templates (text/template) put together
// here, once, when the project is built. The frame names the parts:
//
//	{{page "room"}}                        puts site/pages/room.html here
//	{{entry "t-reading" "/room/readings"}} puts the pattern of one entry of a list
//	                                       here; the page of the list defines it
//	{{asset "page.css"}}                   the address of an asset
//	{{contents}}                           the list of the pages of the job (turn.go)
//	{{turn "room"}}                        the foot of a page: back and on
//	{{more "vents and hatches, the tape"}} the head of what is seldom changed (turn.go)
//
// The short forms for what stands in a sentence are in blanks.go; how a break of
// the line is read is in join.go.

// putTogether makes the page out of the site's files, its assets not named yet.
// A place that is not in the plan's schema stops it.
func putTogether(site fs.FS, schema []byte) (string, error) {
	plan, err := readShape(schema)
	if err != nil {
		return "", err
	}
	w := &writer{plan: plan, parts: template.New("")}
	w.parts.Funcs(w.words())
	names, err := fs.Glob(site, "pages/*.html")
	if err != nil {
		return "", err
	}
	for _, name := range append(names, "index.html") {
		text, err := fs.ReadFile(site, name)
		if err != nil {
			return "", err
		}
		source := strings.ReplaceAll(string(text), "\r\n", "\n")
		if err := w.checkPlaces(name, source); err != nil {
			return "", err
		}
		if _, err := w.parts.New(name).Parse(source); err != nil {
			return "", err
		}
	}
	page, err := w.put("index.html")
	if err != nil {
		return "", err
	}
	return joinLines(page), w.checkAllPut()
}

// writer puts the parts together. Within an entry of a list, pointers begin at
// the entry.
type writer struct {
	plan  *shape
	parts *template.Template
	list  string   // the list whose entry is being written, "" outside of one
	done  []string // the files and patterns put, by name
}

// words are the short forms that the files of the page may use.
func (w *writer) words() template.FuncMap {
	words := template.FuncMap{
		"asset":    func(name string) string { return "{{" + name + "}}" },
		"page":     func(name string) (string, error) { return w.put("pages/" + name + ".html") },
		"entry":    w.entry,
		"blank":    w.blank,
		"choice":   w.choice,
		"question": w.question,
		"figure":   w.figure,
		"add":      w.add,
		"leaveOut": func() string { return `<button type="button" class="cw-off" data-do="remove">leave out</button>` },
		"term":     term,
		"contents": contents,
		"turn":     turn,
		"more":     more,
	}
	for name := range forms {
		if isSpecial(name) {
			words[name] = func(at, label string, more ...string) (string, error) { return w.special(name, at, label, more) }
		}
	}
	return words
}

func (w *writer) put(name string) (string, error) {
	w.done = append(w.done, name)
	var text strings.Builder
	err := w.parts.ExecuteTemplate(&text, name, nil)
	return text.String(), err
}

// entry writes the pattern that the entries of a list are copied from. It stands
// in a script block: see pattern in site/src/view/lists.ts.
func (w *writer) entry(name, list string) (string, error) {
	if _, err := w.plan.find(list + "/-"); err != nil {
		return "", err
	}
	w.list = list
	defer func() { w.list = "" }()
	text, err := w.put(name)
	if err != nil {
		return "", err
	}
	if err := w.checkPlaces(name, text); err != nil {
		return "", err
	}
	return `<script type="text/html" id="` + name + `">` + text + `</script>`, nil
}

// whole gives the place in the plan of a pointer as it is written, and the name
// of the attribute that holds it: data-at from the root of the plan, data-rel
// from the entry around it.
func (w *writer) whole(at string) (place, attribute string) {
	switch {
	case strings.HasPrefix(at, "/") || w.list == "":
		return at, "data-at"
	case at == "":
		return w.list + "/-", "data-rel"
	}
	return w.list + "/-/" + at, "data-rel"
}

// placesIn finds the attributes that name places of the plan: what is shown
// where a choice was made, what is asked about, lists, and whose problems stand
// where.
var placesIn = regexp.MustCompile(`\bdata-(when|one|asked|list|list-rel|place)="([^"]*)"`)

// checkPlaces refuses a text that names a place which the plan does not have, or
// a choice that the place does not offer. Outside of an entry it leaves pointers
// alone that begin at one.
func (w *writer) checkPlaces(name, text string) error {
	for n, line := range strings.Split(text, "\n") {
		for _, found := range placesIn.FindAllStringSubmatch(line, -1) {
			for _, at := range strings.Fields(found[2]) {
				if !strings.HasPrefix(at, "/") && w.list == "" {
					continue
				}
				if err := w.checkPlace(at, found[1] == "when"); err != nil {
					return fmt.Errorf("%s:%d: %s: %w", name, n+1, found[0], err)
				}
			}
		}
	}
	return nil
}

func (w *writer) checkPlace(at string, when bool) error {
	at, choices, chosen := strings.Cut(at, "=")
	place, _ := w.whole(strings.TrimSuffix(at, "!"))
	found, err := w.plan.find(place)
	if err != nil || !when {
		return err
	}
	if !chosen {
		return fmt.Errorf("say what is chosen there: %s=…", at)
	}
	for _, choice := range strings.Split(choices, "|") {
		if choice != "" && found.choices != nil && !found.offers(choice) {
			return fmt.Errorf("%s is never %q; it is one of %s", place, choice, strings.Join(found.choices, ", "))
		}
	}
	return nil
}

// checkAllPut refuses a file of the page or a pattern that the frame forgets. A
// file that only defines patterns need not be named.
func (w *writer) checkAllPut() error {
	for _, part := range w.parts.Templates() {
		if !slices.Contains(w.done, part.Name()) && !parse.IsEmptyTree(part.Root) {
			return fmt.Errorf("index.html does not name %s: add it as {{page …}}, or as {{entry …}} if it is a pattern", part.Name())
		}
	}
	return nil
}
