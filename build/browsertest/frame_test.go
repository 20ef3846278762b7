package browsertest

import (
	"fmt"
	"html"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// framing serves a page of another site that holds ours in a frame and fits
// the frame to the heights ours tells.
func framing(t *testing.T, sandbox, address string) string {
	t.Helper()
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		fmt.Fprintf(w, `<!doctype html><meta charset="utf-8"><title>Another site</title>
<body style="margin:0"><iframe id="frame" %s style="width:700px;height:600px;border:0" src="%s"></iframe>
<script>
globalThis.heights = [];
addEventListener("message", (e) => {
  if (e.data?.type !== "ceilingwright:height") return;
  heights.push(e.data.height);
  document.getElementById("frame").style.height = e.data.height + "px";
});
</script>`, sandbox, html.EscapeString(address))
	}))
	t.Cleanup(server.Close)
	return server.URL + "/"
}

// Another site puts the page in a frame, freely or in a sandbox, where it has
// no origin, no storage and may not save: it works, takes its plan from the
// address, and its height comes to rest.
func TestPageWorksInFrameOfAnotherSite(t *testing.T) {
	beside(t)
	// 127.0.0.1 and localhost are two sites to a browser.
	address := strings.Replace(hosted, "127.0.0.1", "localhost", 1) + fragment(painterPlan)
	for _, row := range []struct{ name, sandbox, state string }{
		{"free", "", ""},
		{"sandboxed", `sandbox="allow-scripts"`, "keeps nothing"},
	} {
		t.Run(row.name, func(t *testing.T) {
			v := newView(t, window{800, 900})
			v.visit(framing(t, row.sandbox, address))
			v.wait(`heights.length > 0 && heights.at(-1) > 1000`)
			inside := v.inFrame(strings.Replace(hosted, "127.0.0.1", "localhost", 1))
			inside.ready()
			inside.allPages()
			inside.waitText("4″", figure, "border.DA")
			inside.waitText("Long room", blank+`.value`, "/title")
			assert.True(t, inside.holds(`document.documentElement.hasAttribute("data-framed") && !document.querySelector("[data-fill=own-tab]").hidden`))

			v.run(`await new Promise((r) => setTimeout(r, 500))`)
			resting := value[[]float64](v, `[heights.at(-1), heights.length]`)
			v.run(`for (let i = 0; i < 20; i++) { document.getElementById("frame").style.height = (heights.at(-1) + i % 2) + "px"; await new Promise((r) => setTimeout(r, 20)); }`)
			after := value[[]float64](v, `[heights.at(-1), heights.length]`)
			assert.Equal(t, resting, after, "twenty messages do not make it grow")
			assert.True(t, inside.holds(`document.scrollingElement.scrollHeight <= innerHeight + 1`), "the frame fits")

			inside.run(`const b = `+blank+`; b.focus(); b.value = "170"; b.dispatchEvent(new InputEvent("input", { bubbles: true }))`, "/mask/length")
			inside.waitText("9″", figure, "border.DA")
			if row.state != "" {
				inside.wait(messages+`.includes($1)`, row.state)
			}
		})
	}
}

// around serves a page that holds frames, of another site or, where its address
// is asked for under /own/, of ours.
func around(t *testing.T, frames ...string) string {
	t.Helper()
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		fmt.Fprintf(w, `<!doctype html><meta charset="utf-8"><title>Another site</title><body style="margin:0">%s`, strings.Join(frames, ""))
	}))
	t.Cleanup(server.Close)
	return server.URL + "/"
}

// elsewhere is our page under the name of another site to the page around it.
func elsewhere() string { return strings.Replace(hosted, "127.0.0.1", "localhost", 1) }

// framed is a frame with our page and a plan in its address.
func framed(attributes, address string) string {
	return fmt.Sprintf(`<iframe %s style="width:700px;height:900px;border:0" src="%s"></iframe>`, attributes, html.EscapeString(address))
}

// typeInside writes a blank inside a frame, which may not have the focus.
func (v *view) typeInside(at, text string) {
	v.t.Helper()
	v.run(`const b = `+blank+`; b.focus(); b.value = $2; b.dispatchEvent(new InputEvent("input", { bubbles: true })); b.blur()`, at, text)
}

// After a reload the visitor's work comes first, and the plan the page around
// gives is one press away. Two frames on one page have their own places, by their
// addresses or by the names they were given.
func TestFramesKeepTheVisitorsWorkApart(t *testing.T) {
	beside(t)
	blue := strings.NewReplacer("Long room", "Blue room", `"painter"`, `"blue"`).Replace(painterPlan)
	for _, row := range []struct{ name, one, two string }{
		{"by address", framed(``, elsewhere()+"?f=1"+fragment(painterPlan)), framed(``, elsewhere()+"?f=2"+fragment(blue))},
		{"by name", framed(`name="one"`, elsewhere()+"?f=1"+fragment(painterPlan)), framed(`name="two"`, elsewhere()+"?f=2"+fragment(painterPlan))},
	} {
		t.Run(row.name, func(t *testing.T) {
			v := anotherDevice(t, window{800, 900})
			address := around(t, row.one, row.two)
			v.visit(address)
			one, two := v.inFrame(elsewhere()+"?f=1"), v.inFrame(elsewhere()+"?f=2")
			one.ready()
			two.ready()
			given := two.text(blank+`.value`, "/title")
			one.typeInside("/title", "First visitor")
			one.wait(`document.querySelector("[data-fill=state]").textContent === "kept on this device"`)

			v.visit(address)
			one, two = v.inFrame(elsewhere()+"?f=1"), v.inFrame(elsewhere()+"?f=2")
			one.ready()
			two.ready()
			one.waitText("First visitor", blank+`.value`, "/title")
			assert.Equal(t, given, two.text(blank+`.value`, "/title"), "the other frame shows what it was given")
			assert.Contains(t, one.text(messages), "your own work")
			one.run(`document.querySelector("[data-do=as-given]").click()`)
			one.waitText("Long room", blank+`.value`, "/title")
			one.run(`document.querySelector("[data-do=undo]").click()`)
			one.waitText("First visitor", blank+`.value`, "/title")
		})
	}
}

// What a frame forbids is said before a button is pressed where it can be known,
// after where it shows, and nothing claims to have come that may not have. The
// plan as text can be copied everywhere.
func TestFrameSaysWhatItForbids(t *testing.T) {
	beside(t)
	const before = `document.querySelector("[data-fill=frame-may]").textContent`
	const unknown = "The page around this one may forbid saving files, printing or opening tabs. Copying as text works."
	for _, row := range []struct{ name, sandbox string }{{"of another site", ``}, {"in a sandbox", `sandbox="allow-scripts"`}} {
		t.Run(row.name, func(t *testing.T) {
			v := newView(t, window{800, 900})
			v.visit(around(t, framed(row.sandbox, elsewhere()+fragment(painterPlan))))
			inside := v.inFrame(elsewhere())
			inside.ready()
			inside.waitText(unknown, before)
			inside.run(`document.querySelector("[data-do=save-file]").click()`)
			inside.wait(messages + `.includes("was handed to the browser. If no file comes")`)
			inside.run(`document.querySelector(".cw-keep [data-do=copy-text]").click()`)
			inside.wait(`document.querySelector("[data-message=done] textarea")?.value === ` + plan)
			if row.sandbox == "" {
				return
			}
			inside.run(`document.querySelector("[data-do=print]").click()`)
			inside.wait(messages + `.includes("forbids printing")`)
			inside.run(`document.querySelector("[data-fill=own-tab]").click()`)
			inside.wait(messages + `.includes("forbids opening a tab")`)
			inside.wait(`document.querySelector("[data-message=done] textarea")?.value.includes("#cw1_")`)
		})
	}

	// A frame of the same site can be asked what it forbids.
	const here = `document.querySelector("iframe").contentDocument`
	for _, row := range []struct{ name, sandbox, said, saving string }{
		{"own site, free", ``, "", "on its way to your downloads"},
		{"own site, nothing allowed", `sandbox="allow-scripts allow-same-origin"`,
			"The page around this one forbids saving files, printing and opening tabs. Copying as text works.", "forbids saving files"},
		{"own site, files allowed", `sandbox="allow-scripts allow-same-origin allow-downloads"`,
			"The page around this one forbids printing and opening tabs. Copying as text works.", "on its way to your downloads"},
	} {
		t.Run(row.name, func(t *testing.T) {
			address := hostedBy(t, func(own http.Handler) http.Handler {
				return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
					if r.URL.Path != "/around" {
						own.ServeHTTP(w, r)
						return
					}
					w.Header().Set("Content-Type", "text/html; charset=utf-8")
					fmt.Fprint(w, `<!doctype html><title>Own site</title>`, framed(row.sandbox, "/"+fragment(painterPlan)))
				})
			})
			v := newView(t, window{800, 900})
			folder := v.downloads()
			v.visit(address + "around")
			v.wait(here + `.documentElement.hasAttribute("data-ready")`)
			v.waitText(row.said, strings.Replace(before, "document", here, 1))
			v.run(here + `.querySelector("[data-do=save-file]").click()`)
			v.wait(strings.Replace(messages, "document", here, 1)+`.includes($1)`, row.saving)
			assert.Equal(t, row.said != "", v.holds(here+`.querySelector("[data-do=print]").getAttribute("aria-disabled") === "true"`))
			assert.Equal(t, row.said != "", v.holds(here+`.querySelector("[data-fill=own-tab]").hidden`))
			if strings.Contains(row.saving, "forbids") {
				assert.True(t, v.holds(here+`.querySelector("[data-message=done] textarea").value.includes("Long room")`), "the text to copy")
			} else {
				v.arrived(folder)
			}
		})
	}
}
