// Package chromium starts the browser for tests and benches: one way, with one
// set of switches, so that both see the same browser. It drives it through
// chromedp; finding and installing the program is package machine's work.
package chromium

import (
	"context"
	"fmt"
	"os"
	"strings"

	"github.com/chromedp/chromedp"

	"ceilingwright/build/machine"
)

// Switches are the command line of the browser besides its profile: no window,
// no sandbox (containers forbid it, and only our own pages are opened), and no
// traffic of its own.
func Switches() []string {
	return []string{
		"--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--no-default-browser-check",
		"--disable-background-networking", "--disable-component-update", "--disable-sync",
		"--disable-dev-shm-usage", "--disable-extensions", "--mute-audio", "--hide-scrollbars",
		// A page in the background is slowed down, and in a headless browser
		// every page may count as one.
		"--disable-background-timer-throttling", "--disable-backgrounding-occluded-windows", "--disable-renderer-backgrounding",
		// What would drop down from the address bar is a page of its own, kept
		// ready for every tab, and takes a third of all the time a start takes.
		"--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup",
	}
}

// Start starts a browser with a new, empty profile. Pages of it are opened
// with chromedp.NewContext on the context given back; stop ends the browser
// and removes the profile.
func Start(parent context.Context, more ...chromedp.ExecAllocatorOption) (browser context.Context, stop func(), err error) {
	path, err := machine.Chromium().Find()
	if err != nil {
		return nil, nil, err
	}
	profile, err := os.MkdirTemp("", "profile")
	if err != nil {
		return nil, nil, err
	}
	options := []chromedp.ExecAllocatorOption{chromedp.ExecPath(path), chromedp.UserDataDir(profile)}
	for _, s := range Switches() {
		name, value, has := strings.Cut(s[2:], "=")
		if has {
			options = append(options, chromedp.Flag(name, value))
		} else {
			options = append(options, chromedp.Flag(name, true))
		}
	}
	allocator, free := chromedp.NewExecAllocator(parent, append(options, more...)...)
	browser, end := chromedp.NewContext(allocator)
	stop = func() {
		end()
		free()
		os.RemoveAll(profile)
	}
	if err := chromedp.Do(browser); err != nil {
		stop()
		return nil, nil, fmt.Errorf("%s did not start: %w", path, err)
	}
	return browser, stop, nil
}
