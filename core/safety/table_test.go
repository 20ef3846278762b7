package safety

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// claims are words in which a note would say that something is in order. None
// may: only the people named at its end can say so.
var claims = []string{
	"complies", "compliant", "compliance", "conform", "legal", "lawful", "guarantee", "certified safe", "approved",
	"is safe", "are safe", "it safe", "safely", "it is allowed", "you are allowed", "meets the", "within the law", "no risk", "no danger",
}

// jargon is what a painter does not say.
var jargon = []string{
	"hazard", "mitigat", "exposure", "ensure", "utilis", "operative", "personnel", "ppe", "ventilat", "prior to", "compliance",
	"jurisdiction", "boolean", "null", "threshold", "parameter", "statistic", "twa", "stel", "lel",
}

var (
	publicID = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	// A regulation, standard or handbook comes with its number or year.
	numbered = regexp.MustCompile(`[0-9]`)
)

// A reviewer can read every row without the rest of the program.
func TestRowsReadByThemselves(t *testing.T) {
	lastWords := []string{code, maker, label, licensed, electrician, fireFirm}
	seen := map[string]bool{}
	for _, r := range Table() {
		assert.NotEmpty(t, r.Section, r.ID)
		assert.Regexp(t, publicID, r.ID)
		assert.False(t, seen[r.ID], "%s stands twice in the table", r.ID)
		seen[r.ID] = true
		for what, text := range map[string]string{"when": r.When, "words": r.Words, "source": r.Source} {
			assert.True(t, strings.HasSuffix(text, "."), "%s of %s ends in a full stop: %s", what, r.ID, text)
			assert.NotContains(t, text, "  ", r.ID)
		}
		assert.True(t, r.Working == "" || strings.HasSuffix(r.Working, "."), "working of %s: %s", r.ID, r.Working)
		assert.Contains(t, lastWords, r.Decides, r.ID)
		own := strings.Contains(r.Source, "ommon practice, no source") || strings.Contains(r.Source, "erived")
		assert.True(t, own || numbered.MatchString(r.Source), "the source of %s has no section, and is not said to be derived or common practice: %s", r.ID, r.Source)
		assert.True(t, r.Severity != problem.Note || len(r.Bites) == 0, "%s is a mere note and bites", r.ID)
		for _, block := range r.Bites {
			assert.Contains(t, []Block{Room, Hanging, Finish, Days}, block, r.ID)
		}
	}
}

func TestWordsArePlain(t *testing.T) {
	for _, r := range Table() {
		words := strings.ToLower(r.Words + " " + r.Working)
		for _, claim := range claims {
			if r.ID == "planning-help-only" {
				break // it says that it does not show this
			}
			assert.NotContains(t, words, claim, r.ID)
		}
		spoken := strings.FieldsFunc(words, func(c rune) bool { return c != '-' && (c < 'a' || c > 'z') })
		for _, word := range jargon {
			assert.False(t, slices.ContainsFunc(spoken, func(s string) bool { return strings.HasPrefix(s, word) }), "%q in %s", word, r.ID)
		}
		assert.LessOrEqual(t, len(strings.Fields(r.Words)), 60, "the words of %s are too many to be read", r.ID)
		for _, sentence := range strings.Split(r.Words, ". ") {
			assert.LessOrEqual(t, len(strings.Fields(sentence)), 32, "too long a sentence in %s: %s", r.ID, sentence)
		}
	}
}

// openers are the words a rule begins with: what to do, or when to do it.
var openers = strings.Fields("Add Agree Air Ask Before Board Bring Check Choose Clean Clear Close Count Cover Do Find Fit Get Go Have If Keep Leave Let Lock Look Lower " +
	"Measure Never Once Only Plan Put Raise Read See Share Shut Spread Start Take Thin Treat Use Weigh Wear Where While Work Write")

// Each rule says first what to do; what this sheet is says first what it is. What
// stands in braces at the beginning is tried with what is put there.
func TestRulesOpenWithWhatToDo(t *testing.T) {
	for _, r := range Table() {
		if r.ID == standing || strings.HasPrefix(r.Words, "{") {
			continue
		}
		first, _, _ := strings.Cut(r.Words, " ")
		assert.Contains(t, openers, first, "%s begins with: %s", r.ID, r.Words)
	}
	for _, c := range ruleCases() {
		for _, n := range toldAfter(c.fires).Notes {
			first, _, _ := strings.Cut(n.Words.String(), " ")
			assert.True(t, n.ID == standing || slices.Contains(openers, first), "%s begins with: %s", n.ID, n.Words)
		}
	}
}

// What "when" says in words is the number that is compared with.
func TestYearsAndAreasInWords(t *testing.T) {
	for id, number := range map[string]int{
		"lead-certified-firm": leadYearUS, "lead-small-job": leadYearUS, "lead-keep-result": leadYearUS, "lead-at-work": leadYearUS, "lead-test-first": leadYearElse,
		"asbestos-to-1980": asbestosYearUS, "asbestos-before-2000": asbestosYearUK, "asbestos-before-2005": asbestosYearEU, "asbestos-in-late-coats": lateCoatYearUS,
		"asbestos-in-boards": asbestosYearUS, "pull-test-after-laboratory": lateCoatYearUS,
	} {
		assert.Contains(t, row(t, id).When, strconv.Itoa(number), id)
	}
	f := factsOf(quietJob())
	assert.Equal(t, "0.56 m²", f.amount("6 ft²").In(words.Style{}), "0.5574 m²")
	assert.Equal(t, "14.86 m²", f.amount("160 ft²").In(words.Style{}))
	assert.Equal(t, "1.00 m²", f.amount("1 m²").In(words.Style{}))
	assert.Contains(t, row(t, "lead-certified-firm").When, "6 ft²")
	assert.Contains(t, row(t, "asbestos-notice").When, "160 ft²")
	assert.Contains(t, row(t, "asbestos-more-than-a-patch").When, "1 m²")
	assert.Contains(t, row(t, "hot-under-the-ceiling").When, hotFrom.RoundHalfEven(0).String()+" °C")
}

func row(t *testing.T, id string) Row {
	t.Helper()
	table := Table()
	i := slices.IndexFunc(table, func(r Row) bool { return r.ID == id })
	require.GreaterOrEqual(t, i, 0, "no rule %s", id)
	return table[i]
}
