// Plans that come in: the one the page starts with, by link, from a file. A plan
// from a link is a guest: another page may have put it into the address, so it
// is not kept until it is changed, and the job it stands in front of is named.

import { planInPage } from "../state/along";
import { planFromFile, planFromText, type Opened } from "../state/file";
import { beginInFile, claim, isFresh, isKeptAs, isKeptHere, lastKept, lastIs, lastKeptInFile, markFresh, moveAside, storedText } from "../state/keep";
import { hasPlan, planFromFragment } from "../state/link";
import { moveIntoFrame } from "../state/place";
import { emptyPlan, examplePlan, freshId, isExample, readPlan, type Plan } from "../state/plan";
import { typedText } from "../state/pointer";
import type { Actions, OwnDesk } from "./desk";
import { action } from "./dom";
import { isFramed } from "./framed";
import { handOver } from "./handing";
import { bringIn, closeJobs } from "./jobs";
import { keepIfWaiting } from "./keeping";
import { isForClient, jobOnSheet } from "./looking";
import { message, unsay } from "./messages";
import { say } from "./say";

/** The plan block as it stood when the page was opened. */
let planAsSaved = "";

/** The guest on the sheet as it came, null without one. */
let guest: string | null = null;

/** The job a guest stands in front of, until the guest is kept. */
let behind: Plan | null = null;

/** The plan in a frame's address, while the visitor's own work stands there. */
let given: Plan | null = null;

/** What stands on the sheet at the start: a plan from the link, the one this
 *  page was saved with, the one worked on last, or the worked example. */
export async function choosePlan(): Promise<Plan> {
  takePlace();
  if (hasPlan(location.hash)) return fromAddress();
  if (planAsSaved !== "") {
    beginInFile();
    const read = readPlan(planAsSaved);
    if ("plan" in read) return newestOf(read.plan);
    message("opened", read.refused);
  }
  const kept = lastKept();
  if (kept.refused !== "") {
    message("damaged", say("The last job kept here cannot be opened, and stays as it is. {refused}", { refused: kept.refused }), action("save-damaged", say("Download what was there"), { "data-to": kept.id }));
    return markFresh(emptyPlan());
  }
  return kept.plan ?? markFresh(examplePlan());
}

/** In a frame the place for keeping goes by the frame. */
function takePlace(): void {
  if (isFramed()) moveIntoFrame(window.name, hasPlan(location.hash) ? location.href : location.href.replace(/#.*/, ""));
}

async function fromAddress(): Promise<Plan> {
  const read = await planFromFragment(location.hash);
  const last = lastKept().plan;
  if ("refused" in read) {
    message("opened", last ? say("{refused} This is the job worked on last.", { refused: read.refused }) : read.refused);
    return last ?? markFresh(emptyPlan());
  }
  return ownFirst(read.plan, last) ?? received(read.plan, last);
}

/** In a frame the visitor's own work comes before the plan the page around gives. */
function ownFirst(arrived: Plan, own: Plan | null): Plan | null {
  if (!isFramed() || !own || JSON.stringify(own) === JSON.stringify(arrived)) return null;
  given = arrived;
  message("opened", say("This is your own work, as you left it here."), action("as-given", say("Show the plan this page gives")));
  return own;
}

/** Receives a plan from the address. last is the job it stands in front of. */
function received(arrived: Plan, last: Plan | null): Plan {
  if (isKeptHere(arrived)) {
    leaveAddress();
    return arrived;
  }
  if (storedText(typedText(arrived["id"])) !== null) arrived["id"] = freshId();
  guest = JSON.stringify(arrived);
  markFresh(arrived);
  if (last) nameGuest(arrived, last);
  return arrived;
}

/** Says that a guest is on the sheet, and the way back to the job behind it. */
function nameGuest(arrived: Plan, last: Plan): void {
  const id = typedText(last["id"]);
  behind = null;
  if (storedText(id) === null) {
    message("guest", say("This plan came by a link, in front of {job}, which could not be kept here.", { job: inside(last) }), action("undo", say("Back to it")));
    return;
  }
  const came = isForClient(arrived) ? say("This client’s copy came by a link.") : say("This plan came by a link. It is kept once you change it.");
  message("guest", say("{came} {job} is kept as it was.", { came, job: called(last) }), backTo(id), action("keep-guest", say("Keep this plan")));
  behind = last;
}

function backTo(id: string): HTMLButtonElement {
  return action("open-job", say("Back to it"), { "data-to": id });
}

/** Once a guest is changed and so kept, its message says that, and still the way
 *  back. */
export function guestIsKept(): void {
  if (!behind || !document.querySelector("[data-message=guest]")) return;
  message("guest", say("This plan is now kept beside {job}.", { job: inside(behind) }), backTo(typedText(behind["id"])));
  behind = null;
}

/** The same in the midst of a sentence. */
function inside(plan: Plan): string {
  return called(plan, say("the job without a name"));
}

/** A job as a sentence names it. */
export function called(plan: Plan, unnamed = say("The job without a name")): string {
  const title = typedText(plan["title"]).trim();
  return title === "" ? unnamed : `“${title}”`;
}

/** A guest stays in the address, so that a reload brings it again; a plan that is
 *  kept leaves it, so that a reload does not undo what was typed. A frame keeps
 *  its address, which tells where its work is kept. */
export function leaveAddress(): void {
  if (isFramed() || !hasPlan(location.hash)) return;
  try {
    history.replaceState(history.state, "", location.pathname + location.search);
  } catch {
    // A page without an origin may not; then the link stays where it is.
  }
}

export function isGuest(plan: Plan): boolean {
  return guest === JSON.stringify(plan) && isFresh(plan);
}

/** A plan saved inside this page may since have been changed here and kept, or
 *  another one made here. */
function newestOf(inside: Plan): Plan {
  const id = typedText(inside["id"]);
  const last = lastKeptInFile();
  if (last && typedText(last["id"]) !== id) {
    message("opened", say("This is the job worked on last in this file."), storedText(id) === null ? action("as-saved", say("Show the one saved in it")) : action("open-job", say("Show the one saved in it"), { "data-to": id }));
    return last;
  }
  // The worked example has one name everywhere: another page's is a job of its own.
  if (isExample(inside) && !last && !isKeptAs(inside)) {
    const wasLast = lastKept().id === id;
    const own = moveAside(id);
    if (wasLast) lastIs(own);
  }
  const kept = storedText(id);
  if (kept === null) return markFresh(inside);
  const read = readPlan(kept);
  if (!("plan" in read) || isKeptHere(inside)) return inside;
  claim(read.plan);
  message("opened", say("This is the job as you last changed it on this device."), action("as-saved", say("Show it as it was saved in this file")));
  return read.plan;
}

/** The plan under a new id when another plan is kept under its own. */
function besideKept(arrived: Plan): Plan {
  if (!isKeptHere(arrived) && storedText(typedText(arrived["id"])) !== null) {
    message("opened", say("Another state of this job is kept on this device. It stays as it is; this one is kept beside it."));
    arrived["id"] = freshId();
  }
  return arrived;
}

/** Looks out for plans that come in while the page is open. */
export function startArriving(root: HTMLElement, desk: OwnDesk): void {
  planAsSaved = planInPage();
  root.addEventListener("change", (e) => {
    if (!(e.target instanceof HTMLInputElement && e.target.matches("[data-open]"))) return;
    const file = e.target.files?.[0];
    if (file) void openFile(desk, file);
    e.target.value = "";
  });
  document.addEventListener("dragover", (e) => {
    if (e.dataTransfer?.types.includes("Files")) e.preventDefault();
  });
  document.addEventListener("drop", (e) => {
    const file = e.dataTransfer?.files[0];
    if (!file) return;
    e.preventDefault();
    void openFile(desk, file);
  });
  document.addEventListener("paste", (e) => openPasted(desk, e));
  window.addEventListener("hashchange", () => void linked(desk));
}

export function arrivingActions(desk: OwnDesk): Actions {
  return {
    "open-file": () => document.querySelector<HTMLInputElement>("[data-open]")?.click(),
    "save-damaged": (b) => handOver("kept-text.txt", "text/plain", storedText(b.dataset["to"] ?? "") ?? ""),
    "as-saved": () => {
      const read = readPlan(planAsSaved);
      const id = "plan" in read ? typedText(read.plan["id"]) : "";
      if ("plan" in read) desk.take(storedText(id) === null ? markFresh(read.plan) : { ...read.plan, id: freshId() }, say("as it was saved in this file"));
      unsay("opened");
    },
    "as-given": () => {
      if (!given) return;
      unsay("opened");
      keepIfWaiting();
      desk.take(received(given, desk.plan()), say("the plan this page gives"));
    },
  };
}

async function openFile(desk: OwnDesk, file: File): Promise<void> {
  open(desk, await planFromFile(file), file.name);
}

/** A plan as text, pasted where it goes into no field. */
function openPasted(desk: OwnDesk, e: ClipboardEvent): void {
  if (e.target instanceof HTMLInputElement || e.target instanceof HTMLTextAreaElement) return;
  const text = e.clipboardData?.getData("text/plain") ?? "";
  if (!/^\s*\{[\s\S]{0,200}"ceilingwright/.test(text)) return;
  e.preventDefault();
  open(desk, planFromText(text, say("what was pasted")), say("pasted text"));
}

function open(desk: OwnDesk, read: Opened, name: string): void {
  if ("jobs" in read) {
    unsay("opened");
    keepIfWaiting();
    bringIn(desk, read.jobs);
    return;
  }
  closeJobs();
  if ("refused" in read) {
    message("opened", say("{refused} The sheet is as it was.", { refused: read.refused }));
    return;
  }
  unsay("opened");
  keepIfWaiting();
  desk.take(besideKept(read.plan), `opening “${name}”`);
}

/** Another plan has come into the address of the open page. */
async function linked(desk: OwnDesk): Promise<void> {
  if (!hasPlan(location.hash)) return;
  const read = await planFromFragment(location.hash);
  keepIfWaiting();
  if ("refused" in read) {
    message("opened", say("{refused} The sheet is as it was.", { refused: read.refused }));
    return;
  }
  takePlace();
  const here = jobOnSheet(desk);
  // Guests that follow each other are one step: the history is for one's own work.
  const over = isGuest(here);
  const last = isFramed() || isFresh(here) ? lastKept().plan : here;
  desk.take(ownFirst(read.plan, last) ?? received(read.plan, last), say("the plan from a link"), { inPlace: over });
}
