// Which step of the finish is open: one at a time. What is in the others is built when
// they are opened, and on paper.

import type { Actions, Desk } from "./desk";
import { bringUnder, middle } from "./dom";

let open = "";
let all = false;
let again: () => void = () => undefined;

/** Lets steps be opened; redraw builds what is in them. */
export function startStepOpen(redraw: () => void): void {
  again = redraw;
}

export function isStepOpen(id: string): boolean {
  return all || open === id;
}

/** The step with this id is the one open when the sheet is shown next. */
export function nextOpen(id: string): void {
  open = id;
}

/** Every step is built for the printer, until they are not wanted any more. */
export function openAllSteps(wanted: boolean): void {
  if (all === wanted) return;
  all = wanted;
  again();
}

/** Looks for something in every step, and leaves the one open that it is in. */
export function amongSteps(find: () => HTMLElement | null): HTMLElement | null {
  const there = find();
  if (there) return there;
  openAllSteps(true);
  const base = find()?.closest<HTMLElement>(".cw-step")?.dataset["base"] ?? "";
  openAllSteps(false);
  openAround(base);
  return find();
}

/** The line of a step that a place of the plan lies in and that is shut; null where
 *  there is none. */
export function shutAround(pointer: string): HTMLElement | null {
  const base = /^\/finish\/steps\/\d+/.exec(pointer)?.[0];
  return base === undefined ? null : document.querySelector<HTMLElement>(`.cw-step[data-base="${base}"] [data-do="open-step"][aria-expanded="false"]`);
}

/** Opens the step that a place of the plan lies in, so that its blank is there. */
export function openAround(pointer: string): void {
  const line = shutAround(pointer);
  if (!line) return;
  open = line.dataset["to"] ?? "";
  again();
}

export function stepOpenActions(desk: Desk): Actions {
  return {
    "open-step": (line) => {
      const y = middle(line);
      open = line.getAttribute("aria-expanded") === "true" ? "" : (line.dataset["to"] ?? "");
      desk.redraw();
      // What was open above is gone: the line pressed stays where it was.
      bringUnder(line, y);
    },
  };
}
