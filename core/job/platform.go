package job

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/measure"
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

// StandPlatform works out the places of the platform. It reads the plan and where the
// mask goes.
func (j *Job) StandPlatform() {
	j.Platform = Platform{}
	a := &j.Plan.Access
	p := hanging.Platform{Length: a.DeckLength, Width: a.DeckWidth, Arm: a.ArmReach, Overlap: a.Overlap, Turn: a.Turn}
	j.Report("/access", p.Check())
	if !p.IsKnown() {
		return
	}
	room := j.roomRoundBox()
	layout, problems := hanging.LayoutFor(j.Plan.Mask.Outline, p, room)
	j.Report("/access", problems)
	j.Platform = Platform{Layout: layout, Footing: p}
	for _, s := range layout.Stations {
		if room.Length > 0 && !s.Fits(room) {
			j.Report("/access/deckLength", []problem.Problem{{Severity: problem.Caution,
				What: words.Say("The deck is larger than the room."), Do: words.Say("Check its length and width, or take a smaller platform.")}})
			return
		}
	}
}

// roomRoundBox is the room in the frame of the box, as far as the borders tell;
// none where there is no box.
func (j *Job) roomRoundBox() hanging.Rect {
	if !j.Setting.Placed {
		return hanging.Rect{}
	}
	box := &j.Setting.Choice.Box
	at := func(side survey.Wall) measure.Length { return j.Setting.Choice.Borders.At(box.Facing(side)) }
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
