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
  ["protect", "Covers and paper"],
  ["base", "Base coat"],
  ["edge-seal", "Edge seal"],
  ["coat", "Coat"],
  ["clear-seal", "Clear seal"],
  ["underpaint", "Underpaint"],
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

/** The choices under the name a select asks for them by. */
export const fixedChoices: Readonly<Record<string, readonly Offered[]>> = {
  kinds,
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
