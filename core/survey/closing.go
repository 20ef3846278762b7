package survey

import (
	"math"
	"strconv"
	"strings"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// beyond is how many standard deviations a miss may have before it is a
// mistake: 99.7 of 100 that are none stay inside (the rule of three standard
// deviations, any text on adjustment).
const beyond = 3

// uncheckedBelow is the share below which a reading counts as not checked by
// the others: their lines do not tell its length.
const uncheckedBelow = 1e-6

// miss is how far one reading is from what the others say, in units of its own
// standard deviation.
type miss struct {
	reading int
	share   float64 // of it that the others check
	off     float64 // measured − worked out from the others, in millimetres, to first order
	size    float64 // |off| in standard deviations of off
}

// misses are those of all readings that the others check.
func (l *lines) misses() []miss {
	var all []miss
	for i, o := range l.taken {
		share := l.fit.spare(o)
		if share < uncheckedBelow {
			continue
		}
		off := (o.length - l.fit.corners.step(o.weights).long()) / share
		all = append(all, miss{i, share, off, math.Abs(off) * math.Sqrt(share) / l.sigma})
	}
	return all
}

// judge tells whether the readings agree, and what to measure again where they
// do not.
func (l *lines) judge() {
	f := &l.found
	all := l.misses()
	f.Closing.Spare = len(l.taken) - unknowns
	if f.Closing.Spare <= 0 || len(all) == 0 {
		f.Closing.Spare = 0
		f.Text = "These five lines fix the room, but nothing checks them: a wrong reading would not show. Measure " + l.unread() + " too."
		return
	}
	worst := l.worst(all)
	l.setClosing(worst)
	again := l.readTwice()
	switch agree := !f.Closing.Beyond() && len(again) == 0; {
	case agree && len(all) < len(l.taken):
		f.Text = "What was read more than once agrees, but nothing checks the other lines: a wrong reading of one of those would not show. Measure " + l.unread() + " too."
		return
	case agree:
		f.Proof = Proved
		f.Text = "The readings agree as far as the tape can tell: " + l.said(worst) + " " + l.n.Amount(f.Closing.Amount.Abs()) +
			" from what the others make it, and up to " + l.n.AtMost(f.Closing.Limit) + " may be the tape."
		return
	}
	f.Proof = Contradicted
	f.Again = again
	// A line whose own readings differ has to be settled before anything else can
	// be told.
	reason := listed(again) + " was read more than once, and not alike"
	if len(again) == 0 {
		reason = l.missSaid()
		f.Again = l.blame(all, worst)
		l.report(f.Closing.At+"/length", problem.Caution, l.missSaid()+".", l.whatAgain(f.Again))
	}
	f.Text = "The readings contradict each other. " + reason + ". The room on this sheet is the one that fits all of them best; mark nothing by it before they agree."
	l.swaps(all)
}

// said names the reading that misses most, which with one spare reading none
// does.
func (l *lines) said(m miss) string {
	line := l.readings[m.reading].Line.Text()
	if l.found.Closing.Spare == 1 {
		return line + " is"
	}
	return "the one that misses most, " + line + ", is"
}

// missSaid is the closing error in words, without a full stop.
func (l *lines) missSaid() string {
	c := l.found.Closing
	more := " longer"
	if c.Amount < 0 {
		more = " shorter"
	}
	return nameOf(c.Line) + " reads " + l.n.Amount(c.Amount.Abs()) + more + " than the other readings make it, and no more than " + l.n.AtMost(c.Limit) + " can be the tape"
}

// unread is the first line between corners that was not read, diagonals first.
func (l *lines) unread() string {
	for _, line := range []Line{LineAC, LineBD} {
		if l.times(line) == 0 {
			return "diagonal " + line.Text()
		}
	}
	for _, p := range pairs[:4] {
		if l.times(p.line) == 0 {
			return "wall " + p.line.Text()
		}
	}
	return "each line twice"
}

// worst is the reading that misses most. With one spare reading all miss alike,
// and it is the second diagonal, or else the last that the others check.
func (l *lines) worst(all []miss) miss {
	worst := all[0]
	for _, m := range all {
		if m.size > worst.size {
			worst = m
		}
	}
	if l.found.Closing.Spare > 1 {
		return worst
	}
	for _, m := range all {
		if line := l.readings[m.reading].Line; line == LineBD || l.readings[worst.reading].Line != LineBD {
			worst = m
		}
	}
	return worst
}

// setClosing works the miss out anew from all other readings, where they fix
// the room; to first order where they do not.
func (l *lines) setClosing(m miss) {
	r := l.readings[m.reading]
	off := m.off
	others := make([]observation, 0, len(l.taken)-1)
	others = append(append(others, l.taken[:m.reading]...), l.taken[m.reading+1:]...)
	if f, ok := adjust(l.fit.corners, others); ok {
		off = l.taken[m.reading].length - f.corners.step(l.taken[m.reading].weights).long()
	}
	c := &l.found.Closing
	c.Line, c.At, c.Amount = r.Line, r.At, measure.LengthFromMillimetres(off)
	c.Limit = measure.LengthFromMillimetres(beyond * l.sigma / math.Sqrt(m.share))
}

// readTwice finds lines whose own readings differ by more than the tape can,
// and reports them. The difference of two readings has √2 times the standard
// deviation of one.
func (l *lines) readTwice() []string {
	var again []string
	limit := measure.LengthFromMillimetres(beyond * math.Sqrt2 * l.sigma)
	for _, line := range []Line{LineAB, LineBC, LineCD, LineDA, LineAC, LineBD, LineABCD, LineDABC} {
		shortest, longest := -1, -1
		for i, r := range l.readings {
			if r.Line != line {
				continue
			}
			if shortest < 0 || r.Taken() < l.readings[shortest].Taken() {
				shortest = i
			}
			if longest < 0 || r.Taken() >= l.readings[longest].Taken() {
				longest = i
			}
		}
		if shortest < 0 {
			continue
		}
		long, short := l.readings[longest].Taken(), l.readings[shortest].Taken()
		if long-short <= limit {
			continue
		}
		for i, r := range l.readings {
			l.found.Lines[i].Check = l.found.Lines[i].Check || r.Line == line
		}
		again = append(again, nameOf(line))
		what := nameOf(line) + " was read as " + l.n.Length(short) + " and as " + l.n.Length(long) + ", " + l.n.Amount(long-short) + " apart."
		if slant := Slant(long, short); slant < short/8 {
			what += " A tape whose end is " + l.n.Length(slant) + " out of line reads that much too long."
		}
		l.report(l.readings[longest].At+"/length", problem.Caution, what,
			"Measure "+line.Text()+" again with the tape straight. A tape held at a slant or over a bump reads long, so the shorter reading is nearer the truth.")
	}
	return again
}

// Slant is how far out of line one end of the tape was, where it read long on a
// line that is short: √(long² − short²), to the nearest nanometre.
func Slant(long, short measure.Length) measure.Length {
	a, b := long.Millimetres(), short.Millimetres()
	return measure.LengthFromMillimetres(math.Sqrt(max(0, float64((a-b)*(a+b)))))
}

// blame is what to measure again. With one spare reading a mistake shows but
// not where it is, so it is everything that the others check; with more it is
// the reading that misses most, with those that miss as much.
func (l *lines) blame(all []miss, worst miss) []string {
	var again []string
	for _, m := range all {
		if l.found.Closing.Spare > 1 && m.size < worst.size*0.999 {
			continue
		}
		l.found.Lines[m.reading].Check = true
		if name := nameOf(l.readings[m.reading].Line); len(again) == 0 || again[len(again)-1] != name {
			again = append(again, name)
		}
	}
	return again
}

// whatAgain is what to do, honestly: which reading is wrong cannot be told for
// certain.
func (l *lines) whatAgain(again []string) string {
	if l.found.Closing.Spare == 1 && len(again) > 1 {
		return "Measure all " + strconv.Itoa(len(again)) + " lines again: with one spare reading a mistake shows, but not which reading it is in."
	}
	if len(again) == 1 {
		return "Measure it again first: it misses most, though the mistake may be in another. Then take the others anew if it stands."
	}
	rest := make([]string, len(again))
	for i, name := range again {
		rest[i] = strings.ToLower(name[:1]) + name[1:]
	}
	return "Measure these again first: they miss most. " + capital(listed(rest)) + "."
}

// mostSwaps bounds how many readings are offered for swapped digits.
const mostSwaps = 3

// swaps looks for readings that would agree with the others if two neighbouring
// digits had been written the wrong way round.
func (l *lines) swaps(all []miss) {
	found := 0
	for _, m := range all {
		r := l.readings[m.reading]
		needed := r.Length - measure.LengthFromMillimetres(m.off)
		within := measure.LengthFromMillimetres(beyond * l.sigma / math.Sqrt(m.share))
		if measure.LengthFromMillimetres(m.off).Abs() <= within || found == mostSwaps {
			continue
		}
		if other, ok := Swapped(r.Length, needed, within, l.n); ok {
			found++
			l.report(r.At+"/length", problem.Note,
				nameOf(r.Line)+" reads "+l.n.Length(r.Length)+". With two digits the other way round it would be "+l.n.Length(other)+", and the readings would agree.",
				"See whether the digits were swapped when it was written down.")
		}
	}
}
