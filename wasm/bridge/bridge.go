// Package bridge stands between the page and the engine: text in, text out.
// It does no arithmetic and knows nothing of any browser, so it is tested
// natively; wasm/main.go hands its calls to JavaScript. What the bridge adds
// is one promise: whatever arrives, an answer in the agreed shape goes back.
// A panic in the engine becomes a Problem that asks for the plan to be sent,
// and the next call works as if nothing had happened.
package bridge

import (
	"unsafe"

	"ceilingwright/core"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
	"ceilingwright/core/words"
)

// Version is the engine's own version.
const Version = core.Version

// LengthAnswer is what ParseLength gives back. Nanometres is a whole number
// in decimal digits, or "" when Problem says why the text is no length.
type LengthAnswer struct {
	Nanometres string
	Problem    *sheet.Problem
}

// Compute works out a plan: the JSON text of a Plan in, the JSON text of a
// Sheet out. It never panics: bad text is answered by the engine with
// problems, a fault of the engine with a sheet that holds one problem.
func Compute(plan string) string {
	return sheetOr(func() string {
		sheet := session.Compute([]byte(plan))
		// A sheet is a quarter of a megabyte that nobody writes to any more, so its
		// bytes are taken as the text and not copied.
		return unsafe.String(unsafe.SliceData(sheet), len(sheet))
	})
}

// session keeps what the next plan leaves as it is.
var session core.Session

// Sheet is of Compute what is asked for, with what the plan before leaves as it is kept:
// pages by their names and drawings by their ids, with spaces between; pages "" are all,
// drawings "" none, which are then only listed. It never panics; after a fault nothing is
// kept.
func Sheet(plan, pages, drawings string) string {
	return sheetOr(func() string {
		text, done := []byte(plan), false
		defer forget(&done)
		sheet := session.Sheet(text, pages, drawings)
		done = true
		return unsafe.String(unsafe.SliceData(sheet), len(sheet))
	})
}

// Drawing is one drawing of a plan's sheet as SVG, by its id. It never panics: a
// fault of the engine is answered with "", as is an id that the sheet does not have.
func Drawing(plan, id string) string {
	return textOr(func() string {
		done := false
		defer forget(&done)
		text := session.Drawing([]byte(plan), id)
		done = true
		return text
	})
}

// forget begins with nothing kept where a call was not done.
func forget(done *bool) {
	if !*done {
		session = core.Session{In: session.In}
	}
}

// Speak has all answers from now on in a language: the JSON text of the list of
// sentences, filled in. What is no such list has them in our own.
func Speak(language string) {
	session = core.Session{In: core.In{Language: core.ReadLanguage([]byte(language))}}
}

// ParseLength reads one length as a person writes it. Unit (in ft mm cm m) is
// what a bare number takes. It never panics.
func ParseLength(text, unit string) LengthAnswer {
	return lengthOr(func() LengthAnswer {
		answer := session.ParseLength(text, unit)
		return LengthAnswer{Nanometres: answer.Nanometres, Problem: answer.Problem}
	})
}

// Shopping is the shopping list of a plan as comma-separated values; sign is the
// decimal sign of its numbers, "," or, for anything else, a point. It never
// panics: a fault of the engine is answered with "", which no list is.
func Shopping(plan, sign string) string {
	return textOr(func() string { return string(session.Shopping([]byte(plan), sign == ",")) })
}

// Calendar is the days of a plan as an iCalendar text; stamp is the moment of
// writing in UTC, 20270301T080000Z. It never panics: a fault of the engine is
// answered with "", as is a plan without days.
func Calendar(plan, stamp string) string {
	return textOr(func() string { return string(session.Calendar([]byte(plan), stamp)) })
}

// Quoted is the plan as a client may have it, quoted on a date, 2027-03-01. It
// never panics: a fault of the engine is answered with "", as is a text that is no
// plan.
func Quoted(plan, date string) string {
	return textOr(func() string { return string(session.Quoted([]byte(plan), date)) })
}

// Starting is the steps a finish begins or goes on with, as the JSON text of a
// list of steps; what is a set of steps or a kind of step. It never panics: a
// fault of the engine is answered with an empty list.
func Starting(what, plan string) string {
	steps := textOr(func() string { return string(session.Starting(what, []byte(plan))) })
	if steps == "" {
		return RefuseStarting
	}
	return steps
}

// OtherRoom is what to change in a plan whose room was changed, as JSON text; made
// is the plan as it was made for its room. It never panics: a fault of the engine
// is answered with "".
func OtherRoom(made, plan string) string {
	return textOr(func() string { return string(session.OtherRoom([]byte(made), []byte(plan))) })
}

// RefuseStarting is the answer to a call of starting with an argument that was
// not a text.
const RefuseStarting = "[]"

// RefuseCompute is the answer to a call of compute whose argument was not a
// text; got names what it was, in JavaScript's own word for it.
func RefuseCompute(got string) string {
	return sheetWith(notText("compute", "the plan as JSON text", got))
}

// RefuseParseLength is the answer to a call of parseLength with an argument
// that was not a text.
func RefuseParseLength(got string) LengthAnswer {
	refusal := told(notText("parseLength", "two texts: the length and its unit", got))
	return LengthAnswer{Problem: &refusal}
}

func notText(call, wants, got string) problem.Problem {
	return problem.Problem{
		Severity: problem.Stop,
		What:     words.Say("{call} was called with {got}.", words.Name("call", call), words.Name("got", got)),
		Do:       words.Say("Call {call} with {wants}.", words.Name("call", call), words.Name("wants", wants)),
	}
}

// sheetOr runs compute and answers a panic with a sheet that says so.
func sheetOr(compute func() string) (answer string) {
	defer func() {
		if fault := recover(); fault != nil {
			answer = sheetWith(problem.Fault("this", fault))
		}
	}()
	return compute()
}

// textOr runs write and answers a panic with "".
func textOr(write func() string) (answer string) {
	defer func() {
		if recover() != nil {
			answer = ""
		}
	}()
	return write()
}

// lengthOr runs parse and answers a panic with a problem that says so.
func lengthOr(parse func() LengthAnswer) (answer LengthAnswer) {
	defer func() {
		if fault := recover(); fault != nil {
			refusal := told(problem.Fault("this", fault))
			answer = LengthAnswer{Problem: &refusal}
		}
	}()
	return parse()
}

// sheetWith is a whole sheet that holds nothing but one problem, so that the
// page reads it like any other sheet.
func sheetWith(p problem.Problem) string {
	fault := sheet.Sheet{
		Format:   sheet.Format,
		Version:  Version,
		Problems: []sheet.Problem{told(p)},
	}
	return string(fault.JSON())
}

func told(p problem.Problem) sheet.Problem {
	return sheet.ProblemFrom(p, words.Style{Language: session.Language})
}
