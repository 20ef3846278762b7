package job

import (
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

// stage is one part of the work. It is done on a job that holds of the plan only the
// parts it reads, and of what is worked out only what the stages it comes after have
// found: what it does not say it reads it cannot see. So what it finds can be kept
// until one of those changes.
type stage struct {
	name  string // what it works out, to follow "could not work out"
	reads plan.Parts
	after findings
	work  func(*Job)
	// hand hands over what the stage finds.
	hand func(to, from *Job)
}

// findings are what stages find, a bit for each stage in the order of the work.
type findings uint32

// The findings of the stages.
const (
	theRoom findings = 1 << iota
	theMask
	theSetting
	thePlatform
	theKeys
	theHanging
	theTape
	theMeeting
	theFinish
	theClimate
	theDays
	theSaves
	thePrice
	theRecord
	theSafety
)

// stages are the stages in the order of the work, each after those it reads.
func stages() []stage {
	return []stage{
		{"the room", plan.PartUnits | plan.PartRoom, 0,
			(*Job).FindRoom, func(to, from *Job) { to.Room = from.Room }},
		{"the mask", plan.PartUnits | plan.PartMask | plan.PartSeams | plan.PartFinish, 0,
			(*Job).TakeMask, func(to, from *Job) { to.Mask = from.Mask }},
		{"where the mask goes", plan.PartUnits | plan.PartRoom | plan.PartMask | plan.PartSetting, theRoom | theMask,
			(*Job).SetOut, func(to, from *Job) { to.Setting = from.Setting }},
		{"where the platform stands", plan.PartUnits | plan.PartMask | plan.PartAccess, theSetting,
			(*Job).StandPlatform, func(to, from *Job) { to.Platform = from.Platform }},
		{"the panels kept up", plan.PartMask, theRoom | theMask | theSetting | thePlatform,
			(*Job).KeepKeys, func(to, from *Job) { to.Keys = from.Keys }},
		{"the hanging", plan.PartUnits | plan.PartMask, theRoom | theMask | theSetting | thePlatform | theKeys,
			(*Job).Hang, func(to, from *Job) { to.Hanging = from.Hanging }},
		{"the tape over the seams", plan.PartMask | plan.PartSeams, theMask,
			(*Job).BuyTape, func(to, from *Job) { to.Tape = from.Tape }},
		{"how the layers meet", plan.PartUnits | plan.PartMask | plan.PartSeams, theMask | theSetting | theHanging,
			(*Job).MeetLayers, func(to, from *Job) { to.Meeting = from.Meeting }},
		{"the finish", plan.PartUnits | plan.PartRoom | plan.PartMask | plan.PartSeams | plan.PartFinish | plan.PartDays, theRoom | theMask | theSetting | theHanging,
			(*Job).WorkOutFinish, func(to, from *Job) {
				to.Covers, to.Hours, to.Gilding, to.Finish = from.Covers, from.Hours, from.Gilding, from.Finish
			}},
		{"the climate", plan.PartUnits | plan.PartFinish, theFinish,
			(*Job).JudgeClimate, func(to, from *Job) { to.Judged = from.Judged }},
		{"when the work is done", plan.PartUnits | plan.PartMask | plan.PartSeams | plan.PartFinish | plan.PartDays | plan.PartPaid, theRoom | theMask | theKeys | theHanging | theTape | theFinish | theClimate,
			(*Job).PlanDays, func(to, from *Job) { to.Days = from.Days }},
		{"what else would save days", plan.PartUnits | plan.PartMask | plan.PartSeams | plan.PartFinish | plan.PartDays, theRoom | theMask | theSetting | theKeys | theHanging | theTape | theFinish | theClimate | theDays,
			(*Job).TryOtherwise, func(to, from *Job) { to.Saves = from.Saves }},
		{"the price", plan.AllParts, theRoom | theMask | theSetting | thePlatform | theKeys | theHanging | theTape | theFinish | theClimate | theDays,
			(*Job).PriceJob, func(to, from *Job) { to.Price, to.WhatIfs = from.Price, from.WhatIfs }},
		{"the record", plan.PartUnits | plan.PartMask | plan.PartFinish | plan.PartPlace, theMask | theFinish,
			(*Job).PutOnRecord, func(to, from *Job) { to.Record = from.Record }},
		{"the safety notes", plan.PartUnits | plan.PartPlace | plan.PartRoom | plan.PartMask | plan.PartFinish | plan.PartDays | plan.PartQuote | plan.PartAir | plan.PartAccess, theRoom | theMask | theSetting | thePlatform | theHanging | theFinish | theDays,
			(*Job).SeeToSafety, func(to, from *Job) { to.Safety, to.Standing = from.Safety, from.Standing }},
	}
}

// noted is what a stage found to be wrong, and the panic that cut it short.
type noted struct {
	problems []problem.Problem
	refused  map[string]bool // blanks with a problem, true where it is a stop
	fault    any
}

// do works a stage out anew, on what the stages before it have found.
func (j *Job) do(stages []stage, which int) {
	s := &stages[which]
	own := &Job{Plan: j.Plan.Only(s.reads), before: []map[string]bool{j.read.refused}}
	for k := range stages[:which] {
		if s.after&(1<<k) != 0 {
			stages[k].hand(own, j)
			own.before = append(own.before, j.noted[k].refused)
		}
	}
	fault := own.guarded(s.work)
	s.hand(j, own)
	j.noted[which] = noted{own.Problems, own.refused, fault}
}

// guarded works so that a fault takes nothing of the other stages: what was found
// stays, and what comes after goes on with it.
func (j *Job) guarded(work func(*Job)) (fault any) {
	defer func() { fault = recover() }()
	work(j)
	return nil
}

// collect puts together what is wrong: with the plan as read, then stage by stage.
func (j *Job) collect(stages []stage) {
	j.Report("", j.read.problems)
	for k := range stages {
		j.Report("", j.noted[k].problems)
		if fault := j.noted[k].fault; fault != nil {
			j.Faults = append(j.Faults, Fault{stages[k].name, fault})
		}
	}
}
