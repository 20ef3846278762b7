// Package job works a plan out, page by page of the work: typed values, and what
// is wrong as data. It says nothing to anybody: package tell puts a job into words,
// package draw into pictures.
package job

import (
	"slices"

	"ceilingwright/core/job/hazards"
	"ceilingwright/core/job/pricing"
	"ceilingwright/core/job/schedule"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/job/surface"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

// Job is a plan and what was worked out of it so far. A length of 0, an empty list
// and a Known that is false are what could not be worked out.
type Job struct {
	Plan plan.Plan
	// Problems are what is wrong so far, in the order in which it was found.
	Problems problem.List

	// Surface is what is found of the surface that is worked on.
	surface.Surface
	Vapours hazards.Vapours
	Air     hazards.Air
	Safety  hazards.Safety
	Rules   hazards.Rules
	steps.Found
	Judged steps.Judged
	Days   schedule.Days
	// Saves are what one thing otherwise would save of the days.
	Saves  []schedule.Saved
	Record Record
	Price  pricing.Price
	// WhatIfs are what one thing otherwise would cost.
	WhatIfs []WhatIf

	// Faults are the stages that a panic cut short.
	Faults []Fault

	refused map[string]bool   // blanks with a problem, true where it is a stop
	before  []map[string]bool // the same of what came before
	read    noted             // what is wrong with the plan as read
	noted   []noted           // stage by stage
}

// Fault is a panic that cut a stage of the work short: what it works out, to follow
// "could not work out", and the panic.
type Fault struct {
	Stage string
	Panic any
}

// from is the job of a plan as read, with nothing worked out yet.
func from(doc *plan.Document, stages int) *Job {
	plan := &Job{}
	plan.report(doc.Problems)
	return &Job{Plan: doc.Plan, read: noted{problems: plan.Problems, refused: plan.refused}, noted: make([]noted, stages)}
}

// report notes problems. What comes after a stop at the same blank is left out: a length
// that cannot be read is not also missing.
func (j *Job) report(list []problem.Problem) {
	for _, p := range list {
		if j.IsRefused(p.At) {
			continue
		}
		if j.refused == nil {
			j.refused = map[string]bool{}
		}
		j.refused[p.At] = p.Severity == problem.Stop
		j.Problems = append(j.Problems, p)
	}
}

// IsRefused tells whether there is a stop at a blank, by its pointer.
func (j *Job) IsRefused(at string) bool {
	if j.refused[at] {
		return true
	}
	for _, refused := range j.before {
		if refused[at] {
			return true
		}
	}
	return false
}

// variant is the job with a plan that can be changed without changing this one, and
// with no problem found yet.
func (j *Job) variant() *Job {
	v := &Job{Plan: j.Plan, Surface: j.Surface}
	v.Layers, v.Keys, v.Hanging.Layers = slices.Clone(j.Layers), slices.Clone(j.Keys), slices.Clone(j.Hanging.Layers)
	v.Plan.Steps = slices.Clone(j.Plan.Steps)
	return v
}
