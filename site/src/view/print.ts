// Printing: what is folded away on screen for its length is opened on paper.

import { showWholeList } from "./hanging";
import { every } from "./dom";

export function startPrint(redrawHanging: () => void): void {
  let opened: HTMLDetailsElement[] = [];
  window.addEventListener("beforeprint", () => {
    for (const list of every(".cw-hang")) showWholeList(list.dataset["layer"] ?? "");
    redrawHanging();
    opened = every<HTMLDetailsElement>("details.cw-hang:not([open])");
    for (const details of opened) details.open = true;
  });
  window.addEventListener("afterprint", () => {
    for (const details of opened) details.open = false;
    opened = [];
  });
}
