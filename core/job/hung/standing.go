package hung

import (
	"strings"

	"ceilingwright/core/hanging"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// mostStood is how many places, of all layers together, the platform is tried
// at. A choice: more than any job has, and few enough to be tried at every change.
const mostStood = 800

// Standing is how the platform stands at the places it is hung from, layer by layer;
// without any layer where there was nothing to try. Foot is what it takes on the floor;
// Taken tells that this is not given and was taken as the deck and the base it needs.
// Things are those of the furniture that can be in the way, by their place in the plan.
// It was Tried at so many places, of which so many are Clashes, and so many were Left.
type Standing struct {
	Layers               [][]Stood
	Foot                 hanging.Foot
	Taken                bool
	Things               []int
	Tried, Clashes, Left int
}

// Stood is how the platform stands at a place, where it was Tried: the Panels that are
// still to be hung from it.
type Stood struct {
	hanging.Standing
	Tried  bool
	Panels []mask.Panel
}

// Stand tries the platform at every place: whether what it stands on is clear of
// walls and furniture where its deck reaches the panels hung from there. Without a
// box, a deck and either a foot or something that stands in the room there is
// nothing to try. A foot that is not given is least at either side.
func Stand(on On, order *Hanging, least measure.Length) (s Standing, wrong problem.List) {
	w := work{On: on}
	w.furnitureInRoom()
	wrong = w.List
	s.Foot = hanging.Foot{Length: w.Plan.Access.FootLength, Width: w.Plan.Access.FootWidth}
	s.Taken = s.Foot.Length <= 0 || s.Foot.Width <= 0
	if !w.Setting.Placed || len(w.Platform.Layout.Stations) == 0 || !w.Room.Shape.Usable() || s.Taken && len(w.Plan.Furniture) == 0 {
		return s, wrong
	}
	if s.Taken {
		s.Foot = hanging.Foot{Length: max(w.Platform.Footing.Length, least), Width: max(w.Platform.Footing.Width, least)}
	}
	floor := w.floor(&s)
	for i := range w.Layers {
		h := &Hung{}
		if i < len(order.Layers) {
			h = &order.Layers[i]
		}
		s.Layers = append(s.Layers, s.layer(&w.Layers[i], h, &floor, &w.Platform.Footing))
	}
	return s, wrong
}

// furnitureInRoom reports what is said to stand outside the room.
func (w *work) furnitureInRoom() {
	for i := range w.Plan.Furniture {
		f := &w.Plan.Furniture[i]
		if stands, ok := StandsAt(f); ok && w.Room.Shape.Usable() && !w.Room.Shape.Contains(stands.Centre()) {
			w.Remark(f.At, problem.Caution, words.Say("{^thing} would stand outside the room.", words.Of("thing", FurnitureName(f))),
				words.Say("Measure again from walls ZW and WX to its nearest corner."))
		}
	}
}

// FurnitureName is what stands there, as it is spoken of.
func FurnitureName(f *plan.Furniture) words.Text {
	switch {
	case f.Name == "":
		return words.Say("what stands there")
	case strings.HasPrefix(strings.ToLower(f.Name), "the "):
		return words.Verbatim(f.Name)
	}
	return words.Say("the {thing}", words.Name("thing", f.Name))
}

// StandsAt is where a piece of furniture stands in the room, false where its size is
// not known.
func StandsAt(f *plan.Furniture) (setout.Box, bool) {
	return setout.Box{X: f.FromDA, Y: f.FromAB, Length: f.Length, Width: f.Width}, f.Length > 0 && f.Width > 0
}

// floor is the room and what stands in it, in the frame of the mask's box.
func (w *work) floor(s *Standing) (floor hanging.Floor) {
	box := &w.Setting.Choice.Box
	corners := w.Room.Shape.Corners
	if w.Room.Shape.Form == survey.Round {
		corners = inscribed(w.Room.Shape.Length, w.Room.Shape.Width)
	}
	for _, p := range corners {
		floor.Room = append(floor.Room, box.In(p))
	}
	for i := range w.Plan.Furniture {
		stands, ok := StandsAt(&w.Plan.Furniture[i])
		if !ok {
			continue
		}
		thing := make([]survey.Point, 0, 4)
		for _, c := range [4]survey.Corner{survey.A, survey.B, survey.C, survey.D} {
			thing = append(thing, box.In(stands.Corner(c)))
		}
		floor.Things, s.Things = append(floor.Things, thing), append(s.Things, i)
	}
	return floor
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

// layer tries the places of one layer from which something is still to be hung.
func (s *Standing) layer(l *layers.Layer, h *Hung, floor *hanging.Floor, deck *hanging.Platform) []Stood {
	around, stands := make([]hanging.Rect, len(h.Stations)), make([]Stood, len(h.Stations))
	for i := range h.Order {
		if step := &h.Order[i]; !step.Up && step.Station > 0 {
			n := step.Station - 1
			around[n] = bothIn(around[n], l.Rect(step.Block))
			stands[n].Panels = append(stands[n].Panels, step.Panel)
		}
	}
	for n := range stands {
		at := &stands[n]
		switch {
		case len(at.Panels) == 0:
			continue
		case s.Tried >= mostStood:
			s.Left++
			continue
		}
		s.Tried++
		at.Tried, at.Standing = true, floor.Stand(h.Stations[n], around[n], *deck, s.Foot)
		if !at.Fits {
			s.Clashes++
		}
	}
	return stands
}

// bothIn is the rectangle around two; one without size is none.
func bothIn(a, b hanging.Rect) hanging.Rect {
	if a.Length == 0 {
		return b
	}
	x, y := min(a.X, b.X), min(a.Y, b.Y)
	return hanging.Rect{X: x, Y: y, Length: max(a.X+a.Length, b.X+b.Length) - x, Width: max(a.Y+a.Width, b.Y+b.Width) - y}
}
