package setting

import (
	"ceilingwright/core/job"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/room"
	"ceilingwright/core/job/setting"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	tellmask "ceilingwright/core/tell/mask"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Called is a thing as it is spoken of: the fixture, or an obstruction by its
// name and kind.
func Called(t *room.Thing) words.Text {
	kind := survey.Kind(t.Kind)
	switch {
	case t.Light:
		return survey.TheLight
	case t.Name != "" && (kind == "" || kind == survey.OtherKind):
		return words.Say("“{name}”", words.Name("name", t.Name))
	}
	return survey.Obstruction{Name: t.Name, Kind: kind}.Called()
}

// CutOuts says on the panels of a layer that a thing on the ceiling comes through
// where to cut.
func CutOuts(p *page.Page, j *job.Job, l *layers.Layer, panels []sheet.Panel) {
	for i := range j.Setting.Under {
		u := &j.Setting.Under[i]
		if u.Layer != l.Panels.ID {
			continue
		}
		panel := &panels[l.Panels.Index(u.Cut.Panel)]
		if panel.Cut != "" {
			panel.Cut += " "
		}
		panel.Cut += p.Told(cutFor(j, &j.Room.Things[u.Thing], u))
	}
}

func cutFor(j *job.Job, t *room.Thing, u *setting.Under) words.Text {
	thing, place := words.Of("thing", Called(t)), words.Of("place", tellmask.FromEdges(j, u.Cut.Middle))
	length, width := words.Length("length", t.Length), words.Length("width", t.Width)
	text := words.Say("For {thing}, {length} × {width}: its middle is {place}.", thing, length, width, place)
	switch {
	case t.Length <= 0:
		text = words.Say("For {thing}: its middle is {place}.", thing, place)
	case t.Round:
		text = words.Say("For {thing}, {length} across: its middle is {place}.", thing, length, place)
	}
	return words.Sentences(text, tellmask.Edges(j, &u.Cut, t.Round))
}

// objects says of each thing in the ceiling on which panels it falls.
func (t *teller) objects() {
	for i := range t.Sheet.Objects {
		o := &t.Sheet.Objects[i]
		for k := range t.Setting.Under {
			u := &t.Setting.Under[k]
			if thing := &t.Room.Things[u.Thing]; thing.At == o.At {
				o.Panels = append(o.Panels, sheet.ObjectPanel{Layer: u.Layer, Panel: u.Cut.Panel.Label(), Text: t.Told(tellmask.Middle(t.Job, &u.Cut, thing.Round))})
			}
		}
	}
}

// SeamFlags are the seams of a layer that run into a thing on the ceiling.
func SeamFlags(p *page.Page, j *job.Job, l *layers.Layer) (flags []string) {
	for i := range j.Setting.SeamsHit {
		if hit := &j.Setting.SeamsHit[i]; hit.Layer == l.Panels.ID {
			flags = append(flags, p.Say("Seam {seam} runs into {thing}: bridge it on both sides, and cut the tape round.",
				words.Name("seam", hit.Seam.Name), words.Of("thing", Called(&j.Room.Things[hit.Thing]))))
		}
	}
	return flags
}
