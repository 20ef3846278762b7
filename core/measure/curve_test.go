package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Two roads to one answer: the standard library, which may differ in the last
// digit between processors.
func TestCurvesAgainstStandardLibrary(t *testing.T) {
	for x := 1e-300; x < 1e300; x *= 3.7 {
		assert.InEpsilon(t, 1, 1+NaturalLog(x)-math.Log(x), 1e-12, "ln %g", x)
	}
	assert.Equal(t, 0.0, NaturalLog(1))
	for x := 1e-12; x < 650; x *= 1.9 {
		assert.InEpsilon(t, math.Expm1(-x), ExpMinusOne(-x), 1e-12, "e^−%g − 1", x)
	}
	assert.Equal(t, -1.0, ExpMinusOne(-1e6))
	assert.Equal(t, -1.0, ExpMinusOne(math.Inf(-1)))
	assert.Equal(t, 0.0, ExpMinusOne(0))
	for x := -30.0; x < 30; x += 0.037 {
		assert.InEpsilon(t, math.Exp(x), Exp(x), 1e-12, "e^%g", x)
	}
	assert.Equal(t, 1.0, Exp(0))
}
