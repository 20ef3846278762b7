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

// ladderRules say when a ladder will do.
func ladderRules() []rule {
	return []rule{
		{
			id: "ladder-both-hands", severity: problem.Stop, at: "/access/by",
			when:    "the work is done from a ladder.",
			fires:   func(f facts) bool { return f.Access == Ladder },
			words:   "Do not fit panels from a ladder. Both hands will be on the panel and none on the ladder. Use a platform with rails.",
			decides: code,
			source:  "29 CFR 1926.1053(b)(21), from memory; Work at Height Regulations 2005, schedule 6, paragraph 1; HSE INDG455, seen in a secondary copy. The conclusion is derived from them.",
		},
		{
			id: "ladder-only-for-a-look", severity: problem.Note, at: "/access/by",
			when:    "the work is done from a ladder.",
			fires:   func(f facts) bool { return f.Access == Ladder },
			words:   "A stepladder will do for a short look or one light touch-up. Open it fully, lock the spreaders, put all four feet down and face the work.",
			decides: code,
			source:  "29 CFR 1926.1053(a)(8), seen in a secondary copy; Work at Height Regulations 2005, schedule 6, paragraphs 2 and 3.",
		},
		{
			id: "access-not-chosen", severity: problem.Caution, at: "/access/by",
			when:    "a deck is needed and nobody has said what the work is done from.",
			fires:   func(f facts) bool { return f.needsDeck() && f.Access == "" },
			words:   "Say what you will work from. The ceiling is out of easy reach, and a platform without rails is assumed until you do.",
			decides: code,
			source:  "Derived: the less safe case is taken where a fact is missing.",
			figures: []string{"platform.height"},
		},
		{
			id: "floor-will-do", severity: problem.Note, at: "/access/by",
			when:    "the ceiling is in easy reach from the floor and something else is chosen, or nothing.",
			fires:   func(f facts) bool { return f.deckKnown && f.deck.Means == FromFloor && f.Access != Floor },
			words:   "Work from the floor. The ceiling is in easy reach, and a fall from something needless is still a fall.",
			decides: code,
			source:  "Grip reach against stature in the ergonomics handbook Bodyspace, 1996, seen in a secondary copy; the conclusion is derived.",
		},
		{
			id: "floor-out-of-reach", severity: problem.Caution, at: "/access/by",
			when:    "the work is done from the floor and a deck is needed.",
			fires:   func(f facts) bool { return f.needsDeck() && f.Access == Floor },
			words:   "From the floor you would stretch to reach this ceiling. Do not add boxes or chairs. Use a deck about {best deck} high.",
			decides: code,
			source:  "Grip reach against stature in the ergonomics handbook Bodyspace, 1996, seen in a secondary copy; the conclusion is derived.",
			figures: []string{"platform.height", "platform.least", "platform.most"},
		},
	}
}

// deckRules are about how high the deck stands and whom it fits.
func deckRules() []rule {
	return []rule{
		{
			id: "deck-height-not-known", severity: problem.Caution, at: "/room/height",
			when:    "the height of the ceiling or of a fitter cannot be used.",
			fires:   func(f facts) bool { return !f.deckKnown },
			words:   "No platform height is worked out, so nothing on this sheet has checked rails, base or fall. Fill in how high the ceiling is and how tall the fitter.",
			decides: code,
			source:  "Derived: the less safe case is taken where a fact is missing.",
		},
		{
			id: "deck-height", severity: problem.Note, at: "/room/height",
			when:    "a deck is needed.",
			fires:   facts.needsDeck,
			words:   "Ask for a deck about {best deck} above the floor, adjustable between {least deck} and {most deck}. This is the height you stand at. Hire firms often quote a working height, which adds a person's reach to it.",
			decides: maker,
			source:  "Grip reach against stature in the ergonomics handbook Bodyspace, 1996, seen in a secondary copy; the heights are derived. What hire firms quote is common practice, no source.",
			figures: []string{"platform.height", "platform.least", "platform.most"},
		},
		{
			id: "fitter-height-assumed", severity: problem.Note, at: "/access/reachBy",
			when:    "a deck is needed and no fitter's height is given.",
			fires:   func(f facts) bool { return f.needsDeck() && f.deck.Assumed },
			words:   "The fitter's height is not given, so {assumed height} is used. Fill it in: the deck moves about as much as the fitter's height does.",
			decides: code,
			source:  "Derived from the average adult in the ergonomics handbook Bodyspace, 1996, seen in a secondary copy.",
			figures: []string{"platform.height"},
		},
		{
			id: "crew-heights-differ", severity: problem.Caution, at: "/access/reachBy",
			when:    "a deck is needed and the shortest needs a higher one than the tallest can stand on.",
			fires:   func(f facts) bool { return f.needsDeck() && !f.deck.Shared },
			words:   "One deck does not suit everyone: the shortest cannot reach from where the tallest has head room. Use two decks, or let people of like height work together.",
			decides: code,
			source:  "Grip reach against stature in the ergonomics handbook Bodyspace, 1996, seen in a secondary copy; the conclusion is derived.",
			figures: []string{"platform.least", "platform.most"},
		},
	}
}

// railRules are about guardrails.
func railRules() []rule {
	return []rule{
		{
			id: "rails-above-10-ft", severity: problem.Stop, where: inUS, subject: "rails", at: "/access/rails",
			when:    "the deck is more than 10 ft up and has no rails, or nobody has said.",
			fires:   func(f facts) bool { return f.unguarded() && f.deck.Best > 10*measure.Foot },
			words:   "Fit guardrails on all open sides, or wear fall arrest, before anyone goes up. The deck is above {10 ft}.",
			decides: code,
			source:  "29 CFR 1926.451(g)(1), seen in a secondary copy.",
			figures: []string{"platform.height"},
		},
		{
			id: "rails-above-4-ft", severity: problem.Caution, where: inUS, subject: "rails", at: "/access/rails",
			when: "the deck is more than 4 ft and up to 10 ft up and has no rails, or nobody has said.",
			fires: func(f facts) bool {
				return f.unguarded() && f.deck.Best > 4*measure.Foot && f.deck.Best <= 10*measure.Foot
			},
			words:   "Fit guardrails. The deck is not above the {10 ft} of the scaffold rule, but a step back while looking up is likely.",
			decides: code,
			source:  "29 CFR 1910.28(b), seen in a secondary copy, as a guide: it is the rule for general industry. 29 CFR 1926.451(g)(1), seen in a secondary copy.",
			figures: []string{"platform.height"},
		},
		{
			id: "rails-from-2-m", severity: problem.Stop, where: inEurope, subject: "rails", at: "/access/rails",
			when:    "the deck is 2 m up or more and has no rails, or nobody has said.",
			fires:   func(f facts) bool { return f.unguarded() && f.deck.Best >= 2*measure.Metre },
			words:   "Fit guardrails on all open sides before anyone goes up. The deck is {2 m} or more above the floor.",
			decides: code,
			source:  "Work at Height Regulations 2005, regulation 6 and schedule 2; Directive 2009/104/EC, annex II, 4. The 2 m is derived: the law names no safe height.",
			figures: []string{"platform.height"},
		},
		{
			id: "rails-any-height", severity: problem.Caution, where: inEurope, subject: "rails", at: "/access/rails",
			when:    "there is a deck below 2 m and it has no rails, or nobody has said.",
			fires:   func(f facts) bool { return f.unguarded() && f.deck.Best < 2*measure.Metre },
			words:   "Fit guardrails, or write down why this fall cannot hurt anyone. No height of fall counts as safe.",
			decides: code,
			source:  "Work at Height Regulations 2005, regulation 6 and schedule 2; Directive 2009/104/EC, annex II, 4.",
			figures: []string{"platform.height"},
		},
	}
}

// baseRules are about how a platform stands, is built, moved and climbed.
func baseRules() []rule {
	return []rule{
		{
			id: "base-too-narrow", severity: problem.Stop, where: inUS, subject: "base", at: "/access/base",
			when:    "the platform with its rails is more than 4 times as high as its least base (3 times where the country is not known).",
			fires:   facts.baseTooSmall,
			words:   "Do not go up. To the top of its rails the platform is {total height} high, more than {base ratio} times its base of {base}. Add outriggers or a wider base, at least {base needed}, or have it tied.",
			decides: maker,
			source:  "29 CFR 1926.451(c)(1); that the height is the whole height, OSHA letter of 2004-03-10, seen in a secondary copy. Some states are stricter.",
			figures: []string{"platform.height", "platform.base"},
		},
		{
			id: "base-check-table", severity: problem.Caution, where: inEurope, subject: "base", at: "/access/base",
			when:    "the platform with its rails is more than 3 times as high as its least base.",
			fires:   facts.baseTooSmall,
			words:   "Look up the base in the maker's table before you go up. The base of {base} looks narrow: as a screening figure, {base needed} with stabilisers would be {base ratio} times as high as wide.",
			decides: maker,
			source:  "EN 1004-1 leaves it to the maker's table, seen in a secondary copy; the 3 to 1 is a stricter US ratio, seen in a secondary copy, as a screening figure.",
			figures: []string{"platform.height", "platform.base"},
		},
		{
			id: "base-not-known", severity: problem.Caution, at: "/access/base",
			when:    "there is a platform, more than half a metre up and its base is not given.",
			fires:   func(f facts) bool { return f.onPlatform() && f.Base <= 0 },
			words:   "Ask for a base of at least {base needed} on its shorter side, outriggers included, and check it against the maker's table.",
			decides: maker,
			source:  "29 CFR 1926.451(c)(1); outside the US a stricter 3 to 1 as a screening figure, seen in a secondary copy.",
			figures: []string{"platform.base"},
		},
		{
			id: "lock-wheels", severity: problem.Caution, at: "/access/by",
			when:    "there is a platform, more than half a metre up.",
			fires:   facts.onPlatform,
			words:   "If it has wheels, lock every one before anyone climbs or works, even for a move every few minutes.",
			decides: maker,
			source:  "29 CFR 1926.452(w)(2), OSHA letter of 2005-06-17; HSE information sheet CIS10, seen in a secondary copy.",
		},
		{
			id: "nobody-rides", severity: problem.Caution, at: "/access/by",
			when:    "there is a platform, more than half a metre up.",
			fires:   facts.onPlatform,
			words:   "Get down and clear the deck before it is rolled. Push it at the base.",
			decides: maker,
			source:  "HSE information sheet CIS10, seen in a secondary copy; 29 CFR 1926.452(w)(3), OSHA letter of 1998-06-08, and (w)(6), which allows riding only under narrow conditions.",
		},
		{
			id: "lower-before-moving", severity: problem.Caution, where: inEurope, at: "/access/by",
			when:    "the platform with its rails is more than 4 m high.",
			fires:   func(f facts) bool { return f.onDeck() && f.deck.Total() > 4*measure.Metre },
			words:   "Lower the tower to {4 m} before it is moved.",
			decides: maker,
			source:  "HSE information sheet CIS10, seen in a secondary copy.",
			figures: []string{"platform.height"},
		},
		{
			id: "too-high-for-a-tower", severity: problem.Stop, where: inEurope, at: "/room/height",
			when:    "the deck is more than 12 m up.",
			fires:   func(f facts) bool { return f.onDeck() && f.deck.Best > 12*measure.Metre },
			words:   "Do not use a mobile tower. Its standard ends at {12 m} indoors. Have a scaffold designed.",
			decides: licensed,
			source:  "EN 1004-1, scope.",
			figures: []string{"platform.height"},
		},
		{
			id: "trained-to-build", severity: problem.Note, at: "/access/by",
			when:    "there is a platform, more than half a metre up.",
			fires:   facts.onPlatform,
			words:   "Only people trained for it put the platform up, in the maker's order and with every part in place.",
			decides: maker,
			source:  "29 CFR 1926.451(f)(7) and 1926.454, from memory; Work at Height Regulations 2005, regulation 5.",
		},
		{
			id: "check-each-shift", severity: problem.Note, where: inUS, at: "/access/by",
			when:    "there is a platform, more than half a metre up.",
			fires:   facts.onPlatform,
			words:   "Have the site's competent person look over the platform before each shift.",
			decides: code,
			source:  "29 CFR 1926.451(f)(3); the number of the paragraph is from memory.",
		},
		{
			id: "check-within-7-days", severity: problem.Note, where: inEurope, at: "/access/by",
			when:    "the deck is 2 m up or more.",
			fires:   func(f facts) bool { return f.onDeck() && f.deck.Best >= 2*measure.Metre },
			words:   "Have the platform inspected where it stands, within the last 7 days, and keep the report: a fall of {2 m} is possible.",
			decides: code,
			source:  "Work at Height Regulations 2005, regulation 12(4), from memory; Ireland, SI 299/2007, regulation 119.",
			figures: []string{"platform.height"},
		},
		{
			id: "way-up", severity: problem.Caution, at: "/access/by",
			when:    "the deck is more than 2 ft up.",
			fires:   func(f facts) bool { return f.onDeck() && f.deck.Best > 2*measure.Foot },
			words:   "Go up by a proper ladder or stair, inside a tower. Never climb the braces.",
			decides: maker,
			source:  "29 CFR 1926.451(e)(1), seen in a secondary copy; EN 1004-1:2020, 7.6.",
			figures: []string{"platform.height"},
		},
		{
			id: "nothing-on-the-deck", severity: problem.Note, at: "/access/by",
			when:    "there is a deck.",
			fires:   facts.onDeck,
			words:   "Never stand on a box, a bucket or a ladder on the deck. Raise the deck.",
			decides: code,
			source:  "29 CFR 1926.451(f)(14) and (15), from memory.",
		},
		{
			id: "falling-things-10-ft", severity: problem.Caution, where: inUS, subject: "falling things", at: "/access/by",
			when:    "the deck is more than 10 ft up.",
			fires:   func(f facts) bool { return f.onDeck() && f.deck.Best > 10*measure.Foot },
			words:   "If anyone may pass below, fit toe boards, tie the tools on and fence off the floor. The deck is above {10 ft}.",
			decides: code,
			source:  "29 CFR 1926.451(h)(2)(ii), seen in a secondary copy.",
			figures: []string{"platform.height"},
		},
		{
			id: "falling-things", severity: problem.Caution, where: inEurope, subject: "falling things", at: "/access/by",
			when:    "there is a deck.",
			fires:   facts.onDeck,
			words:   "If anyone may pass below, fit toe boards, tie the tools on and fence off the floor.",
			decides: code,
			source:  "Work at Height Regulations 2005, regulations 10 and 11.",
		},
		{
			id: "gap-to-the-wall", severity: problem.Caution, where: inUS, at: "/access/deckGap",
			when:    "the deck ends more than 14 in from the wall and has no rails, or nobody has said.",
			fires:   func(f facts) bool { return f.unguarded() && f.DeckGap > 14*measure.Inch },
			words:   "Close the gap of {deck gap} at the edge of the deck to {14 in} or less, or put a rail there.",
			decides: code,
			source:  "29 CFR 1926.451(b)(3), seen in a secondary copy.",
		},
		{
			id: "loose-sheets", severity: problem.Caution, at: "/access/by",
			when:    "the work is done from a deck or a ladder.",
			fires:   func(f facts) bool { return f.onDeck() || f.Access == Ladder },
			words:   "Put no loose sheets under feet or wheels. Cover the floor with something hard and lead cables away.",
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

// overheadRules are about necks, shoulders and what is lifted.
func overheadRules() []rule {
	return []rule{
		{
			id: "overhead-over-2-hours", severity: problem.Note, subject: "overhead", at: "",
			when: "one person works overhead for more than 2 hours a day.",
			fires: func(f facts) bool {
				return exceeds(f.OverheadHours, FactOf(overheadNoteFrom), once)
			},
			words:   "Over two hours a day overhead: take turns, and mix in work on the floor. The plan has {overhead hours} h.",
			decides: code,
			source:  "Washington State, WAC 296-62-05105, repealed in 2003, as guidance; the figure is from memory.",
		},
		{
			id: "overhead-over-4-hours", severity: problem.Caution, subject: "overhead", at: "",
			when: "one person works overhead for more than 4 hours a day.",
			fires: func(f facts) bool {
				return exceeds(f.OverheadHours, FactOf(overheadCautionAt), once)
			},
			words:   "Plan again, with more people or more days. The plan has {overhead hours} h a day overhead for one person, and four is too many.",
			decides: code,
			source:  "Washington State, WAC 296-62-05174, repealed in 2003, as guidance; the figure is from memory.",
		},
		{
			id: "overhead-hours-not-known", severity: problem.Note, subject: "overhead", at: "",
			when:    "the hours overhead are not known.",
			fires:   func(f facts) bool { return !f.OverheadHours.Known },
			words:   "Count the hours overhead. Above two a day for one person take turns; above four plan more people or more days.",
			decides: code,
			source:  "Washington State, WAC 296-62-05105 and 296-62-05174, repealed in 2003, as guidance; the figures are from memory.",
		},
		{
			id: "overhead-breaks", severity: problem.Note, at: "",
			when:    "always: the work is overhead.",
			fires:   func(f facts) bool { return true },
			words:   "Work overhead in stretches of half an hour at most. Every few minutes lower the arms and look level.",
			decides: code,
			source:  "Common practice, no source; elbows above the shoulder strain it more the longer they are there, Int Arch Occup Environ Health 93, 2020, abstract.",
		},
	}
}
