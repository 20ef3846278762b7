package job

import (
	"encoding/json"
	"math/rand"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/plan"
)

// keptPlans are the plans kept as examples, as JSON objects.
func keptPlans(t *testing.T) (plans []map[string]any) {
	t.Helper()
	files, err := filepath.Glob("../../testdata/plans/*/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, name := range append(files, "../../testdata/plans/job.json") {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		var one map[string]any
		require.NoError(t, json.Unmarshal(text, &one))
		plans = append(plans, one)
	}
	return plans
}

// edited is a plan with one part taken from another plan, left out, or with one blank
// in it filled in otherwise. It is the same in all else.
func edited(random *rand.Rand, now map[string]any, plans []map[string]any) map[string]any {
	next := map[string]any{}
	for name, part := range now {
		next[name] = part
	}
	other := plans[random.Intn(len(plans))]
	names := []string{"units", "place", "room", "mask", "setting", "seams", "finish", "days", "price", "quote", "air", "access"}
	name := names[random.Intn(len(names))]
	switch random.Intn(4) {
	case 0:
		delete(next, name)
	case 1:
		next[name] = other[name]
	default:
		if part, ok := next[name].(map[string]any); ok {
			next[name] = retyped(random, part)
		}
	}
	return next
}

// retyped is a part with one of its blanks, however deep, filled in otherwise.
func retyped(random *rand.Rand, part map[string]any) map[string]any {
	next, names := map[string]any{}, []string{}
	for name, value := range part {
		next[name] = value
	}
	for name := range part {
		names = append(names, name)
	}
	if len(names) == 0 {
		return next
	}
	name := names[random.Intn(len(names))]
	switch value := part[name].(type) {
	case map[string]any:
		next[name] = retyped(random, value)
	case []any:
		list := append([]any{}, value...)
		if len(list) > 0 {
			i := random.Intn(len(list))
			if entry, ok := list[i].(map[string]any); ok {
				list[i] = retyped(random, entry)
			} else {
				list = append(list[:i], list[i+1:]...)
			}
		}
		next[name] = list
	default:
		next[name] = []string{"", "2", "14", "3 m", "yes", "no", "nonsense"}[random.Intn(7)]
	}
	return next
}

// After any edits what was kept is what would be worked out from nothing.
func TestSession_KeepsWhatIsTrue(t *testing.T) {
	plans := keptPlans(t)
	for seed := range int64(12) {
		random := rand.New(rand.NewSource(seed))
		var session Session
		now := plans[random.Intn(len(plans))]
		for range 25 {
			text, err := json.Marshal(now)
			require.NoError(t, err)
			doc, again := plan.Read(text), plan.Read(text)
			kept, fresh := session.Work(&doc), new(Session).Work(&again)
			if !assert.Equal(t, fresh, kept, "seed %d: %s", seed, text) {
				return
			}
			now = edited(random, now, plans)
		}
	}
}

// A stage that reads what it does not say would find otherwise when that is missing:
// every stage is done once on what it says, which the examples hold, and here no stage
// comes before one it reads.
func TestStages_ComeAfterWhatTheyRead(t *testing.T) {
	all := stages()
	require.LessOrEqual(t, len(all), 32)
	for i, s := range all {
		assert.Zero(t, s.after>>i, "%s reads what is worked out after it", s.name)
		assert.NotEmpty(t, s.name)
		assert.False(t, s.reads == 0 && s.after == 0, s.name)
	}
}

// What reads a changed part is worked out again, and what comes after it where it then
// found otherwise: a blank that nothing reads changes nothing further on.
func TestSession_WorksOutOnlyWhatChanged(t *testing.T) {
	text, err := os.ReadFile("../../testdata/plans/job.json")
	require.NoError(t, err)
	var one map[string]any
	require.NoError(t, json.Unmarshal(text, &one))
	var session Session
	work := func() {
		text, err := json.Marshal(one)
		require.NoError(t, err)
		doc := plan.Read(text)
		session.Work(&doc)
	}
	all := stages()
	work()
	assert.Equal(t, Findings(1<<len(all)-1), session.done, "at first all")
	work()
	assert.Zero(t, session.done, "nothing where nothing changed")
	for part, reads := range map[string]plan.Parts{"price": plan.PartPrice, "setting": plan.PartSetting, "room": plan.PartRoom} {
		one[part].(map[string]any)["unknown"] = part
		work()
		assert.Zero(t, session.anew, part)
		for k := range all {
			assert.Equal(t, all[k].reads&reads != 0, session.done&(1<<k) != 0, "%s after %s", all[k].name, part)
		}
	}
	one["setting"].(map[string]any)["leastBorder"] = "400"
	work()
	assert.NotZero(t, session.anew&TheSetting)
	assert.NotZero(t, session.done&TheHanging)
	assert.Zero(t, session.done&TheAir, "a mask that lies elsewhere gives off what it gave off")
}
