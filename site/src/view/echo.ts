// The echo: while a length is typed, how it is read, in both notations; and on
// touch screens the signs a number pad lacks. It stands on a line of its own
// under the sentence, so that it covers nothing that can be pressed.

import type { Reading } from "../engine/contract";
import { pointerOf, sentence } from "./blanks";
import { make, setAttribute } from "./dom";
import { say } from "./say";

type Notation = "feet" | "metric" | ""; // what a sign belongs to, "" for both

const signs: [string, string, string, Notation][] = [
  ["′", "'", say("feet"), "feet"],
  ["″", '"', say("inches"), "feet"],
  ["␣", " ", say("space"), "feet"],
  ["⁄", "/", say("stroke of a fraction"), "feet"],
  ["½", "1/2", say("a half"), "feet"],
  ["¼", "1/4", say("a quarter"), "feet"],
  ["⅛", "1/8", say("an eighth"), "feet"],
  ["mm", "mm", say("millimetres"), "metric"],
  ["cm", "cm", say("centimetres"), "metric"],
  ["m", "m", say("metres"), "metric"],
  ["−", "-", say("minus"), ""], // only where a length may be to either side
];

const heard = make("span", { class: "cw-echo-words" });
const keys = make(
  "span",
  { class: "cw-echo-keys" },
  ...signs.map(([face, sign, name, notation]) => make("button", { type: "button", tabindex: "-1", "data-sign": sign, "data-of": notation, "aria-label": name }, face)),
);
const minus = keys.lastElementChild as HTMLElement;
const echo = make("div", { class: "cw-echo" }, heard, keys);

/** Puts a sign where the caret is. A fraction after a digit gets its space: 2 and
 *  a half is not twenty-one halves. */
function sign(pressed: EventTarget | null): void {
  const sign = pressed instanceof HTMLElement ? pressed.dataset["sign"] : undefined;
  const blank = document.activeElement;
  if (sign === undefined || !(blank instanceof HTMLInputElement)) return;
  const from = blank.selectionStart ?? blank.value.length;
  const parted = sign.includes("/") && sign.length > 1 && /\d$/.test(blank.value.slice(0, from)) ? ` ${sign}` : sign;
  blank.setRangeText(parted, from, blank.selectionEnd ?? from, "end");
  blank.dispatchEvent(new InputEvent("input", { bubbles: true }));
}

const coarse = matchMedia("(pointer: coarse)");

let pressed = false; // the last thing done was a press, not a key
let echoed: Element | null = null; // the blank it speaks of

/** Lets the signs be pressed. After a press the empty line of the echo stays
 *  until something is typed: what was pressed must not move from under the
 *  pointer before it is pressed again. */
export function startEcho(root: HTMLElement): void {
  // The blank keeps the focus, or the number pad would close.
  for (const name of ["pointerdown", "mousedown"]) keys.addEventListener(name, (e) => e.preventDefault());
  keys.addEventListener("click", (e) => sign(e.target));
  root.addEventListener("mousedown", () => (pressed = true), true);
  // The number pad and the signs together write every length; where there are no signs,
  // it takes a keyboard that has them.
  for (const name of ["pointerdown", "focusin"]) {
    root.addEventListener(name, (e) => {
      if (e.target instanceof HTMLInputElement && e.target.dataset["kind"] === "length") setAttribute(e.target, "inputmode", coarse.matches ? "decimal" : "text");
    });
  }
  // The keys that come up under the hand must not hide the signs.
  window.visualViewport?.addEventListener("resize", () => echo.isConnected && coarse.matches && echo.scrollIntoView({ block: "nearest" }));
  for (const name of ["keydown", "input"]) root.addEventListener(name, () => (pressed = false), true);
}

/** Shows how the blank in hand is read: as soon as something is typed in it, and
 *  where fingers type as soon as it is entered, for the signs. */
export function renderEcho(readings: Record<string, Reading>): void {
  const blank = document.activeElement;
  const reads = blank instanceof HTMLInputElement && blank.dataset["kind"] === "length";
  const wanted = reads && (!pressed || coarse.matches || blank === echoed);
  if (!wanted) {
    if (pressed) setAttribute(echo, "data-idle", "");
    else echo.remove();
    return;
  }
  const reading = readings[pointerOf(blank)];
  heard.textContent = reading && blank.value.trim() !== "" ? equals(reading) : "";
  setAttribute(echo, "data-idle", null);
  echo.hidden = blank.value.trim() === "" && !coarse.matches;
  minus.hidden = blank.dataset["signed"] === undefined;
  echoed = blank;
  const before = blank.getBoundingClientRect().top;
  const host = sentence(blank);
  if (host.matches("li")) {
    if (echo.parentElement !== host) host.append(echo);
  } else if (host.nextElementSibling !== echo) host.after(echo);
  window.scrollBy({ top: blank.getBoundingClientRect().top - before, behavior: "instant" });
}

function equals({ text, other }: Reading): string {
  return `${text} ${other.startsWith("≈") ? "" : "= "}${other}`;
}
