package mixing

import (
	"strings"
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The values that the tests compare with name their source beside them.
// "Worked" marks one worked out from the exact definitions of the units, twice,
// for the trade reference this project started from, and not by this package.

func num(text string) measure.Number {
	if over, under, ok := strings.Cut(text, "/"); ok {
		return measure.MustNumber(over).Quo(measure.MustNumber(under))
	}
	return measure.MustNumber(text)
}

func sqft(text string) measure.Area {
	return measure.Area{SquareMetres: num(text).Mul(measure.SquareFoot)}
}

func gal(text string) measure.Volume { return measure.VolumeOf(num(text), measure.UnitGallon) }

func litres(text string) measure.Volume { return measure.Volume{Litres: num(text)} }

// isRounded asserts that got, rounded to the digits that want shows, is want. A
// want with a / has to be met exactly.
func isRounded(t *testing.T, want string, got measure.Number, what string) {
	t.Helper()
	if strings.Contains(want, "/") {
		assert.Zero(t, num(want).Cmp(got), "%s: got %s, want %s", what, got.RoundHalfEven(12), want)
		return
	}
	_, decimals, _ := strings.Cut(want, ".")
	assert.Equal(t, want, got.RoundHalfEven(int32(len(decimals))).StringFixed(int32(len(decimals))), what)
}

func isOnly(t *testing.T, found []problem.Problem, at string, severity problem.Severity) {
	t.Helper()
	require.Len(t, found, 1)
	assert.Equal(t, at, found[0].At)
	assert.Equal(t, severity, found[0].Severity)
	isSentence(t, found[0])
}

func isSentence(t *testing.T, p problem.Problem) {
	t.Helper()
	assert.True(t, strings.HasSuffix(p.What.String(), "."), "What: %q", p.What.String())
	assert.True(t, strings.HasSuffix(p.Do.String(), "."), "Do: %q", p.Do.String())
	assert.Contains(t, []problem.Severity{problem.Stop, problem.Caution, problem.Note}, p.Severity)
}

func places(found []problem.Problem) []string {
	at := []string{}
	for _, p := range found {
		at = append(at, p.At)
	}
	return at
}
