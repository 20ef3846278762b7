package browsertest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fromDisk opens a file of the disk and waits for its answers.
func fromDisk(t *testing.T, path string) *view {
	t.Helper()
	v := anotherDevice(t, desk)
	v.visit("file://" + path)
	v.ready()
	return v
}

// onlyItself says that a page from disk asked for nothing but its own file.
func (v *view) onlyItself(path string) {
	v.t.Helper()
	for _, url := range v.asked() {
		assert.Equal(v.t, "file://"+path, strings.SplitN(url, "#", 2)[0])
	}
}

func TestSingleFileWorksFromDiskAlone(t *testing.T) {
	path := filepath.Join(dist, "ceilingwright.html")
	v := fromDisk(t, path)
	v.press(`.cw-example [data-do=make-mine]`)
	v.write("/title", "No signal here")
	v.painterOnExample()
	v.wait(kept + `.includes("No signal here")`)
	v.reload()
	v.waitText("1′ 9¼″", figure, "border.DA")
	assert.Equal(t, "No signal here", v.text(blank+`.value`, "/title"))
	v.onlyItself(path)
}

// A page taken along opens from disk with its plan, on a device that has never
// seen it, and can be taken along again from there. Where the job inside is kept
// just as it is, it is that job, and goes on.
func TestPageTakenAlongCanBeTakenAlongAgain(t *testing.T) {
	v := openPainter(t, desk)
	taken := func() string {
		folder := v.downloads()
		v.press(`[data-do=take-along]`)
		name, path := v.arrived(folder)
		assert.Equal(t, "long-room.html", name)
		return path
	}
	before := v.text(plan)
	path := taken()
	v = fromDisk(t, path)
	v.waitText("4″", figure, "border.DA")
	assert.Equal(t, before, v.text(plan))
	v.onlyItself(path)
	v.write("/mask/length", "178")
	v.waitText("5″", figure, "border.DA")
	v.leave()
	v.wait(`JSON.stringify(JSON.parse(` + kept + ` || "null")) === JSON.stringify(JSON.parse(` + plan + `))`)

	before = v.text(plan)
	path = taken()
	v.visit("file://" + path)
	v.ready()
	v.waitText("5″", figure, "border.DA")
	assert.Equal(t, before, v.text(plan))
	v.onlyItself(path)
	v.write("/mask/length", "176")
	v.wait(kept + `.includes('"176')`)
	assert.Empty(t, v.text(messages))
}

// A saved page keeps every job made in it: it opens with the one worked on last in
// it, and the way to the one it was saved with stays open. Another file knows nothing
// of that.
func TestSavedPageKeepsEveryJobMadeInIt(t *testing.T) {
	for _, row := range []struct{ name, plan, first string }{
		{"with a job", fragment(painterPlan), "Long room"},
		{"with the example", "", "Winter parlour, the garden house"},
	} {
		t.Run(row.name, func(t *testing.T) {
			v := open(t, desk, row.plan)
			folder := v.downloads()
			v.press(`[data-do=take-along]`)
			_, path := v.arrived(folder)
			v = fromDisk(t, path)
			v.press(`.cw-keep [data-do=empty]`)
			v.write("/title", "Made here")
			v.wait(kept + `.includes("Made here")`)
			v.reload()
			v.waitText("Made here", blank+`.value`, "/title")
			v.press(`[data-message=opened] button`)
			v.waitText(row.first, blank+`.value`, "/title")

			// A change of the first one is the last work then, and goes on.
			v.write("/title", "First again")
			v.leave()
			v.wait(kept + `.includes("First again")`)
			v.reload()
			v.waitText("First again", blank+`.value`, "/title")
			v.write("/title", "First on")
			v.wait(kept + `.includes("First on")`)
			assert.NotContains(t, v.text(messages), "another tab")
			v.press(`[data-message=opened] [data-do=as-saved]`)
			v.waitText(row.first, blank+`.value`, "/title")
			v.press(`[data-do=jobs]`)
			assert.Contains(t, v.text(jobNames), "Made here")
			assert.Contains(t, v.text(jobNames), "First on")

			content, err := os.ReadFile(path)
			require.NoError(t, err)
			other := filepath.Join(t.TempDir(), "other.html")
			require.NoError(t, os.WriteFile(other, content, 0o644))
			v.visit("file://" + other)
			v.ready()
			assert.NotContains(t, v.text(blank+`.value`, "/title"), "Made here")
			v.write("/title", "In the other")
			v.wait(kept + `.includes("In the other")`)
			assert.NotContains(t, v.text(messages), "another tab")
			v.press(`[data-do=jobs]`)
			assert.Contains(t, v.text(jobNames), "Made here")
		})
	}
}

// A plan in the file's address works without a server too.
func TestLinkWorksOnSingleFile(t *testing.T) {
	v := fromDisk(t, filepath.Join(dist, "ceilingwright.html")+fragment(painterPlan))
	v.waitText("4″", figure, "border.DA")
}
