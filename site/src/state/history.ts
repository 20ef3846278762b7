// What was done to the plan, so that any change can be undone and done again:
// whole plans as texts, one step a change. Typing in one blank is one step until
// the blank is left or the keys rest. The oldest steps go when there are many.

import type { JobChange } from "./jobs";

const REST = 2000; // ms without a key, after which typing in a blank is a new step
const MOST_STEPS = 200;
const MOST_TEXT = 12_000_000; // characters over all steps

export interface Step {
  before: string;
  after: string;
  at: string; // pointer of the blank that was typed in, "" where there was none
  words: string; // what was done, "" where the two plans say it
  jobs: JobChange[]; // what changed with it among the jobs kept
}

export type Change = Partial<Pick<Step, "at" | "words" | "jobs">>;

let past: Step[] = [];
let future: Step[] = [];
let now = "";
let typingIn = ""; // pointer of the blank whose step is still open
let lastKey = 0;

/** The plan the page begins with, with nothing done to it yet. */
export function startHistory(plan: string): void {
  [past, future, now, typingIn] = [[], [], plan, ""];
}

/** The plan is another than before: one step. */
export function noteChange(plan: string, change: Change = {}): void {
  const jobs = change.jobs ?? [];
  if (plan === now && jobs.length === 0) return;
  typingIn = "";
  future = [];
  past.push({ before: now, after: plan, at: change.at ?? "", words: change.words ?? "", jobs });
  now = plan;
  bound();
}

/** A key was pressed in the blank at a pointer, at a moment in milliseconds. */
export function noteKey(plan: string, at: string, moment: number): void {
  const goesOn = typingIn === at && moment - lastKey < REST;
  lastKey = moment;
  if (goesOn) {
    typingIn = amend(plan) ? at : "";
    return;
  }
  noteChange(plan, { at });
  typingIn = at;
}

/** The plan as the last change left it is written like this; what can be done
 *  again stays. False where that takes the change back, which is then no step. */
export function amend(plan: string): boolean {
  const last = past.at(-1);
  const undone = last !== undefined && last.before === plan && last.after !== plan && last.jobs.length === 0;
  if (undone) past.pop();
  else if (last) last.after = plan;
  now = plan;
  if (undone) typingIn = "";
  return !undone;
}

/** A blank was left: what is typed from now on is a step of its own. */
export function endTyping(): void {
  typingIn = "";
}

export function canUndo(): boolean {
  return past.length > 0;
}

export function canRedo(): boolean {
  return future.length > 0;
}

/** Goes back one step; the plan is then the step's before. */
export function undoStep(): Step | null {
  const step = past.pop();
  if (!step) return null;
  future.push(step);
  now = step.before;
  typingIn = "";
  return step;
}

/** Goes forward again; the plan is then the step's after. */
export function redoStep(): Step | null {
  const step = future.pop();
  if (!step) return null;
  past.push(step);
  now = step.after;
  typingIn = "";
  return step;
}

function bound(): void {
  let size = past.reduce((sum, s) => sum + sizeOf(s), 0);
  while (past.length > MOST_STEPS || (size > MOST_TEXT && past.length > 1)) {
    const oldest = past.shift();
    if (oldest) size -= sizeOf(oldest);
  }
}

function sizeOf(step: Step): number {
  return step.after.length + JSON.stringify(step.jobs).length;
}
