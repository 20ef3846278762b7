package draw

import (
	"strconv"

	"ceilingwright/core/air"
	"ceilingwright/core/days"
	"ceilingwright/core/drawing"
	"ceilingwright/core/job/hazards"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// The curve of the air, in units that are no lengths of the room.
const (
	curveWidth  = 1000 * measure.Millimetre
	curveHeight = 320 * measure.Millimetre
	curveLeft   = 110 * measure.Millimetre
	curveTop    = 30 * measure.Millimetre
	curveFoot   = 100 * measure.Millimetre
	curveLetter = 30 * measure.Millimetre
)

// drawnMoments is how many points the curve is drawn with: the highest of every
// stretch is kept.
const drawnMoments = 400

// namedDays is how many days at most have their names under the curve. A choice.
const namedDays = 6

// airCurve is the share of what is allowed over time, or the level where no
// limit is known.
type airCurve struct {
	drawing.Drawing
	style    words.Style
	room     *hazards.InTheRoom
	from, to int64
	most     float64
	limited  bool
}

// air is the course of the air, with the limit across it and a line at every
// midnight; ok is false where there is none.
func (d *Drawer) air() (n Named, ok bool) {
	c := d.airCurve()
	return Named{ID: "air", Shows: "air", Title: words.Say("Solvent in the air of the room"), draw: func() *drawing.Drawing { return c.draw(d) }}, c.most > 0 && c.to > c.from
}

func (d *Drawer) airCurve() (c airCurve) {
	curve := d.Air.Course.Curve
	if len(curve) == 0 {
		return c
	}
	c = airCurve{style: d.Style, room: &d.Vapours.InTheRoom, limited: d.Air.Course.Share.Known, from: curve[0].Minute / dayMinutes * dayMinutes, to: curve[len(curve)-1].Minute}
	for _, m := range curve {
		c.most = max(c.most, c.of(m))
	}
	if c.limited {
		c.most = max(c.most, 1)
	}
	return c
}

func (c *airCurve) draw(d *Drawer) *drawing.Drawing {
	c.Title = d.title
	c.Caption = words.Say("How much of the solvent is in the air, day by day, with the limit across. A screening figure.").In(d.Style)
	c.Max = drawing.Point{X: curveLeft + curveWidth + curveTop, Y: curveTop + curveHeight + curveFoot}
	c.days()
	c.scale()
	c.curve(d.Air.Course.Curve)
	c.label(drawing.Middle, c.Max.X/2, c.Max.Y-curveLetter/2, c.Title)
	return &c.Drawing
}

const (
	dayMinutes  = 24 * 60
	tickMinutes = 15 // between two points of the curve
)

func (d *airCurve) of(m air.Moment) float64 {
	if d.limited {
		return m.Share
	}
	return m.Level
}

func (d *airCurve) x(minute int64) measure.Length {
	return curveLeft + curveWidth*measure.Length(minute-d.from)/measure.Length(d.to-d.from)
}

// y is where a height stands, to a thousandth of the scale, so that no last bit
// shows.
func (d *airCurve) y(value float64) measure.Length {
	thousandths := measure.Length(float64(value / d.most * 1000))
	return curveTop + curveHeight - curveHeight*thousandths/1000
}

func (d *airCurve) line(part drawing.Part, from, to drawing.Point) {
	d.Put(&drawing.Item{Shape: drawing.Line, Part: part, From: from, To: to})
}

func (d *airCurve) label(anchor drawing.Anchor, x, y measure.Length, text string) {
	d.Put(&drawing.Item{Shape: drawing.Text, Part: drawing.Label, Anchor: anchor, From: drawing.Point{X: x, Y: y}, Size: curveLetter, Words: text})
}

// days are the lines at midnight, with the dates where there are some.
func (d *airCurve) days() {
	d.Begin("", "")
	count := (d.to-d.from)/dayMinutes + 1
	each := (count + namedDays - 1) / namedDays
	bottom := curveTop + curveHeight
	for i := range count {
		minute := d.from + i*dayMinutes
		d.line(drawing.Dimension, drawing.Point{X: d.x(minute), Y: curveTop}, drawing.Point{X: d.x(minute), Y: bottom})
		if i%each != 0 || d.x(minute) > curveLeft+curveWidth-5*curveLetter {
			continue
		}
		name := words.Say("day {n}", words.Count("n", minute/dayMinutes+1)).In(d.style)
		if midnight := d.room.Midnight; midnight != 0 {
			name = (midnight + days.Moment(minute)).Date().In(d.style)
		}
		d.label(drawing.Start, d.x(minute)+curveLetter/3, bottom+curveLetter+curveLetter/2, name)
	}
	d.line(drawing.Wall, drawing.Point{X: curveLeft, Y: bottom}, drawing.Point{X: curveLeft + curveWidth, Y: bottom})
}

// scale is the limit across the curve, and how high the top is.
func (d *airCurve) scale() {
	d.Begin("air.peak", "")
	if d.limited {
		y := d.y(1)
		d.line(drawing.Drying, drawing.Point{X: curveLeft, Y: y}, drawing.Point{X: curveLeft + curveWidth, Y: y})
		d.label(drawing.End, curveLeft-curveLetter/2, y+curveLetter/3, words.Say("limit").In(d.style))
		if d.most > 1.15 {
			d.label(drawing.End, curveLeft-curveLetter/2, curveTop+curveLetter/3, d.style.Notation.Number(measure.NumberFromFraction(int64(float64(d.most*10)+0.5), 10), 1)+" ×")
		}
		return
	}
	d.label(drawing.End, curveLeft-curveLetter/2, curveTop+curveLetter/3, strconv.FormatInt(int64(d.most), 10))
}

// curve is the line itself; of every stretch the highest point.
func (d *airCurve) curve(moments []air.Moment) {
	d.Begin("", "")
	stretch := (len(moments) + drawnMoments - 1) / drawnMoments
	item := drawing.Item{Shape: drawing.Path, Part: drawing.Box, Corners: []drawing.Point{{X: d.x(d.from), Y: d.y(0)}, {X: d.x(max(d.from, moments[0].Minute-tickMinutes)), Y: d.y(0)}}}
	for i := 0; i < len(moments); i += stretch {
		best := moments[i]
		for _, m := range moments[i:min(i+stretch, len(moments))] {
			if d.of(m) > d.of(best) {
				best = m
			}
		}
		if before := len(item.Corners) - 1; i > 0 && best.Minute-moments[i-1].Minute > dayMinutes/2 {
			// Nothing was in the air meanwhile.
			item.Corners = append(item.Corners, drawing.Point{X: item.Corners[before].X, Y: d.y(0)}, drawing.Point{X: d.x(best.Minute), Y: d.y(0)})
		}
		item.Corners = append(item.Corners, drawing.Point{X: d.x(best.Minute), Y: d.y(d.of(best))})
	}
	d.Put(&item)
}
