package bundle

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/build/machine"
	"ceilingwright/core"
)

// call is one call of the engine, as testdata/engine.js reads it.
type call struct {
	Call      string `json:"call"`
	Arguments []any  `json:"arguments"`
}

// builtHere is the whole published folder, built once for all tests.
var builtHere = sync.OnceValues(func() (Output, error) {
	root, err := Root()
	if err != nil {
		return nil, err
	}
	return Build(root)
})

// askEngine starts the published engine under Node and makes the calls.
func askEngine(t *testing.T, calls []call) (version string, answers []json.RawMessage) {
	node, err := machine.Node().Find()
	if err != nil {
		t.Skip(err)
	}
	root, err := Root()
	require.NoError(t, err)
	toolchain, err := ToolchainAt(root)
	require.NoError(t, err)
	built, err := builtHere()
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "engine.wasm")
	require.NoError(t, os.WriteFile(path, []byte(content(t, built, "assets/engine-", ".wasm")), 0o644))
	input, err := json.Marshal(calls)
	require.NoError(t, err)

	command := exec.Command(node, filepath.Join("testdata", "engine.js"), filepath.Join(toolchain.Root, "lib", "wasm", "wasm_exec.js"), path)
	command.Stdin = bytes.NewReader(input)
	command.Stderr = os.Stderr
	out, err := command.Output()
	require.NoError(t, err)
	var got struct {
		Version string
		Answers []json.RawMessage
	}
	require.NoError(t, json.Unmarshal(out, &got), "%s", out)
	require.Len(t, got.Answers, len(calls))
	return got.Version, got.Answers
}

// plans are the plans of the project, the hostile ones, and some texts that are
// none.
func plans(t *testing.T) map[string]string {
	all := map[string]string{
		"nothing": "", "empty": "{}", "no JSON": "{", "newer": `{"ceilingwright":999}`, "no text": "\x00",
		"hostile name": `{"ceilingwright":1,"title":"</script><script>alert(1)</script>\u0000"}`,
	}
	for _, pattern := range []string{"../../testdata/plans/*.json", "../../testdata/plans/v1/*.json", "../../testdata/hostile/*", "../../site/example.plan.json"} {
		paths, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, paths, pattern)
		for _, path := range paths {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			all[strings.TrimPrefix(path, "../../")] = string(text)
		}
	}
	return all
}

// One core, two machines: what the browser works out is byte for byte what Go
// works out natively.
func TestEngineAnswersAsNative(t *testing.T) {
	var names []string
	var calls []call
	texts := plans(t)
	for name, text := range texts {
		names = append(names, name)
		calls = append(calls, call{"compute", []any{text}})
	}
	version, answers := askEngine(t, calls)
	assert.Equal(t, core.Version, version)
	for i, name := range names {
		var got string
		require.NoError(t, json.Unmarshal(answers[i], &got), name)
		if want := string(core.Compute([]byte(texts[name]))); got != want {
			t.Errorf("%s: the engine answered\n%s\nand native Go\n%s", name, got, want)
		}
	}
}

// The steps a finish begins with are the same from both, and a call without two
// texts gives none.
func TestEngineBeginsAFinishAsNative(t *testing.T) {
	plan := plans(t)["testdata/plans/v1/full.json"]
	require.NotEmpty(t, plan)
	_, answers := askEngine(t, []call{{"starting", []any{"leaf-and-glaze", plan}}, {"starting", []any{"base", "no plan"}}, {"starting", []any{"base"}}, {"starting", []any{1, plan}}})
	for i, want := range []string{string(core.Starting("leaf-and-glaze", []byte(plan))), string(core.Starting("base", nil)), "[]", "[]"} {
		var got string
		require.NoError(t, json.Unmarshal(answers[i], &got))
		assert.Equal(t, want, got)
	}
}

// The client's copy is the same from both, and a call without two texts gives
// nothing.
func TestEngineQuotesAsNative(t *testing.T) {
	plan := plans(t)["testdata/plans/v1/priced.json"]
	require.NotEmpty(t, plan)
	_, answers := askEngine(t, []call{{"quoted", []any{plan, "2027-02-10"}}, {"quoted", []any{plan, "today"}}, {"quoted", []any{plan}}, {"quoted", []any{1, "2027-02-10"}}})
	for i, want := range []string{string(core.Quoted([]byte(plan), "2027-02-10")), "", "", ""} {
		var got string
		require.NoError(t, json.Unmarshal(answers[i], &got))
		assert.Equal(t, want, got)
	}
}

// Another room is fitted the same by both.
func TestEngineFitsAnotherRoomAsNative(t *testing.T) {
	made := plans(t)["testdata/plans/v1/full.json"]
	now := strings.Replace(made, `"room":`, `"room":{"form":"rectangle","length":"9 m","width":"8 m"},"unknown":`, 1)
	require.NotEqual(t, made, now)
	_, answers := askEngine(t, []call{{"otherRoom", []any{made, now}}, {"otherRoom", []any{made}}, {"otherRoom", []any{made, 1}}})
	for i, want := range []string{string(core.OtherRoom([]byte(made), []byte(now))), "", ""} {
		var got string
		require.NoError(t, json.Unmarshal(answers[i], &got))
		assert.Equal(t, want, got)
	}
	assert.Contains(t, string(answers[0]), "is fitted to this room")
}

// Whatever a page hands over, a call answers in the agreed shape and never
// throws; the call after it works.
func TestEngineNeverThrows(t *testing.T) {
	odd := func(word string) any { return map[string]any{"odd": word} }
	values := []any{1, nil, true, []any{}, map[string]any{}, odd("undefined"), odd("nan"), odd("symbol"), odd("bigint"), odd("function"), odd("throwing")}
	calls := []call{{"compute", []any{}}, {"parseLength", []any{}}, {"parseLength", []any{"1"}}}
	for _, v := range values {
		calls = append(calls, call{"compute", []any{v}}, call{"parseLength", []any{v, "in"}}, call{"parseLength", []any{"1", v}})
	}
	calls = append(calls, call{"parseLength", []any{"1", "in"}})
	_, answers := askEngine(t, calls)
	type length struct {
		Nanometres *string
		Problem    *struct{ What string }
	}
	for i, c := range calls[:len(calls)-1] {
		if c.Call == "compute" {
			var text string
			require.NoError(t, json.Unmarshal(answers[i], &text), "%v: %s", c, answers[i])
			var sheet struct{ Problems []json.RawMessage }
			require.NoError(t, json.Unmarshal([]byte(text), &sheet), "%v: %s", c, text)
			require.NotEmpty(t, sheet.Problems, "%v", c)
			continue
		}
		var got length
		require.NoError(t, json.Unmarshal(answers[i], &got), "%v: %s", c, answers[i])
		assert.Nil(t, got.Nanometres, "%v", c)
		require.NotNil(t, got.Problem, "%v", c)
		assert.NotEmpty(t, got.Problem.What, "%v", c)
	}
	// 1 in = 25.4 mm.
	var last length
	require.NoError(t, json.Unmarshal(answers[len(answers)-1], &last))
	require.NotNil(t, last.Nanometres)
	assert.Equal(t, "25400000", *last.Nanometres)
}

// Two builds of one source, in folders of different names, give the same bytes.
func TestTwoFoldersGiveTheSameBytes(t *testing.T) {
	root, err := Root()
	require.NoError(t, err)
	folder := t.TempDir()
	require.NoError(t, CopySource(root, folder))
	here, err := builtHere()
	require.NoError(t, err)
	there, err := Build(folder)
	require.NoError(t, err)
	require.Equal(t, len(here), len(there))
	for i, f := range here {
		assert.Equal(t, f.Path, there[i].Path)
		assert.True(t, bytes.Equal(f.Content, there[i].Content), f.Path)
	}
	assert.Equal(t, here.Hash(), there.Hash())
}
