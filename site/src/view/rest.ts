// What is seldom changed stands behind one More, which names what is in it and says how
// much of that is filled in. It opens by itself over what is filled in, once, and over
// what is wrong.

import { emptyPlan, type Plan } from "../state/plan";
import { at, typedText } from "../state/pointer";
import { every, region, setAttribute, setText } from "./dom";
import { say } from "./say";

const opened = new WeakMap<Element, string>();

export function renderRest(plan: Plan): void {
  const begun = emptyPlan(plan);
  for (const rest of every<HTMLDetailsElement>("details.cw-rest")) {
    const places = new Set(every("[data-at]", rest).filter((b) => b.closest("[hidden]") === null).map((b) => b.dataset["at"] ?? ""));
    const filled = Array.from(places).filter((place) => isFilled(rest, plan, begun, place)).length;
    setText(region("rest-filled", rest), filled === 0 ? "" : say("({n} filled in)", { n: filled }));
    const id = typedText(plan["id"]);
    const wrong = rest.querySelector(".cw-say:not([data-severity=note], [data-to-come])") !== null;
    // An entry begins with much filled in: there it is said, not shown.
    const shows = filled > 0 && !rest.closest("[data-item-of]");
    setAttribute(rest, "data-filled", shows ? "" : null);
    if (wrong || (shows && opened.get(rest) !== id)) {
      rest.open = true;
      opened.set(rest, id);
    }
  }
}

/** A blank is filled in where something stands in it that an empty sheet does not have,
 *  nor takes for granted. */
function isFilled(rest: Element, plan: Plan, begun: Plan, place: string): boolean {
  const typed = typedText(at(plan, place));
  if (typed === "" || typed === typedText(at(begun, place))) return false;
  return rest.querySelector<HTMLElement>(`select[data-at="${CSS.escape(place)}"]`)?.dataset["unset"] !== typed;
}
