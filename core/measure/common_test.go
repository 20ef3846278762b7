package measure

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestCommon(t *testing.T) {
	finest := NumberFromFraction(1, 1000)
	for _, c := range []struct {
		a, b, want string
		ok         bool
	}{
		{"12", "8", "4", true},
		{"0.75", "0.5", "0.25", true},
		{"5", "5", "5", true},
		{"0.001", "1", "0.001", true},
		{"1", "0.0009", "1", false}, // finer than is asked for
	} {
		got, ok := Common(MustNumber(c.a), MustNumber(c.b), finest)
		assert.Equal(t, c.ok, ok, "%s and %s", c.a, c.b)
		if ok {
			assert.Zero(t, got.Cmp(MustNumber(c.want)), "%s and %s", c.a, c.b)
		}
	}
}
