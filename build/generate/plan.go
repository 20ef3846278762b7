package main

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"ceilingwright/core/finish"
	"ceilingwright/core/jsondoc"
	"ceilingwright/core/plan"
)

const planHead = `// What the page begins a plan and its entries with, and what it offers to choose
// from: made of core/plan/plan.schema.json and of the engine's own starting values.

import type { JsonObject } from "../state/pointer";
import { say } from "../view/say";

/** What something new is made for: a plan of this notation and these rules, at this
 *  place of its list; free makes an id of its own. */
export interface For {
  metric: boolean;
  rules: string;
  index: number;
  free(prefix: string): string;
}

function nth(p: For, ...words: string[]): string {
  return words[Math.min(p.index, words.length - 1)] ?? "";
}
`

// planForThePage is what the page has to know of a plan.
func planForThePage(s schema) ([]byte, error) {
	empty, err := s.emptyPlan()
	if err != nil {
		return nil, err
	}
	entries, err := s.entries()
	if err != nil {
		return nil, err
	}
	lists, err := s.choiceLists()
	if err != nil {
		return nil, err
	}
	leaf, err := startingLeaf()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	b.WriteString(mark + planHead)
	b.WriteString("\n/** A new entry of each list, by the name of the list. */\nexport const entries = {\n")
	names := map[string]bool{}
	for _, e := range entries {
		made, argument := script(&e.begun), ""
		if strings.Contains(made, "p.") || strings.Contains(made, "nth(p") {
			argument = "p"
		}
		name := listName(e.name)
		if names[name] {
			return nil, fmt.Errorf("%s: another list is called so", e.name)
		}
		names[name] = true
		fmt.Fprintf(&b, "  %s: (%s) => (%s),\n", name, argument, made)
	}
	b.WriteString("} satisfies Record<string, (p: For) => JsonObject>;\n")
	fmt.Fprintf(&b, "\n/** An empty plan: every blank there, and none filled but what every job starts\n *  from and the person can see and change. */\nexport const empty = (p: For): JsonObject => (%s);\n", script(&empty))
	fmt.Fprintf(&b, "\n/** What a step that is leaf begins with. */\nexport const leaf = (p: For): JsonObject => (%s);\n", script(&leaf))
	writeForms(&b, s)
	b.WriteString("\n/** The choices that many blanks share: the word of the plan, and what people read. */\nexport const offered = {\n")
	for _, list := range lists {
		writePairs(&b, list)
	}
	writePairs(&b, sets())
	b.WriteString("} as const;\n")
	fmt.Fprintf(&b, "\n/** The kinds of step that use up a product which is spread. */\nexport const spread: readonly string[] = %s;\n", quotedList(liquids()))
	return b.Bytes(), nil
}

// writeForms writes which list each form of the room is read from, and which
// entries the list is given: the words of one blank, or as many entries.
func writeForms(b *bytes.Buffer, s schema) {
	b.WriteString("\n/** The list that a form of the room is read from, and the entries it begins with:\n *  of each the word in the blank called key. */\nexport const forms: Readonly<Record<string, { list: string; key: string; words: readonly string[]; most: number }>> = {\n")
	for _, p := range s.parts() {
		form := s.word(p.node, "formed")
		if form == nil {
			continue
		}
		key, words := "", []string{}
		for _, entry := range s.word(p.node, "beginsWith").Items {
			word := ""
			for _, f := range entry.Fields {
				key, word = f.Name, f.Value.Text
			}
			words = append(words, word)
		}
		fmt.Fprintf(b, "  %s: { list: %q, key: %q, words: %s, most: %s },\n", form.Text, p.at, key, quotedList(words), s.word(p.node, "maxItems").Text)
	}
	b.WriteString("};\n")
}

func writePairs(b *bytes.Buffer, list choiceList) {
	fmt.Fprintf(b, "  %s: [\n", list.name)
	for _, p := range list.pairs {
		fmt.Fprintf(b, "    [%q, %s],\n", p[0], saidInScript(p[1]))
	}
	b.WriteString("  ],\n")
}

// sets are the sets of steps, in the engine's words.
func sets() choiceList {
	list := choiceList{name: "sets"}
	for _, set := range finish.Sets() {
		list.pairs = append(list.pairs, [2]string{string(set), set.Words()})
	}
	return list
}

func liquids() []string {
	var found []string
	for _, kind := range finish.Kinds() {
		if kind.IsLiquid() {
			found = append(found, string(kind))
		}
	}
	return found
}

// startingLeaf is the leaf of a leaf step as the engine begins it, in either
// notation.
func startingLeaf() (begun, error) {
	leafOf := func(show string) (*jsondoc.Node, error) {
		steps, err := jsondoc.Read(plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"`+show+`"}}`)).Starting(string(finish.LeafLaying), nil))
		if err != nil {
			return nil, err
		}
		return steps.Items[0].Field("leaf"), nil
	}
	feet, err := leafOf("feet-inches")
	if err != nil {
		return begun{}, err
	}
	metric, err := leafOf("metric")
	if err != nil {
		return begun{}, err
	}
	b := begun{fields: []begunField{}}
	for i, f := range feet.Fields {
		v := value{text: f.Value.Text}
		if other := metric.Fields[i].Value.Text; other != v.text {
			v = value{feet: v.text, metric: other}
		}
		b.fields = append(b.fields, begunField{f.Name, begun{blank: v}})
	}
	return b, nil
}

// script is what is begun with as an expression of TypeScript, which knows the
// plan as p.
func script(b *begun) string {
	switch {
	case b.entryOf != "":
		return "entries." + listName(b.entryOf) + "(p)"
	case b.isObject():
		parts := make([]string, len(b.fields))
		for i := range b.fields {
			f := &b.fields[i]
			parts[i] = f.name + ": " + script(&f.begun)
			if f.name == "name" {
				parts[i] = f.name + ": " + f.begun.blank.name()
			}
		}
		return "{ " + strings.Join(parts, ", ") + " }"
	case b.isList:
		parts := make([]string, len(b.items))
		for i := range b.items {
			parts[i] = script(&b.items[i])
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return b.blank.script()
}

func (v *value) script() string {
	switch {
	case v.number:
		return v.text
	case v.feet != "":
		return fmt.Sprintf("p.metric ? %q : %q", v.metric, v.feet)
	case v.us != "":
		return fmt.Sprintf("p.rules === %q ? %q : %q", "US", v.us, v.elsewhere)
	case v.nth != nil:
		words := make([]string, len(v.nth))
		for i := range v.nth {
			words[i] = v.nth[i].script()
		}
		return "nth(p, " + strings.Join(words, ", ") + ")"
	case v.named:
		return fmt.Sprintf("p.free(%q)", v.text)
	}
	return strconv.Quote(v.text)
}

// name is what a new entry is called, in the language of the page.
func (v *value) name() string {
	switch {
	case v.us != "":
		return fmt.Sprintf("p.rules === %q ? %s : %s", "US", saidInScript(v.us), saidInScript(v.elsewhere))
	case v.nth != nil:
		words := make([]string, len(v.nth))
		for i := range v.nth {
			words[i] = v.nth[i].name()
		}
		return "nth(p, " + strings.Join(words, ", ") + ")"
	case v.counted:
		return fmt.Sprintf("say(%q, { n: p.index + 1 })", v.text+"{n}")
	}
	return saidInScript(v.text)
}

// saidInScript is a text that people read; a sign of a unit is none.
func saidInScript(text string) string {
	if text == "" {
		return `""`
	}
	return "say(" + strconv.Quote(text) + ")"
}

// listName is what a list of the plan is called, by its place.
func listName(at string) string { return at[strings.LastIndex(at, "/")+1:] }

func quotedList(words []string) string {
	quoted := make([]string, 0, len(words))
	for _, w := range words {
		quoted = append(quoted, strconv.Quote(w))
	}
	return "[" + strings.Join(quoted, ", ") + "]"
}
