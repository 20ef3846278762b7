// Messages at the head of the sheet: what could not be kept, opened, started.

import { action, every, make, region } from "./dom";
import { say } from "./say";

/** Shows a message under a name, in place of an earlier one of that name. */
export function message(name: string, words: string, ...actions: HTMLButtonElement[]): void {
  unsay(name);
  region("messages").append(
    make(
      "p",
      { class: "cw-message", "data-message": name },
      words,
      " ",
      ...actions.flatMap((a) => [a, " "]),
      action("put-away", say("Put away"), { "data-to": name }),
    ),
  );
}

export function unsay(name: string): void {
  for (const old of every(`[data-message="${CSS.escape(name)}"]`)) old.remove();
}
