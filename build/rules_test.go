package main

import (
	"bytes"
	"flag"
	"os"
	"testing"

	"ceilingwright/core/safety"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden list of rules anew, to be read before it is kept")

// The printed rules are held against a file, so that nobody changes the words,
// the condition or the source of a rule without seeing it.
func TestRulesAsPrinted(t *testing.T) {
	const golden = "../testdata/rules.md"
	var out bytes.Buffer
	require.NoError(t, writeRules(&out, safety.Table()))
	if *update {
		require.NoError(t, os.WriteFile(golden, out.Bytes(), 0o644))
	}
	kept, err := os.ReadFile(golden)
	require.NoError(t, err)
	require.Equal(t, string(kept), out.String(), "go test ./build -run Rules -update writes it anew")
}

// A reviewer sees of every rule whose it is.
func TestEveryRuleIsSomebodys(t *testing.T) {
	for _, r := range safety.Table() {
		require.NotEmpty(t, jurisdictions[r.Jurisdiction], "%s is a rule of %s", r.ID, r.Jurisdiction)
	}
}
