// Where a note bites: a stop or a caution that has to be seen by who works there
// stands as a slim slip at the head of that part of the sheet, in its first
// sentence. The whole note stands once, under Safety.

import type { Advice } from "../engine/contract";
import { action, make, redraw, region } from "./dom";
import { firstSentence, severityWord, sign } from "./signs";
import { say } from "./say";

/** The parts of the sheet a note can bite in. */
const BLOCKS = ["room", "hanging", "finish", "days"] as const;
/** More cautions than this in one part are folded on the screen. */
const UNFOLDED = 2;

/** The stops that whoever works in this part has to see. */
export function stopsIn(block: string, notes: Advice[]): Advice[] {
  return biting(block, "stop", notes);
}

function biting(block: string, severity: string, notes: Advice[]): Advice[] {
  return notes.filter((n) => n.severity === severity && (n.bites ?? []).includes(block));
}

export function renderBites(pages: HTMLElement[], notes: Advice[]): void {
  for (const block of BLOCKS) {
    const page = pages.find((p) => p.id === block);
    if (!page) continue;
    const stops = stopsIn(block, notes);
    const cautions = biting(block, "caution", notes);
    redraw(region("bites", page), [stops, cautions], () => [...stops.map(slip), ...cautionSlips(cautions)]);
  }
}

function cautionSlips(cautions: Advice[]): HTMLElement[] {
  if (cautions.length <= UNFOLDED) return cautions.map(slip);
  return [
    make("details", { class: "cw-bites-more" }, make("summary", {}, sign("caution"), " ", say("Take care: {n} things", { n: cautions.length })), ...cautions.map(slip)),
  ];
}

function slip(n: Advice): HTMLElement {
  const [first, rest] = firstSentence(n.words);
  return make(
    "p",
    { class: "cw-bite", "data-severity": n.severity, "data-bite": n.id },
    sign(n.severity),
    make("span", {}, make("b", {}, `${severityWord[n.severity]}:`), ` ${first} `, action("see-note", rest === "" ? say("why") : say("the whole note"), { "data-to": n.id, "aria-label": say("The whole note: {first}", { first }) })),
  );
}
