// What is told on demand: a fold that is as it was left when what is in it is written
// anew, and open on paper.

import { make } from "./dom";

const open = new Set<string>();

/** A fold remembered by its key. */
export function folded(key: string, summary: (Node | string)[], ...inside: (Node | null)[]): HTMLDetailsElement {
  const fold = make("details", { class: "cw-fold cw-printed", open: open.has(key) }, make("summary", {}, ...summary), ...inside);
  fold.addEventListener("toggle", () => {
    if (fold.open) open.add(key);
    else open.delete(key);
  });
  return fold;
}
