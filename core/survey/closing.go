package survey

import (
	"math"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
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
		f.Verdict, f.Unread = Unchecked, l.unread()
		return
	}
	worst := l.worst(all)
	l.setClosing(worst)
	again := l.readTwice()
	switch agree := !f.Closing.Beyond() && len(again) == 0; {
	case agree && len(all) < len(l.taken):
		f.Verdict, f.Unread = PartlyChecked, l.unread()
		return
	case agree:
		f.Proof, f.Verdict = Proved, ReadingsAgree
		return
	}
	f.Proof, f.Verdict, f.Again = Contradicted, ReadUnlike, again
	// A line whose own readings differ has to be settled before anything else can
	// be told.
	if len(again) == 0 {
		f.Verdict, f.Again = ReadingsClash, l.blame(all, worst)
		f.report(f.Closing.At+"/length", problem.Caution, f.Closing.Said(), l.whatAgain(f.Again))
	}
	l.swaps(all)
}

// Said is the closing error of lines, as a sentence.
func (c Closing) Said() words.Text {
	line, off, limit := words.Of("line", c.Line.Named()), words.Amount("off", c.Amount.Abs()), words.AtMost("limit", c.Limit)
	if c.Amount < 0 {
		return words.Say("{^line} reads {off} shorter than the other readings make it, and no more than {limit} can be the tape.", line, off, limit)
	}
	return words.Say("{^line} reads {off} longer than the other readings make it, and no more than {limit} can be the tape.", line, off, limit)
}

// unread is the first line between corners that was not read, diagonals first; ""
// where each was.
func (l *lines) unread() Line {
	for _, line := range []Line{LineAC, LineBD} {
		if l.times(line) == 0 {
			return line
		}
	}
	for _, p := range pairs[:4] {
		if l.times(p.line) == 0 {
			return p.line
		}
	}
	return ""
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
func (l *lines) readTwice() []Line {
	var again []Line
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
		again = append(again, line)
		what := words.Say("{^line} was read as {short} and as {long}, {apart} apart.",
			words.Of("line", line.Named()), words.Length("short", short), words.Length("long", long), words.Amount("apart", long-short))
		if slant := Slant(long, short); slant < short/8 {
			what = words.Sentences(what, words.Say("A tape whose end is {slant} out of line reads that much too long.", words.Length("slant", slant)))
		}
		l.found.report(l.readings[longest].At+"/length", problem.Caution, what,
			words.Say("Measure {line} again with the tape straight. A tape held at a slant or over a bump reads long, so the shorter reading is nearer the truth.", words.Of("line", line)))
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
func (l *lines) blame(all []miss, worst miss) []Line {
	var again []Line
	for _, m := range all {
		if l.found.Closing.Spare > 1 && m.size < worst.size*0.999 {
			continue
		}
		l.found.Lines[m.reading].Check = true
		if line := l.readings[m.reading].Line; len(again) == 0 || again[len(again)-1] != line {
			again = append(again, line)
		}
	}
	return again
}

// whatAgain is what to do, honestly: which reading is wrong cannot be told for
// certain.
func (l *lines) whatAgain(again []Line) words.Text {
	if l.found.Closing.Spare == 1 && len(again) > 1 {
		return words.Say("Measure all {count} lines again: with one spare reading a mistake shows, but not which reading it is in.", words.Count("count", len(again)))
	}
	if len(again) == 1 {
		return words.Say("Measure it again first: it misses most, though the mistake may be in another. Then take the others anew if it stands.")
	}
	names := make([]words.Text, len(again))
	for i, line := range again {
		names[i] = line.Named()
	}
	return words.Say("Measure these again first: they miss most. {^lines}.", words.All("lines", names))
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
		if other, ok := Swapped(r.Length, needed, within, l.system); ok {
			found++
			l.found.report(r.At+"/length", problem.Note,
				words.Say("{^line} reads {l}. With two digits the other way round it would be {other}, and the readings would agree.",
					words.Of("line", r.Line.Named()), words.Length("l", r.Length), words.Length("other", other)),
				words.Say("See whether the digits were swapped when it was written down."))
		}
	}
}
