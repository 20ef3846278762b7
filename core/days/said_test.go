package days

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

func TestSaid(t *testing.T) {
	day := date(t, "2027-03-01")
	for text, value := range map[string]words.Value{
		"Mon 1 Mar": day, "Mon 1 Mar 2027": WithYear(day), "Mon 1 Mar at 08:05": day.At(8*60 + 5),
		"0 min": Lasting(0), "59 min": Lasting(59), "1 h": Lasting(60), "2 h 15 min": Lasting(135), "48 h": Lasting(48 * 60),
		"08:05": day.At(8*60 + 5).When(day), "08:05 on Mon 1 Mar": day.At(8*60 + 5).When(day + 1), "Mon 1 Mar 2027 at 08:05": day.At(8*60 + 5).WithYear(),
		"24:00": (day + 1).At(0).Ends(day), "00:01 on Tue 2 Mar": (day + 1).At(1).Ends(day), "00:00": day.At(0).Ends(day),
		"2 h 20 min": InHours(measure.MustNumber("2.325")), "2 h 19 min": InHours(measure.MustNumber("2.324")),
		"11.61 m²/h": PerHour{SquareMetres: measure.MustNumber("11.6129")},
	} {
		assert.Equal(t, text, value.In(words.Style{}))
	}
	feet := words.Style{Notation: measure.Notation{System: measure.FeetInches}}
	assert.Equal(t, "125 ft²/h", PerHour{SquareMetres: measure.MustNumber("11.6129")}.In(feet))
}
