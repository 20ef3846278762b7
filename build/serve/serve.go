package serve

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/http"
	"path"
	"strings"
	"time"
)

// DefaultAddress is this machine alone, at a port nothing common uses.
const DefaultAddress = "127.0.0.1:8117"

// typeOf says what a file is. The table is our own: the one of the operating
// system differs from machine to machine, and a wrong type stops the engine
// from streaming.
func typeOf(name string) string {
	switch path.Ext(name) {
	case ".html":
		return "text/html; charset=utf-8"
	case ".js":
		return "text/javascript; charset=utf-8"
	case ".css":
		return "text/css; charset=utf-8"
	case ".wasm":
		return "application/wasm" // with a parameter browsers refuse to stream it
	case ".json":
		return "application/json"
	case ".png":
		return "image/png"
	case ".svg":
		return "image/svg+xml"
	case ".txt":
		return "text/plain; charset=utf-8"
	}
	return "application/octet-stream"
}

// Handler serves the files of folder with the headers of Rules. "/" is
// index.html; folders have no listing; only GET and HEAD are answered.
func Handler(folder fs.FS) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for _, rule := range Rules() {
			if rule.Fits(r.URL.Path) {
				for _, h := range rule.Headers {
					w.Header().Set(h.Name, h.Value)
				}
			}
		}
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "only reading is served", http.StatusMethodNotAllowed)
			return
		}
		name := strings.TrimPrefix(path.Clean("/"+r.URL.Path), "/")
		if name == "" {
			name = "index.html"
		}
		content, err := fs.ReadFile(folder, name)
		if err != nil {
			w.Header().Set("Cache-Control", "no-store")
			http.Error(w, "no such file", http.StatusNotFound)
			return
		}
		sum := sha256.Sum256(content)
		w.Header().Set("Content-Type", typeOf(name))
		w.Header().Set("ETag", `"`+hex.EncodeToString(sum[:8])+`"`)
		http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(content))
	})
}

// Run serves folder at address until it fails, and prints where.
func Run(out io.Writer, folder fs.FS, address string) error {
	listener, err := net.Listen("tcp", address)
	if err != nil {
		return fmt.Errorf("cannot serve at %s (%w); give another place with -addr", address, errors.Unwrap(err))
	}
	fmt.Fprintf(out, "http://%s/\n", listener.Addr())
	server := http.Server{Handler: Handler(folder), ReadHeaderTimeout: 10 * time.Second}
	return server.Serve(listener)
}
