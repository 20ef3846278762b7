// Package hung works out how the layers are hung: where the platform stands, which
// panels are kept up, and in which order the panels go up.
package hung

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/job/setting"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// Platform is where the platform stands, for all layers alike; none where its size is
// not known.
type Platform struct {
	Layout  hanging.Layout
	Footing hanging.Platform
}

// StandPlatform works out the places of the platform.
func StandPlatform(plan *plan.Plan, set *setting.Setting) (stands Platform, wrong problem.List) {
	a := &plan.Access
	p := hanging.Platform{Length: a.DeckLength, Width: a.DeckWidth, Arm: a.ArmReach, Overlap: a.Overlap, Turn: a.Turn}
	wrong.Report("/access", p.Check())
	if !p.IsKnown() {
		return stands, wrong
	}
	room := roomRoundBox(set)
	layout, problems := hanging.LayoutFor(plan.Mask.Outline, p, room)
	wrong.Report("/access", problems)
	for _, s := range layout.Stations {
		if room.Length > 0 && !s.Fits(room) {
			wrong.Remark("/access/deckLength", problem.Caution, words.Say("The deck is larger than the room."), words.Say("Check its length and width, or take a smaller platform."))
			break
		}
	}
	return Platform{Layout: layout, Footing: p}, wrong
}

// roomRoundBox is the room in the frame of the box, as far as the borders tell;
// none where there is no box.
func roomRoundBox(s *setting.Setting) hanging.Rect {
	if !s.Placed {
		return hanging.Rect{}
	}
	box := &s.Choice.Box
	at := func(side survey.Wall) measure.Length { return s.Choice.Borders.At(box.Facing(side)) }
	return hanging.Rect{X: -at(survey.DA), Length: at(survey.DA) + box.Length + at(survey.BC),
		Y: -at(survey.AB), Width: at(survey.AB) + box.Width + at(survey.CD)}
}

// reaches tells whether a rectangle in the frame of the box is in reach from one place,
// so that what is beside it can be set to it without a move. Without a platform
// everything is.
func (p *Platform) reaches(r hanging.Rect) bool {
	for i := range p.Layout.Stations {
		reach := &p.Layout.Stations[i].Reach
		if r.X >= reach.X && r.Y >= reach.Y && r.X+r.Length <= reach.X+reach.Length && r.Y+r.Width <= reach.Y+reach.Width {
			return true
		}
	}
	return len(p.Layout.Stations) == 0
}
