package bundle

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

// The single file is the whole page in one HTML file that opens from disk and
// asks the network for nothing. It is made from a template with three holes:
//
//	<script type="text/plain" id="engine"><!--hole:engine--></script>
//	    base64 of the gzipped engine (wasm)
//	<script type="text/plain" id="page"><!--hole:page--></script>
//	    base64 of the gzipped template itself, its holes open, so that a copy
//	    can make copies
//	<script type="application/json" id="plan"><!--hole:plan--></script>
//	    the plan as JSON with every < written \u003c, or nothing
//
// A fourth block, id="licences", has the terms of what is inside, to be read.
//
// Each token stands exactly once in the template, which the build checks: the
// page's own script is in the template too and may not spell a token out. All
// three are filled in one pass. The page fills them in the same way for "Take
// it along": on the hosted page from the carrier script, in a single file from
// its own blocks.
const (
	holeEngine = "<!--hole:engine-->"
	holePage   = "<!--hole:page-->"
	holePlan   = "<!--hole:plan-->"
)

// The elements of index.html that the single file replaces.
var (
	styleElement   = regexp.MustCompile(`<link\b[^>]*\{\{page\.css\}\}[^>]*>`)
	scriptElement  = regexp.MustCompile(`<script\b[^>]*\{\{page\.js\}\}[^>]*>\s*</script>`)
	carrierElement = regexp.MustCompile(`<script\b[^>]*\{\{carrier\.js\}\}[^>]*>\s*</script>`)
	manifestLink   = regexp.MustCompile(`<link\b[^>]*\brel="manifest"[^>]*>\n?`)
	engineElement  = regexp.MustCompile(`<link\b[^>]*\{\{engine\.wasm\}\}[^>]*>`)
	planElement    = regexp.MustCompile(`<script\b[^>]*\bid="?plan"?[^>]*>\s*</script>`)
	iconElement    = regexp.MustCompile(`<link\b[^>]*\brel="icon"[^>]*\bhref="([^"]+)"[^>]*>`)
	charsetElement = regexp.MustCompile(`(?i)<meta charset="?utf-8"?\s*/?>`)
)

// singleTemplate makes the template from the site's index.html.
func singleTemplate(index, style, script, licences string) (string, error) {
	if err := checkInline(style, script); err != nil {
		return "", err
	}
	if strings.Contains(licences, "<") {
		return "", errors.New("a licence has a < in it, which could end the block it stands in")
	}
	index = engineElement.ReplaceAllString(index, "")
	index = manifestLink.ReplaceAllString(index, "")
	index = strings.NewReplacer(tokenEngine, "", tokenVersion, "").Replace(index)
	foot := `<script type="text/plain" id="engine">` + holeEngine + "</script>\n" +
		`<script type="text/plain" id="page">` + holePage + "</script>\n" +
		`<script type="text/plain" id="licences">` + "\n" + licences + "</script>\n" +
		"<script>" + script + "</script>\n</body>"
	for _, swap := range []struct {
		name    string
		element *regexp.Regexp
		with    string
	}{
		{"<meta charset>", charsetElement, `<meta charset="utf-8">` + "\n" + policyElement(style, script)},
		{"the style's <link>", styleElement, "<style>" + style + "</style>"},
		{"the page's <script>", scriptElement, ""},
		{"the carrier's <script>", carrierElement, ""},
		{`<script id="plan">`, planElement, `<script type="application/json" id="plan">` + holePlan + "</script>"},
		{"</body>", regexp.MustCompile(`</body>`), foot},
	} {
		if n := len(swap.element.FindAllStringIndex(index, -1)); n != 1 {
			return "", fmt.Errorf("index.html has %s %d times, want once", swap.name, n)
		}
		index = swap.element.ReplaceAllLiteralString(index, swap.with)
	}
	for _, hole := range []string{holeEngine, holePage, holePlan} {
		if n := strings.Count(index, hole); n != 1 {
			return "", fmt.Errorf("%s stands %d times in the template, want once", hole, n)
		}
	}
	return index, nil
}

// single fills the template: the page as it is downloaded, with plan in it
// ("" for none).
func single(template string, engine []byte, plan string) (string, error) {
	return fill(template, []hole{
		{holeEngine, packed(engine)},
		{holePage, packed([]byte(template))},
		{holePlan, strings.ReplaceAll(plan, "<", `\u003c`)},
	})
}

// carrier is the script a page saved by the browser starts from: on disk it
// may load a script beside it, but fetch nothing. The hosted page loads it
// too when it is asked for a single file.
func carrier(template string, engine []byte) string {
	return `globalThis.ceilingwrightCarrier={engine:"` + packed(engine) + `",page:"` + packed([]byte(template)) + `"};`
}

// packed is base64 of gzip. The head of the gzip carries no time and no name,
// so the same input gives the same text.
func packed(content []byte) string {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err == nil {
		_, err = w.Write(content)
	}
	if err == nil {
		err = w.Close()
	}
	if err != nil {
		panic(err) // a buffer takes every write and the level is valid
	}
	return base64.StdEncoding.EncodeToString(b.Bytes())
}

// singlePolicy is the content policy of the single file: it runs the one
// script and the one style that are in it and talks to nobody. It stands in a
// meta element because a file has no headers.
func singlePolicy(style, script string) string {
	return "default-src 'none'; script-src " + hashSource(script) + " 'wasm-unsafe-eval'; style-src " + hashSource(style) +
		"; img-src data: blob:; base-uri 'none'; form-action 'none'"
}

func policyElement(style, script string) string {
	return `<meta http-equiv="Content-Security-Policy" content="` + singlePolicy(style, script) + `">`
}

// hashSource is a source expression that allows the inline text it was made
// from (Content Security Policy Level 3, section 2.3.1).
func hashSource(inline string) string {
	sum := sha256.Sum256([]byte(inline))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

// checkInline refuses what an HTML parser would read differently inside an
// element, or would change before the policy's hash is taken (HTML standard,
// "Restrictions for contents of script elements"; newline normalisation).
func checkInline(style, script string) error {
	for _, bad := range []string{"</script", "<script", "<!--", "]]>", "\r", "\x00"} {
		if strings.Contains(strings.ToLower(script), bad) {
			return fmt.Errorf("the page's script holds %q, which may not stand inside a script element", bad)
		}
	}
	for _, bad := range []string{"</style", "\r", "\x00"} {
		if strings.Contains(strings.ToLower(style), bad) {
			return fmt.Errorf("the page's style holds %q, which may not stand inside a style element", bad)
		}
	}
	return nil
}

// icons puts the page's icon inside as a data address.
func icons(site, index string) (string, error) {
	var failed error
	index = iconElement.ReplaceAllStringFunc(index, func(element string) string {
		name := iconElement.FindStringSubmatch(element)[1]
		if strings.HasPrefix(name, "data:") {
			return element
		}
		if filepath.Ext(name) != ".svg" || filepath.Base(name) != name {
			failed = errors.Join(failed, fmt.Errorf("the icon %s is not an .svg file of the site's folder", name))
			return element
		}
		picture, err := os.ReadFile(filepath.Join(site, name))
		if err != nil {
			failed = errors.Join(failed, err)
			return element
		}
		inside := "data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString(picture)
		return strings.Replace(element, name, inside, 1)
	})
	return index, failed
}
