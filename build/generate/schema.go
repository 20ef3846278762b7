package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ceilingwright/core/jsondoc"
)

// schema is the plan's JSON Schema, its names in the order they are written.
type schema struct{ top *jsondoc.Node }

func readSchema(root string) (schema, error) {
	text, err := os.ReadFile(filepath.Join(root, "core", "plan", "plan.schema.json"))
	if err != nil {
		return schema{}, err
	}
	top, err := jsondoc.Read(text)
	return schema{top}, err
}

// word is a keyword of a node; one beside a reference counts before what is
// referred to. It is nil where neither has it.
func (s schema) word(n *jsondoc.Node, keyword string) *jsondoc.Node {
	for n != nil {
		if found := n.Field(keyword); found != nil {
			return found
		}
		ref := n.Field("$ref")
		if ref == nil {
			return nil
		}
		n = s.top.Field("$defs").Field(strings.TrimPrefix(ref.Text, "#/$defs/"))
	}
	return nil
}

// fields are the properties of an object.
func (s schema) fields(n *jsondoc.Node) []jsondoc.Field {
	if found := s.word(n, "properties"); found != nil {
		return found.Fields
	}
	return nil
}

// part is a node with its place in the plan: /room/walls/[]/angle.
type part struct {
	at   string
	node *jsondoc.Node
}

// parts are all parts of the plan, an object before what is in it.
func (s schema) parts() []part {
	var found []part
	var walk func(at string, n *jsondoc.Node)
	walk = func(at string, n *jsondoc.Node) {
		found = append(found, part{at, n})
		for _, f := range s.fields(n) {
			walk(at+"/"+f.Name, f.Value)
		}
		if items := s.word(n, "items"); items != nil {
			walk(at+"/[]", items)
		}
	}
	walk("", s.top)
	return found
}

// choiceList is a list of choices under the name that blanks ask for it by: the
// words of the plan, and the words people choose by.
type choiceList struct {
	name  string
	pairs [][2]string
}

// choiceLists are the lists that are offered, by name.
func (s schema) choiceLists() ([]choiceList, error) {
	var found []choiceList
	met := map[string]bool{}
	for _, p := range s.parts() {
		name, words := s.word(p.node, "offered"), s.word(p.node, "words")
		if name == nil || met[name.Text] {
			continue
		}
		met[name.Text] = true
		list := choiceList{name: name.Text}
		enum := texts(s.word(p.node, "enum"))
		for _, w := range words.Fields {
			if !slices.Contains(enum, w.Name) {
				return nil, fmt.Errorf("%s: %q is offered and is no choice", p.at, w.Name)
			}
			list.pairs = append(list.pairs, [2]string{w.Name, w.Value.Text})
		}
		for _, w := range enum {
			if w != "" && !slices.ContainsFunc(list.pairs, func(p [2]string) bool { return p[0] == w }) {
				return nil, fmt.Errorf("%s: %q has no words", p.at, w)
			}
		}
		found = append(found, list)
	}
	slices.SortFunc(found, func(a, b choiceList) int { return strings.Compare(a.name, b.name) })
	return found, nil
}

// texts are the entries of a list.
func texts(list *jsondoc.Node) []string {
	var found []string
	if list != nil {
		for _, item := range list.Items {
			found = append(found, item.Text)
		}
	}
	return found
}
