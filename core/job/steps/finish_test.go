package steps

import (
	"testing"

	"ceilingwright/core/job/surface"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/words"
)

// finished is what the steps of a plan of which nothing else is given take and are
// bought in.
func finished(t *testing.T, steps string, change func(*plan.Plan)) *work {
	t.Helper()
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"m"},"finish":{"steps":[` + steps + `]}}`))
	require.True(t, doc.Usable)
	if change != nil {
		change(&doc.Plan)
	}
	found, wrong := WorkOut(&doc.Plan, &surface.Surface{})
	return &work{Plan: &doc.Plan, Found: found, List: wrong}
}

const (
	coat = `{"id":"a","name":"Grey","kind":"coat","area":"typed","typedArea":"45","typedUnit":"m2","coats":"2","spread":"10","spreadUnit":"m2/L","loss":"10","binder":"water"`
	wash = `"mix":[{"name":"medium","amount":"4","unit":"L"},{"name":"paint","amount":"1","unit":"L"},{"name":"water","amount":"5","unit":"L"}]`
)

func litres(n int64) measure.Volume { return measure.Volume{Litres: measure.NumberFromInt(n)} }

// 45 m² twice at 10 m²/L are 9 L on the ceiling; with a tenth lost, 10 L.
func TestTakeOff(t *testing.T) {
	j := finished(t, coat+`,"cans":[{"size":"4","unit":"L","price":"30"}]}`, nil)
	taken := &j.Finish.Steps[0]
	require.True(t, taken.Known)
	assert.Zero(t, taken.Product.Need.Litres.Cmp(litres(10).Litres), taken.Product.Need)
	require.Len(t, taken.Packs, 1)
	assert.Equal(t, int64(3), taken.Packs[0].Count)
	cost, known := taken.Packs[0].Cost(2)
	assert.True(t, known)
	assert.Equal(t, "90", cost.String())
}

// What is bought together is bought once, for all of it, by the first.
func TestCansOfSeveralSteps(t *testing.T) {
	j := finished(t, coat+`,"cans":[{"size":"5","unit":"L"}]},{"id":"b","name":"Again","kind":"coat","area":"typed","typedArea":"45","typedUnit":"m2","coats":"1","spread":"10","spreadUnit":"m2/L","loss":"10","sameAs":"a"}`, nil)
	first, second := &j.Finish.Steps[0], &j.Finish.Steps[1]
	assert.Equal(t, []int{0, 1}, first.Users)
	assert.Equal(t, 0, second.Owner)
	assert.Zero(t, first.Cans.Need.Litres.Cmp(litres(15).Litres))
	assert.Empty(t, second.Packs)
}

// A mix is made of 5 L of water, 4 L of medium and 1 L of paint: the cans hold the
// medium, water comes from the tap, and so it stays whatever the parts are called.
func TestKindsOfPartsDecideAndNotTheirNames(t *testing.T) {
	rename := func(p *plan.Plan) {
		for i := range p.Steps[0].Mix {
			p.Steps[0].Mix[i].Name = []string{"eau", "acqua", "vesi"}[i]
		}
	}
	for _, change := range []func(*plan.Plan){nil, rename} {
		j := finished(t, coat+`,"cans":[{"size":"1","unit":"L"}],`+wash+`}`, change)
		taken := &j.Finish.Steps[0]
		assert.Equal(t, 0, taken.Recipe.Mix.Main())
		assert.Zero(t, taken.Cans.Need.Litres.Cmp(litres(4).Litres), "four tenths of 10 L")
		require.Len(t, j.Finish.ToHave, 1)
		assert.Equal(t, 1, j.Finish.ToHave[0].Place)
		require.Len(t, taken.Mixed.Lines, 3)
		assert.Zero(t, taken.Mixed.Made.Portions[2].Volume.Litres.Cmp(litres(5).Litres))
	}
}

// What is thinned with water needs none on the list, what is thinned with solvent does.
func TestThinnerToHave(t *testing.T) {
	for binder, want := range map[string]int{"water": 0, "solvent": 1} {
		j := finished(t, `{"id":"a","name":"Grey","kind":"coat","area":"typed","typedArea":"45","typedUnit":"m2","coats":"1","by":"dry","dryFilm":"50","dryFilmUnit":"um","solids":"50","loss":"10","thinned":"10","binder":"`+binder+`"}`, nil)
		assert.NotZero(t, j.Finish.Steps[0].Thinner.Litres.Sign(), binder)
		require.Len(t, j.Finish.ToHave, want, binder)
		if want > 0 {
			assert.Equal(t, IsThinner, j.Finish.ToHave[0].As)
		}
	}
}

func TestJudgeClimate_DryingOfWhatIsUsed(t *testing.T) {
	j := finished(t, coat+`}`, nil)
	j.Plan.Finish.Climate = finish.Climate{}
	judged, _ := JudgeClimate(j.Plan)
	assert.Equal(t, finish.NotAsked, judged.Verdict)
	assert.False(t, judged.Water.Known)
	read := func(n int64, of int64) measure.Fact {
		return measure.FactOf(measure.NumberFromFraction(n, of))
	}
	c := &j.Plan.Finish.Climate
	c.Air.Value, c.Air.Known = read(15, 1).Value, true
	c.Humidity.Value, c.Humidity.Known = read(80, 100).Value, true
	judged, _ = JudgeClimate(j.Plan)
	assert.True(t, judged.Water.Known, "a step dries by giving off water")
	assert.False(t, judged.Oil.Known, "none by oil")
	assert.Positive(t, judged.Water.Value.Cmp(measure.NumberFromInt(1)), "cold damp air takes up less")
}

// What has to be at hand is rounded up to what a bottle is read to.
func TestIngredientAmount(t *testing.T) {
	for _, c := range []struct {
		litres, want string
		unit         measure.VolumeUnit
	}{
		{"0.0101", "11 mL", measure.UnitMillilitre},
		{"0.01", "10 mL", measure.UnitLitre},
		{"0.0005", "0.5 mL", measure.UnitMillilitre}, // below one it is told as it is
		{"0.03", "1.1 fl oz", measure.UnitTeaspoon},  // 1.014 fl oz
		{"0.0295735295625", "1 fl oz", measure.UnitTeaspoon},
		{"0.0148", "3 tsp", measure.UnitTeaspoon},
	} {
		g := Ingredient{Volume: measure.Volume{Litres: measure.MustNumber(c.litres)}, Unit: c.unit}
		assert.Equal(t, c.want, g.Amount().In(words.Style{}), "%s L", c.litres)
	}
	assert.Equal(t, "2.5 g", (&Ingredient{Weighed: true, Grams: measure.MustNumber("2.5")}).Amount().In(words.Style{}))
}
