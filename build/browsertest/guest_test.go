package browsertest

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"fmt"
	"hash/crc32"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// storedPlans counts the plans this browser keeps.
const storedPlans = `Object.keys(localStorage).filter((k) => k.startsWith("ceilingwright:plan:")).length`

// ownJob types a job of this device's own and waits until it is kept.
func ownJob(t *testing.T) *view {
	v := openAnew(t, desk, "")
	v.press(`.cw-example [data-do=empty]`)
	v.write("/title", "My hall")
	v.leave()
	v.wait(kept + `.includes("My hall")`)
	return v
}

// Once a guest is changed its message says that it is kept, and still the way back.
// A client's copy takes no change, so none is asked for.
func TestGuestSaysWhenItIsKept(t *testing.T) {
	v := ownJob(t)
	v.run(`location.hash = $1`, fragment(painterPlan))
	v.wait(messages + `.includes("It is kept once you change it. “My hall” is kept as it was.")`)
	v.write("/title", "Long room, mine")
	v.leave()
	v.wait(messages + `.includes("This plan is now kept beside “My hall”.")`)
	assert.NotContains(t, v.text(messages), "once you change it")
	v.press(`[data-message=guest] [data-do=open-job]`)
	v.waitText("My hall", blank+`.value`, "/title")
	assert.Empty(t, v.text(messages))

	quoted := v.text(`ceilingwright.quoted($1, "2027-03-01")`, firmsPlan(t))
	v.run(`location.hash = $1`, fragment(quoted))
	v.wait(messages + `.includes("This client’s copy came by a link. “My hall” is kept as it was.")`)
}

// A plan that another page puts into the address stands in front of the job,
// says so, is kept nowhere until it is changed, and goes by one press.
func TestPlanFromLinkIsAGuest(t *testing.T) {
	v := ownJob(t)
	before := v.text(plan)
	v.run(`location.hash = $1`, fragment(painterPlan))
	for _, how := range []string{"moved", "loaded anew"} {
		if how == "loaded anew" {
			v.reload()
		}
		v.waitText("Long room", blank+`.value`, "/title")
		assert.Contains(t, v.text(messages), "“My hall” is kept as it was", how)
		v.run(`await new Promise((r) => setTimeout(r, 700))`)
		assert.Equal(t, 1, value[int](v, storedPlans), how)
		assert.Contains(t, v.text(kept), "My hall", how)
		assert.Equal(t, "from a link, not kept", v.text(`document.querySelector("[data-fill=state]").textContent`), how)
	}
	v.press(`[data-message=guest] [data-do=open-job]`)
	v.waitText("My hall", blank+`.value`, "/title")
	assert.Equal(t, before, v.text(plan))
	assert.False(t, v.holds(`location.hash.includes("cw1")`), "a reload brings the job")
	assert.NotContains(t, v.text(messages), "came by a link")

	// Changed, it is a job beside the other; an undo of the change takes nothing away.
	v.run(`location.hash = $1`, fragment(painterPlan))
	v.waitText("Long room", blank+`.value`, "/title")
	v.write("/title", "Long room, mine")
	v.leave()
	v.reload() // at once: what was typed is there, and not the link again
	assert.Equal(t, "Long room, mine", v.text(blank+`.value`, "/title"))
	v.wait(kept + `.includes("Long room, mine")`)
	assert.Equal(t, 2, value[int](v, storedPlans))
	v.reload()
	assert.Equal(t, "Long room, mine", v.text(blank+`.value`, "/title"))
	assert.Equal(t, before, v.text(`Object.entries(localStorage).find(([k, text]) => k.startsWith("ceilingwright:plan:") && text.includes("My hall"))[1]`))

	// A change taken back is kept too: what is stored is what is on the sheet.
	v.press(`.cw-keep [data-do=empty]`)
	v.write("/title", "Hall")
	v.leave()
	v.wait(kept + `.includes("Hall")`)
	v.write("/title", "")
	v.leave()
	v.wait(`JSON.parse(` + kept + `).title === ""`)

	// Kept by its button, without a change.
	v.run(`location.hash = $1`, fragment(strings.Replace(painterPlan, "Long room", "Blue room", 1)))
	v.waitText("Blue room", blank+`.value`, "/title")
	v.press(`[data-do=keep-guest]`)
	v.wait(kept + `.includes("Blue room")`)
	assert.Equal(t, 4, value[int](v, storedPlans), "it has the id of a kept one, and is kept beside it")
}

func TestManyAddressesStoreNothing(t *testing.T) {
	v := ownJob(t)
	before := v.text(plan)
	keys := v.text(`JSON.stringify(localStorage)`)
	for i := range 20 {
		name := fmt.Sprintf("Room %d", i)
		v.run(`location.hash = $1`, fragment(strings.NewReplacer("Long room", name, `"painter"`, fmt.Sprintf(`"p%d"`, i)).Replace(painterPlan)))
		v.waitText(name, blank+`.value`, "/title")
	}
	v.run(`await new Promise((r) => setTimeout(r, 700))`)
	assert.Equal(t, keys, v.text(`JSON.stringify(localStorage)`))
	v.press(`[data-do=undo]`)
	assert.Equal(t, before, v.text(plan), "all of them are one step")
}

// A few thousand letters can hold a hundred megabytes: unpacking stops at two.
func TestLinkIsUnpackedNoFurtherThanAPlanCanBe(t *testing.T) {
	v := openAnew(t, desk, fragment(painterPlan))
	v.run(`const Real = DecompressionStream;
globalThis.unpacked = 0;
globalThis.DecompressionStream = function (format) {
  const real = new Real(format);
  const count = new TransformStream({ transform(part, on) { unpacked += part.length; on.enqueue(part); } });
  return { readable: real.readable.pipeThrough(count), writable: real.writable };
}`)
	for _, row := range []struct {
		name   string
		spaces int
		words  string
	}{
		{"within", 1_900_000, ""},
		{"over", 2_100_000, "larger than 2 MB"},
		{"a bomb", 100_000_000, "larger than 2 MB"},
	} {
		text := strings.Replace(painterPlan, `"Long room"`, `"`+row.name+`"`+strings.Repeat(" ", row.spaces), 1)
		var packed bytes.Buffer
		w, err := flate.NewWriter(&packed, flate.BestCompression)
		require.NoError(t, err)
		_, err = w.Write([]byte(text))
		require.NoError(t, err)
		require.NoError(t, w.Close())
		data := base64.RawURLEncoding.EncodeToString(packed.Bytes())
		v.run(`unpacked = 0; location.hash = $1`, fmt.Sprintf("#cw1_d_%d_%08x_%s", len(data), crc32.ChecksumIEEE([]byte(text)), data))
		if row.words == "" {
			v.waitText(row.name, blank+`.value`, "/title")
			continue
		}
		v.wait(messages+`.includes($1)`, row.words)
		assert.Less(t, value[int](v, `unpacked`), 4_000_000, row.name)
		assert.NotEqual(t, row.name, v.text(blank+`.value`, "/title"))
		v.run(`document.querySelector("[data-fill=messages]").replaceChildren()`)
	}
}

// "Empty sheet" and "Worked example" say where the job on the sheet has gone.
func TestEmptySheetSaysWhereTheLastJobIs(t *testing.T) {
	v := ownJob(t)
	before := v.text(plan)
	for _, press := range []string{"empty", "example"} {
		v.press(`.cw-keep [data-do=` + press + `]`)
		assert.Contains(t, v.text(messages), "“My hall” is kept on this device.")
		assert.NotEqual(t, before, v.text(plan))
		v.press(`[data-message=aside] [data-do=open-job]`)
		assert.Equal(t, before, v.text(plan))
		assert.NotContains(t, v.text(messages), "My hall")
	}
	// A fresh sheet is no job: nothing is kept of it.
	v.press(`.cw-keep [data-do=empty]`)
	v.run(`await new Promise((r) => setTimeout(r, 700))`)
	assert.Equal(t, 1, value[int](v, storedPlans))
	v.reload()
	assert.Equal(t, "My hall", v.text(blank+`.value`, "/title"))
}

// An example that was changed is not written over by the next one.
func TestChangedExampleStaysBesideANewOne(t *testing.T) {
	v := openAnew(t, desk, "")
	for _, title := range []string{"First try", "Second try"} {
		v.press(`.cw-keep [data-do=example]`)
		v.write("/title", title)
		v.leave()
		v.wait(kept+`.includes($1)`, title)
		v.reload()
	}
	assert.Equal(t, 2, value[int](v, storedPlans))
	assert.True(t, v.holds(`Object.values(localStorage).some((text) => text.includes("First try"))`))
	assert.NotContains(t, v.text(messages), "another tab")
	v.press(`.cw-keep [data-do=example]`)
	assert.Equal(t, "Winter parlour, the garden house", v.text(blank+`.value`, "/title"))
	v.press(`[data-message=aside] [data-do=open-job]`)
	assert.Equal(t, "Second try", v.text(blank+`.value`, "/title"))
}
