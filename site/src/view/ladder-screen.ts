// What one screen of the ladder view is made of, and what its two kinds of work
// may do to the job.

import type { Sheet } from "../engine/contract";
import type { Place } from "../state/ladder";
import type { Plan } from "../state/plan";
import type { Json } from "../state/pointer";
import { make } from "./dom";

/** A button under the thumb. */
export interface Key {
  words: string;
  does: () => void;
}

/** One step of the work. The focus moves to its heading when the name changes. */
export interface Screen {
  name: string;
  where: string; // how far the work has got
  heading: HTMLElement;
  beside?: HTMLElement | null; // a line that belongs to the heading
  sketch?: HTMLElement | null;
  whole?: boolean; // the sketch shows the whole layer and wants room
  content: (HTMLElement | null)[];
  keys: Key[]; // the first is the one to go on with
}

/** The job as the work on the ladder sees and changes it. */
export interface Rung {
  plan(): Plan;
  sheet(): Sheet;
  place: Place;
  /** Shows a step and remembers it. */
  go(at: string): void;
  /** Writes into the plan; the sheet is another one afterwards. */
  write(pointer: string, value: Json): void;
  /** Says what has just been done, once. */
  tell(words: string): void;
  leave(): void;
}

/** A heading that can take the focus: what to do in small, what with in large. */
export function heading(does: string, what: string, after = ""): HTMLElement {
  return make(
    "h2",
    { class: "cw-ladder-heading", tabindex: "-1" },
    make("span", {}, does),
    " ",
    fitted("b", what),
    after === "" ? null : make("span", {}, ` ${after}`),
  );
}

/** Text as large as its number of letters lets it be. */
export function fitted(tag: "b" | "dd", text: string): HTMLElement {
  const element = make(tag, { class: "cw-ladder-fit" }, text);
  element.style.setProperty("--cw-letters", String(text.length));
  return element;
}

/** A sentence whose lengths are not broken at the end of a line. */
export function unbroken(text: string): string {
  return text.replace(/([′\d]) (?=\d|[cm]?m\b)/g, "$1\u00a0");
}

export function button(words: string, does: () => void, attributes: Record<string, string> = {}): HTMLButtonElement {
  const pressed = make("button", { type: "button", ...attributes }, words);
  pressed.addEventListener("click", does);
  return pressed;
}
