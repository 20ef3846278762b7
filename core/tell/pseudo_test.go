package tell

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/finish"
	"ceilingwright/core/job"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// elsewhere is a language in which every letter of ours is another: what comes out in
// our letters was not said in a sentence of its own.
func elsewhere() *words.Language {
	return &words.Language{Sentence: func(ours string) (string, bool) {
		var theirs strings.Builder
		inHole := false
		for i, r := range ours {
			switch {
			case r == '{':
				inHole = true
			case r == '}':
				inHole = false
			}
			form := inHole && strings.ContainsAny(ours[strings.LastIndexByte(ours[:i+1], '{'):i+1], "|?")
			if (!inHole || form) && (r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z') {
				r += 0xFF21 - 'A' // the same letter, as wide as a Chinese one
			}
			theirs.WriteRune(r)
		}
		return theirs.String(), true
	}}
}

// ours are words in our letters; no word are signs of units, panels, walls and corners.
var (
	ours   = regexp.MustCompile(`[A-Za-z]{2,}`)
	noWord = regexp.MustCompile(`^(mm|ft|in|mil|gal|qt|pt|fl|oz|tsp|mL|min|[U-Z]{2,3}|[A-Z][A-Z]?)$`)
)

// Whatever a page that is told by a package of its own says, another language can say.
func TestNothingIsGlued(t *testing.T) {
	for _, name := range []string{"full", "metric", "skew-room", "l-shape", "delivered-short", "gaps-measured", "on-point", "box-turned", "pieces", "days", "gilded"} {
		doc := documentOf(t, name)
		unnamed(&doc.Plan)
		s := Session{Language: elsewhere()}
		out := s.Sheet(&doc, "", Asked{Pages: AllPages})
		b := &builder{s.hand, s.job}
		b.Sheet = out
		texts := map[string][]string{}
		for _, f := range b.Sheet.Figures {
			switch f.Block {
			case "room", "setting", "mask", "days", "price":
				texts[f.ID] = []string{f.Label, f.Working.Rule, f.Working.Sum}
			}
		}
		texts["survey"] = append([]string{b.Sheet.Survey.Text, b.Sheet.Survey.Closing}, b.Sheet.Survey.Again...)
		for _, c := range b.Sheet.Survey.Corners {
			texts["corner "+c.Corner] = []string{c.Text}
		}
		for _, o := range b.Sheet.Objects {
			texts["object "+o.At] = []string{o.Text}
		}
		for _, c := range b.Sheet.Choices {
			texts["choice"] = append(texts["choice"], c.Title, c.Reason, c.Refused)
		}
		for _, w := range b.Sheet.Walls {
			texts["wall "+w.Wall] = said(w)
		}
		texts["days"] = append(append([]string{b.Sheet.Days.Text}, b.Sheet.Days.Waits...), b.Sheet.Days.Saves...)
		for _, task := range b.Sheet.Days.Tasks {
			texts[task.ID] = []string{task.Name, task.Day, task.Reason, task.Labour, task.Sum}
		}
		for _, p := range b.Problems {
			if strings.HasPrefix(p.At, "/days") || strings.HasPrefix(p.At, "/price") {
				texts[p.At] = append(texts[p.At], b.Told(p.What), b.Told(p.Do))
			}
		}
		texts["price"] = priceSaid(&b.Sheet.Price)
		texts["record"] = []string{b.Sheet.Record.Text}
		for _, line := range b.Sheet.Record.Lines {
			texts["record"] = append(texts["record"], line.Where, line.Leaf)
		}
		for _, s := range b.Sheet.Steps {
			for _, one := range s.Sections {
				texts["sections"] = append(texts["sections"], one.Text, one.SizeAt, one.LayFrom, one.LayTo)
			}
		}
		finishSaid(b, texts)
		require.Greater(t, len(texts), 8, name)
		for at, list := range texts {
			for _, text := range list {
				for _, word := range ours.FindAllString(text, -1) {
					assert.True(t, noWord.MatchString(word), "%s, %s: “%s” in %s", name, at, word, text)
				}
			}
		}
	}
}

// builder is what a sheet was told with.
type builder struct {
	page.Page
	*job.Job
}

// finishSaid are the texts of what is painted and bought. Those of leaf are left out.
func finishSaid(b *builder, texts map[string][]string) {
	for i := range b.Sheet.Steps {
		s := &b.Sheet.Steps[i]
		if s.Kind == string(finish.LeafLaying) {
			continue
		}
		texts["step "+s.ID] = append(append([]string{s.Buy, s.LeftOver}, s.Notes...), s.Label...)
		for _, line := range append(s.Mix, s.Sample...) {
			texts["step "+s.ID] = append(texts["step "+s.ID], line.Name, line.Exact, line.Measured, line.Error)
		}
		for _, f := range b.Sheet.Figures {
			if slices.Contains(s.Figures, f.ID) {
				texts[f.ID] = []string{f.Label, f.Text, f.Working.Rule, f.Working.Sum, f.Working.Source}
			}
		}
	}
	for i, line := range b.ToBuy() {
		if buy := &b.Sheet.Shopping[i]; line.What != job.LeafGoods {
			texts["shopping"] = append(texts["shopping"], buy.What, buy.Amount, buy.Detail)
		}
	}
	climate := &b.Sheet.Climate
	texts["climate"] = []string{climate.Dew, climate.Margin, climate.Text, climate.Drying, b.Sheet.Bill.Text, b.Sheet.Bill.What}
	for _, f := range b.Sheet.Figures {
		if strings.HasPrefix(f.ID, "dew.") {
			texts[f.ID] = []string{f.Label, f.Text, f.Working.Rule, f.Working.Sum}
		}
	}
	for _, p := range b.Problems {
		if strings.HasPrefix(p.At, "/finish") && !strings.Contains(p.At, "/leaf") {
			texts[p.At] = append(texts[p.At], b.Told(p.What), b.Told(p.Do))
		}
	}
}

func said(w sheet.Wall) (texts []string) {
	texts = append(texts, w.Title)
	for _, m := range w.Marks {
		texts = append(texts, m.Label)
	}
	return texts
}

// priceSaid is what the page Price says, but for its figures.
func priceSaid(p *sheet.Price) (texts []string) {
	texts = append(texts, p.Text, p.Range, p.PerArea, p.Quoted)
	for _, l := range p.Lines {
		texts = append(texts, l.Group, l.What, l.Amount, l.Working)
	}
	for _, list := range [][]sheet.Total{p.Totals, p.Client, p.Stages} {
		for _, one := range list {
			texts = append(texts, one.What, one.Text, one.Working)
		}
	}
	for _, w := range p.WhatIf {
		texts = append(texts, w.What, w.Text)
	}
	return texts
}

// unnamed takes the names that people gave out of a plan: they are no words of ours.
func unnamed(p *plan.Plan) {
	p.Title, p.Price.Currency = "", ""
	for i := range p.Mask.Layers {
		p.Mask.Layers[i].Cut.Name = "1"
	}
	for i := range p.Obstructions {
		p.Obstructions[i].Name = ""
	}
	for i := range p.Steps {
		p.Steps[i].Name, p.Steps[i].Colour = "2", ""
		for k := range p.Steps[i].Mix {
			p.Steps[i].Mix[k].Name = "3"
		}
	}
	for i := range p.Price.Stages {
		p.Price.Stages[i].Name = "3"
	}
	p.Price.Currency = ""
}
