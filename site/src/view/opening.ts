// What comes onto the sheet: the job the page opens with, another that is kept, an
// empty one, the worked example. What was on the sheet makes room for it.

import type { Engine } from "../engine/calls";
import { startHistory } from "../state/history";
import { claim, isFresh, isKeptAs, markFresh, moveAside, storedText } from "../state/keep";
import { emptyPlan, examplePlan, freshId, isExample, readPlan, type Plan } from "../state/plan";
import { put, typedText } from "../state/pointer";
import { lastWorkedOut, startAnswering, theEngine } from "./answer";
import { called, choosePlan } from "./arriving";
import { blankAt } from "./blanks";
import type { Actions } from "./desk";
import { action, clean } from "./dom";
import { renderDrawing } from "./drawing";
import { openAllWorkings } from "./figures";
import { isFramed } from "./framed";
import { renderGlossary } from "./glossary";
import { begin, desk, show } from "./job";
import { closeJobs } from "./jobs";
import { keepIfWaiting, stateOf } from "./keeping";
import { reopenLadder } from "./ladder";
import { jobOnSheet } from "./looking";
import { isMade, unmake } from "./made";
import { message, unsay } from "./messages";
import { followAgain, startPages } from "./pages";
import { takeOver } from "./other-room";
import { frame } from "./sharing";
import { say } from "./say";

const SOON = 300; // ms in which an engine that is nearly there spares the sheet being shown without answers

/** Opens the job, with the engine where one is on its way already. listen starts
 *  what answers to presses and keys. */
export async function openJob(begun: Promise<Engine> | null, listen: () => void): Promise<void> {
  clean();
  if (!isMade()) renderDrawing([], new Map());
  if (new URLSearchParams(location.search).get("working") === "open") openAllWorkings();
  listen();
  renderGlossary();
  const chosen = choosePlan().then(begin);
  const starting = start(begun, chosen);
  await chosen;
  if (!(isExample(desk.plan()) && isFresh(desk.plan()))) {
    unmake(false);
    renderDrawing([], new Map());
  }
  await Promise.race([starting, new Promise((r) => setTimeout(r, SOON))]);
  startHistory(JSON.stringify(desk.plan()));
  startPages(document.querySelector(".cw-page") as HTMLElement, show);
  if (isFramed()) frame(desk.plan());
  if (!theEngine()) {
    await starting;
    show();
    followAgain();
  }
  reopenLadder();
}

function start(begun: Promise<Engine> | null, chosen: Promise<void>): Promise<void> {
  return startAnswering(begun, chosen, () => stateOf(desk.plan()));
}

/** The job on the sheet makes room for a fresh plan: it is kept, and named with
 *  the way back to it. An example that was changed becomes a job of its own. */
function putAside(pristine: Plan): void {
  keepIfWaiting();
  const job = jobOnSheet(desk);
  const worked = !isFresh(job);
  const moved = isKeptAs(pristine) ? "" : moveAside(typedText(pristine["id"]));
  if (!worked) return;
  const id = moved !== "" && isExample(job) ? moved : typedText(job["id"]);
  if (storedText(id) === null) message("aside", say("{job} could not be kept here. Undo brings it back.", { job: called(job) }));
  else message("aside", say("{job} is kept on this device.", { job: called(job) }), action("open-job", say("Back to it"), { "data-to": id }));
}

/** Puts a job kept on this device on the sheet. */
function openJobKept(id: string): void {
  const read = readPlan(storedText(id) ?? "");
  if (!("plan" in read)) {
    message("opened", say("That job is no longer kept on this device."));
    return;
  }
  keepIfWaiting();
  claim(read.plan);
  for (const name of ["aside", "guest", "opened"]) unsay(name);
  closeJobs();
  desk.take(read.plan, say("opening {job}", { job: called(read.plan) }));
}

export const openingActions: Actions = {
  empty: () => {
    const empty = markFresh(emptyPlan(desk.plan()));
    putAside(empty);
    desk.take(empty, say("empty sheet"));
    blankAt("/title")?.focus();
  },
  example: () => {
    const pristine = markFresh(examplePlan());
    putAside(pristine);
    desk.take(pristine, say("worked example"));
  },
  "make-mine": () => {
    const id = freshId();
    takeOver(id);
    desk.change((plan) => put(plan, "/id", id), say("these figures as your own job"));
    blankAt("/title")?.focus();
  },
  "open-job": (b) => openJobKept(b.dataset["to"] ?? ""),
  "last-good": () => {
    const read = readPlan(lastWorkedOut());
    keepIfWaiting();
    if ("plan" in read) desk.take(read.plan, say("back to the plan before"));
  },
  "start-again": () => void start(null, Promise.resolve()).then(show),
};
