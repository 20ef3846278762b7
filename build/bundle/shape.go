package bundle

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// shape is what the plan's schema says of the places of a plan, as far as the
// page needs it: which there are, what each holds, and which choices it offers.
type shape struct {
	root *schemaNode
}

type schemaNode struct {
	Ref        string                 `json:"$ref"`
	Defs       map[string]*schemaNode `json:"$defs"`
	Properties map[string]*schemaNode `json:"properties"`
	Items      *schemaNode            `json:"items"`
	Enum       []any                  `json:"enum"`
}

// place is one place of the plan.
type place struct {
	holds   string   // the name of its definition in the schema: "length", "count"…
	choices []string // what can be chosen, nil where anything can be typed
}

func (p place) offers(choice string) bool { return slices.Contains(p.choices, choice) }

func readShape(schema []byte) (*shape, error) {
	var root schemaNode
	if err := json.Unmarshal(schema, &root); err != nil {
		return nil, fmt.Errorf("the plan's schema: %w", err)
	}
	return &shape{root: &root}, nil
}

// find looks a place up by its pointer (RFC 6901), with - for any entry of a list.
func (s *shape) find(pointer string) (place, error) {
	node, holds := s.root, ""
	steps := strings.Split(pointer, "/")
	if steps[0] != "" || pointer == "" {
		return place{}, fmt.Errorf("%q begins with no /: only within the entry of a list may a place be named from there", pointer)
	}
	for i, step := range steps[1:] {
		next := node.Properties[step]
		if step == "-" {
			next = node.Items
		}
		if next == nil {
			return place{}, fmt.Errorf("the plan has no %s; %s has %s (core/plan/plan.schema.json)",
				pointer, cmp.Or(strings.Join(steps[:i+1], "/"), "the plan"), node.names())
		}
		node, holds = s.resolved(next)
	}
	found := place{holds: holds}
	for _, choice := range node.Enum {
		found.choices = append(found.choices, fmt.Sprint(choice))
	}
	return found, nil
}

// resolved follows a node's reference to its definition, and gives its name.
func (s *shape) resolved(node *schemaNode) (*schemaNode, string) {
	name, refers := strings.CutPrefix(node.Ref, "#/$defs/")
	if definition := s.root.Defs[name]; refers && definition != nil {
		return definition, name
	}
	return node, ""
}

func (n *schemaNode) names() string {
	if n.Items != nil {
		return "entries, written -"
	}
	if len(n.Properties) == 0 {
		return "no parts"
	}
	return strings.Join(slices.Sorted(maps.Keys(n.Properties)), ", ")
}
