package plan

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/finish"
)

// The schema is read by others, the reader by nobody: these tests hold the one
// to the other.

func schemaText(t *testing.T) []byte {
	t.Helper()
	text, err := os.ReadFile("plan.schema.json")
	require.NoError(t, err)
	return text
}

func compiledSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schemaText(t)))
	require.NoError(t, err)
	compiler := jsonschema.NewCompiler()
	require.NoError(t, compiler.AddResource("urn:ceilingwright:plan:1", doc))
	schema, err := compiler.Compile("urn:ceilingwright:plan:1")
	require.NoError(t, err)
	return schema
}

func schemaTree(t *testing.T) map[string]any {
	t.Helper()
	var tree map[string]any
	require.NoError(t, json.Unmarshal(schemaText(t), &tree))
	return tree
}

// property is one property of the schema: its name, the place of the object it
// belongs to with [] for a list, its own schema with references followed, and
// whether it stands for a list or an object.
type property struct {
	name, in string
	schema   map[string]any
}

// properties walks the whole schema.
func properties(t *testing.T) []property {
	t.Helper()
	tree := schemaTree(t)
	var found []property
	var walk func(node map[string]any, at string)
	resolve := func(node map[string]any) map[string]any {
		for {
			ref, ok := node["$ref"].(string)
			if !ok {
				return node
			}
			target := tree["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")]
			merged := maps.Clone(target.(map[string]any))
			if d, ok := node["description"]; ok {
				merged["description"] = d
			}
			node = merged
		}
	}
	walk = func(node map[string]any, at string) {
		fields, _ := node["properties"].(map[string]any)
		for _, name := range slices.Sorted(maps.Keys(fields)) {
			sub := resolve(fields[name].(map[string]any))
			found = append(found, property{name, at, sub})
			walk(sub, at+"/"+name)
			if items, ok := sub["items"].(map[string]any); ok {
				walk(resolve(items), at+"/"+name+"/[]")
			}
		}
	}
	walk(tree, "")
	require.Greater(t, len(found), 90, "the walk lost the schema")
	return found
}

func TestEveryPropertyIsDescribed(t *testing.T) {
	for _, p := range properties(t) {
		description, _ := p.schema["description"].(string)
		assert.True(t, strings.HasSuffix(description, ".") || strings.HasSuffix(description, "12,5."), "%s/%s: %q", p.in, p.name, description)
	}
}

// whole is a plan in which every property of the schema stands, with steps of
// every kind.
func whole(t *testing.T) map[string]any {
	t.Helper()
	plan := map[string]any{}
	put := func(in, name string, value any) {
		for _, object := range objectsAt(plan, in) {
			object[name] = value
		}
	}
	for _, p := range properties(t) {
		switch {
		case p.schema["items"] != nil && (strings.HasSuffix(p.name, "Sizes") || slices.Contains([]string{"up", "off", "weekdays", "ticked", "marked"}, p.name)):
			put(p.in, p.name, []any{"3 ft"})
		case p.name == "steps":
			steps := []any{}
			for _, kind := range finish.Kinds() {
				steps = append(steps, map[string]any{"kind": string(kind)})
			}
			put(p.in, p.name, steps)
		case p.name == "layers":
			put(p.in, p.name, []any{map[string]any{"split": "count"}, map[string]any{"split": "sizes"}, map[string]any{"split": "greatest"}})
		case p.schema["items"] != nil:
			for _, object := range objectsAt(plan, p.in) {
				object[p.name] = []any{map[string]any{}}
			}
		case p.schema["properties"] != nil:
			for _, object := range objectsAt(plan, p.in) {
				object[p.name] = map[string]any{}
			}
		case p.name == "kind" || p.name == "split":
		case p.schema["enum"] != nil:
			put(p.in, p.name, p.schema["enum"].([]any)[0])
		default:
			put(p.in, p.name, "1")
		}
	}
	return plan
}

// objectsAt are all objects of a plan at a place of the schema.
func objectsAt(node any, in string) []map[string]any {
	if in == "" {
		return []map[string]any{node.(map[string]any)}
	}
	step, rest, _ := strings.Cut(strings.TrimPrefix(in, "/"), "/")
	if rest != "" {
		rest = "/" + rest
	}
	if step == "[]" {
		var found []map[string]any
		for _, item := range node.([]any) {
			found = append(found, objectsAt(item, rest)...)
		}
		return found
	}
	return objectsAt(node.(map[string]any)[step], rest)
}

func marshal(t *testing.T, value any) []byte {
	t.Helper()
	text, err := json.Marshal(value)
	require.NoError(t, err)
	return text
}

func unknown(doc Document) []string {
	var places []string
	for _, p := range doc.Problems {
		if strings.Contains(p.What.String(), "not known here") {
			places = append(places, p.At)
		}
	}
	return places
}

func TestReaderKnowsEveryPropertyOfTheSchema(t *testing.T) {
	doc := Read(marshal(t, whole(t)))
	require.True(t, doc.Usable)
	assert.Empty(t, unknown(doc))
}

// namesAskedFor are the names of fields in the source of the reader: the texts
// handed to the calls that look into an object.
func namesAskedFor(t *testing.T) []string {
	t.Helper()
	asking := map[string]int{"Field": 0, "text": 0, "section": 0, "items": 0, "length": 0, "positive": 0, "number": 0, "positiveNumber": 0, "amount": 0, "positiveAmount": 0,
		"share": 0, "shareOrNone": 0, "count": 0, "money": 0, "fact": 0, "span": 0, "setAside": 0, "offset": 0, "list": 0, "some": 0,
		"sum": 0, "percent": 0, "degrees": 0,
		"word": 1, "choice": 1, "readMark": 1}
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	found := map[string]bool{}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				at, asks := asking[called(n)]
				if asks && at < len(n.Args) {
					note(found, n.Args[at])
				}
			case *ast.RangeStmt: // the lists of what is set aside
				if list, ok := n.X.(*ast.CompositeLit); ok {
					for _, e := range list.Elts {
						note(found, e)
					}
				}
			}
			return true
		})
	}
	require.Greater(t, len(found), 70, "the names are no longer found in the source")
	return slices.Sorted(maps.Keys(found))
}

func called(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		return f.Sel.Name
	}
	return ""
}

func note(found map[string]bool, e ast.Expr) {
	if literal, ok := e.(*ast.BasicLit); ok && literal.Kind == token.STRING {
		if text, err := strconv.Unquote(literal.Value); err == nil && text != "" {
			found[text] = true
		}
	}
}

// A name the reader knows, put where the schema does not have it, must be
// strange there: then the reader knows nothing that the schema leaves out.
func TestSchemaHasEveryFieldOfTheReader(t *testing.T) {
	names := namesAskedFor(t)
	known := map[string]map[string]bool{} // object → its properties
	for _, p := range properties(t) {
		if known[p.in] == nil {
			known[p.in] = map[string]bool{}
		}
		known[p.in][p.name] = true
	}
	plain := marshal(t, whole(t))
	for _, in := range slices.Sorted(maps.Keys(known)) {
		strange := slices.DeleteFunc(slices.Clone(names), func(name string) bool { return known[in][name] })
		// Few at a time: only so many strays of one plan are reported.
		for some := range slices.Chunk(strange, mostProblems/4) {
			var plan map[string]any
			require.NoError(t, json.Unmarshal(plain, &plan))
			for _, object := range objectsAt(plan, in) {
				for _, name := range some {
					object[name] = "1"
				}
			}
			reported := map[string]bool{}
			for _, at := range unknown(Read(marshal(t, plan))) {
				reported[at[strings.LastIndex(at, "/")+1:]] = true
			}
			for _, name := range some {
				assert.True(t, reported[name], "%s in %s", name, in)
			}
		}
	}
	all := properties(t)
	for _, name := range names {
		assert.True(t, slices.ContainsFunc(all, func(p property) bool { return p.name == name }), "the reader asks for %s", name)
	}
}

// Every word of every choice is tried at every choice: it is taken in silence
// where the schema has it and remarked on where not.
func TestChoicesAreThoseOfTheSchema(t *testing.T) {
	var choices []property
	words := map[string]bool{"Feet": true, "none at all": true}
	for _, p := range properties(t) {
		enum, ok := p.schema["enum"].([]any)
		if !ok || p.name == "ceilingwright" {
			continue
		}
		choices = append(choices, p)
		for _, w := range enum {
			words[w.(string)] = true
		}
	}
	delete(words, "")
	require.Greater(t, len(choices), 25)
	for _, c := range choices {
		for _, w := range slices.Sorted(maps.Keys(words)) {
			refused := false
			for _, p := range readWith(t, c, w).Problems {
				if strings.HasSuffix(p.At, "/"+c.name) && strings.Contains(p.What.String(), "not among the choices") {
					refused = true
				}
			}
			assert.Equal(t, !slices.Contains(c.schema["enum"].([]any), any(w)), refused, "%q at %s/%s", w, c.in, c.name)
		}
	}
}

// readWith reads a plan that holds nothing but one choice and what makes the
// reader look at it.
func readWith(t *testing.T, c property, w string) Document {
	t.Helper()
	step := func(extra string) string {
		return fmt.Sprintf(`{"ceilingwright":1,"finish":{"steps":[{%s,%q:%q}]}}`, extra, c.name, w)
	}
	switch c.in {
	case "/finish/steps/[]":
		switch c.name {
		case "typedUnit":
			return Read([]byte(step(`"kind":"base","area":"typed"`)))
		case "filmUnit":
			return Read([]byte(step(`"kind":"base","by":"wet"`)))
		case "dryFilmUnit":
			return Read([]byte(step(`"kind":"base","by":"dry"`)))
		case "kind":
			return Read([]byte(step(`"area":"surface"`)))
		}
		return Read([]byte(step(`"kind":"base"`)))
	case "/finish/steps/[]/leaf":
		if c.name == "bandEnds" {
			return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"finish":{"steps":[{"kind":"leaf","leaf":{"lay":"band",%q:%q}}]}}`, c.name, w)))
		}
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"finish":{"steps":[{"kind":"leaf","leaf":{%q:%q}}]}}`, c.name, w)))
	case "/finish/steps/[]/cans/[]", "/finish/steps/[]/mix/[]":
		list := strings.Split(c.in, "/")[4]
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"finish":{"steps":[{"kind":"base",%q:[{%q:%q}]}]}}`, list, c.name, w)))
	case "/mask/layers/[]":
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"mask":{"layers":[{%q:%q}]}}`, c.name, w)))
	case "/mask/layers/[]/panels/[]", "/mask/layers/[]/pieces/[]":
		list := strings.Split(c.in, "/")[4]
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"mask":{"layers":[{%q:[{%q:%q}]}]}}`, list, c.name, w)))
	case "/finish/surfaces/[]", "/finish/kit/[]":
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"finish":{%q:[{%q:%q}]}}`, strings.Split(c.in, "/")[2], c.name, w)))
	case "/finish/climate":
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"finish":{"climate":{%q:%q}}}`, c.name, w)))
	case "/price/rough":
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"price":{"rough":{%q:%q}}}`, c.name, w)))
	case "/room/readings/[]":
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"room":{"form":"lines","readings":[{%q:%q}]}}`, c.name, w)))
	case "/room/obstructions/[]":
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"room":{"obstructions":[{%q:%q}]}}`, c.name, w)))
	case "/room/fixture":
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"room":{"fixture":{%q:%q}}}`, c.name, w)))
	case "/air":
		return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,"air":{"limit":"350",%q:%q}}`, c.name, w)))
	}
	return Read([]byte(fmt.Sprintf(`{"ceilingwright":1,%q:{%q:%q}}`, strings.TrimPrefix(c.in, "/"), c.name, w)))
}

func TestPlansKeptAsExamplesFollowTheSchema(t *testing.T) {
	schema := compiledSchema(t)
	files, err := filepath.Glob("../../testdata/plans/v1/*.json")
	require.NoError(t, err)
	require.Greater(t, len(files), 10, "no plans to look at")
	for _, name := range append(files, "../../site/example.plan.json") {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		plan, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		require.NoError(t, err, name)
		assert.NoError(t, schema.Validate(plan), name)
	}
}

func TestSchemaRefusesWhatTheReaderRemarksOn(t *testing.T) {
	schema := compiledSchema(t)
	for _, text := range []string{
		`{}`, `[]`, `{"ceilingwright":2}`, `{"ceilingwright":1,"room":[]}`, `{"ceilingwright":1,"room":{"length":{}}}`,
		`{"ceilingwright":1,"room":{"length":true}}`, `{"ceilingwright":1,"units":{"gallon":"UK"}}`,
		`{"ceilingwright":1,"mask":{"layers":{}}}`, `{"ceilingwright":1,"finish":{"steps":[{"kind":"varnish"}]}}`,
		`{"ceilingwright":1,"finish":{"steps":[{"cans":[{"unit":"tin"}]}]}}`,
	} {
		plan, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		require.NoError(t, err)
		assert.Error(t, schema.Validate(plan), text)
		assert.NotEmpty(t, Read([]byte(text)).Problems, text)
	}
	for _, text := range []string{
		`{"ceilingwright":1}`, `{"ceilingwright":1,"room":{"length":4780,"colour":"blue"}}`, `{"ceilingwright":1,"room":null}`,
	} {
		plan, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		require.NoError(t, err)
		assert.NoError(t, schema.Validate(plan), text)
	}
}
