// Package sentences finds everything the engine and the page's script can say: their
// sentences as they stand in the source. Whoever puts them into another language gets
// them as a list; a test holds every call to the holes of its sentence.
package sentences

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/safety"
)

// Call is one place where a sentence is said: the sentence, the names its holes are
// given values for, and where that is. Faults are what is wrong with the call.
type Call struct {
	Sentence string
	Given    []string
	At       string // core/mask/gap.go:31
	Faults   []string
}

// InGo are all calls of Say in the Go files below a folder of root, tests left out,
// in the order of the files.
func InGo(root, folder string) ([]Call, error) {
	var calls []Call
	err := filepath.WalkDir(filepath.Join(root, folder), func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		found, err := inFile(root, path)
		calls = append(calls, found...)
		return err
	})
	return calls, err
}

func inFile(root, path string) ([]Call, error) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, path, nil, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	name, err := filepath.Rel(root, path)
	if err != nil {
		return nil, err
	}
	constants := constantsOf(file)
	var calls []Call
	var holes map[string]string
	ast.Inspect(file, func(node ast.Node) bool {
		if made, ok := node.(*ast.FuncDecl); ok {
			if handsOn[made.Name.Name] {
				return false
			}
			holes = holesOf(made)
		}
		call, ok := node.(*ast.CallExpr)
		if !ok || !says(call) {
			return true
		}
		at := fmt.Sprintf("%s:%d", filepath.ToSlash(name), files.Position(call.Pos()).Line)
		calls = append(calls, callOf(call, at, constants, holes))
		return true
	})
	return calls, nil
}

// handsOn are the functions that say what they were given.
var handsOn = map[string]bool{"Say": true, "Filled": true}

// says tells whether a call is one of words.Say, of the Say of a page, of a style or of package
// measure, which stands below the words, or of the fail of a reader of JSON.
func says(call *ast.CallExpr) bool {
	if len(call.Args) == 0 {
		return false
	}
	switch callee := call.Fun.(type) {
	case *ast.SelectorExpr:
		return callee.Sel.Name == "Say" || callee.Sel.Name == "fail"
	case *ast.Ident:
		return callee.Name == "Say"
	}
	return false
}

func callOf(call *ast.CallExpr, at string, constants, holes map[string]string) Call {
	c := Call{At: at}
	sentence, ok := text(call.Args[0], constants)
	if !ok {
		c.Faults = append(c.Faults, "the sentence is put together when it is said: write it whole")
		return c
	}
	c.Sentence = sentence
	for _, hole := range call.Args[1:] {
		given, ok := holeName(hole, holes)
		if !ok {
			c.Faults = append(c.Faults, "a hole without a name that stands here: use words.Name(\"name\", …) and the like")
			return c
		}
		c.Given = append(c.Given, given)
	}
	c.Faults = append(c.Faults, faultsOf(sentence, c.Given)...)
	return c
}

// holesOf are the variables of a function that hold a hole made in it, and the name
// of that hole. One that holds holes of several names is not among them.
func holesOf(made *ast.FuncDecl) map[string]string {
	holes := map[string]string{}
	ast.Inspect(made, func(node ast.Node) bool {
		set, ok := node.(*ast.AssignStmt)
		if !ok {
			return true
		}
		for i, to := range set.Lhs {
			variable, ok := to.(*ast.Ident)
			if !ok {
				continue
			}
			name := ""
			if len(set.Rhs) == len(set.Lhs) {
				name, _ = holeName(set.Rhs[i], nil)
			}
			if before, known := holes[variable.Name]; known && before != name {
				name = ""
			}
			holes[variable.Name] = name
		}
		return true
	})
	return holes
}

// holeName is the name of a hole: the first argument of the call that makes it, or
// of the one that made what the variable holds.
func holeName(hole ast.Expr, holes map[string]string) (string, bool) {
	if variable, ok := hole.(*ast.Ident); ok {
		name := holes[variable.Name]
		return name, name != ""
	}
	call, ok := hole.(*ast.CallExpr)
	if !ok || len(call.Args) == 0 {
		return "", false
	}
	return text(call.Args[0], nil)
}

// text is a text written out in the source: a literal, several of them added, or a
// constant of the same file.
func text(e ast.Expr, constants map[string]string) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		s, err := strconv.Unquote(e.Value)
		return s, err == nil && e.Kind == token.STRING
	case *ast.BinaryExpr:
		left, ok := text(e.X, constants)
		right, also := text(e.Y, constants)
		return left + right, ok && also && e.Op == token.ADD
	case *ast.Ident:
		s, ok := constants[e.Name]
		return s, ok
	case *ast.ParenExpr:
		return text(e.X, constants)
	}
	return "", false
}

func constantsOf(file *ast.File) map[string]string {
	constants := map[string]string{}
	ast.Inspect(file, func(node ast.Node) bool {
		declared, ok := node.(*ast.GenDecl)
		if !ok || declared.Tok != token.CONST {
			return true
		}
		for _, spec := range declared.Specs {
			values := spec.(*ast.ValueSpec)
			for i, name := range values.Names {
				if i < len(values.Values) {
					if s, ok := text(values.Values[i], constants); ok {
						constants[name.Name] = s
					}
				}
			}
		}
		return true
	})
	return constants
}

// faultsOf is what does not fit between a sentence and the values given.
func faultsOf(sentence string, given []string) (faults []string) {
	holes, faults := Holes(sentence)
	for i, name := range given {
		if !slices.Contains(holes, name) {
			faults = append(faults, "there is no hole {"+name+"} in the sentence")
		}
		if slices.Contains(given[:i], name) {
			faults = append(faults, "{"+name+"} is given twice")
		}
	}
	for _, name := range holes {
		if !slices.Contains(given, name) {
			faults = append(faults, "{"+name+"} is given no value")
		}
	}
	return faults
}

// Holes are the names of the holes of a sentence, each once, and what is wrong with
// how they are written. What the country names, {~cornice}, is no hole.
func Holes(sentence string) (names, faults []string) {
	for rest := sentence; ; {
		_, after, found := strings.Cut(rest, "{")
		if !found {
			return names, faults
		}
		hole, left, closed := strings.Cut(after, "}")
		if !closed {
			return names, append(faults, "a brace that is not closed")
		}
		rest = left
		if strings.HasPrefix(hole, "~") {
			continue
		}
		name := strings.TrimPrefix(hole, "^")
		if end := strings.IndexAny(name, "|?"); end >= 0 {
			if forms := strings.Split(name[end+1:], "|"); len(forms) != 2 {
				faults = append(faults, "{"+hole+"} needs two forms, for one and for more")
			}
			name = name[:end]
		}
		if name == "" || strings.ContainsFunc(name, func(r rune) bool { return (r < 'a' || r > 'z') && (r < 'A' || r > 'Z') }) {
			faults = append(faults, "{"+hole+"} has no plain name")
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
}

// InRules are the sentences of the table of safety rules, each with the id of its rule.
// Their holes are amounts by the names the table has for them, which may have several
// words; a test of the table holds it to them.
func InRules() []Call {
	var calls []Call
	for _, r := range safety.Table() {
		for _, sentence := range [...]string{r.Words, r.First, r.Adds, r.Working, r.Asks, r.Decides, r.Source} {
			if sentence == "" {
				continue
			}
			holes, _ := Holes(sentence)
			call := Call{Sentence: sentence, Given: holes, At: "core/safety, rule " + r.ID}
			if strings.Count(sentence, "{") != strings.Count(sentence, "}") {
				call.Faults = append(call.Faults, "a brace that is not closed")
			}
			calls = append(calls, call)
		}
	}
	return calls
}

// Listed are the sentences of calls, each once, in the order they first stand.
func Listed(calls []Call) []string {
	var list []string
	seen := map[string]bool{}
	for _, c := range calls {
		if !seen[c.Sentence] {
			seen[c.Sentence] = true
			list = append(list, c.Sentence)
		}
	}
	return list
}
