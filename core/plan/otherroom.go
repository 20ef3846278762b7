package plan

import (
	"slices"
	"strconv"

	"ceilingwright/core/jsondoc"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// Fitting is what has to be changed in a plan made for one room so that it makes
// sense in another. Writes are blanks to fill in anew, Out entries of lists to
// leave out, in the order of the plan; Said says it in one sentence, in a language
// or, with none, in ours, "" where nothing changes.
type Fitting struct {
	Said   string   `json:"said"`
	Writes []Write  `json:"writes"`
	Out    []string `json:"out"`
}

// Write is one blank, by its pointer, and what is written into it.
type Write struct {
	At   string `json:"at"`
	Text string `json:"text"`
}

// JSON is the fitting as the page takes it. It is written by hand, since the
// program that generates writers uses this package.
func (f Fitting) JSON() []byte {
	var w jsondoc.Writer
	w.Open('{')
	w.Text("said", f.Said)
	w.List("writes")
	for _, blank := range f.Writes {
		w.Open('{')
		w.Text("at", blank.At)
		w.Text("text", blank.Text)
		w.Close('}')
	}
	w.Close(']')
	w.Texts("out", f.Out)
	w.Close('}')
	return w.Bytes()
}

// OtherRoom fits a plan whose room was changed and whose rest was made for the
// room before it. Only what still stands as it was made is touched: what was
// typed since is its owner's. Along each wall the mask keeps its share of the
// room and at least the border it asks for, what is on the ceiling and on the
// floor its place between the walls, marks theirs on the mask, all rounded down
// to whole inches or centimetres; the openings' edge goes by the area of the
// mask. Left out are diagonals, things larger than the room, and pieces made of
// panels that another mask may not have. Both rooms have to be rectangles whose
// sides are known.
func OtherRoom(made, now Document, language *words.Language) Fitting {
	f := &fitter{made: &made, now: &now, was: readingsOf(made), is: readingsOf(now)}
	before, after := made.Plan.Room, now.Plan.Room
	if before.Form != survey.Rectangle || after.Form != survey.Rectangle || min(before.Length, before.Width, after.Length, after.Width) <= 0 {
		return Fitting{}
	}
	f.along, f.across = change{before.Length, after.Length}, change{before.Width, after.Width}
	if f.along.isNone() && f.across.isNone() {
		return Fitting{}
	}
	f.mask()
	f.diagonals()
	f.things()
	return Fitting{Said: f.said().In(words.Style{Language: language}), Writes: f.writes, Out: f.out}
}

// change is a length as it was and as it is.
type change struct{ from, to measure.Length }

func (c change) isNone() bool { return c.from == c.to }

// fitter gathers what has to be changed.
type fitter struct {
	made, now     *Document
	was, is       map[string]measure.Length
	along, across change
	writes        []Write
	out           []string
	sized, moved  bool
	left          []words.Text // what is left out, by its name in a sentence
	square        bool         // the diagonals are among it
}

func readingsOf(d Document) map[string]measure.Length {
	found := make(map[string]measure.Length, len(d.Readings))
	for _, r := range d.Readings {
		found[r.At] = r.Length
	}
	return found
}

// as is the length in a blank that still is what was made, in the plan as made at
// another place perhaps.
func (f *fitter) as(at, madeAt string) (measure.Length, bool) {
	is, known := f.is[at]
	was, before := f.was[madeAt]
	return is, known && before && is == was
}

// write writes a length into a blank, down to a whole inch or centimetre.
func (f *fitter) write(at string, l measure.Length) {
	n, step := f.now.Plan.Units.Notation(), f.step()
	n.Plain = true
	f.writes = append(f.writes, Write{At: at, Text: n.Exact(l / step * step)})
}

// step is what lengths are written in whole ones of.
func (f *fitter) step() measure.Length {
	if f.now.Plan.Units.Show == ShowMetric {
		return 10 * measure.Millimetre
	}
	return measure.Inch
}

// times is l × c.to ÷ c.from, down to a whole nanometre.
func (c change) times(l measure.Length) measure.Length {
	scaled, _ := measure.NumberFromInt(int64(l)).Mul(measure.NumberFromInt(int64(c.to))).Quo(measure.NumberFromInt(int64(c.from))).Floor()
	return measure.Length(scaled)
}

func (f *fitter) mask() {
	m := f.made.Plan.Mask
	length, width := f.along, f.across
	if f.now.Plan.Setting.Turned {
		length, width = width, length
	}
	l, w := f.side("/mask/length", length), f.side("/mask/width", width)
	if l.isNone() && w.isNone() {
		return
	}
	f.sized = true
	for i := range f.now.Plan.Mask.Layers {
		if i < len(m.Layers) && f.now.Plan.Mask.Layers[i].Cut.ID == m.Layers[i].Cut.ID {
			f.layer(&f.now.Plan.Mask.Layers[i], l, w)
		}
	}
	for _, step := range f.now.Plan.Steps {
		at := step.At + "/edgeLength"
		if edge, own := f.as(at, at); own {
			f.write(at, w.times(l.times(edge)))
		}
	}
}

// side writes one side of the mask anew and gives how it changes.
func (f *fitter) side(at string, room change) change {
	side, own := f.as(at, at)
	if !own || room.isNone() {
		return change{1, 1}
	}
	to := min(room.times(side), room.to-2*f.now.Plan.Setting.LeastBorder)
	if to <= 0 {
		return change{1, 1}
	}
	f.write(at, to)
	return change{side, to}
}

// layer takes away what another mask may not have, and moves the marks.
func (f *fitter) layer(l *Layer, length, width change) {
	if l.Cut.Split == mask.ByGreatest {
		for i, piece := range l.Pieces {
			f.leaveOut(l.At+"/pieces/"+strconv.Itoa(i), words.Say("the piece “{piece}”", words.Name("piece", piece.Name)))
		}
	}
	for _, mark := range l.Register.Marks {
		f.mark(mark.At+"/x", mark.At+"/gotX", length)
		f.mark(mark.At+"/y", mark.At+"/gotY", width)
	}
}

// mark moves where a mark belongs; what was found of it stays as far off.
func (f *fitter) mark(want, got string, side change) {
	w, own := f.as(want, want)
	g, found := f.as(got, got)
	if !own || !found || side.isNone() {
		return
	}
	f.write(want, side.times(w))
	last := &f.writes[len(f.writes)-1]
	to, _ := measure.ParseOffset(last.Text, "")
	n := f.now.Plan.Units.Notation()
	n.Plain = true
	f.writes = append(f.writes, Write{At: got, Text: n.Exact(to + g - w)})
}

var diagonals = []string{"/room/diagonalAC", "/room/diagonalBD"}

func (f *fitter) diagonals() {
	for _, at := range diagonals {
		if _, own := f.as(at, at); own {
			f.writes = append(f.writes, Write{At: at})
			if !f.square {
				f.square, f.left = true, append(f.left, words.Say("the diagonals"))
			}
		}
	}
}

// things moves what is on the ceiling and on the floor.
func (f *fitter) things() {
	if light := f.now.Plan.Fixture; light.At == survey.Measured {
		f.around("/room/fixture", "/room/fixture", &light, words.Text{}, false)
	}
	for i := range f.now.Plan.Obstructions {
		o := &f.now.Plan.Obstructions[i]
		k := slices.IndexFunc(f.made.Plan.Obstructions, func(p Obstruction) bool { return p.Name == o.Name })
		if k >= 0 && o.Fixture.At == survey.Measured {
			f.around(o.At, f.made.Plan.Obstructions[k].At, &o.Fixture, quoted(o.Name), true)
		}
	}
	for _, thing := range f.now.Plan.Furniture {
		k := slices.IndexFunc(f.made.Plan.Furniture, func(p Furniture) bool { return p.Name == thing.Name })
		if k < 0 {
			continue
		}
		madeAt := f.made.Plan.Furniture[k].At
		if thing.Length > f.along.to || thing.Width > f.across.to {
			f.leaveOut(thing.At, quoted(thing.Name))
			continue
		}
		f.place(thing.At+"/fromDA", madeAt+"/fromDA", f.along, 0, thing.Length)
		f.place(thing.At+"/fromAB", madeAt+"/fromAB", f.across, 0, thing.Width)
	}
}

// around moves a thing that is measured to its middle. Whichever way it lies it
// stays clear of the walls by the greater half of its sides.
func (f *fitter) around(at, madeAt string, o *survey.Fixture, name words.Text, listed bool) {
	half := max(o.Across, o.Deep).Half()
	if listed && 2*half > min(f.along.to, f.across.to) {
		f.leaveOut(at, name)
		return
	}
	f.place(at+"/fromDA", madeAt+"/fromDA", f.along, half, half)
	f.place(at+"/fromAB", madeAt+"/fromAB", f.across, half, half)
}

// place moves a thing between two walls: what of it lies before the point that is
// measured, and what beyond, keeps its size, and the rest is shared as it was.
func (f *fitter) place(at, madeAt string, room change, before, beyond measure.Length) {
	l, own := f.as(at, madeAt)
	free := change{room.from - before - beyond, room.to - before - beyond}
	if !own || room.isNone() || free.from <= 0 {
		return
	}
	// Rounded down it may not come nearer to the wall than it reaches.
	f.write(at, max(before+free.times(l-before), before+f.step()-1))
	f.moved = true
}

// leaveOut leaves an entry out that stands in the plan as it was made, as far as
// its name tells.
func (f *fitter) leaveOut(at string, name words.Text) {
	f.out = append(f.out, at)
	f.left = append(f.left, name)
}

func quoted(name string) words.Text { return words.Say("“{name}”", words.Name("name", name)) }

// said is all of it in one sentence.
func (f *fitter) said() words.Text {
	var parts []words.Text
	if f.sized {
		parts = append(parts, words.Say("its mask is sized to it"))
	}
	if f.moved {
		parts = append(parts, words.Say("what is on the ceiling and the floor is moved"))
	}
	if n := len(f.left); n > 0 {
		left := words.Say("{things} {n?is|are} left out", words.All("things", f.left), words.Count("n", n))
		if n == 1 && f.square {
			left = words.Say("{things} are left out", words.All("things", f.left))
		}
		parts = append(parts, left)
	}
	if len(parts) == 0 {
		return words.Text{}
	}
	return words.Say("The example is fitted to this room: {changes}.", words.Texts("changes", parts))
}
