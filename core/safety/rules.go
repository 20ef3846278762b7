package safety

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// rule is one row of the table below. It is laid out to be read without Go:
// "when" says in words what "fires" tests.
type rule struct {
	id       string // public and stable
	severity problem.Severity
	where    []Country // whose rule it is; none: everybody's
	subject  string    // of the rules about one subject only the most severe is told
	at       string    // the place in the plan it hangs on
	atStep   func(facts) string
	when     string
	fires    func(facts) bool
	words    string // amounts stand in braces
	working  string // the numbers of this job that the rule went by, amounts in braces
	decides  string // who has the last word, a sentence of its own
	source   string
	figures  []string
	bites    []Block // where in the work a stop or a caution has to be seen too
}

// Who has the last word.
const (
	code        = "Local code and the site's competent person decide."
	maker       = "The maker's manual and local code decide."
	label       = "The label and the product's safety data sheet decide."
	licensed    = "Licensed people do this work; local code decides."
	electrician = "A licensed electrician does this work; local code decides."
	fireFirm    = "The firm that looks after the fire equipment and local code decide."
)

var inUS, inEurope = []Country{US}, []Country{UK, EU}

// section is a part of the table. They stand in the order of the work: what has to
// be known of the building, how to get up, what is used there.
type section struct {
	name  string
	rules []rule
}

// sections is the table. Sources marked "from memory" or "seen in a secondary copy"
// are to be checked before anybody relies on them. "Derived" marks what was
// worked out from the sources named with it.
func sections() []section {
	return []section{
		{"The sheet itself", sheetRules()},
		{"Old paint and old coats", oldPaintRules()},
		{"The light and its wires", wireRules()},
		{"Detectors and sprinklers", detectorRules()},
		{"Ladders", ladderRules()},
		{"The height of the deck", deckRules()},
		{"Rails", railRules()},
		{"Base, wheels and build", baseRules()},
		{"Overhead work", overheadRules()},
		{"The air and what burns in it", airRules()},
		{"Rags, dust, eyes and skin", dustRules()},
	}
}

// rules is every rule of the table, section after section.
func rules() []rule {
	var all []rule
	for _, s := range sections() {
		all = append(all, s.rules...)
	}
	return all
}

// sheetRules are about this sheet and who is there.
func sheetRules() []rule {
	return []rule{
		{
			id: "planning-help-only", severity: problem.Note, at: "",
			when:    "always.",
			fires:   func(f facts) bool { return true },
			words:   "This sheet helps to plan. It does not show that the work is safe or allowed, and what it says about air is a screening figure. Makers' manuals and labels come first.",
			decides: code,
			source:  "Common practice, no source.",
		},
		{
			id: "country-not-known", severity: problem.Note, at: "/place/rules",
			when:    "the country is other than US, UK, EU, or not given.",
			fires:   func(f facts) bool { return isElsewhere(f.Country) },
			words:   "No country is chosen whose rules are known here. The strictest rule known here is used instead. Ask which rules hold where you work.",
			decides: code,
			source:  "Derived: the less safe case is taken where a fact is missing.",
		},
		{
			id: "not-alone", severity: problem.Note, at: "/access/by",
			when:    "a deck is needed, or a solvent product is used.",
			fires:   func(f facts) bool { return f.onDeck() || len(f.steps(isSolvent)) > 0 },
			words:   "Do not work alone. Agree how to call for help and how to get someone down.",
			decides: code,
			source:  "Common practice, no source.",
		},
	}
}

// airRules are about what is breathed and what can burn.
func airRules() []rule {
	return []rule{
		{
			id: "air-over-limit", severity: problem.Stop, subject: "air", at: "/air/opened",
			when:    "on the worst day the products together are above what is allowed over eight hours, or over fifteen minutes.",
			fires:   facts.averageOverLimit,
			words:   "Do not start with so little fresh air. As a screening figure the air would average {average} over the eight hours of the worst day, {share} of what is allowed. Bring at least {changes} air changes an hour, or use less, or other, product.",
			decides: label,
			source:  "29 CFR 1926.55 and 1926.57(a); the average by 29 CFR 1915.1000(d)(1)(i), over a well mixed room.",
			figures: []string{"air.average", "air.share", "air.changes"},
		},
		{
			id: "air-near-limit", severity: problem.Caution, subject: "air", at: "/air/opened",
			when:    "on the worst day the products together are above half of what is allowed over eight hours, or at some time above it while people work.",
			fires:   facts.averageNearLimit,
			words:   "There is little to spare in the air. Keep at least {changes} air changes an hour going, better more. As a screening figure the air comes to {level} while people work, and averages {share} of what is allowed over the eight hours of the worst day. Your face is nearer the wet film than that.",
			decides: label,
			source:  "29 CFR 1926.57(a), over a well mixed room; the margin of one half is derived.",
			figures: []string{"air.changes", "air.mass"},
		},
		{
			id: "respirator-programme", severity: problem.Note, at: "/air/opened",
			when:    "on the worst day the products together are above what is allowed.",
			fires:   facts.averageOverLimit,
			words:   "A respirator only helps with the right cartridge, a clean-shaven seal, a fit test, a medical check and a date to change the cartridge.",
			decides: label,
			source:  "29 CFR 1910.134, from memory; EN 14387, from memory.",
		},
		{
			id: "keep-windows-open", severity: problem.Caution, at: "/air/shut",
			when:    "with the windows shut the air is above the limit when one coat has dried.",
			fires:   facts.shutOverLimit,
			words:   "Keep the windows open the whole time a coat dries, the night too. With them shut the air would come to {shut level}, a screening figure, and the limit is {limit}.",
			decides: label,
			source:  "29 CFR 1926.57(a) and (d)(1); growth in a well mixed room.",
			figures: []string{"air.mass", "air.atOnce"},
		},
		{
			id: "no-way-out-for-vapour", severity: problem.Stop, at: "/air/opened",
			when: "a solvent product is used and no air changes with the windows open are given.",
			fires: func(f facts) bool {
				return len(f.steps(isSolvent)) > 0 && !above(f.Air.Opened, 0).Known
			},
			words:   "Do not start without a way for fresh air from outside: {solvent steps} gives off solvent. Open windows across from each other or bring a fan, and fill in the air changes.",
			decides: label,
			source:  "29 CFR 1926.57(a).",
			figures: []string{"air.mass"},
		},
		{
			id: "vapour-may-burn", severity: problem.Stop, at: "/air/opened",
			when: "all that the solvent products give off, at once in the shut room, is more than 4000 mg/m³.",
			fires: func(f facts) bool {
				return exceeds(f.solventPeak, FactOf(nearFlammable), once)
			},
			words:   "Split the work over days, move the air with a fan that makes no sparks, and put out every flame. All the solvent of {solvent steps} in the shut room would come to {solvent peak}, above the screening figure of {near flammable}, a tenth of what can burn.",
			decides: label,
			source:  "Derived: a tenth of the lower explosive limit of a hydrocarbon thinner; for turpentine, 0.8 % in the NIOSH Pocket Guide, it is 4450 mg/m³.",
			figures: []string{"air.atOnce", "air.mass"},
		},
		{
			id: "flames-out", severity: problem.Caution, atStep: atProduct(isSolvent, ""),
			when:    "a solvent product is used.",
			fires:   func(f facts) bool { return len(f.steps(isSolvent)) > 0 },
			words:   "Before you open {solvent steps}, put out pilot lights and switch off heaters and anything that sparks. Air the room before and after.",
			decides: label,
			source:  "The safety data sheet of a product with a flash point below 60 °C. The step is derived from its solvent: no flash point is asked for.",
		},
		{
			id: "fire-office-above-1-gallon", severity: problem.Caution, where: inUS, atStep: atProduct(isSolvent, ""),
			when:    "more than 1 US gallon of solvent products is used.",
			fires:   func(f facts) bool { return f.solventLitres().Litres.Cmp(measure.USGallon) > 0 },
			words:   "Ask the fire office whether a permit is needed. More than one gallon of product that may burn is to be brushed or rolled: {solvent steps}.",
			decides: code,
			source:  "International Fire Code 2018, chapter 24, scope.",
		},
		{
			id: "air-after-last-coat", severity: problem.Note, subject: "airing", at: "/air/opened",
			when:    "there is a time for the air of the shut room to fall to the limit.",
			fires:   facts.purges,
			words:   "After the last coat has dried keep the windows open for at least {purge} before anyone stays in the room: a screening figure, from {peak} in the shut room down to {limit}. Odour may last for weeks.",
			decides: label,
			source:  "29 CFR 1926.57(d)(1); CDC, Guidelines for Environmental Infection Control, 2003, table B.1; mixing as in MMWR 43 RR-13, 1994, table S3-1.",
			figures: []string{"air.purge", "air.atOnce"},
		},
		{
			id: "keep-air-moving", severity: problem.Note, subject: "airing", at: "/air/opened",
			when:    "a product gives off solvent.",
			fires:   facts.givesOff,
			words:   "Keep fresh air coming after the last coat as long as anyone is in the room. Odour may last for weeks.",
			decides: label,
			source:  "29 CFR 1926.57(d)(1); that a dry coat goes on giving off, Indoor Air 9(1), 1999, abstract.",
			figures: []string{"air.mass"},
		},
		{
			id: "air-figures-too-low", severity: problem.Caution, atStep: atProduct(isUncounted, ""),
			when:    "a step's litres, solvent or drying time is missing.",
			fires:   func(f facts) bool { return !f.air.Complete },
			words:   "Do not rely on the air figures: something is missing from {uncounted steps}, so they are too low. Copy solvent and drying time from the label.",
			decides: label,
			source:  "Derived: what is left out can only add.",
			figures: []string{"air.mass", "air.atOnce", "air.changes"},
		},
		{
			id: "binder-not-known", severity: problem.Caution, atStep: atProduct(hasNoBinder, "/binder"),
			when:    "nobody has said whether a product is thinned with water, solvent or a drying oil.",
			fires:   func(f facts) bool { return len(f.steps(hasNoBinder)) > 0 },
			words:   "Read on the label what {steps without binder} is thinned with. Until then treat its rags as oily: spread them flat outdoors, or keep them under water in a lidded metal can.",
			decides: label,
			source:  "Derived: the less safe case is taken where a fact is missing.",
		},
	}
}
