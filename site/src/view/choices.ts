// Choices that stand in many blanks of the sheet, in the words of the sheet.

export type Offered = readonly [value: string, words: string, group?: string];

const volumes: readonly Offered[] = [
  ["gal", "gal"],
  ["qt", "qt"],
  ["pt", "pt"],
  ["cup", "cups"],
  ["floz", "fl oz"],
  ["tbsp", "tbsp"],
  ["tsp", "tsp"],
  ["L", "L"],
  ["mL", "mL"],
];

const weights: readonly Offered[] = [
  ["g", "g"],
  ["oz", "oz"],
];

const kinds: readonly Offered[] = [
  ["protect", "Protect floor and walls"],
  ["base", "Base coat"],
  ["edge-seal", "Edge seal"],
  ["coat", "Coat"],
  ["clear-seal", "Clear seal"],
  ["underpaint", "Colour under the leaf"],
  ["size", "Size"],
  ["leaf", "Leaf"],
  ["glaze", "Glaze"],
  ["clear-coat", "Clear coat"],
  ["peel", "Peeling"],
];

const sets: readonly Offered[] = [
  ["one-layer", "one layer, plain"],
  ["leaf-and-glaze", "two layers, the second in leaf"],
  ["wall-band", "a band on a wall"],
];

/** A question that nobody has answered yet is not a no. */
const answers: readonly Offered[] = [
  ["", "not said"],
  ["yes", "yes"],
  ["no", "no"],
];

/** What a laboratory said of the ceiling's coat. */
const asbestos: readonly Offered[] = [
  ["none", "not tested for asbestos"],
  ["found-free", "tested: no asbestos in it"],
  ["found", "tested: it holds asbestos"],
  ["gone", "with asbestos, taken down or boarded over"],
];

/** What a product counts as where its VOC is limited, in the words of the laws. */
const categories: readonly Offered[] = [
  ["", "nothing chosen yet"],
  ["matt-ceiling", "matt paint for walls and ceilings"],
  ["gloss-ceiling", "glossy paint for walls and ceilings"],
  ["trim-paint", "paint for trim"],
  ["trim-varnish", "varnish or stain for trim"],
  ["sealing-primer", "sealing primer"],
  ["binding-primer", "binding primer"],
  ["one-pack", "one-pack performance coating"],
  ["two-pack", "two-pack performance coating"],
  ["multi-coloured", "multi-coloured coating"],
  ["decorative-effect", "decorative effect: glaze, faux finish"],
  ["metallic", "metallic paint"],
  ["lacquer", "lacquer"],
  ["clear-shellac", "shellac, clear"],
  ["opaque-shellac", "shellac, opaque"],
  ["adhesive", "adhesive, size for leaf"],
];

/** The choices under the name a select asks for them by. */
export const fixedChoices: Readonly<Record<string, readonly Offered[]>> = {
  kinds,
  answers,
  asbestos,
  categories,
  volumes,
  measures: [...volumes, ...weights],
  parts: [...volumes, ...weights, ["%", "% of the rest"]],
  films: [
    ["mil", "mil"],
    ["um", "µm"],
  ],
  "new-step": [...kinds.map(([value, words]): Offered => [value, words, "One step"]), ...sets.map(([value, words]): Offered => [value, words, "A whole set of steps"])],
};

/** What a kind of step or a set of steps is called. */
export function wordsFor(what: string): string {
  return fixedChoices["new-step"]?.find(([value]) => value === what)?.[1] ?? what;
}
