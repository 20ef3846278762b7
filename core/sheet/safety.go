package sheet

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/survey"
)

// safety is the block Safety: the platform, the air and the notes.
func (b *builder) safety() {
	job := b.job()
	b.platform(job)
	b.air(job)
	for _, note := range safety.Notes(job, b.safetyStyle()) {
		b.sheet.Safety = append(b.sheet.Safety, Advice{
			ID: note.ID, Severity: string(note.Severity), Words: note.Words, Source: note.Source,
			Jurisdiction: note.Jurisdiction, At: note.At, Figures: note.Figures,
		})
	}
}

// roomAir is the air in the room: the ceiling's area times its height. Without a height
// it is zero.
func (b *builder) roomAir() measure.Volume {
	if !b.shape.Usable() {
		return measure.Volume{}
	}
	return measure.VolumeOver(b.shape.Area(), b.plan.Room.Height)
}

// job is what the rules read, taken from the plan and from what the steps use.
func (b *builder) job() safety.Job {
	p := b.plan
	job := safety.Job{
		Country: p.Place.Rules, Year: p.Place.Built, Textured: p.Place.Textured, Lead: p.Place.Lead, Pull: p.Place.Pull,
		CeilingHeight: p.Room.Height, RoomVolume: b.roomAir(), Fixture: safety.Yes,
		Access: p.Access.By, Base: p.Access.Base, Rails: p.Access.Rails, DeckGap: p.Access.DeckGap,
		MaskArea: p.Mask.Area(), Air: p.Air,
	}
	if p.Fixture.At == survey.NoFixture {
		job.Fixture = safety.No
	}
	if p.Access.Stature > 0 {
		job.Crew = []measure.Length{p.Access.Stature}
	}
	for _, made := range b.products {
		job.Products = append(job.Products, safety.Product{
			At: made.step.At, StepName: made.step.Name,
			Litres: safety.Fact{Value: made.need.Litres, Known: made.known},
			VOC:    made.step.VOC, Binder: made.step.Binder, Coats: int64(made.step.Coats), DryHours: made.step.DryHours,
		})
	}
	for _, s := range p.Steps {
		if s.Kind == finish.LeafLaying && s.Leaf != nil {
			job.Leaf = append(job.Leaf, safety.Metal(s.Leaf.Metal))
		}
	}
	return job
}

func (b *builder) safetyStyle() safety.Style {
	step := metricStep
	if b.n.System == measure.FeetInches {
		step = inchStep
	}
	return safety.Style{Length: b.n.Length, Area: b.n.Area, Number: b.n.Number, Step: step}
}

const reachSource = "Grip reach 1.185 times stature: S. Pheasant, Bodyspace, 1996, as reprinted in a course table. The aim of 1.10 times stature under the ceiling is derived: head clear, elbows bent."

// platform is the height of deck to ask for.
func (b *builder) platform(job safety.Job) {
	deck, problems := safety.DeckFor(job.CeilingHeight, job.Crew...)
	b.report("", problems)
	if len(problems) > 0 {
		return
	}
	stature, who := measure.Length(1700)*measure.Millimetre, "a fitter of "
	if !deck.Assumed {
		stature = job.Crew[0]
	} else {
		who = "a fitter taken as "
	}
	ceiling, tall := b.put(job.CeilingHeight), b.put(stature)
	b.deck("platform.height", "height of deck to ask for", deck.Best, nearest,
		"The ceiling less 1.10 times the height of "+who+tall+", to the nearest step. This is deck height, not “working height”.", ceiling+" − 1.10 × "+tall)
	b.deck("platform.least", "deck at least", deck.Least, upwards, "The ceiling less the reach, 1.185 times the height.", ceiling+" − 1.185 × "+tall)
	b.deck("platform.most", "deck at most", deck.Most, downwards, "The ceiling less the height and a little head room.", ceiling+" − "+tall+" − "+b.put(10*measure.Centimetre))
	ratio := safety.BaseRatio(job.Country)
	if base := deck.Base(ratio); base > 0 {
		source := "29 CFR 1926.451(c)(1): more than four times the least base needs tying, guying or bracing."
		if ratio != 4 {
			source = "Screening figure after the stricter ratio reported for California, seen in a secondary copy; EN 1004-1 leaves it to the maker's table."
		}
		b.length(blockSafety, "platform.base", "base at least", base, "Deck and rails over the ratio of height to base.",
			"("+b.put(deck.Best)+" + "+b.put(safety.RailHeight)+") ÷ "+b.n.Number(measure.NumberFromInt(ratio), 0), source)
	}
}

// Steps of a platform's height: nobody sets one to a sixteenth.
const (
	metricStep = 50 * measure.Millimetre
	inchStep   = 2 * measure.Inch
)

// How a height of deck is said in whole steps: the aim to the nearest one, the
// least up and the most down.
func nearest(l, step measure.Length) measure.Length   { return l.ToMark(step) }
func upwards(l, step measure.Length) measure.Length   { return (l + step - 1) / step * step }
func downwards(l, step measure.Length) measure.Length { return l / step * step }

// deck is a height of deck, said in whole steps. Value and working have it
// exactly.
func (b *builder) deck(id, label string, l measure.Length, round func(l, step measure.Length) measure.Length, rule, sum string) {
	step, other := inchStep, metricStep
	if b.n.System == measure.Metric {
		step, other = other, step
	}
	b.figure(Figure{
		ID: id, Block: blockSafety, Label: label, Value: nanometres(l), Unit: "nm",
		Text: b.n.Length(round(l, step)), Other: b.other.Length(round(l, other)),
		Working: Working{Rule: rule, Sum: sum + " = " + b.exactly(l), Source: reachSource},
	})
}

const airSource = "Well-mixed room, screening figure: your face is nearer the wet film than the model. Air changes and mixing: CDC, MMWR 43 RR-13, 1994; purge: CDC Environmental Infection Control Guidelines 2003, table B.1."

// air is what the products give off into the room. A finish without any has
// nothing to say of it.
func (b *builder) air(job safety.Job) {
	if len(job.Products) == 0 {
		return
	}
	air, problems := safety.AirOf(job)
	b.report("", problems)
	room := cubic(b.n, job.RoomVolume)
	b.fact("air.mass", "solvent given off in all", air.Mass, "g", 0,
		"Litres times the VOC of each product, added up.", b.masses(), airSource)
	b.fact("air.peak", "at most, room shut", air.Peak, "mg/m³", 0,
		"All of it at once in the air of the shut room. A screening figure, not a forecast.", b.amount(air.Mass, 0)+" g ÷ "+room, airSource)
	b.fact("air.changes", "air changes needed", air.Changes, "an hour", 1,
		"Mixing factor times what the worst coat gives off in an hour, over the limit and the room.",
		b.amount(b.plan.Air.Mixing, 1)+" × "+b.amount(air.Rate, 1)+" g/h ÷ "+b.amount(b.plan.Air.Limit, 0)+" mg/m³ ÷ "+room, airSource)
	b.fact("air.purge", "airing, down to the limit", air.Purge, "h", 1,
		"From the peak down to the limit: mixing factor over air changes, times the natural logarithm of peak over limit.",
		b.purgeSum(air), airSource)
}

// purgeSum is the airing written out; a peak that the limit allows needs none.
func (b *builder) purgeSum(air safety.Air) string {
	peak, limit := b.amount(air.Peak, 0), b.amount(b.plan.Air.Limit, 0)
	if air.Peak.Value.Cmp(b.plan.Air.Limit.Value) <= 0 {
		return peak + " mg/m³ is not above " + limit + " mg/m³"
	}
	return b.amount(b.plan.Air.Mixing, 1) + " ÷ " + b.amount(b.plan.Air.Opened, 1) + " × ln(" + peak + " ÷ " + limit + ")"
}

// masses is what each product gives off, written as a sum.
func (b *builder) masses() string {
	sum := ""
	for _, p := range b.products {
		if !p.known || !p.step.VOC.Known {
			continue
		}
		if sum != "" {
			sum += " + "
		}
		sum += b.n.Number(p.need.Litres, 2) + " L × " + b.n.NumberTrimmed(p.step.VOC.Value, 0) + " g/L"
	}
	if sum == "" {
		return "nothing"
	}
	return sum
}

func (b *builder) amount(f safety.Fact, places int32) string {
	if !f.Known {
		return "?"
	}
	return b.n.NumberTrimmed(f.Value, places)
}

func (b *builder) fact(id, label string, f safety.Fact, unit string, places int32, rule, sum, source string) {
	if !f.Known {
		return
	}
	text := b.n.Number(f.Value, places) + " " + unit
	base := map[string]string{"g": "g", "mg/m³": "mg/m3", "an hour": "1/h", "h": "h"}[unit]
	b.figure(Figure{ID: id, Block: blockSafety, Label: label, Value: plain(f.Value), Unit: base, Text: text,
		Working: Working{Rule: rule, Sum: sum + " = " + text, Source: source}})
}
