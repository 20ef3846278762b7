// What can be done on the page, and listening for it: each button names what it
// does by data-do.

import { typedText } from "../state/pointer";
import { figures, layerNames, sheetWith, theEngine, theSheet } from "./answer";
import { arrivingActions, startArriving } from "./arriving";
import { renderProblems } from "./blanks";
import { contentsActions } from "./contents";
import { daysActions } from "./days";
import type { Actions } from "./desk";
import { draw, renderDrawing, turnOver } from "./drawing";
import { renderFigures, toggleWorking } from "./figures";
import { finishActions } from "./finish";
import { startFollowing } from "./follow";
import { gapActions } from "./gaps";
import { glossaryActions } from "./glossary";
import { hangingActions } from "./hanging";
import { bringBack, changed, desk } from "./job";
import { closeJobs, jobsActions, redraw } from "./jobs";
import { adoptNow, keepingActions, startKeeping } from "./keeping";
import { openLadder, startLadder } from "./ladder";
import { relight, startLight } from "./light";
import { lookingActions, ownBehind, refusesChange } from "./looking";
import { deliveryActions } from "./mask";
import { unsay } from "./messages";
import { notationActions } from "./notation";
import { openingActions } from "./opening";
import { pagesActions } from "./pages";
import { priceActions } from "./price";
import { printActions, startPrint } from "./print";
import { recordActions } from "./record";
import { rowActions } from "./rows";
import { showNote } from "./safety";
import { choiceActions } from "./setting-out";
import { sharingActions } from "./sharing";
import { startStepOpen, stepOpenActions } from "./step-open";
import { startStepOrder, stepOrderActions } from "./step-order";
import { startTyping, typingActions } from "./typing";
import { goToPlace, startUndo, undoActions } from "./undo";
import { versionActions } from "./version";
import { startZoom } from "./zoom";

const doing: Actions = {
  ...deliveryActions(desk, () => theSheet()?.layers ?? []),
  ...choiceActions(desk),
  ...hangingActions(desk, () => theSheet()?.layers ?? []),
  ...gapActions(desk),
  ...finishActions(desk, theSheet, theEngine),
  ...stepOrderActions(desk),
  ...daysActions(desk, theSheet, theEngine),
  ...priceActions(desk, theSheet),
  ...recordActions(desk, theSheet),
  ...rowActions(desk),
  ...typingActions(desk),
  ...keepingActions(desk),
  ...arrivingActions(desk),
  ...sharingActions(desk),
  ...undoActions,
  ...lookingActions(desk),
  ...glossaryActions(),
  ...jobsActions(desk),
  ...openingActions,
  ...printActions(desk),
  ...notationActions(desk),
  ...pagesActions(),
  ...stepOpenActions(desk),
  ...contentsActions(desk, theSheet),
  ...versionActions,
  "see-note": (b) => showNote(b.dataset["to"] ?? ""),
  "turn-over": () => {
    turnOver();
    redrawDrawing();
  },
  working: (b) => {
    toggleWorking(b.dataset["to"] ?? "");
    renderFigures(figures());
  },
  ladder: openLadder,
  "go-to": (b) => goToPlace(b.dataset["to"] ?? ""),
  "keep-guest": () => {
    adoptNow();
    unsay("guest");
  },
  "put-away": (b) => unsay(b.dataset["to"] ?? ""),
};

/** Shows the drawing alone anew. */
function redrawDrawing(): void {
  const sheet = theSheet();
  if (!sheet || !renderDrawing(sheet.drawings ?? [], layerNames(desk.plan()))) return;
  relight();
}

/** Starts all that answers to a press, a key or a choice. */
export function listen(): void {
  const root = document.querySelector(".cw-page") as HTMLElement;
  startTyping(root, desk);
  startUndo((next) => {
    if (typedText(next["id"]) !== typedText(desk.plan()["id"])) unsay("aside");
    closeJobs();
    bringBack(next);
  }, (words) => redraw(desk, words), () => ownBehind(desk.plan()) !== null && refusesChange(desk.plan()));
  startArriving(root, desk);
  startKeeping(desk);
  root.addEventListener("click", (e) => {
    const button = e.target instanceof Element ? e.target.closest<HTMLElement>("[data-do]") : null;
    if (!button) return;
    desk.settle();
    doing[button.dataset["do"] ?? ""]?.(button);
    const menu = button.closest<HTMLDetailsElement>(".cw-keep");
    if (menu) menu.open = false;
  });
  root.addEventListener("keydown", (e) => {
    if (e.key === "Escape" && document.documentElement.hasAttribute("data-drawing") && e.target instanceof Element && e.target.closest(".cw-side, .cw-bar")) doing["show-drawing"]?.(e.target as HTMLElement);
    const menu = e.key === "Escape" && e.target instanceof Element ? e.target.closest<HTMLDetailsElement>(".cw-keep") : null;
    if (!menu) return;
    menu.open = false;
    menu.querySelector("summary")?.focus();
  });
  root.addEventListener("change", (e) => {
    if (!(e.target instanceof HTMLElement)) return;
    if (e.target.matches("[data-drawing-layer]")) {
      draw((e.target as HTMLSelectElement).value);
      redrawDrawing();
    }
    if (e.target.matches("[data-begin-with]")) {
      const wish = e.target as HTMLSelectElement;
      wish.dataset["to"] = wish.value;
      if (wish.value !== "") doing["begin"]?.(wish);
      wish.value = "";
    }
    if (e.target.matches("[data-paper]")) root.dataset["paper"] = (e.target as HTMLSelectElement).value;
  });
  startLight(root);
  startStepOpen(desk.redraw);
  startFollowing(root, redrawDrawing);
  startZoom();
  startStepOrder(root, desk);
  startLadder({ plan: desk.plan, sheet: sheetWith, changed, keep: adoptNow });
  startPrint(() => theSheet()?.drawings ?? []);
  // A fold's event does not bubble. What is wrong inside stands beside the fold
  // while it is shut, and beside its blank once it is open.
  root.addEventListener("toggle", () => theSheet() && renderProblems(theSheet()?.problems ?? []), true);
}
