// Paper that holds one thing alone: cards, labels, a list. It is laid beside the
// sheet, and the sheet stays off the paper while it lies there.

import { region, setAttribute } from "./dom";

/** Puts this on the paper and nothing else; kind names it for the style. */
export function layAlone(kind: string, ...parts: (Node | null)[]): void {
  region("cards").replaceChildren(...parts.filter((p): p is Node => p !== null));
  setAttribute(document.documentElement, "data-printing", kind);
}

export function clearPaper(): void {
  region("cards").replaceChildren();
  setAttribute(document.documentElement, "data-printing", null);
}
