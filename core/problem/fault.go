package problem

import "ceilingwright/core/words"

// Fault is a panic as a problem: what names what could not be worked out, "the
// days". The text of the panic goes along, because it is what whoever repairs
// the engine will ask for.
func Fault(what string, panicked any) Problem {
	return Problem{
		Severity: Stop,
		What:     words.Say("The engine could not work out {what}: a fault of its own ({fault}).", words.Name("what", what), words.Name("fault", said(panicked))),
		Do:       words.Say("Save the plan as a file and send it to whoever gave you this page. What you typed is kept."),
	}
}

func said(panicked any) string {
	switch text := panicked.(type) {
	case error:
		return text.Error()
	case string:
		return text
	}
	return "of a kind unknown"
}
