// Printing: what is folded away on screen for its length is opened on paper, and
// the drawings that are not in view are put after the sheet. Cards and the safety
// sheet are printed by themselves.

import type { Drawing } from "../engine/contract";
import type { Plan } from "../state/plan";
import { typedText } from "../state/pointer";
import { sheetWith, theSheet } from "./answer";
import { canHaveCards, layCards } from "./cards";
import { answersTo, layerPointer, type Actions, type Desk } from "./desk";
import { otherDrawings } from "./drawing";
import { showWholeList } from "./hanging";
import { every, region } from "./dom";
import { printPage } from "./handing";
import { foldAgain, unfold } from "./pages";
import { clearPaper } from "./paper";
import { printSafetySheet } from "./safety-sheet";
import { openAllSteps } from "./step-open";

export function startPrint(drawings: () => Drawing[]): void {
  let opened: HTMLDetailsElement[] = [];
  window.addEventListener("beforeprint", () => {
    if (document.documentElement.hasAttribute("data-printing")) return;
    for (const layer of sheetWith("")?.layers ?? []) showWholeList(layer.id);
    openAllSteps(true);
    unfold();
    opened = every<HTMLDetailsElement>("details.cw-hang:not([open], [hidden]), details.cw-fold[data-filled]:not([open]), details:is(.cw-know, .cw-bites-more, .cw-printed):not([open])");
    for (const details of opened) details.open = true;
    region("paper-drawings").replaceChildren(...otherDrawings(drawings()));
  });
  window.addEventListener("afterprint", () => {
    for (const details of opened) details.open = false;
    opened = [];
    openAllSteps(false);
    region("paper-drawings").replaceChildren();
    clearPaper();
    foldAgain();
  });
}

export function printActions(desk: Desk): Actions {
  return {
    print: () => {
      clearPaper();
      printPage();
    },
    "print-cards": (b) => printCards(desk.plan(), layerPointer(b)),
    "print-safety": () => {
      const sheet = sheetWith("safety");
      if (sheet) printSafetySheet(desk.plan(), sheet);
    },
  };
}

/** Prints one layer's cards and nothing else. */
function printCards(plan: Plan, base: string): void {
  const layer = answersTo(plan, sheetWith("hanging")?.layers ?? [])[Number(base.slice(base.lastIndexOf("/") + 1))];
  if (!layer || !canHaveCards(layer)) return;
  layCards(layer, typedText(plan["title"]), theSheet()?.drawings ?? []);
  printPage();
}
