package tell

import (
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/words"

	"ceilingwright/core/hanging"
	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/safety"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// mostStood is how many stations, of all layers together, the platform is tried
// at. A choice: more than any job has, and few enough to be tried at every change.
const mostStood = 800

// stood is the platform at the stations of all layers. Foot is what it takes on
// the floor; isTaken tells that this is not given and was taken as the deck and
// the base it needs.
type stood struct {
	*builder
	floor          hanging.Floor
	names          []string
	foot           hanging.Foot
	isTaken        bool
	tried, clashes int
	left           int // not tried
}

// stand tries the platform at every station: whether what it stands on is clear of
// walls and furniture where its deck reaches the panels hung from there. Without a
// box, a deck and either a foot or something that stands in the room there is
// nothing to try. clashes is at how many stations it does not stand.
func (b *builder) stand(job *safety.Job, deck *safety.Deck) (clashes int) {
	b.furnitureInRoom()
	typed := job.Gear.FootLength > 0 && job.Gear.FootWidth > 0
	if !b.Setting.Placed || len(b.Platform.Layout.Stations) == 0 || !b.Room.Shape.Usable() || !typed && len(b.Plan.Furniture) == 0 {
		return 0
	}
	s := stood{builder: b, isTaken: !typed, foot: hanging.Foot{Length: job.Gear.FootLength, Width: job.Gear.FootWidth}}
	if s.isTaken {
		least := max(job.LeastBase(), deck.Base(safety.BaseRatio(job.Country)))
		s.foot = hanging.Foot{Length: max(b.Platform.Footing.Length, least), Width: max(b.Platform.Footing.Width, least)}
	}
	s.onFloor()
	for i := range b.Layers {
		s.layer(i)
	}
	s.check()
	return s.clashes
}

// furnitureInRoom reports what is said to stand outside the room.
func (b *builder) furnitureInRoom() {
	for _, f := range b.Plan.Furniture {
		middle := survey.Point{X: f.FromDA + f.Length.Half(), Y: f.FromAB + f.Width.Half()}
		if f.Length > 0 && f.Width > 0 && b.Room.Shape.Usable() && !b.Room.Shape.Contains(middle) {
			b.Report(f.At, []problem.Problem{{Severity: problem.Caution,
				What: words.Raw(page.Capital(furnitureName(f.Name)) + " would stand outside the room."), Do: words.Say("Measure again from walls ZW and WX to its nearest corner.")}})
		}
	}
}

// furnitureName is what stands there, with its article.
func furnitureName(name string) string {
	switch {
	case name == "":
		return "what stands there"
	case strings.HasPrefix(strings.ToLower(name), "the "):
		return name
	}
	return "the " + name
}

// furniture is where a piece of furniture stands in the room, false where its size
// is not known.
func (b *builder) furniture(i int) (setout.Box, bool) {
	f := &b.Plan.Furniture[i]
	return setout.Box{X: f.FromDA, Y: f.FromAB, Length: f.Length, Width: f.Width}, f.Length > 0 && f.Width > 0
}

// onFloor is the room and what stands in it, in the frame of the mask's box.
func (s *stood) onFloor() {
	box := &s.Setting.Choice.Box
	corners := s.Room.Shape.Corners
	if s.Room.Shape.Form == survey.Round {
		corners = inscribed(s.Room.Shape.Length, s.Room.Shape.Width)
	}
	for _, p := range corners {
		s.floor.Room = append(s.floor.Room, box.In(p))
	}
	for i := range s.Plan.Furniture {
		stands, ok := s.furniture(i)
		if !ok {
			continue
		}
		thing := make([]survey.Point, 0, 4)
		for _, c := range [4]survey.Corner{survey.A, survey.B, survey.C, survey.D} {
			thing = append(thing, box.In(stands.Corner(c)))
		}
		s.floor.Things, s.names = append(s.floor.Things, thing), append(s.names, furnitureName(s.Plan.Furniture[i].Name))
	}
}

// inscribed is an ellipse that touches both axes as straight lines between 64 of
// its points, by the rational form of sine and cosine: less room than there is,
// by at most two thousandths of its half axes.
func inscribed(length, width measure.Length) []survey.Point {
	const eighth = 8
	var corners []survey.Point
	for quarter := range 4 {
		for i := range 2 * eighth {
			// t goes from 0 to 1 in a quarter; the even steps of its angle are not
			// needed, only that they are small.
			t := float64(i) / (2 * eighth)
			c, d := (1-float64(t*t))/(1+float64(t*t)), 2*t/(1+float64(t*t))
			for range quarter {
				c, d = -d, c
			}
			corners = append(corners, survey.Point{
				X: length/2 + measure.Length(float64(float64(length/2)*c)), Y: width/2 + measure.Length(float64(float64(width/2)*d))})
		}
	}
	return corners
}

// layer tries the stations of one layer from which something is still to be hung.
func (s *stood) layer(i int) {
	l := s.Hung(i)
	panels := make([]hanging.Rect, len(l.Stations))
	labels := make([][]string, len(l.Stations))
	for k := range l.Order {
		if h := &l.Order[k]; !h.Up && h.Station > 0 {
			n := h.Station - 1
			panels[n] = around(panels[n], l.Rect(h.Block))
			labels[n] = append(labels[n], h.Panel.Label())
		}
	}
	l.Stands = make([]hanging.Standing, len(l.Stations))
	for n := range l.Stations {
		switch {
		case len(labels[n]) == 0:
			continue
		case s.tried >= mostStood:
			s.left++
			continue
		}
		s.tried++
		stands := s.floor.Stand(l.Stations[n], panels[n], s.Platform.Footing, s.foot)
		l.Stands[n] = stands
		s.say(i, n+1, &stands, labels[n])
	}
}

// around is the rectangle around two; one without size is none.
func around(a, b hanging.Rect) hanging.Rect {
	if a.Length == 0 {
		return b
	}
	x, y := min(a.X, b.X), min(a.Y, b.Y)
	return hanging.Rect{X: x, Y: y, Length: max(a.X+a.Length, b.X+b.Length) - x, Width: max(a.Y+a.Width, b.Y+b.Width) - y}
}

// say puts on the sheet what there is to say of a station: that it clashes, or
// where the platform stands instead.
func (s *stood) say(i, n int, stands *hanging.Standing, labels []string) {
	out := sheet.PlatformStation{Layer: s.Layers[i].Panels.ID, N: n, Clash: !stands.Fits}
	switch {
	case !stands.Fits:
		s.clashes++
		out.Text = s.clashText(i, n, stands, labels)
	case stands.IsMoved():
		move := s.moveText(stands)
		out.Text = s.stationName(i, n, labels) + ": " + move
		s.onStation(i, n, page.Capital(move))
	default:
		return
	}
	s.Sheet.Platform.Stations = append(s.Sheet.Platform.Stations, out)
}

// onStation adds to where the deck stands, in the layer's own list.
func (s *stood) onStation(i, n int, text string) {
	list := s.Sheet.Layers[i].Stations
	if at := slices.IndexFunc(list, func(one sheet.Station) bool { return one.N == n }); at >= 0 {
		list[at].Text += " " + text
	}
}

func (s *stood) stationName(i, n int, labels []string) string {
	text := "Platform position " + strconv.Itoa(n)
	if len(s.Layers) > 1 {
		text += " of " + s.Layers[i].Panels.Name
	}
	return text + " (" + problem.Listed(labels) + ")"
}

// clashText says what is in the way at a station, by how much, and what to do.
func (s *stood) clashText(i, n int, stands *hanging.Standing, labels []string) string {
	name := s.stationName(i, n, labels)
	takes := s.Notation.Length(s.foot.Length) + " by " + s.Notation.Length(s.foot.Width) + " on the floor"
	switch {
	case stands.Lacks == 0:
		return name + ": there is no room for the platform, which takes " + takes + "."
	case len(stands.Things) == 0:
		return name + ": with " + takes + " the platform runs into a wall and lacks " + s.Notation.AtLeast(stands.Lacks) + ". Take one that stands on less, or reach further from the deck."
	}
	names := make([]string, len(stands.Things))
	for k, thing := range stands.Things {
		names[k] = s.names[thing]
	}
	verb, it := " is", "it"
	if len(names) > 1 {
		verb, it = " are", "them"
	}
	text := name + ": " + problem.Listed(names) + verb + " in the way"
	if stands.Wall {
		text += ", and a wall"
	}
	return text + ". Move " + it + " by " + s.Notation.AtLeast(stands.Lacks) + ", or take a platform that stands on less than " + takes + "."
}

// moveText is where the platform stands, told from where it was laid out.
func (s *stood) moveText(stands *hanging.Standing) string {
	var parts []string
	part := func(far measure.Length, back, on survey.Wall) {
		switch {
		case far < 0:
			parts = append(parts, s.Notation.Length(-far)+" "+s.towardsSide(back))
		case far > 0:
			parts = append(parts, s.Notation.Length(far)+" "+s.towardsSide(on))
		}
	}
	part(stands.MovedX, survey.DA, survey.BC)
	part(stands.MovedY, survey.AB, survey.CD)
	text := "stand it " + strings.Join(parts, " and ")
	switch {
	case stands.Turned && len(parts) == 0:
		text = "turn it a quarter where it stands"
	case stands.Turned:
		text = "turn it a quarter and " + text
	}
	return text + ", clear of what is in its way."
}

// check is the line about the room to stand.
func (s *stood) check() {
	all := strconv.Itoa(s.tried)
	c := sheet.PlatformCheck{What: "Room to stand", Have: strconv.Itoa(s.tried-s.clashes) + " of " + all, Need: "all " + all + " positions", Verdict: string(job.Fits)}
	switch {
	case s.clashes > 0:
		c.Verdict = string(job.FallsShort)
		c.Text = "Clear the floor there, or take another platform."
	case s.isTaken || s.left > 0:
		c.Verdict = string(job.NotKnown)
	}
	if s.isTaken {
		c.Text = strings.TrimSpace("It is not said what the platform takes on the floor: " + s.Notation.Length(s.foot.Length) + " by " + s.Notation.Length(s.foot.Width) + " is taken. Fill it in. " + c.Text)
	}
	if s.left > 0 {
		c.Text = strings.TrimSpace(c.Text + " " + page.Plural(int64(s.left), "more platform position is", "more platform positions are") + " not looked at.")
	}
	s.Sheet.Platform.Checks = append(s.Sheet.Platform.Checks, c)
}
