package plan

import (
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/jsondoc"
	"ceilingwright/core/words"
)

// Starting is the steps that a plan begins or goes on with, as the JSON text of
// a list of steps, each with every blank that a step has. what is a set, such as
// one-layer, or a kind of step; of any other word the list is empty.
//
// They are written for the plan: feet and inches or metric as it shows, ids that
// none of its steps has, its own layers. A step by itself goes on with the layer
// of the last step that names one. A layer that the plan does not have is left
// empty, and the sheet then asks for it. Of a document that is no plan they are
// written as for an empty one. language is the one they are called in, none for ours.
func (d Document) Starting(what string, language *words.Language) []byte {
	s := &starting{plan: &d.Plan, language: language, taken: map[string]bool{}, metric: d.Plan.Units.Show == ShowMetric}
	for i := range d.Plan.Steps {
		s.taken[d.Plan.Steps[i].ID] = true
	}
	s.w.Open('[')
	steps := finish.Set(what).Steps()
	for i := range steps {
		s.write(&steps[i], s.layer(steps[i].Layer))
	}
	if kind, ok := finish.ParseKind(what); ok {
		step, _ := finish.StepOf(kind)
		s.write(&step, s.goesOn(&step))
	}
	s.w.Close(']')
	return s.w.Bytes()
}

// starting is steps being written for a plan.
type starting struct {
	plan     *Plan
	language *words.Language
	taken    map[string]bool
	metric   bool
	w        jsondoc.Writer
}

// layer is the n-th layer of the plan, counted from 1, or none.
func (s *starting) layer(n int) *Layer {
	if n < 1 || n > len(s.plan.Mask.Layers) {
		return nil
	}
	return &s.plan.Mask.Layers[n-1]
}

// goesOn is the layer a single step belongs to: that of the last step that names
// one, else the first; none for what is done to the whole ceiling.
func (s *starting) goesOn(step *finish.Begun) *Layer {
	if step.Basis == finish.Surface || step.Kind == finish.Protect {
		return nil
	}
	for i := len(s.plan.Steps) - 1; i >= 0; i-- {
		for k := range s.plan.Mask.Layers {
			if l := &s.plan.Mask.Layers[k]; l.Cut.ID == s.plan.Steps[i].LayerID {
				return l
			}
		}
	}
	return s.layer(1)
}

// freeID is the kind with the least number that makes an id not yet taken.
func (s *starting) freeID(kind finish.Kind) string {
	for n := 1; ; n++ {
		if id := string(kind) + strconv.Itoa(n); !s.taken[id] {
			s.taken[id] = true
			return id
		}
	}
}

func (s *starting) write(step *finish.Begun, layer *Layer) {
	name, layerID := step.Name, ""
	if layer != nil {
		layerID = layer.Cut.ID
		if len(s.plan.Mask.Layers) > 1 {
			name = words.Say("{step}, {layer}", words.Of("step", name), words.Name("layer", layer.Cut.Name))
		}
	}
	basis, surface := s.surface(step)
	s.w.Open('{')
	s.texts("id", s.freeID(step.Kind), "kind", string(step.Kind), "name", name.In(words.Style{Language: s.language}), "area", string(basis), "layer", layerID,
		"share", "100", "surface", surface, "typedArea", "", "typedUnit", s.either("ft2", "m2"),
		"edgeLength", "", "brushWidth", s.brush(step), "coats", step.Coats)
	s.film(step)
	s.texts("loss", step.Loss, "method", "", "vary", "", "varyOf", "cover", "buyFor", "likely", "sameAs", "", "oneBatch", "no",
		"keep", "", "keepUnit", s.either("cup", "mL"), "voc", "", "vocUnit", "g/L", "vocAs", "material", "waterPart", "", "exemptPart", "", "category", "", "limit", "", "flash", "", "flashUnit", s.either("F", "C"), "binder", step.Binder,
		"dryHours", step.DryHours, "recoatHours", "", "tackHours", "", "readyAt", "", "openHours", step.OpenHours, "gilders", "", "reserve", "", "sizeBeyond", "",
		"rate", "", "rateUnit", s.either("ft2/h", "m2/h"), "spare", "", "potLife", "", "sample", "", "sampleUnit", s.either("cup", "mL"),
		"batch", "", "colour", "", "madeOn", "")
	s.none("cans")
	s.none("mix")
	s.leaf(step.Kind)
	s.w.Close('}')
}

func (s *starting) texts(pairs ...string) {
	for i := 0; i+1 < len(pairs); i += 2 {
		s.w.Text(pairs[i], pairs[i+1])
	}
}

// either is a word of a plan in feet and inches, or of a metric one.
func (s *starting) either(us, metric string) string {
	if s.metric {
		return metric
	}
	return us
}

func (s *starting) none(list string) {
	s.w.Key(list)
	s.w.Open('[')
	s.w.Close(']')
}

// film is the spread of a step with the blanks that stand in its place. A gallon
// of a plan with imperial gallons is not the one the starting values are by, so
// that plan gets them by the litre.
func (s *starting) film(step *finish.Begun) {
	spread, unit := step.SpreadUS, "ft2/gal"
	if s.metric || s.plan.Units.Gallon == ImperialGallon {
		spread, unit = step.SpreadMetric, "m2/L"
	}
	s.texts("by", "spread", "spread", spread, "spreadUnit", unit, "film", "", "filmUnit", s.either("mil", "um"),
		"dryFilm", "", "dryFilmUnit", s.either("mil", "um"), "solids", "", "thinned", "")
}

// brush is the width of the brush of a step along the edges: common practice,
// no source.
func (s *starting) brush(step *finish.Begun) string {
	if step.Basis != finish.Edges {
		return ""
	}
	return s.either(`1"`, "25 mm")
}

// surface is the walls of the plan, where it has any, for a step whose area
// would have to be typed.
func (s *starting) surface(step *finish.Begun) (basis finish.Basis, id string) {
	if step.Basis == finish.Typed {
		for i := range s.plan.Finish.Surfaces {
			if f := &s.plan.Finish.Surfaces[i]; f.Kind == Walls {
				return finish.SurfaceOf, f.ID
			}
		}
	}
	return step.Basis, ""
}

// leaf is the leaf of a leaf step, imitation until another metal is chosen.
func (s *starting) leaf(kind finish.Kind) {
	s.w.Key("leaf")
	start, ok := finish.StartingLeaf(finish.Imitation)
	if kind != finish.LeafLaying || !ok {
		s.w.Null()
		return
	}
	side, lap := s.either(start.Side, start.SideMetric), s.either(start.Lap, start.LapMetric)
	s.w.Open('{')
	s.texts("metal", string(start.Metal), "length", side, "width", side, "lap", lap, "cover", start.Cover, "waste", start.Waste,
		"perBook", start.PerBook, "booksPerPack", start.BooksPerPack, "lay", string(Field), "bandWidth", "", "bandRun", "", "bandCorners", "", "bandEnds", "open",
		"spill", "", "openingsEdge", "", "pricePerBook", "", "pricePerPack", "", "gramsPer1000", "")
	s.w.Close('}')
}
