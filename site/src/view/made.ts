// The worked example as the build made it stands on the page before the script runs. It
// is left there until the engine answers, and taken off at once where another job opens.

import { every, setAttribute } from "./dom";

/** Whether what the build made is still there. */
export function isMade(): boolean {
  return document.querySelector("[data-made]") !== null;
}

/** Takes it off. What was made is then filled like the rest. */
export function unmake(keep: boolean): void {
  for (const made of every("[data-made]")) {
    if (!keep) made.replaceChildren();
    setAttribute(made, "data-made", null);
  }
}
