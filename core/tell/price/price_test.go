package price

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	"ceilingwright/core/price"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Each kind of unit says how much there is of it in its own way, one day in the singular.
func TestAmount(t *testing.T) {
	told := &told{&page.Page{Sheet: &sheet.Sheet{}}, &job.Job{}, &sheet.Price{}}
	for _, c := range []struct {
		unit  price.Unit
		count measure.Number
		want  string
	}{
		{price.Day, measure.NumberFromInt(1), "1 day"},
		{price.Day, measure.NumberFromInt(2), "2 days"},
		{price.Hour, measure.NumberFromFraction(90, 60), "1 h 30 min"},
		{price.Piece, measure.NumberFromInt(3), "3 × can"},
		{price.SquareFoot, measure.NumberFromFraction(168, 10), "16.8 ft²"},
		{price.SquareMetre, measure.NumberFromInt(12), "12 m²"},
		{price.Set, measure.NumberFromInt(1), ""},
	} {
		line := price.Line{Item: price.Item{Unit: c.unit, Count: c.count, Sold: words.Say("can")}}
		assert.Equal(t, c.want, told.amount(&line), c.want)
	}
}
