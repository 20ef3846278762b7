// Package job works a plan out, page by page of the work: typed values, and what
// is wrong as data. It says nothing to anybody: package tell puts a job into words,
// package draw into pictures.
package job

import (
	"slices"

	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

// Job is a plan and what was worked out of it so far. A length of 0, an empty list
// and a Known that is false are what could not be worked out.
type Job struct {
	Plan plan.Plan
	// Problems are what is wrong so far, in the order in which it was found.
	Problems []problem.Problem

	Room Room
	Mask
	Setting  Setting
	Platform Platform
	Hanging  Hanging
	Tape     Tape
	Meeting  Meeting
	// Covers are what the steps cover, step by step.
	Covers []Covered

	// blamed are the blanks with a problem, true where it is a stop.
	blamed map[string]bool
}

// From is the job of a plan as read, with nothing worked out yet.
func From(doc plan.Document) *Job {
	j := &Job{Plan: doc.Plan, blamed: make(map[string]bool, len(doc.Problems))}
	j.Report("", doc.Problems)
	return j
}

// Report notes problems, with the pointer prefix in front. What comes after a stop
// at the same blank is left out: a length that cannot be read is not also missing.
func (j *Job) Report(prefix string, list []problem.Problem) {
	for _, p := range problem.Under(prefix, list) {
		if j.blamed[p.At] {
			continue
		}
		j.blamed[p.At] = p.Severity == problem.Stop
		j.Problems = append(j.Problems, p)
	}
}

// IsRefused tells whether there is a stop at a blank, by its pointer.
func (j *Job) IsRefused(at string) bool { return j.blamed[at] }

// Variant is the job with a plan that can be changed without changing this one, and
// with no problem found yet.
func (j *Job) Variant() *Job {
	v := &Job{Plan: j.Plan, Room: j.Room, Mask: Mask{slices.Clone(j.Layers), j.Maskless}, Setting: j.Setting, Platform: j.Platform, Hanging: Hanging{slices.Clone(j.Hanging.Layers)}, blamed: map[string]bool{}}
	v.Plan.Steps = slices.Clone(j.Plan.Steps)
	return v
}
