package room

import (
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// measured is what the measuring came to.
func (t *teller) measured() {
	f, s := &t.Room.Found, &t.Sheet.Survey
	s.Form, s.Proved = string(t.Room.Form), string(f.Proof)
	text := t.verdict()
	if usesTape := len(f.Lines) > 0 || f.Closing.Line != ""; usesTape && !f.TapeSaid {
		text = words.Sentences(text, words.Say("The tape is taken as good to {deviation} and read to {mark}, since the plan does not say both.",
			words.Put("deviation", f.Tape.Deviation), words.Put("mark", f.Tape.ReadTo)))
	}
	s.Text, s.Again = t.Told(text), t.again()
	for _, c := range f.Corners {
		s.Corners = append(s.Corners, t.corner(c))
	}
	for _, l := range f.Lines {
		s.Lines = append(s.Lines, t.line(l))
	}
	s.Closing = t.closes()
}

// verdict is what the measuring came to, as sentences.
func (t *teller) verdict() words.Text {
	f := &t.Room.Found
	by := words.Amount("by", f.Closing.Amount.Abs())
	switch f.Verdict {
	case survey.NoDiagonal:
		return words.Say("Taken as square: no diagonal was measured.")
	case survey.OffSquare:
		return words.Say("Not square: a diagonal does not fit the length and the width. The sheet still takes the room as square; do not mark anything by it.")
	case survey.SquareByOne:
		return words.Say("Square as far as the tape can tell, if the walls opposite each other are as long as each other: the diagonal is as long as it should be.")
	case survey.SquareByBoth:
		return words.Say("Square as far as the tape can tell, if the walls opposite each other are as long as each other: the diagonals are both as long as they should be.")
	case survey.TakenAsCircle:
		return words.Say("Taken as a true circle: it was measured across in two directions, and nothing checks the curve between them.")
	case survey.TakenAsEllipse:
		return words.Say("Taken as a true ellipse: it was measured across in two directions, and nothing checks the curve between them.")
	case survey.AsGiven:
		return words.Say("The corners are taken as given; nothing checks them. Measure a few lines from corner to corner and hold them against the drawing.")
	case survey.FarFromClosing:
		return words.Say("Walked round, the walls miss corner W by {by}. That is too much to mark anything by; measure again.", by)
	case survey.ClosesExactly:
		return words.Say("The walls close exactly with these angles.")
	case survey.ClosingSpread:
		return words.Say("Walked round, the walls miss corner W by {by}; that is spread over them in proportion to their length.", by)
	case survey.Unchecked:
		return words.Say("These five lines fix the room, but nothing checks them: a wrong reading would not show. Measure {line} too.", words.Of("line", unread(f.Unread)))
	case survey.PartlyChecked:
		return words.Say("What was read more than once agrees, but nothing checks the other lines: a wrong reading of one of those would not show. Measure {line} too.", words.Of("line", unread(f.Unread)))
	case survey.ReadingsAgree:
		line, limit := words.Of("line", f.Closing.Line), words.AtMost("limit", f.Closing.Limit)
		if f.Closing.Spare == 1 {
			return words.Say("The readings agree as far as the tape can tell: {line} is {by} from what the others make it, and up to {limit} may be the tape.", line, by, limit)
		}
		return words.Say("The readings agree as far as the tape can tell: the one that misses most, {line}, is {by} from what the others make it, and up to {limit} may be the tape.", line, by, limit)
	case survey.ReadUnlike:
		return inDoubt(words.Say("{^lines} {n?was|were} read more than once, and not alike.", words.All("lines", names(f.Again)), words.Count("n", len(f.Again))))
	case survey.ReadingsClash:
		return inDoubt(f.Closing.Said())
	}
	return words.Text{}
}

// inDoubt is a verdict on readings that contradict each other.
func inDoubt(why words.Text) words.Text {
	return words.Sentences(words.Say("The readings contradict each other."), why,
		words.Say("The room on this sheet is the one that fits all of them best; mark nothing by it before they agree."))
}

func unread(line survey.Line) words.Text {
	if line == "" {
		return words.Say("each line twice")
	}
	return line.Named()
}

func names(lines []survey.Line) []words.Text {
	named := make([]words.Text, len(lines))
	for i, line := range lines {
		named[i] = line.Named()
	}
	return named
}

// again is what to measure again.
func (t *teller) again() (list []string) {
	switch t.Room.Found.Verdict {
	case survey.OffSquare:
		return []string{t.Say("The four walls and both diagonals")}
	case survey.FarFromClosing:
		return []string{t.Say("Every wall and every angle")}
	}
	for _, line := range t.Room.Found.Again {
		list = append(list, words.Capital(t.Told(line.Named())))
	}
	return list
}

// closes is how far the readings miss each other.
func (t *teller) closes() string {
	c := t.Room.Found.Closing
	line, off := words.Of("line", c.Line), words.Amount("off", c.Amount.Abs())
	switch {
	case c.Spare <= 0:
		return ""
	case c.Line == "":
		return t.Say("{off} from closing", off)
	case c.Amount > 0:
		return t.Say("{line} {off} longer than the others make it", line, off)
	case c.Amount < 0:
		return t.Say("{line} {off} shorter than the others make it", line, off)
	}
	return t.Say("{line} just as the others make it", line)
}

func (t *teller) corner(c survey.CornerFound) sheet.RoomCorner {
	out := sheet.RoomCorner{Corner: string(c.Corner), Angle: c.Angle().In(t.Style())}
	is := words.Say("Corner {corner} is {angle}", words.Of("corner", c.Corner), words.Of("angle", c.Angle()))
	if c.Deviation > 0 {
		is = words.Say("Corner {corner} is {angle} (± {deviation})", words.Of("corner", c.Corner), words.Of("angle", c.Angle()), words.Of("deviation", survey.Angle(c.Deviation)))
	}
	says := words.Of("is", is)
	out.Out = t.Notation.Length(c.Out.Abs())
	switch by, over := words.Length("out", c.Out.Abs()), words.Length("over", c.Over); {
	case c.Right == 0:
		out.Out, out.Text = "", t.Say("{is}: not meant to be square.", says)
	case out.Out == t.Notation.Length(0):
		out.Out, out.Text = "", t.Say("{is}: square to the mark of the tape.", says)
	case c.Out > 0:
		out.Text = t.Say("{is}: {out} too wide over {over}.", says, by, over)
	default:
		out.Text = t.Say("{is}: {out} too narrow over {over}.", says, by, over)
	}
	return out
}

func (t *teller) line(l survey.LineFound) sheet.RoomLine {
	out := sheet.RoomLine{At: "/room" + l.At, Line: string(l.Line), Read: t.Put(l.Taken()), Adjusted: t.Notation.Length(l.Adjusted), Off: l.Off().In(t.Style())}
	if l.Start > 0 {
		out.Read = t.Say("{taken} ({read} less {start})", words.Put("taken", l.Taken()), words.Put("read", l.Length), words.Put("start", l.Start))
	}
	if l.Check {
		out.Flag = "check"
	}
	return out
}
