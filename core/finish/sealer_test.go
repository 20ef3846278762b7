package finish

import (
	"testing"

	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
)

func TestSealing(t *testing.T) {
	// A gilder's notes, October 2011, and Armstrong, Cyclopedia of Painting (1908),
	// p. 169: base metals have to be sealed; aluminium may be, gold is not.
	for metal, want := range map[Metal]Sealing{
		Imitation: Required, Copper: Required, Silver: Advised, Aluminium: Advised, Gold: Bare, "pewter": Required,
	} {
		assert.Equal(t, want, metal.Sealing(), metal)
	}
}

func TestSealingRemarks(t *testing.T) {
	for _, c := range []struct {
		metal        Metal
		below, above bool
		want         []problem.Severity
	}{
		{Imitation, true, true, nil},
		{Imitation, true, false, []problem.Severity{problem.Caution}},
		{Copper, false, true, []problem.Severity{problem.Note}},
		{Copper, false, false, []problem.Severity{problem.Caution, problem.Note}},
		{Aluminium, false, false, []problem.Severity{problem.Note}},
		{Silver, false, true, nil},
		{Gold, false, false, nil},
		{Gold, false, true, []problem.Severity{problem.Note}},
	} {
		var got []problem.Severity
		for _, p := range SealingRemarks(c.metal, c.below, c.above) {
			isSentence(t, p)
			assert.Equal(t, "/metal", p.At)
			assert.NotContains(t, p.Do.String(), "no tarnish")
			got = append(got, p.Severity)
		}
		assert.Equal(t, c.want, got, "%s sealed below %t above %t", c.metal, c.below, c.above)
	}
}
