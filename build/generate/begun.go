package main

import (
	"fmt"
	"slices"
	"strings"

	"ceilingwright/core/jsondoc"
)

// begun is what a part of a new plan begins with: an object, a list, or a blank
// with what is written in it.
type begun struct {
	fields []begunField // of an object
	items  []begun      // of a list
	isList bool
	blank  value
	// entryOf is set on an entry that is as any new entry of the list at that place.
	entryOf string
}

type begunField struct {
	name  string
	begun begun
}

func (b *begun) isObject() bool { return b.fields != nil }

// value is what is written in a blank. Of a text that follows from the plan all but
// one are empty: feet and metric by the notation, us and elsewhere by the rules, nth
// by the place of the entry in its list.
type value struct {
	text           string
	number         bool // text is a bare number
	feet, metric   string
	us, elsewhere  string
	nth            []value
	named, counted bool // text begins an id, or a name, that ends in a number
}

// emptyPlan is what a new plan begins with.
func (s schema) emptyPlan() (begun, error) { return s.begin("", s.top) }

// entries are what a new entry of each list of objects begins with, by the place
// of the list; those that come from elsewhere say that they begin with null.
func (s schema) entries() ([]begunField, error) {
	var found []begunField
	for _, p := range s.parts() {
		at, isEntry := strings.CutSuffix(p.at, "/[]")
		if begins := s.word(p.node, "begins"); begins != nil && begins.Kind == jsondoc.Null {
			continue
		}
		if !isEntry || s.fields(p.node) == nil || strings.HasPrefix(at, "/quote/") {
			continue
		}
		b, err := s.begin(p.at, p.node)
		if err != nil {
			return nil, err
		}
		found = append(found, begunField{at, b})
	}
	return found, nil
}

func (s schema) begin(at string, n *jsondoc.Node) (begun, error) {
	begins := s.word(n, "begins")
	if fields := s.fields(n); fields != nil {
		return s.beginObject(at, fields, begins)
	}
	if items := s.word(n, "items"); items != nil {
		return s.beginList(at, items, begins)
	}
	v, err := valueOf(at, begins)
	if at == "/ceilingwright" {
		v = value{text: texts(s.word(n, "enum"))[0], number: true}
	}
	if err == nil {
		err = s.isAmong(at, &v, n)
	}
	return begun{blank: v}, err
}

// beginObject is an object with all of its blanks, or with the few that begins
// names.
func (s schema) beginObject(at string, fields []jsondoc.Field, begins *jsondoc.Node) (begun, error) {
	few := texts(begins)
	b := begun{fields: []begunField{}}
	for _, f := range fields {
		if own := s.word(f.Value, "begins"); own != nil && own.Kind == jsondoc.Null || len(few) > 0 && !slices.Contains(few, f.Name) {
			continue
		}
		inside, err := s.begin(at+"/"+f.Name, f.Value)
		if err != nil {
			return b, err
		}
		b.fields = append(b.fields, begunField{f.Name, inside})
	}
	return b, nil
}

// beginList is a list with the entries that begins has: texts, or {} for an entry
// as it begins itself.
func (s schema) beginList(at string, items, begins *jsondoc.Node) (begun, error) {
	b := begun{isList: true}
	if begins == nil {
		return b, nil
	}
	for _, item := range begins.Items {
		entry, err := begun{blank: value{text: item.Text}}, error(nil)
		if item.Kind == jsondoc.Object {
			entry, err = s.begin(at+"/[]", items)
			entry.entryOf = at
		}
		if err != nil {
			return b, err
		}
		b.items = append(b.items, entry)
	}
	return b, nil
}

func valueOf(at string, begins *jsondoc.Node) (value, error) {
	if begins == nil {
		return value{}, nil
	}
	switch begins.Kind {
	case jsondoc.String:
		start, numbered := strings.CutSuffix(begins.Text, "{n}")
		isID := strings.HasSuffix(at, "/id")
		return value{text: start, named: numbered && isID, counted: numbered && !isID}, nil
	case jsondoc.List:
		var v value
		for _, item := range begins.Items {
			one, err := valueOf(at, item)
			if err != nil {
				return v, err
			}
			v.nth = append(v.nth, one)
		}
		return v, nil
	case jsondoc.Object:
		word := func(name string) string {
			if f := begins.Field(name); f != nil {
				return f.Text
			}
			return ""
		}
		v := value{feet: word("feet-inches"), metric: word("metric"), us: word("US"), elsewhere: word("other")}
		if v.feet != "" && v.metric != "" || v.us != "" && v.elsewhere != "" {
			return v, nil
		}
	}
	return value{}, fmt.Errorf("%s: what it begins with cannot be read", at)
}

// isAmong checks that a blank begins with one of its choices, where it has any. A
// blank that may not be empty has to begin with one.
func (s schema) isAmong(at string, v *value, n *jsondoc.Node) error {
	enum := s.word(n, "enum")
	if enum == nil {
		return nil
	}
	for _, word := range v.all() {
		if word != "" && !slices.Contains(texts(enum), word) {
			return fmt.Errorf("%s begins with %q, which is no choice", at, word)
		}
	}
	return nil
}

// all is everything that may be written in the blank.
func (v *value) all() []string {
	if v.feet != "" {
		return []string{v.feet, v.metric}
	}
	if v.us != "" {
		return []string{v.us, v.elsewhere}
	}
	if v.nth == nil {
		return []string{v.text}
	}
	var found []string
	for i := range v.nth {
		found = append(found, v.nth[i].all()...)
	}
	return found
}
