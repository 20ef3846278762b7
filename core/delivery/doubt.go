package delivery

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Doubts: a size that is more than a tenth off the ordered one is no panel cut
// a little wrong but a slip of the pen or of the eye, or the panel was read
// turned. It is asked about and not used. A panel that really was cut to
// another size on purpose is marked re-cut, which says so; then anything from
// half to double is believed. Common practice, no source; the tenth, the half
// and the double are choices.
const tenth = 10

// believe takes a measured size as far as it makes sense, and asks about the
// rest.
func (k *checking) believe(note Note, p *Panel) {
	m := p.Measured
	if m == (Size{}) {
		return
	}
	switch {
	case p.State == Missing:
		k.say(note.At, problem.Caution, words.Say("{panel} is missing and yet has a size.", words.Name("panel", k.nameOf(p))),
			words.Say("Check which of the two is right. The size is not used."))
	case p.State == Damaged:
		// Another one is to come, as ordered.
	case p.State != Recut && k.looksTurned(m, p.Ordered):
		k.say(note.At, problem.Caution, words.Say("{panel} looks turned: {ordered} was ordered, and it is noted as {noted}.",
			words.Name("panel", k.nameOf(p)), words.Of("ordered", p.Ordered), words.Of("noted", m)),
			words.Say("Measure first along WX, then along XY. The size is not used until then."))
	default:
		p.Used.Length = k.believed(note, p, true, m.Length, p.Ordered.Length)
		p.Used.Width = k.believed(note, p, false, m.Width, p.Ordered.Width)
	}
}

// In is the size as it is said, with what is not known left out.
func (s Size) In(style words.Style) string {
	switch {
	case s == (Size{}):
		return ""
	case s.Width == 0:
		return style.Say("{length} long", words.Length("length", s.Length))
	case s.Length == 0:
		return style.Say("{width} wide", words.Length("width", s.Width))
	}
	return style.Notation.Length(s.Length) + " × " + style.Notation.Length(s.Width)
}

// looksTurned tells whether length and width seem to be swapped: turned, the
// panel is as ordered and as read it is not; or turned it is nearly so, to a
// fiftieth, and as read past believing.
func (k *checking) looksTurned(m, ordered Size) bool {
	turned := Size{ordered.Width, ordered.Length}
	exactly := func(a, b measure.Length) bool { return (a - b).Abs() <= k.limit }
	nearly := func(a, b measure.Length) bool { return (a - b).Abs() <= max(k.limit, b/50) }
	if m.Length > 0 && m.Width > 0 && fits(m, turned, exactly) && !fits(m, ordered, exactly) {
		return true
	}
	return fits(m, turned, nearly) && !fits(m, ordered, isPossible)
}

func isPossible(a, b measure.Length) bool { return (a - b).Abs() <= b/tenth }

// fits tells whether what is measured of a size is near another.
func fits(m, other Size, near func(a, b measure.Length) bool) bool {
	return (m.Length == 0 || near(m.Length, other.Length)) && (m.Width == 0 || near(m.Width, other.Width))
}

// believed is a measured length, or a width, if it is to be used, else 0 with a
// question.
func (k *checking) believed(note Note, p *Panel, long bool, m, ordered measure.Length) measure.Length {
	if m == 0 {
		return 0
	}
	switch {
	case note.State == Recut && (m < ordered/2 || m > 2*ordered):
		k.doubt(note, p, long, m, ordered, words.Text{}, words.Say("Check the number and its unit. Less than half and more than double is not used."))
		return 0
	case note.State != Recut && !isPossible(m, ordered):
		k.doubt(note, p, long, m, ordered, words.Say("That is more than a tenth off, and is not used."),
			words.Say("Measure it again. If it was cut to that size on purpose, mark it re-cut."))
		return 0
	case (m - ordered).Abs() <= k.mark/2:
		return ordered
	}
	return m
}

// doubt asks about a measured length, or a width.
func (k *checking) doubt(note Note, p *Panel, long bool, m, ordered measure.Length, why, do words.Text) {
	panel, noted, was := words.Name("panel", k.nameOf(p)), words.Amount("noted", m), words.Length("ordered", ordered)
	at, what := "/width", words.Say("{panel} is noted as {noted} wide; {ordered} was ordered.", panel, noted, was)
	if long {
		at, what = "/length", words.Say("{panel} is noted as {noted} long; {ordered} was ordered.", panel, noted, was)
	}
	k.say(note.At+at, problem.Caution, words.Sentences(what, why), do)
}

// nameOf is the label of a panel, or the name of the span it comes in.
func (k *checking) nameOf(p *Panel) string { return k.called(k.Ordered.Index(p.Panel)) }
