package tell

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/draw"
	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/words"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// Above mostCards panels, and after mostCardsInAll of all layers, the order says
// what each edge is set to and leaves out what else places the panel: nobody
// hangs so many by cards, and the sheet would be mostly those.
const (
	mostCards      = 1000
	mostCardsInAll = 3000
)

// order works out in which order the panels of a layer are hung, from which
// places of the platform, and what comes down where one is up crooked.
func (b *builder) order(l job.HungLayer) {
	job := hanging.Job{
		Columns: l.Columns, Rows: l.Rows, Waiting: waiting(l.Layer), Last: l.Last,
		Up: b.upAlready(l.Layer), Stations: b.Platform.Layout.Stations,
	}
	for _, p := range l.Panels.Pieces {
		job.Blocks = append(job.Blocks, hanging.Block{Column: p.Column, Row: p.Row, Columns: p.Columns, Rows: p.Rows})
	}
	job.Start = b.startOf(l, job.Waiting)
	if restart, ok := b.restartOf(l.Layer, job); ok {
		l.Restart, l.Sequence = restart, restart.Rest
	} else {
		l.Sequence = hanging.Order(job)
	}
	l.Order = l.Sequence.Hangs
	l.Stations = inUse(l.Order, b.Platform.Layout.Stations)
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

// waiting are the panels that are not there to be hung.
func waiting(l *job.Layer) []mask.Panel {
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
func (b *builder) startOf(l job.HungLayer, waiting []mask.Panel) mask.Panel {
	if l.Plan.Start == "" {
		return l.Begin
	}
	start, ok := l.Panels.PanelByLabel(l.Plan.Start)
	if !ok {
		b.Report(l.Plan.At+"/start", b.noPanel(l.Layer, l.Plan.Start, "The sheet chooses where to begin."))
		return l.Begin
	}
	for _, p := range waiting {
		if p == start {
			b.Report(l.Plan.At+"/start", []problem.Problem{{Severity: problem.Caution,
				What: words.Raw("Panel " + start.Label() + " is missing or damaged, so hanging cannot begin with it."),
				Do:   words.Say("Choose another to begin with, or leave it to the sheet.")}})
		}
	}
	return start
}

func (b *builder) noPanel(l *job.Layer, label, then string) []problem.Problem {
	return []problem.Problem{{Severity: problem.Caution,
		What: words.Raw("No panel of this layer is called “" + label + "”. " + then),
		Do:   words.Raw("Write the label of a panel, A1 to " + l.Panels.LastPanel().Label() + ".")}}
}

// upAlready are the panels that the plan says are up. A loose piece goes up by
// its name and is no panel.
func (b *builder) upAlready(l *job.Layer) []mask.Panel {
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
		b.Report(l.Plan.At+"/up", b.noPanel(l, unknown, "It is left out of what is up."))
	}
	return list
}

// looseLabels are the names of the loose pieces as the plan's lists of labels
// keep them: without spaces and in capitals.
func looseLabels(l *job.Layer) []string {
	labels := make([]string, len(l.Panels.Loose))
	for i, p := range l.Panels.Loose {
		labels[i] = strings.ToUpper(strings.Join(strings.Fields(p.Name), ""))
	}
	return labels
}

// restartOf is what to do about the panel that is up crooked, false where there
// is none.
func (b *builder) restartOf(l *job.Layer, job hanging.Job) (hanging.Restart, bool) {
	if l.Plan.Crooked == "" {
		return hanging.Restart{}, false
	}
	at := l.Plan.At + "/crooked"
	crooked, ok := l.Panels.PanelByLabel(l.Plan.Crooked)
	if !ok {
		b.Report(at, b.noPanel(l, l.Plan.Crooked, "Nothing is taken to be crooked."))
		return hanging.Restart{}, false
	}
	restart, ok := hanging.RestartAt(job, crooked)
	if !ok {
		b.Report(at, []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("Panel " + crooked.Label() + " is not up, so it cannot be up crooked."),
			Do:   words.Say("Mark it as up first, or leave this empty.")}})
	}
	return restart, ok
}

// stations works out the places of the platform, for all layers alike.
func (b *builder) stations() {
	a := b.Plan.Access
	p := hanging.Platform{Length: a.DeckLength, Width: a.DeckWidth, Arm: a.ArmReach, Overlap: a.Overlap, Turn: a.Turn}
	b.Report("/access", p.Check())
	if !p.IsKnown() {
		return
	}
	room := b.roomRoundBox()
	layout, problems := hanging.LayoutFor(b.Plan.Mask.Outline, p, room)
	b.Report("/access", problems)
	b.Platform.Layout, b.Platform.Footing = layout, p
	for _, s := range layout.Stations {
		if room.Length > 0 && !s.Fits(room) {
			b.Report("/access/deckLength", []problem.Problem{{Severity: problem.Caution,
				What: words.Say("The deck is larger than the room."), Do: words.Say("Check its length and width, or take a smaller platform.")}})
			return
		}
	}
}

// roomRoundBox is the room in the frame of the box, as far as the borders tell;
// none where there is no box.
func (b *builder) roomRoundBox() hanging.Rect {
	if !b.Setting.Placed {
		return hanging.Rect{}
	}
	box := &b.Setting.Choice.Box
	at := func(side survey.Wall) measure.Length { return b.Setting.Choice.Borders.At(box.Facing(side)) }
	return hanging.Rect{X: -at(survey.DA), Length: at(survey.DA) + box.Length + at(survey.BC),
		Y: -at(survey.AB), Width: at(survey.AB) + box.Width + at(survey.CD)}
}

// hangs puts the order, the places of the platform and a restart on the sheet.
func (b *builder) hangs(l job.HungLayer, out *sheet.Layer) {
	out.Order = make([]sheet.Hang, 0, len(l.Order)+len(l.Panels.Loose))
	c := cards{builder: b, layer: l.Layer, isBrief: len(l.Order) > mostCards || b.carded+len(l.Order) > mostCardsInAll}
	if !c.isBrief {
		b.carded += len(l.Order)
	}
	for i := range l.Order {
		out.Order = append(out.Order, c.hang(&l.Order[i]))
	}
	for i, label := range looseLabels(l.Layer) {
		step := c.loose(&l.Panels.Loose[i], len(out.Order)+1)
		step.Up = slices.Contains(l.Plan.Up, label)
		out.Order = append(out.Order, step)
	}
	b.placesOf(l, out)
	if len(l.Restart.Down) > 0 {
		out.Restart = restart(l)
	}
}

// turns is the turn of each panel in hanging, in reading order: all panels of a
// piece have the piece's.
func turns(l job.HungLayer) []int {
	list := make([]int, l.Panels.Count())
	for i := range l.Order {
		h := &l.Order[i]
		for row := h.Block.Row; row < h.Block.Row+h.Block.Rows; row++ {
			for column := h.Block.Column; column < h.Block.Column+h.Block.Columns; column++ {
				list[l.Panels.Index(mask.Panel{Column: column, Row: row})] = h.N
			}
		}
	}
	return list
}

// cards writes the steps of one layer. Panels of one column are as far from
// their line, so what is said of a column or a row is said once.
type cards struct {
	*builder
	layer         *job.Layer
	isBrief       bool
	columns, rows map[hanging.Offset]sheet.Measure
	size          measure.Length
	diagonal      sheet.Measure
}

func (c *cards) hang(h *hanging.Hang) sheet.Hang {
	out := sheet.Hang{N: h.N, Panel: h.Panel.Label(), Set: make([]sheet.EdgeSet, len(h.Edges)), Station: h.Station, Up: h.Up}
	for i, e := range h.Edges {
		out.Set[i] = sheet.EdgeSet{Edge: c.towardsSide(e.Side), To: target(e)}
	}
	out.Text = stepWords(h, out.Set)
	if c.isBrief {
		return out
	}
	out.Measures = c.measures(h.Block)
	if c.Setting.Placed {
		out.View = draw.ViewRound(&c.Room.Shape, c.PlaceOf(c.layer, h))
	}
	return out
}

// stepWords is a step of the order in words, its edges set as given.
func stepWords(h *hanging.Hang, set []sheet.EdgeSet) string {
	text := make([]byte, 0, 96)
	text = append(text, blockName(h.Block)...)
	for i, e := range set {
		joint := "; "
		if i == 0 {
			joint = ": "
		}
		text = append(append(append(append(text, joint...), e.To...), ' '), e.Edge...)
	}
	text = append(append(text, '.'), late(h.Waits)...)
	if h.Part {
		text = append(strconv.AppendInt(append(text, " Not all of it is in reach from platform position "...), int64(h.Station), 10), '.')
	}
	return string(text)
}

// late says why a step comes after the others.
func late(w hanging.Wait) string {
	switch w {
	case hanging.WaitsForKey:
		return " It lies on the panel kept up: hang it when that is down."
	case hanging.WaitsForDelivery:
		return " Hang it when it has come whole."
	case hanging.WaitsBehind:
		return " It touches nothing that is up until those before it are."
	}
	return ""
}

// blockName is the label of a panel, or of a piece the first and the last.
func blockName(block hanging.Block) string {
	name := block.Panel().Label()
	if !block.IsPanel() {
		last := mask.Panel{Column: block.Column + block.Columns - 1, Row: block.Row + block.Rows - 1}
		name += "–" + last.Label()
	}
	return name
}

// towardsSide names a side of the box by the wall it faces as the box lies.
func (b *builder) towardsSide(side survey.Wall) string { return towards(b.Setting.Facing(side)) }

func (c *cards) measures(block hanging.Block) []sheet.Measure {
	card := hanging.CardFor(c.layer.Columns, c.layer.Rows, block)
	if c.columns == nil {
		c.columns, c.rows = map[hanging.Offset]sheet.Measure{}, map[hanging.Offset]sheet.Measure{}
	}
	if card.Diagonal != c.size {
		lies := c.layer.Rect(block)
		c.size, c.diagonal = card.Diagonal, sheet.Measure{What: "corner to corner, both ways", Text: c.Notation.Length(card.Diagonal),
			Sum: "√((" + c.Put(lies.Length) + ")² + (" + c.Put(lies.Width) + ")²) = " + c.Exactly(card.Diagonal)}
	}
	return []sheet.Measure{
		c.offset(c.columns, card.Along, &c.layer.Columns, block.Column-1, block.Columns),
		c.offset(c.rows, card.Across, &c.layer.Rows, block.Row-1, block.Rows),
		c.diagonal,
	}
}

func (c *cards) offset(said map[hanging.Offset]sheet.Measure, o hanging.Offset, run *mask.Run, first, count int) sheet.Measure {
	if m, ok := said[o]; ok {
		return m
	}
	line := "the centre line"
	if o.Line == hanging.ToTapeLine {
		line = "the tape line " + c.towardsSide(o.Side)
	}
	m := sheet.Measure{What: "from " + line + " to the edge " + c.towardsSide(o.Edge) + ", both ends", Text: c.Notation.Length(o.Length)}
	if text := o.Sum(run, first, count).In(c.Style()); text != m.Text {
		m.Sum = text + " = " + c.Exactly(o.Length)
	}
	said[o] = m
	return m
}

// loose is the step of a loose piece: last, on its own marks.
func (c *cards) loose(p *mask.Loose, n int) sheet.Hang {
	out := sheet.Hang{N: n, Panel: p.Name, Set: []sheet.EdgeSet{{To: "on its own marks"}}, Text: p.Name + ": on its own marks, when all round it is up."}
	out.Measures = []sheet.Measure{
		{What: "from the tape line " + c.towardsSide(survey.DA) + " to its middle", Text: c.Notation.Length(p.X)},
		{What: "from the tape line " + c.towardsSide(survey.AB) + " to its middle", Text: c.Notation.Length(p.Y)},
	}
	if c.Setting.Placed {
		out.View = draw.ViewRound(&c.Room.Shape, c.placeOfLoose(p))
	}
	return out
}

// placeOfLoose is where a loose piece lies in the room: the square round it, if
// it is round.
func (b *builder) placeOfLoose(p *mask.Loose) setout.Box {
	place := setout.Box{Length: p.Length, Width: p.Width, Turn: b.Setting.Choice.Box.Turn}
	if p.Round {
		place.Width = p.Length
	}
	at := b.Setting.Choice.Box.Out(survey.Point{X: p.X - place.Length.Half(), Y: p.Y - place.Width.Half()})
	place.X, place.Y = at.X, at.Y
	return place
}

// placesOf are the places of the platform that a layer is hung from, and the
// way between them.
func (b *builder) placesOf(l job.HungLayer, out *sheet.Layer) {
	if len(l.Stations) == 0 || len(l.Order) == 0 {
		return
	}
	at := make([]int, len(l.Stations))
	for i := range l.Order {
		at[l.Order[i].Station-1]++
	}
	place := make([]int, len(at)) // in the list, for those that are used
	for i, count := range at {
		if count > 0 {
			place[i] = len(out.Stations)
			out.Stations = append(out.Stations, sheet.Station{N: i + 1, Text: b.placeText(l.Stations[i]), Panels: make([]string, 0, count)})
		}
	}
	for i := range l.Order {
		s := &out.Stations[place[l.Order[i].Station-1]]
		s.Panels = append(s.Panels, l.Order[i].Panel.Label())
	}
	out.Route = b.route(l)
	b.stationFigure(l, len(out.Stations))
}

// placeText says where the deck stands: its middle along wall AB and out from
// it, or in a round room, which has no walls, from the mask's edges.
func (b *builder) placeText(s hanging.Station) string {
	middle := survey.Point{X: s.Deck.X + s.Deck.Length.Half(), Y: s.Deck.Y + s.Deck.Width.Half()}
	wall, ok := b.Room.Shape.Wall(survey.AB)
	if !ok || !b.Setting.Placed {
		with := "length"
		if s.Turned {
			with = "width"
		}
		return "Middle of the deck " + b.Notation.Length(middle.X) + " from the mask’s edge " + b.towardsSide(survey.DA) + " and " +
			b.Notation.Length(middle.Y) + " from its edge " + b.towardsSide(survey.AB) + ", its long way with the mask’s " + with + "."
	}
	across := b.Setting.Choice.Box.Facing(survey.AB) == survey.BC || b.Setting.Choice.Box.Facing(survey.AB) == survey.DA
	with := survey.AB
	if s.Turned != across {
		with = survey.BC
	}
	p := b.Setting.Choice.Box.Out(middle)
	return "Middle of the deck " + b.Notation.Length(alongWall(wall, p)) + " along WX from W and " + b.Notation.Length(wall.Off(p)) +
		" out from WX, its length along " + with.Text() + "."
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

// route says how the platform goes from place to place, for what is not up yet.
func (b *builder) route(l job.HungLayer) string {
	var places []string
	beyond, last := 0, 0
	for i := range l.Order {
		h := &l.Order[i]
		if h.Part {
			beyond++
		}
		if !h.Up && h.Station != last {
			places = append(places, strconv.Itoa(h.Station))
		}
		last = h.Station
	}
	s := l.Sequence
	var text string
	switch {
	case len(places) == 0 && s.Moves == 0:
		text = "The platform stays where it stands."
	case len(places) == 1:
		text = "The platform stands at position " + places[0] + "."
	default:
		text = "The platform stands at position " + strings.Join(places, ", then ") + "."
	}
	if s.Moves > 0 {
		text += " " + page.Plural(int64(s.Moves), "move", "moves") + ", roll it " + b.Notation.Length(s.Way) + " in all"
		switch {
		case s.Fewest && s.Shortest:
			text += ": the fewest moves there can be, and of those the shortest way."
		case s.Fewest:
			text += ": the fewest moves there can be."
		default:
			text += "."
		}
	}
	if beyond > 0 {
		text += " " + page.Plural(int64(beyond), "panel is", "panels are") + " not wholly in reach from any one platform position and hung from the one that reaches the middle; a larger overlap helps."
	}
	return text
}

// stationFigure is how many places the platform has for a layer.
func (b *builder) stationFigure(l job.HungLayer, used int) {
	length, width := b.Platform.Footing.Reach()
	outline, overlap := b.Plan.Mask.Outline, b.Platform.Footing.Overlap
	layout := b.Platform.Layout
	source := "Derived here: points spaced just over the reach apart need one platform position each."
	rule := "Mask less overlap, over reach less overlap, rounded up, along times across. Reach is the deck and an arm all round."
	var sum string
	if layout.Columns > 0 {
		if layout.Stations[0].Turned {
			length, width = width, length
			rule += " The deck is turned a quarter."
		}
		sum = b.quotient(outline.Length, length, overlap) + " × " + b.quotient(outline.Width, width, overlap) + ", each rounded up"
	} else {
		rule = "Decks lengthwise and turned a quarter together cover the mask from fewer positions than an even grid."
		sum = strconv.Itoa(len(layout.Stations)) + " found by trying"
		source = "Found by trying; it is not shown that fewer could not do."
		if layout.Fewest {
			source = "Found by trying every arrangement that could do with fewer."
		}
	}
	if idle := len(layout.Stations) - used; idle > 0 {
		sum += ", less " + strconv.Itoa(idle) + " that no panel needs"
	}
	b.Count(page.Hanging, l.Panels.ID+".stations", page.Noun(int64(used), "platform position", "platform positions"), int64(used), "", rule, sum, source)
}

// quotient is the sum of the places in one direction.
func (b *builder) quotient(box, reach, overlap measure.Length) string {
	if overlap == 0 || box <= reach {
		return b.Put(box) + " ÷ " + b.Put(reach)
	}
	return "(" + b.Put(box) + " − " + b.Put(overlap) + ") ÷ (" + b.Put(reach) + " − " + b.Put(overlap) + ")"
}

// readBothEnds says what one mark of the tape between the two ends of the first
// panel's edge becomes where the mask ends, since what is set to a turned edge
// goes on in its direction; "" where nothing is set to it.
func (b *builder) readBothEnds(l job.HungLayer) string {
	if len(l.Order) < 2 {
		return ""
	}
	first := l.Order[0].Block
	x, end, run := first.Column-1, first.Column+first.Columns-2, l.Columns
	if len(run.Sizes) == first.Columns {
		x, end, run = first.Row-1, first.Row+first.Rows-2, l.Rows
	}
	low, high := run.Starts[x], run.Starts[end]+run.Sizes[end]
	mark := b.Notation.Mark()
	grown := hanging.Grown(mark, high-low, max(high, run.Box-low))
	return " Read both ends of an edge: " + b.Notation.Exact(mark) + " between those of " + blockName(first) + " turns it by " +
		strconv.FormatFloat(hanging.Turn(mark, high-low), 'f', 2, 64) + "° and is " + b.fine(grown) + " where the mask ends."
}

// restart says what comes down for a panel that is up crooked.
func restart(l job.HungLayer) sheet.Restart {
	down := make([]string, len(l.Restart.Down))
	for i, block := range l.Restart.Down {
		down[i] = blockName(block)
	}
	crooked := down[len(down)-1]
	text := crooked + " is up crooked. Nothing is set to it: take it down and hang it again."
	if len(down) > 1 {
		text = crooked + " is up crooked, and " + strings.Join(down[:len(down)-1], ", ") +
			" hang by it. Take them down in this order: " + strings.Join(down, ", ") + ". The others stay."
	}
	for i, block := range l.Restart.Down {
		down[i] = block.Panel().Label()
	}
	return sheet.Restart{Text: text, Down: down}
}
