package problem

import (
	"errors"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Unread is why what was typed at a place cannot be read.
func Unread(at string, err error) Problem {
	var fault *measure.ParseError
	if !errors.As(err, &fault) {
		return Problem{At: at, Severity: Stop, What: words.Say("This cannot be read."), Do: words.Say("Write it again.")}
	}
	return Problem{At: at, Severity: Stop, What: measured(fault.Reason), Do: measured(fault.Do), Answers: fault.Answers}
}

// measured is a sentence of package measure, which stands below the words.
func measured(said measure.Said) words.Text {
	return words.Filled(said.Sentence, func(name string) words.Value {
		for _, h := range said.Holes {
			switch {
			case h.Name != name:
			case h.Said != nil:
				return measured(*h.Said)
			default:
				return words.Verbatim(h.Text)
			}
		}
		return nil
	})
}
