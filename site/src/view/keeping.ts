// Keeping the job on this device a little after each change, and saying where
// that cannot be done.

import { keep, onWrittenElsewhere, storedText, claim } from "../state/keep";
import { freshId, readPlan } from "../state/plan";
import { put, typedText } from "../state/pointer";
import type { Actions, OwnDesk } from "./desk";
import { action, region, setText } from "./dom";
import { isFramed } from "./framed";
import { ownBehind } from "./looking";
import { message, unsay } from "./messages";
import { offerOwnTab } from "./sharing";

const KEEP_PAUSE = 400; // ms between the last key and the writing

let desk: OwnDesk;
let keeping: ReturnType<typeof setTimeout> | undefined;

export function startKeeping(on: OwnDesk): void {
  desk = on;
  onWrittenElsewhere(() => typedText(desk.plan()["id"]), elsewhere);
  window.addEventListener("pagehide", keepIfWaiting);
  document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && keepIfWaiting());
}

export function keepSoon(): void {
  clearTimeout(keeping);
  keeping = setTimeout(keepNow, KEEP_PAUSE);
}

function keepIfWaiting(): void {
  if (keeping !== undefined) keepNow();
}

export function keepNow(): void {
  clearTimeout(keeping);
  if (isFramed()) void offerOwnTab(desk.plan());
  if (ownBehind(desk.plan())) return; // the job itself is kept, its client's copy is made anew
  const state = region("state");
  switch (keep(desk.plan())) {
    case "kept":
      unsay("keeping");
      setText(state, "kept on this device");
      break;
    case "off":
      setText(state, "not kept: use Save as a file");
      message("keeping", "This browser keeps nothing for this page, so what you type is gone when the page is closed.", action("save-file", "Save as a file"));
      break;
    case "full":
      setText(state, "not kept: use Save as a file");
      message("keeping", "There is no room left to keep this job on this device. What was kept before is untouched.", action("save-file", "Save as a file"));
      break;
    case "elsewhere":
      elsewhere();
  }
}

function elsewhere(): void {
  setText(region("state"), "not kept: open in another tab");
  message(
    "keeping",
    "This job has been changed in another tab. Nothing is written over it.",
    action("take-theirs", "Show the other tab’s"),
    action("keep-copy", "Keep mine beside it"),
  );
}

export function keepingActions(on: OwnDesk): Actions {
  return {
    "take-theirs": () => {
      const read = readPlan(storedText(typedText(on.plan()["id"])) ?? "");
      if (!("plan" in read)) return;
      claim(read.plan);
      unsay("keeping");
      on.take(read.plan, "the other tab’s state");
    },
    "keep-copy": () => {
      unsay("keeping");
      on.change((plan) => put(plan, "/id", freshId()), "kept as a copy");
    },
  };
}
