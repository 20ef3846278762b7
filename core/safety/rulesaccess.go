package safety

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

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

// overheadRules are about necks, shoulders and what is lifted.
func overheadRules() []rule {
	return []rule{
		{
			id: "overhead-over-2-hours", severity: problem.Note, subject: "overhead", at: "",
			when: "one person works overhead for more than 2 hours a day.",
			fires: func(f facts) bool {
				return exceeds(f.OverheadHours, FactOf(overheadNoteFrom), once)
			},
			words:   "Over two hours a day overhead: take turns, and mix in work on the floor. The plan has {overhead hours}.",
			decides: code,
			source:  "Washington State, WAC 296-62-05105, repealed in 2003, as guidance; the figure is from memory.",
		},
		{
			id: "overhead-over-4-hours", severity: problem.Caution, subject: "overhead", at: "",
			when: "one person works overhead for more than 4 hours a day.",
			fires: func(f facts) bool {
				return exceeds(f.OverheadHours, FactOf(overheadCautionAt), once)
			},
			words:   "Plan again, with more people or more days. The plan has {overhead hours} a day overhead for one person, and four is too many.",
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
