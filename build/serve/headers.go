// Package serve serves the published folder on this machine with the headers
// the host sends, so that what is tried here is what people get. The headers
// stand here once; a test holds netlify.toml to them.
package serve

import "strings"

// Policy is the content policy of the hosted page: its own script, style and
// engine, no inline script, nobody else. 'wasm-unsafe-eval' allows the engine
// and still blocks eval (open since Chromium 97, Firefox 102, Safari 16, from
// memory). There is no frame-ancestors on purpose: the page is made to be put
// into other pages, and even frame-ancestors * would keep it out of pages opened
// from disk, whose origin * does not match (tried in Chromium 156).
const Policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; " +
	"img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'"

// WorkerPolicy is that of the worker for starts without a signal: it may ask its own
// site and nobody else.
const WorkerPolicy = "default-src 'none'; connect-src 'self'"

// Header is one header line.
type Header struct{ Name, Value string }

// Rule gives headers to every path that For fits: a path, or a path with one
// star that stands for anything.
type Rule struct {
	For     string
	Headers []Header
}

const revalidate = "public, max-age=0, must-revalidate"

// Rules are the headers of the published folder. No two rules that fit one
// path set the same header: hosts differ in which of them wins. The policy is
// on the hosted page alone: the single file brings its own, stricter one, and
// two policies on one page must both allow everything.
func Rules() []Rule {
	page := []Header{{"Content-Security-Policy", Policy}, {"Cache-Control", revalidate}}
	return []Rule{
		{"/*", []Header{
			{"X-Content-Type-Options", "nosniff"},
			{"Referrer-Policy", "no-referrer"},
		}},
		{"/", page},
		{"/index.html", page},
		{"/ceilingwright.html", []Header{{"Cache-Control", revalidate}}},
		// Browsers ask for the worker anew whatever stands here; the host between
		// must not keep an old one.
		{"/offline.js", []Header{{"Content-Security-Policy", WorkerPolicy}, {"Cache-Control", revalidate}}},
		// An asset's name changes with its content. The star in the second
		// header lets a page inside a sandboxed frame, which has no origin,
		// load its own engine.
		{"/assets/*", []Header{
			{"Cache-Control", "public, max-age=31536000, immutable"},
			{"Access-Control-Allow-Origin", "*"},
		}},
		{"/assets/*.wasm", []Header{{"Content-Type", "application/wasm"}}},
	}
}

// Fits says whether the rule is for path.
func (r Rule) Fits(path string) bool {
	before, after, star := strings.Cut(r.For, "*")
	if !star {
		return path == r.For
	}
	return len(path) >= len(before)+len(after) && strings.HasPrefix(path, before) && strings.HasSuffix(path, after)
}

// HostConfig writes the rules as netlify.toml has them.
func HostConfig() string {
	var b strings.Builder
	for _, r := range Rules() {
		b.WriteString("\n[[headers]]\n  for = \"" + r.For + "\"\n  [headers.values]\n")
		for _, h := range r.Headers {
			b.WriteString("    " + h.Name + " = \"" + h.Value + "\"\n")
		}
	}
	return b.String()
}
