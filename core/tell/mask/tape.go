package mask

import (
	"strconv"
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Tape is the tape that bridges every seam, and its rolls.
func Tape(p *page.Page, j *job.Job) {
	t := &j.Tape
	rule, sum := words.Say("Every seam once."), []string{p.Put(t.Seams)}
	add := func(l measure.Length, part words.Text) {
		if l != 0 {
			sum = append(sum, p.Told(part))
		}
	}
	add(t.Floor, words.Say("{length} on the floor", words.Put("length", t.Floor)))
	add(t.Loose, words.Say("{length} round loose pieces", words.Put("length", t.Loose)))
	if t.Outside > 0 {
		rule = words.Say("Every seam once, and round the outside of the mask for each layer.")
		sum = append(sum, strconv.Itoa(t.Hung)+" × "+p.Put(t.Outside))
	}
	if t.Laps > 0 {
		rule = words.Sentences(rule, words.Say("Joins lap."))
		sum = append(sum, p.Put(t.Laps))
	}
	p.Length(page.Hanging, "tape.length", p.Say("tape over the seams"), t.Length, p.Told(rule), strings.Join(sum, " + "), p.Arithmetic())
	if !t.Known {
		return
	}
	p.Count(page.Hanging, "tape.rolls", p.Say("{n?roll of tape|rolls of tape}", words.Count("n", t.Rolls.Count)), t.Rolls.Count, "",
		p.Say("Length and waste, in whole rolls."),
		p.Say("{length} × (1 + {waste}) ÷ {roll}, rounded up", words.Put("length", t.Length), words.Share("waste", t.Rolls.Waste), words.Put("roll", t.Rolls.Roll)),
		p.Say("Waste of 5 to 10 per cent: common practice, no source."))
}
