// Before anyone goes up to hang: the stops that bite there, each to be ticked.
// A stop that says something else than when it was ticked is to be ticked anew.

import type { Advice } from "../engine/contract";
import { stopsIn } from "./bites";
import { make } from "./dom";
import { button, heading, unbroken, type Rung, type Screen } from "./ladder-screen";
import { firstSentence, sign } from "./signs";
import { say } from "./say";

/** The step that stands before the first panel. */
export const BEFORE = "before";

function stopsFor(rung: Rung): Advice[] {
  return stopsIn("hanging", rung.sheet().safety ?? []);
}

export function hasStops(rung: Rung): boolean {
  return stopsFor(rung).length > 0;
}

/** Whether a stop for hanging has not been ticked for this layer. */
export function isToRead(rung: Rung): boolean {
  return stopsFor(rung).some((n) => !isTicked(rung, n));
}

function nameOf(n: Advice): string {
  return `stop ${n.id} ${n.words}`;
}

function isTicked(rung: Rung, n: Advice): boolean {
  return rung.place.ticked.includes(nameOf(n));
}

/** All the stops on one screen, or null where there are none. Nobody is locked
 *  out: until all are ticked, the way back to the sheet lies under the thumb. */
export function beforeScreen(rung: Rung, where: string, goOn: () => void): Screen | null {
  const stops = stopsFor(rung);
  if (stops.length === 0) return null;
  const leave = { words: say("To the sheet"), does: () => rung.leave() };
  return {
    name: BEFORE,
    where,
    heading: heading(say("Before you go up:"), say("{n|stop|stops}", { n: stops.length })),
    content: [
      make("p", { class: "cw-ladder-small" }, say("Tick each once it is done. A tick does not make the work safe.")),
      make("ul", { class: "cw-ladder-stops" }, ...stops.map((n) => stop(rung, n))),
    ],
    keys: isToRead(rung) ? [leave, { words: say("Go on all the same"), does: goOn }] : [{ words: say("Go on"), does: goOn }, leave],
  };
}

function stop(rung: Rung, n: Advice): HTMLElement {
  const [first, rest] = firstSentence(unbroken(n.words));
  const ticked = isTicked(rung, n);
  const tick = button("", () => {
    const others = rung.place.ticked.filter((t) => t !== nameOf(n));
    rung.place.ticked = ticked ? others : [...others, nameOf(n)];
    rung.go(BEFORE);
    document.querySelector<HTMLElement>(`.cw-ladder [data-stop="${CSS.escape(n.id)}"]`)?.focus({ preventScroll: true });
  }, { "aria-pressed": String(ticked), "data-stop": n.id });
  tick.append(sign("stop"), make("span", {}, make("b", {}, first), rest === "" ? "" : ` ${rest}`), make("span", { class: "cw-ladder-box", "aria-hidden": "true" }, ticked ? "✓" : ""));
  return make("li", {}, tick);
}
