package draw

import (
	"math"

	"ceilingwright/core/drawing"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// largeFactors are how many times too large the skew of a room is drawn, the
// one taken being the largest that moves no corner by more than mostDrawnSkew
// of the longer side.
var largeFactors = [...]float64{200, 100, 50, 20, 10, 5, 2}

const mostDrawnSkew = 0.07

// skew is a room against the rectangle it comes nearest to: by how much each corner is
// off it in millimetres, and how many times too large that is drawn.
type skew struct {
	square [4]survey.Point
	off    [4]direction
	factor float64
}

func skewOf(shape *survey.Shape) skew {
	k := skew{factor: 1}
	k.square, k.off = nearestRectangle(shape.Corners)
	most := 0.0
	for _, d := range k.off {
		most = max(most, math.Sqrt(float64(d.x*d.x)+float64(d.y*d.y)))
	}
	long := max(shape.Length, shape.Width).Millimetres()
	for _, f := range largeFactors {
		if most*f <= mostDrawnSkew*long {
			k.factor = f
			break
		}
	}
	return k
}

// drawSkew is a four-cornered room that is not square, with that drawn many
// times too large against the rectangle it comes nearest to: the walls with
// their lengths and what each reading was off, and the corners with their
// angles. It is only a picture; no length can be taken from it.
func (d *Drawer) drawSkew(k skew) *scene {
	s := d.scene(up, plainMargin,
		words.Say("The room against the rectangle it comes nearest to, dashed. How far its corners are off is drawn {times} times too large, so that it can be seen.", words.Count("times", int64(k.factor))))
	s.square(k.square)
	corners := [4]survey.Point{}
	for i := range corners {
		corners[i] = survey.Point{X: k.square[i].X + measure.LengthFromMillimetres(k.off[i].x*k.factor), Y: k.square[i].Y + measure.LengthFromMillimetres(k.off[i].y*k.factor)}
	}
	s.skewed(corners)
	return s
}

// nearestRectangle is the rectangle that lies as the room's middle lines do,
// with its middle on the room's and its sides the means of opposite walls, and
// by how much each corner is off it in millimetres.
func nearestRectangle(corners []survey.Point) (square [4]survey.Point, off [4]direction) {
	var x, y [4]float64
	for i, p := range corners {
		x[i], y[i] = p.X.Millimetres(), p.Y.Millimetres()
	}
	middleX, middleY := (x[0]+x[1]+x[2]+x[3])/4, (y[0]+y[1]+y[2]+y[3])/4
	// Half the line from the middle of DA to that of BC, and of AB to CD.
	longX, longY := (x[1]+x[2]-x[0]-x[3])/4, (y[1]+y[2]-y[0]-y[3])/4
	wideX, wideY := (x[2]+x[3]-x[0]-x[1])/4, (y[2]+y[3]-y[0]-y[1])/4
	long, wide := math.Sqrt(float64(longX*longX)+float64(longY*longY)), math.Sqrt(float64(wideX*wideX)+float64(wideY*wideY))
	ux, uy := longX/long, longY/long
	for i, sign := range [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		alongX, alongY := float64(sign[0]*long*ux)-float64(sign[1]*wide*uy), float64(sign[0]*long*uy)+float64(sign[1]*wide*ux)
		square[i] = survey.Point{X: measure.LengthFromMillimetres(middleX + alongX), Y: measure.LengthFromMillimetres(middleY + alongY)}
		off[i] = direction{x[i] - middleX - alongX, y[i] - middleY - alongY}
	}
	return square, off
}

// square is the rectangle the room comes nearest to.
func (s *scene) square(corners [4]survey.Point) {
	s.text(drawing.Label, drawing.Middle, drawing.Point{X: s.Min.X/2 + s.Max.X/2, Y: s.Max.Y - s.unit/2}, s.unit, s.Title)
	s.Put(&drawing.Item{Shape: drawing.Polygon, Part: drawing.Square, Corners: s.all(corners)})
}

func (s *scene) all(corners [4]survey.Point) []drawing.Point {
	list := make([]drawing.Point, 4)
	for i, p := range corners {
		list[i] = s.at(p)
	}
	return list
}

// skewed is the room, its walls named by their lengths and readings, its
// corners by their angles.
func (s *scene) skewed(corners [4]survey.Point) {
	u := s.unit
	s.Begin("room.out", "")
	s.Put(&drawing.Item{Shape: drawing.Polygon, Part: drawing.Wall, Corners: s.all(corners)})
	s.Begin("room.closing", "")
	s.line(drawing.Dimension, corners[0], corners[2])
	s.line(drawing.Dimension, corners[1], corners[3])
	for i, w := range s.Room.Shape.Walls() {
		next := (i + 1) % 4
		w.Start, w.End = corners[i], corners[next]
		from, to, out := s.at(w.Start), s.at(w.End), s.outOf(w)
		middle := drawing.Point{X: from.X/2 + to.X/2, Y: from.Y/2 + to.Y/2}
		s.Begin("room.area", "")
		s.beside(drawing.Dimension, beyond(middle, out, u), out, u/3, w.Name.Text()+" "+s.Style.Notation.Length(s.wall(i).Length()))
		if l, ok := s.reading(survey.Line(w.Name)); ok {
			s.beside(drawing.Dimension, middle, direction{-out.x, -out.y}, u+u/3, l.Off().In(s.Style))
		}
	}
	s.Begin("room.out", "")
	for i, c := range s.Room.Found.Corners {
		if i >= 4 {
			break
		}
		p := beyond(s.at(corners[i]), s.outOfCorner(i), u+u/2)
		s.text(drawing.Corner, drawing.Middle, drawing.Point{X: p.X, Y: p.Y + u/3}, u, c.Corner.Text()+" "+c.Angle().In(s.Style))
	}
}

func (s *scene) wall(i int) survey.WallLine { return s.Room.Shape.Walls()[i] }
