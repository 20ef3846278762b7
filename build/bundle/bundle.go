// Package bundle makes everything that is published: the hosted page with its
// assets, the single file, and the carrier that a saved page starts from. It
// needs Go and nothing else: no package registry, no Node. The same source
// gives the same bytes: files are written in one order, nothing carries a
// time, and every asset has a hash of its content in its name.
//
// It does not serve (package serve) and does not start browsers (package
// chromium).
package bundle

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// The assets that site/index.html names; their paths go there.
const (
	tokenStyle   = "{{page.css}}"
	tokenScript  = "{{page.js}}"
	tokenEngine  = "{{engine.wasm}}"
	tokenCarrier = "{{carrier.js}}"
	tokenVersion = "{{version}}" // which version of all of them this is
)

// File is one file of the published folder. Path uses forward slashes.
type File struct {
	Path    string
	Content []byte
}

// Output is the whole published folder, sorted by path.
type Output []File

// Build makes the published folder of the project at root, in memory.
func Build(root string) (Output, error) { return buildWith(Toolchain.Engine, root, nil) }

// BuildIn is Build in another language: the JSON text of the list of sentences that
// the command words prints, filled in.
func BuildIn(root string, language []byte) (Output, error) {
	return buildWith(Toolchain.Engine, root, language)
}

// BuildWhole is Build with the engine left as it was linked, to find faults
// with: larger by a third, and its panics say where they were.
func BuildWhole(root string) (Output, error) { return buildWith(Toolchain.Linked, root, nil) }

func buildWith(compile func(t Toolchain, dir, path string) ([]byte, error), root string, language []byte) (Output, error) {
	toolchain, err := ToolchainAt(root)
	if err != nil {
		return nil, err
	}
	engine, err := compile(toolchain, root, "./wasm")
	if err != nil {
		return nil, err
	}
	glue, err := toolchain.Glue()
	if err != nil {
		return nil, err
	}
	licences, err := toolchain.Licences(root, "./wasm")
	if err != nil {
		return nil, err
	}
	schema, err := os.ReadFile(filepath.Join(root, "core", "plan", "plan.schema.json"))
	if err != nil {
		return nil, err
	}
	output, err := assemble(filepath.Join(root, "site"), glue, licences, engine, schema, language)
	if err != nil {
		return nil, err
	}
	if len(language) == 0 {
		if err := output.makeExample(root); err != nil {
			return nil, err
		}
	}
	if output, err = output.withWorker(filepath.Join(root, "site")); err != nil {
		return nil, fmt.Errorf("the worker for starts without a signal: %w", err)
	}
	return sorted(append(output, File{"plan.schema.json", schema}, File{"licences.txt", []byte(licences)})), nil
}

// assemble makes the pages from the site's folder, a compiled engine and the
// plan's schema, in a language if there is one.
func assemble(site, glue, licences string, engine, schema, language []byte) (Output, error) {
	script, err := pageScript(site, glue)
	if err != nil {
		return nil, fmt.Errorf("the page's script: %w", err)
	}
	style, err := pageStyle(site)
	if err != nil {
		return nil, fmt.Errorf("the page's style: %w", err)
	}
	page, err := putTogether(os.DirFS(site), schema)
	if err != nil {
		return nil, fmt.Errorf("the page: %w", err)
	}
	if page, err = inLanguage(page, language); err != nil {
		return nil, fmt.Errorf("the language: %w", err)
	}
	// The icon goes inside: a copy that the browser saves would otherwise name
	// it by its address, and ask the network for it when opened from disk.
	index, err := icons(site, page)
	if err != nil {
		return nil, err
	}
	template, err := singleTemplate(index, style, script, licences)
	if err != nil {
		return nil, fmt.Errorf("the single file: %w", err)
	}
	alone, err := single(template, engine, "")
	if err != nil {
		return nil, fmt.Errorf("the single file: %w", err)
	}
	assets := Output{
		asset("page", "css", []byte(style)),
		asset("page", "js", []byte(script)),
		asset("engine", "wasm", engine),
		asset("carrier", "js", []byte(carrier(template, engine))),
	}
	hosted, err := fill(index, []hole{
		{tokenStyle, assets[0].Path},
		{tokenScript, assets[1].Path},
		{tokenEngine, assets[2].Path},
		{tokenCarrier, assets[3].Path},
	})
	if err != nil {
		return nil, fmt.Errorf("index.html: %w", err)
	}
	output := append(assets, File{"index.html", []byte(hosted)}, File{"ceilingwright.html", []byte(alone)})
	pictures, err := picturesOf(site)
	return slices.Concat(output, pictures, installable()), err
}

// asset names a file by its content, so that a browser may keep it for good.
func asset(name, extension string, content []byte) File {
	sum := sha256.Sum256(content)
	return File{"assets/" + name + "-" + hex.EncodeToString(sum[:6]) + "." + extension, content}
}

// picturesOf takes the site's own pictures along, as they are.
func picturesOf(site string) (Output, error) {
	names, err := filepath.Glob(filepath.Join(site, "*.svg"))
	if err != nil {
		return nil, err
	}
	var pictures Output
	for _, name := range names {
		content, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		pictures = append(pictures, File{filepath.Base(name), content})
	}
	return pictures, nil
}

func sorted(output Output) Output {
	slices.SortFunc(output, func(a, b File) int { return cmp.Compare(a.Path, b.Path) })
	return output
}

// Find gives the one file whose path starts with prefix and ends in suffix.
func (o Output) Find(prefix, suffix string) (File, bool) {
	for _, f := range o {
		if strings.HasPrefix(f.Path, prefix) && strings.HasSuffix(f.Path, suffix) {
			return f, true
		}
	}
	return File{}, false
}

// Hash is one sum over every path and byte: equal output, equal hash.
func (o Output) Hash() string {
	sum := sha256.New()
	for _, f := range o {
		fmt.Fprintf(sum, "%s\x00%d\x00", f.Path, len(f.Content))
		sum.Write(f.Content)
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// Write puts the output into folder, which it replaces whole: no file of an
// earlier build stays. A folder that holds anything a build did not make is
// left alone and refused.
func (o Output) Write(folder string) error {
	if err := checkReplaceable(folder); err != nil {
		return err
	}
	if err := os.RemoveAll(folder); err != nil {
		return err
	}
	for _, f := range o {
		path := filepath.Join(folder, filepath.FromSlash(f.Path))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(path, f.Content, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// checkReplaceable guards against a folder given by mistake: it must be new,
// empty, or have been written by a build before.
func checkReplaceable(folder string) error {
	entries, err := os.ReadDir(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	for _, e := range entries {
		if e.Name() == "ceilingwright.html" {
			return nil
		}
	}
	if len(entries) > 0 {
		return fmt.Errorf("%s holds other files; give an empty folder", folder)
	}
	return nil
}

// Root walks up from the working folder to the project's own go.mod.
func Root() (string, error) {
	folder, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		text, err := os.ReadFile(filepath.Join(folder, "go.mod"))
		if err == nil && strings.HasPrefix(string(text), "module ceilingwright\n") {
			return folder, nil
		}
		up := filepath.Dir(folder)
		if up == folder {
			return "", errors.New("not inside the ceilingwright project: no go.mod of it here or above")
		}
		folder = up
	}
}

// CopySource copies what a build reads from the project at root into folder,
// to build it a second time elsewhere.
func CopySource(root, folder string) error {
	for _, part := range []string{"core", "wasm", "site"} {
		if err := copyFolder(filepath.Join(root, part), filepath.Join(folder, part)); err != nil {
			return err
		}
	}
	for _, name := range []string{"go.mod", "go.sum"} {
		if err := copyFile(filepath.Join(root, name), filepath.Join(folder, name)); err != nil {
			return err
		}
	}
	return nil
}

func copyFolder(from, to string) error {
	return filepath.WalkDir(from, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && entry.Name() == "node_modules" {
			return fs.SkipDir
		}
		relative, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		if entry.IsDir() {
			return os.MkdirAll(filepath.Join(to, relative), 0o755)
		}
		return copyFile(path, filepath.Join(to, relative))
	})
}

func copyFile(from, to string) error {
	content, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	return os.WriteFile(to, content, 0o644)
}
