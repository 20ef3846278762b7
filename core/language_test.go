package core_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/words"
)

// A list of sentences, filled in, is what every answer is in; what it lacks stays ours.
func TestReadLanguage(t *testing.T) {
	in := core.In{Language: core.ReadLanguage([]byte(`{"A length cannot be negative.": "Kein Maß ist kleiner als null.", "Leave out the minus sign.": "",
		"{n} {n|layer|layers}": ""}`))}
	answer := in.ParseLength("-3", "in")
	require.NotNil(t, answer.Problem)
	assert.Equal(t, "Kein Maß ist kleiner als null.", answer.Problem.What)
	assert.Equal(t, "Leave out the minus sign.", answer.Problem.Do, "an entry that is not filled in")
	s := core.Session{In: core.In{Language: core.ReadLanguage([]byte(`{"ceiling": "Decke"}`))}}
	plan := planNamed(t, "full")
	assert.Contains(t, string(s.Sheet(plan, "room", "")), `"label":"Decke"`)
	assert.Contains(t, string(s.In.Compute(plan)), `"label":"Decke"`)
	for _, none := range []string{"", "[]", `"x"`, "{", "null"} {
		assert.Nil(t, core.ReadLanguage([]byte(none)), none)
	}
}

// Polish has three forms (CLDR, plural rules): one; 2 to 4 but for 12 to 14; all else.
func TestReadLanguage_FormsOfACount(t *testing.T) {
	var forms strings.Builder
	for n := range 200 {
		switch tens := n % 100 / 10; {
		case n == 1:
			forms.WriteByte('0')
		case n%10 >= 2 && n%10 <= 4 && tens != 1:
			forms.WriteByte('1')
		default:
			forms.WriteByte('2')
		}
	}
	polish := words.Style{Language: core.ReadLanguage([]byte(`{"{n|panel|panels}": "{n|panel|panele|paneli}", "` + core.FormKey + `": "` + forms.String() + `"}`))}
	for n, want := range map[int]string{0: "paneli", 1: "panel", 2: "panele", 5: "paneli", 12: "paneli", 22: "panele", 101: "paneli", 201: "paneli", 1_003: "panele", -2: "panele"} {
		assert.True(t, strings.HasSuffix(words.Say("{n|panel|panels}", words.Count("n", n)).In(polish), " "+want), "%d", n)
	}
	short := words.Style{Language: core.ReadLanguage([]byte(`{"` + core.FormKey + `": "01"}`))}
	assert.Equal(t, "2 panels", words.Say("{n|panel|panels}", words.Count("n", 2)).In(short), "a list of forms that is none")
}
