package main

import (
	"context"
	"fmt"
	"net/http/httptest"
	"testing/fstest"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"ceilingwright/build/bundle"
	"ceilingwright/build/chromium"
	"ceilingwright/build/serve"
)

// watch runs in every page before its own scripts. It notes when the engine is
// there and when it first answered, and keeps the engine's memory at hand.
const watch = `
globalThis.watched = { first: 0 };
document.addEventListener("ceilingwright:ready", () => {
  const workOut = ceilingwright.sheet;
  ceilingwright.sheet = (plan) => {
    const sheet = workOut(plan);
    watched.first ||= performance.now();
    return sheet;
  };
}, true);
for (const name of ["instantiate", "instantiateStreaming"]) {
  const real = WebAssembly[name];
  WebAssembly[name] = async (...a) => {
    const made = await real.apply(WebAssembly, a);
    watched.memory = (made.instance ?? made).exports.mem;
    return made;
  };
}`

// folderOf lays built files out for the server.
func folderOf(output bundle.Output) fstest.MapFS {
	folder := fstest.MapFS{}
	for _, f := range output {
		folder[f.Path] = &fstest.MapFile{Data: f.Content}
	}
	return folder
}

// served serves a folder with the published headers until the caller is done.
func served(folder fstest.MapFS) *httptest.Server {
	return httptest.NewServer(serve.Handler(folder))
}

// visit opens address as a first visit, with nothing cached, waits until ready
// is true on the page, and calls do with the page.
func visit(browser context.Context, address, ready string, do func(tab context.Context) error) error {
	tab, closeTab := chromedp.NewContext(browser, chromedp.WithNewBrowserContext())
	defer closeTab()
	if err := chromedp.Do(tab); err != nil {
		return err
	}
	if _, err := chromedp.Call(tab, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: watch}); err != nil {
		return err
	}
	if err := chromedp.Do(tab, chromedp.Navigate(address)); err != nil {
		return err
	}
	limited, cancel := context.WithTimeout(tab, 30*time.Second)
	defer cancel()
	if _, err := chromedp.Run(limited, chromedp.Poll[bool](ready)); err != nil {
		return fmt.Errorf("%s on %s: %w", ready, address, err)
	}
	return do(tab)
}

// onOwnPage opens the project's page and calls do once a sheet is computed.
func onOwnPage(ctx context.Context, b *bench, do func(tab context.Context) error) error {
	server := served(folderOf(b.output))
	defer server.Close()
	browser, stop, err := chromium.Start(ctx)
	if err != nil {
		return err
	}
	defer stop()
	return visit(browser, server.URL, `watched.first > 0`, do)
}

// evaluate runs an expression on the page; a promise is waited for.
func evaluate[T any](tab context.Context, expression string) (T, error) {
	return chromedp.Run(tab, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
}

// bareFolder is a page that boots the bare runtime the way ours boots: the
// same glue, streamed, from a deferred script, under the same headers.
func bareFolder(b *bench) (fstest.MapFS, error) {
	glue, err := b.toolchain.Glue()
	if err != nil {
		return nil, err
	}
	script := glue + `
const go = new Go();
WebAssembly.instantiateStreaming(fetch("assets/bare.wasm"), go.importObject)
  .then((made) => go.run(made.instance))
  .then(() => { globalThis.booted = performance.now(); });`
	return fstest.MapFS{
		"index.html":       {Data: []byte(`<!doctype html><meta charset="utf-8"><title>bare</title><link rel="preload" href="assets/bare.wasm" as="fetch" crossorigin><script defer src="assets/bare.js"></script>`)},
		"assets/bare.js":   {Data: []byte(script)},
		"assets/bare.wasm": {Data: b.bare},
	}, nil
}

// boots compares navigation to first computed sheet with the boot of the bare
// runtime. The two take turns, so that a busy moment hits both.
func boots(ctx context.Context, b *bench) ([]row, error) {
	bareFiles, err := bareFolder(b)
	if err != nil {
		return nil, err
	}
	ours, bare := served(folderOf(b.output)), served(bareFiles)
	defer ours.Close()
	defer bare.Close()
	browser, stop, err := chromium.Start(ctx)
	if err != nil {
		return nil, err
	}
	defer stop()
	var first, boot []float64
	for range 11 {
		t, err := timeOf(browser, ours, `watched.first`)
		if err != nil {
			return nil, err
		}
		first = append(first, t)
		if t, err = timeOf(browser, bare, `(globalThis.booted ?? 0)`); err != nil {
			return nil, err
		}
		boot = append(boot, t)
	}
	ratio := median(first) / median(boot)
	return []row{{"navigation to first sheet ÷ boot of bare runtime",
		fmt.Sprintf("%.2f (%.0f ms ÷ %.0f ms)", ratio, median(first), median(boot)), "≤ 1.5", ratio <= 1.5}}, nil
}

// timeOf visits a page and reads when moment came, in ms from navigation.
func timeOf(browser context.Context, server *httptest.Server, moment string) (at float64, err error) {
	err = visit(browser, server.URL, moment+` > 0`, func(tab context.Context) error {
		at, err = evaluate[float64](tab, moment)
		return err
	})
	return at, err
}

// memory recomputes again and again in one page and compares the memory of
// engine and page after a warm-up and at the end.
func memory(ctx context.Context, b *bench) ([]row, error) {
	var engine, heap growthOf
	err := onOwnPage(ctx, b, func(tab context.Context) error {
		if err := keepPlan(tab, b.plan); err != nil {
			return err
		}
		warm := b.repeats / 20
		if err := recompute(tab, warm); err != nil {
			return err
		}
		var err error
		if engine.before, heap.before, err = held(tab); err != nil {
			return err
		}
		if err := recompute(tab, b.repeats-warm); err != nil {
			return err
		}
		engine.after, heap.after, err = held(tab)
		return err
	})
	if err != nil {
		return nil, err
	}
	what := fmt.Sprintf("growth of memory over %d recomputes", b.repeats)
	return []row{
		{what + ", engine", engine.String(), "≤ 10 %", engine.percent() <= 10},
		{what + ", page", heap.String(), "≤ 10 %", heap.percent() <= 10},
	}, nil
}

// recompute computes the kept plan n times, in turns short enough that the
// page stays alive. The room differs from one to the next, so that nothing can
// be remembered.
func recompute(tab context.Context, n int) error {
	_, err := evaluate[bool](tab, fmt.Sprintf(`(async () => {
  const compute = ceilingwright.compute;
  for (let i = 0; i < %d; i++) {
    compute(watched.plan.replace('"height":"', '"height":"' + (i %% 7 ? "" : " ")));
    if (i %% 200 === 0) await new Promise((r) => setTimeout(r));
  }
  return true;
})()`, n))
	return err
}

// keepPlan puts the plan on the page.
func keepPlan(tab context.Context, plan string) error {
	_, err := evaluate[bool](tab, fmt.Sprintf(`(watched.plan = JSON.stringify(%s), true)`, plan))
	return err
}
