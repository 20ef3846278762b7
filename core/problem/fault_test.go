package problem

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFaultSaysWhatAndWhy(t *testing.T) {
	for _, c := range []struct {
		panicked any
		words    string
	}{{"no panel", "(no panel)"}, {errors.New("index out of range"), "(index out of range)"}, {7, "(of a kind unknown)"}} {
		p := Fault("the days", c.panicked)
		assert.Equal(t, Stop, p.Severity)
		assert.Contains(t, p.What.String(), "could not work out the days")
		assert.Contains(t, p.What.String(), c.words)
		assert.NotEmpty(t, p.Do.String())
	}
}
