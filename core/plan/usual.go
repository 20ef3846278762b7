package plan

import (
	"strings"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// usual is what a length may sensibly be: what names the thing in a sentence.
// A number typed without its unit that comes out beyond it is asked about where
// another unit of the same system would make sense; with a unit it is taken.
type usual struct {
	what        words.Text
	least, most measure.Length
}

// usualAt are the lengths that are asked about, by their pointers with # for
// the place in a list. Common practice, no source: each leaves out only what
// nobody builds, owns or is, so that a plain number is taken as it stands.
var usualAt = map[string]usual{
	"/room/length":                      ofRoom,
	"/room/width":                       ofRoom,
	"/room/diagonalAC":                  ofRoom,
	"/room/diagonalBD":                  ofRoom,
	"/room/readings/#/length":           ofRoom,
	"/room/walls/#/length":              {words.Say("a wall"), 2 * measure.Inch, 120 * measure.Foot},
	"/room/height":                      {words.Say("the height of a room"), 5 * measure.Foot, 80 * measure.Foot},
	"/room/fixture/across":              {words.Say("a light"), 40 * measure.Millimetre, 10 * measure.Foot},
	"/room/obstructions/#/across":       {words.Say("a thing in the ceiling"), 20 * measure.Millimetre, 10 * measure.Foot},
	"/room/furniture/#/length":          ofFurniture,
	"/room/furniture/#/width":           ofFurniture,
	"/mask/length":                      ofMask,
	"/mask/width":                       ofMask,
	"/mask/layers/#/columnSizes/#":      ofPanel,
	"/mask/layers/#/rowSizes/#":         ofPanel,
	"/mask/layers/#/greatestLength":     ofPanel,
	"/mask/layers/#/greatestWidth":      ofPanel,
	"/mask/layers/#/panels/#/length":    ofPanel,
	"/mask/layers/#/panels/#/width":     ofPanel,
	"/mask/layers/#/gap":                {words.Say("a gap"), 0, 6 * measure.Inch},
	"/mask/layers/#/gaps/#/gap":         {words.Say("a gap"), 0, 6 * measure.Inch},
	"/mask/layers/#/panelTolerance":     ofTolerance,
	"/mask/layers/#/register/tolerance": ofTolerance,
	"/room/tape/deviation":              ofTolerance,
	"/room/tape/readTo":                 ofTolerance,
	"/setting/tapeWidth":                ofTape,
	"/seams/tapeWidth":                  ofTape,
	"/seams/rollLength":                 {words.Say("a roll of tape"), 16 * measure.Foot, 3000 * measure.Foot},
	"/seams/pieceLength":                {words.Say("a piece of tape"), 8 * measure.Inch, 100 * measure.Foot},
	"/access/deckLength":                ofDeck,
	"/access/deckWidth":                 ofDeck,
	"/access/footLength":                ofDeck,
	"/access/footWidth":                 ofDeck,
	"/access/reachBy":                   {words.Say("the height of a grown person"), 4 * measure.Foot, 8 * measure.Foot},
	"/access/alsoBy":                    {words.Say("the height of a grown person"), 4 * measure.Foot, 8 * measure.Foot},
	"/access/reach":                     {words.Say("the height one works at"), 4 * measure.Foot, 10 * measure.Foot},
	"/access/armReach":                  {words.Say("the reach of an arm"), 4 * measure.Inch, 5 * measure.Foot},
	"/access/ladderHeight":              {words.Say("a stepladder"), 15 * measure.Inch, 30 * measure.Foot},
	"/access/railHeight":                {words.Say("the height of rails"), 15 * measure.Inch, 6 * measure.Foot},
	"/finish/surfaces/#/girth":          {words.Say("the girth of the profile"), measure.Inch, 8 * measure.Foot},
	"/finish/surfaces/#/height":         {words.Say("the height of walls"), 12 * measure.Inch, 80 * measure.Foot},
	"/finish/steps/#/brushWidth":        {words.Say("a brush"), 4 * measure.Millimetre, 16 * measure.Inch},
	"/finish/steps/#/leaf/length":       ofLeaf,
	"/finish/steps/#/leaf/width":        ofLeaf,
}

var (
	ofRoom      = usual{words.Say("a side of a room"), 3 * measure.Foot, 120 * measure.Foot}
	ofMask      = usual{words.Say("a side of a mask"), 18 * measure.Inch, 120 * measure.Foot}
	ofPanel     = usual{words.Say("a panel"), 6 * measure.Inch, 30 * measure.Foot}
	ofDeck      = usual{words.Say("a platform"), 12 * measure.Inch, 40 * measure.Foot}
	ofFurniture = usual{words.Say("a thing on the floor"), 6 * measure.Inch, 40 * measure.Foot}
	ofTape      = usual{words.Say("the width of tape"), 5 * measure.Millimetre, 12 * measure.Inch}
	ofTolerance = usual{words.Say("an error in reading or cutting"), 0, 2 * measure.Inch}
	ofLeaf      = usual{words.Say("a leaf"), 20 * measure.Millimetre, 16 * measure.Inch}
)

func (u usual) holds(l measure.Length) bool { return l >= u.least && l <= u.most }

// doubt is a question about a number without a unit, with what may be meant to
// choose from; none where there is nothing to ask. l is how it was read, known
// whether it could be.
func (r *reader) doubt(at, text string, l measure.Length, known bool) (question problem.Problem, asks bool) {
	if !measure.IsBare(text) {
		return problem.Problem{}, false
	}
	u, listed := usualAt[numbersLeftOut(at)]
	// Nothing is no length in any unit.
	if !listed || known && (l == 0 || u.holds(l)) {
		return problem.Problem{}, false
	}
	var said []words.Text
	var answers []string
	offer := func(unit measure.Unit) {
		said, answers = append(said, spoken(text, unit)), append(answers, text+" "+string(unit))
	}
	for _, unit := range sameSystem(r.units.Bare) {
		if other, err := measure.Parse(text, unit); err == nil && unit != r.units.Bare && u.holds(other) {
			offer(unit)
		}
	}
	if len(answers) == 0 {
		return problem.Problem{}, false
	}
	if known {
		offer(r.units.Bare)
	}
	typed, what, offers := words.Of("typed", spoken(text, r.units.Bare)), words.Of("what", u.what), words.Either("offers", said)
	asked := words.Say("{typed} is very much for {what}: {offers}?", typed, what, offers)
	if known && l < u.least {
		asked = words.Say("{typed} is very little for {what}: {offers}?", typed, what, offers)
	}
	written := make([]words.Text, len(answers))
	for i := range answers {
		written[i] = words.Verbatim(answers[i])
	}
	return problem.Problem{At: at, Severity: problem.Stop, What: asked, Do: words.Say("Write {offers}.", words.Either("offers", written)), Answers: answers}, true
}

// sameSystem are the units a number may have been meant in whose writer thinks in
// this one, the likeliest first.
func sameSystem(unit measure.Unit) []measure.Unit {
	switch unit {
	case measure.UnitInch, measure.UnitFoot:
		return []measure.Unit{measure.UnitFoot, measure.UnitInch}
	}
	return []measure.Unit{measure.UnitMetre, measure.UnitCentimetre, measure.UnitMillimetre}
}

// spoken is a number with its unit as one says it.
func spoken(text string, unit measure.Unit) words.Text {
	number := words.Name("number", text)
	switch {
	case unit == measure.UnitFoot && text == "1":
		return words.Say("1 foot")
	case unit == measure.UnitFoot:
		return words.Say("{number} feet", number)
	case unit == measure.UnitInch && text == "1":
		return words.Say("1 inch")
	case unit == measure.UnitInch:
		return words.Say("{number} inches", number)
	}
	return words.Verbatim(text + " " + string(unit))
}

// numbersLeftOut is a pointer with # for every place in a list.
func numbersLeftOut(at string) string {
	steps := strings.Split(at, "/")
	for i, step := range steps {
		if step != "" && step[0] >= '0' && step[0] <= '9' {
			steps[i] = "#"
		}
	}
	return strings.Join(steps, "/")
}
