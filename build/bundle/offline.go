package bundle

import (
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// The worker for starts without a signal keeps one version of the page: its HTML and
// all its assets, each with the hash that it must have (Subresource Integrity,
// section 3). A host that changes a file on its way therefore has no such starts,
// and everything else. Of the pictures and the single file nothing is kept.

// withWorker gives a page that is whole its version, and adds the worker for it.
func (o Output) withWorker(site string) (Output, error) {
	assets := Output{}
	page := -1
	for i, f := range o {
		if f.Path == "index.html" {
			page = i
		} else if strings.HasPrefix(f.Path, "assets/") {
			assets = append(assets, f)
		}
	}
	index := string(o[page].Content)
	version := versionOf(index)
	hosted, err := fill(index, []hole{{tokenVersion, version}})
	if err != nil {
		return nil, err
	}
	o[page].Content = []byte(hosted)
	worker, err := offlineWorker(site, version, o[page].Content, assets)
	return append(o, worker), err
}

// versionOf is one short sum over the page, which names its assets by their own sums.
func versionOf(index string) string {
	sum := sha256.Sum256([]byte(index))
	return hex.EncodeToString(sum[:6])
}

// offlineWorker makes offline.js. It is no asset: its name must stay, since browsers
// look for its next version under it.
func offlineWorker(site, version string, hosted []byte, assets Output) (File, error) {
	files := [][2]string{{"./", integrity(hosted)}}
	for _, a := range assets {
		files = append(files, [2]string{a.Path, integrity(a.Content)})
	}
	list, err := json.Marshal(files)
	if err != nil {
		return File{}, err
	}
	script, err := bundled(api.BuildOptions{
		EntryPoints: []string{filepath.Join(site, "src", "entry", "offline.ts")},
		Define:      map[string]string{"VERSION": `"` + version + `"`, "FILES": string(list)},
		Format:      api.FormatIIFE,
		Target:      api.ES2020,
	})
	return File{"offline.js", []byte(script)}, err
}

func integrity(content []byte) string {
	sum := sha256.Sum256(content)
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
