// Choices that stand in many blanks of the sheet, in the words of the sheet.

import { offered } from "../generated/plan";
import { say } from "./say";

export type Offered = readonly [value: string, words: string, group?: string];

const inGroup = (all: readonly Offered[], group: string): Offered[] => all.map(([value, words]) => [value, words, group]);

/** The choices under the name a select asks for them by. */
export const fixedChoices: Readonly<Record<string, readonly Offered[]>> = {
  ...offered,
  "new-step": [...inGroup(offered.kinds, say("One step")), ...inGroup(offered.sets, say("A whole set of steps"))],
};

/** What a kind of step or a set of steps is called. */
export function wordsFor(what: string): string {
  return fixedChoices["new-step"]?.find(([value]) => value === what)?.[1] ?? what;
}
