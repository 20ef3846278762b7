package bundle

import (
	"fmt"
	"html"
	"regexp"
	"slices"
	"strings"
)

// The short forms for what stands in the sentences of the page:
//
//	{{blank "/room/length" "Length of the ceiling"}}   a blank to type in; the schema
//	                                                   says whether it holds a length,
//	                                                   a count, words…
//	{{date "/days/start" "First day of work"}}         a blank of a special form: date,
//	                                                   time, moment, degrees, lines
//	{{choice "/setting/line" "What it is made with"    a choice: value and words in pairs,
//	  "tape" "tape," "chalk" "a chalk line"}}          all that the schema offers
//	{{question "/place/below" "Others may pass"}}      yes, no or not said
//	{{figure "room.area" "ceiling"}}                   an answer; more words: small, optional
//	{{term "mask outline" "outline"}}                  a word that the list of words explains
//	{{add "/room/readings" "another reading"}}         grows a list
//	{{leaveOut}}                                       takes the entry off its list
//
// The second word of a blank is its name for who cannot see the sentence. What
// follows it in backquotes goes into the element as it is: `placeholder="all"`,
// `data-unset="tape"` (what is taken while nothing is chosen),
// `data-options="corners"` (choices that site/src/view/choices.ts knows).

// form is how a blank is written into the page.
type form struct {
	element string // the start of its element
	keypad  string // inputmode, "" where the browser has its own way to type it
}

// forms by what the schema says a place holds; and special ones, by their short
// form, of places that the schema calls text.
var forms = map[string]form{
	"length": {`<input data-kind="length"`, "text"},
	"number": {`<input data-kind="number"`, "decimal"},
	"span":   {`<input data-kind="number"`, "decimal"},
	"count":  {`<input data-kind="count"`, "numeric"},
	"amount": {`<input data-kind="amount"`, "text"},
	"text":   {`<input data-kind="words"`, "text"},

	"degrees": {`<input data-kind="number"`, "decimal"},
	"lines":   {`<textarea data-kind="words" rows="3"`, "text"},
	"date":    {`<input type="date" data-kind="date"`, ""},
	"time":    {`<input type="time" data-kind="time"`, ""},
	"moment":  {`<input type="datetime-local"`, ""},
}

func isSpecial(name string) bool {
	return slices.Contains([]string{"degrees", "lines", "date", "time", "moment"}, name)
}

func (w *writer) blank(at, label string, more ...string) (string, error) {
	pointer, attribute := w.whole(at)
	found, err := w.plan.find(pointer)
	if err != nil {
		return "", err
	}
	f, known := forms[found.holds]
	if !known {
		return "", fmt.Errorf("nothing can be typed at %s by the schema; is it a choice?", pointer)
	}
	return f.write(attribute, at, label, more)
}

func (w *writer) special(name, at, label string, more []string) (string, error) {
	pointer, attribute := w.whole(at)
	found, err := w.plan.find(pointer)
	if err != nil {
		return "", err
	}
	if found.holds != "text" {
		return "", fmt.Errorf("%s holds no text by the schema: use blank or choice", pointer)
	}
	return forms[name].write(attribute, at, label, more)
}

func (f form) write(attribute, at, label string, more []string) (string, error) {
	for _, m := range more {
		if !isAttribute(m) && m != "data-signed" {
			return "", fmt.Errorf("%q is no attribute: a blank has its place, its name and attributes in backquotes", m)
		}
	}
	parts := append([]string{f.element, pair(attribute, at)}, more...)
	if f.keypad != "" {
		parts = append(parts, pair("inputmode", f.keypad), `spellcheck="false"`)
	}
	written := strings.Join(append(parts, `autocomplete="off"`, pair("aria-label", label)), " ") + ">"
	if strings.HasPrefix(f.element, "<textarea") {
		written += "</textarea>"
	}
	return written, nil
}

func (w *writer) choice(at, label string, more ...string) (string, error) {
	pointer, attribute := w.whole(at)
	found, err := w.plan.find(pointer)
	if err != nil {
		return "", err
	}
	parts := []string{"<select", pair(attribute, at)}
	for len(more) > 0 && isAttribute(more[0]) {
		parts, more = append(parts, more[0]), more[1:]
	}
	if err := found.checkOffered(pointer, more); err != nil {
		return "", err
	}
	written := strings.Join(append(parts, pair("aria-label", label)), " ") + ">"
	for i := 0; i+1 < len(more); i += 2 {
		written += "<option " + pair("value", more[i]) + ">" + html.EscapeString(more[i+1]) + "</option>"
	}
	return written + "</select>", nil
}

// checkOffered refuses choices that are not all the schema has; none at all are
// offered by the page's script.
func (p place) checkOffered(pointer string, pairs []string) error {
	if len(pairs) == 0 {
		return nil
	}
	if len(pairs)%2 != 0 {
		return fmt.Errorf("a choice of %s has a value and no words: write them in pairs", pointer)
	}
	offered := []string{""}
	for i := 0; i < len(pairs); i += 2 {
		if !p.offers(pairs[i]) {
			return fmt.Errorf("%s cannot be %q by the schema: it is one of %s", pointer, pairs[i], strings.Join(p.choices, ", "))
		}
		offered = append(offered, pairs[i])
	}
	for _, choice := range p.choices {
		if !slices.Contains(offered, choice) {
			return fmt.Errorf("%s can be %q by the schema: offer it", pointer, choice)
		}
	}
	return nil
}

// question is a choice between yes, no and not said, after its own words.
func (w *writer) question(at, words string) (string, error) {
	asked, err := w.choice(at, words, `data-options="answers"`)
	return html.EscapeString(words) + ": " + asked, err
}

// figure is the place of an answer. Within an entry its id begins at the entry's.
func (w *writer) figure(id, label string, more ...string) (string, error) {
	class, attribute, optional := "cw-figure", "data-figure", ""
	if w.list != "" {
		attribute = "data-figure-rel"
	}
	for _, m := range more {
		switch m {
		case "small":
			class += " cw-figure--small"
		case "optional":
			optional = " data-optional"
		default:
			return "", fmt.Errorf("a figure is small, optional or both, not %q", m)
		}
	}
	return "<div " + pair("class", class) + " " + pair(attribute, id) + " " + pair("data-label", label) + optional + "></div>", nil
}

func (w *writer) add(list, words string) (string, error) {
	pointer, _ := w.whole(list)
	if _, err := w.plan.find(pointer + "/-"); err != nil {
		return "", err
	}
	return `<button type="button" data-do="add" ` + pair("data-to", list) + ">" + html.EscapeString(words) + "</button>", nil
}

// term is a word of the trade that the list of words explains, in the form it
// takes in the sentence where that is another.
func term(word string, inSentence ...string) string {
	said := strings.Join(append(inSentence, word)[:1], "")
	return `<button type="button" class="cw-term" data-do="word" ` + pair("data-to", word) + ">" + html.EscapeString(said) + "</button>"
}

var attributeForm = regexp.MustCompile(`^[a-z-]+="[^"]*"$`)

func isAttribute(text string) bool { return attributeForm.MatchString(text) }

func pair(name, value string) string { return name + `="` + html.EscapeString(value) + `"` }
