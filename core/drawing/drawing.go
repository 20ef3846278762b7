package drawing

import "ceilingwright/core/measure"

// Point is a place on the drawing in true size, x to the right, y down.
type Point struct{ X, Y measure.Length }

// Part is what an item stands for; a writer chooses line, weight and colour by
// it.
type Part uint8

// The parts of a drawing.
const (
	Wall Part = iota
	Box
	Panel
	FirstUp
	Seam
	Centre
	Fixture
	Dimension
	Tick
	Corner
	Label
	Order
	Object   // an obstruction
	Loose    // the line a loose piece is cut along
	Station  // a place of the platform: what is reached from it
	Deck     // the deck of the platform
	Route    // the way of the platform
	Square   // what the room would be if it were square
	Stop     // a line between two sections of gilding
	Blend    // how far size goes past that line
	Work     // work on the chart of the days
	Pressed  // work that the finish moves with
	Drying   // drying and other waits on the chart
	Rest     // a day that is not worked
	Standing // what stays on the floor
	Missing  // a panel that did not come
	Damaged  // one that came damaged
	Sign     // what was found of a panel
	Person   // somebody on the platform
	Frame    // what carries a deck, and its rails
)

var partNames = [...]string{"wall", "box", "panel", "first", "seam", "centre", "fixture", "dimension", "tick", "corner", "label", "order",
	"object", "loose", "station", "deck", "route", "square",
	"stop", "blend", "work", "pressed", "drying", "rest", "standing",
	"missing", "damaged", "sign", "person", "frame"}

// String is the word for a part. The words are public: they become class names.
func (p Part) String() string { return partNames[p] }

// Shape is the form of an item.
type Shape uint8

// The forms. A Line runs From–To, a Rect has From and To as opposite corners, a
// Circle stands on From with radius Size, an Ellipse stands on From and reaches
// as far as To in both directions, a Polygon runs round its Corners, a Path
// along them, a Text is anchored at From with letters Size high.
const (
	Line Shape = iota
	Rect
	Circle
	Ellipse
	Polygon
	Path
	Text
)

// Anchor is the place of a text that stands at its point.
type Anchor uint8

// The anchors.
const (
	Middle Anchor = iota
	Start
	End
)

// Item is one thing drawn. Words is the text of a Text; Turned turns it a
// quarter anticlockwise, to be read from the right, as ISO 129-1 has it.
type Item struct {
	Shape    Shape
	Part     Part
	From, To Point
	Corners  []Point
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

// Begin starts a group, to which Put adds. Groups that an earlier drawing left
// behind the end of the list are taken over with the room for their items.
func (d *Drawing) Begin(figure, panel string) {
	if n := len(d.Groups); n < cap(d.Groups) {
		d.Groups = d.Groups[:n+1]
		d.Groups[n] = Group{Figure: figure, Panel: panel, Items: d.Groups[n].Items[:0]}
		return
	}
	d.Groups = append(d.Groups, Group{Figure: figure, Panel: panel})
}

// Put adds an item to the group begun last. Without one it begins one that
// belongs to nothing.
func (d *Drawing) Put(item *Item) {
	if len(d.Groups) == 0 {
		d.Begin("", "")
	}
	last := &d.Groups[len(d.Groups)-1]
	last.Items = append(last.Items, *item)
}
