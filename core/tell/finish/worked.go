package finish

import (
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/job/pricing"
	"ceilingwright/core/measure"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Worked is the area of parts of the room, what they are called, and the sum they make.
func Worked(p *page.Page, j *job.Job, parts []pricing.WorkedPart) (all measure.Area, names words.Text, sum string) {
	areas := make([]string, len(parts))
	for i := range parts {
		part := &parts[i]
		all.SquareMetres = all.SquareMetres.Add(part.Area.SquareMetres)
		areas[i] = p.ExactArea(part.Area)
		if i == 0 {
			names = worked(j, part)
		} else {
			names = words.Say("{one} and {other}", words.Of("one", names), words.Of("other", worked(j, part)))
		}
	}
	if sum = strings.Join(areas, " + "); len(parts) > 1 {
		sum = "(" + sum + ")"
	}
	return all, names, sum
}

func worked(j *job.Job, part *pricing.WorkedPart) words.Text {
	switch part.Of {
	case pricing.CeilingWorked:
		return words.Say("the ceiling")
	case pricing.MaskWorked:
		return words.Say("the mask")
	case pricing.BorderWorked:
		return words.Say("the border")
	case pricing.SurfaceWorked:
		return words.Say("“{surface}”", words.Name("surface", j.Covers[part.Step].Surface.Name))
	}
	return words.Say("the area typed")
}
