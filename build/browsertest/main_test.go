package browsertest

import (
	"fmt"
	"net/http/httptest"
	"os"
	"path/filepath"
	"testing"

	"ceilingwright/build/bundle"
	"ceilingwright/build/machine"
	"ceilingwright/build/serve"
)

// What all tests share. It is written once, before the first of them.
var (
	root   string // the project
	dist   string // the published folder, as built for this run
	hosted string // where it is served with the published headers
)

func TestMain(m *testing.M) {
	code, err := withPage(m.Run)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		code = 1
	}
	os.Exit(code)
}

// withPage builds the page, serves it and runs the tests.
// Without a browser nothing here can be tried, so that is a failure, in the
// words that say what to install.
func withPage(run func() int) (int, error) {
	if _, err := machine.Chromium().Find(); err != nil {
		return 1, err
	}
	var err error
	if root, err = bundle.Root(); err != nil {
		return 1, err
	}
	output, err := bundle.Build(root)
	if err != nil {
		return 1, err
	}
	folder, err := os.MkdirTemp("", "page")
	if err != nil {
		return 1, err
	}
	defer os.RemoveAll(folder)
	dist = filepath.Join(folder, "dist")
	if err := output.Write(dist); err != nil {
		return 1, err
	}
	server := httptest.NewServer(serve.Handler(os.DirFS(dist)))
	defer server.Close()
	hosted = server.URL + "/"
	defer closeLanes()
	return run(), nil
}
