package hung

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/mask"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/register"
	"ceilingwright/core/setout"
	"ceilingwright/core/words"
)

// Key is the panel of a layer that is kept up for the next, where one is Chosen.
// All tells that every panel of the next layer lies on it; where none is chosen,
// that they would on whichever is. Begin is the panel of the next layer to begin with
// for its sake.
//
// Of one the sheet chose, From says from which it did. Of one the user chose, Best is
// what the sheet would have chosen, and Flaw what speaks against it.
type Key struct {
	register.Key
	Chosen Chooser
	All    bool
	Begin  mask.Panel
	From   KeptFrom
	Best   register.Key
	Flaw   Flaw
}

// Chooser is who chose: "" nobody.
type Chooser string

// Who chooses a key.
const (
	ByTool Chooser = "tool"
	ByUser Chooser = "user"
)

// KeptFrom are the panels that a key was chosen from: all, or of those only the Whole
// ones, or those InReach from one place of the platform. OutOfReach tells that none
// that is whole is in reach, Unwhole that none is whole.
type KeptFrom struct{ Whole, InReach, OutOfReach, Unwhole bool }

// Flaw is why a panel had better not be kept up. Piece is the loose piece it is cut
// for, Thing the place of what comes through it among the things of the room.
type Flaw struct {
	Kind  FlawKind
	Piece string
	Thing int
}

// FlawKind is the kind of a flaw, "" none.
type FlawKind string

// The flaws of a panel.
const (
	IsMissing   FlawKind = "missing"
	IsDamaged   FlawKind = "damaged"
	CutForPiece FlawKind = "cut for a piece"
	CutForThing FlawKind = "cut for a thing"
	BeyondReach FlawKind = "out of reach"
)

// IsKept tells whether a panel is kept up.
func (k *Key) IsKept() bool { return k.Chosen != "" }

// Name is the key as it is spoken of: its label, or the name of the piece.
func (k *Key) Name() string { return k.Piece.Name }

// KeepKeys chooses the key of each layer that has one after it.
func KeepKeys(on On) ([]Key, []problem.Problem) {
	w := work{On: on, Keys: make([]Key, len(on.Layers))}
	for i := range w.Layers {
		l := &w.Layers[i]
		if i+1 == len(w.Layers) {
			if l.Plan.Key != "" {
				w.Remark(l.Plan.At+"/key", problem.Note, words.Say("No layer comes after this one, so no panel needs to stay up."), words.Say("Leave the blank empty."))
			}
			continue
		}
		next := &w.Layers[i+1]
		if len(l.Columns.Starts) == 0 || len(next.Columns.Starts) == 0 {
			continue
		}
		k := &w.Keys[i]
		*k = w.keyOf(l, next)
		k.All = len(k.Lies) == next.Panels.Count()
		if k.All && k.Chosen == ByTool {
			*k = Key{All: true}
		}
		if k.IsKept() {
			k.Begin = nearestOf(k.Touches, next)
		}
	}
	return w.Keys, w.List
}

// keyOf is the user's choice, else the tool's.
func (w *work) keyOf(l, next *layers.Layer) Key {
	this, then := l.Grid(), next.Grid()
	flaws := w.flaws(l)
	flawed := func(p mask.Panel) bool { return flaws[p].Kind != "" }
	from := KeptFrom{Whole: len(flaws) > 0, InReach: len(w.Platform.Layout.Stations) > 0}
	best, ok := register.ChooseKey(this, then, func(p mask.Panel) bool { return flawed(p) || !w.isInReach(l, p) })
	if !ok {
		// Whole and out of reach is better than in reach and cut.
		if best, ok = register.ChooseKey(this, then, flawed); ok {
			from.InReach, from.OutOfReach = false, true
		} else {
			best, _ = register.ChooseKey(this, then, nil)
			from = KeptFrom{Unwhole: true}
		}
	}
	if l.Plan.Key == "" {
		return Key{Key: best, Chosen: ByTool, From: from}
	}
	p, found := l.Panels.PanelByLabel(l.Plan.Key)
	if !found {
		w.Remark(l.Plan.At+"/key", problem.Caution, words.Say("No panel of this layer is called “{label}”.", words.Name("label", l.Plan.Key)),
			words.Say("Its panels run from A1 to {last}; until then the key is chosen for you.", words.Name("last", l.Panels.LastPanel().Label())))
		return Key{Key: best, Chosen: ByTool, From: from}
	}
	own, _ := register.KeyAt(this, then, p)
	flaw := flaws[p]
	if flaw.Kind == "" && !w.isInReach(l, p) {
		flaw.Kind = BeyondReach
	}
	return Key{Key: own, Chosen: ByUser, Best: best, Flaw: flaw}
}

// isInReach tells whether the whole piece a panel belongs to is in reach from one place.
func (w *work) isInReach(l *layers.Layer, p mask.Panel) bool {
	for _, piece := range l.Panels.Pieces {
		if piece.Contains(p) {
			return w.Platform.reaches(l.Rect(blockOf(piece)))
		}
	}
	return w.Platform.reaches(l.Rect(hanging.BlockFromPanel(p)))
}

// flaws are why panels cannot be kept up, for those that cannot.
func (w *work) flaws(l *layers.Layer) map[mask.Panel]Flaw {
	flaws := map[mask.Panel]Flaw{}
	for _, note := range l.Plan.Panels {
		if p, ok := l.Panels.PanelByLabel(note.Panel); ok && (note.State == plan.Missing || note.State == plan.Damaged) {
			flaws[p] = Flaw{Kind: FlawKind(note.State)}
		}
	}
	cut := func(cuts []setout.Cut, flaw Flaw) {
		for _, c := range cuts {
			flaws[c.Panel] = flaw
		}
	}
	for i := range l.LooseCuts {
		cut(l.LooseCuts[i], Flaw{Kind: CutForPiece, Piece: l.Panels.Loose[i].Name})
	}
	for i := range w.Room.Things {
		if w.Setting.Placed {
			cut(w.Room.Things[i].Hole(w.Setting.Choice.Box).Cuts(l.Columns, l.Rows), Flaw{Kind: CutForThing, Thing: i})
		}
	}
	return flaws
}

// nearestOf is the panel with its middle nearest the middle of the box, the
// first of equals; the zero value of none.
func nearestOf(panels []mask.Panel, l *layers.Layer) mask.Panel {
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

// firstOn is the first step of an order that hangs any of the panels, counted from 0;
// all of its steps where none does.
func firstOn(l *layers.Layer, order []hanging.Hang, panels []mask.Panel) int {
	in := marked(l, panels)
	for i := range order {
		if hangsAny(l, order[i].Block, in) {
			return i
		}
	}
	return len(order)
}

// setToKey adds the key to what the panels beside it are set to, as far as they go up
// before it comes down. It takes the place of a line on the same side.
func setToKey(l *layers.Layer, order []hanging.Hang, k *Key) {
	for _, side := range k.Sides {
		if !side.Touch {
			continue
		}
		edge, in := hanging.Edge{Side: side.Wall.Opposite(), To: hanging.ToKey}, marked(l, side.Panels)
		for i := range order {
			h, taken := &order[i], false
			if !hangsAny(l, h.Block, in) {
				continue
			}
			for n := range h.Edges {
				if h.Edges[n].Side == edge.Side && h.Edges[n].To != hanging.ToPanel {
					h.Edges[n], taken = edge, true
				}
			}
			if !taken {
				h.Edges = append(h.Edges[:len(h.Edges):len(h.Edges)], edge)
			}
		}
	}
}

// marked tells of each panel of a layer, in reading order, whether it is among
// those given.
func marked(l *layers.Layer, panels []mask.Panel) []bool {
	in := make([]bool, l.Panels.Count())
	for _, p := range panels {
		in[l.Panels.Index(p)] = true
	}
	return in
}

// hangsAny tells whether a block has any of the marked panels.
func hangsAny(l *layers.Layer, block hanging.Block, in []bool) bool {
	for row := block.Row; row < block.Row+block.Rows; row++ {
		for column := block.Column; column < block.Column+block.Columns; column++ {
			if in[l.Panels.Index(mask.Panel{Column: column, Row: row})] {
				return true
			}
		}
	}
	return false
}
