package browsertest

import (
	"context"
	"runtime"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"ceilingwright/build/chromium"
)

// lane is a browser of its own, with a profile of its own and the page that runs
// in it. One test has it at a time, so that tests in different lanes share
// nothing but the processors.
type lane struct {
	browser context.Context
	running *runningPage // nil where none is open
	stop    func()
}

// lanes are those not in use, the last used first; given are those in use and what
// tests said of themselves, by the name of the whole test.
var lanes = struct {
	sync.Mutex
	free   []*lane
	places chan struct{} // one for each lane there may be
	given  map[string]*lane
	called map[string]bool
}{places: make(chan struct{}, max(1, runtime.GOMAXPROCS(0))), given: map[string]*lane{}, called: map[string]bool{}}

// wholeName is the name of a test without that of its part.
func wholeName(t *testing.T) string {
	name, _, _ := strings.Cut(t.Name(), "/")
	return name
}

// beside has a test run side by side with others. What opens a page calls it, so
// only a test that opens its first page in a part of its own needs to.
func beside(t *testing.T) {
	t.Helper()
	if calledFirst(t) {
		t.Parallel()
	}
}

// alone keeps a test from running beside others: it measures time, or sets what all
// of the process has.
func alone(t *testing.T) { calledFirst(t) }

// calledFirst tells whether the test has not said yet how it runs. A part of a test
// runs as the whole does.
func calledFirst(t *testing.T) bool {
	lanes.Lock()
	defer lanes.Unlock()
	name := wholeName(t)
	first := !lanes.called[name] && name == t.Name()
	lanes.called[name] = true
	return first
}

// laneOf is the lane a test runs in, all its parts too, until its end.
func laneOf(t *testing.T) *lane {
	t.Helper()
	beside(t)
	lanes.Lock()
	l := lanes.given[wholeName(t)]
	lanes.Unlock()
	if l != nil {
		return l
	}
	lanes.places <- struct{}{}
	lanes.Lock()
	if last := len(lanes.free) - 1; last >= 0 {
		l, lanes.free = lanes.free[last], lanes.free[:last]
	} else {
		l = &lane{}
	}
	lanes.given[wholeName(t)] = l
	lanes.Unlock()
	t.Cleanup(func() {
		lanes.Lock()
		delete(lanes.given, wholeName(t))
		lanes.free = append(lanes.free, l)
		lanes.Unlock()
		<-lanes.places
	})
	if l.browser == nil {
		browser, stop, err := chromium.Start(context.Background())
		require.NoError(t, err)
		l.browser, l.stop = browser, stop
	}
	return l
}

// closeLanes ends all browsers.
func closeLanes() {
	for _, l := range lanes.free {
		if l.browser != nil {
			l.closeRunning()
			l.stop()
		}
	}
}
