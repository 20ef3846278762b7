package draw

import (
	"ceilingwright/core/drawing"
	"ceilingwright/core/job/hazards"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/words"
)

// The side view in letters' heights: what stands left of the deck, the deck, and what
// stands right of it. The ceiling is sideHigh letters above the floor, or less where the
// deck is long.
const (
	sideLeft  = 10
	sideDeck  = 13
	sideRight = 8
	sideHigh  = 20
	sideEdge  = 3 // above the ceiling and below the floor
)

// usualDeck is how long a deck is drawn whose length is not given. A choice.
const usualDeck = 150 * measure.Centimetre

// side is the platform seen from the side; ok is false where its height is not known.
func (d *Drawer) side() (n Named, ok bool) {
	title := words.Say("Platform, seen from the side")
	if !d.Safety.Deck.IsAsked() {
		title = words.Say("Work from the floor, seen from the side")
	}
	return Named{ID: "platform.side", Shows: "side", Title: title, draw: d.drawSide}, d.Safety.Deck.Kind != ""
}

// elevation is the side view in the making. Heights are above the floor, x from the left
// end of the deck.
type elevation struct {
	*scene
	deck, length measure.Length
	facts        *safety.Job
	asked        *hazards.Deck
}

// drawSide is the platform to ask for to scale: the floor, the deck with its rails, who
// works on it, and the ceiling.
func (d *Drawer) drawSide() *drawing.Drawing {
	e := elevation{facts: &d.Safety.Facts, asked: &d.Safety.Deck, length: usualDeck}
	e.deck = safety.ToNearest.Of(e.asked.Aim.Is, safety.Step(d.Style.Notation))
	if given := e.facts.Gear.DeckLength; given > 0 {
		e.length = given
	}
	ceiling := e.facts.CeilingHeight
	u := max(ceiling/sideHigh, e.length/sideDeck)
	e.scene = &scene{Drawer: d, unit: u}
	e.Title, e.Caption = d.title, e.caption().In(d.Style)
	e.Min = drawing.Point{X: -sideLeft * u, Y: -ceiling - sideEdge*u}
	e.Max = drawing.Point{X: e.length + sideRight*u, Y: sideEdge * u}
	e.text(drawing.Label, drawing.Middle, drawing.Point{X: e.Min.X/2 + e.Max.X/2, Y: e.Max.Y - u/2}, u, e.Title)
	e.level(drawing.Wall, e.Min.X+u, e.Max.X-u, 0)
	e.level(drawing.Wall, e.Min.X+u, e.Max.X-u, ceiling)
	e.upright(e.Min.X+3*u, 0, ceiling, e.Style.Notation.Length(ceiling))
	if e.asked.IsAsked() {
		e.platform()
	}
	e.people()
	return &e.Drawing
}

func (e *elevation) caption() words.Text {
	if !e.asked.IsAsked() {
		return words.Say("The ceiling at {ceiling}, and who works at it from the floor, to scale.", words.Length("ceiling", e.facts.CeilingHeight))
	}
	return words.Say("The deck at {deck} under the ceiling at {ceiling}, with who works on it, to scale.", words.Length("deck", e.deck), words.Length("ceiling", e.facts.CeilingHeight))
}

// place is a place on the drawing, where y points down.
func place(x, height measure.Length) drawing.Point { return drawing.Point{X: x, Y: -height} }

func (e *elevation) level(part drawing.Part, from, to, height measure.Length) {
	e.stroke(part, place(from, height), place(to, height))
}

// upright is a dimension of a height, with its figure left of it.
func (e *elevation) upright(x, from, to measure.Length, said string) {
	e.dimension(x, from, to, "")
	e.beside(drawing.Dimension, place(x, (from+to)/2), direction{x: -1}, e.unit/3, said)
}

func (e *elevation) dimension(x, from, to measure.Length, figure string) {
	e.Begin(figure, "")
	e.stroke(drawing.Dimension, place(x, from), place(x, to))
	for _, end := range [2]measure.Length{from, to} {
		e.level(drawing.Dimension, x-e.unit/3, x+e.unit/3, end)
	}
}

// platform is the deck on its legs, with the rails where there are to be any.
func (e *elevation) platform() {
	u := e.unit
	e.Begin("platform.height", "")
	e.Put(&drawing.Item{Shape: drawing.Rect, Part: drawing.Deck, From: place(0, e.deck), To: place(e.length, max(0, e.deck-u/2))})
	rail := measure.Length(0)
	if e.asked.Kind != safety.HopUp {
		rail = safety.RailHeight
		if given := e.facts.Gear.RailHeight; given > 0 {
			rail = given
		}
	}
	for _, x := range [2]measure.Length{0, e.length} {
		e.stroke(drawing.Frame, place(x, 0), place(x, e.deck+rail))
	}
	e.dimension(e.length+u*3/2, 0, e.deck, "platform.height")
	e.text(drawing.Dimension, drawing.Start, place(e.length+u*2, e.deck/2-u/3), u, e.Style.Notation.Length(e.deck))
	if given := e.facts.Gear.DeckLength; given > 0 && e.deck > 4*u {
		e.text(drawing.Dimension, drawing.Middle, place(e.length/2, e.deck-u*2), u, e.Style.Notation.Length(given))
	}
	if rail == 0 {
		return
	}
	for _, height := range [2]measure.Length{rail, rail / 2} {
		e.level(drawing.Frame, 0, e.length, e.deck+height)
	}
	e.dimension(-u*3/2, e.deck, e.deck+rail, "")
	e.text(drawing.Dimension, drawing.End, place(-2*u, e.deck+rail/2-u/3), u, e.Style.Notation.Length(rail))
}

// people are who works there: the tallest, and the shortest where that is another.
func (e *elevation) people() {
	d := e.asked
	if d.Shortest == d.Tallest {
		e.person(e.length/2, d.Tallest)
		return
	}
	e.person(e.length/4, d.Shortest)
	e.person(e.length*3/4, d.Tallest)
}

// person is somebody who stands on the deck with a hand at the ceiling, or as high as it
// goes with ease. The parts of the height are about those of people: a choice.
func (e *elevation) person(x, tall measure.Length) {
	e.Begin("", "")
	part := func(percent measure.Length) measure.Length { return e.deck + tall*percent/100 }
	limb := func(corners ...drawing.Point) {
		e.Put(&drawing.Item{Shape: drawing.Path, Part: drawing.Person, Corners: corners})
	}
	wide := tall / 100
	e.Put(&drawing.Item{Shape: drawing.Circle, Part: drawing.Person, From: place(x, part(93)), Size: tall * 7 / 100})
	limb(place(x, part(86)), place(x, part(48)))
	limb(place(x-6*wide, part(0)), place(x, part(48)), place(x+6*wide, part(0)))
	hand := min(e.facts.CeilingHeight, e.deck+safety.EasyReach(tall))
	limb(place(x, part(80)), place(x+14*wide, part(90)), place(x+11*wide, hand))
	limb(place(x, part(80)), place(x-10*wide, part(64)), place(x-4*wide, part(54)))
	e.upright(x-13*wide, e.deck, e.deck+tall, e.Style.Notation.Length(tall))
}
