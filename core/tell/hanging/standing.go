package hanging

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/job"
	"ceilingwright/core/job/hazards"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Stands puts on the sheet how the platform stands at the places it is hung from, where
// there was something to try.
func Stands(p *page.Page, j *job.Job) {
	t := teller{p, j}
	if j.Standing.Layers == nil {
		return
	}
	for i, list := range j.Standing.Layers {
		for n := range list {
			if at := &list[n]; at.Tried && (!at.Fits || at.IsMoved()) {
				p.Sheet.Platform.Stations = append(p.Sheet.Platform.Stations,
					sheet.PlatformStation{Layer: j.Layers[i].Panels.ID, N: n + 1, Clash: !at.Fits, Text: p.Told(t.stands(i, n+1, at))})
			}
		}
	}
	t.room()
}

// stands says of a place that the platform clashes there, or stands elsewhere.
func (t *teller) stands(i, n int, at *hung.Stood) words.Text {
	position := t.position(i, n, at)
	if !at.Fits {
		return t.clash(position, at)
	}
	return words.Say("{where}: {move}", words.Of("where", position), words.Of("move", t.move(&at.Standing)))
}

// moved says at the places of a layer where the platform stands elsewhere.
func (t *teller) moved(i int, stations []sheet.Station) {
	if i >= len(t.Standing.Layers) {
		return
	}
	for k := range stations {
		if n := stations[k].N; n >= 1 && n <= len(t.Standing.Layers[i]) {
			if at := &t.Standing.Layers[i][n-1]; at.Tried && at.Fits && at.IsMoved() {
				stations[k].Text += " " + t.Say("{^move}", words.Of("move", t.move(&at.Standing)))
			}
		}
	}
}

// position is a place of the platform by its number and what is hung from it.
func (t *teller) position(i, n int, at *hung.Stood) words.Text {
	number, panels := words.Count("n", n), words.Names("panels", labels(at.Panels))
	if len(t.Layers) > 1 {
		return words.Say("Platform position {n} of {layer} ({panels})", number, words.Name("layer", t.Layers[i].Panels.Name), panels)
	}
	return words.Say("Platform position {n} ({panels})", number, panels)
}

// clash says what is in the way at a place, by how much, and what to do.
func (t *teller) clash(position words.Text, at *hung.Stood) words.Text {
	where := words.Of("where", position)
	length, width := words.Length("length", t.Standing.Foot.Length), words.Length("width", t.Standing.Foot.Width)
	lacks, n := words.AtLeast("lacks", at.Lacks), words.Count("n", len(at.Things))
	switch {
	case at.Lacks == 0:
		return words.Say("{where}: there is no room for the platform, which takes {length} by {width} on the floor.", where, length, width)
	case len(at.Things) == 0:
		return words.Say("{where}: with {length} by {width} on the floor the platform runs into a wall and lacks {lacks}. Take one that stands on less, or reach further from the deck.",
			where, length, width, lacks)
	}
	names := make([]string, len(at.Things))
	for k, thing := range at.Things {
		names[k] = t.Told(hung.FurnitureName(&t.Plan.Furniture[t.Standing.Things[thing]]))
	}
	things := words.Names("things", names)
	if at.Wall {
		return words.Say("{where}: {things} {n?is|are} in the way, and a wall. Move {n?it|them} by {lacks}, or take a platform that stands on less than {length} by {width} on the floor.",
			where, things, n, lacks, length, width)
	}
	return words.Say("{where}: {things} {n?is|are} in the way. Move {n?it|them} by {lacks}, or take a platform that stands on less than {length} by {width} on the floor.",
		where, things, n, lacks, length, width)
}

// move is where the platform stands, told from where it was laid out.
func (t *teller) move(s *hanging.Standing) words.Text {
	x, y := t.far(s.MovedX, survey.DA, survey.BC), t.far(s.MovedY, survey.AB, survey.CD)
	way := words.Say("{one} and {other}", words.Of("one", x), words.Of("other", y))
	switch {
	case x.IsEmpty():
		way = y
	case y.IsEmpty():
		way = x
	}
	switch {
	case s.Turned && way.IsEmpty():
		return words.Say("turn it a quarter where it stands, clear of what is in its way.")
	case s.Turned:
		return words.Say("turn it a quarter and stand it {way}, clear of what is in its way.", words.Of("way", way))
	}
	return words.Say("stand it {way}, clear of what is in its way.", words.Of("way", way))
}

// far is how far something is moved towards one side or the other; nothing where it is
// not.
func (t *teller) far(l measure.Length, back, on survey.Wall) words.Text {
	if l == 0 {
		return words.Text{}
	}
	if l < 0 {
		on = back
	}
	return words.Say("{far} {side}", words.Length("far", l.Abs()), words.Of("side", t.towards(on)))
}

// room is the line about the room to stand.
func (t *teller) room() {
	s := &t.Standing
	tried := words.Count("tried", s.Tried)
	c := sheet.PlatformCheck{What: t.Say("Room to stand"), Have: t.Say("{n} of {tried}", words.Count("n", s.Tried-s.Clashes), tried),
		Need: t.Say("all {tried} positions", tried), Verdict: string(hazards.Fits)}
	var taken, clear, left words.Text
	if s.Taken {
		taken = words.Say("It is not said what the platform takes on the floor: {length} by {width} is taken. Fill it in.", words.Length("length", s.Foot.Length), words.Length("width", s.Foot.Width))
	}
	if s.Left > 0 {
		left = words.Say("{n|more platform position|more platform positions} {n?is|are} not looked at.", words.Count("n", s.Left))
	}
	switch {
	case s.Clashes > 0:
		c.Verdict, clear = string(hazards.FallsShort), words.Say("Clear the floor there, or take another platform.")
	case s.Taken || s.Left > 0:
		c.Verdict = string(hazards.NotKnown)
	}
	c.Text = t.Told(words.Sentences(taken, clear, left))
	t.Sheet.Platform.Checks = append(t.Sheet.Platform.Checks, c)
}
