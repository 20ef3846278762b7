package bundle

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The engine has none of the packages that could switch on what is left out of
// it: runtime/trace and runtime/metrics, which both come in with testing only.
func TestNothingInTheEngineSwitchesOnWhatIsLeftOut(t *testing.T) {
	root, err := Root()
	require.NoError(t, err)
	command := exec.Command("go", "list", "-deps", "./wasm")
	command.Dir = root
	command.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := command.Output()
	require.NoError(t, err)
	packages := strings.Fields(string(out))
	require.Contains(t, packages, "runtime")
	for _, switching := range []string{"runtime/trace", "runtime/metrics", "runtime/pprof", "testing"} {
		assert.NotContains(t, packages, switching)
	}
	// GODEBUG is no setting in an empty environment.
	toolchain, err := ToolchainAt(root)
	require.NoError(t, err)
	glue, err := toolchain.Glue()
	require.NoError(t, err)
	assert.Contains(t, glue, "this.env = {};")
	page, err := os.ReadFile(filepath.Join(root, "site", "src", "engine", "loader.ts"))
	require.NoError(t, err)
	assert.NotContains(t, string(page), ".env")

	// The execution tracer is switched on in one place, which only runtime/trace
	// calls.
	sources, err := filepath.Glob(filepath.Join(toolchain.Root, "src", "runtime", "*.go"))
	require.NoError(t, err)
	calls := map[string]int{}
	for _, path := range sources {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		for _, what := range []string{"trace.enabled = true", "trace.enabledWithAllocFree = true", "StartTrace()"} {
			calls[what] += strings.Count(string(text), what)
		}
	}
	assert.Equal(t, map[string]int{"trace.enabled = true": 1, "trace.enabledWithAllocFree = true": 1, "StartTrace()": 1}, calls)
}

// A source that does not say what is expected is refused, and so is one that says
// it twice.
func TestAnotherSourceIsRefused(t *testing.T) {
	root, err := Root()
	require.NoError(t, err)
	toolchain, err := ToolchainAt(root)
	require.NoError(t, err)
	_, err = toolchain.overlay(t.TempDir())
	require.NoError(t, err)

	files := map[string]string{}
	for _, s := range never {
		files[s.file] += s.was
	}
	other := Toolchain{Version: "go1.26.0", Root: t.TempDir()}
	write := func(name, text string) {
		path := filepath.Join(other.Root, "src", filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	}
	for name, text := range files {
		write(name, text)
	}
	_, err = other.overlay(t.TempDir())
	require.NoError(t, err)
	for _, s := range never {
		for times, text := range []string{strings.Replace(files[s.file], s.was, "", 1), files[s.file], files[s.file] + s.was} {
			write(s.file, text)
			_, err := other.overlay(t.TempDir())
			if times == 1 {
				assert.NoError(t, err)
			} else {
				assert.ErrorContains(t, err, s.file)
			}
		}
		write(s.file, files[s.file])
	}
}
