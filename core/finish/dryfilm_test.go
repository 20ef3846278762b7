package finish

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
)

func TestSpreadFromDryFilm(t *testing.T) {
	const (
		handbook = "MIL-HDBK-1110 §2.1.5, whose constant is 1600 for 1604.17"
		table    = "a trade table of loss and spread"
	)
	for _, row := range []struct {
		mils, um, solids, thinned string
		feet, metres              float64
		within                    float64
		source                    string
	}{
		{mils: "1", solids: "1", feet: 1600, within: 0.003, source: handbook},
		{mils: "2", solids: "1", feet: 800, within: 0.003, source: handbook},
		{mils: "4", solids: "1", feet: 400, within: 0.003, source: handbook},
		{mils: "2", solids: "0.5", feet: 400, within: 0.003, source: handbook},
		{mils: "4", solids: "0.5", feet: 200, within: 0.003, source: handbook},
		{mils: "5", solids: "0.65", feet: 208.52, within: 0.0002, source: "a maker's spread-rate bulletin, with 1604"},
		{mils: "1", solids: "0.35", feet: 561, within: 0.002, source: "a maker's spread-rate bulletin, table"},
		{mils: "2.5", solids: "0.46", feet: 294, within: 0.005, source: "an estimating column, which truncates"},
		{mils: "2.5", solids: "0.56", feet: 358, within: 0.005, source: "an estimating column, which truncates"},
		{um: "125", solids: "0.65", metres: 5.2, within: 1e-12, source: "a maker's spread-rate bulletin, exactly"},
		{um: "60", solids: "0.5", thinned: "0.1", metres: 7.57, within: 0.001, source: "a note on practical coverage, printed 7.57 for 7.5758"},
		{um: "25", solids: "1", metres: 40, within: 1e-12, source: table},
		{um: "75", solids: "0.6", metres: 8, within: 1e-12, source: table},
		{um: "50", solids: "0.45", metres: 9, within: 1e-12, source: table},
		{um: "125", solids: "0.4", metres: 3.2, within: 1e-12, source: table},
		{um: "150", solids: "0.65", metres: 4.3, within: 0.012, source: table},
	} {
		coat := DryCoat{Solids: num(row.solids)}
		if coat.Film = FilmFromMicrometres(num("0")); row.mils != "" {
			coat.Film = FilmFromMils(num(row.mils))
		} else {
			coat.Film = FilmFromMicrometres(num(row.um))
		}
		if row.thinned != "" {
			coat.Thinned = num(row.thinned)
		}
		spread, problems, ok := SpreadFromDryFilm(coat)
		require.True(t, ok && len(problems) == 0)
		if row.feet > 0 {
			assert.InEpsilon(t, row.feet, spread.SquareFeetPer(measure.UnitGallon).Float(), row.within, row.source)
		} else {
			assert.InEpsilon(t, row.metres, spread.SquareMetresPerLitre.Float(), row.within, row.source)
		}
		assert.Zero(t, spread.Film().Micrometres.Mul(coat.SolidsThinned()).Cmp(coat.Film.Micrometres), "the wet film dries to it")
	}
}

// From dry film, solids and loss to what is needed: worked twice, exactly.
func TestTakeOffFromDryFilm(t *testing.T) {
	metric, _, _ := SpreadFromDryFilm(DryCoat{Film: FilmFromMicrometres(num("40")), Solids: num("0.38")})
	product, _, ok := TakeOff(Paint{Area: measure.Area{SquareMetres: num("24")}, Coats: 2, Spread: metric, Loss: num("0.12")})
	require.True(t, ok)
	assert.Zero(t, product.Need.Litres.Cmp(measure.NumberFromFraction(1200, 209)), "5.7416268 L")
	us, _, _ := SpreadFromDryFilm(DryCoat{Film: FilmFromMils(num("1.5")), Solids: num("0.42")})
	product, _, ok = TakeOff(Paint{Area: sqft("260"), Coats: 2, Spread: us, Loss: num("0.15")})
	require.True(t, ok)
	assert.Zero(t, product.Need.Litres.Quo(measure.USGallon).Cmp(measure.NumberFromFraction(12480, 9163)), "1.3619993 gal")
	// A coatings column, 2003: 1 gal of 52 % solids, 30 % transferred, covers 167 ft²
	// at 1.5 mil.
	column, _, _ := SpreadFromDryFilm(DryCoat{Film: FilmFromMils(num("1.5")), Solids: num("0.52")})
	assert.InDelta(t, 167, column.Practical(num("0.7")).SquareFeetPer(measure.UnitGallon).Float(), 0.5)
	// A note on practical coverage: 7.57 m²/L less 30 % is 5.299.
	note, _, _ := SpreadFromDryFilm(DryCoat{Film: FilmFromMicrometres(num("60")), Solids: num("0.5"), Thinned: num("0.1")})
	assert.InEpsilon(t, 5.299, note.Practical(num("0.3")).SquareMetresPerLitre.Float(), 0.001)
}

// 100 m² at 60 µm dry, half of it solids, 30 % lost: 100 × 60 ÷ 1000 ÷ 0.5 ÷ 0.7
// are 17.142857 L of paint, however it is thinned; a quarter of it is 4.285714 L
// of thinner. Worked.
func TestThinnerIsNotBoughtAsPaint(t *testing.T) {
	for _, c := range []struct{ thinned, thinner string }{{"0", "0"}, {"0.25", "30/7"}, {"1", "120/7"}} {
		coat := DryCoat{Film: FilmFromMicrometres(num("60")), Solids: num("0.5"), Thinned: num(c.thinned)}
		spread, _, ok := SpreadFromDryFilm(coat)
		require.True(t, ok)
		product := takeOff(t, Paint{Area: sqm("100"), Coats: 1, Spread: spread, Loss: num("0.3"), Thinned: coat.Thinned})
		isRounded(t, "120/7", product.Need.Litres, "paint")
		isRounded(t, c.thinner, product.Thinner.Litres, "thinner")
		assert.Zero(t, product.Used().Litres.Cmp(product.Need.Litres.Add(product.Thinner.Litres)))
		assert.Zero(t, onSurface(product).Cmp(product.Used().Litres.Mul(num("0.7"))), "70 % of both stays on the surface")
	}
	_, problems, ok := TakeOff(Paint{Area: sqm("1"), Coats: 1, Spread: perLitre("10"), Thinned: num("-0.1")})
	assert.False(t, ok)
	require.Len(t, problems, 1)
	assert.Equal(t, "/thinned", problems[0].At)
}

func TestSpreadFromDryFilmRefuses(t *testing.T) {
	fine := DryCoat{Film: FilmFromMils(num("2")), Solids: num("0.4")}
	for at, change := range map[string]func(*DryCoat){
		"/dryFilm": func(d *DryCoat) { d.Film = Film{} },
		"/solids":  func(d *DryCoat) { d.Solids = num("1.01") },
		"/thinned": func(d *DryCoat) { d.Thinned = num("0").Sub(num("0.1")) },
	} {
		coat := fine
		change(&coat)
		_, problems, ok := SpreadFromDryFilm(coat)
		assert.False(t, ok)
		require.Len(t, problems, 1, at)
		assert.Equal(t, at, problems[0].At)
	}
}

// A trade table of loss and spread: 10 to 15 % by brush or roller, about 30 %
// airless; a note on practical coverage has 30 % too.
func TestUsualLoss(t *testing.T) {
	for _, m := range []Method{Brush, Roller, Pad} {
		loss, ok := UsualLoss(m)
		require.True(t, ok)
		assert.True(t, loss.Cmp(num("0.1")) >= 0 && loss.Cmp(num("0.15")) <= 0, m)
	}
	loss, ok := UsualLoss(Spray)
	assert.True(t, ok)
	assert.Zero(t, loss.Cmp(num("0.3")))
	_, ok = UsualLoss("")
	assert.False(t, ok)
	assert.Len(t, Methods(), 4)
}
