package job

import (
	"reflect"

	"ceilingwright/core/job/hazards"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/meeting"
	"ceilingwright/core/job/pricing"
	"ceilingwright/core/job/room"
	"ceilingwright/core/job/schedule"
	"ceilingwright/core/job/setting"
	"ceilingwright/core/job/steps"
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
	after Findings
	work  func(*Job) []problem.Problem
	// hand hands over what the stage finds.
	hand func(to, from *Job)
}

// Findings are what stages find, a bit for each stage in the order of the work.
type Findings uint32

// The findings of the stages.
const (
	TheRoom Findings = 1 << iota
	TheMask
	TheSetting
	ThePlatform
	TheKeys
	TheHanging
	TheTape
	TheMeeting
	TheFinish
	TheClimate
	TheDays
	TheSaves
	ThePrice
	TheRecord
	TheVapours
	TheDeck
	TheAir
	TheRules
)

// stages are the stages in the order of the work, each after those it reads.
func stages() []stage {
	return []stage{
		{"the room", plan.PartUnits | plan.PartRoom, 0,
			func(j *Job) (wrong []problem.Problem) { j.Room, wrong = room.Find(&j.Plan); return }, func(to, from *Job) { to.Room = from.Room }},
		{"the mask", plan.PartUnits | plan.PartMask | plan.PartSeams | plan.PartFinish, 0,
			func(j *Job) (wrong []problem.Problem) { j.Mask, wrong = layers.Take(&j.Plan, j.IsRefused); return }, func(to, from *Job) { to.Mask = from.Mask }},
		{"where the mask goes", plan.PartUnits | plan.PartRoom | plan.PartMask | plan.PartSetting, TheRoom | TheMask,
			func(j *Job) (wrong []problem.Problem) {
				j.Setting, wrong = setting.SetOut(&j.Plan, &j.Room, j.Layers)
				return
			}, func(to, from *Job) { to.Setting = from.Setting }},
		{"where the platform stands", plan.PartUnits | plan.PartMask | plan.PartAccess, TheSetting,
			func(j *Job) (wrong []problem.Problem) {
				j.Platform, wrong = hung.StandPlatform(&j.Plan, &j.Setting)
				return
			}, func(to, from *Job) { to.Platform = from.Platform }},
		{"the panels kept up", plan.PartMask, TheRoom | TheMask | TheSetting | ThePlatform,
			func(j *Job) (wrong []problem.Problem) { j.Keys, wrong = hung.KeepKeys(j.On(&j.Plan)); return }, func(to, from *Job) { to.Keys = from.Keys }},
		{"the hanging", plan.PartUnits | plan.PartMask, TheRoom | TheMask | TheSetting | ThePlatform | TheKeys,
			func(j *Job) (wrong []problem.Problem) { j.Hanging, wrong = hung.Hang(j.On(&j.Plan), j.Keys); return }, func(to, from *Job) { to.Hanging = from.Hanging }},
		{"the tape over the seams", plan.PartMask | plan.PartSeams, TheMask,
			func(j *Job) (wrong []problem.Problem) { j.Tape, wrong = layers.BuyTape(&j.Plan, j.Layers); return }, func(to, from *Job) { to.Tape = from.Tape }},
		{"how the layers meet", plan.PartUnits | plan.PartMask | plan.PartSeams, TheMask | TheSetting | TheHanging,
			func(j *Job) (wrong []problem.Problem) {
				j.Meeting, wrong = meeting.Of(&j.Plan, j.Layers, &j.Setting, &j.Hanging)
				return
			}, func(to, from *Job) { to.Meeting = from.Meeting }},
		{"the finish", plan.PartUnits | plan.PartRoom | plan.PartMask | plan.PartSeams | plan.PartFinish | plan.PartDays, TheRoom | TheMask | TheSetting | TheHanging,
			func(j *Job) (wrong []problem.Problem) { j.Found, wrong = steps.WorkOut(&j.Plan, &j.Surface); return }, func(to, from *Job) { to.Found = from.Found }},
		{"the climate", plan.PartUnits | plan.PartFinish, TheFinish,
			func(j *Job) (wrong []problem.Problem) { j.Judged, wrong = steps.JudgeClimate(&j.Plan); return }, func(to, from *Job) { to.Judged = from.Judged }},
		{"when the work is done", plan.PartUnits | plan.PartMask | plan.PartSeams | plan.PartFinish | plan.PartDays | plan.PartPaid, TheRoom | TheMask | TheKeys | TheHanging | TheTape | TheFinish | TheClimate,
			func(j *Job) (wrong []problem.Problem) {
				j.Days, wrong = schedule.Of(&j.Plan, &j.Surface, &j.Found)
				return
			}, func(to, from *Job) { to.Days = from.Days }},
		{"what else would save days", plan.PartUnits | plan.PartMask | plan.PartSeams | plan.PartFinish | plan.PartDays, TheRoom | TheMask | TheSetting | TheKeys | TheHanging | TheTape | TheFinish | TheClimate | TheDays,
			func(j *Job) []problem.Problem {
				j.Saves = schedule.TryOtherwise(&j.Plan, &j.Surface, &j.Found, &j.Days)
				return nil
			}, func(to, from *Job) { to.Saves = from.Saves }},
		{"the price", plan.AllParts, TheRoom | TheMask | TheSetting | ThePlatform | TheKeys | TheHanging | TheTape | TheFinish | TheClimate | TheDays,
			func(j *Job) (wrong []problem.Problem) {
				j.Price, wrong = pricing.Of(j.given(), j.IsRefused)
				j.WhatIfs = j.tryOtherwise()
				return wrong
			}, func(to, from *Job) { to.Price, to.WhatIfs = from.Price, from.WhatIfs }},
		{"the record", plan.PartUnits | plan.PartMask | plan.PartFinish | plan.PartPlace, TheMask | TheFinish,
			func(j *Job) []problem.Problem { j.Record = recordOf(&j.Plan); return nil }, func(to, from *Job) { to.Record = from.Record }},
		{"what is given off", plan.PartRoom | plan.PartFinish | plan.PartDays | plan.PartQuote | plan.PartAir, TheRoom | TheFinish | TheDays,
			func(j *Job) []problem.Problem {
				j.Vapours = hazards.FindVapours(&j.Plan, j.Room.Air, &j.Finish, &j.Days.Scheduled)
				return nil
			}, func(to, from *Job) { to.Vapours = from.Vapours }},
		{"the platform to ask for", plan.PartUnits | plan.PartPlace | plan.PartRoom | plan.PartMask | plan.PartFinish | plan.PartDays | plan.PartQuote | plan.PartAccess, TheRoom | TheMask | TheSetting | ThePlatform | TheHanging | TheFinish | TheDays | TheVapours,
			func(j *Job) (wrong []problem.Problem) {
				if j.Safety, wrong = hazards.FindPlatform(&j.Plan, &j.Days.Scheduled, &j.Vapours); j.Safety.Checked {
					var stands []problem.Problem
					j.Standing, stands = hung.Stand(j.On(&j.Plan), &j.Hanging, max(j.Safety.Facts.LeastBase(), j.Safety.Deck.Base))
					wrong = append(wrong, stands...)
				}
				return wrong
			}, func(to, from *Job) { to.Safety, to.Standing = from.Safety, from.Standing }},
		{"the air", 0, TheVapours,
			func(j *Job) (wrong []problem.Problem) { j.Air, wrong = hazards.FollowAir(&j.Vapours.Job); return }, func(to, from *Job) { to.Air = from.Air }},
		{"the safety notes", plan.PartQuote, TheVapours | TheDeck | TheAir,
			func(j *Job) []problem.Problem {
				if !j.Plan.Quote.Known {
					j.Rules = hazards.SeeToRules(j.Safety.Facts, &j.Air)
				}
				return nil
			}, func(to, from *Job) { to.Rules = from.Rules }},
	}
}

// noted is what a stage found to be wrong, and the panic that cut it short.
type noted struct {
	problems []problem.Problem
	refused  map[string]bool // blanks with a problem, true where it is a stop
	fault    any
}

// do works a stage out anew, on what the stages before it have found: on own, which is
// of one stage after another, so that none keeps anything of it but what it hands over.
func (j *Job) do(own *Job, stages []stage, which int) {
	s := &stages[which]
	*own = Job{Plan: j.Plan.Only(s.reads), before: append(own.before[:0], j.read.refused)}
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

// foundSame tells whether a stage found the same in two jobs. What comes after it need
// not be worked out again then.
func (s *stage) foundSame(which int, a, b *Job) bool {
	var one, other Job
	s.hand(&one, a)
	s.hand(&other, b)
	return reflect.DeepEqual(&one, &other) && reflect.DeepEqual(a.noted[which].refused, b.noted[which].refused)
}

// guarded works so that a fault takes nothing of the other stages: what comes after goes
// on without what this one would have found.
func (j *Job) guarded(work func(*Job) []problem.Problem) (fault any) {
	defer func() { fault = recover() }()
	j.report(work(j))
	return nil
}

// collect puts together what is wrong: with the plan as read, then stage by stage.
func (j *Job) collect(stages []stage) {
	j.report(j.read.problems)
	for k := range stages {
		j.report(j.noted[k].problems)
		if fault := j.noted[k].fault; fault != nil {
			j.Faults = append(j.Faults, Fault{stages[k].name, fault})
		}
	}
}
