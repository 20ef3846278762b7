package hanging_test

import (
	"fmt"
	"math/bits"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

func panel(column, row int) mask.Panel { return mask.Panel{Column: column, Row: row} }

// stationOver is a station without arms, so that deck and reach are the same.
func stationOver(x, y, length, width measure.Length) hanging.Station {
	r := hanging.Rect{X: x, Y: y, Length: length, Width: width}
	return hanging.Station{Deck: r, Reach: r}
}

// world is a job as the slow ways below see it: sets of blocks as bits, worked
// out anew from the job and from nothing of the package under test but its
// types.
type world struct {
	blocks  []hanging.Block
	rect    []hanging.Rect
	near    []uint64
	from    [][]int // the stations of each block
	waiting uint64
}

func worldOf(job hanging.Job) world {
	var w world
	taken := map[mask.Panel]bool{}
	add := func(b hanging.Block) {
		for c := range b.Columns {
			for r := range b.Rows {
				taken[panel(b.Column+c, b.Row+r)] = true
			}
		}
		w.blocks = append(w.blocks, b)
	}
	for _, b := range job.Blocks {
		add(b)
	}
	for r := range job.Rows.Sizes {
		for c := range job.Columns.Sizes {
			if p := panel(c+1, r+1); !taken[p] {
				add(hanging.BlockFromPanel(p))
			}
		}
	}
	slices.SortFunc(w.blocks, func(a, b hanging.Block) int { return (a.Row-b.Row)*1000 + a.Column - b.Column })
	for i, b := range w.blocks {
		x, y := job.Columns.Starts[b.Column-1], job.Rows.Starts[b.Row-1]
		endC, endR := b.Column+b.Columns-2, b.Row+b.Rows-2
		w.rect = append(w.rect, hanging.Rect{X: x, Y: y,
			Length: job.Columns.Starts[endC] + job.Columns.Sizes[endC] - x, Width: job.Rows.Starts[endR] + job.Rows.Sizes[endR] - y})
		var near uint64
		for j, o := range w.blocks {
			beside := (b.Column+b.Columns == o.Column || o.Column+o.Columns == b.Column) && b.Row < o.Row+o.Rows && o.Row < b.Row+b.Rows
			above := (b.Row+b.Rows == o.Row || o.Row+o.Rows == b.Row) && b.Column < o.Column+o.Columns && o.Column < b.Column+b.Columns
			if beside || above {
				near |= 1 << j
			}
		}
		w.near = append(w.near, near)
		for _, p := range job.Waiting {
			if b.Holds(p) {
				w.waiting |= 1 << i
			}
		}
		w.from = append(w.from, stationsOf(w.rect[i], job.Stations))
	}
	return w
}

func stationsOf(r hanging.Rect, stations []hanging.Station) (whole []int) {
	var middle []int
	for k, s := range stations {
		e := s.Reach
		if r.X >= e.X && r.X+r.Length <= e.X+e.Length && r.Y >= e.Y && r.Y+r.Width <= e.Y+e.Width {
			whole = append(whole, k)
		}
		x, y := 2*r.X+r.Length, 2*r.Y+r.Width
		if x >= 2*e.X && x <= 2*(e.X+e.Length) && y >= 2*e.Y && y <= 2*(e.Y+e.Width) {
			middle = append(middle, k)
		}
	}
	if len(whole) > 0 {
		return whole
	}
	return middle
}

func wayBetween(a, b hanging.Station) measure.Length {
	return ((2*a.Deck.X + a.Deck.Length - 2*b.Deck.X - b.Deck.Length).Abs() +
		(2*a.Deck.Y + a.Deck.Width - 2*b.Deck.Y - b.Deck.Width).Abs()).Half()
}

type price struct {
	moves int
	way   measure.Length
}

func (p price) less(q price) bool { return p.moves < q.moves || p.moves == q.moves && p.way < q.way }

// cheapest is the fewest moves, then the shortest way, of all valid orders:
// every set of blocks that can be up, with every station the platform can stand
// at, one block at a time. It does not hang all before it moves.
func (w world) cheapest(stations []hanging.Station, up uint64, at int, start int, goal uint64) price {
	none := price{1 << 30, 0}
	best := make([][]price, 1<<len(w.blocks))
	put := func(set uint64, k int, p price) {
		if best[set] == nil {
			best[set] = slices.Repeat([]price{none}, len(stations))
		}
		if p.less(best[set][k]) {
			best[set][k] = p
		}
	}
	if up == 0 {
		for _, k := range w.from[start] {
			put(1<<start, k, price{})
		}
	} else {
		put(up, at, price{})
	}
	for set := range best {
		if best[set] == nil {
			continue
		}
		for k := range stations { // one move at most: ways keep the triangle rule
			for j := range stations {
				if p := best[set][j]; j != k && p != none {
					put(uint64(set), k, price{p.moves + 1, p.way + wayBetween(stations[j], stations[k])})
				}
			}
		}
		if uint64(set)&goal == goal {
			return slices.MinFunc(best[set], func(p, q price) int {
				if p.less(q) {
					return -1
				}
				return 1
			})
		}
		for b := range w.blocks {
			if uint64(set)>>b&1 == 1 || goal>>b&1 == 0 || w.near[b]&uint64(set) == 0 {
				continue
			}
			for _, k := range w.from[b] {
				if p := best[set][k]; p != none {
					put(uint64(set)|1<<b, k, p)
				}
			}
		}
	}
	return none
}

// reachable is what is connected to some blocks without those left out.
func (w world) reachable(from, without uint64) uint64 {
	for {
		grown := from
		for b := range w.blocks {
			if without>>b&1 == 0 && w.near[b]&from != 0 {
				grown |= 1 << b
			}
		}
		if grown == from {
			return from
		}
		from = grown
	}
}

func bitsOf(w world, hangs []hanging.Hang) (set uint64) {
	for _, h := range hangs {
		set |= 1 << slices.Index(w.blocks, h.Block)
	}
	return set
}

// checkSequence holds a sequence against what it promises.
func checkSequence(t *testing.T, job hanging.Job, s hanging.Sequence) {
	t.Helper()
	w := worldOf(job)
	require.Len(t, s.Hangs, len(w.blocks))
	index := map[mask.Panel]int{}
	for i, b := range w.blocks {
		index[b.Panel()] = i
	}
	var up uint64
	moves, way, waited := 0, measure.Length(0), false
	for i, h := range s.Hangs {
		b, ok := index[h.Panel]
		require.True(t, ok && w.blocks[b] == h.Block && up>>b&1 == 0 && h.N == i+1, "step %d hangs %v again or out of place", i+1, h)
		checkEdges(t, job, w, b, up, h)
		if i > 0 && !h.Up {
			require.NotZero(t, w.near[b]&up, "step %d: %v touches nothing that is up", i+1, h.Panel)
		}
		if len(job.Stations) == 0 {
			require.Zero(t, h.Station)
		} else {
			require.Contains(t, w.from[b], h.Station-1, "step %d: %v is not hung from there", i+1, h.Panel)
		}
		if i > 0 && !h.Up && h.Waits == "" && h.Panel != job.Again {
			w.checkNearest(t, job, up, b, h.Station-1)
		}
		if i > 0 && !h.Up && h.Station != s.Hangs[i-1].Station {
			moves++
			way += wayBetween(job.Stations[s.Hangs[i-1].Station-1], job.Stations[h.Station-1])
			from := s.Hangs[i-1].Station - 1
			for j := range w.blocks { // nothing is left behind that could be hung before the move
				if h.Panel == job.Again {
					break // which goes up first wherever it is
				}
				mayGo := w.waiting>>j&1 == 0 || waited
				if up>>j&1 == 0 && mayGo && w.near[j]&up != 0 && !slices.Contains(job.Last, w.blocks[j].Panel()) {
					require.NotContains(t, w.from[j], from, "step %d moves although %v can be hung", i+1, w.blocks[j].Panel())
				}
			}
		}
		if !h.Up && w.waiting>>b&1 == 1 {
			waited = true
		}
		require.Equal(t, h.Waits == hanging.WaitsForDelivery, !h.Up && w.waiting>>b&1 == 1, "%v", h)
		if h.Waits == "" && !h.Up {
			require.False(t, waited, "step %d comes after what waits", i+1)
		}
		up |= 1 << b
	}
	require.Equal(t, s.Moves, moves)
	require.Equal(t, s.Way, way)
}

// checkNearest holds that of all that could be hung from the same station
// without waiting this is the nearest, then touches most, then comes first.
func (w world) checkNearest(t *testing.T, job hanging.Job, up uint64, b, station int) {
	t.Helper()
	x, y := job.Columns.Box, job.Rows.Box // the middle, doubled
	at := slices.IndexFunc(w.blocks, func(b hanging.Block) bool { return b.Holds(job.Start) })
	isUp := slices.ContainsFunc(job.Up, func(p mask.Panel) bool { return at >= 0 && w.blocks[at].Holds(p) })
	if at >= 0 && (isUp || w.waiting>>at&1 == 0) {
		r := w.rect[at]
		x, y = 2*r.X+r.Length, 2*r.Y+r.Width
	}
	rank := func(j int) [3]int64 { // exact: the sizes are whole quarters of an inch, so these fit
		r := w.rect[j]
		dx, dy := int64((2*r.X+r.Length-x)/(inch/4)), int64((2*r.Y+r.Width-y)/(inch/4))
		return [3]int64{dx*dx + dy*dy, -int64(bits.OnesCount64(w.near[j] & up)), int64(j)}
	}
	mine := rank(b)
	for j := range w.blocks {
		if up>>j&1 == 1 || w.waiting>>j&1 == 1 || w.near[j]&up == 0 || station >= 0 && !slices.Contains(w.from[j], station) {
			continue
		}
		other := rank(j)
		require.LessOrEqual(t, slices.Compare(mine[:], other[:]), 0, "%v is nearer than %v", w.blocks[j], w.blocks[b])
	}
}

func checkEdges(t *testing.T, job hanging.Job, w world, b int, up uint64, h hanging.Hang) {
	t.Helper()
	block, along, across := h.Block, 0, 0
	against := map[mask.Panel]bool{}
	for _, e := range h.Edges {
		if e.Side == survey.DA || e.Side == survey.BC {
			along++
		} else {
			across++
		}
		outermost := map[survey.Wall]bool{survey.DA: block.Column == 1, survey.BC: block.Column+block.Columns-1 == len(job.Columns.Sizes),
			survey.AB: block.Row == 1, survey.CD: block.Row+block.Rows-1 == len(job.Rows.Sizes)}[e.Side]
		require.Equal(t, outermost, e.To == hanging.ToTapeLine, "%v: %v", h.Panel, e)
		if e.To == hanging.ToPanel {
			against[e.Panel] = true
		}
	}
	require.True(t, along > 0 && across > 0, "%v is set only to %v", h.Panel, h.Edges)
	for j, o := range w.blocks {
		require.Equal(t, w.near[b]>>j&1 == 1 && up>>j&1 == 1, against[o.Panel()], "%v against %v", h.Panel, o.Panel())
	}
}

// randomJob is a grid with pieces and holes, and stations that cover it.
func randomJob(random *rand.Rand, mostColumns, mostRows, mostStations int) hanging.Job {
	sizes := func(n int) []measure.Length {
		list := make([]measure.Length, n)
		for i := range list {
			list[i] = measure.Length(3+random.Intn(3)) * foot / 3
		}
		return list
	}
	run := func(list []measure.Length) mask.Run {
		total := measure.Length(0)
		for _, l := range list {
			total += l
		}
		return mask.RunFromSizes(list, 0, total)
	}
	job := hanging.Job{Columns: run(sizes(1 + random.Intn(mostColumns))), Rows: run(sizes(1 + random.Intn(mostRows)))}
	columns, rows := len(job.Columns.Sizes), len(job.Rows.Sizes)
	for range random.Intn(3) {
		b := hanging.Block{Column: 1 + random.Intn(columns), Row: 1 + random.Intn(rows), Columns: 1 + random.Intn(2), Rows: 1 + random.Intn(2)}
		apart := b.Column+b.Columns-1 <= columns && b.Row+b.Rows-1 <= rows
		for _, o := range job.Blocks {
			if b.Column < o.Column+o.Columns && o.Column < b.Column+b.Columns && b.Row < o.Row+o.Rows && o.Row < b.Row+b.Rows {
				apart = false
			}
		}
		if apart {
			job.Blocks = append(job.Blocks, b)
		}
	}
	for range random.Intn(3) {
		job.Waiting = append(job.Waiting, panel(1+random.Intn(columns), 1+random.Intn(rows)))
	}
	if random.Intn(2) == 0 {
		job.Start = panel(1+random.Intn(columns), 1+random.Intn(rows))
	}
	along := 1 + random.Intn(min(3, mostStations))
	across := 1 + random.Intn(max(1, mostStations/along))
	length, width := job.Columns.Box/measure.Length(along), job.Rows.Box/measure.Length(across)
	over := measure.Length(random.Intn(3)) * foot / 2
	for r := range across {
		for c := range along {
			job.Stations = append(job.Stations, stationOver(measure.Length(c)*length-over, measure.Length(r)*width-over, length+2*over+1, width+2*over+1))
		}
	}
	return job
}

// The order is the best there is, by moves and then by way, held against every
// valid order of small grids: up to 4 × 4 with up to six stations, pieces,
// holes, chosen starts.
func TestOrder_IsTheBestThereIs(t *testing.T) {
	random := rand.New(rand.NewSource(11))
	moved := 0
	for i := range 160 {
		size := 3
		if i%8 == 0 {
			size = 4
		}
		job := randomJob(random, size, size, 6)
		w := worldOf(job)
		s := hanging.Order(job)
		checkSequence(t, job, s)
		once := s.Hangs[0].Waits != "" || !movesForWhatWaits(s)
		require.True(t, s.Fewest == once && s.Shortest == once)
		if slices.Contains(w.blocks, s.Hangs[0].Block) && s.Hangs[0].Waits == hanging.WaitsForDelivery {
			continue // nothing can be hung at first
		}
		start := slices.Index(w.blocks, s.Hangs[0].Block)
		goal := w.reachable(1<<start, w.waiting)
		want := w.cheapest(job.Stations, 0, 0, start, goal)
		got := price{}
		for j := 1; j < len(s.Hangs) && s.Hangs[j].Waits == ""; j++ {
			if a, b := s.Hangs[j-1].Station, s.Hangs[j].Station; a != b {
				got.moves++
				got.way += wayBetween(job.Stations[a-1], job.Stations[b-1])
			}
		}
		require.Equal(t, want, got, "case %d: %d × %d, %d stations, %v", i, len(job.Columns.Sizes), len(job.Rows.Sizes), len(job.Stations), s.Hangs)
		moved += got.moves
	}
	assert.Greater(t, moved, 120, "the cases must give the platform something to do")
}

func movesForWhatWaits(s hanging.Sequence) bool {
	for i, h := range s.Hangs {
		if i > 0 && h.Waits != "" && s.Hangs[i-1].Station != h.Station {
			return true
		}
	}
	return false
}

// What is up stays, and the rest is the best that can follow.
func TestOrder_GoesOnFromWhatIsUp(t *testing.T) {
	random := rand.New(rand.NewSource(12))
	for range 150 {
		job := randomJob(random, 3, 3, 6)
		job.Waiting = nil
		fresh := hanging.Order(job)
		count := 1 + random.Intn(len(fresh.Hangs))

		for _, h := range fresh.Hangs[:count] {
			job.Up = append(job.Up, h.Panel)
		}
		again := hanging.Order(job)
		checkSequence(t, job, again)
		for i := range fresh.Hangs {
			fresh.Hangs[i].Up = i < count
		}
		require.Equal(t, fresh.Hangs, again.Hangs, "ticking off what was said must change nothing")

		random.Shuffle(len(job.Up), func(i, j int) { job.Up[i], job.Up[j] = job.Up[j], job.Up[i] })
		other := hanging.Order(job)
		checkSequence(t, job, other)
		for i, p := range job.Up {
			require.True(t, other.Hangs[i].Up && other.Hangs[i].Panel == p)
		}
		if w := worldOf(job); count < len(fresh.Hangs) {
			at := other.Hangs[count-1].Station - 1
			want := w.cheapest(job.Stations, bitsOf(w, other.Hangs[:count]), at, 0, 1<<len(w.blocks)-1)
			require.Equal(t, want, price{other.Moves, other.Way})
		}
	}
}

// At each station the nearest comes first, by hand: two stations side by side.
func TestOrder_StationsByHand(t *testing.T) {
	columns, rows := equalRuns(4, 2, foot, foot)
	job := hanging.Job{Columns: columns, Rows: rows, Stations: []hanging.Station{
		stationOver(0, 0, 2*foot, 2*foot), stationOver(2*foot, 0, 2*foot, 2*foot),
	}}
	s := hanging.Order(job)
	assert.Equal(t, "A2 B2 A1 B1 A3 B3 A4 B4", labels(s.Hangs), "all of the left half, then all of the right")
	assert.Equal(t, []int{1, 1, 1, 1, 2, 2, 2, 2}, stationsIn(s))
	assert.Equal(t, 1, s.Moves)
	assert.Equal(t, 2*foot, s.Way)
	assert.Equal(t, "A2 A3 B2 B3 A1 B1 A4 B4", labels(order(columns, rows)), "without a platform it goes to and fro")

	// A third station in the middle reaches the first four: it is no use, since
	// the outer two must be gone to all the same.
	job.Stations = append(job.Stations, stationOver(foot, 0, 2*foot, 2*foot))
	assert.Equal(t, 1, hanging.Order(job).Moves)

	// One that reaches all makes the others unnecessary.
	job.Stations = append(job.Stations, stationOver(0, 0, 4*foot, 2*foot))
	s = hanging.Order(job)
	assert.Equal(t, 0, s.Moves)
	assert.Equal(t, "A2 A3 B2 B3 A1 B1 A4 B4", labels(s.Hangs))

	// A long hall: from the middle to the nearer end first, then back.
	columns, rows = equalRuns(6, 1, foot, foot)
	job = hanging.Job{Columns: columns, Rows: rows}
	for i := range measure.Length(6) {
		job.Stations = append(job.Stations, stationOver(i*foot, 0, foot, foot))
	}
	s = hanging.Order(job)
	assert.Equal(t, "A3 A2 A1 A4 A5 A6", labels(s.Hangs))
	assert.Equal(t, 7*foot, s.Way, "2 and back 3 and on 2; to and fro would be 15")
}

func stationsIn(s hanging.Sequence) (list []int) {
	for _, h := range s.Hangs {
		list = append(list, h.Station)
	}
	return list
}

// The tour of more stations than are searched through completely, against the
// shortest there is from the same place: seldom longer, and never by much.
func TestOrder_TourIsShort(t *testing.T) {
	for _, c := range []struct{ along, across int }{{4, 2}, {3, 3}, {5, 2}, {4, 3}, {3, 4}, {5, 3}} {
		for _, pitch := range []measure.Length{24 * inch, 32 * inch, 48 * inch} {
			columns, rows := equalRuns(2*c.along, 2*c.across, 2*foot, pitch/2)
			job := hanging.Job{Columns: columns, Rows: rows}
			for r := range measure.Length(c.across) {
				for k := range measure.Length(c.along) {
					job.Stations = append(job.Stations, stationOver(k*4*foot, r*pitch, 4*foot, pitch))
				}
			}
			s := hanging.Order(job)
			require.Equal(t, len(job.Stations)-1, s.Moves)
			assert.True(t, s.Fewest)
			shortest := shortestFrom(job.Stations, s.Hangs[0].Station-1)
			assert.LessOrEqual(t, s.Way, shortest*11/10, "%d × %d, %v: shortest %v", c.along, c.across, pitch, shortest)
			assert.Equal(t, len(job.Stations) <= 11, s.Shortest, "up to ten after the first")
			if s.Shortest {
				assert.Equal(t, shortestFromAny(job.Stations, columns, rows), s.Way)
			}
		}
	}
}

// shortestFromAny is the shortest from any station that reaches the first panel.
func shortestFromAny(stations []hanging.Station, columns, rows mask.Run) measure.Length {
	w := worldOf(hanging.Job{Columns: columns, Rows: rows, Stations: stations})
	first := slices.Index(w.blocks, order(columns, rows)[0].Block)
	best := measure.Length(1 << 60)
	for _, k := range w.from[first] {
		best = min(best, shortestFrom(stations, k))
	}
	return best
}

// Pieces, holes, starts and what comes last, by hand.
func TestOrder_JobsByHand(t *testing.T) {
	columns, rows := equalRuns(3, 3, foot, foot)
	job := hanging.Job{Columns: columns, Rows: rows}
	for _, c := range []struct {
		name   string
		change func(*hanging.Job)
		want   string
	}{
		{"a start in the corner: out from there", func(j *hanging.Job) { j.Start = panel(1, 1) }, "A1 A2 B1 B2 A3 C1 B3 C2 C3"},
		{"a start that is not there is the middle", func(j *hanging.Job) { j.Start = panel(9, 9) }, "B2 A2 B1 B3 C2 A1 A3 C1 C3"},
		{"a hole is left to the last", func(j *hanging.Job) { j.Waiting = []mask.Panel{panel(2, 1)} }, "B2 B1 B3 C2 C1 C3 A1 A3 A2"},
		{"the middle is missing: the nearest is first", func(j *hanging.Job) { j.Waiting = []mask.Panel{panel(2, 2)} }, "A2 A1 B1 A3 B3 C1 C2 C3 B2"},
		{"a missing column: what is behind it waits", func(j *hanging.Job) {
			j.Waiting = []mask.Panel{panel(1, 1), panel(1, 2), panel(2, 3), panel(3, 3)}
		}, "B2 A2 B3 A3 B1 C2 A1 C1 C3"},
		{"what lies on the key comes last", func(j *hanging.Job) { j.Last = []mask.Panel{panel(2, 2), panel(2, 1)} }, "B1 A1 C1 C2 C3 B3 A3 B2 A2"},
		{"a piece over the middle", func(j *hanging.Job) { j.Blocks = []hanging.Block{{Column: 2, Row: 1, Columns: 1, Rows: 2}} }, "A2 B1 B3 C2 A1 A3 C1 C3"},
		{"a piece that overlaps one before it is hung panel by panel", func(j *hanging.Job) {
			j.Blocks = []hanging.Block{{Column: 2, Row: 1, Columns: 1, Rows: 2}, {Column: 1, Row: 1, Columns: 2, Rows: 1}, {Column: 3, Row: 3, Columns: 2, Rows: 1}}
		}, "A2 B1 B3 C2 A1 A3 C1 C3"},
		{"up in another order than said", func(j *hanging.Job) { j.Up = []mask.Panel{panel(3, 3), panel(3, 2), panel(3, 2)} }, "C3 B3 B2 C2 A2 B1 A1 A3 C1"},
		{"a missing panel that is up is no hole", func(j *hanging.Job) {
			j.Up, j.Waiting = []mask.Panel{panel(2, 2)}, []mask.Panel{panel(2, 2)}
		}, "B2 A2 B1 B3 C2 A1 A3 C1 C3"},
		{"what came down goes up first", func(j *hanging.Job) { j.Up, j.Again = []mask.Panel{panel(2, 2)}, panel(2, 3) }, "B2 C2 A2 B1 B3 A1 A3 C1 C3"},
		{"what came down but touches nothing waits its turn", func(j *hanging.Job) { j.Up, j.Again = []mask.Panel{panel(2, 2)}, panel(3, 3) }, "B2 A2 B1 B3 C2 A1 A3 C1 C3"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := job
			c.change(&j)
			assert.Equal(t, c.want, labels(hanging.Order(j).Hangs))
		})
	}

	job.Waiting = []mask.Panel{panel(1, 1), panel(1, 2), panel(2, 3), panel(3, 3)}
	waits := map[string]hanging.Wait{}
	for _, h := range hanging.Order(job).Hangs {
		waits[h.Panel.Label()] = h.Waits
	}
	assert.Equal(t, map[string]hanging.Wait{"B2": "", "A2": "", "B3": "", "A3": "", "B1": hanging.WaitsForDelivery,
		"C2": hanging.WaitsForDelivery, "A1": hanging.WaitsForDelivery, "C1": hanging.WaitsBehind, "C3": hanging.WaitsForDelivery}, waits)
}

// A piece is set to every neighbour that is up, and to the lines at its own
// sides.
func TestOrder_EdgesOfPieces(t *testing.T) {
	columns, rows := equalRuns(4, 3, foot, foot)
	job := hanging.Job{Columns: columns, Rows: rows, Blocks: []hanging.Block{{Column: 1, Row: 2, Columns: 2, Rows: 1}, {Column: 1, Row: 1, Columns: 3, Rows: 1}}}
	hangs := hanging.Order(job).Hangs
	at := slices.IndexFunc(hangs, func(h hanging.Hang) bool { return h.Panel == panel(1, 1) })
	assert.Equal(t, "B3 B1 A1", labels(hangs[:3]))
	assert.Equal(t, []hanging.Edge{
		{Side: survey.DA, To: hanging.ToTapeLine},
		{Side: survey.AB, To: hanging.ToTapeLine},
		{Side: survey.CD, To: hanging.ToPanel, Panel: panel(1, 2)}, {Side: survey.CD, To: hanging.ToPanel, Panel: panel(3, 2)},
	}, hangs[at].Edges)
	assert.Equal(t, []hanging.Edge{
		{Side: survey.DA, To: hanging.ToTapeLine}, {Side: survey.BC, To: hanging.ToPanel, Panel: panel(3, 2)},
		{Side: survey.AB, To: hanging.ToSeamLine, Seam: "A│B"}, {Side: survey.CD, To: hanging.ToSeamLine, Seam: "B│C"},
	}, hangs[1].Edges, "a piece of two lies between its own seam lines")
	assert.Equal(t, hanging.Block{Column: 1, Row: 1, Columns: 3, Rows: 1}, hangs[at].Block)
}

// Whatever the sizes, pieces, holes, starts, stations and progress: an order is
// valid, and the same job gives the same order.
func TestOrder_IsValidForAnyJob(t *testing.T) {
	random := rand.New(rand.NewSource(13))
	for i := range 300 {
		job := randomJob(random, 7, 7, 16)
		if i%3 == 0 {
			job.Stations = nil
		}
		if i%2 == 0 {
			fresh := hanging.Order(job).Hangs
			for _, h := range fresh[:random.Intn(len(fresh))] {
				if random.Intn(4) > 0 {
					job.Up = append(job.Up, h.Panel)
				}
			}
		}
		if len(job.Up) > 0 && !validUp(job) {
			continue
		}
		s := hanging.Order(job)
		checkSequence(t, job, s)
		require.Equal(t, s, hanging.Order(job))
	}
}

// validUp tells whether what is up could have gone up in that order; an order
// goes on from any other too, but then it cannot touch everywhere.
func validUp(job hanging.Job) bool {
	w := worldOf(job)
	var up uint64
	for i, p := range job.Up {
		at := slices.IndexFunc(w.blocks, func(b hanging.Block) bool { return b.Holds(p) })
		if w.waiting>>at&1 == 1 || i > 0 && w.near[at]&up == 0 {
			return false
		}
		up |= 1 << at
	}
	return true
}

func TestOrder_TenThousandPanelsFromStations(t *testing.T) {
	columns, rows := equalRuns(100, 100, 10*inch, 9*inch)
	job := hanging.Job{Columns: columns, Rows: rows}
	for r := range measure.Length(10) {
		for c := range measure.Length(10) {
			job.Stations = append(job.Stations, stationOver(c*100*inch, r*90*inch, 100*inch, 90*inch))
		}
	}
	s := hanging.Order(job)
	require.Len(t, s.Hangs, 10_000)
	assert.Equal(t, 99, s.Moves, "every station has panels that no other reaches")
	assert.True(t, s.Fewest)
	assert.False(t, s.Shortest, "not proven of so many")
	// Fewer than the pitch of 90 in a move cannot be; the tour is not far from it.
	assert.GreaterOrEqual(t, s.Way, 99*90*inch)
	assert.LessOrEqual(t, s.Way, 99*90*inch*12/10)
	up := map[mask.Panel]bool{}
	for i, h := range s.Hangs {
		p := h.Panel
		touches := up[panel(p.Column-1, p.Row)] || up[panel(p.Column+1, p.Row)] || up[panel(p.Column, p.Row-1)] || up[panel(p.Column, p.Row+1)]
		require.True(t, i == 0 || touches, "step %d", i+1)
		up[p] = true
	}
}

func TestOrder_NothingToHang(t *testing.T) {
	columns, _ := equalRuns(3, 1, foot, foot)
	assert.Equal(t, hanging.Sequence{}, hanging.Order(hanging.Job{Columns: columns, Up: []mask.Panel{panel(1, 1)}}))
	_, ok := hanging.RestartAt(hanging.Job{}, panel(1, 1))
	assert.False(t, ok)
}

func BenchmarkOrder_Stations(b *testing.B) {
	for _, c := range []struct{ columns, rows, along, across int }{{6, 5, 2, 2}, {6, 5, 3, 2}, {6, 6, 3, 3}, {6, 5, 4, 3}, {100, 100, 10, 10}} {
		columns, rows := equalRuns(c.columns, c.rows, 10*inch, 9*inch)
		job := hanging.Job{Columns: columns, Rows: rows}
		l, w := columns.Box/measure.Length(c.along), rows.Box/measure.Length(c.across)
		for r := range c.across {
			for k := range c.along {
				job.Stations = append(job.Stations, stationOver(measure.Length(k)*l, measure.Length(r)*w, l, w))
			}
		}
		b.Run(fmt.Sprintf("%d panels %d stations", c.columns*c.rows, c.along*c.across), func(b *testing.B) {
			for b.Loop() {
				hanging.Order(job)
			}
		})
	}
}
