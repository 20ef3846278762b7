// What is seldom changed stands behind one More, which names what is in it and says how
// much of that is filled in. It opens by itself over what is filled in, once, and over
// what is wrong.

import { newEntry } from "../state/entries";
import { emptyPlan, type Plan } from "../state/plan";
import { at, typedText, type Json } from "../state/pointer";
import { every, region, setAttribute, setText } from "./dom";
import { onSheet } from "./pages";
import { say } from "./say";

const WRONG = ".cw-say:not([data-severity=note], [data-to-come])";

const opened = new WeakMap<Element, string>();

export function renderRest(plan: Plan): void {
  const begun = beginnings(plan);
  for (const rest of onSheet<HTMLDetailsElement>("details.cw-rest")) {
    const filled = every<HTMLInputElement>("[data-at]", rest).filter((b) => isFilled(b, plan, begun));
    const places = new Set(filled.map((b) => b.dataset["at"]));
    setText(region("rest-filled", rest), places.size === 0 ? "" : say("({n} filled in)", { n: places.size }));
    // On paper its empty parts are left out.
    const holds = (part: Element) => part.hasAttribute("data-shows") || filled.some((b) => part.contains(b));
    const parts = every(".cw-part", rest);
    for (const part of parts) setAttribute(part, "data-filled", holds(part) ? "" : null);
    // An entry begins with much filled in: there it is said, not shown.
    const shows = parts.some((part) => part.hasAttribute("data-shows")) || (filled.length > 0 && !rest.closest("[data-item-of]"));
    setAttribute(rest, "data-filled", shows || parts.some((part) => part.hasAttribute("data-filled")) ? "" : null);
    const id = typedText(plan["id"]);
    const another = opened.get(rest) !== id;
    if (isWrong(rest) || (shows && another)) {
      rest.open = true;
      opened.set(rest, id);
    } else if (another && opened.delete(rest)) {
      // Another job, of which there is nothing to show.
      rest.open = false;
    }
  }
}

/** What is wrong is said in the fold while it is open, and under it while it is shut. */
function isWrong(rest: Element): boolean {
  const under = rest.nextElementSibling;
  if (!under?.matches(WRONG)) return rest.querySelector(WRONG) !== null;
  return rest.querySelector(`[data-at="${CSS.escape((under as HTMLElement).dataset["problemAt"] ?? "")}"]`) !== null;
}

/** What stands in each blank on an empty sheet, or in an entry that is new. */
function beginnings(plan: Plan): (blank: HTMLElement, place: string) => string {
  const begun = emptyPlan(plan);
  const entries = new Map<string, Json>();
  return (blank, place) => {
    const base = blank.closest<HTMLElement>("[data-base]")?.dataset["base"] ?? "";
    if (base === "" || !place.startsWith(`${base}/`)) return typedText(at(begun, place));
    const of = base.slice(0, base.lastIndexOf("/"));
    const entry = entries.get(of) ?? newEntry(plan, of);
    entries.set(of, entry);
    return typedText(at(entry, place.slice(base.length)));
  };
}

/** A blank is filled in where something stands in it that it did not begin with, and
 *  that is not taken for granted. */
function isFilled(blank: HTMLInputElement, plan: Plan, begun: (blank: HTMLElement, place: string) => string): boolean {
  if (blank.value === "" || blank.closest("[hidden]") !== null) return false;
  const place = blank.dataset["at"] ?? "";
  const typed = typedText(at(plan, place));
  return typed !== "" && typed !== begun(blank, place) && typed !== blank.dataset["unset"];
}
