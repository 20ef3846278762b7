package tell

import (
	"strconv"
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/words"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

// line is one direction of a layer while it is hung.
type line struct {
	run     mask.Run
	columns bool
	// low and high are the sides of the box where the run begins and ends.
	low, high survey.Wall
	first     int   // the panel first up, counted from 0
	notes     []int // for each seam its entry in the plan's list, from 1; 0 for none
	measured  []mask.MeasuredGap
}

func (a *line) name(seam int) string {
	if a.columns {
		return mask.ColumnSeam(seam + 1)
	}
	return mask.RowSeam(seam + 1)
}

// side is the side of the box that a seam is worked towards.
func (a *line) side(seam int) survey.Wall {
	if seam < a.first {
		return a.low
	}
	return a.high
}

// gaps puts every seam of a layer on the sheet: what it was planned to be, what
// it was measured, and what it is to be set to now.
func (b *builder) gaps(l job.HungLayer, out *sheet.Layer) {
	first := l.Order[0].Panel
	lines := [2]line{
		{run: l.Columns, columns: true, low: survey.DA, high: survey.BC, first: first.Column - 1},
		{run: l.Rows, low: survey.AB, high: survey.CD, first: first.Row - 1},
	}
	b.readGaps(l.Layer, &lines)
	out.Gaps = make([]sheet.Gap, 0, len(l.Columns.Gaps)+len(l.Rows.Gaps))
	for i := range lines {
		if a := &lines[i]; len(a.run.Gaps) > 0 {
			b.gapsAlong(l.Layer, out, a)
		}
	}
}

// readGaps sorts the measured gaps to their seams.
func (b *builder) readGaps(l *job.Layer, lines *[2]line) {
	for i := range l.Plan.Gaps {
		note := &l.Plan.Gaps[i]
		if note.Seam == "" && !note.Known {
			continue
		}
		columns, after, ok := mask.ParseSeam(note.Seam)
		a := &lines[1]
		if columns {
			a = &lines[0]
		}
		switch {
		case !ok || after > len(a.run.Gaps):
			b.Report(note.At+"/seam", []problem.Problem{{Severity: problem.Stop, What: words.Raw("“" + note.Seam + "” is no seam of this layer."),
				Do: words.Raw("Write it as the list of seams does, such as " + lines[exampleOf(lines)].name(0) + ".")}})
		case a.run.Held != nil && a.run.Held[after-1]:
			b.Report(note.At+"/seam", []problem.Problem{{Severity: problem.Caution,
				What: words.Raw("Seam " + a.name(after-1) + " lies inside pieces over its whole length, so it cannot be set."), Do: words.Say("Take this line out.")}})
		case !note.Known:
		case note.Gap >= mask.LeastPanel:
			b.Report(note.At+"/gap", []problem.Problem{{Severity: problem.Stop,
				What: words.Raw("A gap of " + b.Notation.Length(note.Gap) + " is as wide as a panel."), Do: words.Say("Check the number and write its unit.")}})
		default:
			a.take(after-1, i, note.Gap)
		}
	}
}

func exampleOf(lines *[2]line) int {
	if len(lines[0].run.Gaps) == 0 && len(lines[1].run.Gaps) > 0 {
		return 1
	}
	return 0
}

func (a *line) take(seam, note int, gap measure.Length) {
	if a.notes == nil {
		a.notes = make([]int, len(a.run.Gaps))
	}
	a.notes[seam] = note + 1
	a.measured = append(a.measured, mask.MeasuredGap{Seam: seam, Gap: gap})
}

func (b *builder) gapsAlong(l *job.Layer, out *sheet.Layer, a *line) {
	h, ok := a.run.Hang(a.first, a.measured)
	if !ok {
		return
	}
	var offers []string
	offered := measure.Length(-1)
	for i, gap := range h.Gaps {
		if a.run.Held != nil && a.run.Held[i] {
			continue
		}
		if offers == nil || gap != offered {
			offers, offered = b.offers(gap), gap
		}
		g := sheet.Gap{Seam: a.name(i), Planned: b.about(a.run.Gaps[i]), Set: b.about(gap), Offers: offers}
		b.widen(gap, g.Seam)
		if a.notes != nil && a.notes[i] > 0 {
			g.At, g.Measured = l.Plan.Gaps[a.notes[i]-1].At+"/gap", b.about(gap)
			g.Text = b.measuredWords(gap, a.run.Gaps[i])
		} else {
			g.Text = b.runningWords(a, &h, i)
		}
		out.Gaps = append(out.Gaps, g)
	}
	if len(a.measured) == 0 {
		return
	}
	for _, side := range [2]struct {
		wall     survey.Wall
		from, to int
		past     measure.Length
	}{{a.low, 0, a.first, h.Low}, {a.high, a.first, len(h.Gaps), h.High}} {
		b.landing(l, a, &h, side.wall, side.from, side.to, side.past)
	}
}

// measuredWords says how a measured gap stands to the planned one.
func (b *builder) measuredWords(gap, planned measure.Length) string {
	switch off := gap - planned; {
	case off.Abs() < mask.Noticeable:
		return "As planned."
	case off > 0:
		return b.fine(off) + " wider than planned."
	default:
		return b.fine(-off) + " narrower than planned."
	}
}

// runningWords says what to set a seam to and where the edge of the next panel
// comes to lie then. Panels set to these distances do not build up.
func (b *builder) runningWords(a *line, h *mask.Hanging, seam int) string {
	edge, from := h.Starts[seam+1], a.low
	if seam < a.first {
		edge = h.Starts[seam] + a.run.Sizes[seam]
	}
	if edge > a.run.Box-edge {
		edge, from = a.run.Box-edge, a.high
	}
	return "Set it to " + b.about(h.Gaps[seam]) + "; the next panel's edge is then " + b.Notation.Length(edge) + " from the tape line " + b.towardsSide(from) + "."
}

// landing says where a side of the layer comes to lie against its tape line, as
// a figure and, where it does not land, as a problem at the last gap measured
// on that side.
func (b *builder) landing(l *job.Layer, a *line, h *mask.Hanging, wall survey.Wall, from, to int, past measure.Length) {
	last, open, room := 0, 0, a.run.Box-a.run.Starts[a.first]-a.run.Sizes[a.first]
	if wall == a.low {
		room = a.run.Starts[a.first]
	}
	gaps := measure.Length(0)
	for i := from; i < to; i++ {
		last = max(last, a.notes[i])
		gaps += h.Gaps[i]
		if !h.Fixed[i] {
			open++
		}
	}
	if last == 0 {
		return
	}
	sum := b.Put(past+room-gaps) + " + " + b.Put(gaps) + " − " + b.Put(room)
	rule := "The panels that follow the first on this side and their gaps, as measured or as they are to be set, less the way to the tape line; below nothing they end short."
	b.Length(page.Hanging, l.Panels.ID+".gap."+string(b.facing(wall)), "past the tape line "+b.towardsSide(wall), past, rule, sum, page.OfArithmetic)
	if past.Abs() < mask.Noticeable {
		return
	}
	what, do := "The panels will run "+b.Notation.Amount(past)+" past the tape line "+b.towardsSide(wall)+".", "Trim the last panel there by that much, or take down what was hung too wide."
	switch {
	case past < 0:
		what, do = "The panels end "+b.Notation.Amount(-past)+" short of the tape line "+b.towardsSide(wall)+".", "Move the tape line there, or take down what was hung too tight."
	case open > 0:
		what = "The panels will run " + b.Notation.Amount(past) + " past the tape line " + b.towardsSide(wall) + ", even with " +
			page.Plural(int64(open), "seam", "seams") + " still to come closed up."
	}
	b.Report(l.Plan.Gaps[last-1].At+"/gap", []problem.Problem{{Severity: problem.Caution, What: words.Raw(what), Do: words.Raw(do)}})
}

// offers are five likely gaps round the one to set, on the marks of the tape.
func (b *builder) offers(gap measure.Length) []string {
	mark := b.Notation.Mark()
	if mark <= 0 {
		mark = measure.Millimetre
	}
	first := max(gap.ToMark(mark)-2*mark, 0)
	offers := make([]string, 5)
	for i := range offers {
		offers[i] = b.Notation.Length(first + measure.Length(i)*mark)
	}
	return offers
}

// bridges are the tapes over the seams of a layer, and round its loose pieces.
// It answers with what the joins of the pieces take over and above the seams.
func (b *builder) bridges(l *job.Layer, out *sheet.Layer) (laps measure.Length) {
	tape := mask.Bridging{Width: b.Plan.Seams.Width, Piece: b.Plan.Seams.Piece}
	seams := l.Panels.Seams(b.Plan.Mask.Outline)
	for _, loose := range l.Panels.Loose {
		seams = append(seams, mask.Seam{Name: "round “" + loose.Name + "”", Length: loose.CutLength()})
	}
	pieces := int64(0)
	for _, bridge := range tape.Bridges(seams) {
		if bridge.Seam.Length <= 0 {
			continue
		}
		pieces += int64(bridge.Pieces)
		laps += bridge.Length - bridge.Seam.Length
		out.Bridges = append(out.Bridges, sheet.Bridge{Seam: bridge.Seam.Name, Pieces: bridge.Pieces, Length: b.Notation.Length(bridge.Length)})
		if tape.Piece > 0 {
			out.Bridges[len(out.Bridges)-1].Text = b.bridgeWords(bridge)
		}
	}
	if len(out.Bridges) == 0 {
		return 0
	}
	rule := "One piece of tape over each seam; where two cross, both run through."
	if laps > 0 {
		rule = "Each seam in the fewest equal pieces none of which is longer than one person lays, lapping by " + b.Notation.Length(mask.JoinLap) +
			": the seam less a lap, over a piece less a lap, rounded up. Where two cross, both run through."
	}
	sum := b.bridgeSum(tape, seams)
	b.Count(page.Hanging, l.Panels.ID+".bridges", page.Noun(pieces, "piece of tape over the seams", "pieces of tape over the seams"), pieces, "", rule, sum, "Lap: common practice, no source.")
	return laps
}

// bridgeSum is the count of all pieces of tape as a sum: seams of one length
// together.
func (b *builder) bridgeSum(tape mask.Bridging, seams []mask.Seam) string {
	var lengths []measure.Length
	count, pieces := map[measure.Length]int{}, map[measure.Length]int{}
	for _, bridge := range tape.Bridges(seams) {
		long := bridge.Seam.Length
		if long <= 0 {
			continue
		}
		if count[long] == 0 {
			lengths = append(lengths, long)
		}
		count[long]++
		pieces[long] = bridge.Pieces
	}
	parts := make([]string, len(lengths))
	for i, long := range lengths {
		parts[i] = strconv.Itoa(count[long])
		if pieces[long] > 1 {
			lap := b.Put(mask.JoinLap)
			parts[i] += " × ((" + b.Put(long) + " − " + lap + ") ÷ (" + b.Put(tape.Piece) + " − " + lap + "), rounded up)"
		}
	}
	return strings.Join(parts, " + ")
}

func (b *builder) bridgeWords(bridge mask.Bridge) string {
	if bridge.Pieces == 1 {
		return bridge.Seam.Name + ": one piece of " + b.Notation.Length(bridge.Piece) + "."
	}
	return bridge.Seam.Name + ": " + strconv.Itoa(bridge.Pieces) + " pieces of " + b.Notation.Length(bridge.Piece) + ", each lapping the one before by " + b.Notation.Length(mask.JoinLap) + "."
}

// widen remembers the widest gap that the tape has to bridge.
func (b *builder) widen(gap measure.Length, seam string) {
	if b.widestAt == "" || gap > b.widest {
		b.widest, b.widestAt = gap, seam
	}
}

// checkBridging says when the tape is too narrow for the widest gap of all layers,
// or its pieces too short.
func (b *builder) checkBridging() {
	widest, seam := b.widest, b.widestAt
	tape := mask.Bridging{Width: b.Plan.Seams.Width, Piece: b.Plan.Seams.Piece}
	if tape.Piece > 0 && tape.Piece < mask.ShortestPiece {
		b.Report("/seams/pieceLength", []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("Pieces of " + b.Notation.Length(tape.Piece) + " would be mostly laps, so every seam is reckoned as one piece."),
			Do:   words.Raw("Write the longest piece one person lays, " + b.Notation.AtLeast(mask.ShortestPiece) + " or more.")}})
	}
	if tape.Width <= 0 || seam == "" || widest <= tape.WidestGap() {
		return
	}
	hold := "covers " + b.heldTo(tape.Hold(widest), mask.LeastHold) + " of the panel on either side"
	if tape.Hold(widest) <= 0 {
		hold = "does not reach across"
	}
	b.Report("/seams/tapeWidth", []problem.Problem{{Severity: problem.Caution,
		What: words.Raw("Over the gap of " + b.fine(widest) + " at seam " + seam + " tape of " + b.fine(tape.Width) + " " + hold + "."),
		Do:   words.Raw("Use tape of " + b.Notation.AtLeast(widest+2*mask.LeastHold) + " or wider, so that it holds about " + b.Notation.Length(mask.LeastHold) + " on either side (common practice, no source).")}})
}
