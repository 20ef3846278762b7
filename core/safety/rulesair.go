package safety

import (
	"slices"

	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// airRules are about what is breathed and what can burn.
func airRules() []rule {
	return slices.Concat(breathingRules(), maskRules(), fireRules(), airingRules(), labelRules())
}

// breathingRules are about what is in the air while people work.
func breathingRules() []rule {
	return []rule{
		{
			id: "no-way-out-for-vapour", severity: problem.Stop, at: "/air/opened",
			when: "a solvent product is used and no air changes with the windows open are given.",
			fires: func(f *facts) bool {
				return f.uses(air.IsSolvent) && !air.Positive(f.Air.Opened).Known
			},
			words:   "Do not start without a way for fresh air from outside: {solvent steps} gives off solvent. Open windows across from each other, bring a fan that makes no sparks, and fill in how often an hour the air is changed.",
			decides: label,
			source:  "29 CFR 1926.57(a).",
			figures: []string{"air.mass"},
			bites:   []Block{Finish, Days},
		},
		{
			id: "air-over-limit", severity: problem.Stop, subject: "air", at: "/air/opened",
			when:    "on the worst day the products together are above what is allowed over eight hours.",
			fires:   (*facts).averageOverLimit,
			words:   "{bring}. As a screening figure the air would average {average} over the eight hours of the worst day, {share} of what is allowed. Do not start like this.",
			working: "{average} over eight hours, {share} of what is allowed; the rule stops above 100 %.",
			decides: label,
			source:  "29 CFR 1926.55 and 1926.57(a); the average by 29 CFR 1915.1000(d)(1)(i), over a well mixed room. The fresh air is the least with which the same course of days is not above the limits (derived); above 60 air changes an hour none is named (common practice, no source).",
			figures: []string{"air.average", "air.share", "air.changes", "air.flow"},
			bites:   []Block{Finish, Days},
			with:    "fresh air",
			adds:    "Over the eight hours of the worst day it would average {average}, {share} of what is allowed.",
		},
		{
			id: "air-over-short-limit", severity: problem.Stop, at: "/air/shortTerm",
			when:    "with people in the room the worst quarter of an hour is above the limit for fifteen minutes; where none is given, above three times the eight-hour limit.",
			fires:   (*facts).shortOverLimit,
			words:   "{bring}, or put on less at a time. As a screening figure the worst quarter of an hour comes to {level}, {short share} of what is allowed for so long. Do not start like this.",
			working: "{level} in the worst quarter of an hour, {short share} of what is allowed: {short limit}; the rule stops above 100 %.",
			decides: label,
			source:  "Short-term limits: the product's safety data sheet, section 8; three times the eight-hour limit where there is none: HSE, EH40/2005, from memory. 29 CFR 1926.57(a), over a well mixed room.",
			figures: []string{"air.short", "air.changes", "air.flow"},
			bites:   []Block{Finish, Days},
			with:    "fresh air",
			adds:    "The worst quarter of an hour comes to {level}, {short share} of what is allowed for so long: put on less at a time.",
		},
		{
			id: "air-near-limit", severity: problem.Caution, subject: "air", at: "/air/opened",
			when:    "on the worst day the products together are above half of what is allowed over eight hours, or in some quarter of an hour above half of what is allowed for so long.",
			fires:   func(f *facts) bool { return f.nearLimit() && !f.shortOverLimit() },
			words:   "{spare}, so that half is left to spare. Your face is nearer the wet paint than this screening figure. People would breathe {share} of what is allowed over the eight hours of the worst day, and {short share} in the worst quarter of an hour.",
			working: "{share} of what is allowed over eight hours, {short share} in the worst quarter of an hour; the rule starts above 50 %.",
			decides: label,
			source:  "29 CFR 1926.57(a), over a well mixed room; the margin of one half is derived.",
			figures: []string{"air.share", "air.short", "air.changes", "air.flow"},
			bites:   []Block{Finish, Days},
		},
		{
			id: "keep-windows-open", severity: problem.Caution, subject: "shut room", at: "/air/nights",
			when:    "the windows are shut when nobody is at work, or nobody has said, and the air then comes above the limit; where the days are not known, when one coat has dried in the shut room.",
			fires:   (*facts).shutOverLimit,
			words:   "Leave the windows open while a coat dries, the night too, and keep rain and strangers out. Shut, the air would come to {night level}, {night share} of what is allowed over eight hours: a screening figure. Air the room before anyone goes back in, and go out if eyes or throat sting.",
			working: "{night level} with nobody at work, {night share} of what is allowed; the rule starts above 100 %.",
			decides: label,
			source:  "29 CFR 1926.57(a) and (d)(1); growth in a well mixed room.",
			figures: []string{"air.over", "air.peak"},
			bites:   []Block{Finish, Days},
		},
		{
			id: "vapour-goes-on", severity: problem.Caution, subject: "air handling", at: "/place/airHandling",
			when: "a system takes air from this room to others, and a product gives off solvent or is sprayed.",
			fires: func(f *facts) bool {
				return f.Building.AirHandling == Yes && (f.givesOff() || f.uses(isSprayed))
			},
			words:   "Before the first can is opened, have the air system shut down for this room, or its openings here sealed, and let the fumes out to the open air. Otherwise it carries them to everyone else. Ask whoever runs the building.",
			decides: code,
			source:  "Common practice, no source.",
			bites:   []Block{Finish},
		},
		{
			id: "air-system-not-known", severity: problem.Note, subject: "air handling", at: "/place/airHandling",
			when:    "a solvent product is used and nobody has said whether a system takes air from this room to others.",
			fires:   func(f *facts) bool { return f.Building.AirHandling == "" && f.uses(air.IsSolvent) },
			words:   "Look for grilles of an air system in this room. If it takes air from here to other rooms it carries the fumes along. Fill in whether there is one.",
			decides: code,
			source:  "Common practice, no source.",
			asks:    "Does an air system take air from this room to others?",
		},
		{
			id: "smell-in-a-shut-room", severity: problem.Note, subject: "shut room", at: "/air/nights",
			when:     "a product thinned with water is used, and the windows are not open day and night.",
			fires:    func(f *facts) bool { return f.uses(isWaterBorne) && f.mayBeShut() },
			words:    "Air the room before you work in it again after it was shut. Water-borne paint gives off ammonia or amines as it dries, which no figure here counts. Go out into the air if eyes or throat sting.",
			decides:  label,
			source:   "Common practice, no source.",
			onDemand: true,
		},
	}
}

// maskRules are about what is worn against the air.
func maskRules() []rule {
	return []rule{
		{
			id: "two-pack-sprayed", severity: problem.Stop, subject: "two-pack", atStep: atProduct(isSprayedTwoPack, "/category"),
			when:    "a two-pack product is sprayed.",
			fires:   func(f *facts) bool { return f.uses(isSprayedTwoPack) },
			words:   "Do not spray {sprayed two-pack steps} yourself. Many two-pack products hold isocyanates, which can harm the lungs for good at levels nobody can smell, and a filter mask is not enough. Leave it to people with supplied air and the training for it, or choose a product that is brushed.",
			decides: licensed,
			source:  "Common practice, no source. The product's safety data sheet, sections 2 and 8, says what it holds.",
			bites:   []Block{Finish},
		},
		{
			id: "two-pack-training", severity: problem.Caution, where: []Country{EU}, subject: "two-pack", atStep: atProduct(isTwoPack, "/category"),
			when:    "a two-pack product is used.",
			fires:   func(f *facts) bool { return f.uses(isTwoPack) },
			words:   "Read sections 2 and 8 of the data sheet of {two-pack steps} before you buy it. More than 0.1 % of diisocyanates is for people trained in their use only; it may ask for supplied air and for gloves of one kind. Do not sand or spray it.",
			decides: label,
			source:  "Regulation (EU) 2020/1149, entry 74 of REACH annex XVII, training since 24 August 2023, from memory; the rest is common practice, no source.",
			bites:   []Block{Finish},
		},
		{
			id: "two-pack", severity: problem.Caution, subject: "two-pack", atStep: atProduct(isTwoPack, "/category"),
			when:    "a two-pack product is used.",
			fires:   func(f *facts) bool { return f.uses(isTwoPack) },
			words:   "Read section 8 of the data sheet of {two-pack steps} before you buy it: it may ask for supplied air and for gloves of one kind. Do not sand or spray it.",
			decides: label,
			source:  "Common practice, no source.",
			bites:   []Block{Finish},
		},
		{
			id: "spray-mist", severity: problem.Caution, atStep: atProduct(isSprayed, "/method"),
			when:    "a product is sprayed.",
			fires:   func(f *facts) bool { return f.uses(isSprayed) },
			words:   "Keep others out while you spray {sprayed steps}, which fills the room with mist that no figure here counts. Cover the openings of any air system, and ask the fire office first: the rules for spraying are stricter.",
			decides: code,
			source:  "29 CFR 1910.134, from memory; International Fire Code 2018, chapter 24, scope.",
			bites:   []Block{Finish, Days},
			with:    "spray",
			adds:    "Keep others out while you spray {sprayed steps}.",
		},
		{
			id: "respirator-for-spray", severity: problem.Note, subject: "respirator", atStep: atProduct(isSprayed, "/method"),
			when:    "a product is sprayed.",
			fires:   func(f *facts) bool { return f.uses(isSprayed) },
			words:   "Wear a combined filter against mist and fumes together: organic vapour with P100 in the US, type A with P3 by EN 14387. A qualified person chooses it, sees to the medical check and tests that it fits; it seals on a shaven face only.",
			decides: label,
			source:  "29 CFR 1910.134, from memory; EN 14387, from memory.",
			with:    "spray",
			adds:    "Wear a combined filter, organic vapour with P100 in the US, type A with P3 by EN 14387, which a qualified person chooses and fits.",
		},
		{
			id: "respirator-programme", severity: problem.Note, subject: "respirator", at: "/air/opened",
			when:    "the products are above what is allowed over eight hours or for fifteen minutes.",
			fires:   func(f *facts) bool { return f.averageOverLimit() || f.shortOverLimit() },
			words:   "Bring more air first. Where fumes still call for a respirator, it is one with an organic vapour cartridge in the US, a type A filter by EN 14387. A qualified person chooses it, sees to the medical check, tests that it fits and says when the cartridge is changed; it seals on a shaven face only.",
			decides: label,
			source:  "29 CFR 1910.134, from memory; EN 14387, from memory; that organic vapour cartridges suit turpentine, NIOSH Pocket Guide.",
			figures: []string{"air.share"},
			with:    "fresh air",
			adds:    "Only where fumes still call for it wear a respirator, an organic vapour cartridge or type A filter, which a qualified person chooses and fits.",
		},
	}
}

// fireRules are about what can burn in the air.
func fireRules() []rule {
	const sheet = "The safety data sheet, section 9, has the flash point; below 60 °C (140 °F) vapour can catch fire at a flame. Where it is not given a solvent product counts as below (derived)."
	const nearBurning = "A tenth of the lower explosive limit, derived: 0.6 % for white spirit of 140 g a mole, from memory, at 25 °C 3436 mg/m³, rounded down. It is the cautious one: turpentine, 0.8 % in the NIOSH Pocket Guide, would have 4450 mg/m³."
	return []rule{
		{
			id: "vapour-may-burn", severity: problem.Stop, subject: "vapour", at: "/air/opened",
			when:    "the products with a flash point below 60 °C come above 3400 mg/m³ as planned; where the course of the air cannot be worked out, all of them at once in the shut room. Where no flash point is given, a solvent product counts.",
			fires:   (*facts).mayBurnAsPlanned,
			words:   "Put on less of {burning steps} at a time, with more fresh air by night too, from a fan that makes no sparks, and put out every flame. Its vapour would come to {burning as planned}, above the screening figure of {near flammable}, a tenth of what can burn.",
			working: "{burning as planned}; the rule stops above {near flammable}.",
			decides: label,
			source:  nearBurning,
			figures: []string{"air.peak", "air.mass"},
			bites:   []Block{Finish, Days},
		},
		{
			id: "vapour-in-a-shut-room", severity: problem.Caution, subject: "vapour", at: "/air/nights",
			when: "all that the products with a flash point below 60 °C give off, at once in the shut room, is more than 3400 mg/m³. Where no flash point is given, a solvent product counts.",
			fires: func(f *facts) bool {
				return exceeds(f.burningPeak, measure.FactOf(nearFlammable), once)
			},
			words:   "Do not shut the room on wet {burning steps}, and do not spill it. All of it at once without fresh air would come to {burning peak}, above the screening figure of {near flammable}, a tenth of what can burn.",
			working: "{burning peak} at once in the shut room; the rule starts above {near flammable}.",
			decides: label,
			source:  nearBurning,
			figures: []string{"air.atOnce", "air.mass"},
			bites:   []Block{Finish, Days},
		},
		{
			id: "flames-burning", severity: problem.Stop, subject: "flames", at: "/place/flames",
			when:    "pilot lights or heaters burn, and a product has a flash point below 60 °C, or none given and it is a solvent product.",
			fires:   func(f *facts) bool { return f.Building.Flames == Yes && f.uses(air.MayBurn) },
			words:   "Shut the gas off at every appliance, put out all other flames and switch off the heaters before you open {burning steps}. Agree who may light the pilots again, once the room is aired. Vapour runs along the floor and can catch fire at a flame in the next room.",
			working: "{flash points}; the rule stops below 60 °C (140 °F).",
			decides: label,
			source:  sheet + " That the vapour is heavier than air, and the gas at the appliance: common practice, no source.",
			bites:   []Block{Finish, Days},
			with:    "flames",
			adds:    "Shut the gas off at every appliance, and put out all other flames.",
		},
		{
			id: "flames-out", severity: problem.Caution, subject: "flames", at: "/place/flames",
			when:    "nobody has said whether pilot lights or heaters burn, and a product has a flash point below 60 °C, or none given and it is a solvent product.",
			fires:   func(f *facts) bool { return f.Building.Flames == "" && f.uses(air.MayBurn) },
			words:   "Look for pilot lights, heaters and stoves, and shut their gas off at the appliance before you open {burning steps}. Agree who may light them again. Air the room before and after.",
			working: "{flash points}; the rule starts below 60 °C (140 °F).",
			decides: label,
			source:  sheet,
			bites:   []Block{Finish},
			with:    "flames",
			adds:    "Look for pilot lights, heaters and stoves, and shut their gas off.",
			asks:    "Do pilot lights, heaters or stoves burn in the house?",
		},
		{
			id: "keep-flames-out", severity: problem.Note, subject: "flames", at: "/place/flames",
			when:    "no flame burns, and a product has a flash point below 60 °C, or none given and it is a solvent product.",
			fires:   func(f *facts) bool { return f.Building.Flames == No && f.uses(air.MayBurn) },
			words:   "While {burning steps} is open or wet: no smoking, no hot work, no tool or switch that sparks. Shut the cans.",
			working: "{flash points}; the rule starts below 60 °C (140 °F).",
			decides: label,
			source:  sheet,
			with:    "flames",
			adds:    "No smoking, no hot work and no tool that sparks while {burning steps} is open or wet.",
		},
		{
			id: "fire-office-above-1-gallon", severity: problem.Caution, where: inUS, atStep: atProduct(air.MayBurn, "/flash"),
			when:    "more than 1 US gallon is used of products with a flash point below 60 °C, or none given and solvent products.",
			fires:   func(f *facts) bool { return f.burningLitres().Litres.Cmp(measure.USGallon) > 0 },
			words:   "Ask the fire office whether a permit is needed. More than one gallon of what may burn is to be put on: {burning steps}.",
			working: "{burning amount}; the rule starts above 1 US gallon.",
			decides: code,
			source:  "International Fire Code 2018, chapter 24, scope; which liquids it means, flash point below 140 °F, from memory.",
			bites:   []Block{Finish, Days},
		},
	}
}

// airingRules are about the room after the last coat.
func airingRules() []rule {
	return []rule{
		{
			id: "stay-out", severity: problem.Caution, subject: "airing", at: "/air/nights",
			when:    "after the last coat is on the air stays above the limit for a time, or would take a time to fall to it from all that is given off at once. The longer of the two is told.",
			fires:   (*facts).staysOut,
			words:   "Keep everyone out for {wait} after the last coat is on, aired as planned. That is a screening figure by the limit for people at work. For children, anyone pregnant and anyone with asthma wait as long as the label says and until there is no smell, even weeks.",
			working: "{wait} until the air stays below what is allowed.",
			decides: label,
			source:  "29 CFR 1926.57(d)(1); decay in a well mixed room; CDC, Guidelines for Environmental Infection Control, 2003, table B.1. That limits for people at work do not hold for others is common practice, no source.",
			figures: []string{"air.reentry", "air.over"},
			bites:   []Block{Finish, Days},
		},
		{
			id: "keep-air-moving", severity: problem.Note, subject: "airing", at: "/air/opened",
			when:    "a product gives off solvent.",
			fires:   (*facts).givesOff,
			words:   "Keep fresh air coming after the last coat as long as anyone is in the room. Children, anyone pregnant and anyone with asthma wait as long as the label says and until there is no smell, even weeks.",
			decides: label,
			source:  "29 CFR 1926.57(d)(1); that a dry coat goes on giving off, Indoor Air 9(1), 1999, abstract; the rest is common practice, no source.",
			figures: []string{"air.mass"},
			with:    "airing",
			adds:    "Keep fresh air coming as long as anyone is in the room.",
		},
	}
}

// labelRules are about what is on the label, and what is not filled in of it.
func labelRules() []rule {
	return []rule{
		{
			id: "air-figures-too-low", severity: problem.Caution, atStep: atProduct(isUncounted, ""),
			when:    "a step's litres, solvent or drying time is missing.",
			fires:   func(f *facts) bool { return !f.air.Complete },
			words:   "Do not rely on the air figures: something is missing from {uncounted steps}, so they are too low. Copy solvent and drying time from the label.",
			decides: label,
			source:  "Derived: what is left out can only add.",
			figures: []string{"air.mass", "air.atOnce", "air.changes"},
			bites:   []Block{Finish},
		},
		{
			id: "above-its-category", severity: problem.Caution, atStep: atOverCategory,
			when:    "a product holds more solvent than its category may, counted as the law counts it and as it is thinned.",
			fires:   func(f *facts) bool { return len(f.overCategory()) > 0 },
			words:   "Check the label of {steps over category} before you buy: it holds more solvent than the law allows its category. Choose another product, or find the category that the label names.",
			working: "{holds and may}.",
			decides: label,
			source:  "40 CFR 59, subpart D, table 1, from memory, and 59.402; Directive 2004/42/EC, annex II A, phase II, read in two national copies that agree.",
			bites:   []Block{Finish},
		},
		{
			id: "thinner-adds-fumes", severity: problem.Caution, subject: "thinner", atStep: atProduct(addsFumes, "/thinned"),
			when:    "a product is thinned, and not with water.",
			fires:   func(f *facts) bool { return f.uses(addsFumes) },
			words:   "Thin {thinned steps} no more than the label allows. The thinner goes into the air too and is counted here, and the limits hold for what is in the pail, not in the can. What you clean brushes in is not counted: do that outdoors.",
			working: "{thinning}.",
			decides: label,
			source:  "40 CFR 59.402; that thinner is counted with 870 g/L, turpentine, is from memory; the brushes are common practice, no source.",
			figures: []string{"air.mass"},
			bites:   []Block{Finish},
		},
		{
			id: "brush-cleaning", severity: problem.Note, subject: "thinner", onDemand: true, atStep: atProduct(cleansWithSolvent, ""),
			when:    "a product is used of which brushes are cleaned with solvent: thinned with solvent, or a drying oil.",
			fires:   func(f *facts) bool { return f.uses(cleansWithSolvent) },
			words:   "Clean the brushes of {solvent-cleaned steps} outdoors, in a can with a lid, and none of it down a drain. That solvent is not counted in the air here.",
			decides: label,
			source:  "Common practice, no source.",
		},
		{
			id: "less-water-as-mass", severity: problem.Note, atStep: atProduct(isUnsplit, "/waterPart"),
			when:    "a label leaves water out of its solvent figure, and nobody has said how much of the product is water.",
			fires:   func(f *facts) bool { return f.uses(isUnsplit) },
			words:   "Count on less solvent than the air figures show: the label of {unsplit steps} leaves the water out.",
			decides: label,
			source:  "40 CFR 59.104(a)(1), and 59.406(a), from memory; that it counts too much is derived.",
			figures: []string{"air.mass"},
			asks:    "How much of {unsplit steps} is water, by the data sheet?",
		},
		{
			id: "binder-not-known", severity: problem.Caution, atStep: atProduct(hasNoBinder, "/binder"),
			when:    "nobody has said whether a product is thinned with water, solvent or a drying oil.",
			fires:   func(f *facts) bool { return f.uses(hasNoBinder) },
			words:   "Treat rags with {steps without binder} as oily until the label says what it is thinned with: spread them flat outdoors, or keep them under water in a lidded metal can.",
			decides: label,
			source:  "Derived: the less safe case is taken where a fact is missing.",
			bites:   []Block{Finish},
			with:    "rags",
			adds:    "Treat rags with {steps without binder} as oily too.",
			asks:    "What is {steps without binder} thinned with, by the label?",
		},
	}
}
