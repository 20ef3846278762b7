package days

import (
	"strings"
	"testing"

	"ceilingwright/core/finish"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// twoLayers is a job of two layers, the second gilded in two sections. All of it
// is invented.
func twoLayers() *Job {
	return &Job{
		Protect: 180, Survey: 60, TouchUp: 60, Clear: 90,
		Layers: []Layer{
			{ID: "L1", Name: "First layer", Mark: 60, Hang: 150, Bridge: 60, Peel: 40, Key: 5},
			{ID: "L2", Name: "Second layer", Mark: 60, Hang: 150, Bridge: 60, Peel: 40},
		},
		Steps: []Step{
			{ID: "base", Name: "Base", Kind: finish.Base, Layer: -1, Coats: 2, Labour: 120, Dry: 240, Recoat: 180},
			{ID: "cornice", Name: "Cornice", Kind: finish.Coat, Layer: -1, Surface: "c", Coats: 1, Labour: 90, Dry: 240},
			{ID: "seal", Name: "Seal", Kind: finish.EdgeSeal, Layer: 0, Coats: 1, Labour: 60, Dry: 60},
			{ID: "coat", Name: "Stone", Kind: finish.Coat, Layer: 0, Coats: 1, Labour: 60, Dry: 240},
			{ID: "under", Name: "Ochre", Kind: finish.Underpaint, Layer: 1, Coats: 1, Labour: 60, Dry: 240},
			{ID: "size", Name: "Size", Kind: finish.SizeCoat, Layer: 1, Tack: 180, Open: 144, Window: 180},
			{ID: "leaf", Name: "Leaf", Kind: finish.LeafLaying, Layer: 1, Gilders: 2, Sections: []Section{{15, 240}, {15, 240}}},
			{ID: "glaze", Name: "Glaze", Kind: finish.Glaze, Layer: -1, Coats: 1, Labour: 120, Dry: 240},
		},
	}
}

func names(tasks []Task) string {
	list := make([]string, len(tasks))
	for i := range tasks {
		list[i] = tasks[i].Name.String()
	}
	return strings.Join(list, "; ")
}

func TestTasksInTheOrderOfTheWork(t *testing.T) {
	tasks, origins := twoLayers().Tasks(2)
	require.Len(t, origins, len(tasks))
	assert.Equal(t, "Protect; Measure; Base, coat 1 of 2; Base, coat 2 of 2; Cornice; "+
		"Mark out for First layer; Hang First layer; Bridge the seams of First layer; Seal; Stone; Peel First layer; "+
		"Mark out for Second layer; Hang Second layer; Bridge the seams of Second layer; Ochre; "+
		"Size, section 1; Leaf, section 1; Size, section 2; Leaf, section 2; Peel Second layer; Glaze; Touch up; Clear away", names(tasks))
	ids := map[string]bool{}
	for i := range tasks {
		assert.False(t, ids[tasks[i].ID], tasks[i].ID)
		ids[tasks[i].ID] = true
		for _, link := range tasks[i].After {
			assert.Less(t, link.Task, i, tasks[i].Name.String())
		}
	}
	assert.True(t, ids["layer.L1.hang"] && ids["step.base.2"] && ids["step.leaf.s2"])
	assert.Equal(t, int64(155), tasks[12].Fixed, "the key of the first layer comes down with the second")
}

func linkTo(tasks []Task, from, to string) (Link, bool) {
	for i := range tasks {
		if tasks[i].Name.String() != from {
			continue
		}
		for _, link := range tasks[i].After {
			if tasks[link.Task].Name.String() == to && link.Wait != Follows {
				return link, true
			}
		}
	}
	return Link{}, false
}

func TestTasksWaitForWhatIsUnderThem(t *testing.T) {
	job := twoLayers()
	job.FilmAge = 14
	tasks, _ := job.Tasks(2)
	for _, c := range []struct {
		from, to string
		wait     Wait
		minutes  int64
		days     int64
	}{
		{"Base, coat 2 of 2", "Base, coat 1 of 2", Recoats, 180, 0},
		{"Mark out for First layer", "Base, coat 2 of 2", Dries, 240, 0},
		{"Hang First layer", "Base, coat 2 of 2", Ages, 0, 14},
		{"Hang Second layer", "Stone", Ages, 0, 14},
		{"Stone", "Seal", Dries, 60, 0},
		{"Mark out for Second layer", "Stone", Dries, 240, 0},
		{"Size, section 1", "Ochre", Dries, 240, 0},
		{"Size, section 2", "Ochre", Dries, 240, 0},
		{"Leaf, section 2", "Size, section 2", Tacks, 180, 0},
		{"Touch up", "Glaze", Dries, 240, 0},
		{"Touch up", "Cornice", Dries, 240, 0},
	} {
		link, ok := linkTo(tasks, c.from, c.to)
		assert.True(t, ok, "%s after %s", c.from, c.to)
		link.Task = 0
		assert.Equal(t, Link{Wait: c.wait, Minutes: c.minutes, Days: c.days}, link, "%s after %s", c.from, c.to)
	}
	_, ok := linkTo(tasks, "Peel First layer", "Stone")
	assert.False(t, ok, "paint is peeled while it is wet")
	_, ok = linkTo(tasks, "Hang First layer", "Cornice")
	assert.False(t, ok, "another surface goes on beside")
}

func TestOnlyAFreeHandSizesAhead(t *testing.T) {
	// With two gilders and two people, and size ready after 100 min where the leaf
	// takes 120, one of the two sizes the second section while they lay: 15 minutes
	// that are counted with the first one's leaf.
	job := twoLayers()
	for i := range job.Steps {
		if job.Steps[i].Tack > 0 {
			job.Steps[i].Tack = 100
		}
	}
	tasks, _ := job.Tasks(2)
	find := func(name string) *Task {
		for i := range tasks {
			if tasks[i].Name.String() == name {
				return &tasks[i]
			}
		}
		t.Fatal(name)
		return nil
	}
	assert.False(t, find("Size, section 1").Aside)
	assert.True(t, find("Size, section 2").Aside)
	assert.Equal(t, int64(255), find("Leaf, section 1").Labour)
	assert.Equal(t, int64(152), find("Leaf, section 1").Window.Open, "144 min, and 8 of the reserve")
	assert.Equal(t, int64(240), find("Leaf, section 2").Labour)
	// Ready after 180 min, it is sized before they begin to lay.
	tasks, _ = twoLayers().Tasks(2)
	assert.False(t, find("Size, section 2").Aside)
	assert.Equal(t, int64(240), find("Leaf, section 1").Labour)
	tasks, _ = job.Tasks(3)
	assert.False(t, find("Size, section 2").Aside)
	assert.Equal(t, int64(240), find("Leaf, section 1").Labour)
	assert.Equal(t, 2, find("Leaf, section 1").Share, "no more gilders than there are")
	tasks, _ = twoLayers().Tasks(1)
	assert.Equal(t, 1, find("Leaf, section 1").Share)
}

func TestOtherOpeningsNeedNotBeDry(t *testing.T) {
	step := func(name string, kind finish.Kind, of int64) Step {
		return Step{ID: name, Name: name, Kind: kind, Layer: 0, Coats: 1, Labour: 60, Dry: 240, Of: of, Tack: 60, Open: 300, Window: 300}
	}
	size, leaf := step("Size", finish.SizeCoat, 600_000), step("Gold", finish.LeafLaying, 600_000)
	leaf.Gilders, leaf.Sections = 1, []Section{{10, 60}}
	job := Job{Layers: []Layer{{ID: "L1", Name: "Mask", Hang: 30}}, Steps: []Step{
		step("Red", finish.Underpaint, 600_000), step("Blue", finish.Underpaint, 400_000), size, leaf, step("Varnish", finish.ClearCoat, 0),
	}}
	tasks, _ := job.Tasks(1)
	waits := func(later, before string) bool {
		link, ok := linkTo(tasks, later, before)
		return ok && link.Minutes == 240
	}
	assert.False(t, waits("Blue", "Red"), "in the rest of the openings")
	assert.True(t, waits("Size", "Red"))
	assert.False(t, waits("Size", "Blue"))
	assert.True(t, waits("Varnish", "Blue"), "what goes over all waits for all")
	for _, of := range []int64{0, 300_000, 600_000, 1_000_000} {
		job.Steps[1].Of = of
		tasks, _ = job.Tasks(1)
		assert.True(t, waits("Blue", "Red"), "%d: it may be the same openings", of)
	}
	job.Steps[0].Of, job.Steps[1].Of = 500_000, 500_000
	tasks, _ = job.Tasks(1)
	assert.True(t, waits("Blue", "Red"), "two halves, or one half twice")
}

func TestCoatsAreSharedByMore(t *testing.T) {
	for labour, want := range map[int64]int{20: 2, 89: 2, 90: 3, 240: 8, 1e9: mostShare} {
		assert.Equal(t, want, shared(labour), "%d min", labour)
	}
	// Four hours of one person: two are at it for 2 h, four for 1 h.
	job := Job{Steps: []Step{{ID: "base", Name: "Base", Kind: finish.Base, Layer: -1, Coats: 1, Labour: 240}}}
	for people, want := range map[int]int64{1: 240, 2: 120, 4: 60, 10: 30} {
		tasks, _ := job.Tasks(people)
		_, minutes := (&Work{Tasks: tasks, People: people}).Takes(0)
		assert.Equal(t, want, minutes, "%d people", people)
	}
}

func TestStepsThatPeel(t *testing.T) {
	job := twoLayers()
	job.Steps = append(job.Steps[:4:4], Step{ID: "off", Name: "Take the first off", Kind: finish.Peel, Layer: -1})
	tasks, _ := job.Tasks(2)
	assert.Contains(t, names(tasks), "Stone; Peel First layer; Take down the last key; Touch up", "it is down already after its last step")
	job.Steps[4].Layer = 0
	tasks, _ = job.Tasks(2)
	assert.Contains(t, names(tasks), "Stone; Take the first off; Take down the last key; Touch up")
	assert.NotContains(t, names(tasks), "Second layer", "no step goes through it")
}

func TestEarlierCoatsOfSizeDryFirst(t *testing.T) {
	job := twoLayers()
	job.Steps[5].Coats, job.Steps[5].Labour, job.Steps[5].Recoat = 2, 30, 720
	tasks, _ := job.Tasks(2)
	assert.Contains(t, names(tasks), "Ochre; Size, coat 1 of 2; Size, section 1; Leaf, section 1; Size, section 2")
	for _, section := range []string{"Size, section 1", "Size, section 2"} {
		link, ok := linkTo(tasks, section, "Size, coat 1 of 2")
		assert.True(t, ok, section)
		assert.Equal(t, int64(720), link.Minutes)
	}
}

func TestWholeJob(t *testing.T) {
	job := twoLayers()
	for people, want := range map[int]string{2: "2027-03-05", 3: "2027-03-05"} {
		tasks, _ := job.Tasks(people)
		s := scheduled(t, &Work{Tasks: tasks, People: people, Start: date(t, "2027-03-01"), Hours: workdays(30)})
		assert.Equal(t, want, s.to(len(tasks) - 1)[:10], "%d people", people)
		for i := range s.Placed {
			assert.False(t, s.Placed[i].Missed, tasks[i].Name.String())
		}
	}
}

func BenchmarkWholeJob(b *testing.B) {
	job, hours := twoLayers(), workdays(30)
	start, _ := ParseDate("2027-03-01")
	b.ReportAllocs()
	for b.Loop() {
		tasks, _ := job.Tasks(2)
		ScheduleOf(&Work{Tasks: tasks, People: 2, Start: start, Hours: hours})
	}
}
