package drawing

import "ceilingwright/core/measure"

// Point is a place on the drawing in true size, x to the right, y down.
type Point struct{ X, Y measure.Length }

// Part is what an item stands for; a writer chooses line, weight and colour by
// it. The words are public: they become class names.
type Part string

// The parts of a drawing.
const (
	Wall      Part = "wall"
	Box       Part = "box"
	Panel     Part = "panel"
	FirstUp   Part = "first"
	Seam      Part = "seam"
	Centre    Part = "centre"
	Fixture   Part = "fixture"
	Dimension Part = "dimension"
	Tick      Part = "tick"
	Corner    Part = "corner"
	Label     Part = "label"
	Order     Part = "order"
)

// Shape is the form of an item.
type Shape uint8

// The forms. A Line runs From–To, a Rect has From and To as opposite corners, a
// Circle stands on From with radius Size, a Text is anchored at From with
// letters Size high.
const (
	Line Shape = iota
	Rect
	Circle
	Text
)

// Anchor is the end of a text that stands at its point.
type Anchor string

// The anchors.
const (
	Middle Anchor = "middle"
	Start  Anchor = "start"
	End    Anchor = "end"
)

// Item is one thing drawn. Words is the text of a Text; Turned turns it a
// quarter anticlockwise, to be read from the right, as ISO 129-1 has it.
type Item struct {
	Shape    Shape
	Part     Part
	From, To Point
	Size     measure.Length
	Words    string
	Anchor   Anchor
	Turned   bool
}

// Group is items that belong together: to a figure (its id), to a panel
// (layer and label), or to nothing.
type Group struct {
	Figure string
	Panel  string
	Items  []Item
}

// Drawing is one drawing. Min and Max are its outer edges; Title names it, with
// its handedness ("First layer, looking up"); Caption says in words what it
// shows, for those who cannot see it.
type Drawing struct {
	Title, Caption string
	Min, Max       Point
	Groups         []Group
}

// Add puts a group on the drawing.
func (d *Drawing) Add(g Group) { d.Groups = append(d.Groups, g) }
