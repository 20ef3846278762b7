// Safety: each note a sentence, with why it is there and who says so.

import type { SafetyNote } from "../engine/contract";
import { make, redraw, region } from "./dom";
import { figurePlace } from "./figures";

const marks = { stop: "Stop", caution: "Take care", note: "Know" } as const;

export function renderSafety(notes: SafetyNote[]): void {
  redraw(region("safety"), notes, () => notes.map(note));
}

function note(n: SafetyNote): HTMLElement {
  return make(
    "article",
    { class: "cw-note", "data-severity": n.severity, "data-note": n.id },
    make("p", {}, make("b", {}, marks[n.severity]), " ", n.words, " ", n.decides),
    " ",
    make(
      "details",
      { class: "cw-why" },
      make("summary", { "aria-label": `Why, and who says so: ${n.words.slice(0, 60)}` }, "why, and who says so"),
      (n.figures ?? []).length > 0 ? make("div", { class: "cw-row" }, ...n.figures.map((id) => figurePlace(id, "small"))) : null,
      make("p", { class: "cw-source" }, n.source, n.jurisdiction ? ` (${n.jurisdiction})` : ""),
    ),
  );
}
