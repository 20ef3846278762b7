// Messages at the head of the sheet: what could not be kept, opened, started.

import { action, every, make, region } from "./dom";
import { say } from "./say";

/** Shows a message under a name, in place of an earlier one of that name. It can be
 *  put away, by the last of its actions where that has a word of its own for it. */
export function message(name: string, words: string, ...actions: HTMLButtonElement[]): void {
  unsay(name);
  region("messages").append(
    make(
      "p",
      { class: "cw-message", "data-message": name },
      words,
      " ",
      ...actions.flatMap((a) => [a, " "]),
      actions.at(-1)?.dataset["do"] === "put-away" ? null : action("put-away", say("Put away"), { "data-to": name }),
    ),
  );
}

export function unsay(name: string): void {
  for (const old of every(`[data-message="${CSS.escape(name)}"]`)) old.remove();
}
