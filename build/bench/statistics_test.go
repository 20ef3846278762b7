package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestMedian(t *testing.T) {
	assert.Equal(t, 2.0, median([]float64{9, 1, 2}))
	assert.Equal(t, 2.5, median([]float64{3, 9, 1, 2}))
	assert.True(t, math.IsNaN(median(nil)))
}

// Nearest rank: of 15 20 35 40 50 the 30th percentile is 20, the 100th 50.
func TestPercentile(t *testing.T) {
	values := []float64{50, 15, 40, 20, 35}
	assert.Equal(t, 20.0, percentile(values, 30))
	assert.Equal(t, 50.0, percentile(values, 100))
	assert.Equal(t, 15.0, percentile(values, 0))
}
