package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// A structType is one Go struct that stands in the JSON of the sheet, its fields in
// the order they are written. Doc is its comment, a line each.
type structType struct {
	name   string
	doc    []string
	fields []field
}

// A field is one field of a struct: its Go name, its name in JSON, and what it
// holds. Base is "string", "int", "bool" or the name of a struct; list tells that
// there are many of it. Words are all that a text may be, where that is known;
// spare that the field is left out when it is empty; cast is set on a text of a
// named Go type.
type field struct {
	goName, name string
	base         string
	list         bool
	words        []string
	spare, cast  bool
}

func (f *field) isStruct() bool { return f.base != "string" && f.base != "int" && f.base != "bool" }

// source is the declarations of one Go package by name.
type source struct {
	structs map[string]*ast.StructType
	docs    map[string][]string
	words   map[string][]string // the constants of a named text type
	imports map[string]string   // package name to path
}

// module is what the paths of the project's own packages begin with.
const module = "ceilingwright/"

// readStructs reads the struct called top from the package in folder, and every
// struct of the package that is reached from it, in the order they are met.
func readStructs(root, folder, top string) ([]structType, error) {
	pkg, err := readSource(root, folder)
	if err != nil {
		return nil, err
	}
	var found []structType
	met := map[string]bool{}
	var walk func(name string) error
	walk = func(name string) error {
		if met[name] {
			return nil
		}
		met[name] = true
		declared := pkg.structs[name]
		if declared == nil {
			return fmt.Errorf("%s: no struct %s", folder, name)
		}
		s := structType{name: name, doc: pkg.docs[name]}
		for _, f := range declared.Fields.List {
			made, err := pkg.field(root, f)
			if err != nil {
				return fmt.Errorf("%s: %s: %w", folder, name, err)
			}
			s.fields = append(s.fields, made)
		}
		found = append(found, s)
		for i := range s.fields {
			if s.fields[i].isStruct() {
				if err := walk(s.fields[i].base); err != nil {
					return err
				}
			}
		}
		return nil
	}
	return found, walk(top)
}

// field reads one field. Its json tag names it; an is tag lists the words it may
// hold, with | between them.
func (s *source) field(root string, f *ast.Field) (field, error) {
	if len(f.Names) != 1 || f.Tag == nil {
		return field{}, fmt.Errorf("a field needs one name and a json tag")
	}
	made := field{goName: f.Names[0].Name}
	text, err := strconv.Unquote(f.Tag.Value)
	if err != nil {
		return field{}, err
	}
	tag := reflect.StructTag(text)
	name, option, _ := strings.Cut(tag.Get("json"), ",")
	made.name, made.spare = name, option == "omitempty"
	if !plainName(name) || option != "" && !made.spare {
		return field{}, fmt.Errorf("%s: no writer for the tag %q", made.goName, text)
	}
	if words, ok := tag.Lookup("is"); ok {
		made.words = strings.Split(words, "|")
	}
	kind := f.Type
	if list, ok := kind.(*ast.ArrayType); ok && list.Len == nil {
		made.list, kind = true, list.Elt
	}
	if made.spare && !made.list {
		return field{}, fmt.Errorf("%s: only a list can be left out", made.goName)
	}
	switch k := kind.(type) {
	case *ast.Ident:
		made.base = k.Name
		if words := s.words[k.Name]; words != nil {
			made.base, made.cast, made.words = "string", true, words
		}
	case *ast.SelectorExpr:
		folder := strings.TrimPrefix(s.imports[k.X.(*ast.Ident).Name], module)
		other, err := readSource(root, folder)
		if err != nil {
			return field{}, err
		}
		made.base, made.cast, made.words = "string", true, other.words[k.Sel.Name]
		if made.words == nil {
			return field{}, fmt.Errorf("%s: no words for %s.%s", made.goName, folder, k.Sel.Name)
		}
	default:
		return field{}, fmt.Errorf("%s: no writer for its type", made.goName)
	}
	return made, nil
}

// plainName tells whether a name can stand between quotation marks as it is.
func plainName(name string) bool {
	letter := func(r rune) bool { return 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' }
	return name != "" && !strings.ContainsFunc(name, func(r rune) bool { return !letter(r) })
}

// readSource reads the declarations of the package in folder.
func readSource(root, folder string) (*source, error) {
	s := &source{map[string]*ast.StructType{}, map[string][]string{}, map[string][]string{}, map[string]string{}}
	names, err := filepath.Glob(filepath.Join(root, filepath.FromSlash(folder), "*.go"))
	if err != nil {
		return nil, err
	}
	if len(names) == 0 {
		return nil, fmt.Errorf("%s: %w", folder, fs.ErrNotExist)
	}
	slices.Sort(names)
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		for _, spec := range file.Imports {
			path, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return nil, err
			}
			s.imports[path[strings.LastIndex(path, "/")+1:]] = path
		}
		for _, d := range file.Decls {
			if general, ok := d.(*ast.GenDecl); ok {
				s.declaration(general)
			}
		}
	}
	return s, nil
}

func (s *source) declaration(d *ast.GenDecl) {
	for _, spec := range d.Specs {
		switch spec := spec.(type) {
		case *ast.TypeSpec:
			if declared, ok := spec.Type.(*ast.StructType); ok {
				s.structs[spec.Name.Name] = declared
				s.docs[spec.Name.Name] = strings.Split(strings.TrimSpace(d.Doc.Text()), "\n")
			}
		case *ast.ValueSpec:
			named, ok := spec.Type.(*ast.Ident)
			if !ok || d.Tok != token.CONST || len(spec.Values) != 1 {
				continue
			}
			if literal, ok := spec.Values[0].(*ast.BasicLit); ok && literal.Kind == token.STRING {
				if word, err := strconv.Unquote(literal.Value); err == nil {
					s.words[named.Name] = append(s.words[named.Name], word)
				}
			}
		}
	}
}
