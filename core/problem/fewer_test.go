package problem

import (
	"fmt"
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// many are n problems alike but for their place, their numbers and what they quote.
func many(n int, severity Severity, say string) []Problem {
	list := make([]Problem, n)
	for i := range list {
		list[i] = Problem{At: fmt.Sprintf("/mask/layers/%d/columnSizes/%d", i%3, i), Severity: severity, What: words.Verbatim(fmt.Sprintf("%s “%c” is 1⁄%d″.", say, 'a'+i%26, i)), Do: words.Say("Check it.")}
	}
	return list
}

func TestFewer_TellsOneKindOnceWithItsCount(t *testing.T) {
	assert.Empty(t, Fewer(nil))
	ten := many(MostAlike, Stop, "Size")
	assert.Equal(t, ten, Fewer(ten), "each at its own blank")
	told := Fewer(many(MostAlike+1, Stop, "Size"))
	require.Len(t, told, 1)
	assert.Equal(t, "/mask/layers/0/columnSizes/0", told[0].At)
	assert.Equal(t, "Size “a” is 1⁄0″. So it is in 10 more places.", told[0].What.String())
	assert.Len(t, Fewer(append(many(10, Stop, "Size"), many(10, Caution, "Size")...)), 20, "what is not as bad is another kind")
	assert.Len(t, Fewer(append(many(10, Stop, "Size"), many(10, Stop, "Gap")...)), 20, "so is what says something else")
	assert.Equal(t, " So it is in 48 064 more places.", Fewer(many(48_065, Stop, "Size"))[0].What.String()[len("Size “a” is 1⁄0″."):])
}

func TestFewer_KeepsTheWorst(t *testing.T) {
	var list []Problem
	for i := range 40 {
		list = append(list, many(10, []Severity{Note, Stop, Caution, Note}[i%4], fmt.Sprint(string(rune('A'+i%26)), string(rune('A'+i/26))))...)
	}
	require.Len(t, list, 400)
	told := Fewer(list)
	require.Len(t, told, Most)
	count := map[Severity]int{}
	for _, p := range told[:Most-1] {
		count[p.Severity]++
	}
	assert.Equal(t, map[Severity]int{Stop: 100, Caution: 100, Note: 99}, count)
	assert.Equal(t, "There are 101 more remarks, which are left out.", told[Most-1].What.String())
	assert.Equal(t, list[0], told[0], "the order stays")
	assert.Equal(t, list[:300], Fewer(list[:300]), "300 are told")
	assert.Len(t, Fewer(append(many(10, Stop, "Z"), list[:299]...)), Most)
}
