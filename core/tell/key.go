package tell

import (
	"strconv"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/words"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/register"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// keys chooses the key of each layer that has one after it. The next layer
// begins with a panel that is set against the key, and what lies on the key
// goes up last.
func (b *builder) keys() {
	for i := range b.Layers {
		l := b.Hung(i)
		if i+1 == len(b.Layers) {
			if l.Plan.Key != "" {
				b.Report(l.Plan.At+"/key", []problem.Problem{{Severity: problem.Note,
					What: words.Say("No layer comes after this one, so no panel needs to stay up."), Do: words.Say("Leave the blank empty.")}})
			}
			continue
		}
		next := b.Hung(i + 1)
		if l.Panels.IsEmpty() || next.Panels.IsEmpty() || len(l.Columns.Starts) == 0 || len(next.Columns.Starts) == 0 {
			continue
		}
		if l.Key = b.keyOf(l, next); l.Key.IsKept() {
			next.Last = l.Key.Lies
			next.Begin = nearestOf(l.Key.Touches, next.Layer)
		}
	}
}

// keyOf is the user's choice, else the tool's.
func (b *builder) keyOf(l, next job.HungLayer) job.Key {
	this, then := l.Grid(), next.Grid()
	not := b.notKept(l.Layer)
	best, ok := register.ChooseKey(this, then, func(p mask.Panel) bool { return not[p] != "" || !b.isInReach(l.Layer, p) })
	far := false
	if !ok {
		// Whole and out of reach is better than in reach and cut.
		best, ok = register.ChooseKey(this, then, func(p mask.Panel) bool { return not[p] != "" })
		far = ok
	}
	if !ok {
		best, _ = register.ChooseKey(this, then, nil)
	}
	if l.Plan.Key != "" {
		p, found := l.Panels.PanelByLabel(l.Plan.Key)
		if found {
			own, _ := register.KeyAt(this, then, p)
			why := not[p]
			if why == "" && !b.isInReach(l.Layer, p) {
				why = outOfReach
			}
			return job.Key{Key: own, Chosen: "user", Reason: whyUser(own, best, why, next.Layer)}
		}
		b.Report(l.Plan.At+"/key", []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("No panel of this layer is called “" + l.Plan.Key + "”."),
			Do:   words.Raw("Its panels run from A1 to " + l.Panels.LastPanel().Label() + "; until then the key is chosen for you.")}})
	}
	if len(best.Lies) == next.Panels.Count() {
		return job.Key{Reason: "Every panel of the next layer would lie on whichever stays up, so none can. Set the next layer to the lines and check it by marks."}
	}
	why := whyTool(best, b.others(len(not) > 0, far), !ok)
	if far {
		why += " No whole panel is in reach from one platform position: move the platform to set the next layer against all its edges."
	}
	return job.Key{Key: best, Chosen: "tool", Reason: why}
}

const outOfReach = "Not all of it is in reach from one platform position."

// isInReach tells whether the whole piece a panel belongs to is in reach from
// one station, so that the next layer can be set against it without a move.
// Without a platform everything is.
func (b *builder) isInReach(l *job.Layer, p mask.Panel) bool {
	if len(b.Platform.Layout.Stations) == 0 {
		return true
	}
	first, last := p, p
	for _, piece := range l.Panels.Pieces {
		if piece.Contains(p) {
			first, last = piece.First(), piece.Last()
			break
		}
	}
	near, far := setout.PanelIn(l.Columns, l.Rows, first), setout.PanelIn(l.Columns, l.Rows, last)
	right, low := far.X+far.Length, far.Y+far.Width
	for i := range b.Platform.Layout.Stations {
		reach := &b.Platform.Layout.Stations[i].Reach
		if near.X >= reach.X && near.Y >= reach.Y && right <= reach.X+reach.Length && low <= reach.Y+reach.Width {
			return true
		}
	}
	return false
}

// notKept is why panels cannot be kept up, for those that cannot.
func (b *builder) notKept(l *job.Layer) map[mask.Panel]string {
	not := map[mask.Panel]string{}
	for _, note := range l.Plan.Panels {
		if note.State != plan.Missing && note.State != plan.Damaged {
			continue
		}
		if p, ok := l.Panels.PanelByLabel(note.Panel); ok {
			not[p] = "It is " + string(note.State) + "."
		}
	}
	for _, loose := range l.Panels.Loose {
		hole := setout.Hole{Round: loose.Round, Middle: survey.Point{X: loose.X, Y: loose.Y}, Length: loose.Length, Width: loose.Width}
		cutBy(not, hole, l, "It is cut for the loose piece “"+loose.Name+"”.")
	}
	if !b.Setting.Placed {
		return not
	}
	for i := range b.Room.Things {
		t, name := &b.Room.Things[i], b.Room.Things[i].Name
		if t.Light {
			name = "the light"
		}
		cutBy(not, t.Hole(b.Setting.Choice.Box), l, "It is cut for "+name+".")
	}
	return not
}

func cutBy(not map[mask.Panel]string, hole setout.Hole, l *job.Layer, why string) {
	for _, cut := range hole.Cuts(l.Columns, l.Rows) {
		not[cut.Panel] = why
	}
}

// others is what a key was chosen from: all panels, or those that can be kept.
func (b *builder) others(passed, far bool) string {
	others := "panel"
	if passed {
		others = "whole panel"
	}
	if len(b.Platform.Layout.Stations) > 0 && !far {
		others += " in reach from one platform position"
	}
	return others
}

// whyTool is the reason for the tool's choice.
func whyTool(k register.Key, others string, noOther bool) string {
	if noOther {
		others = "panel"
	}
	text := liesOn(k) + "; no other " + others + " has fewer, and of those it is nearest the middle."
	if noOther {
		text += " Every panel of the layer is cut or missing: check that its edges are straight."
	}
	return text
}

// whyUser is what the user's choice costs.
func whyUser(own, best register.Key, not string, next *job.Layer) string {
	text := "Your choice. " + liesOn(own)
	if len(own.Lies) == len(best.Lies) {
		text += ", as few as on any other"
	}
	text += "."
	switch {
	case len(own.Lies) == next.Panels.Count():
		text += " That is every one: it must come down before any goes up."
	case len(own.Lies) > len(best.Lies):
		text += " On " + best.Piece.Name + " there would be " + strconv.Itoa(len(best.Lies)) + "."
	}
	if not != "" {
		text += " " + not
	}
	return text
}

// liesOn says how many panels of the next layer lie on a key.
func liesOn(k register.Key) string {
	switch len(k.Lies) {
	case 0:
		return "No panel of the next layer lies on it"
	case 1:
		return "Only " + k.Lies[0].Label() + " of the next layer lies on it"
	}
	return strconv.Itoa(len(k.Lies)) + " panels of the next layer lie on it"
}

// nearestOf is the panel with its middle nearest the middle of the box, the
// first of equals; the zero value of none.
func nearestOf(panels []mask.Panel, l *job.Layer) mask.Panel {
	var best mask.Panel
	least := int64(0)
	for _, p := range panels {
		x := int64(2*l.Columns.Starts[p.Column-1]+l.Columns.Sizes[p.Column-1]-l.Columns.Box) / 1000
		y := int64(2*l.Rows.Starts[p.Row-1]+l.Rows.Sizes[p.Row-1]-l.Rows.Box) / 1000
		if away := x*x + y*y; best.Row == 0 || away < least {
			best, least = p, away
		}
	}
	return best
}

// setKeys puts the keys on the sheet, once the hanging order is known, and what
// is set against them into the order of the next layer.
func (b *builder) setKeys() {
	for i := range b.Layers {
		l := b.Hung(i)
		out := &b.Sheet.Layers[i].Key
		out.Chosen, out.Reason = l.Key.Chosen, l.Key.Reason
		if !l.Key.IsKept() {
			continue
		}
		next := b.Hung(i + 1)
		out.Panel = l.Key.Name()
		out.Lies, out.Touches = labelsOf(l.Key.Lies), labelsOf(l.Key.Touches)
		first := firstOn(next, l.Key.Lies)
		out.Down, out.Masked = downWords(next, first), maskedWords(l.Key.Lies)
		if len(l.Key.Touches) == 0 {
			out.Reason += b.besideWords(l.Key.Sides)
		}
		b.setToKey(b.Sheet.Layers[i+1].Order, next, &l.Key, first)
	}
}

func labelsOf(panels []mask.Panel) []string {
	labels := make([]string, len(panels))
	for i, p := range panels {
		labels[i] = p.Label()
	}
	return labels
}

// firstOn is the first step of a layer's order that hangs any of the panels,
// counted from 0; all of its steps where none does.
func firstOn(l job.HungLayer, panels []mask.Panel) int {
	in := marked(l.Layer, panels)
	for i := range l.Order {
		if hangsAny(l.Layer, l.Order[i].Block, in) {
			return i
		}
	}
	return len(l.Order)
}

// marked tells of each panel of a layer, in reading order, whether it is among
// those given.
func marked(l *job.Layer, panels []mask.Panel) []bool {
	in := make([]bool, l.Panels.Count())
	for _, p := range panels {
		in[l.Panels.Index(p)] = true
	}
	return in
}

// hangsAny tells whether a block has any of the marked panels.
func hangsAny(l *job.Layer, block hanging.Block, in []bool) bool {
	for row := block.Row; row < block.Row+block.Rows; row++ {
		for column := block.Column; column < block.Column+block.Columns; column++ {
			if in[l.Panels.Index(mask.Panel{Column: column, Row: row})] {
				return true
			}
		}
	}
	return false
}

func downWords(next job.HungLayer, first int) string {
	switch {
	case first == len(next.Order):
		return "Leave it up until the next layer is hung; nothing lies on it."
	case first == 0:
		return "Before " + next.Order[0].Panel.Label() + " of the next layer, the first to go up."
	}
	return "When " + strconv.Itoa(first) + " of " + page.Plural(int64(len(next.Order)), "panel", "panels") + " of the next layer are up, before " + next.Order[first].Panel.Label() + "."
}

func maskedWords(lies []mask.Panel) string {
	if len(lies) == 0 {
		return ""
	}
	what := lies[0].Label() + " is"
	if len(lies) > 1 {
		what = "the " + strconv.Itoa(len(lies)) + " panels that lie on it are"
	}
	return "The ceiling under it is covered until then: coat the next layer when " + what + " up too."
}

// besideWords says where the next layer begins beside a key that none of its
// edges falls on.
func (b *builder) besideWords(sides []register.Side) string {
	for _, side := range sides {
		if side.Away > 0 {
			return " No edge of the next layer falls on its edges: " + b.towardsSide(side.Wall) + ", " + side.Panels[0].Label() +
				" begins " + b.fine(side.Away) + " from it."
		}
	}
	return " No edge of the next layer falls on its edges: set that layer to the lines."
}

// setToKey adds the key to what the panels beside it are set to, as far as they
// go up before it comes down. It takes the place of a line on the same side.
func (b *builder) setToKey(order []sheet.Hang, next job.HungLayer, k *job.Key, first int) {
	for _, side := range k.Sides {
		if !side.Touch {
			continue
		}
		edge, in := sheet.EdgeSet{Edge: b.towardsSide(opposite(side.Wall)), To: "to the key " + k.Name()}, marked(next.Layer, side.Panels)
		for i := range order[:first] {
			if !hangsAny(next.Layer, next.Order[i].Block, in) {
				continue
			}
			h, taken := &order[i], false
			for j := range h.Set {
				if h.Set[j].Edge == edge.Edge && next.Order[i].Edges[j].To != hanging.ToPanel {
					h.Set[j], taken = edge, true
				}
			}
			if !taken {
				h.Set = append(h.Set, edge)
			}
			h.Text = stepWords(&next.Order[i], h.Set)
		}
	}
}

func opposite(w survey.Wall) survey.Wall {
	switch w {
	case survey.AB:
		return survey.CD
	case survey.BC:
		return survey.DA
	case survey.CD:
		return survey.AB
	}
	return survey.BC
}
