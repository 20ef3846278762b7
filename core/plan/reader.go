package plan

import (
	"strings"

	"ceilingwright/core/finish"
	"ceilingwright/core/jsondoc"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/safety"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// reader gathers what reading a plan turns up.
type reader struct {
	language *words.Language // none for ours
	units    Units
	problems []problem.Problem
	readings []Reading
	// unasked is set while blanks are read that no one asks for now.
	unasked bool
	taken   taken
}

// taken is how many entries of a kind were read, in all layers and steps
// together: a bound on each list alone is no bound on a plan of many.
type taken struct{ sizes, notes, up, gaps, parts int }

// mostSizes is how many sizes of panels a whole plan may have: a layer of n
// panels has at most n + 1, and at most as many seams.
const mostSizes = mask.MostPanels + 2*MostLayers

// when reads blanks that are asked for only where asked is true. The others are
// read too, without a remark: they keep what was typed before another choice was
// made, a bare number among them its unit, and their place is hidden.
func (r *reader) when(asked bool, read func()) {
	before := r.unasked
	r.unasked = before || !asked
	read()
	r.unasked = before
}

func (r *reader) report(at string, severity problem.Severity, what, do words.Text) {
	r.tell(problem.Problem{At: at, Severity: severity, What: what, Do: do})
}

func (r *reader) tell(p problem.Problem) {
	if !r.unasked {
		r.problems = append(r.problems, p)
	}
}

// section is one object of the plan with its pointer. A section whose node is
// nil is absent and has no fields.
type section struct {
	*reader
	at   string
	node *jsondoc.Node
}

// section is the object in a field. A field that holds something else is
// reported and read as if it were empty.
func (s section) section(name string) section {
	return s.object(s.at+"/"+name, s.node.Field(name))
}

func (r *reader) object(at string, node *jsondoc.Node) section {
	if node != nil && node.Kind != jsondoc.Object {
		if node.Kind != jsondoc.Null {
			r.report(at, problem.Stop, words.Say("This part of the plan is not in the form it should have."), words.Say("Open the plan again from a copy that was not edited by hand."))
		}
		node = nil
	}
	return section{reader: r, at: at, node: node}
}

// items are the entries of a list field with their pointers; a field that is
// no list is reported.
func (s section) items(name string) []section {
	node := s.node.Field(name)
	if node == nil || node.Kind == jsondoc.Null {
		return nil
	}
	at := s.at + "/" + name
	if node.Kind != jsondoc.List {
		s.report(at, problem.Stop, words.Say("This part of the plan should be a list."), words.Say("Open the plan again from a copy that was not edited by hand."))
		return nil
	}
	items := make([]section, len(node.Items))
	for i, item := range node.Items {
		items[i] = section{reader: s.reader, at: at + problem.Index(i), node: item}
	}
	return items
}

// list is items with a limit: what is above it is left out, and said so. what
// names the entries, in the plural.
func (s section) list(name string, most int, what words.Text) []section {
	items := s.items(name)
	if len(items) > most {
		s.report(s.at+"/"+name, problem.Stop, words.Say("There are {n} {what} here; {most} are read.", words.Count("n", len(items)), words.Of("what", what), words.Count("most", most)), words.Say("Take out those that are not needed."))
		items = items[:most]
	}
	return items
}

// shared is list with a limit on all lists of a kind together, of which so many
// entries were taken already.
func (s section) shared(name string, taken *int, most int, what words.Text) []section {
	items, left := s.items(name), most-*taken
	if len(items) > left {
		s.report(s.at+"/"+name, problem.Stop, words.Say("There are {n} {what} here; {left} more are read in this plan.", words.Count("n", len(items)), words.Of("what", what), words.Count("left", left)), words.Say("Take out those that are not needed."))
		items = items[:left]
	}
	*taken += len(items)
	return items
}

// whole is shared for a list that is read whole or not at all.
func (s section) whole(name string, taken *int, most int, what words.Text) []section {
	items, left := s.items(name), most-*taken
	if len(items) > left {
		s.report(s.at+"/"+name, problem.Stop, words.Say("There are {n} {what} here, and {left} more are read in this plan: none of these.", words.Count("n", len(items)), words.Of("what", what), words.Count("left", left)), words.Say("Give fewer and larger panels."))
		return nil
	}
	*taken += len(items)
	return items
}

// objects are entries that are objects.
func (r *reader) objects(items []section) []section {
	for i, item := range items {
		items[i] = r.object(item.at, item.node)
	}
	return items
}

// some is list for entries that are objects.
func (s section) some(name string, most int, what words.Text) []section {
	return s.objects(s.list(name, most, what))
}

// text is what was typed into a blank, without the white space around it.
func (s section) text(name string) string {
	node := s.node.Field(name)
	if text, ok := textIn(node); ok {
		return text
	}
	return s.typed(s.at+"/"+name, node) // a pointer is made only where it is needed
}

// name is what a thing is called, as the sheet writes it.
func (s section) name(name string) string { return problem.Name(s.text(name)) }

// id is a word by which one part of the plan names another.
func (s section) id(name string) string {
	text := problem.Plain(s.text(name))
	if len(text) > longestID {
		text = strings.ToValidUTF8(text[:longestID], "")
	}
	return text
}

// longestID is longer than any such word, in bytes: it stands in the ids of
// figures.
const longestID = 100

// textIn is what a blank can hold, nothing among it; ok is false for anything
// else.
func textIn(node *jsondoc.Node) (text string, ok bool) {
	switch {
	case node == nil || node.Kind == jsondoc.Null:
		return "", true
	case node.Kind == jsondoc.String || node.Kind == jsondoc.Number:
		return strings.TrimSpace(node.Text), true
	}
	return "", false
}

func (r *reader) typed(at string, node *jsondoc.Node) string {
	if text, ok := textIn(node); ok {
		return text
	}
	r.report(at, problem.Stop, words.Say("A blank of the plan holds something that nobody typed."), words.Say("Fill it in again."))
	return ""
}

// need is what a blank asks for when it is empty: the blank's name in a
// sentence ("the length of the ceiling"). With no name the blank may stay
// empty.
type need = words.Text

// optional is the need of a blank that may stay empty.
var optional need

// length reads a length blank. ok is false where it is empty or cannot be
// read. An empty blank that is needed is a stop.
func (s section) length(name string, need need) (l measure.Length, ok bool) {
	return s.lengthAt(s.at+"/"+name, s.text(name), need)
}

// run is length for a blank where zero makes no sense and that may be many
// lengths together: all edges of a pattern, a frieze through a house, a roll.
func (s section) run(name string, need need) (l measure.Length, ok bool) {
	at := s.at + "/" + name
	l, ok = s.read(measure.Reader{Bare: s.units.Bare, Total: true}, at, s.text(name), need)
	return l, ok && s.isLong(at, l)
}

func (r *reader) lengthAt(at, text string, need need) (measure.Length, bool) {
	return r.read(measure.Reader{Bare: r.units.Bare}, at, text, need)
}

func (r *reader) read(by measure.Reader, at, text string, need need) (measure.Length, bool) {
	if text == "" {
		r.missing(at, need)
		return 0, false
	}
	l, err := by.Parse(text)
	if question, asks := r.doubt(at, text, l, err == nil); asks && !r.unasked {
		r.tell(question)
		return 0, false
	}
	if err != nil {
		r.unreadable(at, err)
		return 0, false
	}
	r.readings = append(r.readings, r.reading(at, text, l))
	return l, true
}

// offset reads a length that may be below zero.
func (s section) offset(name string, need need) (l measure.Length, ok bool) {
	at, text := s.at+"/"+name, s.text(name)
	if text == "" {
		s.missing(at, need)
		return 0, false
	}
	l, err := measure.ParseOffset(text, s.units.Bare)
	if err != nil {
		s.unreadable(at, err)
		return 0, false
	}
	s.readings = append(s.readings, s.reading(at, text, l))
	return l, true
}

// reading notes how a length was understood. A bare number is written again
// with its unit, so that it can be kept when the unit of bare numbers changes.
func (r *reader) reading(at, text string, l measure.Length) Reading {
	reading := Reading{At: at, Length: l}
	if measure.IsBare(text) {
		reading.Written = text + " " + string(r.units.Bare)
	}
	return reading
}

// positive is length for a blank where zero makes no sense.
func (s section) positive(name string, need need) (measure.Length, bool) {
	return s.positiveAt(s.at+"/"+name, s.text(name), need)
}

func (r *reader) positiveAt(at, text string, need need) (measure.Length, bool) {
	l, ok := r.lengthAt(at, text, need)
	return l, ok && r.isLong(at, l)
}

// isLong tells whether a length is above 0, and says so where it is not.
func (r *reader) isLong(at string, l measure.Length) bool {
	if l == 0 {
		r.report(at, problem.Stop, words.Say("This is nothing."), words.Say("Give a length above 0."))
	}
	return l != 0
}

func (r *reader) missing(at string, need need) {
	if !need.IsEmpty() {
		r.report(at, problem.Stop, words.Say("{^blank} is missing.", words.Of("blank", need)), words.Say("Fill in {blank}.", words.Of("blank", need)))
	}
}

// unreadable says at a blank why it cannot be read.
func (r *reader) unreadable(at string, err error) {
	r.tell(problem.Unread(at, err))
}

// number reads a plain number that is not negative.
func (s section) number(name string, need need) (n measure.Number, ok bool) {
	text := s.text(name)
	if text == "" {
		s.missing(s.at+"/"+name, need)
		return n, false
	}
	d, err := measure.ParseNumber(text)
	if err != nil {
		s.unreadable(s.at+"/"+name, err)
		return n, false
	}
	return measure.NumberFromDecimal(d), true
}

// span reads a number or a range of two, the smaller first: "16", "16 to 18",
// "16–18". A single number is both ends.
func (s section) span(name string) (span Span) {
	text := s.text(name)
	if text == "" {
		return span
	}
	from, to, err := measure.ParseSpan(text)
	if err != nil {
		s.unreadable(s.at+"/"+name, err)
		return span
	}
	return Span{From: measure.NumberFromDecimal(from), To: measure.NumberFromDecimal(to), Known: true}
}

// amount reads an amount as a recipe has it, which may be a fraction.
func (s section) amount(name string) (n measure.Number, ok bool) {
	n, err := measure.ParseAmount(s.text(name))
	if err != nil {
		s.unreadable(s.at+"/"+name, err)
	}
	return n, err == nil
}

// positiveAmount is amount for a blank where zero makes no sense.
func (s section) positiveAmount(name string, need need) (measure.Number, bool) {
	if s.text(name) == "" {
		s.missing(s.at+"/"+name, need)
		return measure.Number{}, false
	}
	n, ok := s.amount(name)
	return n, ok && s.isAbove(name, n)
}

// positiveNumber is number for a blank where zero makes no sense.
func (s section) positiveNumber(name string, need need) (measure.Number, bool) {
	n, ok := s.number(name, need)
	return n, ok && s.isAbove(name, n)
}

// isAbove tells whether n is above 0, and says so where it is not.
func (s section) isAbove(name string, n measure.Number) bool {
	if n.IsZero() {
		s.report(s.at+"/"+name, problem.Stop, words.Say("This is nothing."), words.Say("Give a number above 0."))
	}
	return !n.IsZero()
}

// share reads a blank in per cent and answers with the fraction. most is the
// greatest per cent that makes sense there.
func (s section) share(name string, need need, most int64) (measure.Number, bool) {
	n, ok := s.number(name, need)
	if !ok {
		return n, false
	}
	if n.Cmp(measure.NumberFromInt(most)) > 0 {
		s.report(s.at+"/"+name, problem.Stop, words.Say("This is more than {most} per cent.", words.Count("most", most)), words.Say("Give a share from 0 to {most}.", words.Count("most", most)))
		return measure.Number{}, false
	}
	return n.Quo(measure.NumberFromInt(100)), true
}

// shareOrNone is share for a blank that may be empty and then counts as 0,
// which it says.
func (s section) shareOrNone(name string, what words.Text, most int64) (measure.Number, bool) {
	if s.text(name) == "" {
		s.report(s.at+"/"+name, problem.Note, words.Say("No {what} is given: counted as 0.", words.Of("what", what)), words.Say("Fill it in if there is any."))
		return measure.Number{}, true
	}
	return s.share(name, optional, most)
}

// count reads a whole number above 0.
func (s section) count(name string, need need) (int, bool) {
	text := s.text(name)
	if text == "" {
		s.missing(s.at+"/"+name, need)
		return 0, false
	}
	n, err := measure.ParseCount(text)
	if err != nil {
		s.unreadable(s.at+"/"+name, err)
		return 0, false
	}
	if n == 0 {
		s.report(s.at+"/"+name, problem.Stop, words.Say("This is nothing."), words.Say("Give a whole number above 0."))
		return 0, false
	}
	return n, true
}

// money reads a price; an empty blank is no price.
func (s section) money(name string) (price decimal.Decimal, known bool) {
	text := s.text(name)
	if text == "" {
		return price, false
	}
	price, err := measure.ParseMoney(text)
	if err != nil {
		s.unreadable(s.at+"/"+name, err)
		return price, false
	}
	return price, true
}

// word reads a choice among fixed words; the first is taken, and named, where
// the plan says none of them. A first word that is empty means that not saying
// is one of the choices.
func word[W ~string](s section, name string, what words.Text, choices ...W) W {
	text := s.text(name)
	for _, w := range choices {
		if text == string(w) {
			return w
		}
	}
	taken := words.Of("taken", takenFor(string(choices[0])))
	if text == "" {
		s.report(s.at+"/"+name, problem.Note, words.Say("The plan does not say {what}: taken as {taken}.", words.Of("what", what), taken), words.Say("Choose it."))
	} else {
		s.report(s.at+"/"+name, problem.Caution, words.Say("{typed} is not among the choices for {what}: taken as {taken}.", words.Name("typed", problem.Quote(text)), words.Of("what", what), taken), words.Say("Choose again."))
	}
	return choices[0]
}

// takenFor is what is taken where nothing is said, as it is called; signs of units and
// of countries are called what they are.
func takenFor(choice string) words.Text {
	switch choice {
	case "":
		return words.Say("not said")
	case string(ShowFeetInches):
		return words.Say("feet-inches")
	case string(safety.Other):
		return words.Say("other")
	case string(safety.NoLeadTest):
		return words.Say("none")
	case string(setout.OnRoom):
		return words.Say("room")
	case string(mask.CoverSeams):
		return words.Say("seams")
	case string(safety.Platform):
		return words.Say("platform")
	case string(Cornice):
		return words.Say("cornice")
	case string(mask.ByCount):
		return words.Say("count")
	case string(mask.Span):
		return words.Say("span")
	case string(survey.Vent):
		return words.Say("vent")
	case string(survey.Measured):
		return words.Say("measured")
	case string(finish.Base):
		return words.Say("base")
	case string(finish.Surface):
		return words.Say("surface")
	case string(finish.Gold):
		return words.Say("gold")
	case "spread":
		return words.Say("spread")
	}
	return words.Verbatim(choice)
}

// choice is word for a choice that came in after the first plans were written:
// a plan that does not say it means the first, and needs no remark.
func choice[W ~string](s section, name string, what words.Text, choices ...W) W {
	if s.text(name) == "" {
		return choices[0]
	}
	return word(s, name, what, choices...)
}

// setAside ticks off a field, with all that is in it, that is part of a plan but
// that nobody asked for because of another choice.
func (s section) setAside(name string) {
	if s.node == nil {
		return
	}
	for i := range s.node.Fields {
		if f := &s.node.Fields[i]; f.Name == name && !f.Known {
			f.Known = true
			tickOff(f.Value)
		}
	}
}

func tickOff(node *jsondoc.Node) {
	for _, item := range node.Items {
		tickOff(item)
	}
	for i := range node.Fields {
		node.Fields[i].Known = true
		tickOff(node.Fields[i].Value)
	}
}

// strays reports every field below node that no one asked for, and every name
// that stands twice. They stay in the plan: it belongs to whoever wrote it.
func (r *reader) strays(at string, node *jsondoc.Node) {
	if node == nil {
		return
	}
	for i, item := range node.Items {
		if item.HoldsOthers() {
			r.strays(at+problem.Index(i), item)
		}
	}
	for _, f := range node.Fields {
		if len(r.problems) >= mostProblems {
			return
		}
		if f.Known && !f.Repeated && !f.Value.HoldsOthers() {
			continue
		}
		place := at + "/" + pointerStep(f.Name)
		switch {
		case f.Repeated:
			r.report(place, problem.Caution, words.Say("This stands twice in the plan; the last one counts."), words.Say("Take one of them out."))
		case !f.Known:
			r.report(place, problem.Note, words.Say("The plan holds {name}, which is not known here. It is kept and not used.", words.Name("name", problem.Quote(f.Name))), words.Say("Check its spelling if you wrote it."))
		default:
			r.strays(place, f.Value)
		}
	}
}

// mostProblems is where reporting strays stops: a hostile plan must not make a
// sheet many times its own size.
const mostProblems = 200

// pointerStep escapes a name for an RFC 6901 pointer.
func pointerStep(name string) string {
	return strings.ReplaceAll(strings.ReplaceAll(name, "~", "~0"), "/", "~1")
}
