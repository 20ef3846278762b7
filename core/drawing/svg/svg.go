// Package svg writes a drawing as SVG 1.1: one millimetre of the room is one
// user unit. The file stands alone, runs no script and carries no style sheet:
// colours are presentation attributes, which a page's own style may override
// by class ("cw-wall", "cw-panel", …). Attributes stand in single quotation
// marks, which XML allows as well and JSON need not escape.
package svg

import (
	"strconv"
	"strings"

	"ceilingwright/core/drawing"
	"ceilingwright/core/measure"
)

// style is the plain look of a part, in SVG attributes; it prints in grey. What
// it does not say is inherited from the root: letters in ink, lines of the
// drawing's own width.
var style = [...]string{
	drawing.Wall:      ` fill='none' stroke='#2a2926'`,
	drawing.Box:       ` fill='none' stroke='#2c5c86'`,
	drawing.Panel:     ` fill='#f4f4f2' stroke='#6d675c'`,
	drawing.FirstUp:   ` fill='#dde6ee' stroke='#6d675c'`,
	drawing.Seam:      ` fill='none' stroke='#6d675c'`,
	drawing.Centre:    ` fill='none' stroke='#6d675c'`,
	drawing.Fixture:   ` fill='#fff' stroke='#2a2926'`,
	drawing.Dimension: ` fill='none' stroke='#6d675c'`,
	drawing.Tick:      ` fill='none' stroke='#2c5c86'`,
	drawing.Object:    ` fill='#fff' stroke='#2a2926'`,
	drawing.Loose:     ` fill='none' stroke='#2a2926'`,
	drawing.Station:   ` fill='none' stroke='#2c5c86'`,
	drawing.Deck:      ` fill='#eceae4' stroke='#6d675c'`,
	drawing.Route:     ` fill='none' stroke='#2c5c86'`,
	drawing.Square:    ` fill='none' stroke='#6d675c'`,
	drawing.Stop:      ` fill='none' stroke='#2a2926'`,
	drawing.Blend:     ` fill='none' stroke='#2a2926'`,
	drawing.Work:      ` fill='#b9b4a8' stroke='#2a2926'`,
	drawing.Pressed:   ` fill='#2a2926' stroke='#2a2926'`,
	drawing.Drying:    ` fill='none' stroke='#6d675c'`,
	drawing.Rest:      ` fill='#eceae4' stroke='none'`,
	drawing.Standing:  ` fill='#d2cdc1' fill-opacity='0.7' stroke='#2a2926'`,
	drawing.Missing:   ` fill='#fff' stroke='#6d675c'`,
	drawing.Damaged:   ` fill='#d2cdc1' stroke='#6d675c'`,
	drawing.Sign:      ` fill='none' stroke='#2a2926'`,
	drawing.Person:    ` fill='none' stroke='#2a2926' stroke-linecap='round' stroke-linejoin='round'`,
	drawing.Frame:     ` fill='none' stroke='#6d675c'`,
	// The rest are texts; as shapes they take the line of a dimension.
	drawing.Order: ` fill='none' stroke='#6d675c'`,
}

// Lines are a thousandth of the drawing wide; walls, the box and centre lines
// differ from that.
const linesAcross = 1000

// Append is Write into buf, for one drawing after another in the same room.
func Append(buf []byte, d *drawing.Drawing) []byte {
	w := writer{buf: buf, origin: d.Min, line: (d.Max.X - d.Min.X) / linesAcross}
	w.raw(`<svg xmlns='http://www.w3.org/2000/svg' role='img' viewBox='0 0 `)
	w.length(d.Max.X - d.Min.X)
	w.raw(" ")
	w.length(d.Max.Y - d.Min.Y)
	w.raw(`' fill='#2a2926' font-family='sans-serif'`)
	w.attribute("stroke-width", w.line)
	w.raw(`><title>`)
	w.escaped(d.Title)
	w.raw(`</title><desc>`)
	w.escaped(d.Caption)
	w.raw(`</desc>`)
	for i := range d.Groups {
		w.group(&d.Groups[i])
	}
	w.raw(`</svg>`)
	return w.buf
}

type writer struct {
	buf    []byte
	origin drawing.Point
	line   measure.Length // the width of a plain line
}

func (w *writer) raw(s string) { w.buf = append(w.buf, s...) }

// length appends l in millimetres to a tenth, trailing zero left out.
func (w *writer) length(l measure.Length) {
	tenths := int64(l.ToMark(measure.Millimetre/10) / (measure.Millimetre / 10))
	if tenths < 0 {
		w.raw("-")
		tenths = -tenths
	}
	w.buf = strconv.AppendInt(w.buf, tenths/10, 10)
	if tenths%10 != 0 {
		w.buf = append(w.buf, '.', byte('0'+tenths%10))
	}
}

func (w *writer) attribute(name string, l measure.Length) {
	w.raw(" ")
	w.raw(name)
	w.raw(`='`)
	w.length(l)
	w.raw(`'`)
}

func (w *writer) x(name string, p drawing.Point) { w.attribute(name, p.X-w.origin.X) }
func (w *writer) y(name string, p drawing.Point) { w.attribute(name, p.Y-w.origin.Y) }

// escaped appends text safe in XML content and in quoted attributes. Control
// characters, which XML cannot hold, are left out.
func (w *writer) escaped(s string) {
	if !strings.ContainsFunc(s, needsCare) {
		w.raw(s)
		return
	}
	for _, r := range s {
		switch {
		case r == '&':
			w.raw("&amp;")
		case r == '<':
			w.raw("&lt;")
		case r == '>':
			w.raw("&gt;")
		case r == '\'':
			w.raw("&#39;")
		case r < ' ' || r == 0xFFFE || r == 0xFFFF:
		default:
			w.raw(string(r))
		}
	}
}

// needsCare tells whether a character cannot stand in XML as it is.
func needsCare(r rune) bool {
	switch r {
	case '&', '<', '>', '\'', 0xFFFD, 0xFFFE, 0xFFFF:
		return true
	}
	return r < ' '
}

func (w *writer) group(g *drawing.Group) {
	named := g.Figure != "" || g.Panel != ""
	if named {
		w.raw("<g")
		w.named("data-figure", g.Figure)
		w.named("data-panel", g.Panel)
		w.raw(">")
	}
	for i := range g.Items {
		w.item(&g.Items[i])
	}
	if named {
		w.raw("</g>")
	}
}

func (w *writer) named(name, value string) {
	if value == "" {
		return
	}
	w.raw(" ")
	w.raw(name)
	w.raw(`='`)
	w.escaped(value)
	w.raw(`'`)
}

func (w *writer) item(item *drawing.Item) {
	switch item.Shape {
	case drawing.Line:
		w.raw(`<line`)
		w.x("x1", item.From)
		w.y("y1", item.From)
		w.x("x2", item.To)
		w.y("y2", item.To)
	case drawing.Rect:
		w.rect(item)
	case drawing.Circle:
		w.raw(`<circle`)
		w.x("cx", item.From)
		w.y("cy", item.From)
		w.attribute("r", item.Size)
	case drawing.Ellipse:
		w.raw(`<ellipse`)
		w.x("cx", item.From)
		w.y("cy", item.From)
		w.attribute("rx", (item.To.X - item.From.X).Abs())
		w.attribute("ry", (item.To.Y - item.From.Y).Abs())
	case drawing.Polygon:
		w.raw(`<polygon`)
		w.points(item.Corners)
	case drawing.Path:
		w.raw(`<polyline`)
		w.points(item.Corners)
	case drawing.Text:
		w.text(item)
		return
	}
	w.raw(` class='cw-`)
	w.raw(item.Part.String())
	w.raw(`'`)
	w.raw(style[item.Part])
	w.width(item.Part)
	w.raw(`/>`)
}

// width is the line of a part where it is not the plain one.
func (w *writer) width(part drawing.Part) {
	switch part {
	case drawing.Wall:
		w.attribute("stroke-width", 3*w.line)
	case drawing.Box, drawing.Sign, drawing.Frame:
		w.attribute("stroke-width", 2*w.line)
	case drawing.Person:
		w.attribute("stroke-width", 5*w.line)
	case drawing.Stop:
		w.attribute("stroke-width", 4*w.line)
	case drawing.Centre:
		// Long dash and dot, after ISO 128-2 (from memory).
		w.dashed(14, 3, 2, 3)
	case drawing.Loose, drawing.Missing, drawing.Blend, drawing.Square, drawing.Route, drawing.Drying:
		w.dashed(8, 4)
	}
}

// dashed is a line of dashes and gaps, in widths of a plain line.
func (w *writer) dashed(pattern ...measure.Length) {
	w.raw(` stroke-dasharray='`)
	for i, times := range pattern {
		if i > 0 {
			w.raw(" ")
		}
		w.length(times * w.line)
	}
	w.raw(`'`)
}

func (w *writer) points(corners []drawing.Point) {
	w.raw(` points='`)
	for i, c := range corners {
		if i > 0 {
			w.raw(" ")
		}
		w.length(c.X - w.origin.X)
		w.raw(",")
		w.length(c.Y - w.origin.Y)
	}
	w.raw(`'`)
}

func (w *writer) rect(item *drawing.Item) {
	left, right := min(item.From.X, item.To.X), max(item.From.X, item.To.X)
	top, bottom := min(item.From.Y, item.To.Y), max(item.From.Y, item.To.Y)
	w.raw(`<rect`)
	w.attribute("x", left-w.origin.X)
	w.attribute("y", top-w.origin.Y)
	w.attribute("width", right-left)
	w.attribute("height", bottom-top)
}

func (w *writer) text(item *drawing.Item) {
	w.raw(`<text`)
	w.x("x", item.From)
	w.y("y", item.From)
	w.attribute("font-size", item.Size)
	switch item.Anchor {
	case drawing.Middle:
		w.raw(` text-anchor='middle'`)
	case drawing.End:
		w.raw(` text-anchor='end'`)
	}
	if item.Turned {
		w.raw(` transform='rotate(-90 `)
		w.length(item.From.X - w.origin.X)
		w.raw(" ")
		w.length(item.From.Y - w.origin.Y)
		w.raw(`)'`)
	}
	w.raw(` class='cw-text-`)
	w.raw(item.Part.String())
	w.raw(`'>`)
	w.escaped(item.Words)
	w.raw(`</text>`)
}
