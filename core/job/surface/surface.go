// Package surface holds what is found of one surface: a ceiling, and the mask on it.
package surface

import (
	"ceilingwright/core/job/hung"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/meeting"
	"ceilingwright/core/job/room"
	"ceilingwright/core/job/setting"
	"ceilingwright/core/plan"
)

// Surface is one surface, from the room it is in to how the layers of its mask meet.
type Surface struct {
	Room room.Room
	layers.Mask
	Tape     layers.Tape
	Setting  setting.Setting
	Platform hung.Platform
	// Keys are the panels kept up, layer by layer.
	Keys     []hung.Key
	Hanging  hung.Hanging
	Standing hung.Standing
	Meeting  meeting.Meeting
}

// On is what the layers are hung on and from.
func (s *Surface) On(p *plan.Plan) hung.On {
	return hung.On{Plan: p, Room: &s.Room, Layers: s.Layers, Setting: &s.Setting, Platform: &s.Platform}
}

// Hung is layer i and how it is hung, as far as that is worked out.
func (s *Surface) Hung(i int) hung.Layer {
	l := hung.Layer{Layer: &s.Layers[i], Hung: &hung.Hung{}, Key: &hung.Key{}}
	if i < len(s.Hanging.Layers) {
		l.Hung = &s.Hanging.Layers[i]
	}
	if i < len(s.Keys) {
		l.Key = &s.Keys[i]
	}
	if i < len(s.Standing.Layers) {
		l.Stands = s.Standing.Layers[i]
	}
	return l
}
