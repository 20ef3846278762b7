package finish

import (
	"math"
	"strings"
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// signed is a decimal that may be below 0.
func signed(text string) measure.Number {
	if rest, below := strings.CutPrefix(text, "-"); below {
		return num("0").Sub(num(rest))
	}
	return num(text)
}

// fahrenheit is a temperature in degrees Fahrenheit in degrees Celsius.
func fahrenheit(text string) measure.Number {
	return signed(text).Sub(num("32")).Mul(measure.NumberFromFraction(5, 9))
}

func humidity(perCent string) measure.Number { return num(perCent).Quo(num("100")) }

func TestDewPoint(t *testing.T) {
	const (
		py    = "MetPy test suite, dew point tests"
		chart = "one-page coating dew point chart, which reads up to about 1.2 °F low"
	)
	for _, c := range []struct {
		air             measure.Number
		humidity, want  string
		inF             bool
		within          float64
		source, printed string
	}{
		{num("30"), "30", "11", false, 0.5, py, "10.529"},
		{num("25"), "45", "12", false, 0.5, py, "12.238"},
		{num("10"), "55", "1", false, 0.5, py, "1.364"},
		{num("20"), "80", "16", false, 0.5, py, "16.442"},
		{num("25"), "85", "22", false, 0.5, py, "22.300"},
		{num("10.6"), "37", "26", true, 0.5, py, "25.682"},
		{fahrenheit("70"), "65", "57", true, 1, chart, "57.69"},
		{fahrenheit("70"), "50", "50", true, 1, chart, "50.50"},
		{fahrenheit("80"), "50", "59", true, 1, chart, "59.69"},
		{fahrenheit("60"), "70", "50", true, 1, chart, "50.18"},
		{fahrenheit("50"), "90", "47", true, 1, chart, "47.18"},
		{fahrenheit("90"), "85", "84", true, 1, chart, "84.88"},
		{fahrenheit("50"), "50", "31", true, 1.2, chart, "32.07"},
		{fahrenheit("80"), "65", "66", true, 1.2, chart, "67.17"},
		{num("20"), "50", "9.2552", false, 1e-3, "worked with the formula", "9.2552"},
		{num("20"), "100", "20", false, 1e-9, "saturated air is at its dew point", "20.0000"},
		{num("18"), "70", "12.444", false, 1e-3, "worked with the formula", "12.444"},
		{num("20"), "60", "11.995", false, 1e-3, "worked with the formula", "11.995"},
		{fahrenheit("70"), "70", "59.8", true, 0.05, "a painter's notes (2011), 60 °F; the formula gives 59.8", "59.76"},
	} {
		got := DewPoint(c.air, humidity(c.humidity))
		if c.inF {
			got = InFahrenheit(got)
		}
		assert.InDelta(t, signed(c.want).Float(), got.Float(), c.within+1e-12, "%s: %s %%", c.source, c.humidity)
		decimals := len(c.printed) - strings.Index(c.printed, ".") - 1
		assert.Equal(t, c.printed, got.RoundHalfEven(int32(decimals)).StringFixed(int32(decimals)), "the formula itself")
	}
}

// Two roads to one answer: the standard library, and other constants in use
// (17.67, 243.5 and 17.625, 243.04), which agree within 0.03 °C where people
// paint (derived).
func TestDewPointAgainstOtherConstants(t *testing.T) {
	for air := 5.0; air <= 35; air += 2.5 {
		for share := 0.3; share <= 1; share += 0.1 {
			got := DewPoint(measure.NumberFromFraction(int64(air*10), 10), measure.NumberFromFraction(int64(math.Round(share*10)), 10)).Float()
			for _, set := range [][2]float64{{17.62, 243.12}, {17.67, 243.5}, {17.625, 243.04}} {
				g := math.Log(share) + set[0]*air/(set[1]+air)
				within := 0.03
				if set[0] == 17.62 {
					within = 1e-6
				}
				assert.InDelta(t, set[1]*g/(set[0]-g), got, within, "%g °C %g", air, share)
			}
		}
	}
}

// Damper air has the higher dew point, and none has it above its temperature.
func TestDewPointRises(t *testing.T) {
	for air := int64(-40); air <= 60; air += 4 {
		last := measure.NumberFromInt(-300)
		for share := int64(1); share <= 100; share++ {
			dew := DewPoint(measure.NumberFromInt(air), measure.NumberFromFraction(share, 100))
			assert.Equal(t, 1, dew.Cmp(last))
			assert.LessOrEqual(t, dew.Cmp(measure.NumberFromInt(air)), 0)
			last = dew
		}
	}
}

func measured(air, surface measure.Number, perCent string) Climate {
	return Climate{Air: measure.FactOf(air), Surface: measure.FactOf(surface), Humidity: measure.FactOf(humidity(perCent))}
}

// Margins were worked a second time with another program.
func TestFitToPaint(t *testing.T) {
	for _, c := range []struct {
		climate Climate
		verdict Verdict
		margin  string
		says    string
		source  string
	}{
		{measured(num("18"), num("14"), "70"), Unfit, "1.556", "1.4 °C (2.6 °F) too cold", "worked: spread 1.556"},
		{measured(num("20"), num("16.5"), "60"), Go, "4.505", "", "worked: spread 4.505"},
		{measured(fahrenheit("70"), fahrenheit("63"), "70"), Unfit, "1.799", "5 °F, it is 1.0 °C (1.8 °F) too cold", "a painter's notes: needs 64.8 °F, 63 is 1.8 °F too cold"},
		{measured(fahrenheit("70"), fahrenheit("64.9"), "70"), Unfit, "2.855", "5 °F, it would just do", "between 5 °F and 3 °C the stricter holds"},
		{measured(fahrenheit("70"), fahrenheit("62"), "65"), Unfit, "2.395", "5 °F, it is", "the chart asks for 62 °F or more; by the formula it is 57.69 + 5"},
		{measured(num("20"), num("20"), "100"), Unfit, "0.000", "at the dew point", "saturated air"},
		{measured(num("20"), num("15"), "90"), Unfit, "-3.308", "3.3 °C (6.0 °F) below the dew point: water settles", "worked"},
		{measured(num("6"), num("6"), "50"), Unfit, "9.653", "1.2 °C (2.2 °F) under the least", "MIL-HDBK-1110 §7.4.1: 45 to 90 °F"},
		{measured(num("33"), num("32"), "40"), Unfit, "14.399", "over the most for most paints, 32.2 °C (90.0 °F)", "MIL-HDBK-1110 §7.4.1"},
		{measured(fahrenheit("45"), fahrenheit("45"), "40"), Go, "12.724", "many paints want 10.0 °C (50.0 °F)", "at 45 °F just allowed; TM 43-0139 ¶5-31 wants 50 °F"},
		{measured(fahrenheit("90"), fahrenheit("90"), "40"), Go, "15.314", "", "at 90 °F just allowed"},
		{measured(num("25"), num("25"), "85"), Unfit, "2.700", "The air is damp", "below 85 % in a city's specification"},
		{measured(num("22"), num("22"), "30"), Go, "18.385", "The air is dry", "TM 55-1500-345-23: 40 to 75 %"},
	} {
		fit, problems := c.climate.Judge()
		assert.Equal(t, c.verdict, fit.Verdict, c.source)
		assert.Equal(t, c.margin, fit.Margin.Value.RoundHalfEven(3).StringFixed(3), c.source)
		said := ""
		for _, p := range problems {
			said += p.What.String()
			isSentence(t, p)
		}
		assert.Contains(t, said, c.says, c.source)
		if c.says == "" {
			assert.Empty(t, problems, c.source)
		}
	}
}

func TestFitNeedsEveryReading(t *testing.T) {
	whole := measured(num("20"), num("20"), "50")
	fit, problems := Climate{}.Judge()
	assert.Equal(t, NotAsked, fit.Verdict)
	assert.Empty(t, problems)
	for _, without := range []func(*Climate){
		func(c *Climate) { c.Air.Known = false },
		func(c *Climate) { c.Surface.Known = false },
		func(c *Climate) { c.Humidity.Known = false },
	} {
		c := whole
		without(&c)
		fit, problems = c.Judge()
		assert.Equal(t, Unsure, fit.Verdict)
		assert.Empty(t, problems)
		assert.False(t, fit.Margin.Known)
	}
	// One reading alone may forbid it.
	fit, problems = Climate{Air: measure.FactOf(num("2"))}.Judge()
	assert.Equal(t, Unfit, fit.Verdict)
	isOnly(t, problems, "/air", problem.Stop)
}

func TestFitRefusesWhatNoInstrumentShows(t *testing.T) {
	for at, c := range map[string]Climate{
		"/air":      measured(num("70"), num("20"), "50"),
		"/surface":  measured(num("20"), signed("-46"), "50"),
		"/humidity": measured(num("20"), num("20"), "0"),
	} {
		fit, problems := c.Judge()
		assert.Equal(t, Unsure, fit.Verdict)
		assert.False(t, fit.Dew.Known)
		isOnly(t, problems, at, problem.Stop)
		_, ok := c.DryingFactor(Evaporates)
		assert.False(t, ok)
	}
	_, problems := measured(num("20"), num("20"), "100.1").Judge()
	isOnly(t, problems, "/humidity", problem.Stop)
}

func TestDryingFactor(t *testing.T) {
	for _, c := range []struct {
		air, humidity string
		by            Drying
		want          string
		source        string
	}{
		{"15", "50", Reacts, "2.000", "twice for every 10 °C colder, from memory"},
		{"20", "50", Reacts, "1.414", "the same"},
		{"25", "50", Reacts, "1.000", "the same: the label's own climate"},
		{"35", "50", Reacts, "0.500", "the same"},
		{"45", "50", Reacts, "0.500", "held at 0.5"},
		{"-10", "50", Reacts, "6.000", "held at 6"},
		{"25", "50", Evaporates, "1.000", "the label's own climate"},
		{"20", "50", Evaporates, "1.355", "worked: 15.800 hPa by what the air lacks"},
		{"20", "65", Evaporates, "1.935", "worked"},
		{"15", "80", Evaporates, "4.643", "worked"},
		{"30", "40", Evaporates, "0.622", "worked"},
		{"20", "100", Evaporates, "6.000", "saturated air takes up nothing: held at 6"},
		{"35", "20", Evaporates, "0.500", "held at 0.5"},
	} {
		climate := Climate{Air: measure.FactOf(signed(c.air)), Humidity: measure.FactOf(humidity(c.humidity))}
		got, ok := climate.DryingFactor(c.by)
		require.True(t, ok)
		assert.Equal(t, c.want, got.RoundHalfEven(3).StringFixed(3), "%s: %s °C %s %%", c.source, c.air, c.humidity)
	}
	assert.InDelta(t, 15.800, vapourLack(labelAir, labelHumidity), 5e-4, "worked")
}

func TestDryingFactorNeedsItsReadings(t *testing.T) {
	air, damp := Climate{Air: measure.FactOf(num("15"))}, Climate{Humidity: measure.FactOf(humidity("50"))}
	_, ok := air.DryingFactor(Evaporates)
	assert.False(t, ok)
	_, ok = air.DryingFactor(Unsaid)
	assert.False(t, ok)
	_, ok = damp.DryingFactor(Reacts)
	assert.False(t, ok)
	// A film is as cold as what it lies on.
	cold := measured(num("25"), num("15"), "50")
	got, ok := cold.DryingFactor(Reacts)
	assert.True(t, ok)
	isRounded(t, "2.000", got, "the colder of air and surface")
}

// Colder or damper never dries sooner.
func TestDryingFactorGrows(t *testing.T) {
	for _, by := range []Drying{Evaporates, Reacts} {
		for share := int64(5); share <= 100; share += 5 {
			last := measure.Number{}
			for air := int64(60); air >= -40; air -= 5 {
				c := Climate{Air: measure.FactOf(measure.NumberFromInt(air)), Humidity: measure.FactOf(measure.NumberFromFraction(share, 100))}
				got, ok := c.DryingFactor(by)
				require.True(t, ok)
				assert.GreaterOrEqual(t, got.Cmp(last), 0)
				last = got
			}
		}
	}
}
