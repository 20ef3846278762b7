package hanging

import (
	"slices"

	"ceilingwright/core/mask"
)

// Restart is what to do about a panel that is up crooked: Down comes down, in
// that order, the crooked one last; Rest is the order from there on, with what
// stays up in front and the crooked one next.
type Restart struct {
	Down []Block
	Rest Sequence
}

// RestartAt tells what must come down because a panel is up crooked. That is
// every panel that was set to it, and every panel that was set to one of those,
// in the reverse of the order they went up; a panel that was not set to any of
// them stays. False where the panel is not up.
func RestartAt(job Job, crooked mask.Panel) (Restart, bool) {
	g := newGround(job)
	up := Order(job).Hangs[:len(g.numbers(job.Up))]
	at := slices.IndexFunc(up, func(h Hang) bool { return h.Block.Holds(crooked) })
	if at < 0 {
		return Restart{}, false
	}
	var r Restart
	job.Again, job.Up = up[at].Panel, nil
	isDown := map[mask.Panel]bool{}
	for i, h := range up {
		if i == at || slices.ContainsFunc(h.Edges, func(e Edge) bool { return e.To == ToPanel && isDown[e.Panel] }) {
			isDown[h.Panel] = true
			r.Down = append(r.Down, h.Block)
		} else {
			job.Up = append(job.Up, h.Panel)
		}
	}
	slices.Reverse(r.Down)
	job.Waiting = slices.DeleteFunc(slices.Clone(job.Waiting), func(p mask.Panel) bool {
		b, ok := g.at(p)
		return ok && isDown[g.blocks[b].Panel()] // what was up is there
	})
	r.Rest = Order(job)
	return r, true
}

// Holds tells whether a panel is part of the block.
func (b Block) Holds(p mask.Panel) bool {
	return p.Column >= b.Column && p.Column < b.Column+b.Columns && p.Row >= b.Row && p.Row < b.Row+b.Rows
}
