// Plans that come in: the one the page starts with, by link, from a file.

import { planInPage } from "../state/along";
import { planFromFile, saveText } from "../state/file";
import { claim, lastKept, storedText } from "../state/keep";
import { hasPlan, planFromFragment } from "../state/link";
import { emptyPlan, examplePlan, freshId, isExample, readPlan, type Plan } from "../state/plan";
import { typedText } from "../state/pointer";
import type { Actions, OwnDesk } from "./desk";
import { action } from "./dom";
import { keepNow } from "./keeping";
import { message, unsay } from "./messages";

let damagedText = "";

/** The plan block as it stood when the page was opened. */
let planAsSaved = "";

/** What stands on the sheet at the start: a plan from the link, the one this
 *  page was saved with, the one worked on last, or the worked example. */
export async function choosePlan(): Promise<Plan> {
  if (hasPlan(location.hash)) {
    const read = await planFromFragment(location.hash);
    if ("plan" in read) return fromLink(read.plan);
    message("opened", read.refused);
    return emptyPlan();
  }
  if (planAsSaved !== "") {
    const read = readPlan(planAsSaved);
    if ("plan" in read) return newestOf(read.plan);
    message("opened", read.refused);
  }
  const kept = lastKept();
  if (kept.damaged !== null) {
    damagedText = kept.damaged;
    message("damaged", "What was kept here of the last job is cut off and cannot be read. This is an empty sheet.", action("save-damaged", "Download what was there"));
    return emptyPlan();
  }
  return kept.plan ?? examplePlan();
}

/** A plan saved inside this page may since have been changed here and kept. */
function newestOf(inside: Plan): Plan {
  const kept = storedText(typedText(inside["id"]));
  if (kept === null || isExample(inside)) return inside;
  const read = readPlan(kept);
  if (!("plan" in read) || JSON.stringify(read.plan) === JSON.stringify(inside)) return inside;
  claim(read.plan);
  message("opened", "This is the job as you last changed it on this device.", action("as-saved", "Show it as it was saved in this file"));
  return read.plan;
}

/** A plan that comes by link leaves the address, so that a reload does not
 *  undo what is typed from now on. */
function fromLink(arrived: Plan): Plan {
  try {
    history.replaceState(null, "", location.pathname + location.search);
  } catch {
    // A page without an origin may not; then the link stays where it is.
  }
  return besideKept(arrived);
}

/** The plan under a new id when another plan is kept under its own. */
function besideKept(arrived: Plan): Plan {
  const kept = storedText(typedText(arrived["id"]));
  if (kept !== null && kept !== JSON.stringify(arrived)) {
    message("opened", "Another state of this job is kept on this device. It stays as it is; this one is kept beside it.");
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
  window.addEventListener("hashchange", () => void linked(desk));
}

export function arrivingActions(desk: OwnDesk): Actions {
  return {
    "open-file": () => document.querySelector<HTMLInputElement>("[data-open]")?.click(),
    "save-damaged": () => saveText("kept-text.txt", "text/plain", damagedText),
    "as-saved": () => {
      const read = readPlan(planAsSaved);
      if ("plan" in read) desk.take({ ...read.plan, id: freshId() }, "as it was saved in this file");
      unsay("opened");
    },
  };
}

async function openFile(desk: OwnDesk, file: File): Promise<void> {
  const read = await planFromFile(file);
  if ("refused" in read) {
    message("opened", `${read.refused} The sheet is as it was.`);
    return;
  }
  unsay("opened");
  keepNow();
  desk.take(besideKept(read.plan), `opening “${file.name}”`);
}

async function linked(desk: OwnDesk): Promise<void> {
  if (!hasPlan(location.hash)) return;
  const read = await planFromFragment(location.hash);
  if ("plan" in read) {
    keepNow();
    desk.take(fromLink(read.plan), "the plan from a link");
  } else message("opened", `${read.refused} The sheet is as it was.`);
}
