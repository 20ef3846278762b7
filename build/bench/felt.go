package main

import (
	"bytes"
	"context"
	"encoding/base64"
	"fmt"
	"hash/crc32"
	"net/http"
	"net/http/httptest"
	"path"
	"strconv"
	"strings"
	"testing/fstest"
	"time"

	"github.com/andybalholm/brotli"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"ceilingwright/build/chromium"
	"ceilingwright/build/serve"
)

// What whoever uses the page feels of its speed: seen from outside, by what is painted.

// noted runs in every page before its own scripts: what the browser itself tells of
// shifts of the layout, of long tasks and of the first paint.
const noted = `
globalThis.noted = { shift: 0, longest: 0, text: 0 };
const observe = (type, each) => new PerformanceObserver((list) => list.getEntries().forEach(each)).observe({ type, buffered: true });
observe("layout-shift", (e) => { if (!e.hadRecentInput) noted.shift += e.value; });
observe("longtask", (e) => { noted.longest = Math.max(noted.longest, e.duration); });
observe("paint", (e) => { if (e.name === "first-contentful-paint") noted.text = e.startTime; });`

// device is what the page is opened on: how much slower than this machine it works, and
// whether it is a phone on 1.6 Mbit/s with 150 ms there and back.
type device struct {
	slower float64
	phone  bool
}

var (
	desktop    = device{slower: 1}
	slow       = device{slower: 4}
	slowOnline = device{slower: 4, phone: true}
)

func (d device) String() string {
	switch {
	case d.phone:
		return "slow phone"
	case d.slower > 1:
		return fmt.Sprintf("processor ÷ %.0f", d.slower)
	}
	return "desktop"
}

// on opens an address on a device as a first visit, and calls do with the page.
func on(browser context.Context, d device, address string, do func(tab context.Context) error) error {
	tab, closeTab := chromedp.NewContext(browser, chromedp.WithNewBrowserContext())
	defer closeTab()
	window := emulation.SetDeviceMetricsOverrideParams{Width: 1280, Height: 800, DeviceScaleFactor: 1}
	if d.phone {
		window = emulation.SetDeviceMetricsOverrideParams{Width: 390, Height: 844, DeviceScaleFactor: 1, Mobile: true}
	}
	if err := chromedp.Do(tab); err != nil {
		return err
	}
	if _, err := chromedp.Call(tab, emulation.SetDeviceMetricsOverride, window); err != nil {
		return err
	}
	if _, err := chromedp.Call(tab, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: d.slower}); err != nil {
		return err
	}
	if d.phone {
		if _, err := chromedp.Call(tab, network.Enable, network.EnableParams{}); err != nil {
			return err
		}
		const perSecond = 1.6e6 / 8
		if _, err := chromedp.Call(tab, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
			MatchedNetworkConditions: []*network.Conditions{{Latency: 150, DownloadThroughput: perSecond, UploadThroughput: perSecond}},
		}); err != nil {
			return err
		}
	}
	if _, err := chromedp.Call(tab, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: noted}); err != nil {
		return err
	}
	limited, cancel := context.WithTimeout(tab, 90*time.Second)
	defer cancel()
	if err := chromedp.Do(limited, chromedp.Navigate(address)); err != nil {
		return err
	}
	return do(limited)
}

// packed serves the built files with the headers of the host, compressed as it does.
func packed(folder fstest.MapFS) *httptest.Server {
	small := fstest.MapFS{}
	for name, file := range folder {
		var b bytes.Buffer
		w := brotli.NewWriterLevel(&b, 5)
		w.Write(file.Data)
		w.Close()
		small[name] = &fstest.MapFile{Data: b.Bytes()}
	}
	inner := serve.Handler(small)
	return httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if name := strings.TrimPrefix(path.Clean(r.URL.Path), "/"); name == "" || folder[name] != nil {
			w.Header().Set("Content-Encoding", "br")
		}
		inner.ServeHTTP(w, r)
	}))
}

// linkTo is the address of the page with a plan in it, on its page of the room.
func linkTo(server *httptest.Server, plan string) string {
	if plan == "" {
		return server.URL + "/#room"
	}
	data := base64.RawURLEncoding.EncodeToString([]byte(plan))
	return fmt.Sprintf("%s/#cw1_j_%d_%08x_%s", server.URL, len(data), crc32.ChecksumIEEE([]byte(plan)), data)
}

// typing types one digit after another behind the length of the room, each taken away
// by the next key, and takes for every key the time until the frame is drawn that shows
// the answer to it, or to a later key. What each digit is answered by is learnt first.
const typing = `(async () => {
  const wait = (ms) => new Promise((r) => setTimeout(r, ms));
  const figure = () => document.querySelector('#room .cw-figure[data-figure="room.area"] .cw-value');
  while (!document.documentElement.hasAttribute("data-ready")) await wait(50);
  document.querySelector('.cw-pages a[href="#room"]').click();
  await wait(2000);
  const blank = document.querySelector('#room [data-at="/room/length"]');
  blank.focus();
  blank.value = "25'";
  const enter = () => blank.dispatchEvent(new InputEvent("input", { bubbles: true }));
  const answers = new Map();
  for (const last of ["", ..."123456789"]) {
    blank.value = "25'" + last;
    enter();
    await wait(last === "" ? 2000 : 900);
    answers.set(blank.value, figure().textContent);
  }
  if (new Set(answers.values()).size !== answers.size) throw new Error("digits have the same answer: " + JSON.stringify([...answers]));
  const times = [];
  const open = [];
  let pressed = 0;
  blank.addEventListener("keydown", (e) => { pressed = e.timeStamp; }, true);
  blank.addEventListener("input", () => { open.push({ value: blank.value, pressed }); });
  new MutationObserver(() => {
    const shown = open.findLastIndex((k) => answers.get(k.value) === figure().textContent);
    if (shown < 0) return;
    const answered = open.splice(0, shown + 1);
    // The message is handled after the frame has been handed on.
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => answered.forEach((k) => times.push(performance.now() - k.pressed));
      port2.postMessage(0);
    });
  }).observe(document.querySelector("#room"), { subtree: true, childList: true, characterData: true });
  globalThis.typed = { times, open };
  blank.value = "25'";
  enter();
  await wait(900);
  open.length = times.length = 0;
  blank.setSelectionRange(3, 3);
  return true;
})()`

const (
	keyPresses = 80
	betweenKey = 90 * time.Millisecond // as fast as most people type figures
)

// keyTimes are the times of the keys typed into a plan on a device, "" being the example.
func keyTimes(browser context.Context, server *httptest.Server, d device, plan string) (times []float64, err error) {
	err = on(browser, d, linkTo(server, plan), func(tab context.Context) error {
		if _, err := evaluate[bool](tab, typing); err != nil {
			return err
		}
		next := time.Now()
		for n := range keyPresses {
			key := "\b"
			if n%2 == 0 {
				key = strconv.Itoa(1 + n/2%9)
			}
			if err := chromedp.Do(tab, chromedp.KeyEvent(key)); err != nil {
				return err
			}
			next = next.Add(betweenKey)
			time.Sleep(time.Until(next))
		}
		time.Sleep(2 * time.Second)
		times, err = evaluate[[]float64](tab, `typed.times`)
		if err == nil && len(times) < keyPresses {
			err = fmt.Errorf("%d of %d keys were answered", len(times), keyPresses)
		}
		return err
	})
	return times, err
}

// keys is how long a key that changes the answer waits for it to be painted.
func keys(ctx context.Context, b *bench) (rows []row, err error) {
	server := served(folderOf(b.output))
	defer server.Close()
	browser, stop, err := chromium.Start(ctx)
	if err != nil {
		return nil, err
	}
	defer stop()
	for _, plan := range []struct{ name, text string }{{"example", ""}, {"large job", b.job}} {
		for _, on := range []struct {
			device
			most float64
		}{{desktop, 30}, {slow, 120}} {
			times, err := keyTimes(browser, server, on.device, plan.text)
			if err != nil {
				return nil, fmt.Errorf("%s, %s: %w", plan.name, on.device, err)
			}
			p95 := percentile(times, 95)
			rows = append(rows, row{fmt.Sprintf("digit typed, 90 ms apart, to its answer painted, 95 %%: %s, %s", plan.name, on.device),
				fmt.Sprintf("%.0f ms (median %.0f ms)", p95, median(times)), fmt.Sprintf("≤ %.0f ms", on.most), p95 <= on.most})
		}
	}
	return rows, nil
}

// shown waits for the answers of the first page and the frame that paints them, and
// gives when that was.
const shown = `(async () => {
  while (!/\d/.test(document.querySelector("[data-fill=answers]")?.textContent ?? "")) await new Promise((r) => setTimeout(r, 20));
  return await new Promise((r) => requestAnimationFrame(() => { const c = new MessageChannel(); c.port1.onmessage = () => r(performance.now()); c.port2.postMessage(0); }));
})()`

// begun waits until the engine has answered and its sheet is shown, and gives when.
const begun = `(async () => {
  while (!document.documentElement.hasAttribute("data-ready") || document.querySelector("[data-fill=version]").textContent === "") await new Promise((r) => setTimeout(r, 20));
  return performance.now();
})()`

// starts is what the start of the page does to whoever reads it already.
func starts(ctx context.Context, b *bench) (rows []row, err error) {
	server := packed(folderOf(b.output))
	defer server.Close()
	browser, stop, err := chromium.Start(ctx)
	if err != nil {
		return nil, err
	}
	defer stop()
	for _, at := range []struct {
		device
		longest float64
	}{{desktop, 50}, {slow, 200}, {slowOnline, 200}} {
		err := on(browser, at.device, server.URL, func(tab context.Context) error {
			answered, err := evaluate[float64](tab, begun)
			if err != nil {
				return err
			}
			time.Sleep(2 * time.Second)
			longest, err := evaluate[float64](tab, `noted.longest`)
			if err != nil {
				return err
			}
			shift, err := evaluate[float64](tab, `noted.shift`)
			rows = append(rows,
				row{"longest task at start, " + at.device.String(), fmt.Sprintf("%.0f ms (engine answered at %.0f ms)", longest, answered), fmt.Sprintf("≤ %.0f ms", at.longest), longest <= at.longest},
				row{"layout shift at start, " + at.device.String(), fmt.Sprintf("%.3f", shift), "≤ 0.05", shift <= 0.05})
			return err
		})
		if err != nil {
			return nil, fmt.Errorf("%s: %w", at.device, err)
		}
	}
	return rows, nil
}

// slowPhone is what a slow phone shows when; a blank is changed as soon as there is text.
func slowPhone(ctx context.Context, b *bench) (rows []row, err error) {
	server := packed(folderOf(b.output))
	defer server.Close()
	browser, stop, err := chromium.Start(ctx)
	if err != nil {
		return nil, err
	}
	defer stop()
	err = on(browser, slowOnline, server.URL, func(tab context.Context) error {
		figures, err := evaluate[float64](tab, shown)
		if err != nil {
			return err
		}
		text, err := evaluate[float64](tab, `noted.text`)
		rows = append(rows,
			row{"slow phone, text painted", fmt.Sprintf("%.1f s", text/1000), "≤ 1.5 s", text <= 1500},
			row{"slow phone, example's figures painted", fmt.Sprintf("%.1f s", figures/1000), "≤ 1.5 s", figures <= 1500})
		return err
	})
	if err != nil {
		return nil, err
	}
	const change = `(async () => {
  const wait = () => new Promise((r) => setTimeout(r, 20));
  const blank = () => document.querySelector('#job [data-at="/room/length"]');
  while (!blank()?.value) await wait();
  const usable = performance.now();
  const border = () => document.querySelector('[data-answer=borders] dd')?.textContent ?? "";
  const before = border();
  blank().focus();
  blank().value = "30 ft";
  blank().dispatchEvent(new InputEvent("input", { bubbles: true }));
  while (border() === "" || border() === before) await wait();
  return [usable, performance.now()];
})()`
	err = on(browser, slowOnline, server.URL, func(tab context.Context) error {
		at, err := evaluate[[]float64](tab, change)
		if err == nil {
			rows = append(rows, row{"slow phone, a changed blank answered", fmt.Sprintf("%.1f s (usable from %.1f s)", at[1]/1000, at[0]/1000), "≤ 8 s", at[1] <= 8000})
		}
		return err
	})
	return rows, err
}
