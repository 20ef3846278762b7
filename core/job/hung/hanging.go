package hung

import (
	"math"
	"slices"
	"strings"

	"ceilingwright/core/hanging"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/room"
	"ceilingwright/core/job/setting"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// Hanging is how the layers are hung, one Hung for each of them.
type Hanging struct {
	Layers []Hung
}

// Moves is how often the platform is moved, over all layers.
func (h *Hanging) Moves() (moves int) {
	for i := range h.Layers {
		moves += h.Layers[i].Sequence.Moves
	}
	return moves
}

// Hung is how one layer is hung. Sequence is the order and what is known of it, Order
// its steps with what is set to the key of the layer before, Restart what comes down
// first. Cards are what else places each of the steps, none where there are too many.
// LooseUp tells of each loose piece whether it is up.
//
// KeyDown is the step before which the key of the layer before comes down, counted
// from 0; all of them where nothing lies on it.
//
// Stations are the places of the platform that cover the outline, none where its size
// is not known, those in use first, and Places what is hung from those. Route is the way from
// place to place for what is not up yet, and Beyond how many steps are not wholly in
// reach from where they are hung.
//
// Ends is what an edge whose ends read differently comes to, RunOuts how far the panels
// come out along the length and along the width, where the mask outline is known.
type Hung struct {
	Sequence hanging.Sequence
	Order    []hanging.Hang
	Restart  hanging.Restart
	Cards    []hanging.Card
	LooseUp  []bool
	KeyDown  int
	Stations []hanging.Station
	Places   []Place
	Route    []int
	Beyond   int
	Ends     Ends
	RunOuts  [2]RunOut
}

// Place is a place of the platform, counted from 1, and the panels hung from it. Middle
// is the middle of its deck from the mask's edges DA and AB. Where it can be told from
// the walls, by Walls, it is so far Along wall AB from corner A and Out from it, with the
// deck's length along wall With. Turned tells that the deck's length lies with the
// mask's width.
type Place struct {
	N          int
	Panels     []mask.Panel
	Middle     survey.Point
	Turned     bool
	Walls      bool
	Along, Out measure.Length
	With       survey.Wall
}

// Layer is a layer of the mask with the key kept up of it, how it is hung, and how the
// platform stands at the places it is hung from, none where that was not tried.
type Layer struct {
	*layers.Layer
	*Hung
	Key    *Key
	Stands []Stood
}

// Above mostCards panels, and after mostCardsInAll of all layers, the order says
// what each edge is set to and leaves out what else places the panel: nobody
// hangs so many by cards, and the sheet would be mostly those.
const (
	mostCards      = 1000
	mostCardsInAll = 3000
)

// On is what the layers are hung on and from: the room, the mask set out in it, and the
// platform; and the layers themselves.
type On struct {
	Plan     *plan.Plan
	Room     *room.Room
	Layers   []layers.Layer
	Setting  *setting.Setting
	Platform *Platform
}

// work is the hanging being worked out.
type work struct {
	On
	Keys    []Key
	Hanging Hanging
	problem.List
}

// Hang works out in which order the panels of each layer are hung, from which places of
// the platform, what places each, and what comes down where one is up crooked.
func Hang(on On, keys []Key) (Hanging, []problem.Problem) {
	w, cards := work{On: on, Keys: keys}, 0
	for i := range w.Layers {
		l, h, before := &w.Layers[i], Hung{}, &Key{}
		if i > 0 && i <= len(w.Keys) {
			before = &w.Keys[i-1]
		}
		if !l.Panels.IsEmpty() {
			w.order(l, &h, before)
			w.places(&h)
			if len(h.Order) <= mostCards && cards+len(h.Order) <= mostCardsInAll {
				cards += len(h.Order)
				h.Cards = make([]hanging.Card, len(h.Order))
				for k := range h.Order {
					h.Cards[k] = hanging.CardFor(l.Columns, l.Rows, h.Order[k].Block)
				}
			}
			if w.Plan.Mask.Outline.IsComplete() {
				w.comesOut(l, &h)
			}
		}
		w.Hanging.Layers = append(w.Hanging.Layers, h)
	}
	return w.Hanging, w.List
}

// order works out the order of a layer.
func (w *work) order(l *layers.Layer, h *Hung, before *Key) {
	work := hanging.Job{
		Columns: l.Columns, Rows: l.Rows, Waiting: waiting(l), Last: before.Lies,
		Up: w.upAlready(l), Stations: w.Platform.Layout.Stations,
	}
	for _, p := range l.Panels.Pieces {
		work.Blocks = append(work.Blocks, blockOf(p))
	}
	work.Start = w.startOf(l, before.Begin, work.Waiting)
	if restart, ok := w.restartOf(l, &work); ok {
		h.Restart, h.Sequence = restart, restart.Rest
	} else {
		h.Sequence = hanging.Order(work)
	}
	h.Order = h.Sequence.Hangs
	h.Stations = inUse(h.Order, w.Platform.Layout.Stations)
	for _, name := range looseLabels(l) {
		h.LooseUp = append(h.LooseUp, slices.Contains(l.Plan.Up, name))
	}
	if before.IsKept() {
		h.KeyDown = firstOn(l, h.Order, before.Lies)
		setToKey(l, h.Order[:h.KeyDown], before)
	}
}

// blockOf is a piece as it is hung.
func blockOf(p mask.Piece) hanging.Block {
	return hanging.Block{Column: p.Column, Row: p.Row, Columns: p.Columns, Rows: p.Rows}
}

// inUse are the places of the platform in the order they are first used, those
// that are not used last, and numbers the order's places so: the platform goes
// to 1, 2, 3 and not to and fro among numbers. It keeps to what is up already,
// which the order begins with, so going on does not number them anew.
func inUse(order []hanging.Hang, stations []hanging.Station) []hanging.Station {
	number := make([]int, len(stations))
	used := make([]hanging.Station, 0, len(stations))
	for i := range order {
		if n := order[i].Station; n > 0 {
			if number[n-1] == 0 {
				used = append(used, stations[n-1])
				number[n-1] = len(used)
			}
			order[i].Station = number[n-1]
		}
	}
	for i, n := range number {
		if n == 0 {
			used = append(used, stations[i])
		}
	}
	return used
}

// places finds what is hung from each place of the platform, and its way.
func (w *work) places(h *Hung) {
	last := 0
	for i := range h.Order {
		step := &h.Order[i]
		if step.Part {
			h.Beyond++
		}
		if !step.Up && step.Station != last {
			h.Route = append(h.Route, step.Station)
		}
		if last = step.Station; last > 0 {
			if last > len(h.Places) {
				h.Places = append(h.Places, w.placeOf(last, &h.Stations[last-1]))
			}
			at := &h.Places[last-1]
			at.Panels = append(at.Panels, step.Panel)
		}
	}
}

// placeOf is where the deck stands at a station: its middle along wall AB and out from
// it, or in a round room, which has no walls, from the mask's edges.
func (w *work) placeOf(n int, s *hanging.Station) Place {
	p := Place{N: n, Turned: s.Turned, Middle: survey.Point{X: s.Deck.X + s.Deck.Length.Half(), Y: s.Deck.Y + s.Deck.Width.Half()}}
	wall, ok := w.Room.Shape.Wall(survey.AB)
	if p.Walls = ok && w.Setting.Placed; !p.Walls {
		return p
	}
	box := &w.Setting.Choice.Box
	facing, middle := box.Facing(survey.AB), box.Out(p.Middle)
	across := facing == survey.BC || facing == survey.DA
	p.Along, p.Out, p.With = alongWall(wall, middle), wall.Off(middle), survey.AB
	if s.Turned != across {
		p.With = survey.BC
	}
	return p
}

// alongWall is how far along a wall a place lies, from the wall's start: exact
// along x, else to the nearest nanometre.
func alongWall(w survey.WallLine, p survey.Point) measure.Length {
	dx, dy := w.End.X-w.Start.X, w.End.Y-w.Start.Y
	if dy == 0 && dx > 0 {
		return p.X - w.Start.X
	}
	along := float64(float64(p.X-w.Start.X)*float64(dx)) + float64(float64(p.Y-w.Start.Y)*float64(dy))
	return measure.Length(math.Round(along / float64(w.Length())))
}

// waiting are the panels that are not there to be hung.
func waiting(l *layers.Layer) []mask.Panel {
	var list []mask.Panel
	for _, n := range l.Plan.Panels {
		if p, ok := l.Panels.PanelByLabel(n.Panel); ok && (n.State == plan.Missing || n.State == plan.Damaged) {
			list = append(list, p)
		}
	}
	return list
}

// startOf is the panel the plan begins with; where it leaves that to the sheet
// or names none, the one set against the key of the layer before, if any.
func (w *work) startOf(l *layers.Layer, begin mask.Panel, waiting []mask.Panel) mask.Panel {
	if l.Plan.Start == "" {
		return begin
	}
	start, ok := l.Panels.PanelByLabel(l.Plan.Start)
	if !ok {
		w.noPanel(l, "/start", l.Plan.Start, words.Say("The sheet chooses where to begin."))
		return begin
	}
	if slices.Contains(waiting, start) {
		w.Remark(l.Plan.At+"/start", problem.Caution, words.Say("Panel {panel} is missing or damaged, so hanging cannot begin with it.", words.Name("panel", start.Label())),
			words.Say("Choose another to begin with, or leave it to the sheet."))
	}
	return start
}

// noPanel reports that a layer has no panel of a label, and what is done then.
func (w *work) noPanel(l *layers.Layer, at, label string, then words.Text) {
	w.Remark(l.Plan.At+at, problem.Caution, words.Sentences(words.Say("No panel of this layer is called “{label}”.", words.Name("label", label)), then),
		words.Say("Write the label of a panel, A1 to {last}.", words.Name("last", l.Panels.LastPanel().Label())))
}

// upAlready are the panels that the plan says are up. A loose piece goes up by
// its name and is no panel.
func (w *work) upAlready(l *layers.Layer) []mask.Panel {
	list := make([]mask.Panel, 0, len(l.Plan.Up))
	unknown, loose := "", looseLabels(l)
	for _, label := range l.Plan.Up {
		if p, ok := l.Panels.PanelByLabel(label); ok {
			list = append(list, p)
		} else if unknown == "" && !slices.Contains(loose, label) {
			unknown = label
		}
	}
	if unknown != "" {
		w.noPanel(l, "/up", unknown, words.Say("It is left out of what is up."))
	}
	return list
}

// looseLabels are the names of the loose pieces as the plan's lists of labels
// keep them: without spaces and in capitals.
func looseLabels(l *layers.Layer) []string {
	labels := make([]string, len(l.Panels.Loose))
	for i, p := range l.Panels.Loose {
		labels[i] = strings.ToUpper(strings.Join(strings.Fields(p.Name), ""))
	}
	return labels
}

// restartOf is what to do about the panel that is up crooked, false where there
// is none.
func (w *work) restartOf(l *layers.Layer, work *hanging.Job) (hanging.Restart, bool) {
	if l.Plan.Crooked == "" {
		return hanging.Restart{}, false
	}
	crooked, ok := l.Panels.PanelByLabel(l.Plan.Crooked)
	if !ok {
		w.noPanel(l, "/crooked", l.Plan.Crooked, words.Say("Nothing is taken to be crooked."))
		return hanging.Restart{}, false
	}
	restart, ok := hanging.RestartAt(*work, crooked)
	if !ok {
		w.Remark(l.Plan.At+"/crooked", problem.Caution, words.Say("Panel {panel} is not up, so it cannot be up crooked.", words.Name("panel", crooked.Label())),
			words.Say("Mark it as up first, or leave this empty."))
	}
	return restart, ok
}

// PlaceOf is where a block of panels lies on the ceiling.
func PlaceOf(outline *setout.Box, l *layers.Layer, h *hanging.Hang) setout.Box {
	first, last := h.Block.Panel(), mask.Panel{Column: h.Block.Column + h.Block.Columns - 1, Row: h.Block.Row + h.Block.Rows - 1}
	box := outline.PanelBox(l.Columns, l.Rows, first)
	end := setout.PanelIn(l.Columns, l.Rows, last)
	start := setout.PanelIn(l.Columns, l.Rows, first)
	box.Length, box.Width = end.X+end.Length-start.X, end.Y+end.Width-start.Y
	return box
}

// PlaceOfLoose is where a loose piece lies on the ceiling: the square round it, if it
// is round.
func PlaceOfLoose(box *setout.Box, p *mask.Loose) setout.Box {
	place := setout.Box{Length: p.Length, Width: p.Width, Turn: box.Turn}
	if p.Round {
		place.Width = p.Length
	}
	at := box.Out(survey.Point{X: p.X - place.Length.Half(), Y: p.Y - place.Width.Half()})
	place.X, place.Y = at.X, at.Y
	return place
}
