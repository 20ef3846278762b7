// Paper that holds one thing alone: cards, labels, a list. It is laid beside the
// sheet, and the sheet stays off the paper while it lies there.

import { typedText, type JsonObject } from "../state/pointer";
import { make, region, setAttribute } from "./dom";

/** Puts this on the paper and nothing else; kind names it for the style. */
export function layAlone(kind: string, ...parts: (Node | null)[]): void {
  region("cards").replaceChildren(...parts.filter((p): p is Node => p !== null));
  setAttribute(document.documentElement, "data-printing", kind);
}

export function clearPaper(): void {
  region("cards").replaceChildren();
  setAttribute(document.documentElement, "data-printing", null);
}

/** What stands at the head of the paper: the job, and what this is of it. */
export function headingFor(plan: JsonObject, what: string): HTMLElement {
  return make("h2", {}, [typedText(plan["title"]), what].filter(Boolean).join(": "));
}

/** A line to sign on. */
export function toSign(words: string): HTMLElement {
  return make("p", { class: "cw-sign" }, words);
}
