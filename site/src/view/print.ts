// Printing: what is folded away on screen for its length is opened on paper, and
// the drawings that are not in view are put after the sheet.

import type { Drawing } from "../engine/contract";
import { otherDrawings } from "./drawing";
import { showWholeList } from "./hanging";
import { every, region } from "./dom";
import { clearPaper } from "./paper";

export function startPrint(redrawHanging: () => void, drawings: () => Drawing[]): void {
  let opened: HTMLDetailsElement[] = [];
  window.addEventListener("beforeprint", () => {
    if (document.documentElement.hasAttribute("data-printing")) return;
    for (const list of every(".cw-hang")) showWholeList(list.dataset["layer"] ?? "");
    redrawHanging();
    opened = every<HTMLDetailsElement>("details.cw-hang:not([open], [hidden]), details.cw-fold[data-filled]:not([open]), details:is(.cw-know, .cw-bites-more):not([open])");
    for (const details of opened) details.open = true;
    region("paper-drawings").replaceChildren(...otherDrawings(drawings()));
  });
  window.addEventListener("afterprint", () => {
    for (const details of opened) details.open = false;
    opened = [];
    region("paper-drawings").replaceChildren();
    clearPaper();
  });
}
