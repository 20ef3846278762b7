package hanging

import (
	"ceilingwright/core/job/hung"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// places are the places of the platform that a layer is hung from, and the way between
// them.
func (t *teller) places(l *hung.Layer, out *sheet.Layer) {
	if len(l.Places) == 0 {
		return
	}
	for i := range l.Places {
		at := &l.Places[i]
		out.Stations = append(out.Stations, sheet.Station{N: at.N, Text: t.Told(t.place(at)), Panels: labels(at.Panels)})
	}
	out.Route = t.Told(route(l))
	t.stationFigure(l)
}

// place says where the deck stands.
func (t *teller) place(at *hung.Place) words.Text {
	if at.Walls {
		return words.Say("Middle of the deck {along} along WX from W and {out} out from WX, its length along {wall}.",
			words.Length("along", at.Along), words.Length("out", at.Out), words.Of("wall", at.With))
	}
	x, y := words.Length("x", at.Middle.X), words.Length("y", at.Middle.Y)
	one, other := words.Of("one", t.towards(survey.DA)), words.Of("other", t.towards(survey.AB))
	if at.Turned {
		return words.Say("Middle of the deck {x} from the mask’s edge {one} and {y} from its edge {other}, its long way with the mask’s width.", x, y, one, other)
	}
	return words.Say("Middle of the deck {x} from the mask’s edge {one} and {y} from its edge {other}, its long way with the mask’s length.", x, y, one, other)
}

// route says how the platform goes from place to place, for what is not up yet.
func route(l *hung.Layer) words.Text {
	s := &l.Sequence
	stands := words.Say("The platform stays where it stands.")
	if len(l.Route) > 0 {
		places := words.Say("{n}", words.Count("n", l.Route[0]))
		for _, n := range l.Route[1:] {
			places = words.Say("{places}, then {n}", words.Of("places", places), words.Count("n", n))
		}
		stands = words.Say("The platform stands at position {places}.", words.Of("places", places))
	}
	n, way := words.Count("n", s.Moves), words.Length("way", s.Way)
	moves, beyond := words.Text{}, words.Text{}
	switch {
	case s.Moves == 0:
	case s.Fewest && s.Shortest:
		moves = words.Say("{n|move|moves}, roll it {way} in all: the fewest moves there can be, and of those the shortest way.", n, way)
	case s.Fewest:
		moves = words.Say("{n|move|moves}, roll it {way} in all: the fewest moves there can be.", n, way)
	default:
		moves = words.Say("{n|move|moves}, roll it {way} in all.", n, way)
	}
	if l.Beyond > 0 {
		beyond = words.Say("{n|panel|panels} {n?is|are} not wholly in reach from any one platform position and hung from the one that reaches the middle; a larger overlap helps.", words.Count("n", l.Beyond))
	}
	return words.Sentences(stands, moves, beyond)
}

// stationFigure is how many places the platform has for a layer.
func (t *teller) stationFigure(l *hung.Layer) {
	length, width := t.Platform.Footing.Reach()
	outline, layout, used := &t.Plan.Mask.Outline, &t.Platform.Layout, len(l.Places)
	source := words.Say("Derived here: points spaced just over the reach apart need one platform position each.")
	rule := words.Say("Mask less overlap, over reach less overlap, rounded up, along times across. Reach is the deck and an arm all round.")
	var sum words.Text
	if layout.Columns > 0 {
		if layout.Stations[0].Turned {
			length, width = width, length
			rule = words.Sentences(rule, words.Say("The deck is turned a quarter."))
		}
		sum = words.Say("{along} × {across}, each rounded up", words.Name("along", t.quotient(outline.Length, length)), words.Name("across", t.quotient(outline.Width, width)))
	} else {
		rule = words.Say("Decks lengthwise and turned a quarter together cover the mask from fewer positions than an even grid.")
		sum = words.Say("{n} found by trying", words.Count("n", len(layout.Stations)))
		source = words.Say("Found by trying; it is not shown that fewer could not do.")
		if layout.Fewest {
			source = words.Say("Found by trying every arrangement that could do with fewer.")
		}
	}
	if idle := len(layout.Stations) - used; idle > 0 {
		sum = words.Say("{sum}, less {n} that no panel needs", words.Of("sum", sum), words.Count("n", idle))
	}
	t.Count(page.Hanging, l.Panels.ID+".stations", t.Say("{n?platform position|platform positions}", words.Count("n", used)), int64(used), "",
		t.Told(rule), t.Told(sum), t.Told(source))
}

// quotient is the sum of the places in one direction.
func (t *teller) quotient(box, reach measure.Length) string {
	overlap := t.Platform.Footing.Overlap
	if overlap == 0 || box <= reach {
		return t.Put(box) + " ÷ " + t.Put(reach)
	}
	return "(" + t.Put(box) + " − " + t.Put(overlap) + ") ÷ (" + t.Put(reach) + " − " + t.Put(overlap) + ")"
}
