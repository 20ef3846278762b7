package serve

import (
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func folder() fstest.MapFS {
	return fstest.MapFS{
		"index.html":              {Data: []byte("<!doctype html>")},
		"ceilingwright.html":      {Data: []byte("<!doctype html>")},
		"plan.schema.json":        {Data: []byte("{}")},
		"icon.svg":                {Data: []byte("<svg/>")},
		"icon-192.png":            {Data: []byte("\x89PNG")},
		"offline.js":              {Data: []byte("1")},
		"assets/engine-0123.wasm": {Data: []byte("\x00asm")},
		"assets/page-0123.js":     {Data: []byte("1")},
		"assets/page-0123.css":    {Data: []byte("a{}")},
	}
}

func answer(method, path string) *http.Response {
	recorder := httptest.NewRecorder()
	Handler(folder()).ServeHTTP(recorder, httptest.NewRequest(method, path, nil))
	return recorder.Result()
}

func TestEveryFileHasItsTypeAndLife(t *testing.T) {
	const forever = "public, max-age=31536000, immutable"
	for _, row := range []struct{ path, kind, life, origin, policy string }{
		{"/", "text/html; charset=utf-8", revalidate, "", Policy},
		{"/index.html", "text/html; charset=utf-8", revalidate, "", Policy},
		{"/ceilingwright.html", "text/html; charset=utf-8", revalidate, "", ""},
		{"/plan.schema.json", "application/json", "", "", ""},
		{"/icon.svg", "image/svg+xml", "", "", ""},
		{"/icon-192.png", "image/png", "", "", ""},
		{"/offline.js", "text/javascript; charset=utf-8", revalidate, "", WorkerPolicy},
		{"/assets/engine-0123.wasm", "application/wasm", forever, "*", ""},
		{"/assets/page-0123.js", "text/javascript; charset=utf-8", forever, "*", ""},
		{"/assets/page-0123.css", "text/css; charset=utf-8", forever, "*", ""},
	} {
		got := answer("GET", row.path)
		assert.Equal(t, http.StatusOK, got.StatusCode, row.path)
		assert.Equal(t, row.kind, got.Header.Get("Content-Type"), row.path)
		assert.Equal(t, row.life, got.Header.Get("Cache-Control"), row.path)
		assert.Equal(t, row.origin, got.Header.Get("Access-Control-Allow-Origin"), row.path)
		assert.Equal(t, row.policy, got.Header.Get("Content-Security-Policy"), row.path)
		assert.Equal(t, "nosniff", got.Header.Get("X-Content-Type-Options"), row.path)
		assert.Equal(t, "no-referrer", got.Header.Get("Referrer-Policy"), row.path)
		assert.NotEmpty(t, got.Header.Get("ETag"), row.path)
	}
}

func TestNothingElseIsServed(t *testing.T) {
	for _, row := range []struct {
		method, path string
		want         int
	}{
		{"GET", "/assets/", http.StatusNotFound},
		{"GET", "/assets", http.StatusNotFound},
		{"GET", "/nothing.html", http.StatusNotFound},
		{"GET", "/../serve.go", http.StatusNotFound},
		{"GET", "/assets/..%2f..%2fgo.mod", http.StatusNotFound},
		{"POST", "/", http.StatusMethodNotAllowed},
	} {
		assert.Equal(t, row.want, answer(row.method, row.path).StatusCode, row.path)
	}
}

func TestUnchangedFileIsNotSentAgain(t *testing.T) {
	request := httptest.NewRequest("GET", "/", nil)
	request.Header.Set("If-None-Match", answer("GET", "/").Header.Get("ETag"))
	recorder := httptest.NewRecorder()
	Handler(folder()).ServeHTTP(recorder, request)
	assert.Equal(t, http.StatusNotModified, recorder.Code)
}

func TestPolicyForbidsInlineScriptAndStrangers(t *testing.T) {
	assert.NotContains(t, Policy, "unsafe-inline")
	assert.NotContains(t, Policy, "'unsafe-eval'")
	assert.NotContains(t, Policy, "http")
	assert.True(t, strings.HasPrefix(Policy, "default-src 'none';"))
}

// Hosts differ in which rule wins where two set one header, so none may.
func TestNoHeaderIsSetTwiceForOnePath(t *testing.T) {
	for path := range folder() {
		seen := map[string]string{}
		for _, rule := range Rules() {
			if !rule.Fits("/" + path) {
				continue
			}
			for _, h := range rule.Headers {
				assert.Empty(t, seen[h.Name], "%s of /%s comes from %s and %s", h.Name, path, seen[h.Name], rule.For)
				seen[h.Name] = rule.For
			}
		}
	}
}

func TestFits(t *testing.T) {
	for _, row := range []struct {
		rule, path string
		want       bool
	}{
		{"/", "/", true}, {"/", "/a", false},
		{"/*", "/", true}, {"/*", "/a/b", true},
		{"/assets/*.wasm", "/assets/e.wasm", true}, {"/assets/*.wasm", "/assets/e.js", false},
		{"/a*a", "/a", false},
	} {
		assert.Equal(t, row.want, Rule{For: row.rule}.Fits(row.path), "%s on %s", row.rule, row.path)
	}
}

func TestHostSendsTheSameHeaders(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "netlify.toml"))
	require.NoError(t, err)
	_, headers, found := strings.Cut(string(text), "\n[[headers]]")
	require.True(t, found)
	assert.Equal(t, HostConfig(), "\n[[headers]]"+headers, "copy the rules of headers.go into netlify.toml")
}
