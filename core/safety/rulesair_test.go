package safety

// The air and what burns in it.
var airCases = []ruleCase{
	// Worked by hand: of M g, 0.9 M is given off in 8 h, M × 3.0583e-4 g/m³ is in the
	// air then, and the average is (0.9 M ÷ 90 − that) ÷ (4 ÷ 3 × 8) = M × 9.0883e-4:
	// 385.11 g gives 350 mg/m³ just so, 192.55 g half.
	{"air-over-limit", paints(Water, "3.8512", "100"), paints(Water, "3.851", "100")},
	{"air-near-limit", paints(Water, "3.851", "100"), paints(Water, "3.8512", "100")},
	{"air-near-limit", paints(Water, "1.9256", "100"), paints(Water, "1.9255", "100")},
	// The average is over 8 h, the level over the worst quarter of an hour.
	{"air-near-limit", product(Product{Litres: fact("0.6759"), VOC: fact("100"), Binder: Water, DryHours: fact("1")}),
		product(Product{Litres: fact("0.6758"), VOC: fact("100"), Binder: Water, DryHours: fact("1")})},
	{"respirator-programme", paints(Water, "3.8512", "100"), paints(Water, "3.851", "100")},
	{"keep-windows-open", paints(Water, "1", "60"), paints(Water, "1", "30")},
	{"no-way-out-for-vapour", all(paints(Solvent, "0.1", "10"), opened(Fact{})), paints(Solvent, "0.1", "10")},
	{"no-way-out-for-vapour", all(paints(Solvent, "0.1", "10"), opened(fact("0"))), all(paints(Water, "0.1", "10"), opened(fact("0")))},
	{"no-way-out-for-vapour", all(paints(Water, "0.1", "150.1"), opened(fact("0"))), all(paints(Water, "0.1", "150"), opened(fact("0")))},
	// 360 g in 90 m³ are 4000 mg/m³.
	{"vapour-may-burn", paints(Solvent, "1.0001", "360"), paints(Solvent, "1", "360")},
	{"vapour-may-burn", all(paints(Solvent, "1", "360"), paints(DryingOil, "1", "160")), all(paints(Solvent, "1", "360"), paints(Water, "40", "100"))},
	{"flames-out", paints(Solvent, "0.1", "10"), paints(Water, "0.1", "10")},
	{"flames-out", product(Product{Litres: fact("1"), Binder: DryingOil, DryHours: fact("9")}),
		product(Product{Litres: fact("1"), Binder: Water, DryHours: fact("9")})},
	{"fire-office-above-1-gallon", paints(Solvent, "3.785411785", "10"), paints(Solvent, "3.785411784", "10")},
	{"fire-office-above-1-gallon", paints(Solvent, "4", "10"), all(paints(Solvent, "4", "10"), in(UK))},
	// 31.5 g in 90 m³ are 350 mg/m³, the limit.
	{"air-after-last-coat", paints(Water, "0.3151", "100"), paints(Water, "0.315", "100")},
	{"keep-air-moving", paints(Water, "0.315", "100"), paints(Water, "0.3151", "100")},
	{"keep-air-moving", paints(Water, "0.1", "1"), paints(Water, "0.1", "0")},
	{"air-figures-too-low", product(Product{Litres: fact("1"), Binder: Water, DryHours: fact("1")}), paints(Water, "1", "1")},
	{"air-figures-too-low", product(Product{Litres: fact("1"), VOC: fact("5"), Binder: Water}),
		product(Product{Litres: fact("1"), VOC: fact("0"), Binder: Water})},
	{"binder-not-known", paints("", "1", "0"), paints(Water, "1", "0")},
}
