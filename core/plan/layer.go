package plan

import (
	"strconv"
	"strings"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/register"
	"ceilingwright/core/words"
)

// Layer is one layer as the plan gives it. At is its pointer. Tolerance is how
// far one panel may be off, 0 where the plan does not say. Open is the share of
// the mask that is cut out; OpenKnown tells whether the plan says. Panels are
// named by their own labels everywhere; what no panel of the layer is called is
// for whoever looks for the panel to say.
type Layer struct {
	At        string
	Cut       mask.Cut
	Tolerance measure.Length
	Open      measure.Number
	OpenKnown bool
	Price     Money // of all its panels, or of an area of the mask: see PriceFor
	PriceFor  PriceFor

	Labels string      // the supplier's labels, as typed or pasted
	Panels []PanelNote // what was noted when the delivery was checked
	Pieces []mask.GivenPiece

	Start   string   // the panel to begin with, "" for none chosen
	Up      []string // panels that are up, in the order they went up
	Crooked string   // a panel that is up crooked, "" for none
	Gaps    []GapNote
	Key     string // the panel kept up for the next layer, "" for none chosen

	Register Register
}

// PanelState is what checking the delivery found of a panel.
type PanelState string

// The states of a panel. One that is not noted is unchecked.
const (
	Unchecked PanelState = "unchecked"
	Found     PanelState = "found"
	Missing   PanelState = "missing"
	Damaged   PanelState = "damaged"
	Recut     PanelState = "recut"
)

// PanelNote is what was noted of one panel. Length and Width are 0 where they
// were not measured.
type PanelNote struct {
	At, Panel     string
	State         PanelState
	Length, Width measure.Length
}

// GapNote is a gap as measured at one seam. Known is false where it could not
// be read.
type GapNote struct {
	At, Seam string
	Gap      measure.Length
	Known    bool
}

// Register is the marks measured to see how a layer lies on the one before.
// Tolerance is 0 where the plan does not say.
type Register struct {
	At        string
	Tolerance measure.Length
	Marks     []MarkNote
}

// MarkNote is one mark, from the box's own sides. WantKnown and GotKnown are
// false where one of the two distances is missing.
type MarkNote struct {
	register.Mark
	At                  string
	WantKnown, GotKnown bool
}

// The most entries that are read of a list on a layer: more than any job and
// few enough for a page.
const (
	mostPieces = 200
)

// PriceFor is what the price of a layer's panels is for.
type PriceFor string

// All its panels together, or a square foot or a square metre of the mask.
const (
	ForSet         PriceFor = "set"
	ForSquareFoot  PriceFor = "ft2"
	ForSquareMetre PriceFor = "m2"
)

func readLayer(s section, i int) Layer {
	l := Layer{At: s.at}
	l.Cut.ID, l.Cut.Name = s.id("id"), s.name("name")
	if l.Cut.ID == "" {
		l.Cut.ID = "L" + strconv.Itoa(i+1)
	}
	if l.Cut.Name == "" {
		l.Cut.Name = words.Say("Layer {n}", words.Name("n", strconv.Itoa(i+1))).In(words.Style{Language: s.language})
	}
	l.Cut.Split = word(s, "split", words.Say("how the layer is cut"), mask.ByCount, mask.BySizes, mask.ByGreatest)
	readCut(s, &l.Cut)
	if s.text("gap") != "" {
		l.Cut.Gap, _ = s.length("gap", optional)
	}
	if s.text("panelTolerance") != "" {
		l.Tolerance, _ = s.length("panelTolerance", optional)
	}
	if s.text("open") != "" {
		l.Open, l.OpenKnown = s.share("open", optional, 100)
	}
	l.Price = s.sum("price")
	l.PriceFor = choice(s, "priceFor", words.Say("what the price of the panels is for"), ForSet, ForSquareFoot, ForSquareMetre)
	readDelivery(s, &l)
	readHanging(s, &l)
	l.Register = readRegister(s.section("register"))
	return l
}

func readDelivery(s section, l *Layer) {
	l.Labels = s.text("labels")
	for _, e := range s.objects(s.shared("panels", &s.taken.notes, mask.MostPanels, words.Say("panels"))) {
		l.Panels = append(l.Panels, readPanelNote(e))
	}
	for _, e := range s.some("pieces", mostPieces, words.Say("pieces")) {
		l.Pieces = append(l.Pieces, readPiece(e))
	}
}

func readPanelNote(s section) PanelNote {
	n := PanelNote{At: s.at, Panel: label(s.text("panel")),
		State: choice(s, "state", words.Say("what was found of the panel"), Unchecked, Found, Missing, Damaged, Recut)}
	n.Length, _ = s.positive("length", optional)
	n.Width, _ = s.positive("width", optional)
	return n
}

func readPiece(s section) mask.GivenPiece {
	p := mask.GivenPiece{At: s.at, Name: s.name("name"), Cells: s.text("cells"),
		Kind:  word(s, "kind", words.Say("what kind of piece it is"), mask.Span, mask.Joined, mask.CutLoose),
		Round: choice(s, "shape", words.Say("what shape the piece has"), "rectangular", "round") == "round"}
	s.when(p.Kind == mask.CutLoose, func() {
		p.Length, _ = s.positive("length", optional)
		p.X, p.Y, p.Placed = s.both("fromDA", "fromAB", words.Say("to the middle of the piece"), words.Say("the middle of the mask"))
	})
	s.when(p.Kind == mask.CutLoose && !p.Round, func() { p.Width, _ = s.positive("width", optional) })
	return p
}

// both reads two distances that belong together: both are given or neither,
// which means what otherwise says.
func (s section) both(one, two string, what, otherwise words.Text) (x, y measure.Length, ok bool) {
	x, first := s.length(one, optional)
	y, second := s.length(two, optional)
	if (s.text(one) == "") != (s.text(two) == "") {
		missing := one
		if s.text(one) != "" {
			missing = two
		}
		s.report(s.at+"/"+missing, problem.Stop, words.Say("Only one of the two distances {what} is given.", words.Of("what", what)),
			words.Say("Give both, or leave both empty for {otherwise}.", words.Of("otherwise", otherwise)))
	}
	return x, y, first && second
}

func readHanging(s section, l *Layer) {
	l.Start, l.Crooked, l.Key = label(s.text("start")), label(s.text("crooked")), label(s.text("key"))
	for _, e := range s.shared("up", &s.taken.up, mask.MostPanels, words.Say("panels")) {
		if text := label(s.typed(e.at, e.node)); text != "" {
			l.Up = append(l.Up, text)
		}
	}
	for _, e := range s.objects(s.shared("gaps", &s.taken.gaps, mask.MostPanels, words.Say("gaps"))) {
		n := GapNote{At: e.at, Seam: e.id("seam")}
		n.Gap, n.Known = e.length("gap", optional)
		l.Gaps = append(l.Gaps, n)
	}
}

func readRegister(s section) Register {
	r := Register{At: s.at}
	r.Tolerance, _ = s.length("tolerance", optional)
	for _, e := range s.some("marks", register.MostMarks, words.Say("marks")) {
		m := MarkNote{At: e.at}
		m.Name = e.name("name")
		var known [4]bool
		m.Want.X, known[0] = e.offset("x", optional)
		m.Want.Y, known[1] = e.offset("y", optional)
		m.Got.X, known[2] = e.offset("gotX", optional)
		m.Got.Y, known[3] = e.offset("gotY", optional)
		e.pair("x", "y")
		e.pair("gotX", "gotY")
		m.WantKnown, m.GotKnown = known[0] && known[1], known[2] && known[3]
		r.Marks = append(r.Marks, m)
	}
	return r
}

// pair asks for the other of two distances that say nothing alone.
func (s section) pair(one, two string) {
	missing := one
	switch {
	case (s.text(one) == "") == (s.text(two) == ""):
		return
	case s.text(one) != "":
		missing = two
	}
	s.report(s.at+"/"+missing, problem.Stop, words.Say("Only one of the two distances is given."), words.Say("Write the other."))
}

// label is a panel's own label as the sheet writes it: without spaces and in
// capitals. So is the name of a loose piece in a list of panels.
func label(text string) string {
	return strings.ToUpper(strings.Join(strings.Fields(problem.Name(text)), ""))
}
