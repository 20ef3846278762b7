// The job on the sheet: one plan, one answer, and the way between them. What is
// typed goes into the plan; the plan goes to the engine; its answer is shown.

import type { Engine } from "../engine/calls";
import { writePlanIntoPage } from "../state/along";
import { amend, noteChange, noteKey, startHistory, type Change } from "../state/history";
import { adopt, claim, isFresh, isKeptAs, markFresh, moveAside, storedText } from "../state/keep";
import { emptyPlan, examplePlan, freshId, isExample, readPlan, type Plan } from "../state/plan";
import { put, typedText } from "../state/pointer";
import { figures, lastWorkedOut, readings, startAnswering, theEngine, theSheet, workOut } from "./answer";
import { arrivingActions, called, choosePlan, isGuest, leaveAddress, startArriving } from "./arriving";
import { blankAt, renderProblems } from "./blanks";
import { canHaveCards, layCards } from "./cards";
import { daysActions } from "./days";
import { deliveryActions } from "./delivery";
import { answersTo, layerPointer, type Actions, type OwnDesk } from "./desk";
import { action, clean, region, setText } from "./dom";
import { draw, renderDrawing, turnOver } from "./drawing";
import { renderEcho } from "./echo";
import { openAllWorkings, renderFigures, toggleWorking } from "./figures";
import { finishActions } from "./finish";
import { isFramed } from "./framed";
import { gapActions } from "./gaps";
import { glossaryActions, renderGlossary } from "./glossary";
import { printPage } from "./handing";
import { hangingActions, renderHanging } from "./hanging";
import { adoptNow, keepIfWaiting, keepingActions, keepSoon, startKeeping, stateOf } from "./keeping";
import { closeJobs, jobsActions, redraw } from "./jobs";
import { openLadder, reopenLadder, startLadder } from "./ladder";
import { startLight } from "./light";
import { renderLists, renderWhen } from "./lists";
import { isForClient, lookingActions, ownBehind, refusesChange } from "./looking";
import { message, unsay } from "./messages";
import { takeOver } from "./other-room";
import { clearPaper } from "./paper";
import { priceActions } from "./price";
import { startPrint } from "./print";
import { notation, renderSheet, stations } from "./render";
import { rowActions } from "./rows";
import { showNote } from "./safety";
import { printSafetySheet } from "./safety-sheet";
import { choiceActions } from "./setting-out";
import { frame, offerOwnTab, sharingActions } from "./sharing";
import { startStepOrder, stepOrderActions } from "./step-order";
import { startTyping, typingActions, writeUnits } from "./typing";
import { goToPlace, renderUndo, startUndo, undoActions } from "./undo";

const SLOW = 60; // ms; a sheet that twice took longer is worked out when the keys rest
const REST = 120;
const SOON = 300; // ms in which an engine that is nearly there spares the sheet being shown without answers

let plan: Plan = emptyPlan();
let lastTook = 0;
let tookBefore = 0;

/** Opens the job, with the engine where one is on its way already. */
export async function openJob(begun: Promise<Engine> | null): Promise<void> {
  clean();
  renderDrawing([], []);
  if (new URLSearchParams(location.search).get("working") === "open") openAllWorkings();
  listen();
  renderGlossary();
  const chosen = choosePlan().then((first) => {
    plan = first;
  });
  const starting = start(begun, chosen);
  await chosen;
  await Promise.race([starting, new Promise((r) => setTimeout(r, SOON))]);
  startHistory(JSON.stringify(plan));
  show();
  if (isFramed()) frame(plan);
  if (!theEngine()) {
    await starting;
    show();
  }
  reopenLadder();
}

/** The job on the sheet makes room for a fresh plan: it is kept, and named with
 *  the way back to it. An example that was changed becomes a job of its own. */
function putAside(pristine: Plan): void {
  keepIfWaiting();
  const job = ownBehind(plan) ?? plan;
  const worked = !isFresh(job);
  const moved = isKeptAs(pristine) ? "" : moveAside(typedText(pristine["id"]));
  if (!worked) return;
  const id = moved !== "" && isExample(job) ? moved : typedText(job["id"]);
  if (storedText(id) === null) message("aside", `${called(job)} could not be kept here. Undo brings it back.`);
  else message("aside", `${called(job)} is kept on this device.`, action("open-job", "Back to it", { "data-to": id }));
}

function start(begun: Promise<Engine> | null, chosen: Promise<void>): Promise<void> {
  return startAnswering(begun, chosen, () => stateOf(plan));
}

// From plan to page

let due: ReturnType<typeof setTimeout> | undefined;

/** The plan has changed: keep it, work it out, show it. */
function changed(change: Change = {}): void {
  noteChange(JSON.stringify(plan), change);
  keepSoon();
  show();
}

function changedByKey(pointer: string): void {
  noteKey(JSON.stringify(plan), pointer, performance.now());
  keepSoon();
  renderUndo();
  clearTimeout(due);
  if (Math.min(lastTook, tookBefore) < SLOW) show();
  else due = setTimeout(show, REST);
}

function settle(): void {
  if (due !== undefined) show();
}

function show(): void {
  clearTimeout(due);
  due = undefined;
  const began = performance.now();
  workOut(JSON.stringify(plan), show);
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
  plan = next;
  unsayDone();
  if (isGuest(plan)) return;
  leaveAddress();
  unsay("guest");
}

/** What was said of the plan before is not for the one that follows it. */
function unsayDone(): void {
  unsay("done");
  unsay("client");
}

const desk: OwnDesk = {
  plan: () => plan,
  change: (edit, words = "", at = "") => {
    if (refusesChange(plan)) return;
    work(edit);
    changed({ words, at });
  },
  redraw: () => renderSheet(plan),
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

// What can be done

function showIn(next: string): void {
  if (next === notation(plan)) return;
  const edit = () => {
    writeUnits(plan);
    put(plan, "/units/show", next);
    put(plan, "/units/bare", next === "metric" ? "mm" : "in");
  };
  // A client may read the sheet in either; nothing of the job changes by it.
  if (isForClient(plan)) {
    edit();
    desk.look(plan);
  } else desk.change(edit, `answers in ${next === "metric" ? "metric" : "feet and inches"}`);
}

/** Puts a job kept on this device on the sheet. */
function openJobKept(id: string): void {
  const read = readPlan(storedText(id) ?? "");
  if (!("plan" in read)) {
    message("opened", "That job is no longer kept on this device.");
    return;
  }
  keepIfWaiting();
  claim(read.plan);
  for (const name of ["aside", "guest", "opened"]) unsay(name);
  closeJobs();
  desk.take(read.plan, `opening ${called(read.plan)}`);
}

/** Prints one layer's cards and nothing else. */
function printCards(button: HTMLElement): void {
  const base = layerPointer(button);
  const layer = answersTo(plan, theSheet()?.layers ?? [])[Number(base.slice(base.lastIndexOf("/") + 1))];
  if (!layer || !canHaveCards(layer)) return;
  layCards(layer, typedText(plan["title"]), theSheet()?.drawings ?? []);
  printPage();
}

const doing: Actions = {
  ...deliveryActions(desk, () => theSheet()?.layers ?? []),
  ...choiceActions(desk),
  ...hangingActions(desk, () => theSheet()?.layers ?? []),
  ...gapActions(desk),
  ...finishActions(desk, theSheet, theEngine),
  ...stepOrderActions(desk),
  ...daysActions(desk, theSheet, theEngine),
  ...priceActions(desk, theSheet),
  ...rowActions(desk),
  ...typingActions(desk),
  ...keepingActions(desk),
  ...arrivingActions(desk),
  ...sharingActions(desk),
  ...undoActions,
  ...lookingActions(desk),
  ...glossaryActions(),
  ...jobsActions(desk),
  "print-cards": printCards,
  "print-safety": () => {
    const sheet = theSheet();
    if (sheet) printSafetySheet(plan, sheet);
  },
  "see-note": (b) => showNote(b.dataset["to"] ?? ""),
  notation: (b) => showIn(b.dataset["to"] ?? ""),
  empty: () => {
    const empty = markFresh(emptyPlan(plan));
    putAside(empty);
    desk.take(empty, "empty sheet");
    blankAt("/title")?.focus();
  },
  example: () => {
    const pristine = markFresh(examplePlan());
    putAside(pristine);
    desk.take(pristine, "worked example");
  },
  "make-mine": () => {
    const id = freshId();
    takeOver(id);
    desk.change(() => put(plan, "/id", id), "these figures as your own job");
    blankAt("/title")?.focus();
  },
  print: () => {
    clearPaper();
    printPage();
  },
  "turn-over": () => {
    turnOver();
    desk.redraw();
  },
  working: (b) => {
    toggleWorking(b.dataset["to"] ?? "");
    renderFigures(figures());
  },
  ladder: openLadder,
  "go-to": (b) => goToPlace(b.dataset["to"] ?? ""),
  "open-job": (b) => openJobKept(b.dataset["to"] ?? ""),
  "keep-guest": () => {
    adoptNow();
    unsay("guest");
  },
  "last-good": () => {
    const read = readPlan(lastWorkedOut());
    keepIfWaiting();
    if ("plan" in read) desk.take(read.plan, "back to the plan before");
  },
  "put-away": (b) => unsay(b.dataset["to"] ?? ""),
  "start-again": () => void start(null, Promise.resolve()).then(show),
};

function listen(): void {
  const root = document.querySelector(".cw-page") as HTMLElement;
  startTyping(root, desk);
  startUndo((next) => {
    if (typedText(next["id"]) !== typedText(plan["id"])) unsay("aside");
    closeJobs();
    putOn(next);
    keepSoon();
    show();
  }, (words) => redraw(desk, words), () => ownBehind(plan) !== null && refusesChange(plan));
  startArriving(root, desk);
  startKeeping(desk);
  root.addEventListener("click", (e) => {
    const button = e.target instanceof Element ? e.target.closest<HTMLElement>("[data-do]") : null;
    if (!button) return;
    settle();
    doing[button.dataset["do"] ?? ""]?.(button);
    const menu = button.closest<HTMLDetailsElement>(".cw-keep");
    if (menu) menu.open = false;
  });
  root.addEventListener("keydown", (e) => {
    const menu = e.key === "Escape" && e.target instanceof Element ? e.target.closest<HTMLDetailsElement>(".cw-keep") : null;
    if (!menu) return;
    menu.open = false;
    menu.querySelector("summary")?.focus();
  });
  root.addEventListener("change", (e) => {
    if (!(e.target instanceof HTMLElement)) return;
    if (e.target.matches("[data-drawing-layer]")) {
      draw((e.target as HTMLSelectElement).value);
      desk.redraw();
    }
    if (e.target.matches("[data-paper]")) root.dataset["paper"] = (e.target as HTMLSelectElement).value;
  });
  startLight(root);
  startStepOrder(root, desk);
  startLadder({ plan: () => plan, sheet: theSheet, changed, keep: adoptNow });
  startPrint(
    () => {
      const sheet = theSheet();
      if (sheet) renderHanging(plan, sheet.layers ?? [], figures(), stations());
      renderFigures(figures());
    },
    () => theSheet()?.drawings ?? [],
  );
  // A fold's event does not bubble. What is wrong inside stands beside the fold
  // while it is shut, and beside its blank once it is open.
  root.addEventListener("toggle", () => theSheet() && renderProblems(theSheet()?.problems ?? []), true);
}
