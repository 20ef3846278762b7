package days

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// Entry is one event of a calendar. Days from From's to To's, both counted in,
// where AllDay, else from one moment to the other. Note tells that it keeps
// nobody busy. ID is the same each time the same thing is written.
type Entry struct {
	ID, Name, Text string
	From, To       Moment
	AllDay, Note   bool
}

// ICalendar writes entries as RFC 5545 has it, for any calendar program. Times
// are floating: the clock on the wall, wherever it is read. Each event is called
// by the plan's id and its own, so that the same one replaces itself and two
// jobs never meet. stamp is the moment of writing in UTC, 20270301T080000Z; the
// later it is, the higher is the sequence number, so that a program that has the
// calendar already takes the new one. No METHOD is written: with one it would be
// a message of one person to others, which needs an organizer (RFC 5546, 3.2.1,
// from memory).
//
// ok is false where there are no entries, which the standard has no calendar
// for, or stamp is no such moment.
func ICalendar(plan, title, stamp string, entries []Entry) (text string, ok bool) {
	sequence, ok := sequenceOf(stamp)
	if !ok || len(entries) == 0 {
		return "", false
	}
	var w icsWriter
	w.line("BEGIN:VCALENDAR")
	w.line("VERSION:2.0")
	w.line("PRODID:-//Ceilingwright//Days//EN")
	if title != "" {
		w.line("NAME:" + escaped(title))
	}
	for i := range entries {
		w.event(plan, stamp, sequence, &entries[i])
	}
	w.line("END:VCALENDAR")
	return w.String(), true
}

// sequenceFrom is before any stamp that is written, so that sequence numbers
// stay small: programs keep them in 32 bits.
const sequenceFrom = 2020

// sequenceOf is the minutes from the beginning of 2020 to a stamp.
func sequenceOf(stamp string) (int64, bool) {
	if len(stamp) != 16 || stamp[8] != 'T' || stamp[15] != 'Z' {
		return 0, false
	}
	day, ok := ParseDate(stamp[:4] + "-" + stamp[4:6] + "-" + stamp[6:8])
	clock, ok2 := ParseClock(stamp[9:11] + ":" + stamp[11:13])
	seconds, ok3 := digits(stamp[13:15])
	if !ok || !ok2 || !ok3 || seconds > 59 || clock == Day {
		return 0, false
	}
	from, _ := DateOf(sequenceFrom, 1, 1)
	return max(0, int64(day.At(clock)-from.At(0))), true
}

// icsWriter writes lines folded at 75 octets.
type icsWriter struct{ strings.Builder }

func (w *icsWriter) event(plan, stamp string, sequence int64, e *Entry) {
	w.line("BEGIN:VEVENT")
	w.line("UID:" + name(plan) + "-" + name(e.ID) + "@ceilingwright")
	w.line("DTSTAMP:" + stamp)
	w.line("SEQUENCE:" + strconv.FormatInt(sequence, 10))
	if e.AllDay {
		w.line("DTSTART;VALUE=DATE:" + basic(e.From.Date()))
		w.line("DTEND;VALUE=DATE:" + basic(e.To.Date()+1)) // the end is not counted in
	} else {
		w.line("DTSTART:" + floating(e.From))
		w.line("DTEND:" + floating(e.To))
	}
	w.line("SUMMARY:" + escaped(e.Name))
	if e.Text != "" {
		w.line("DESCRIPTION:" + escaped(e.Text))
	}
	if e.Note {
		w.line("TRANSP:TRANSPARENT")
	}
	w.line("END:VEVENT")
}

// line writes one line, folded between characters: each further one begins with
// a space, which counts.
func (w *icsWriter) line(text string) {
	const most = 75
	room := most
	for len(text) > room {
		cut := room
		for cut > 0 && !utf8.RuneStart(text[cut]) {
			cut--
		}
		w.WriteString(text[:cut])
		w.WriteString("\r\n ")
		text, room = text[cut:], most-1
	}
	w.WriteString(text)
	w.WriteString("\r\n")
}

func basic(d Date) string {
	text := d.String()
	return text[:4] + text[5:7] + text[8:]
}

func floating(m Moment) string {
	clock := m.Clock().String()
	return basic(m.Date()) + "T" + clock[:2] + clock[3:] + "00"
}

// escaped is a text as a value: what separates is escaped, and characters that
// text cannot hold are left out.
func escaped(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r == '\\' || r == ';' || r == ',':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r < ' ' && r != '\t' || r == 0x7F || r == utf8.RuneError:
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// name is an id in letters, digits and points. Any other byte becomes an
// underline and two digits, so that two ids stay two.
func name(id string) string {
	const hex = "0123456789abcdef"
	var b strings.Builder
	for i := range len(id) {
		switch c := id[i]; {
		case c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '.':
			b.WriteByte(c)
		default:
			b.WriteByte('_')
			b.WriteByte(hex[c>>4])
			b.WriteByte(hex[c&15])
		}
	}
	return b.String()
}
