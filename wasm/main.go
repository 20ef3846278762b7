//go:build js && wasm

// Command wasm is the engine as a web page loads it. It puts one object on
// the global scope, says that it is there, and stays:
//
//	ceilingwright.compute(planJSON)        → sheetJSON, text in and text out
//	ceilingwright.sheet(planJSON, pages, drawings) → of the sheetJSON what is asked
//	    for, by names and ids with spaces between; pages "" or left out are all,
//	    drawings none
//	ceilingwright.drawing(planJSON, id)    → one drawing of a plan's sheet as SVG text
//	ceilingwright.parseLength(text, unit)  → {nanometres, problem}: a text of
//	    digits or null, and null or {at, severity, what, do}
//	ceilingwright.shopping(planJSON, sign) → the shopping list as CSV; sign, which
//	    may be left out, is "," for a decimal comma
//	ceilingwright.calendar(planJSON, stamp) → the days as iCalendar text; stamp is
//	    the moment of writing in UTC, 20270301T080000Z
//	ceilingwright.starting(what, planJSON) → the steps a finish begins with, or the
//	    next one, as the JSON text of a list of steps
//	ceilingwright.quoted(planJSON, date)   → the plan as a client may have it, as
//	    JSON text; date is the day of the quote, 2027-03-01
//	ceilingwright.otherRoom(madeJSON, planJSON) → what to change in a plan whose
//	    room was changed, as JSON text
//	ceilingwright.speak(languageJSON)      → nothing; answers from now on are in the
//	    language of that list of sentences
//	ceilingwright.version                  → text
//
// The event "ceilingwright:ready" is sent to the document, and bubbles to the
// window, once the calls can be used. A call answers at once, never throws,
// and answers an argument that is not a text with a problem.
//
// The folder holds no arithmetic and no wording: see package bridge.
package main

import (
	"runtime/debug"
	"strings"

	"ceilingwright/wasm/bridge"

	"github.com/hack-pad/safejs"
)

func main() {
	// One sheet leaves about 2 MB of rubbish, and the collector, which has no
	// second thread here, would stop every other key press to clear it. Let it
	// come once in some ten sheets instead; the engine then holds about 23 MB.
	debug.SetGCPercent(400)
	if err := publish(); err != nil {
		// Nobody can be told by a value here: the calls are what failed.
		println("ceilingwright: the calls could not be put on the page:", err.Error())
		return
	}
	// When main returns the calls are gone (Go's glue refuses them).
	select {}
}

// publish puts the calls on the global scope and then says so.
func publish() error {
	calls, err := safejs.ValueOf(map[string]any{"version": bridge.Version})
	if err != nil {
		return err
	}
	for _, call := range [...]struct {
		name   string
		answer func(safejs.Value, []safejs.Value) any
	}{
		{"compute", computeCall}, {"sheet", sheetCall}, {"drawing", drawingCall}, {"parseLength", parseLengthCall}, {"shopping", shoppingCall},
		{"calendar", calendarCall}, {"starting", startingCall}, {"quoted", quotedCall}, {"otherRoom", otherRoomCall}, {"speak", speakCall},
	} {
		answer, err := safejs.FuncOf(call.answer)
		if err != nil {
			return err
		}
		if err := calls.Set(call.name, answer); err != nil {
			return err
		}
	}
	if err := safejs.Global().Set("ceilingwright", calls); err != nil {
		return err
	}
	return announce()
}

// announce sends the ready event. Without a document (the engine under Node,
// in tests) there is nobody to tell.
func announce() error {
	document, err := safejs.Global().Get("document")
	if err != nil || document.Type() != safejs.TypeObject {
		return err
	}
	constructor, err := safejs.Global().Get("Event")
	if err != nil {
		return err
	}
	event, err := constructor.New("ceilingwright:ready", map[string]any{"bubbles": true})
	if err != nil {
		return err
	}
	_, err = document.Call("dispatchEvent", event)
	return err
}

func computeCall(_ safejs.Value, arguments []safejs.Value) any {
	texts, got := textsFrom(arguments, 1)
	if got != "" {
		return bridge.RefuseCompute(got)
	}
	return bridge.Compute(texts[0])
}

func sheetCall(_ safejs.Value, arguments []safejs.Value) any {
	texts, got := textsFrom(arguments, 1)
	if got != "" {
		return bridge.RefuseCompute(got)
	}
	return bridge.Sheet(texts[0], textAt(arguments, 1), textAt(arguments, 2))
}

// drawingCall answers what are no texts with an empty text.
func drawingCall(_ safejs.Value, arguments []safejs.Value) any {
	texts, got := textsFrom(arguments, 2)
	if got != "" {
		return ""
	}
	return bridge.Drawing(texts[0], texts[1])
}

func parseLengthCall(_ safejs.Value, arguments []safejs.Value) any {
	texts, got := textsFrom(arguments, 2)
	if got != "" {
		return lengthAnswer(bridge.RefuseParseLength(got))
	}
	return lengthAnswer(bridge.ParseLength(texts[0], texts[1]))
}

// shoppingCall answers what is no plan in a text with an empty text.
func shoppingCall(_ safejs.Value, arguments []safejs.Value) any {
	texts, got := textsFrom(arguments, 1)
	if got != "" {
		return ""
	}
	return bridge.Shopping(texts[0], textAt(arguments, 1))
}

// calendarCall answers what are no texts with an empty text.
func calendarCall(_ safejs.Value, arguments []safejs.Value) any {
	texts, got := textsFrom(arguments, 2)
	if got != "" {
		return ""
	}
	return bridge.Calendar(texts[0], texts[1])
}

// quotedCall answers what are no texts with an empty text.
func quotedCall(_ safejs.Value, arguments []safejs.Value) any {
	texts, got := textsFrom(arguments, 2)
	if got != "" {
		return ""
	}
	return bridge.Quoted(texts[0], texts[1])
}

// otherRoomCall answers what are no texts with an empty text.
func otherRoomCall(_ safejs.Value, arguments []safejs.Value) any {
	texts, got := textsFrom(arguments, 2)
	if got != "" {
		return ""
	}
	return bridge.OtherRoom(texts[0], texts[1])
}

// speakCall takes what is no text as no language.
func speakCall(_ safejs.Value, arguments []safejs.Value) any {
	texts, _ := textsFrom(arguments, 1)
	bridge.Speak(strings.Join(texts, ""))
	return nil
}

// startingCall answers what are no texts with no steps.
func startingCall(_ safejs.Value, arguments []safejs.Value) any {
	texts, got := textsFrom(arguments, 2)
	if got != "" {
		return bridge.RefuseStarting
	}
	return bridge.Starting(texts[0], texts[1])
}

// textsFrom takes the first count arguments as texts, or names the first one
// that is none.
func textsFrom(arguments []safejs.Value, count int) (texts []string, got string) {
	for i := range count {
		if i >= len(arguments) {
			return nil, "undefined"
		}
		if kind := kindOf(arguments[i]); kind != safejs.TypeString.String() {
			return nil, kind
		}
		text, err := arguments[i].String()
		if err != nil {
			return nil, "a text that could not be read"
		}
		texts = append(texts, text)
	}
	return texts, ""
}

// textAt is an argument that may be left out, "" where it is or is no text.
func textAt(arguments []safejs.Value, i int) string {
	if i >= len(arguments) {
		return ""
	}
	text, _ := textsFrom(arguments[i:], 1)
	return strings.Join(text, "")
}

// kindOf names what JavaScript calls the kind of a value. Go's bridge knows
// no big integers and panics when asked for the kind of one, which would end
// the engine for good.
func kindOf(value safejs.Value) (kind string) {
	defer func() {
		if recover() != nil {
			kind = "a big integer"
		}
	}()
	return value.Type().String()
}

// lengthAnswer lays an answer out as a plain object.
func lengthAnswer(answer bridge.LengthAnswer) map[string]any {
	if answer.Problem != nil {
		return map[string]any{"nanometres": nil, "problem": map[string]any{
			"at":       answer.Problem.At,
			"severity": string(answer.Problem.Severity),
			"what":     answer.Problem.What,
			"do":       answer.Problem.Do,
		}}
	}
	return map[string]any{"nanometres": answer.Nanometres, "problem": nil}
}
