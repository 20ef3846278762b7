package draw

import (
	"strconv"
	"strings"

	"ceilingwright/core/days"
	"ceilingwright/core/drawing"
	"ceilingwright/core/job/schedule"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// The chart of the days, in units that are no lengths of the room: a row for
// each task, with its name above its work; a column for each day.
const (
	chartRow    = 62 * measure.Millimetre
	chartName   = 34 * measure.Millimetre // of a row, above the bar
	chartWidth  = 1000 * measure.Millimetre
	chartHead   = 80 * measure.Millimetre
	chartLetter = 26 * measure.Millimetre
	chartInset  = 8 * measure.Millimetre
	chartHair   = measure.Millimetre
	dateRoom    = 140 * measure.Millimetre
)

// Above readableTasks rows the chart leaves out the rest, which stand in the
// list; above numberedDays only weeks are dated.
const (
	readableTasks = 80
	numberedDays  = 28
	longestName   = 60
)

// chart is the calendar drawn: a bar for work, dark and full where the finish moves
// with it, light and thin where it does not, a dashed line for drying, grey days that are not worked.
type chart struct {
	drawing.Drawing
	*schedule.Days
	style       words.Style
	first, last days.Date
	order       []int
}

// chart is the calendar; ok is false where there is none.
func (d *Drawer) chart() (n Named, ok bool) {
	return Named{ID: "days", Shows: "days", Title: words.Say("The days"), draw: d.drawChart}, d.Days.Dated
}

func (d *Drawer) drawChart() *drawing.Drawing {
	c := chart{Days: &d.Days, style: d.Style, order: d.Days.InOrder()}
	c.first, c.last = c.Schedule.Span()
	c.Title = d.title
	caption := words.Say("Each task with the days on which it is worked at. Full dark bars are those the finish moves with, thin light ones have time to spare, dashed lines drying and waiting, grey columns days off.")
	if len(c.order) > readableTasks {
		caption = words.Sentences(caption, words.Say("The first {n} tasks are drawn.", words.Count("n", readableTasks)))
		c.order = c.order[:readableTasks]
	}
	c.Caption = caption.In(d.Style)
	c.draw()
	return &c.Drawing
}

func (d *chart) draw() {
	bottom := chartHead + measure.Length(len(d.order))*chartRow + chartInset
	d.Max = drawing.Point{X: chartWidth, Y: bottom + 2*chartLetter}
	d.label(drawing.Middle, chartWidth/2, d.Max.Y-chartInset, d.Title)
	d.columns()
	critical := d.Schedule.Critical()
	for row, task := range d.order {
		d.row(row, task, critical[task])
	}
}

// x is where a moment stands on the chart. Nine tenths of a day's column are its
// hours of work; what lies before and after has a twentieth each.
func (d *chart) x(m days.Moment) measure.Length {
	h := &d.Schedule.Hours
	clock, from, to := int64(m.Clock()), int64(h.From), int64(h.To)
	var share int64 // thousandths of the column
	switch {
	case clock < from:
		share = 50 * clock / from
	case clock <= to:
		share = 50 + 900*(clock-from)/(to-from)
	default:
		share = 950 + 50*(clock-to)/(days.Day-to)
	}
	return chartWidth * measure.Length(int64(m.Date()-d.first)*1000+share) / measure.Length(int64(d.last-d.first+1)*1000)
}

// columns are the days, grey where nobody works: a line and a date at the
// beginning of each week, and the number of each day where there is room.
func (d *chart) columns() {
	count := int(d.last-d.first) + 1
	d.Begin("", "")
	bottom := d.Max.Y - 2*chartLetter - chartInset
	for i := range count {
		day := d.first + days.Date(i)
		left, right := d.x(day.At(0)), d.x((day + 1).At(0))
		if !d.Schedule.Hours.Works(day) {
			d.rest(left, chartHead, right, bottom)
		}
		if count <= numberedDays {
			_, _, number := day.Parts()
			d.label(drawing.Middle, (left+right)/2, chartHead-chartInset, strconv.Itoa(number))
		}
	}
	for row := 1; row < len(d.order); row++ {
		y := chartHead + measure.Length(row)*chartRow
		d.rest(0, y, d.Max.X, y+chartHair)
	}
	dated := measure.Length(0) // where the last date ends
	for i := range count {
		day := d.first + days.Date(i)
		if i > 0 && day.Weekday() != days.Monday {
			continue
		}
		left := d.x(day.At(0))
		d.Put(&drawing.Item{Shape: drawing.Line, Part: drawing.Dimension, From: drawing.Point{X: left, Y: chartHead - chartInset}, To: drawing.Point{X: left, Y: bottom}})
		next := d.x((day + 7 - days.Date(day.Weekday())).At(0)) // the Monday after
		if left < dated || i > 0 && left+dateRoom > d.Max.X || i == 0 && next-left < dateRoom && next < d.Max.X {
			continue
		}
		dated = left + dateRoom
		d.label(drawing.Start, left, chartHead-chartInset-chartLetter-chartInset/2, day.In(d.style))
	}
}

// rest is a grey rectangle.
func (d *chart) rest(left, top, right, bottom measure.Length) {
	d.Put(&drawing.Item{Shape: drawing.Rect, Part: drawing.Rest, From: drawing.Point{X: left, Y: top}, To: drawing.Point{X: right, Y: bottom}})
}

func (d *chart) label(anchor drawing.Anchor, x, y measure.Length, text string) {
	d.Put(&drawing.Item{Shape: drawing.Text, Part: drawing.Label, Anchor: anchor, From: drawing.Point{X: x, Y: y}, Size: chartLetter, Words: text})
}

// row is one task: its name, what it waits for, and its work.
func (d *chart) row(row, task int, critical bool) {
	s, one := &d.Schedule, &d.Schedule.Placed[task]
	head := chartHead + measure.Length(row)*chartRow
	top, bottom := head+chartName, head+chartRow-chartInset
	part := drawing.Work
	thinner := chartInset / 2
	if critical {
		part, thinner = drawing.Pressed, 0
	}
	d.Begin("", "")
	d.label(drawing.Start, chartInset, head+chartLetter, shortName(d.Tasks[task].Name.In(d.style)))
	if one.After >= 0 && one.Ready > s.Placed[one.After].End && one.Because != days.Matched && one.Because != days.Staffed {
		y := (top + bottom) / 2
		d.Put(&drawing.Item{Shape: drawing.Line, Part: drawing.Drying,
			From: drawing.Point{X: d.x(s.Zone.Moment(s.Placed[one.After].End)), Y: y}, To: drawing.Point{X: d.x(s.Zone.Moment(one.Ready)), Y: y}})
	}
	for _, p := range s.Parts(task) {
		d.Put(&drawing.Item{Shape: drawing.Rect, Part: part, From: drawing.Point{X: d.x(p.From), Y: top + thinner}, To: drawing.Point{X: d.x(p.To), Y: bottom - thinner}})
	}
}

// shortName cuts a name that runs into the days, but not the coat or the section
// at its end.
func shortName(name string) string {
	tail := ""
	if i := strings.LastIndex(name, ", "); i > 0 && len(name)-i < longestName/2 {
		name, tail = name[:i], name[i:]
	}
	letters, room := []rune(name), longestName-len(tail)
	if len(letters) > room {
		name = string(letters[:room-1]) + "…"
	}
	return name + tail
}
