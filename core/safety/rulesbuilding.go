package safety

import "ceilingwright/core/problem"

// oldPaintRules are about lead, asbestos and paint that comes off with the mask.
func oldPaintRules() []rule {
	return []rule{
		{
			id: "lead-found", severity: problem.Stop, subject: "lead", at: "/place/leadTest",
			when:    "a test found lead.",
			fires:   func(f facts) bool { return f.Lead == LeadFound },
			words:   "Do not fit or peel anything on this paint. A test found lead in it.",
			decides: licensed,
			source:  "40 CFR 745.80 to 745.90; Control of Lead at Work Regulations 2002, from memory.",
		},
		{
			id: "lead-certified-firm", severity: problem.Stop, where: inUS, subject: "lead", at: "/place/leadTest",
			when:    "built before 1978 or unknown, not tested free of lead, and the mask is over 6 ft² or its area unknown.",
			fires:   func(f facts) bool { return f.leadPossible(leadYearUS) && f.largeMask() },
			words:   "Have the old paint tested for lead, or hire a certified firm, before you start. The mask may lift paint over {mask area}, more than the {6 ft²} a small job may disturb.",
			decides: licensed,
			source:  "40 CFR 745.82 to 745.90. That a mask may disturb all the paint under it is derived.",
			figures: []string{"mask.area"},
		},
		{
			id: "lead-small-job", severity: problem.Note, where: inUS, subject: "lead", at: "/place/leadTest",
			when:    "built before 1978 or unknown, not tested free of lead, and the mask is 6 ft² or less.",
			fires:   func(f facts) bool { return f.leadPossible(leadYearUS) && !f.largeMask() },
			words:   "Lead is likely enough to work wet, sheet the floor and use no flame, hot gun or bare sander. Jobs in one room within 30 days add up: above {6 ft²} the lead rule applies.",
			decides: licensed,
			source:  "40 CFR 745.83, minor repair; 745.85(a)(3), seen in a secondary copy.",
			figures: []string{"mask.area"},
		},
		{
			id: "lead-test-first", severity: problem.Caution, where: inEurope, subject: "lead", at: "/place/leadTest",
			when:    "built before 1992 or unknown, and not tested free of lead.",
			fires:   func(f facts) bool { return f.leadPossible(leadYearUK) },
			words:   "Test the old paint for lead before you fit or peel. Do not sand it dry or burn it.",
			decides: licensed,
			source:  "Control of Lead at Work Regulations 2002, from memory; the year is from memory.",
		},
		{
			id: "lead-keep-result", severity: problem.Note, where: inUS, subject: "lead", at: "/place/leadTest",
			when:    "built before 1978 or unknown, and a test found no lead.",
			fires:   func(f facts) bool { return f.Year < leadYearUS && f.Lead == LeadFoundFree },
			words:   "Keep the test result with this sheet. It has to show less than 1.0 mg/cm² and less than 0.5 % by weight.",
			decides: code,
			source:  "40 CFR 745.82(a).",
		},
		{
			id: "patch-test-old-paint", severity: problem.Caution, at: "/place/pullTest",
			when: "old paint not tested free of lead, the mask is over 6 ft² or its area unknown, no tape pulled yet, and no asbestos to be presumed.",
			fires: func(f facts) bool {
				return f.oldPaint() && f.largeMask() && f.untested() && !f.mayBeAsbestos()
			},
			words:   "Pull the tape on one small patch first, damp and with the floor sheeted. The mask may lift old paint over {mask area}.",
			decides: licensed,
			source:  "40 CFR 745.83; that a mask may disturb all the paint under it is derived.",
			figures: []string{"mask.area"},
		},
		{
			id: "pull-test-first", severity: problem.Stop, at: "/place/pullTest",
			when:    "no tape has been pulled off the old paint yet, and no asbestos is to be presumed.",
			fires:   func(f facts) bool { return f.untested() && !f.mayBeAsbestos() },
			words:   "Do not hang a panel yet. Press a strip of tape on the old paint in a corner, pull it off, and write down what it did.",
			decides: label,
			source:  "Common practice, no source.",
		},
		{
			id: "pull-test-after-laboratory", severity: problem.Stop, at: "/place/pullTest",
			when:    "no tape has been pulled off the old paint yet, and asbestos is to be presumed.",
			fires:   func(f facts) bool { return f.untested() && f.mayBeAsbestos() },
			words:   "Do not hang a panel, and do not pull tape off this ceiling either, until a laboratory has found it free of asbestos.",
			decides: licensed,
			source:  "29 CFR 1926.1101(k), seen in a secondary copy; Control of Asbestos Regulations 2012, seen in a secondary copy; that a pull disturbs the coat is derived.",
		},
		{
			id: "paint-lifted", severity: problem.Stop, at: "/place/pullTest",
			when:    "the tape lifted the old paint.",
			fires:   func(f facts) bool { return f.Pull == Lifted },
			words:   "Do not hang a panel. The tape lifted the old paint, and the mask would too. Repair and prime, let it cure, and pull tape again. On old paint settle lead and asbestos first.",
			decides: label,
			source:  "Common practice, no source.",
		},
		{
			id: "asbestos-to-1980", severity: problem.Stop, where: inUS, subject: "asbestos", at: "/place/surface",
			when:    "the surface is textured or nobody has said, and it was built in or before 1980 or unknown.",
			fires:   func(f facts) bool { return f.texturedUpTo(asbestosYearUS) },
			words:   "Presume asbestos in this textured coat until a laboratory says otherwise. Do not stick, pull, scrape, sand or drill. If the ceiling is smooth, say so.",
			decides: licensed,
			source:  "29 CFR 1926.1101(b) and (k), presumed asbestos, seen in a secondary copy.",
		},
		{
			id: "asbestos-before-2000", severity: problem.Stop, where: inEurope, subject: "asbestos", at: "/place/surface",
			when:    "the surface is textured or nobody has said, and it was built before 2000 or unknown.",
			fires:   func(f facts) bool { return f.texturedUpTo(asbestosYearElse - 1) },
			words:   "Presume asbestos in this textured coat until a survey or a laboratory says otherwise. Do not stick, pull, scrape, sand or drill. If the ceiling is smooth, say so.",
			decides: licensed,
			source:  "Control of Asbestos Regulations 2012, seen in a secondary copy; HSE Asbestos Essentials sheet a28, seen in a secondary copy.",
		},
	}
}

// wireRules are about the light in the ceiling.
func wireRules() []rule {
	return []rule{
		{
			id: "isolate-the-light", severity: problem.Stop, at: "/room/fixture",
			when:    "there is a light in the ceiling, or nobody has said.",
			fires:   func(f facts) bool { return f.Fixture != No },
			words:   "Do not lower or mask the light until its circuit is off at the board, locked off and proved dead. The wall switch is not enough.",
			decides: electrician,
			source:  "29 CFR 1926.416 and 1926.417, from memory; Electricity at Work Regulations 1989, regulations 12 to 14, from memory.",
		},
		{
			id: "lower-the-light", severity: problem.Caution, at: "/room/fixture",
			when:    "there is a light in the ceiling, or nobody has said.",
			fires:   func(f facts) bool { return f.Fixture != No },
			words:   "Score the paint round the rim before you lower the light. Two people or a support wire hold it: note what it weighs. Never let it hang from its cable.",
			decides: electrician,
			source:  "Common practice, no source.",
		},
		{
			id: "leaf-near-wires", severity: problem.Caution, at: "/room/fixture",
			when:    "leaf is laid and there is a light in the ceiling, or nobody has said.",
			fires:   func(f facts) bool { return len(f.Leaf) > 0 && f.Fixture != No },
			words:   "Leaf conducts and drifts. Cover the terminals, and put the power back only when every flake is cleared away.",
			decides: electrician,
			source:  "Derived: metal leaf conducts.",
		},
	}
}

// detectorRules are about what watches the room for fire.
func detectorRules() []rule {
	return []rule{}
}

// dustRules are about rags that light themselves, and what gets into eyes, lungs
// and skin.
func dustRules() []rule {
	return []rule{
		{
			id: "oily-rags", severity: problem.Caution, atStep: atProduct(isDryingOil, ""),
			when:    "a product that hardens as a drying oil is used.",
			fires:   func(f facts) bool { return len(f.steps(isDryingOil)) > 0 },
			words:   "Rags with {oil steps} can set themselves alight within hours. Spread them flat to dry outdoors, or keep them under water in a lidded metal can. Never leave them in a heap.",
			decides: label,
			source:  "29 CFR 1926.252(e), seen in a secondary copy, for the can; the rest is common practice, no source.",
		},
		{
			id: "leaf-dust", severity: problem.Caution, atStep: func(facts) string { return "/finish/steps" },
			when:    "imitation gold or copper leaf is laid.",
			fires:   func(f facts) bool { return f.lays(Imitation, Copper) },
			words:   "The crumbs of this leaf hold copper. Wear a P100 or P3 dust mask, take them up with a vacuum cleaner, and do not sweep or blow.",
			decides: label,
			source:  "NIOSH Pocket Guide, copper dusts, 1 mg/m³, seen in a secondary copy.",
		},
		{
			id: "eyes-overhead", severity: problem.Note, at: "",
			when:    "always: the work is overhead.",
			fires:   func(f facts) bool { return true },
			words:   "Wear goggles that seal at the brow, a cap and sleeves. Keep an eye wash at hand.",
			decides: label,
			source:  "29 CFR 1926.102, from memory.",
		},
	}
}
