package sentences

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// noWords are texts of the script that only look as if they were read by people.
var noWords = []string{"put in", "taken out", "script, foreignObject", "parsererror, script, foreignObject", "(pointer: coarse)", "plan:", "about:", "ladder:", "file:", "ceilingwright:",
	"stop … …", "… up", "Ceilingwright …"}

// Every sentence of the page's script stands whole in the source, with a value for each
// of its holes, and nothing else that reads like words stands there.
func TestEverySentenceOfTheScriptIsSaid(t *testing.T) {
	calls, loose, err := InScript("../..", "site/src")
	require.NoError(t, err)
	require.Greater(t, len(calls), 500)
	for _, c := range calls {
		assert.Empty(t, c.Faults, "%s: %s", c.At, c.Sentence)
	}
	for _, l := range loose {
		assert.Contains(t, noWords, l.Text, "%s: say it with say", l.At)
	}
}

func TestInScript(t *testing.T) {
	calls, loose := inScript("a.ts", `// say("in a comment"); it’s nothing
const pattern = /say\("no (word)/g;
say("Whole.");
say("{n|layer|layers} of “{name}”", { n: list.map((x) => ({ y: x })).length, name });
...saying("Seam {seam} came out {gap}", { seam: make("b", {}, seam), gap: make("input", { "data-kind": "length" }) });
say("{lacks}"); say("none", { more: 1 });
say(`+"`Panel ${panel} is up.`"+`); say("Panel " + panel);
make("p", { class: "cw-x two" }, "Not said.", `+"`${n} more of ${say(\"these\")}`"+`);
throw new Error("for whoever mends it");
rung.say(words); function say(sentence: string) {}
`)
	var sentences []string
	var faults []int
	for _, c := range calls {
		sentences, faults = append(sentences, c.Sentence), append(faults, len(c.Faults))
	}
	assert.Equal(t, []string{"Whole.", "{n|layer|layers} of “{name}”", "Seam {seam} came out {gap}", "{lacks}", "none", "", "", "these"}, sentences)
	assert.Equal(t, []int{0, 0, 0, 1, 1, 1, 1, 0}, faults)
	assert.Equal(t, []string{"n", "name"}, calls[1].Given)
	var texts []string
	for _, l := range loose {
		texts = append(texts, l.Text)
	}
	assert.Equal(t, []string{"Panel … is up.", "Panel ", "Not said.", "… more of …"}, texts)
	assert.Equal(t, "a.ts:4", calls[1].At)
}
