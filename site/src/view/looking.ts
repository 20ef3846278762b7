// Who is looking: the firm, or a client. A client's copy is a plan of its own,
// which the engine makes: it holds no rates, and its price stands as quoted. It is
// put on the sheet in place of the firm's, so print, link, file, frame and saved
// page all give what is in view, and there is nothing else they could give.

import { today } from "../state/clocks";
import { readPlan, type Plan } from "../state/plan";
import { at, typedText } from "../state/pointer";
import { theEngine } from "./answer";
import type { Actions, Desk, OwnDesk } from "./desk";
import { action, bringUnder, middle, setAttribute } from "./dom";
import { keepIfWaiting } from "./keeping";
import { message } from "./messages";
import { onSheet } from "./pages";
import { say } from "./say";

/** The firm's own plan while its client's copy is in view, and that copy. */
let own: Plan | null = null;
let copy: Plan | null = null;

export function isForClient(plan: Plan): boolean {
  return typedText(at(plan, "/quote/date")) !== "";
}

/** The firm's own plan behind a client's copy; null where none is behind it, as
 *  with a copy that came by link or file. */
export function ownBehind(plan: Plan): Plan | null {
  return plan === copy ? own : null;
}

/** The job on the sheet, though its client's copy is in view. */
export function jobOnSheet(desk: Desk): Plan {
  const shown = desk.plan();
  return ownBehind(shown) ?? shown;
}

/** Puts the job itself back on the sheet, where its client's copy is in view. */
export function showJob(desk: OwnDesk): void {
  const job = jobOnSheet(desk);
  if (job !== desk.plan()) desk.look(job);
}

/** A client's copy is read, not changed: true, and said, where the plan is one. */
export function refusesChange(plan: Plan): boolean {
  if (!isForClient(plan)) return false;
  const back = ownBehind(plan) ? [action("look", say("Show the own copy"), { "data-to": "own" })] : [];
  message("client", say("This is the client’s copy. It stands as it was quoted and is not changed."), ...back);
  return true;
}

/** Blanks of a client's copy can be read and copied, not written in. */
export function renderLooking(plan: Plan): void {
  const closed = isForClient(plan);
  setAttribute(document.querySelector(".cw-page") as Element, "data-client", closed ? "" : null);
  for (const blank of onSheet<HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>("[data-at]")) {
    if (blank instanceof HTMLSelectElement) blank.disabled = closed;
    else blank.readOnly = closed;
  }
}

function lookAsClient(desk: OwnDesk): void {
  const plan = desk.plan();
  const made = readPlan(theEngine()?.quoted(JSON.stringify(plan), today()) ?? "");
  if (isForClient(plan) || !("plan" in made)) return;
  keepIfWaiting();
  own = plan;
  copy = made.plan;
  desk.look(made.plan);
}

export function lookingActions(desk: OwnDesk): Actions {
  return {
    look: (b) => {
      const y = middle(b);
      const inPlace = b.closest("[data-message]") === null;
      if (b.dataset["to"] === "client") lookAsClient(desk);
      else showJob(desk);
      const chosen = document.querySelector<HTMLElement>("[data-do=look][aria-pressed=true]");
      chosen?.focus({ preventScroll: true });
      // Whole parts of the sheet above the price come and go with it.
      if (chosen && inPlace) bringUnder(chosen, y);
    },
  };
}
