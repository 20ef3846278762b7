package survey_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/survey"
)

// People read W to Z for the corners A to D: no letter of a first row of panels.
func TestText(t *testing.T) {
	assert.Equal(t, "W", survey.A.Text())
	assert.Equal(t, "Z", survey.D.Text())
	assert.Equal(t, "WX XY YZ ZW", survey.AB.Text()+" "+survey.BC.Text()+" "+survey.CD.Text()+" "+survey.DA.Text())
	assert.Equal(t, "WY", survey.LineAC.Text())
	assert.Equal(t, "WX-YZ", survey.LineABCD.Text())
	assert.Equal(t, "V", survey.CornerNumbered(4).Text(), "the fifth corner")
	assert.Equal(t, "UW", survey.Wall("FA").Text())
	assert.Empty(t, survey.Corner("").Text())
	seen := map[string]bool{}
	for i := range survey.MostCorners {
		seen[survey.CornerNumbered(i).Text()] = true
	}
	assert.Len(t, seen, survey.MostCorners, "each its own letter")
}
