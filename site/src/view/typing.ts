// From the blanks to the plan: what is typed goes in at once, and a blank that
// is left shows how it was read.

import { noteClocks } from "../state/clocks";
import { completeForm, completeStep, ensureEntry } from "../state/entries";
import { endTyping } from "../state/history";
import type { Plan } from "../state/plan";
import { at, put, typedText } from "../state/pointer";
import { readings, theSheet } from "./answer";
import { type Blank, blankAt, blankFrom, hasWithheld, pointerOf, renderBlanks, renderProblems } from "./blanks";
import type { Actions, OwnDesk } from "./desk";
import { renderEcho, startEcho } from "./echo";
import { startEntering } from "./entering";
import { fitToRoom } from "./other-room";

export function startTyping(root: HTMLElement, desk: OwnDesk): void {
  root.addEventListener("input", (e) => typed(desk, e.target));
  root.addEventListener("change", (e) => left(desk, e.target));
  for (const name of ["focusin", "focusout"]) {
    root.addEventListener(name, (e) => {
      if (!blankFrom(e.target)) return;
      if (name === "focusout") {
        desk.settle();
        endTyping();
        if (hasWithheld()) afterPress(() => renderProblems(theSheet()?.problems ?? []));
      }
      renderBlanks(desk.plan(), readings());
      renderEcho(readings());
    });
  }
  startEntering(root);
  startEcho(root);
}

/** Numbers written without a unit take the unit they were read with, so that
 *  another unit for bare numbers changes nothing that is on the sheet. */
export function writeUnits(plan: Plan): void {
  for (const [pointer, reading] of Object.entries(readings())) {
    if (reading.written) put(plan, pointer, reading.written);
  }
}

function typed(desk: OwnDesk, target: EventTarget | null): void {
  const blank = blankFrom(target);
  if (!blank) return;
  const pointer = pointerOf(blank);
  const chosen = blank instanceof HTMLSelectElement;
  const { value } = blank; // what is due to be shown may write the blank anew
  if (chosen) desk.settle();
  const edit = (plan: Plan) => enter(plan, blank, pointer, value);
  if (chosen) desk.change(edit, "", pointer);
  else desk.changeByKey(edit, pointer);
  // Another sentence may stand there now, with the same blank in it.
  if (blank.closest("[hidden]")) blankAt(pointer)?.focus();
}

/** Puts what is in a blank into the plan, with what follows from it. */
function enter(plan: Plan, blank: Blank, pointer: string, value: string): void {
  // The unit for bare numbers may change only what is typed from now on.
  if (pointer === "/units/bare") writeUnits(plan);
  // The blank of a thing the plan has no entry for yet, such as a seam's gap.
  const { entryOf: entries, entryKey: key, entry: name } = blank.dataset;
  if (entries && key && name) ensureEntry(plan, entries, key, name);
  put(plan, pointer, value);
  if (pointer === "/room/form") completeForm(plan);
  if (pointer === "/days/start") noteClocks(plan);
  const step = /^(.*)\/kind$/.exec(pointer)?.[1];
  if (step !== undefined) completeStep(plan, step);
}

function left(desk: OwnDesk, target: EventTarget | null): void {
  const blank = blankFrom(target);
  if (!blank) return;
  desk.settle();
  const pointer = pointerOf(blank);
  const written = readings()[pointer]?.written;
  if (written && written !== typedText(at(desk.plan(), pointer))) desk.amend((plan) => put(plan, pointer, written));
  fitToRoom(desk, pointer);
}

/** One of the answers to a question about a blank. */
export function typingActions(desk: OwnDesk): Actions {
  return {
    answer: (b) => {
      const { to = "", answer = "" } = b.dataset;
      desk.change((plan) => put(plan, to, answer), "", to);
      fitToRoom(desk, to);
      blankAt(to)?.focus({ preventScroll: true });
    },
  };
}

/** Does something at once, or, where the mouse is down, after the click: what is
 *  pressed must not move from under the pointer. */
function afterPress(run: () => void): void {
  if (!isDown) run();
  else window.addEventListener("mouseup", () => setTimeout(run), { once: true });
}

let isDown = false;
for (const name of ["mousedown", "mouseup"]) window.addEventListener(name, () => (isDown = name === "mousedown"), true);
