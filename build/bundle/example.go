package bundle

import (
	"encoding/json"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"

	"ceilingwright/core"
	"ceilingwright/core/sheet"
)

// The worked example stands worked out on the first page as it is sent, so that it can be
// read before the engine is there: its blanks, its answers, the list of pages with what
// each comes to, and the drawing. What is made so is marked with data-made; the script
// takes it over, or takes it off where another job opens (site/src/view/made.ts).

// withExample puts the sheet of a plan on the first page of index.
func withExample(index string, plan []byte) (string, error) {
	var tree map[string]any
	if err := json.Unmarshal(plan, &tree); err != nil {
		return "", fmt.Errorf("the worked example: %w", err)
	}
	var told sheet.Sheet
	if err := json.Unmarshal(core.Compute(plan), &told); err != nil {
		return "", fmt.Errorf("the worked example: %w", err)
	}
	m := maker{tree, &told}
	start, end := strings.Index(index, `<section class="cw-block cw-cover"`), 0
	if start < 0 {
		return index, nil // a page without a first page has nothing to put it on
	}
	end = start + strings.Index(index[start:], "</section>")
	index = index[:start] + m.cover(index[start:end]) + index[end:]
	index = m.contents(index)
	index = m.drawing(index)
	return m.blanks(index, `data-at="/title"`), nil
}

// makeExample puts the worked example of the project at root on the page that is sent.
func (o Output) makeExample(root string) error {
	plan, err := os.ReadFile(filepath.Join(root, "site", "example.plan.json"))
	if err != nil {
		return err
	}
	for i := range o {
		if o[i].Path == "index.html" {
			made, err := withExample(string(o[i].Content), plan)
			if err != nil {
				return err
			}
			o[i].Content = []byte(made)
		}
	}
	return nil
}

// maker writes what the page's script would write.
type maker struct {
	plan  map[string]any
	sheet *sheet.Sheet
}

// typed is what stands in the plan at a pointer.
func (m maker) typed(pointer string) string {
	var here any = m.plan
	for _, step := range strings.Split(strings.TrimPrefix(pointer, "/"), "/") {
		object, _ := here.(map[string]any)
		here = object[step]
	}
	text, _ := here.(string)
	return text
}

// shown is a blank as it is shown: as it was read, or as typed.
func (m maker) shown(pointer string) string {
	for _, r := range m.sheet.Readings {
		if r.At == pointer {
			return r.Text
		}
	}
	return m.typed(pointer)
}

var (
	inputs  = regexp.MustCompile(`<input [^>]*data-at="([^"]*)"[^>]*>`)
	selects = regexp.MustCompile(`(?s)<select [^>]*data-at="([^"]*)"[^>]*>.*?</select>`)
	whens   = regexp.MustCompile(`<(\w+)( [^>]*)?data-when="([^"=!]*)(!?)=([^"]*)"([^>]*)>`)
)

// blanks fills the blanks of a part; only those whose tag holds a text, "" for all.
func (m maker) blanks(part, only string) string {
	part = inputs.ReplaceAllStringFunc(part, func(tag string) string {
		if !strings.Contains(tag, only) {
			return tag
		}
		at := inputs.FindStringSubmatch(tag)[1]
		return strings.TrimSuffix(tag, ">") + ` value="` + html.EscapeString(m.shown(at)) + `">`
	})
	if only != "" {
		return part
	}
	return selects.ReplaceAllStringFunc(part, func(tag string) string {
		chosen := fmt.Sprintf(`value="%s"`, html.EscapeString(m.typed(selects.FindStringSubmatch(tag)[1])))
		return strings.Replace(tag, "<option "+chosen, "<option selected "+chosen, 1)
	})
}

// cover is the first page, its blanks filled in and its answers given.
func (m maker) cover(part string) string {
	part = m.blanks(part, "")
	part = whens.ReplaceAllStringFunc(part, func(tag string) string {
		found := whens.FindStringSubmatch(tag)
		among := false
		for _, choice := range strings.Split(found[5], "|") {
			among = among || choice == m.typed(found[3])
		}
		tag = strings.Replace(tag, " hidden", "", 1)
		if among == (found[4] == "!") {
			return strings.TrimSuffix(tag, ">") + " hidden>"
		}
		return tag
	})
	layers, steps := m.count("mask", "layers"), m.count("finish", "steps")
	part = strings.Replace(part, "<span data-cover-begin>", "<span data-cover-begin hidden>", 1)
	part = strings.Replace(part, "<span data-cover-steps hidden>", "<span data-cover-steps>", 1)
	part = refill(part, `data-fill="cover-layers">`, layers+" layers", "</a>")
	part = refill(part, `data-fill="cover-steps">`, steps+" steps", "</a>")
	var answers strings.Builder
	for _, a := range m.sheet.Overview.Answers {
		fmt.Fprintf(&answers, `<div data-answer=%q><dt>%s</dt><dd><a href="#%s">%s</a></dd></div>`, a.ID, html.EscapeString(a.Label), addressOf(a.Page), html.EscapeString(a.Text))
	}
	return refill(part, `data-fill="answers">`, answers.String(), "</dl>")
}

func (m maker) count(part, list string) string {
	of, _ := m.plan[part].(map[string]any)
	entries, _ := of[list].([]any)
	return strconv.Itoa(len(entries))
}

func addressOf(name string) string {
	for _, p := range jobPages {
		if p.name == name {
			return p.at
		}
	}
	return jobPages[0].at
}

// contents gives each page of the list its line.
func (m maker) contents(index string) string {
	for _, p := range m.sheet.Overview.Pages {
		item := fmt.Sprintf(`<li data-page=%q>`, p.Page)
		start := strings.Index(index, item)
		if start < 0 {
			continue
		}
		index = index[:start] + refill(index[start:], `<span class="cw-page-line">`, html.EscapeString(p.Text), "</span>")
	}
	return index
}

// drawing puts the first drawing in its place.
func (m maker) drawing(index string) string {
	if len(m.sheet.Drawings) == 0 {
		return index
	}
	d := m.sheet.Drawings[0]
	index = refill(index, `<h2 data-drawing-title>`, html.EscapeString(d.Title), "</h2>")
	index = strings.Replace(index, `data-drawing-blank>`, `data-drawing-blank hidden>`, 1)
	return refill(index, `data-fill="drawing">`, d.SVG, "</div>")
}

// refill puts other content behind the first tag that ends so, up to the end of its
// element, and marks it as made.
func refill(part, tag, content, end string) string {
	at := strings.Index(part, tag)
	if at < 0 {
		return part
	}
	inside := at + len(tag)
	length := strings.Index(part[inside:], end)
	return part[:inside-1] + " data-made>" + content + part[inside+length:]
}
