package finish

import (
	"testing"

	"ceilingwright/core/measure"

	"github.com/stretchr/testify/assert"
)

// wetMils is the wet film that dries to a film of dry when solids, a share of the
// volume, stay.
func wetMils(dry, solids string) Film { return FilmFromMils(num(dry).Quo(num(solids))) }

func TestSpreadFromFilmAgreesWithHandbooks(t *testing.T) {
	const (
		handbook = "MIL-HDBK-1110 §2.1.5, whose constant is 1600 for 1604.17"
		bulletin = "a maker's spread-rate bulletin, table"
		column   = "an estimating column, printed by truncation"
	)
	for _, c := range []struct{ dry, solids, want, tolerance, source string }{
		{"1", "1", "1600", "4.8", handbook},
		{"2", "1", "800", "2.4", handbook},
		{"4", "1", "400", "1.2", handbook},
		{"2", "0.50", "400", "1.2", handbook},
		{"4", "0.50", "200", "0.6", handbook},
		{"5", "0.65", "208.52", "0.05", "a maker's spread-rate bulletin, with 1604"},
		{"1", "0.35", "561", "1", bulletin},
		{"2", "0.35", "281", "1", bulletin},
		{"4", "0.50", "201", "1", bulletin},
		{"10", "1", "160", "1", bulletin},
		{"2.5", "0.46", "294", "1.5", column},
		{"2.5", "0.56", "358", "1.8", column},
	} {
		got := SpreadFromFilm(wetMils(c.dry, c.solids)).SquareFeetPer(measure.UnitGallon)
		isWithin(t, c.want, c.tolerance, got, c.dry+" mil dry of "+c.solids+" solids, "+c.source)
	}
}

func TestSpreadFromFilmIsExact(t *testing.T) {
	for _, c := range []struct{ dry, solids, want string }{
		{"1", "1", "9625/6"}, // 231 in³ × 1000 ÷ 144 (NIST Handbook 44, appendix C)
		{"5", "0.65", "208.5416667"},
		{"2", "1", "802.08"},
		{"4", "1", "401.04"},
		{"4", "0.50", "200.52"},
	} {
		isRounded(t, c.want, SpreadFromFilm(wetMils(c.dry, c.solids)).SquareFeetPer(measure.UnitGallon), "worked")
	}
}

func TestMetricSpreadFromFilm(t *testing.T) {
	const table = "a trade table of loss and spread"
	for _, c := range []struct{ dry, solids, want, tolerance, source string }{
		{"125", "0.65", "5.2", "0", "a maker's spread-rate bulletin, exactly"},
		{"25", "1", "40.0", "0.05", table},
		{"75", "0.60", "8.0", "0.05", table},
		{"50", "0.45", "9.0", "0.05", table},
		{"125", "0.40", "3.2", "0.05", table},
		{"150", "0.65", "4.3", "0.05", table},
	} {
		got := SpreadFromFilm(FilmFromMicrometres(num(c.dry).Quo(num(c.solids)))).SquareMetresPerLitre
		isWithin(t, c.want, c.tolerance, got, c.dry+" µm dry of "+c.solids+" solids, "+c.source)
	}
}

func TestPracticalSpread(t *testing.T) {
	// A practical-coverage note: 50 % solids thinned by 10 % are 45.4545 %; 60 µm
	// dry then spread 7.57 m²/L, and 5.299 with 30 % lost, to 0.1 %.
	solids := num("0.50").Quo(num("1.10"))
	spread := SpreadFromFilm(FilmFromMicrometres(num("60").Quo(solids)))
	isWithin(t, "7.57", "0.0076", spread.SquareMetresPerLitre, "printed")
	isRounded(t, "7.5758", spread.SquareMetresPerLitre, "worked")
	isWithin(t, "5.299", "0.0053", spread.Practical(num("0.30")).SquareMetresPerLitre, "printed")
	isRounded(t, "5.3030", spread.Practical(num("0.30")).SquareMetresPerLitre, "worked")

	// A coating column, October 2003: a gallon of 52 % solids at 1.5 mil dry and
	// 30 % transfer does 167 ft².
	sprayed := SpreadFromFilm(wetMils("1.5", "0.52")).Practical(num("0.70"))
	isWithin(t, "167", "0.5", sprayed.SquareFeetPer(measure.UnitGallon), "coating column")
}

func TestPriceOfCoverage(t *testing.T) {
	// An estimating column: those paints at 43.50 and 44.75 a gallon cost
	// .14 and .12 a square foot, printed by truncation.
	for _, c := range []struct{ solids, price, want string }{{"0.46", "43.50", "0.14"}, {"0.56", "44.75", "0.12"}} {
		cost := num(c.price).Quo(SpreadFromFilm(wetMils("2.5", c.solids)).SquareFeetPer(measure.UnitGallon))
		isWithin(t, c.want, "0.0099", cost, "price of a square foot")
	}
}

func TestFilmFromSpread(t *testing.T) {
	isRounded(t, "4.0104167", perGallon("400").Film().Mils(), "worked")
	isRounded(t, "101.8646", perGallon("400").Film().Micrometres, "worked")
	isRounded(t, "9.8169547", perGallon("400").SquareMetresPerLitre, "worked")
	isRounded(t, "100/1", perLitre("10").Film().Micrometres, "worked")
	isRounded(t, "407.4583333", perLitre("10").SquareFeetPer(measure.UnitGallon), "worked")

	// A maker's spread-rate bulletin: 8 mil wet of 35 % solids dry to 2.8 mil;
	// thinned by 10 % to 28/11 (worked: the bulletin misprints it).
	wet := SpreadFromFilm(FilmFromMils(num("8"))).Film().Mils()
	isRounded(t, "14/5", wet.Mul(num("0.35")), "bulletin")
	isRounded(t, "28/11", wet.Mul(num("0.35").Quo(num("1.1"))), "worked")
}

func TestSpreadConvertsBothWays(t *testing.T) {
	// A Canadian painting firm's coverage page: a pail of 18.9 L does 2000 ft²,
	// which are 400.6 ft²/gal or 9.83 m²/L.
	pail := SpreadFromSquareMetres(sqft("2000").SquareMetres.Quo(num("18.9")))
	isRounded(t, "400.6", pail.SquareFeetPer(measure.UnitGallon), "pail")
	isRounded(t, "9.83", pail.SquareMetresPerLitre, "pail")

	// A page on joint compound on ceilings: 50 ft²/gal leave 0.032 in on
	// average; a quarter of an inch over three quarters of it is 8.6 ft²/gal.
	isRounded(t, "0.032", perGallon("50").Film().Mils().Quo(num("1000")), "compound")
	thick := SpreadFromFilm(FilmFromMils(num("250"))).SquareFeetPer(measure.UnitGallon)
	isRounded(t, "8.6", thick.Quo(num("0.75")), "compound")

	isRounded(t, "0.0245423867", perGallon("1").SquareMetresPerLitre, "240/9779, worked")
	isRounded(t, "9779/240", perLitre("1").SquareFeetPer(measure.UnitGallon), "worked")
	imperial := SpreadFromSquareFeet(num("100"), measure.UnitImperialGallon)
	isRounded(t, "83.267", imperial.SquareFeetPer(measure.UnitGallon), "ratio 1.20095 of the gallons")
}

func TestNoSpreadAndNoFilmAreNoNumber(t *testing.T) {
	assert.True(t, SpreadFromFilm(Film{}).SquareMetresPerLitre.IsZero())
	assert.True(t, Spread{}.Film().Micrometres.IsZero())
	assert.True(t, SpreadFromSquareFeet(num("400"), "bucket").SquareMetresPerLitre.IsZero())
}

func FuzzFilmAndSpreadInvert(f *testing.F) {
	f.Add(int64(9625), int64(6)) // ft² a gallon at one mil
	f.Add(int64(1), int64(1_000_000_000))
	f.Fuzz(func(t *testing.T, over, under int64) {
		if over <= 0 || under <= 0 {
			t.Skip()
		}
		film := FilmFromMicrometres(measure.NumberFromFraction(over, under))
		back := SpreadFromFilm(film).Film()
		if back.Micrometres.Cmp(film.Micrometres) != 0 {
			t.Fatalf("film %d/%d µm came back as %s", over, under, back.Micrometres.RoundHalfEven(9))
		}
	})
}
