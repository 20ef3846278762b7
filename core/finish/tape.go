package finish

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Tape is tape to be bought in rolls of one length. Waste is the share added
// for torn ends, 0.05 to 0.10 by common practice.
type Tape struct {
	Length measure.Length
	Waste  measure.Number
	Roll   measure.Length
}

// Rolls is the tape a length takes. With is the length with the waste and Left
// what the last roll leaves over, both in metres and exact.
type Rolls struct {
	Tape
	With  measure.Number
	Count int64
	Left  measure.Number
}

// shortestRoll keeps the number of rolls within reason.
const shortestRoll = 10 * measure.Centimetre

// RollsFor is length × (1 + waste) ÷ roll length, rounded up.
//
// Refused: a length below 0, which is no blank of the plan, a roll shorter than 10 cm, a waste outside 0 to 1.
func RollsFor(t Tape) (rolls Rolls, problems []problem.Problem, ok bool) {
	rolls = Rolls{Tape: t}
	if t.Length < 0 {
		problems = append(problems, problem.Problem{Severity: problem.Stop,
			What: words.Say("The length to tape comes out below nothing, {length}.", words.Put("length", t.Length)),
			Do:   words.Say("Check the panels it is made from.")})
	}
	if t.Roll < shortestRoll {
		problems = append(problems, problem.Problem{At: "/rollLength", Severity: problem.Stop,
			What: words.Say("A roll of tape is {roll} long.", words.Put("roll", t.Roll)),
			Do:   words.Say("Give the length of tape on one roll, {least} or more.", words.AtLeast("least", shortestRoll))})
	}
	problems = append(problems, upToWhole("/waste", words.Say("waste"), t.Waste)...)
	if len(problems) > 0 {
		return rolls, problems, false
	}
	roll := t.Roll.In(measure.Metre)
	rolls.With = t.Length.In(measure.Metre).Mul(measure.NumberFromInt(1).Add(t.Waste))
	rolls.Count, ok = rolls.With.Quo(roll).Ceil()
	rolls.Left = roll.Mul(measure.NumberFromInt(rolls.Count)).Sub(rolls.With)
	return rolls, nil, ok
}
