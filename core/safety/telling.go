package safety

import (
	"slices"

	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Told is what the rules have to say of a job. Notes stand stops first, then
// cautions, then notes, each in the order of the table. FindOut is what nobody
// has said yet and would change them, in the order of the table too, one question
// for each blank.
type Told struct {
	Notes   []Note
	FindOut []Question
}

// Question asks for a blank of the plan. At is a pointer to it, Words the
// question, Rules are the ids of the rules that wait for the answer.
type Question struct {
	At    string
	Words words.Text
	Rules []string
}

// Tell reads every rule against the job. Where the country is none of those in
// the table all countries' rules are read, and of those about one subject the
// most severe is kept. Rules that are told together make one note. A rule that
// only asks makes a question and no note; a blank that a stop leads to is not
// asked for a second time.
//
// Of a job of which nothing is known yet only what this sheet is is told.
func Tell(job Job) Told {
	f := factsOf(job)
	var told Told
	fired := f.fired()
	for _, r := range inOrder(fired) {
		switch {
		case !job.begun() && r.id != standing, r.asking(f) && r.with == "":
		case r.with == "" || !told.join(r, f):
			told.Notes = append(told.Notes, r.note(f))
		}
	}
	for _, r := range fired {
		if job.begun() && r.asking(f) {
			told.ask(r, f)
		}
	}
	return told
}

// standing is the rule that says what this sheet is. It is told whatever is
// known.
const standing = "planning-help-only"

// begun: something of the job itself is known, beyond whose rules are read.
func (j *Job) begun() bool {
	return j.CeilingHeight > 0 || j.MaskArea.SquareMetres.Sign() > 0 || len(j.Products) > 0 || len(j.Leaf) > 0 || j.Year > 0 ||
		j.Textured == Yes || j.Lead == LeadFound || j.Asbestos == AsbestosFound || j.Pull == Lifted || j.Access == Ladder ||
		j.Building != Building{} || j.Gear != Gear{}
}

// fired are the rules that apply, in the order of the table, without those of
// which another says more.
func (f *facts) fired() []*rule {
	var all, kept []*rule
	for _, r := range rules() {
		if r.appliesIn(f.Country) && r.fires(f) {
			all = append(all, r)
		}
	}
	for i := range all {
		if !outdone(i, all) {
			kept = append(kept, all[i])
		}
	}
	return kept
}

// inOrder puts the most severe first, each in the order of the table.
func inOrder(fired []*rule) []*rule {
	var list []*rule
	for _, severity := range [...]problem.Severity{problem.Stop, problem.Caution, problem.Note} {
		for _, r := range fired {
			if r.severity == severity {
				list = append(list, r)
			}
		}
	}
	return list
}

// asking: the rule applies since a fact is not known. A stop never only asks.
func (r *rule) asking(f *facts) bool {
	return r.asks != "" && r.severity != problem.Stop && (r.unknown == nil || r.unknown(f))
}

// join tells the rule in the note of those it is told together with; false where
// there is none yet.
func (t *Told) join(r *rule, f *facts) bool {
	i := slices.IndexFunc(t.Notes, func(n Note) bool { return n.with == r.with })
	if i < 0 {
		return false
	}
	t.Notes[i].add(r.note(f), f.filled(r.adds))
	return true
}

// add tells another note in this one: its act in words, and all that lies behind
// it.
func (n *Note) add(other Note, adds words.Text) {
	n.Also = append(n.Also, other.ID)
	n.Words = sentences(n.Words, adds)
	n.Decides = sentences(n.Decides, other.Decides)
	n.Working = sentences(n.Working, other.Working)
	n.Source = sentences(n.Source, other.Source)
	if n.Jurisdiction != other.Jurisdiction {
		n.Jurisdiction = "all"
	}
	for _, figure := range other.Figures {
		if !slices.Contains(n.Figures, figure) {
			n.Figures = append(n.Figures, figure)
		}
	}
	for _, block := range other.Bites {
		if !slices.Contains(n.Bites, block) {
			n.Bites = append(n.Bites, block)
		}
	}
	n.OnDemand = n.OnDemand && other.OnDemand
}

// sentences puts one after the other, unless that was said: one sentence says the same
// wherever it stands.
func sentences(said, more words.Text) words.Text {
	if said.Sentence() == more.Sentence() {
		return said
	}
	return words.Sentences(said, more)
}

// ask puts the rule's question on the list, once for each blank.
func (t *Told) ask(r *rule, f *facts) {
	at := r.place(f)
	if slices.ContainsFunc(t.Notes, func(n Note) bool { return n.Severity == problem.Stop && n.At == at }) {
		return
	}
	if i := slices.IndexFunc(t.FindOut, func(q Question) bool { return q.At == at }); i >= 0 {
		t.FindOut[i].Rules = append(t.FindOut[i].Rules, r.id)
		return
	}
	t.FindOut = append(t.FindOut, Question{At: at, Words: f.filled(r.asks), Rules: []string{r.id}})
}

// place is the blank of the plan that the rule hangs on.
func (r *rule) place(f *facts) string {
	if r.atStep != nil {
		return r.atStep(f)
	}
	return r.at
}
