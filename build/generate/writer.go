package main

import (
	"bytes"
	"fmt"
	"go/format"
)

// sheetWriter is the Go code that writes the sheet as JSON, one function a struct:
// field by field and without reflection, for the size and speed of the page.
func sheetWriter(structs []structType) ([]byte, error) {
	var b bytes.Buffer
	b.WriteString(mark + "package sheet\n\nimport \"ceilingwright/core/jsondoc\"\n")
	for _, s := range structs {
		fmt.Fprintf(&b, "\nfunc (x *%s) write(w *jsondoc.Writer) {\n\tw.Open('{')\n", s.name)
		for i := range s.fields {
			writeField(&b, &s.fields[i])
		}
		b.WriteString("\tw.Close('}')\n}\n")
	}
	return format.Source(b.Bytes())
}

// writeField is the code that writes one field.
func writeField(b *bytes.Buffer, f *field) {
	if f.spare {
		fmt.Fprintf(b, "if len(x.%s) > 0 {\n", f.goName)
		defer b.WriteString("}\n")
	}
	switch {
	case f.list && f.base == "string" && !f.cast:
		fmt.Fprintf(b, "w.Texts(%q, x.%s)\n", f.name, f.goName)
	case f.list && f.isStruct():
		fmt.Fprintf(b, "w.List(%q)\nfor i := range x.%s {\nx.%s[i].write(w)\n}\nw.Close(']')\n", f.name, f.goName, f.goName)
	case f.isStruct():
		fmt.Fprintf(b, "w.Name(%q)\nx.%s.write(w)\n", f.name, f.goName)
	case f.cast:
		fmt.Fprintf(b, "w.Text(%q, string(x.%s))\n", f.name, f.goName)
	default:
		call := map[string]string{"string": "Text", "int": "Number", "bool": "Truth"}[f.base]
		fmt.Fprintf(b, "w.%s(%q, x.%s)\n", call, f.name, f.goName)
	}
}
