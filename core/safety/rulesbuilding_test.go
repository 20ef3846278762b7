package safety

// The building, dust and rags.
var buildingCases = []ruleCase{
	{"lead-found", lead(LeadFound), lead(LeadFoundFree)},
	{"lead-certified-firm", built(1977), built(1978)},
	{"lead-certified-firm", built(0), all(built(0), lead(LeadFoundFree))},
	{"lead-certified-firm", all(built(1931), masked(sixSquareFeet.Add(number("0.0001")))), all(built(1931), masked(sixSquareFeet))},
	{"lead-certified-firm", all(built(1931), masked(number("0"))), all(built(1931), in(UK))},
	{"lead-small-job", all(built(1977), masked(sixSquareFeet)), all(built(1978), masked(sixSquareFeet))},
	{"lead-small-job", all(built(0), masked(sixSquareFeet)), all(built(0), masked(sixSquareFeet.Add(number("0.0001"))))},
	{"lead-test-first", all(in(UK), built(1991)), all(in(UK), built(1992))},
	{"lead-test-first", all(in(EU), built(0)), all(in(EU), built(0), lead(LeadFoundFree))},
	{"lead-test-first", all(in(Other), built(1985)), all(in(Other), built(1977))},
	{"lead-keep-result", all(built(1977), lead(LeadFoundFree)), all(built(1978), lead(LeadFoundFree))},
	{"patch-test-old-paint", all(built(1977), pull("")), all(built(1978), pull(""))},
	{"patch-test-old-paint", all(in(UK), built(1991), pull(NoPullTest)), all(in(UK), built(1991), pull(PaintHeld))},
	{"patch-test-old-paint", all(built(1977), pull("")), all(built(1977), pull(""), masked(sixSquareFeet))},
	{"patch-test-old-paint", all(built(1977), pull("")), all(built(1977), pull(""), textured(Yes))},
	{"pull-test-first", pull(""), pull(PaintHeld)},
	{"pull-test-first", all(pull(NoPullTest), textured(Yes), built(1981)), all(pull(NoPullTest), textured(Yes), built(1980))},
	{"pull-test-first", pull(NoPullTest), pull(Lifted)},
	{"pull-test-after-laboratory", all(pull(""), textured(Yes), built(0)), all(pull(""), textured(No), built(0))},
	{"pull-test-after-laboratory", all(pull(""), textured(Yes), built(1999), in("")), all(pull(""), textured(Yes), built(2000), in(""))},
	{"paint-lifted", pull(Lifted), pull(PaintHeld)},
	{"asbestos-to-1980", all(textured(Yes), built(1980)), all(textured(Yes), built(1981))},
	{"asbestos-to-1980", all(textured(""), built(0)), all(textured(No), built(0))},
	{"asbestos-before-2000", all(textured(Yes), built(1999), in(UK)), all(textured(Yes), built(2000), in(UK))},
	{"asbestos-before-2000", all(textured(Yes), built(1981), in(Other)), all(textured(Yes), built(1981), in(US))},

	{"isolate-the-light", light(Yes), light(No)},
	{"isolate-the-light", light(""), light(No)},
	{"lower-the-light", light(Yes), light(No)},
	{"leaf-near-wires", all(light(Yes), leaf(Gold)), leaf(Gold)},
	{"leaf-near-wires", all(light(""), leaf(Gold)), light("")},
	// A warning about rags keeps its weight by not being printed for water-borne
	// work (a maker space's page on oil finishes, and a woodworking magazine).
	{"oily-rags", paints(DryingOil, "1", "10"), all(paints(Water, "1", "10"), paints(Solvent, "1", "10"))},
	{"leaf-dust", leaf(Gold, Imitation), leaf(Gold, Silver, Aluminium)},
	{"leaf-dust", leaf(Copper), all()},
}
