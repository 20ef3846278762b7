// A verdict in a word and a sign, so that no colour has to be told apart.

import { make } from "./dom";

const signs = { good: "✓", bad: "✗", open: "?" } as const;

/** How a verdict looks, and its word. */
export type Verdict = readonly [how: keyof typeof signs, words: string];

export function judged([how, words]: Verdict): HTMLElement {
  return make("span", { class: "cw-judged", "data-judged": how }, make("span", { "aria-hidden": "true" }, `${signs[how]} `), words);
}
