package problem

// Fault is a panic as a problem: what names what could not be worked out, "the
// days". The text of the panic goes along, because it is what whoever repairs
// the engine will ask for.
func Fault(what string, panicked any) Problem {
	return Problem{
		Severity: Stop,
		What:     "The engine could not work out " + what + ": a fault of its own (" + said(panicked) + ").",
		Do:       "Save the plan as a file and send it to whoever gave you this page. What you typed is kept.",
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
