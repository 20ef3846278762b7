package bundle

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// gluePath is what the entry below imports; the plugin answers it with the
// toolchain's own glue, so no copy of it can go stale in the source.
const gluePath = "go:wasm_exec"

// pageScript bundles the site's script into one classic script: the glue
// first, then the page. Classic, not a module, because a saved page opened
// from disk may not load modules.
func pageScript(site, glue string) (string, error) {
	entry := `import "` + gluePath + `"; import "./src/entry/page.ts";`
	return bundled(api.BuildOptions{
		Stdin:   &api.StdinOptions{Contents: entry, ResolveDir: site, Sourcefile: "page-entry.ts", Loader: api.LoaderTS},
		Plugins: []api.Plugin{gluePlugin(glue)},
		Format:  api.FormatIIFE,
		Target:  api.ES2020,
	})
}

// pageStyle bundles the site's style into one sheet.
func pageStyle(site string) (string, error) {
	return bundled(api.BuildOptions{
		EntryPoints: []string{filepath.Join(site, "style", "index.css")},
	})
}

func gluePlugin(glue string) api.Plugin {
	return api.Plugin{Name: "glue", Setup: func(build api.PluginBuild) {
		build.OnResolve(api.OnResolveOptions{Filter: "^" + gluePath + "$"},
			func(api.OnResolveArgs) (api.OnResolveResult, error) {
				return api.OnResolveResult{Path: gluePath, Namespace: "glue"}, nil
			})
		build.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: "glue"},
			func(api.OnLoadArgs) (api.OnLoadResult, error) {
				return api.OnLoadResult{Contents: &glue, Loader: api.LoaderJS}, nil
			})
	}}
}

// bundled runs the bundler and hands back the one file it made. A warning
// stops the build too: nothing here is supposed to give one.
func bundled(options api.BuildOptions) (string, error) {
	options.Bundle = true
	options.Write = false
	options.Charset = api.CharsetUTF8
	options.MinifyWhitespace, options.MinifyIdentifiers, options.MinifySyntax = true, true, true
	options.LegalComments = api.LegalCommentsNone
	options.LogLevel = api.LogLevelSilent
	result := api.Build(options)
	if messages := append(result.Errors, result.Warnings...); len(messages) > 0 {
		return "", errors.New(strings.Join(api.FormatMessages(messages, api.FormatMessagesOptions{}), ""))
	}
	if len(result.OutputFiles) != 1 {
		return "", fmt.Errorf("the bundler made %d files, want 1", len(result.OutputFiles))
	}
	return strings.TrimSpace(string(result.OutputFiles[0].Contents)), nil
}
