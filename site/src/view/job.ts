// The job on the sheet: one plan, one answer, and the way between them. What is
// typed goes into the plan; the plan goes to the engine; its answer is shown.

import { writePlanIntoPage } from "../state/along";
import { amend, noteChange, noteKey, type Change } from "../state/history";
import { adopt } from "../state/keep";
import { emptyPlan, type Plan } from "../state/plan";
import { typedText } from "../state/pointer";
import { readings, workOut } from "./answer";
import { isGuest, leaveAddress } from "./arriving";
import type { OwnDesk } from "./desk";
import { region, setText } from "./dom";
import { renderEcho } from "./echo";
import { isFramed } from "./framed";
import { keepSoon } from "./keeping";
import { renderLists, renderWhen } from "./lists";
import { isForClient, refusesChange } from "./looking";
import { unsay } from "./messages";
import { pagesAsked, renderSheet } from "./render";
import { offerOwnTab } from "./sharing";
import { renderUndo } from "./undo";

const SLOW = 30; // ms; before a sheet that twice took longer, the key itself is painted
const FRAME = 17; // ms; keys that come meanwhile are worked out together

let plan: Plan = emptyPlan();
let lastTook = 0;
let tookBefore = 0;

/** The plan the page opens with, before anything is shown. */
export function begin(first: Plan): void {
  plan = first;
}

let due: ReturnType<typeof setTimeout> | undefined;

/** The plan has changed: keep it, work it out, show it. */
export function changed(change: Change = {}): void {
  noteChange(JSON.stringify(plan), change);
  keepSoon();
  show();
}

function changedByKey(pointer: string): void {
  noteKey(JSON.stringify(plan), pointer, performance.now());
  keepSoon();
  renderUndo();
  if (Math.min(lastTook, tookBefore) < SLOW) show();
  else due ??= setTimeout(show, FRAME);
}

function settle(): void {
  if (due !== undefined) show();
}

export function show(): void {
  clearTimeout(due);
  due = undefined;
  const began = performance.now();
  workOut(JSON.stringify(plan), pagesAsked(), show);
  writePlanIntoPage(plan);
  renderLists(plan);
  renderWhen(plan);
  renderSheet(plan);
  renderEcho(readings());
  renderUndo();
  tookBefore = lastTook;
  lastTook = performance.now() - began;
}

/** Whatever was on the sheet is a job from the first change on. */
function work(edit: (plan: Plan) => void): void {
  adopt(plan);
  edit(plan);
}

function putOn(next: Plan): void {
  // That another tab changed the job before is not said of this one.
  if (typedText(next["id"]) !== typedText(plan["id"])) unsay("keeping");
  plan = next;
  unsayDone();
  if (isGuest(plan)) return;
  leaveAddress();
  unsay("guest");
}

/** Puts a plan on the sheet that was there before. */
export function bringBack(next: Plan): void {
  putOn(next);
  keepSoon();
  show();
}

/** What was said of the plan before is not for the one that follows it. */
function unsayDone(): void {
  unsay("done");
  unsay("client");
}

export const desk: OwnDesk = {
  plan: () => plan,
  change: (edit, words = "", at = "") => {
    if (refusesChange(plan)) return;
    work(edit);
    changed({ words, at });
  },
  redraw: () => {
    renderLists(plan);
    renderWhen(plan);
    renderSheet(plan);
  },
  take: (next, words, { inPlace = false, jobs = [] } = {}) => {
    putOn(next);
    if (inPlace) amend(JSON.stringify(plan));
    changed({ words, jobs });
    window.scrollTo({ top: 0 });
  },
  changeByKey: (edit, pointer) => {
    if (refusesChange(plan)) return;
    work(edit);
    changedByKey(pointer);
  },
  amend: (edit) => {
    if (isForClient(plan)) return;
    work(edit);
    amend(JSON.stringify(plan));
    keepSoon();
    show();
  },
  look: (as) => {
    if (as !== plan) unsayDone();
    plan = as;
    setText(region("hear"), ""); // what was said of the other copy is not for this one
    show();
    if (isFramed()) void offerOwnTab(plan);
  },
  settle,
};
