// Handing things over to the browser: a file, a printed page, a tab. A frame of
// another site may forbid each of them, mostly without a word to the page inside;
// what is told is what is known, and the text to copy works everywhere.

import { saveText } from "../state/file";
import { action, make } from "./dom";
import { isFramed, may } from "./framed";
import { message } from "./messages";
import { say } from "./say";

/** Saves a text as a file and says what can be said of it. more is told where
 *  the file surely comes. */
export function handOver(name: string, type: string, text: string, more = ""): void {
  const allowed = may("allow-downloads");
  if (allowed === "no") {
    showText(say("The page around this one forbids saving files. Copy the text instead:"), text, name);
    return;
  }
  saveText(name, type, text);
  if (allowed === "yes") message("done", [say("“{name}” is on its way to your downloads.", { name }), more].filter(Boolean).join(" "));
  else message("done", say("“{name}” was handed to the browser. If no file comes, the page around this one forbids it:", { name }), action("copy-text", say("Copy as text")));
}

/** Shows a text in a field, all of it chosen, to be copied by hand. */
export function showText(words: string, text: string, name: string): void {
  message("done", words);
  const box = make("textarea", { class: "cw-link", rows: "6", readonly: true, "aria-label": name });
  box.value = text;
  document.querySelector("[data-message=done]")?.append(box);
  box.scrollIntoView({ block: "nearest" });
  box.focus({ preventScroll: true });
  box.select();
}

/** Prints the page. A frame that may not print does nothing, without a word. */
export function printPage(): void {
  let begun = false;
  const note = () => {
    begun = true;
  };
  window.addEventListener("beforeprint", note);
  window.print();
  window.removeEventListener("beforeprint", note);
  if (isFramed() && !begun) message("done", say("The page around this one forbids printing. Open this page in its own tab, or copy the plan as text."), action("copy-text", say("Copy as text")));
}
