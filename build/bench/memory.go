package main

import (
	"context"
	"fmt"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/heapprofiler"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// growthOf is a count of bytes at two moments.
type growthOf struct{ before, after float64 }

func (g growthOf) percent() float64 { return 100 * (g.after - g.before) / g.before }

func (g growthOf) String() string {
	return fmt.Sprintf("%+.1f %% (%.1f MB to %.1f MB)", g.percent(), g.before/1e6, g.after/1e6)
}

// held is the memory of the engine, which never shrinks, and what the page's
// own heap holds once rubbish is cleared away.
func held(tab context.Context) (engine, heap float64, err error) {
	if _, err = chromedp.Call(tab, heapprofiler.CollectGarbage, cdp.Empty{}); err != nil {
		return 0, 0, err
	}
	usage, err := chromedp.Call(tab, runtime.GetHeapUsage, cdp.Empty{})
	if err != nil {
		return 0, 0, err
	}
	engine, err = evaluate[float64](tab, `watched.memory.buffer.byteLength`)
	return engine, usage.UsedSize, err
}
