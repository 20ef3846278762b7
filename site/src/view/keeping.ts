// Keeping the job on this device a little after each change, and saying where
// that cannot be done.

import { adopt, claim, isFresh, isKeptHere, keep, onWrittenElsewhere, storedText } from "../state/keep";
import { hasPlan } from "../state/link";
import { freshId, readPlan, type Plan } from "../state/plan";
import { put, typedText } from "../state/pointer";
import { theSheet } from "./answer";
import { guestIsKept, isGuest, leaveAddress } from "./arriving";
import type { Actions, OwnDesk } from "./desk";
import { action, region, setText } from "./dom";
import { isFramed } from "./framed";
import { jobOnSheet, ownBehind, showJob } from "./looking";
import { message, unsay } from "./messages";
import { offerOwnTab } from "./sharing";
import { say } from "./say";

const KEEP_PAUSE = 400; // ms between the last key and the writing

let desk: OwnDesk;
let keeping: ReturnType<typeof setTimeout> | undefined;

export function startKeeping(on: OwnDesk): void {
  desk = on;
  onWrittenElsewhere(() => jobOnSheet(desk), elsewhere);
  window.addEventListener("pagehide", keepIfWaiting);
  document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && keepIfWaiting());
}

export function keepSoon(): void {
  clearTimeout(keeping);
  // A guest that is changed leaves the address at once: a reload must not bring it
  // again as it came.
  keeping = setTimeout(keepNow, hasPlan(location.hash) && !isFramed() ? 0 : KEEP_PAUSE);
}

/** What was typed and is not yet written is written now. */
export function keepIfWaiting(): void {
  if (keeping !== undefined) keepNow();
}

/** Keeps the plan though nothing in it has changed, as one that is worked with. */
export function adoptNow(): void {
  adopt(desk.plan());
  keepNow();
}

/** Whether nothing is lost if the page starts again now; says where something is. */
export function keptForGood(): boolean {
  keepNow();
  const job = jobOnSheet(desk);
  return isFresh(job) || isKeptHere(job);
}

/** The state of a plan that is in order, in words. */
export function stateOf(plan: Plan): string {
  if (!isFresh(plan)) return say("kept on this device");
  return isGuest(plan) ? say("from a link, not kept") : say("nothing kept yet");
}

function keepNow(): void {
  clearTimeout(keeping);
  keeping = undefined;
  const plan = desk.plan();
  if (isFramed()) void offerOwnTab(plan);
  if (ownBehind(plan)) return; // the job itself is kept, its client's copy is made anew
  const state = region("state");
  if (isFresh(plan)) {
    setText(state, stateOf(plan));
    return;
  }
  switch (keep(plan, headline())) {
    case "kept":
      unsay("keeping");
      setText(state, stateOf(plan));
      leaveAddress();
      guestIsKept();
      break;
    case "off":
      setText(state, say("not kept: use Save as a file"));
      message("keeping", say("This browser keeps nothing for this page, so what you type is gone when the page is closed."), action("save-file", say("Save as a file")));
      break;
    case "full":
      setText(state, say("not kept: use Save as a file"));
      message("keeping", say("There is no room left to keep this job on this device. What was kept before is untouched."), action("save-file", say("Save as a file")));
      break;
    case "elsewhere":
      elsewhere();
  }
}

function elsewhere(): void {
  setText(region("state"), say("not kept: open in another tab"));
  message(
    "keeping",
    say("This job has been changed in another tab. Nothing is written over it."),
    action("take-theirs", say("Show the other tab’s")),
    action("keep-copy", say("Keep mine beside it")),
  );
}

export function keepingActions(on: OwnDesk): Actions {
  return {
    "take-theirs": () => {
      const read = readPlan(storedText(typedText(jobOnSheet(on)["id"])) ?? "");
      if (!("plan" in read)) return;
      claim(read.plan);
      unsay("keeping");
      on.take(read.plan, say("the other tab’s state"));
    },
    "keep-copy": () => {
      unsay("keeping");
      showJob(on);
      on.change((plan) => put(plan, "/id", freshId()), say("kept as a copy"));
    },
  };
}

/** What tells a job in a list of jobs: its borders and its price, where known. */
function headline(): string {
  const text = (id: string) => theSheet()?.overview?.answers.find((a) => a.id === id)?.text ?? "";
  const borders = text("borders");
  const price = text("price");
  return [borders !== "" ? say("border {borders}", { borders }) : "", price === "" ? "" : say("price {price}", { price })].filter((w) => w !== "").join(", ");
}
