package problem

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// What package measure refuses is said in another language, with what was typed as
// it was typed.
func TestUnread_SaysItInAnotherLanguage(t *testing.T) {
	var asked []string
	other := words.Style{Language: &words.Language{Sentence: func(ours string) (string, bool) {
		asked = append(asked, ours)
		return strings.NewReplacer("The word", "Das Wort", " is not a unit that is read here", " ist keine Einheit", "whole", "ganze", "or one unit only", "oder nur eine Einheit", "feet", "Fuß").Replace(ours), true
	}}}
	_, err := measure.Parse("12 {word}x cubits", measure.UnitInch)
	require.Error(t, err)
	_, err = measure.Parse("12 cubits", measure.UnitInch)
	p := Unread("/room/length", err)
	assert.Equal(t, "/room/length", p.At)
	assert.Equal(t, Stop, p.Severity)
	assert.Equal(t, "Das Wort cubits ist keine Einheit.", p.What.In(other))
	assert.Contains(t, asked, "The word {word} is not a unit that is read here.")

	_, err = measure.Parse("5.5 ft 6 in", measure.UnitInch)
	assert.Equal(t, "Write ganze Fuß, oder nur eine Einheit.", Unread("", err).Do.In(other), "a word in a hole is said too")
	_, err = measure.Parse("1,250", measure.UnitInch)
	assert.Equal(t, []string{"1250 in", "1.25 in"}, Unread("", err).Answers)
	assert.Equal(t, "This cannot be read.", Unread("", errors.New("odd")).What.String())
}
