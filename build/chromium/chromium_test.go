package chromium

import (
	"context"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/build/machine"
)

func TestStartGivesAPageThatRuns(t *testing.T) {
	if _, err := machine.Chromium().Find(); err != nil {
		t.Skip(err)
	}
	browser, stop, err := Start(context.Background())
	require.NoError(t, err)
	defer stop()
	page, closePage := chromedp.NewContext(browser)
	defer closePage()
	got, err := chromedp.Run(page, chromedp.Evaluate[int](`[1, 2, 3].reduce((a, b) => a + b)`))
	require.NoError(t, err)
	assert.Equal(t, 6, got)
}
