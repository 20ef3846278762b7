package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/measure"
)

func feet() Style {
	return Style{Notation: measure.Notation{System: measure.FeetInches, InchMark: measure.Inch / 4, MetricMark: measure.Millimetre}, Country: US}
}

func TestIn_FillsHoles(t *testing.T) {
	long := 2*measure.Foot + 3*measure.Inch + 3*measure.Inch/8
	for _, c := range []struct {
		want string
		text Text
	}{
		{"", Text{}},
		{"No layer.", Say("No layer.")},
		{"It is 2′ 3½″ long.", Say("It is {l} long.", Length("l", long))},
		{"It is 2′ 3⅜″ long.", Say("It is {l} long.", Put("l", long))},
		{"1 panel is up", Say("{n|panel|panels} {n?is|are} up", Count("n", 1))},
		{"3 panels are up", Say("{n|panel|panels} {n?is|are} up", Count("n", 3))},
		{"0 panels are up", Say("{n|panel|panels} {n?is|are} up", Count("n", 0))},
		{"A1, A2 are up", Say("{names} are up", Names("names", []string{"A1", "A2"}))},
		{"a, b, c, d, e and 2 others", Say("{names}", Names("names", []string{"a", "b", "c", "d", "e", "f", "g"}))},
		{"The sill is damp.", Say("{^what} is damp.", Of("what", Say("the sill")))},
		{"A run of crown.", Say("A run of {~cornice}.")},
		{"3½″", Say("{l}", About("l", 3*measure.Inch+measure.Inch/2))},
		{"under ⅛″", Say("{l}", About("l", measure.Inch/16))},
		{"0″", Say("{l}", About("l", 0))},
		{"⅛″", Say("{l}", UpTo("l", measure.Inch/16))},
		{"½″", Say("{l}", UpTo("l", measure.Inch/2))},
		{"½″", Say("{l}", Held("l", measure.Inch/2, measure.Inch))},
		{"1″", Say("{l}", Held("l", measure.Inch, measure.Inch))},
		{"⅛″", Say("{l}", Held("l", measure.Inch/16, measure.Inch))},
		{"15⁄16″", Say("{l}", Held("l", 15*measure.Inch/16, measure.Inch))},
		{"just under 1″", Say("{l}", Held("l", measure.Inch-1, measure.Inch))},
		{"just over 1″", Say("{l}", Held("l", measure.Inch+1, measure.Inch))},
		{"12.5 %", Say("{s}", Share("s", measure.NumberFromFraction(1, 8)))},
		{"a {typed} name", Verbatim("a {typed} name")},
		{"{lost} {", Say("{lost} {")},
		{"One. Two.", Sentences(Say("One."), Text{}, Say("Two."))},
		{"One.", Sentences(Text{}, Say("One."))},
		{"", Sentences()},
		{"a or b or c?", Say("{which}?", Either("which", []Text{Say("a"), Say("b"), Say("c")}))},
		{"?", Say("{which}?", Either("which", nil))},
	} {
		assert.Equal(t, c.want, c.text.In(feet()), "%v", c.text)
	}
}

// Another language has its own sentences, its own order of holes and its own forms.
func TestIn_OtherLanguage(t *testing.T) {
	style := feet()
	style.Language = &Language{
		Sentence: func(ours string) (string, bool) {
			theirs, ok := map[string]string{"{n|panel|panels} of {wall} fit.": "An {wall} passen {n|Platte|Platten}."}[ours]
			return theirs, ok
		},
		Form: func(n int64) int {
			if n == 1 {
				return 0
			}
			return 1
		},
	}
	said := Say("{n|panel|panels} of {wall} fit.", Count("n", 2), Name("wall", "WX"))
	assert.Equal(t, "An WX passen 2 Platten.", said.In(style))
	assert.Equal(t, "No layer.", Say("No layer.").In(style), "what is not there stays ours")
}

func TestKind(t *testing.T) {
	one, two := Say("{a} is 3 long.", Name("a", "A1")), Say("{a} is 4 long.", Name("a", "B7"))
	assert.Equal(t, one.Kind(), two.Kind())
	assert.NotEqual(t, one.Kind(), Say("{a} is wide.", Name("a", "A1")).Kind())
	assert.Equal(t, Verbatim("“x” is 3").Kind(), Verbatim("“y” is 4").Kind())
	assert.NotEqual(t, Sentences(one, Say("Look.")).Kind(), Sentences(one, Say("Mend.")).Kind())
}
