package hanging_test

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
)

// Three by three, hung as said: B2 A2 B1 B3 C2 A1 A3 C1 C3. By hand from what
// each was set to.
func TestRestart_ByHand(t *testing.T) {
	columns, rows := equalRuns(3, 3, foot, foot)
	all := panels(order(columns, rows))
	for _, c := range []struct {
		name    string
		up      int
		crooked mask.Panel
		down    string
		rest    string
	}{
		{"the last one up: nothing hangs on it", 5, panel(2, 3), "C2", "B2 A2 B1 B3 C2 A1 A3 C1 C3"},
		{"one in the middle: its corners with it", 8, panel(1, 2), "C1 A1 B1", "B2 A2 B3 C2 A3 B1 A1 C1 C3"},
		{"an edge, before the corners are up", 5, panel(2, 1), "A2", "B2 B1 B3 C2 A2 A1 A3 C1 C3"},
		{"the first: all but nothing stays", 4, panel(2, 2), "B3 B1 A2 B2", "B2 A2 B1 B3 C2 A1 A3 C1 C3"},
		{"a corner of the finished layer", 9, panel(1, 1), "A1", "B2 A2 B1 B3 C2 A3 C1 C3 A1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := hanging.Job{Columns: columns, Rows: rows, Up: all[:c.up]}
			r, ok := hanging.RestartAt(job, c.crooked)
			require.True(t, ok)
			var down string
			for _, b := range r.Down {
				down += " " + b.Panel().Label()
			}
			assert.Equal(t, " "+c.down, down)
			assert.Equal(t, c.rest, labels(r.Rest.Hangs))
			for i, h := range r.Rest.Hangs {
				assert.Equal(t, i < c.up-len(r.Down), h.Up)
			}
		})
	}
	_, ok := hanging.RestartAt(hanging.Job{Columns: columns, Rows: rows, Up: all[:3]}, panel(3, 3))
	assert.False(t, ok, "a panel that is not up cannot be up crooked")
	_, ok = hanging.RestartAt(hanging.Job{Columns: columns, Rows: rows, Up: all[:3]}, panel(9, 3))
	assert.False(t, ok)
}

// What comes down was set, directly or along the chain, to the crooked one;
// what stays was not; the crooked one goes up next; and all goes up again.
func TestRestart_ForAnyJob(t *testing.T) {
	random := rand.New(rand.NewSource(31))
	for range 200 {
		job := randomJob(random, 5, 5, 6)
		fresh := hanging.Order(job).Hangs
		count := 1 + random.Intn(len(fresh))
		for _, h := range fresh[:count] {
			job.Up = append(job.Up, h.Panel)
		}
		crooked := fresh[random.Intn(count)].Panel
		r, ok := hanging.RestartAt(job, crooked)
		require.True(t, ok)
		require.True(t, r.Down[len(r.Down)-1].Holds(crooked), "the crooked one comes down last")

		hung := hanging.Order(job).Hangs[:count]
		// The slow way: a panel is bad if any path of "set to" leads to the crooked one.
		var isBad func(p mask.Panel) bool
		isBad = func(p mask.Panel) bool {
			if p == crooked {
				return true
			}
			at := slices.IndexFunc(hung, func(h hanging.Hang) bool { return h.Panel == p })
			return slices.ContainsFunc(hung[at].Edges, func(e hanging.Edge) bool { return e.To == hanging.ToPanel && isBad(e.Panel) })
		}
		var want []hanging.Block
		var stays []mask.Panel
		for _, h := range hung {
			if isBad(h.Panel) {
				want = append(want, h.Block)
			} else {
				stays = append(stays, h.Panel)
			}
		}
		slices.Reverse(want)
		require.Equal(t, want, r.Down)
		job.Up, job.Again = stays, crooked
		job.Waiting = slices.DeleteFunc(job.Waiting, func(p mask.Panel) bool {
			return slices.ContainsFunc(r.Down, func(b hanging.Block) bool { return b.Holds(p) })
		})
		if len(stays) > 0 && !validUp(job) {
			continue
		}
		checkSequence(t, job, r.Rest)
		if r.Rest.Hangs[len(stays)].Waits == "" {
			require.Equal(t, crooked, r.Rest.Hangs[len(stays)].Panel)
		}
	}
}
