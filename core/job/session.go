package job

import "ceilingwright/core/plan"

// Session works out one plan after another and keeps of each what the next leaves as
// it is: a changed price works out no survey. The zero Session has kept nothing yet.
type Session struct {
	last *plan.Document
	job  *Job
	// done are the stages that were worked out again the last time, anew those of them
	// that found otherwise than before.
	done, anew Findings
	changed    plan.Parts
}

// Work works out the job of a plan as read, which is kept and not to be changed.
func (s *Session) Work(doc *plan.Document) *Job { return s.through(doc, stages()) }

func (s *Session) through(doc *plan.Document, stages []stage) *Job {
	j := from(doc, len(stages))
	if s.changed = plan.AllParts; s.last != nil {
		s.changed = doc.Changed(s.last)
	}
	s.done, s.anew = 0, 0
	own := &Job{}
	for k := range stages {
		if !doc.Usable {
			break
		}
		if s.job == nil || stages[k].reads&s.changed != 0 || stages[k].after&s.anew != 0 {
			j.do(own, stages, k)
			s.done |= 1 << k
			if s.job == nil || !stages[k].foundSame(k, j, s.job) {
				s.anew |= 1 << k
			}
			continue
		}
		stages[k].hand(j, s.job)
		j.noted[k] = s.job.noted[k]
	}
	j.collect(stages)
	s.last, s.job = doc, j
	return j
}

// Changed are the parts of the plan that are otherwise than they were the time before,
// and what was found otherwise.
func (s *Session) Changed() (plan.Parts, Findings) { return s.changed, s.anew }

// Only is a job that holds of the plan some parts, and of what was found some findings.
func (j *Job) Only(parts plan.Parts, found Findings) *Job {
	only := &Job{Plan: j.Plan.Only(parts)}
	for k, stage := range stages() {
		if found&(1<<k) != 0 {
			stage.hand(only, j)
		}
	}
	return only
}
