package main

import (
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestReadEventsPrintsFailuresAndCounts(t *testing.T) {
	events := strings.Join([]string{
		`{"Action":"start","Package":"p"}`,
		`{"Action":"output","Package":"p","Test":"A","Output":"quiet\n"}`,
		`{"Action":"pass","Package":"p","Test":"A"}`,
		`{"Action":"output","Package":"p","Test":"B","Output":"loud\n"}`,
		`{"Action":"fail","Package":"p","Test":"B"}`,
		`{"Action":"output","Package":"p","Test":"C","Output":"why not\n"}`,
		`{"Action":"skip","Package":"p","Test":"C"}`,
		`{"Action":"output","Package":"p","Output":"PASS\n"}`,
		`{"Action":"output","Package":"p","Output":"ok  \tp\t0.1s\n"}`,
		`{"Action":"pass","Package":"p"}`,
		`go: something else`,
	}, "\n")
	var out strings.Builder
	var count tally
	require.NoError(t, readEvents(&out, strings.NewReader(events), &count))
	assert.Equal(t, tally{passed: 1, failed: 1, skipped: 1}, count)
	assert.Equal(t, "loud\nwhy not\nok  \tp\t0.1s\ngo: something else\n", out.String())
}

func TestCheckedCountsOnce(t *testing.T) {
	var count tally
	require.NoError(t, checked(func(io.Writer) error { return nil })(nil, &count))
	require.Error(t, checked(func(io.Writer) error { return errors.New("no") })(nil, &count))
	assert.Equal(t, tally{passed: 1}, count, "the caller counts a failure")
}

// Of stages side by side each says its own in one piece, in their order, whichever
// is done first, and a stage that fails says so after what it said.
func TestStagesSideBySideAreToldOneAfterTheOther(t *testing.T) {
	second := make(chan struct{})
	var out strings.Builder
	count := runBeside(&out, []stage{
		{"one", func(out io.Writer, count *tally) error {
			io.WriteString(out, "one begins\n")
			<-second
			io.WriteString(out, "one ends\n")
			count.passed = 2
			return nil
		}},
		{"two", func(out io.Writer, count *tally) error {
			defer close(second)
			io.WriteString(out, "two breaks\n")
			count.passed = 1
			return errors.New("no wood")
		}},
	})
	assert.Equal(t, tally{passed: 3, failed: 1}, count)
	assert.Equal(t, "== one\none begins\none ends\n   0 s\n== two\ntwo breaks\nFAIL two: no wood\n   0 s\n", out.String())
}

func TestWasmEnvironmentKeepsOnlyWhatGoNeeds(t *testing.T) {
	got := wasmEnvironment([]string{"PATH=/bin", "HOME=/h", "LS_COLORS=" + strings.Repeat("x", 9000), "GOOS=linux", "GOCACHE=/c"})
	assert.Equal(t, []string{"GOOS=js", "GOARCH=wasm", "PATH=/bin", "HOME=/h", "GOCACHE=/c"}, got)
}

func TestRunNamesItsCommands(t *testing.T) {
	assert.EqualError(t, run([]string{"paint"}), `no command "paint": use build, serve, test, bench, sheet, rules or words`)
	assert.ErrorContains(t, run([]string{"test", "./core"}), "runs everything")
}
