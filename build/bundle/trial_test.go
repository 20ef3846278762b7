package bundle

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/build/machine"
)

// trial is testdata/trial compiled for the browser: as linked, and made small.
var trial = sync.OnceValues(func() (made struct {
	Toolchain
	linked, small []byte
}, err error) {
	root, err := Root()
	if err != nil {
		return made, err
	}
	if made.Toolchain, err = ToolchainAt(root); err != nil {
		return made, err
	}
	if made.linked, err = made.Linked(root, "./build/bundle/testdata/trial"); err != nil {
		return made, err
	}
	made.small, err = made.Engine(root, "./build/bundle/testdata/trial")
	return made, err
})

// said is what a program for the browser prints when Node runs it, and what it
// says on its way out.
func said(t *testing.T, toolchain Toolchain, program []byte) (out, errors string) {
	node, err := machine.Node().Find()
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "trial.wasm")
	require.NoError(t, os.WriteFile(path, program, 0o644))
	command := exec.Command(node, "--stack-size=8192", filepath.Join(toolchain.Root, "lib", "wasm", "wasm_exec_node.js"), path)
	var stderr bytes.Buffer
	command.Stderr = &stderr
	printed, err := command.Output()
	require.NoError(t, err, stderr.String())
	return string(printed), stderr.String()
}

// A program that is made small does what it did, and what it does natively: it
// recovers every panic with the same text, grows its stacks, survives
// collections, counts its goroutines.
func TestSmallProgramDoesTheSame(t *testing.T) {
	made, err := trial()
	require.NoError(t, err)
	native, err := exec.Command("go", "run", "./testdata/trial").Output()
	require.NoError(t, err)
	for _, line := range []string{
		"wrapper: runtime: value method main.named.Name called using nil *named pointer",
		"defer: [105 4 3 2 1 0] 42",
		"deep: 32004000 32004000 value: at the bottom",
		"collection: 16390 20460 true",
		"reflection: 42 41 value: called",
		"cleanups: 3",
		"counted: true",
	} {
		assert.Contains(t, string(native), line+"\n")
	}
	assert.Equal(t, 12, strings.Count(string(native), "\n"))

	assert.Less(t, len(made.small), len(made.linked)*9/10)
	for name, program := range map[string][]byte{"linked": made.linked, "small": made.small} {
		got, errors := said(t, made.Toolchain, program)
		assert.Equal(t, string(native), got, name)
		assert.Empty(t, errors, name)
	}
}
