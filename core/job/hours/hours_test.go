package hours

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/days"
	"ceilingwright/core/plan"
)

// Hours are usable where a day has any time to work in.
func TestRead(t *testing.T) {
	for _, c := range []struct{ days, at, want string }{
		{`"from":"08:00","to":"08:00"`, "/days/to", "Work would end before it begins."},
		{`"from":"08:00","to":"08:01"`, "", ""},
		{`"from":"08:00","to":"09:00","pause":"60"`, "/days/pause", "The pause takes the whole day."},
		{`"from":"08:00","to":"09:00","pause":"59"`, "", ""},
		{`"from":"08:00","to":"25:00"`, "/days/to", "There is no such time of day."},
	} {
		doc := plan.Read([]byte(`{"ceilingwright":1,"days":{"start":"2027-03-05",` + c.days + `}}`))
		h, wrong := Read(&doc.Plan.Days)
		assert.Equal(t, c.want == "", h.Usable, c)
		if c.want == "" {
			assert.Empty(t, wrong)
			continue
		}
		require.Len(t, wrong, 1)
		assert.Equal(t, []string{c.at, c.want}, []string{wrong[0].At, wrong[0].What.String()})
	}
	usual, _ := Read(&plan.Days{Start: "2027-03-05"})
	assert.Equal(t, days.Clock(16*60+30), usual.To, "as usual")
	unasked, _ := Read(&plan.Days{To: "17:00"})
	assert.False(t, unasked.Usable, "nobody asks for days")
}
