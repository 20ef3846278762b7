package plan

import (
	"errors"
	"strconv"

	"ceilingwright/core/air"
	"ceilingwright/core/jsondoc"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/safety"
	"ceilingwright/core/setout"
	"ceilingwright/core/words"
)

// Largest is the greatest plan that is read, in bytes: some hundred times a
// plan of many layers, and little enough to be read while someone waits.
const Largest = 2 << 20

// MostLayers and MostSteps are far above any job and keep a hostile plan from
// making a sheet that no page can hold.
const (
	MostLayers = 24
	MostSteps  = 60
)

// Read reads a plan. Refused whole, with Usable false and one problem at the
// document itself, are: more than Largest bytes, a text that is no JSON, JSON
// that is no plan, and a plan of a newer version. Anything else gives a plan
// with its problems.
func Read(data []byte) Document { return ReadIn(data, nil) }

// ReadIn is Read in a language: what a plan leaves unnamed is called by it.
func ReadIn(data []byte, language *words.Language) Document {
	r := &reader{language: language}
	node := r.document(data)
	if node == nil {
		return Document{Problems: r.problems}
	}
	plan := r.plan(section{reader: r, node: node})
	r.strays("", node)
	return Document{Plan: plan, Readings: r.readings, Problems: r.problems, Usable: true, top: node, written: partsOf(node)}
}

// document is the plan's top object, or nil with the reason reported.
func (r *reader) document(data []byte) *jsondoc.Node {
	if len(data) > Largest {
		r.report("", problem.Stop, words.Say("This file is {large} MB large; a plan is at most {most} MB.", words.Count("large", len(data)>>20), words.Count("most", Largest>>20)), words.Say("Choose the file of a plan."))
		return nil
	}
	node, err := jsondoc.Read(data)
	if err != nil {
		r.report("", problem.Stop, unreadableReason(err), words.Say("Open another copy of the plan. The one that was open before is kept."))
		return nil
	}
	version := node.Field("ceilingwright")
	if node.Kind != jsondoc.Object || version == nil {
		r.report("", problem.Stop, words.Say("This is not a plan of Ceilingwright."), words.Say("Choose a file that was saved here as a plan."))
		return nil
	}
	n, err := strconv.Atoi(version.Text)
	switch {
	case err != nil || n < 1:
		r.report("/ceilingwright", problem.Stop, words.Say("The plan does not say which version it is."), words.Say("Open a copy that was not edited by hand."))
		return nil
	case n > Version:
		r.report("/ceilingwright", problem.Stop, words.Say("This plan is of version {version}; versions up to {known} can be read here.", words.Name("version", strconv.Itoa(n)), words.Name("known", strconv.Itoa(Version))),
			words.Say("Open it with a newer page. Nothing in the file was changed."))
		return nil
	}
	return node
}

func unreadableReason(err error) words.Text {
	var fault *jsondoc.SyntaxError
	if !errors.As(err, &fault) {
		return words.Say("This file cannot be read.")
	}
	if fault.CutOff {
		return words.Say("This file is cut off: it ends in the middle, on line {line}.", words.Name("line", strconv.Itoa(fault.Line)))
	}
	return words.Say("This file is not a plan: it goes wrong on line {line}, character {column} ({reason}).",
		words.Name("line", strconv.Itoa(fault.Line)), words.Name("column", strconv.Itoa(fault.Column)), words.Of("reason", words.Filled(fault.Reason, nothing)))
}

// nothing is what goes into the holes of a sentence that has none.
func nothing(string) words.Value { return nil }

// mostTicked is how many pages a job has, mostMarked more marks than are made on walls.
const (
	mostTicked = 9
	mostMarked = 5000
)

func (r *reader) plan(top section) Plan {
	var p Plan
	p.ID, p.Title = top.text("id"), top.text("title")
	for _, e := range top.list("ticked", mostTicked, words.Say("pages")) {
		p.Ticked = append(p.Ticked, top.typed(e.at, e.node))
	}
	for _, e := range top.list("marked", mostMarked, words.Say("marks")) {
		p.Marked = append(p.Marked, top.typed(e.at, e.node))
	}
	p.Units = r.readUnits(top.section("units"))
	r.units = p.Units
	p.Place = readPlace(top.section("place"))
	room := top.section("room")
	p.Room, p.Fixture, p.Obstructions = readRoom(room), readFixture(room.section("fixture")), readObstructions(room)
	p.Furniture = readFurniture(room)
	p.Mask = readMask(top.section("mask"))
	p.Setting = readSetting(top.section("setting"))
	p.Seams = readSeams(top.section("seams"))
	finish := top.section("finish")
	p.Finish, p.Steps = readFinish(finish), readSteps(finish)
	p.Days, p.Price = readDays(top.section("days")), readPrice(top.section("price"))
	p.Quote = readQuote(top.section("quote"))
	p.Air = readAir(top.section("air"))
	p.Access = readAccess(top.section("access"))
	return p
}

func (r *reader) readUnits(s section) Units {
	u := Units{
		Show:       word(s, "show", words.Say("how to write answers"), ShowFeetInches, ShowMetric),
		Bare:       word(s, "bare", words.Say("what a bare number means"), measure.UnitInch, measure.UnitFoot, measure.UnitMillimetre, measure.UnitCentimetre, measure.UnitMetre),
		InchMark:   readMark(s, "inchMark", words.Say("the inch mark"), "1/16 in", "1/4 in", "1/8 in", "1/32 in", "1/64 in"),
		MetricMark: readMark(s, "metricMark", words.Say("the metric mark"), "1 mm", "5 mm", "0.5 mm"),
		Gallon:     word(s, "gallon", words.Say("which gallon"), USGallon, ImperialGallon),
	}
	return u
}

func readMark(s section, name string, what words.Text, marks ...string) measure.Length {
	mark, err := measure.ParseMark(word(s, name, what, marks...))
	if err != nil {
		s.unreadable(s.at+"/"+name, err)
	}
	return mark
}

// sprinklersAgreed is a yes with more to it: their firm has said how they stay clean.
const sprinklersAgreed safety.Answer = "agreed"

func readPlace(s section) Place {
	p := Place{
		Rules: word(s, "rules", words.Say("whose safety rules apply"), safety.Other, safety.US, safety.UK, safety.EU),
		Lead:  word(s, "leadTest", words.Say("whether the old paint was tested for lead"), safety.NoLeadTest, safety.LeadFoundFree, safety.LeadFound),
		Pull:  word(s, "pullTest", words.Say("whether a strip of tape was pulled off the old paint"), safety.NoPullTest, safety.PaintHeld, safety.Lifted),
	}
	p.PullOn, p.PullAt = s.name("pullOn"), s.name("pullAt")
	p.Asbestos = choice(s, "asbestosTest", words.Say("whether a laboratory looked for asbestos"), safety.AsbestosTest(""), safety.NoAsbestosTest, safety.AsbestosFree, safety.AsbestosFound, safety.AsbestosGone)
	switch choice(s, "surface", words.Say("what the surface is"), "", "smooth", "smoothed", "textured") {
	case "smooth":
		p.Textured = safety.No
	case "smoothed", "textured":
		p.Textured = safety.Yes
	}
	if s.text("built") != "" {
		p.Built = readYear(s)
	}
	p.Detectors = s.answer("detectors", words.Say("whether there are detectors"))
	p.Sprinklers = choice(s, "sprinklers", words.Say("whether there are sprinklers"), safety.Answer(""), safety.Yes, safety.No, sprinklersAgreed)
	if p.Sprinklers == sprinklersAgreed {
		p.Sprinklers, p.SprinklersAgreed = safety.Yes, true
	}
	p.Use = choice(s, "use", words.Say("what the building is used for"), safety.Use(""), safety.Home, safety.Children, safety.Public, safety.Works)
	p.LeadFirm, p.LeadPlan = s.answer("leadFirm", words.Say("whether the firm is certified for lead")), s.answer("leadPlan", words.Say("whether the work on lead is planned"))
	p.Drop = s.answer("drop", words.Say("whether the floor falls away beside the platform"))
	s.when(p.Drop == safety.Yes, func() { p.DropDepth = readDrop(s) })
	p.Isolated, p.Flames = s.answer("isolated", words.Say("whether the light is isolated")), s.answer("flames", words.Say("whether there are pilot lights or heaters"))
	p.AirHandling, p.Below = s.answer("airHandling", words.Say("whether air from this room goes to others")), s.answer("below", words.Say("whether others pass below"))
	p.Fixings = s.answer("fixings", words.Say("whether anything is drilled"))
	if p.FloorLoad = s.fact("floorLoad"); choice(s, "floorLoadUnit", words.Say("the unit of the floor's load"), "kg/m2", "lb/ft2") == "lb/ft2" {
		p.FloorLoad.Value = p.FloorLoad.Value.Mul(measure.Pound).Quo(measure.SquareFoot)
	}
	return p
}

// mostDrop is more than one can fall inside any building.
const mostDrop = 1000 * measure.Metre

// readDrop reads how far down the lowest level beside the platform is. What no
// building has is refused and counts as not known.
func readDrop(s section) measure.Length {
	drop, _ := s.positive("dropDepth", optional)
	if drop > mostDrop {
		s.report(s.at+"/dropDepth", problem.Stop, words.Say("No building is so deep."), words.Say("Check the unit, or leave it empty if nobody knows."))
		return 0
	}
	return drop
}

// answer is yes, no, or not said.
func (s section) answer(name string, what words.Text) safety.Answer {
	return choice(s, name, what, safety.Answer(""), safety.Yes, safety.No)
}

// readYear reads the year the building was built. A year that no building
// stands from is refused and counts as not known.
func readYear(s section) int {
	year, err := measure.ParseYear(s.text("built"))
	switch {
	case err != nil:
		s.unreadable(s.at+"/built", err)
		return 0
	case year > 2999:
		s.report(s.at+"/built", problem.Stop, words.Say("This is no year a house was built in."), words.Say("Check the year, or leave it empty if nobody knows."))
		return 0
	}
	return year
}

func readMask(s section) Mask {
	var m Mask
	m.Length, _ = s.length("length", optional)
	m.Width, _ = s.length("width", optional)
	layers := s.items("layers")
	if len(layers) > MostLayers {
		s.report(s.at+"/layers", problem.Stop, words.Say("The mask has {n} layers; {most} are read.", words.Count("n", len(layers)), words.Count("most", MostLayers)), words.Say("Take out the layers that are not needed."))
		layers = layers[:MostLayers]
	}
	for i, entry := range layers {
		m.Layers = append(m.Layers, readLayer(s.object(entry.at, entry.node), i))
	}
	return m
}

// readCut reads the blanks of all ways a layer may be cut; only those of the way
// taken are remarked on and used.
func readCut(s section, cut *mask.Cut) {
	s.when(cut.Split == mask.ByCount, func() {
		cut.Columns, _ = s.count("columns", optional)
		cut.Rows, _ = s.count("rows", optional)
	})
	s.when(cut.Split == mask.BySizes, func() {
		cut.ColumnSizes = readSizes(s, "columnSizes")
		cut.RowSizes = readSizes(s, "rowSizes")
	})
	s.when(cut.Split == mask.ByGreatest, func() {
		cut.GreatestLength, _ = s.length("greatestLength", optional)
		cut.GreatestWidth, _ = s.length("greatestWidth", optional)
	})
}

// readSizes reads a list of panel sizes: all of it or, where it has more than are
// left for the plan, nothing, since a layer with some of its columns is another.
func readSizes(s section, name string) []measure.Length {
	var sizes []measure.Length
	for _, entry := range s.whole(name, &s.taken.sizes, mostSizes, words.Say("sizes")) {
		size, _ := entry.lengthAt(entry.at, entry.typed(entry.at, entry.node), optional)
		sizes = append(sizes, size)
	}
	return sizes
}

func readSetting(s section) Setting {
	set := Setting{
		On:     word(s, "on", words.Say("what the mask is centred on"), setout.OnRoom, setout.OnFixture, setout.OnPoint),
		Square: readSquare(s),
		Turned: choice(s, "turned", words.Say("whether the mask is turned a quarter"), "no", "yes") == "yes",
		Taped:  choice(s, "line", words.Say("what the mask outline is made with"), "tape", "chalk") == "tape",
	}
	s.when(set.On == setout.OnPoint, func() {
		var x, y bool
		set.PointDA, x = s.length("pointDA", words.Say("the distance from wall ZW to the point"))
		set.PointAB, y = s.length("pointAB", words.Say("the distance from wall WX to the point"))
		set.PointKnown = x && y
	})
	s.when(set.Taped, func() { set.TapeWidth, _ = s.length("tapeWidth", optional) })
	set.LeastBorder, _ = s.length("leastBorder", optional)
	set.WantEnds, set.WantEndsKnown = s.length("wantEnds", optional)
	set.WantSides, set.WantSidesKnown = s.length("wantSides", optional)
	return set
}

// readSquare reads what the box is square to. A word that is no name of a wall
// is refused here; a wall that the room does not have is for the setting out to
// say.
func readSquare(s section) string {
	text := s.text("square")
	switch {
	case text == "":
		return "room"
	case text == "room" || text == "fixture" || isWall(text):
		return text
	}
	s.report(s.at+"/square", problem.Caution, words.Say("{typed} is not among the choices for what the mask is square to: taken as the room.", words.Name("typed", problem.Quote(text))),
		words.Say("Choose the room, the light or a wall."))
	return "room"
}

// isWall tells whether a text is two capital letters, as walls are named.
func isWall(text string) bool {
	return len(text) == 2 && text[0] >= 'A' && text[0] <= 'Z' && text[1] >= 'A' && text[1] <= 'Z'
}

func readSeams(s section) Seams {
	seams := Seams{Cover: word(s, "cover", words.Say("what is bridged with tape"), mask.CoverSeams, mask.CoverOutside)}
	seams.Roll, _ = s.run("rollLength", optional)
	seams.Width, _ = s.positive("tapeWidth", optional)
	seams.Piece, _ = s.positive("pieceLength", optional)
	seams.Waste, _ = s.shareOrNone("waste", words.Say("waste of tape"), 100)
	return seams
}

func readAir(s section) air.Plan {
	if s.text("limit") != "" {
		word(s, "limitUnit", words.Say("the unit of the limit"), "mg/m3")
	}
	s.setAside("limitUnit")
	plan := air.Plan{
		Limit:     s.fact("limit"),
		ShortTerm: s.fact("shortTerm"),
		Opened:    s.fact("opened"),
		Shut:      s.fact("shut"),
		Mixing:    s.fact("mixing"),
		Fan:       s.fact("fan"),
		Nights:    choice(s, "nights", words.Say("whether the windows stay open at night"), air.NightsShut, air.NightsOpen),
	}
	if choice(s, "fanUnit", words.Say("the unit of the fan"), "m3/h", "cfm") == "cfm" {
		plan.Fan.Value = plan.Fan.Value.Mul(measure.CubicFootAMinute)
	}
	return plan
}

// fact reads a number that may be unknown.
func (s section) fact(name string) measure.Fact {
	if s.text(name) == "" {
		return measure.Fact{}
	}
	n, ok := s.number(name, optional)
	return measure.Fact{Value: n, Known: ok}
}

func readAccess(s section) Access {
	a := Access{
		By:    word(s, "by", words.Say("what the work is done from"), safety.Platform, safety.Ladder, safety.Floor),
		Rails: word(s, "rails", words.Say("whether the platform has rails"), safety.Answer(""), safety.Yes, safety.No),
	}
	a.Stature, _ = s.length("reachBy", optional)
	a.Base, _ = s.length("base", optional)
	a.DeckGap, _ = s.length("deckGap", optional)
	a.DeckLength, _ = s.positive("deckLength", optional)
	a.DeckWidth, _ = s.positive("deckWidth", optional)
	a.ArmReach, _ = s.length("armReach", optional)
	a.Overlap, _ = s.length("overlap", optional)
	a.Turn = choice(s, "turn", words.Say("whether the platform may be turned"), "yes", "no") == "yes"
	readPlatform(s, &a)
	return a
}

// readPlatform reads what else is known of the platform, whatever the work is
// done from; only what is chosen is used.
func readPlatform(s section, a *Access) {
	a.Kind = choice(s, "kind", words.Say("what kind of platform it is"), safety.Kind(""), safety.HopUp, safety.Podium, safety.Tower, safety.Scaffold)
	a.Reach, _ = s.positive("reach", optional)
	a.OtherStature, _ = s.positive("alsoBy", optional)
	a.LadderHeight, _ = s.positive("ladderHeight", optional)
	a.RailHeight, _ = s.positive("railHeight", optional)
	a.RailGap, _ = s.positive("railGap", optional)
	a.FootLength, _ = s.positive("footLength", optional)
	a.FootWidth, _ = s.positive("footWidth", optional)
	a.Wheels, a.Rides = s.answer("wheels", words.Say("whether the wheels are locked")), s.answer("rides", words.Say("whether it is moved with someone on it"))
	a.ToeBoards, a.WayUp, a.Tied = s.answer("toeBoards", words.Say("whether there are toe boards")), s.answer("wayUp", words.Say("whether there is a way up inside")), s.answer("tied", words.Say("whether it is tied"))
	a.BaseChecked = s.answer("baseChecked", words.Say("whether the maker's table allows this base"))
	unit := measure.NumberFromInt(1)
	if choice(s, "massUnit", words.Say("the unit of the weights"), "kg", "lb") == "lb" {
		unit = measure.Pound
	}
	a.Rated, a.Load, a.Mass, a.Panel = s.kilograms("rated", unit), s.kilograms("load", unit), s.kilograms("mass", unit), s.kilograms("panel", unit)
	if s.text("onDeck") != "" {
		a.OnDeck, _ = s.count("onDeck", optional)
	}
	a.Minutes = s.fact("minutes")
}

func (s section) kilograms(name string, unit measure.Number) measure.Fact {
	f := s.fact(name)
	f.Value = f.Value.Mul(unit)
	return f
}
