package mask

import (
	"strconv"
	"strings"

	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/meeting"

	"ceilingwright/core/job"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Meeting tells how panels and layers meet.
func Meeting(p *page.Page, j *job.Job) {
	for i := range j.Meeting.Layers {
		met, l, out := &j.Meeting.Layers[i], &j.Layers[i], &p.Sheet.Layers[i]
		gaps(p, met, out)
		for _, side := range met.Landings {
			landing(p, l, &side)
		}
		registered(p, j, l, &met.Register, &out.Register)
	}
}

// gaps puts the seams of a layer on the sheet: what each was planned to be, what it
// was measured, and what it is to be set to now.
func gaps(p *page.Page, met *meeting.Met, out *sheet.Layer) {
	if len(met.Gaps) == 0 {
		return
	}
	out.Gaps = make([]sheet.Gap, len(met.Gaps))
	style := p.Style()
	for i := range met.Gaps {
		g := &met.Gaps[i]
		shown := sheet.Gap{Seam: g.Seam, At: g.At, Planned: style.About(g.Planned), Set: style.About(g.Set)}
		if i > 0 && g.Offers == met.Gaps[i-1].Offers {
			shown.Offers = out.Gaps[i-1].Offers
		} else {
			shown.Offers = make([]string, len(g.Offers))
			for k, offer := range g.Offers {
				shown.Offers[k] = p.Notation.Length(offer)
			}
		}
		if g.At != "" {
			// As it was measured, also between two marks, as what is said of it reckons.
			shown.Measured = p.Notation.Fine(g.Set)
			shown.Set, shown.Text = shown.Measured, p.Told(measuredGap(g.Set-g.Planned))
		} else {
			shown.Text = p.Say("Set it to {gap}; the next panel's edge is then {edge} from the tape line towards {wall}.",
				words.About("gap", g.Set), words.Length("edge", g.Edge), words.Name("wall", g.Wall.Text()))
		}
		out.Gaps[i] = shown
	}
}

// measuredGap says how a measured gap stands to the planned one.
func measuredGap(off measure.Length) words.Text {
	switch by := words.Fine("by", off.Abs()); {
	case off.Abs() < mask.Noticeable:
		return words.Say("As planned.")
	case off > 0:
		return words.Say("{by} wider than planned.", by)
	default:
		return words.Say("{by} narrower than planned.", by)
	}
}

// landing is where a side of the layer comes to lie against its tape line.
func landing(p *page.Page, l *layers.Layer, side *meeting.Landing) {
	p.Length(page.Hanging, l.Panels.ID+".gap."+string(side.Wall), p.Say("past the tape line towards {wall}", words.Name("wall", side.Wall.Text())), side.Past,
		p.Say("The panels that follow the first on this side and their gaps, as measured or as they are to be set, less the way to the tape line; below nothing they end short."),
		p.Put(side.Panels)+" + "+p.Put(side.Gaps)+" − "+p.Put(side.Room), p.Arithmetic())
}

// Bridges are the tapes over the seams of a layer, and round its loose pieces.
func Bridges(p *page.Page, j *job.Job, l *layers.Layer, out *sheet.Layer) {
	if len(l.Bridges) == 0 {
		return
	}
	pieces := 0
	out.Bridges = make([]sheet.Bridge, 0, len(l.Bridges))
	for i := range l.Bridges {
		b := &l.Bridges[i]
		pieces += b.Pieces
		shown := sheet.Bridge{Seam: p.Told(taped(&b.Seam)), Pieces: b.Pieces, Length: p.Notation.Length(b.Length)}
		if j.Plan.Seams.Piece > 0 {
			shown.Text = p.Told(bridge(b))
		}
		out.Bridges = append(out.Bridges, shown)
	}
	rule := p.Say("One piece of tape over each seam; where two cross, both run through.")
	if l.Laps > 0 {
		rule = p.Say("Each seam in the fewest equal pieces none of which is longer than one person lays, lapping by {lap}: the seam less a lap, over a piece less a lap, rounded up. Where two cross, both run through.",
			words.Length("lap", mask.JoinLap))
	}
	p.Count(page.Hanging, l.Panels.ID+".bridges", p.Say("{n?piece of tape over the seams|pieces of tape over the seams}", words.Count("n", pieces)), int64(pieces), "",
		rule, bridgeSum(p, l.Bridges, j.Plan.Seams.Piece), p.Say("Lap: common practice, no source."))
}

// taped is what a tape lies over: a seam by its name, or the line round a loose piece.
func taped(s *mask.Seam) words.Text {
	if s.Runs == mask.Round {
		return words.Say("round “{piece}”", words.Name("piece", s.Name))
	}
	return words.Verbatim(s.Name)
}

func bridge(b *mask.Bridge) words.Text {
	seam, piece := words.Of("seam", taped(&b.Seam)), words.Length("piece", b.Piece)
	if b.Pieces == 1 {
		return words.Say("{seam}: one piece of {piece}.", seam, piece)
	}
	return words.Say("{seam}: {n} pieces of {piece}, each lapping the one before by {lap}.", seam, words.Count("n", b.Pieces), piece, words.Length("lap", mask.JoinLap))
}

// bridgeSum is the count of all pieces of tape as a sum: seams of one length
// together. longest is the longest piece one person lays.
func bridgeSum(p *page.Page, bridges []mask.Bridge, longest measure.Length) string {
	var alike []mask.Bridge
	count := map[measure.Length]int{}
	for _, b := range bridges {
		if count[b.Seam.Length]++; count[b.Seam.Length] == 1 {
			alike = append(alike, b)
		}
	}
	parts := make([]string, len(alike))
	for i, b := range alike {
		n := count[b.Seam.Length]
		parts[i] = strconv.Itoa(n)
		if b.Pieces > 1 {
			parts[i] = p.Say("{n} × (({seam} − {lap}) ÷ ({piece} − {lap}), rounded up)", words.Count("n", n),
				words.Put("seam", b.Seam.Length), words.Put("lap", mask.JoinLap), words.Put("piece", longest))
		}
	}
	return strings.Join(parts, " + ")
}
