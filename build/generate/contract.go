package main

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
)

// calledOnThePage is what a type is called in TypeScript where its own name is one
// of the language's.
var calledOnThePage = map[string]string{"Object": "RoomObject", "Record": "FinishRecord"}

// contract is the sheet as the page's types know it, with the comments of the Go
// types. The first struct is the whole sheet; what is no text or number of it may
// be missing, in an answer that is only a problem.
func contract(structs []structType) []byte {
	var b bytes.Buffer
	b.WriteString(mark)
	b.WriteString("// The sheet as the engine hands it over. Types only: nothing here runs. Numbers\n" +
		"// arrive as text and are shown as text; no file of this page computes with them.\n")
	severity := false
	for i, s := range structs {
		for k := range s.fields {
			if f := &s.fields[k]; f.name == "severity" && f.cast && !severity {
				severity = true
				fmt.Fprintf(&b, "\nexport type Severity = %s;\n", union(f.words))
			}
		}
		fmt.Fprintf(&b, "\n/** %s */\nexport interface %s {\n", strings.Join(s.doc, "\n *  "), onThePage(s.name))
		for k := range s.fields {
			f := &s.fields[k]
			name := f.name
			if f.spare || i == 0 && (f.list || f.isStruct()) {
				name += "?"
			}
			fmt.Fprintf(&b, "  %s: %s;\n", name, typeOf(f))
		}
		b.WriteString("}\n")
	}
	return b.Bytes()
}

func onThePage(name string) string {
	if other := calledOnThePage[name]; other != "" {
		return other
	}
	return name
}

func union(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = strconv.Quote(w)
	}
	return strings.Join(quoted, " | ")
}

func typeOf(f *field) string {
	name := ""
	switch {
	case f.name == "severity":
		name = "Severity"
	case len(f.words) > 0:
		name = union(f.words)
	case f.base == "int":
		name = "number"
	case f.base == "bool":
		name = "boolean"
	default:
		name = onThePage(f.base)
	}
	if f.list && len(f.words) > 0 {
		name = "(" + name + ")"
	}
	if f.list {
		name += "[]"
	}
	return name
}
