package safety

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/tell/page"
)

// A sum has as few decimals as bring a reader to the figure: 692.5 g, as the
// litres to two decimals make it, would be 692 where 692.78 are shown as 693.
func TestClosing(t *testing.T) {
	third := measure.NumberFromFraction(1, 3)
	thirds := func(times int64) sum {
		return func(places int32) (string, measure.Number) {
			return strconv.FormatInt(times, 10) + " × " + rounded(third, places).Fixed(places), rounded(third, places).Mul(measure.NumberFromInt(times))
		}
	}
	for times, text := range map[int64]string{3: "3 × 0.3", 30: "30 × 0.33", 300: "300 × 0.333", 30_000: "30000 × 0.33333"} {
		assert.Equal(t, text, closing(third.Mul(measure.NumberFromInt(times)), 0, 1, thirds(times)), "%d", times)
	}
	assert.Equal(t, "1 × 0.333333", closing(measure.NumberFromInt(7), 0, 1, thirds(1)), "what never comes to the figure ends")
}

// What a litre holds is told from what the label says.
func TestInLitre(t *testing.T) {
	told := &teller{Page: &page.Page{}}
	for text, p := range map[string]air.Product{
		"45 g/L":                            {},
		"45 g/L × 45 %":                     {LessWater: true, Water: holding("0.5"), Exempt: measure.MustNumber("0.05")},
		"45 g/L ÷ 110 %":                    {Thinner: measure.MustNumber("0.1"), Binder: air.Water},
		"(45 g/L + 10 % × 870 g/L) ÷ 110 %": {Thinner: measure.MustNumber("0.1"), Binder: air.DryingOil},
		"(45 g/L × 50 % + 5 % × 870 g/L) ÷ 105 %": {LessWater: true, Water: holding("0.5"), Thinner: measure.MustNumber("0.05")},
	} {
		p.Label = holding("45")
		p.VOC, p.Unsplit = air.AsUsed(p)
		written, grams := told.inLitre(&p, 1)
		assert.Equal(t, text, written)
		assert.Zero(t, grams.Cmp(p.VOC.Value), "%s is %s, and %s is counted", text, grams.Trimmed(6), p.VOC.Value.Trimmed(6))
	}
}

func holding(text string) measure.Fact { return measure.FactOf(measure.MustNumber(text)) }
