package job

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/job/hours"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
)

// A border 100 mm wider all round makes the mask 200 mm less both ways; a mask of which
// less than the least panel would be left has no such change.
func TestBorderChange(t *testing.T) {
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"m"},"mask":{"length":"3","width":"2"}}`))
	j := Job{Plan: doc.Plan}
	list := j.borderChange()
	require.Len(t, list, 1)
	assert.Equal(t, BordersWider, list[0].Of)
	assert.Equal(t, []measure.Length{2800 * measure.Millimetre, 1800 * measure.Millimetre}, []measure.Length{list[0].Length, list[0].Width})
	j.Plan.Mask.Outline.Width = mask.LeastPanel + 2*widerMetric
	assert.Len(t, j.borderChange(), 1)
	j.Plan.Mask.Outline.Width--
	assert.Empty(t, j.borderChange())
}

// One person more is priced where the job has its days, up to the most that are counted.
func TestPeopleChange(t *testing.T) {
	var j Job
	assert.Empty(t, j.peopleChange(), "no days")
	j.Days.Dated = true
	j.Plan.Days.People = hours.MostPeople - 1
	require.Len(t, j.peopleChange(), 1)
	assert.Equal(t, hours.MostPeople, j.peopleChange()[0].People)
	j.Plan.Days.People = hours.MostPeople
	assert.Empty(t, j.peopleChange())
}

// A change is made to another job: the plan it is made of keeps its people, steps and
// layers.
func TestWith_LeavesTheJob(t *testing.T) {
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"m"},"days":{"people":"2"},"finish":{"steps":[
		{"id":"a","name":"Grey","kind":"coat","area":"typed","typedArea":"45","typedUnit":"m2","coats":"2","spread":"10","spreadUnit":"m2/L","loss":"10","cans":[{"size":"4","unit":"L","price":"30"}]}]}}`))
	j := new(Session).Work(&doc)
	c := Change{Of: PersonMore, People: 3, goodsStay: true, make: func(v *Job) { v.Plan.Days.People, v.Plan.Steps[0].Coats = 3, 1 }}
	v := j.with(&c)
	assert.Equal(t, []int{2, 2}, []int{j.Plan.Days.People, j.Plan.Steps[0].Coats})
	assert.Equal(t, []int{3, 1}, []int{v.Plan.Days.People, v.Plan.Steps[0].Coats})
	assert.Equal(t, j.Finish.Steps[0].Packs, v.Finish.Steps[0].Packs, "what stays is not worked out again")
}
