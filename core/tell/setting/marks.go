package setting

import (
	"math"
	"strings"

	"ceilingwright/core/job/setting"

	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// walls are the marks along each wall.
func (t *teller) walls() {
	for i := range t.Setting.Walls {
		w := &t.Setting.Walls[i]
		wall := sheet.Wall{
			Wall: string(w.Wall), From: string(w.From), To: string(w.To),
			Title: t.wallTitle(w), Length: t.Notation.Length(w.Length), Marks: make([]sheet.Mark, len(w.Marks)),
		}
		for k := range w.Marks {
			wall.Marks[k] = t.mark(&w.Marks[k])
		}
		t.Sheet.Walls = append(t.Sheet.Walls, wall)
	}
}

func (t *teller) wallTitle(w *setting.Wall) string {
	switch w.Wall {
	case setout.AlongLine:
		return t.Say("Along the centre line that runs with the mask’s length, from its end at ZW")
	case setout.AcrossLine:
		return t.Say("Along the centre line that runs across it, from its end at WX")
	}
	return t.Say("Along wall {wall}, from {corner}", words.Of("wall", w.Wall), words.Of("corner", w.From))
}

func (t *teller) mark(m *setting.Mark) sheet.Mark {
	out := sheet.Mark{
		Kind: string(m.Kind), Label: m.Label, Layer: strings.Join(m.Of, ", "), Text: t.Notation.Length(m.At), Other: t.Other.Length(m.At),
		Exact: page.Nanometres(m.At), Hides: t.hides(m.Hides),
	}
	switch m.Kind {
	case setout.BoxMark:
		out.Label = t.Say("mask outline")
	case setout.CentreMark:
		out.Label = t.Say("middle")
	case setout.FixtureMark:
		out.Label = t.Say("light")
	}
	if !m.Alike {
		out.Join = t.Say("join to {at} on {wall} from {corner}", words.Length("at", m.Join.At), words.Of("wall", m.Join.Wall), words.Of("corner", m.Join.From))
	}
	if sum := t.markSum(m); sum != "" {
		out.Sum = sum + " = " + t.Exactly(m.At)
	}
	return out
}

// markSum is how a mark comes about, without its result; "" where it is a measured one.
func (t *teller) markSum(m *setting.Mark) string {
	if !m.Slants {
		return m.Sum.In(t.Style())
	}
	sign := " + "
	if m.Cast.Slope < 0 {
		sign = " − "
	}
	return t.Put(m.Cast.Along) + sign + t.Put(m.Cast.Off) + " × " + survey.SlopeText(math.Abs(m.Cast.Slope))
}

// hides is what the rounding to the tape mark leaves out: nothing where that is finer
// than can be measured.
func (t *teller) hides(left measure.Length) string {
	switch by := words.Fine("by", left.Abs()); {
	case left == 0 || t.Notation.IsTooFine(left.Abs()):
		return ""
	case left < 0:
		return t.Say("{by} less", by)
	default:
		return t.Say("{by} more", by)
	}
}

// box is where the outline lies: its corners from the walls, and every line to
// strike.
func (t *teller) box() {
	box, out := &t.Setting.Choice.Box, &t.Sheet.Box
	out.Text = t.Say("The mask outline is {length} × {width}, {way}. Both its diagonals read {diagonal}.", words.Length("length", box.Length), words.Length("width", box.Width),
		words.Of("way", t.title(t.Setting.Choice.Way)), words.Length("diagonal", box.Diagonal()))
	out.Line = t.Told(t.lineRound())
	for i := range t.Setting.Corners {
		f := &t.Setting.Corners[i]
		out.Corners = append(out.Corners, sheet.BoxCorner{Corner: string(f.Corner), Text: t.corner(f)})
	}
	for i := range t.Setting.Walls {
		w := &t.Setting.Walls[i]
		for k := range w.Marks {
			if m := &w.Marks[k]; m.Struck {
				out.Lines = append(out.Lines, t.strike(w, m))
			}
		}
	}
}

// lineRound says what is struck or taped round the outline.
func (t *teller) lineRound() words.Text {
	set, from := &t.Plan.Setting, &t.Setting.TapeFrom
	if !set.Taped {
		return words.Say("Snap a chalk line on each side of the mask outline, on the marks.")
	}
	text, wide := words.Say("The tape lies outside the mask outline, its inner edge on the marks."), words.Length("wide", set.TapeWidth)
	switch {
	case set.TapeWidth <= 0:
		return text
	case !t.Setting.Choice.Layout.IsEven():
		return words.Sentences(text, words.Say("It is {wide} wide, so its outer edge is that much outside them.", wide))
	}
	return words.Sentences(text, words.Say("It is {wide} wide, so its outer edge is {ab} from wall WX, {bc} from wall XY, {cd} from wall YZ and {da} from wall ZW.", wide,
		words.Length("ab", from.AB), words.Length("bc", from.BC), words.Length("cd", from.CD), words.Length("da", from.DA)))
}

// corner is how one corner of the outline is found.
func (t *teller) corner(f *setout.Found) string {
	name := words.Say("Corner {corner}", words.Of("corner", f.Corner))
	if f.Own != f.Corner {
		name = words.Say("Corner {corner} (the mask’s own corner {own})", words.Of("corner", f.Corner), words.Of("own", f.Own))
	}
	walls := make([]words.Text, len(f.Walls))
	for i, w := range f.Walls {
		off, wall := words.Length("off", w.Length), words.Of("wall", w.Wall)
		walls[i] = words.Say("{off} off wall {wall}", off, wall)
		if t.Room.Shape.Form == survey.Round {
			walls[i] = words.Say("{off} from the curve beyond side {wall}", off, wall)
		}
	}
	corner, beside := words.Of("corner", name), words.All("walls", walls)
	if !f.Taped {
		return t.Say("{corner}: {walls}.", corner, beside)
	}
	one, other := &f.Tapes[0], &f.Tapes[1]
	return t.Say("{corner}: {walls}; by tape {one} from corner {from} and {other} from corner {to}.", corner, beside,
		words.Length("one", one.Length), words.Of("from", one.From), words.Length("other", other.Length), words.Of("to", other.From))
}

// strike is the line of a mark, said once for both its ends: from the wall that
// comes first.
func (t *teller) strike(w *setting.Wall, m *setting.Mark) sheet.Strike {
	s := sheet.Strike{Name: m.Label, Kind: string(m.Kind), Layer: strings.Join(m.Of, ", ")}
	switch m.Kind {
	case setout.BoxMark:
		s.Name = t.Say("side {side} of the mask outline", words.Of("side", survey.Wall(m.Label)))
	case setout.CentreMark:
		s.Name = t.Say("centre line")
	}
	at := words.Length("at", m.At)
	switch {
	case m.Join.Wall != "":
		s.Text = t.Say("{at} on {wall} from {corner} to {other} on {far} from {end}", at, words.Of("wall", w.Wall), words.Of("corner", w.From),
			words.Length("other", m.Join.At), words.Of("far", m.Join.Wall), words.Of("end", m.Join.From))
	case w.Wall == setout.AlongLine:
		s.Text = t.Say("square across the centre line at {at} from its end at ZW", at)
	default:
		s.Text = t.Say("square across the centre line at {at} from its end at WX", at)
	}
	return s
}
