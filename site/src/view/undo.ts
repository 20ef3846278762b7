// Undo and redo: back and forward among the changes of the plan. Each time the
// sheet goes to the blank that changes and says what was undone, so that nothing
// changes out of sight.

import { canRedo, canUndo, redoStep, undoStep, type Step } from "../state/history";
import { putEntries } from "../state/jobs";
import { difference, type Difference } from "../state/difference";
import type { Plan } from "../state/plan";
import { at, typedText } from "../state/pointer";
import { hear } from "./announce";
import { blankAt, nameOf } from "./blanks";
import type { Actions } from "./desk";
import { every, region, setAttribute, setText } from "./dom";
import { onSheet, seek } from "./pages";
import { blankAnywhere, insertItem, lowerFirst, removeItem } from "./lists";
import { quoted } from "./names";
import { say } from "./say";
import { openAround } from "./step-open";

const UNDONE = say("Undone");
const SHOWN = 4000; // ms for which what was undone can be read

let put: (plan: Plan) => void;
let listed: (words: string) => void;
let refused: () => boolean;

/** Lets the keys work. restore puts a plan of the past on the sheet; list shows
 *  the jobs anew with what was done to them; refuses says that nothing may change
 *  now, and says so to the person as well. */
export function startUndo(restore: (plan: Plan) => void, list: (words: string) => void, refuses: () => boolean): void {
  put = restore;
  listed = list;
  refused = refuses;
  document.addEventListener("keydown", (e) => {
    const key = /^[a-z]$/i.test(e.key) ? e.key.toLowerCase() : e.code.slice(-1).toLowerCase();
    const redoes = key === "y" || (e.shiftKey && key === "z");
    if (!(e.ctrlKey || e.metaKey) || e.altKey || !(redoes || key === "z") || isElsewhere(e.target)) return;
    e.preventDefault();
    if (redoes) redo();
    else undo();
  });
  // The browser's own menu, and a shaken phone. From a field that is no blank
  // the browser would go on to the blanks typed in before, unseen.
  document.addEventListener("beforeinput", (e) => {
    if ((e.inputType !== "historyUndo" && e.inputType !== "historyRedo") || isElsewhere(e.target)) return;
    e.preventDefault();
    if (e.target !== document.activeElement) return;
    if (e.inputType === "historyUndo") undo();
    else redo();
  });
}

export const undoActions: Actions = { undo: () => undo(), redo: () => redo() };

/** Shows which way there is something to go. */
export function renderUndo(): void {
  for (const [name, can] of [["undo", canUndo()], ["redo", canRedo()]] as const) {
    for (const button of every(`.cw-head [data-do=${name}]`)) setAttribute(button, "aria-disabled", can ? null : "true");
  }
}

/** A text field that is no blank keeps its own undoing, and over a dialog the
 *  sheet stays as it is. */
function isElsewhere(target: EventTarget | null): boolean {
  if (document.querySelector("dialog[open]:not(.cw-jobs)")) return true;
  return (target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement) && !target.hasAttribute("data-at");
}

function undo(): void {
  if (refused()) return;
  const step = undoStep();
  if (step) walk(step, step.after, step.before, UNDONE);
  else tell(say("There is nothing to undo."));
}

function redo(): void {
  if (refused()) return;
  const step = redoStep();
  if (step) walk(step, step.before, step.after, say("Done again"));
  else tell(say("There is nothing to do again."));
}

function walk(step: Step, from: string, to: string, done: string): void {
  for (const job of step.jobs) putEntries(job.id, done === UNDONE ? job.before : job.after);
  if (from === to) {
    renderUndo();
    listed(`${done}: ${step.words}.`);
    tell(`${done}: ${step.words}.`);
    return;
  }
  const [before, after] = [JSON.parse(step.before) as Plan, JSON.parse(step.after) as Plan];
  const whole = typedText(before["id"]) !== typedText(after["id"]);
  const made = difference(before, after);
  const back = difference(JSON.parse(from) as Plan, JSON.parse(to) as Plan);
  // Its blank may be in sight on one side of the change only.
  const words = whole ? "" : wordsFor(made, step.at);
  moveItems(back);
  put(JSON.parse(to) as Plan);
  if (whole) window.scrollTo({ top: 0 });
  else goToPlace(step.at || back.first);
  tell(`${done}: ${step.words || words || wordsFor(made, step.at) || say("the plan")}.`);
}

/** The elements of a list follow its entries, so that neighbours keep their folds. */
function moveItems(back: Difference): void {
  if (back.what === "put in") insertItem(back.at);
  if (back.what === "taken out") removeItem(back.at);
}

let hiding: ReturnType<typeof setTimeout> | undefined;

function tell(words: string): void {
  hear(words);
  const shown = region("undone");
  setText(shown, words);
  clearTimeout(hiding);
  hiding = setTimeout(() => setText(shown, ""), SHOWN);
}

// What was done, in words

const nouns: Record<string, string> = {
  layers: say("a layer"),
  steps: say("a step"),
  readings: say("a reading"),
  points: say("a corner"),
  walls: say("a wall"),
  obstructions: say("a thing in the ceiling"),
  furniture: say("a thing on the floor"),
  surfaces: say("a moulding or wall"),
  kit: say("a measure"),
  openings: say("an opening"),
  cans: say("a can"),
  mix: say("a part of the mix"),
  stages: say("a stage"),
  pieces: say("a piece"),
  marks: say("a mark"),
  off: say("a day off"),
  columnSizes: say("a column"),
  rowSizes: say("a row"),
  up: say("a panel up"),
  panels: say("a note on a panel"),
  gaps: say("a gap"),
};

function wordsFor(made: Difference, pointer: string): string {
  const blank = blankAt(pointer || made.at) ?? blankAnywhere(pointer || made.at);
  if (blank) return lowerFirst(nameOf(blank));
  if (made.what === "moved") return made.at === "/finish/steps" ? say("the order of the steps") : say("an order");
  if (made.what === "changed") {
    const part = (blankIn(made.first) ?? blankAnywhere(made.first, true))?.closest("section")?.querySelector("h2")?.firstChild?.textContent?.trim() ?? "";
    return part === "" ? "" : say("a change under “{part}”", { part });
  }
  const list = made.at.slice(0, made.at.lastIndexOf("/"));
  const name = typedText(at(made.entry, "/name"));
  const thing = name !== "" ? quoted(name) : (nouns[list.slice(list.lastIndexOf("/") + 1)] ?? say("an entry"));
  return made.what === "put in" ? say("{thing} put in", { thing }) : say("{thing} taken out", { thing });
}

/** A blank in sight at a pointer, or the nearest around it. */
function blankIn(pointer: string): HTMLElement | null {
  const own = blankAt(pointer);
  if (own) return own;
  for (let p = pointer; p !== ""; p = p.slice(0, p.lastIndexOf("/"))) {
    const inside = onSheet(`[data-at^="${CSS.escape(p)}/"]`).find((b) => b.closest("[hidden]") === null);
    if (inside) return inside;
  }
  return null;
}

/** Opens what hides a place of the plan, rolls to it and focuses its blank. */
export function goToPlace(pointer: string): void {
  openAround(pointer);
  const blank =
    blankAt(pointer) ??
    seek(() => {
      openAround(pointer);
      return blankIn(pointer);
    });
  for (let fold = blank?.closest("details"); fold; fold = fold.parentElement?.closest("details")) fold.open = true;
  blank?.scrollIntoView({ block: "center" });
  blank?.focus({ preventScroll: true });
}
