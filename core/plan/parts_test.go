package plan

import (
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func fullPlan(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../testdata/plans/job.json")
	require.NoError(t, err)
	return string(text)
}

// All parts together are the plan, and no part holds what another does: a field of
// the plan that is forgotten, or in two parts, is found.
func TestOnly_PartsMakeTheWhole(t *testing.T) {
	doc := Read([]byte(fullPlan(t)))
	assert.Equal(t, doc.Plan, doc.Plan.Only(AllParts))
	assert.Equal(t, Plan{}, doc.Plan.Only(0))
	held := map[string]int{}
	whole := reflect.ValueOf(filledPlan())
	for part := PartHead; part < PartPaid; part <<= 1 {
		filled := whole.Interface().(Plan)
		some := filled.Only(part)
		for i := range whole.NumField() {
			if !reflect.ValueOf(some).Field(i).IsZero() {
				held[whole.Type().Field(i).Name]++
			}
		}
	}
	for i := range whole.NumField() {
		assert.Equal(t, 1, held[whole.Type().Field(i).Name], whole.Type().Field(i).Name)
	}
}

// filledPlan is a plan of which no field is zero.
func filledPlan() Plan {
	var p Plan
	fill(reflect.ValueOf(&p).Elem())
	return p
}

func fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString("x")
	case reflect.Int, reflect.Int64, reflect.Int32, reflect.Int8, reflect.Int16:
		v.SetInt(1)
	case reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64, reflect.Uint:
		v.SetUint(1)
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				fill(v.Field(i))
			}
		}
	}
}

func TestChanged(t *testing.T) {
	text := fullPlan(t)
	before := Read([]byte(text))
	same := Read([]byte(text))
	assert.Zero(t, same.Changed(&before))
	for part, change := range map[Parts][2]string{
		PartHead:  {`"title": "`, `"title": "Another `},
		PartPrice: {`"price": {`, `"price": {"rate": "71", `},
		PartRoom:  {`"room": {`, `"room": {"height": "9 ft 1 in", `},
		AllParts:  {`"units": {`, `"units": {"bare": "cm", `},
	} {
		require.Contains(t, text, change[0])
		after := Read([]byte(strings.Replace(text, change[0], change[1], 1)))
		assert.Equal(t, part, after.Changed(&before), change[1])
	}
	refused := Read([]byte("{}"))
	assert.Equal(t, AllParts, refused.Changed(&before))
}
