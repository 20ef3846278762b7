package hanging

import (
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Order is the order in which a layer's panels are hung, worked out from the
// middle because that halves what can build up.
//
// The first is the panel that holds the middle of the box, or the one the user
// chose. Every later one shares an edge, not just a corner, with one that is
// up. All that can be hung from one place of the platform is hung before it
// moves, which never costs a move. The places follow each other so that the
// platform moves as seldom as possible, and of such orders the one with the
// shortest way is taken, because rolling to and fro under a ceiling to stay
// near its middle is work for nothing. At each place the panel with its middle
// nearest to where the hanging began comes first: the middle of the box, or of
// the panel the user chose; of equals the one that touches more that are up,
// then the lower row, then the lower column. Where no places are known, that is
// the whole rule.
//
// With up to six places and 64 blocks the order is the best there is; for more
// it follows a rule, and Fewest and Shortest tell where it is proven the best
// all the same. See route.
//
// What waits (see Job) is left out at first and hung in the same way when all
// else is up. Panels that are up stay in the order they went up; where they
// went up as this order had it, the rest of it stays as it was.
//
// It takes a time of n log n in the panels.
func Order(job Job) Sequence {
	g := newGround(job)
	if len(g.blocks) == 0 {
		return Sequence{}
	}
	up := g.numbers(job.Up)
	if job.Again == (mask.Panel{}) {
		if s, ok := asSaid(g, job, up); ok {
			return s
		}
	}
	if g.came(up) && job.Again == (mask.Panel{}) {
		if s, ok := asSaid(g, job, up); ok {
			return s
		}
	}
	w := newWork(g, job)
	w.recall(up)
	if again, ok := g.at(job.Again); ok && !w.up[again] && (len(up) == 0 || w.touching[again] > 0) {
		w.again(again)
	}
	return w.all().withUp(len(up)).count(job.Stations)
}

// asSaid is the order from the beginning, if what is up went up as it has it.
func asSaid(g *ground, job Job, up []int32) (Sequence, bool) {
	s := newWork(g, job).all()
	if !s.beginsWith(g, up) {
		return Sequence{}, false
	}
	return s.withUp(len(up)).count(job.Stations), true
}

// came takes what is up out of what waits, and tells whether any did.
func (g *ground) came(up []int32) (any bool) {
	for _, b := range up {
		any = any || g.rank[b] != now
		g.rank[b] = now
	}
	return any
}

// numbers are the blocks of panels, each once.
func (g *ground) numbers(panels []mask.Panel) []int32 {
	if len(panels) == 0 {
		return nil
	}
	seen := make([]bool, len(g.blocks))
	list := make([]int32, 0, len(panels))
	for _, p := range panels {
		if b, ok := g.at(p); ok && !seen[b] {
			seen[b] = true
			list = append(list, b)
		}
	}
	return list
}

func (s Sequence) beginsWith(g *ground, blocks []int32) bool {
	for i, b := range blocks {
		if s.Hangs[i].Block != g.blocks[b] {
			return false
		}
	}
	return true
}

// withUp marks the first hangs as up.
func (s Sequence) withUp(count int) Sequence {
	for i := range count {
		s.Hangs[i].Up = true
		s.Hangs[i].Waits = ""
	}
	return s
}

// work is an order in the making.
type work struct {
	*ground
	reach    reach
	stations []Station
	first    int32 // the block to begin with
	up       []bool
	touching []int32 // neighbours that are up
	turn     rank
	queues   []offers // what may be hung next from each station
	place    int32    // the station where the platform stands, or noBlock
	hangs    []Hang
	set      []Edge // one stretch of memory for the edges of all
	near     []neighbour
	proven   proof
	pushes   int
}

func newWork(g *ground, job Job) *work {
	count := len(g.blocks)
	w := &work{
		ground: g, stations: job.Stations, place: noBlock,
		up: make([]bool, count), touching: make([]int32, count),
		hangs: make([]Hang, 0, count), set: make([]Edge, 0, 3*count),
		proven: proof{fewest: true, shortest: true},
	}
	g.measureFrom(g.columns.Box, g.rows.Box)
	var chosen bool
	if w.first, chosen = g.start(job.Start); chosen {
		r := g.rect(g.blocks[w.first])
		g.measureFrom(2*r.X+r.Length, 2*r.Y+r.Width)
	}
	w.reach = g.reachOf(job.Stations)
	w.queues = make([]offers, max(1, len(job.Stations)))
	return w
}

// all hangs what is left, turn by turn.
func (w *work) all() Sequence {
	for turn := now; turn < ranks && len(w.hangs) < len(w.blocks); turn++ {
		if len(w.hangs) > 0 || w.rank[w.first] == turn {
			from := len(w.hangs)
			w.open(turn)
			w.route()
			w.doubt(from)
		}
	}
	return Sequence{Hangs: w.hangs, Fewest: w.proven.fewest, Shortest: w.proven.shortest}
}

// doubt takes the proof back where a later turn moves the platform: an earlier
// one that ended elsewhere might have saved that.
func (w *work) doubt(from int) {
	if w.turn == now || from == 0 {
		return
	}
	for i := from; i < len(w.hangs); i++ {
		if w.hangs[i].Station != w.hangs[i-1].Station {
			w.proven = proof{}
		}
	}
}

// open begins a turn: what may be hung in it and touches what is up is offered.
func (w *work) open(turn rank) {
	w.turn = turn
	for k := range w.queues {
		w.queues[k] = w.queues[k][:0]
	}
	for b := range w.blocks {
		if w.touching[b] > 0 && w.mayHang(int32(b)) {
			w.offer(int32(b))
		}
	}
}

func (w *work) mayHang(b int32) bool { return !w.up[b] && w.rank[b] <= w.turn }

func (w *work) offer(b int32) {
	for _, k := range w.reach.from(b) {
		w.queues[k].push(offer{w.distance[b], w.touching[b], b})
		w.pushes++
	}
}

// isLive tells whether anything can be hung from a station.
func (w *work) isLive(k int32) bool {
	for q := &w.queues[k]; len(*q) > 0; q.pop() {
		if !w.up[(*q)[0].block] {
			return true
		}
	}
	return false
}

// hangFrom hangs all that can be hung from a station.
func (w *work) hangFrom(k int32) {
	for w.isLive(k) {
		w.hang(w.queues[k].pop().block, k)
	}
	w.place = k
}

// hang puts one block up from a station and offers its neighbours.
func (w *work) hang(b, k int32) {
	w.near = w.neighbours(w.near, b)
	block := w.blocks[b]
	station := 0
	if len(w.stations) > 0 {
		station = int(k) + 1
	}
	w.hangs = append(w.hangs, Hang{
		N: len(w.hangs) + 1, Panel: block.Panel(), Block: block, Edges: w.edges(block),
		Station: station, Part: station > 0 && !w.reach.isWhole[b], Waits: w.waits(b),
	})
	w.up[b], w.place = true, k
	for _, n := range w.near {
		w.touching[n.block]++
		if w.mayHang(n.block) {
			w.offer(n.block)
		}
	}
}

func (w *work) waits(b int32) Wait {
	switch {
	case w.rank[b] != w.turn:
		return WaitsBehind
	case w.turn == last:
		return WaitsForKey
	case w.turn == later:
		return WaitsForDelivery
	}
	return ""
}

// recall puts up what is up already. Which station each was hung from is not
// known: it is taken that the platform moved as seldom as it could.
func (w *work) recall(blocks []int32) {
	for i, b := range blocks {
		if w.place == noBlock || !w.reach.reaches(w.place, b) {
			w.place = w.longest(blocks[i:])
		}
		w.hang(b, w.place)
	}
}

// longest is the station from which most of the blocks in front of a list can
// be hung.
func (w *work) longest(blocks []int32) int32 {
	best, bestRun := noBlock, 0
	for _, k := range w.reach.from(blocks[0]) {
		run := 0
		for run < len(blocks) && w.reach.reaches(k, blocks[run]) {
			run++
		}
		if run > bestRun {
			best, bestRun = k, run
		}
	}
	return best
}

// again hangs a block that came down, from the station with the shortest way.
func (w *work) again(b int32) {
	from := w.reach.from(b)
	k := from[0]
	for _, other := range from[1:] {
		if w.way(w.place, other) < w.way(w.place, k) {
			k = other
		}
	}
	w.turn = w.rank[b]
	w.hang(b, k)
	w.turn = now
}

// edges are what a block is set to as it goes up, first along, then across.
// w.near must hold its neighbours.
func (w *work) edges(b Block) []Edge {
	from := len(w.set)
	w.direction(survey.DA, survey.BC, b.Column, b.Columns, w.columns, mask.ColumnSeam)
	w.direction(survey.AB, survey.CD, b.Row, b.Rows, w.rows, mask.RowSeam)
	return w.set[from:len(w.set):len(w.set)]
}

// direction adds the edges of one direction: neighbours that are up and tape
// lines; failing both, the centre line, or else both seam lines.
func (w *work) direction(low, high survey.Wall, at, count int, run mask.Run, name func(int) string) {
	from := len(w.set)
	w.side(low, at == 1)
	w.side(high, at+count-1 == len(run.Sizes))
	if len(w.set) > from {
		return
	}
	before, after := at-1, at+count-1 // the seams on both sides, from 1
	switch {
	case onCentreLine(run, before-1):
		w.set = append(w.set, Edge{Side: low, To: ToCentreLine, Seam: name(before)})
	case onCentreLine(run, after-1):
		w.set = append(w.set, Edge{Side: high, To: ToCentreLine, Seam: name(after)})
	default:
		w.set = append(w.set, Edge{Side: low, To: ToSeamLine, Seam: name(before)}, Edge{Side: high, To: ToSeamLine, Seam: name(after)})
	}
}

func (w *work) side(side survey.Wall, outermost bool) {
	if outermost {
		w.set = append(w.set, Edge{Side: side, To: ToTapeLine})
		return
	}
	for _, n := range w.near {
		if n.side == side && w.up[n.block] {
			w.set = append(w.set, Edge{Side: side, To: ToPanel, Panel: w.blocks[n.block].Panel()})
		}
	}
}

// onCentreLine tells whether seam i lies on the middle of the box, to the few
// nanometres that halving leaves.
func onCentreLine(run mask.Run, i int) bool {
	return (2*run.Seam(i) - run.Box).Abs() <= 4*measure.Nanometre
}

// count works out moves and way of what is not up.
func (s Sequence) count(stations []Station) Sequence {
	s.Moves, s.Way = 0, 0
	for i := 1; i < len(s.Hangs); i++ {
		from, to := s.Hangs[i-1].Station, s.Hangs[i].Station
		if !s.Hangs[i].Up && from != to {
			s.Moves++
			s.Way += stations[from-1].wayTo(stations[to-1])
		}
	}
	return s
}
