// Lists of the sheet: layers, steps, cans, parts of a mix, sizes. Each list has
// a pattern for one entry; entries carry their place in the plan as data-base,
// and the blanks inside get the full pointer from it.

import { cornerCount } from "../state/entries";
import { at, list, typedText, type Json, type JsonObject } from "../state/pointer";
import { every, setAttribute, setText } from "./dom";

/** The pointer a blank or list inside an entry stands for. */
function join(base: string, relative: string): string {
  return relative === "" ? base : `${base}/${relative}`;
}

/** A pointer as written in the page, made whole from the entry around it. */
export function whole(element: Element, pointer: string): string {
  if (pointer.startsWith("/")) return pointer;
  return join(element.closest<HTMLElement>("[data-base]")?.dataset["base"] ?? "", pointer);
}

export function renderLists(plan: JsonObject): void {
  for (const host of every("[data-list]")) fill(host, host.dataset["list"] ?? "", plan);
  for (const select of every<HTMLSelectElement>("select[data-options]")) offer(select, options(plan, select.dataset["options"] ?? ""));
  renderNames(plan);
}

const patterns = new Map<string, HTMLElement>();

/** The element an entry is copied from. It stands in the page as text in a
 *  script block: Chromium's own "save page" empties template elements, and the
 *  saved copy could not draw its lists. The text is the page's own. */
function pattern(name: string): HTMLElement {
  let made = patterns.get(name);
  if (!made) {
    const text = document.getElementById(name)?.textContent ?? "";
    made = new DOMParser().parseFromString(text, "text/html").body.firstElementChild as HTMLElement;
    patterns.set(name, made);
  }
  return made;
}

function fill(host: HTMLElement, pointer: string, plan: JsonObject): void {
  const entries = list(plan, pointer);
  const items = Array.from(host.children) as HTMLElement[];
  while (items.length > entries.length) items.pop()?.remove();
  while (items.length < entries.length) {
    const item = document.importNode(pattern(host.dataset["item"] ?? ""), true);
    host.append(item);
    items.push(item);
  }
  items.forEach((item, i) => place(item, `${pointer}/${String(i)}`, i, host, entries[i] ?? null, plan));
}

function place(item: HTMLElement, base: string, index: number, host: HTMLElement, entry: Json, plan: JsonObject): void {
  setAttribute(item, "data-base", base);
  const own = (e: Element) => e.closest("[data-item-of]") === item;
  for (const blank of every("[data-rel]", item)) {
    if (own(blank)) setAttribute(blank, "data-at", join(base, blank.dataset["rel"] ?? ""));
  }
  const noun = host.dataset["noun"];
  if (noun) item.querySelector("input")?.setAttribute("aria-label", `${noun} ${String(index + 1)}`);
  if (item.getAttribute("role") === "group") setAttribute(item, "aria-label", typedText(at(entry, "/name")) || "Layer");
  for (const figure of every("[data-figure-rel]", item)) {
    setAttribute(figure, "data-figure", `${typedText(at(entry, "/id"))}.${figure.dataset["figureRel"] ?? ""}`);
  }
  for (const nested of every("[data-list-rel]", item)) {
    if (own(nested)) fill(nested, join(base, nested.dataset["listRel"] ?? ""), plan);
  }
}

type Offered = readonly [value: string, words: string];

/** The words of a choice that follow from the plan. */
function options(plan: JsonObject, of: string): Offered[] {
  const n = cornerCount(plan);
  const corners = Array.from({ length: n }, (_, i) => letter(i));
  if (of === "corners") return corners.map((c) => [c, c]);
  if (of === "square") {
    return [["room", "the room"], ...corners.map((_, i): Offered => [wall(i, n), `wall ${wall(i, n)}`]), ["fixture", "the light’s axis"]];
  }
  return list(plan, "/mask/layers").map((l) => [typedText(at(l, "/id")), lowerFirst(typedText(at(l, "/name")) || typedText(at(l, "/id")))]);
}

function offer(select: HTMLSelectElement, wanted: Offered[]): void {
  const key = JSON.stringify(wanted);
  if (select.dataset["offered"] === key) return;
  select.dataset["offered"] = key;
  select.replaceChildren(...wanted.map(([value, words]) => new Option(words, value)));
}

function letter(i: number): string {
  return String.fromCharCode("A".charCodeAt(0) + i);
}

/** A wall is named by its two corners; the last one ends at the first. */
function wall(i: number, n: number): string {
  return letter(i) + letter(i + 1 < n ? i + 1 : 0);
}

/** Writes the names of corners and walls where they follow from the place of an
 *  entry, or from how many corners the room has. */
function renderNames(plan: JsonObject): void {
  const n = cornerCount(plan);
  const named = (element: Element): Record<string, string> => {
    const i = Number(/(\d+)$/.exec(element.closest<HTMLElement>("[data-base]")?.dataset["base"] ?? "")?.[1] ?? 0);
    return { letter: letter(i), wall: wall(i, n), next: wall(i, n).slice(1), last: wall(n - 1, n) };
  };
  for (const part of every("[data-nth]")) setText(part, named(part)[part.dataset["nth"] ?? ""] ?? "");
  for (const blank of every("[data-name]")) {
    const names = named(blank);
    setAttribute(blank, "aria-label", (blank.dataset["name"] ?? "").replace(/\{(\w+)\}/g, (_, name: string) => names[name] ?? ""));
  }
}

/** A name put in the middle of a sentence: "First layer" reads "first layer". */
export function lowerFirst(name: string): string {
  return /^\p{Lu}\p{Ll}/u.test(name) ? (name[0] ?? "").toLowerCase() + name.slice(1) : name;
}

/** Shows what belongs to the choices made, hides the rest: data-when holds
 *  place=word|word or place!=word|word. */
export function renderWhen(plan: JsonObject): void {
  for (const part of every("[data-when]")) {
    const rule = /^(.*?)(!?)=(.*)$/.exec(part.dataset["when"] ?? "");
    if (!rule) continue;
    const value = typedText(at(plan, whole(part, rule[1] ?? "")));
    const among = (rule[3] ?? "").split("|").includes(value);
    part.hidden = rule[2] === "!" ? among : !among;
  }
  for (const word of every("[data-one]")) {
    const [one = "", many = ""] = (word.dataset["words"] ?? "").split("|");
    setText(word, typedText(at(plan, whole(word, word.dataset["one"] ?? ""))).trim() === "1" ? one : many);
  }
}
