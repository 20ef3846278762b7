package bundle

import (
	"fmt"
	"html"
	"slices"
	"strings"
)

// jobPage is a page of the job: at is its address and the id of its part of the page,
// name what the engine calls it, "" for the first, which is all of them at a glance.
type jobPage struct{ at, name, title string }

// jobPages are the pages in the order they are turned.
var jobPages = []jobPage{
	{"job", "", "The job"},
	{"room", "room", "Room"},
	{"mask", "mask", "Mask"},
	{"setting-out", "setting", "Setting out"},
	{"hanging", "hanging", "Hanging"},
	{"finish", "finish", "Finish"},
	{"days", "days", "Days"},
	{"price", "price", "Price"},
	{"safety", "safety", "Safety"},
	{"record", "record", "Record"},
}

// contents is the list of the pages: each with room for its answer and its state.
func contents() string {
	var list strings.Builder
	list.WriteString(`<ol class="cw-pages">`)
	for _, p := range jobPages {
		fmt.Fprintf(&list, `<li data-page=%q><a href="#%s"><b>%s</b> <span class="cw-page-state"></span> <span class="cw-page-line"></span></a></li>`, p.name, p.at, p.title)
	}
	list.WriteString(`</ol>`)
	return list.String()
}

// turn is the foot of a page: the way back and the way on.
func turn(at string) (string, error) {
	i := slices.IndexFunc(jobPages, func(p jobPage) bool { return p.at == at })
	if i < 0 {
		return "", fmt.Errorf("%q is no page of the job: add it to jobPages", at)
	}
	link := func(k int, words string) string {
		if k < 0 || k >= len(jobPages) {
			return "<span></span>"
		}
		return fmt.Sprintf(`<a href="#%s" rel=%q>%s</a>`, jobPages[k].at, words, jobPages[k].title)
	}
	return `<nav class="cw-wide cw-turn" aria-label="Beside ` + jobPages[i].title + `">` + link(i-1, "prev") + tick(jobPages[i]) + link(i+1, "next") + `</nav>`, nil
}

// tick is where a page is ticked as done; the first is none to tick.
func tick(p jobPage) string {
	if p.name == "" {
		return "<span></span>"
	}
	return fmt.Sprintf(`<button type="button" class="cw-page-tick" data-do="tick" data-to=%q aria-pressed="false">this page is done</button>`, p.name)
}

// more is the head of what is seldom changed on a page or in an entry: the first thing in
// a <details class="cw-fold cw-rest">. It names what is inside.
func more(inside string) string {
	return `<summary>More: ` + html.EscapeString(inside) + ` <span class="cw-rest-filled" data-fill="rest-filled"></span></summary>`
}
