package mixing

import (
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A decorator's notes of 2010 mixed 20-minute compound for a job of an hour and a
// half; it set in the bucket. 104.7 fl oz in batches of 16, of which one is put on
// in 25 minutes: seven batches; of 20 minutes it is refused, of 45 there are 20
// to spare. 21 ft² of openings are 16/104.7 of 21 ft² in 25 minutes.
func stencil(life string) Placing {
	area := sqft("21")
	return Placing{Batch: measure.VolumeOf(num("16"), floz), Need: measure.VolumeOf(num("104.7"), floz), Area: area,
		Rate: area.Times(num("16").Quo(num("104.7")).Mul(num("60")).Quo(num("25"))), Life: num(life)}
}

func TestBatchesThatSet(t *testing.T) {
	placed, problems, ok := stencil("45").Place()
	require.True(t, ok)
	assert.Empty(t, problems)
	isRounded(t, "25/1", placed.Minutes, "worked")
	isRounded(t, "20/1", placed.Spare, "worked")
	assert.EqualValues(t, 7, placed.Batches)
	isRounded(t, "28.8", placed.Most.In(floz), "worked: 45/25 of 16")

	placed, problems, ok = stencil("20").Place()
	require.True(t, ok)
	isOnly(t, problems, "", problem.Stop)
	assert.Contains(t, problems[0].What.String(), "takes 25 minutes to put on and stays workable for 20")
	isRounded(t, "-5/1", placed.Spare, "worked")
	isRounded(t, "12.8", placed.Most.In(floz), "worked: 20/25 of 16")
	assert.EqualValues(t, 9, placed.Batches, "104.7 in batches of 12.8")

	placed, problems, _ = stencil("25").Place()
	assert.Empty(t, problems, "just in time")
	assert.True(t, placed.Spare.IsZero())
}

func TestABatchLargerThanTheNeedIsTheNeed(t *testing.T) {
	p := stencil("200")
	p.Batch = measure.VolumeOf(num("10"), measure.UnitGallon)
	placed, problems, ok := p.Place()
	require.True(t, ok)
	assert.Empty(t, problems)
	assert.EqualValues(t, 1, placed.Batches)
	isRounded(t, "163.6", placed.Minutes, "worked: 104.7/16 × 25")
}

func TestPlacingOfNothing(t *testing.T) {
	for _, spoil := range []func(*Placing){
		func(p *Placing) { p.Batch = measure.Volume{} }, func(p *Placing) { p.Need = measure.Volume{} },
		func(p *Placing) { p.Area = measure.Area{} }, func(p *Placing) { p.Rate = measure.Area{} }, func(p *Placing) { p.Life = measure.Number{} },
	} {
		p := stencil("45")
		spoil(&p)
		_, problems, ok := p.Place()
		assert.False(t, ok)
		assert.Empty(t, problems)
	}
}

// Batches that are on in time hold the need between them, and one less would not.
func FuzzBatchesHoldTheNeed(f *testing.F) {
	f.Add(int64(16), int64(105), int64(21), int64(8), int64(20))
	f.Add(int64(1), int64(1_000_000), int64(1), int64(1), int64(1))
	f.Fuzz(func(t *testing.T, batch, need, area, rate, life int64) {
		p := Placing{measure.VolumeOf(measure.NumberFromInt(batch), mL), measure.VolumeOf(measure.NumberFromInt(need), mL),
			measure.Area{SquareMetres: measure.NumberFromInt(area)}, measure.Area{SquareMetres: measure.NumberFromInt(rate)}, measure.NumberFromInt(life)}
		placed, problems, ok := p.Place()
		if !ok {
			return
		}
		size := p.Batch
		if len(problems) > 0 {
			size = placed.Most
		}
		if size.Times(measure.NumberFromInt(placed.Batches)).Litres.Cmp(p.Need.Litres) < 0 {
			t.Fatal("the batches do not hold the need")
		}
		if size.Times(measure.NumberFromInt(placed.Batches-1)).Litres.Cmp(p.Need.Litres) >= 0 {
			t.Fatal("one batch less would do")
		}
	})
}
