// Lists of the sheet: layers, steps, cans, parts of a mix, sizes. Each list has
// a pattern for one entry; entries carry their place in the plan as data-base,
// and the blanks inside get the full pointer from it.

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
  for (const select of every<HTMLSelectElement>("select[data-options=layers]")) offerLayers(select, plan);
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

function offerLayers(select: HTMLSelectElement, plan: JsonObject): void {
  const layers = list(plan, "/mask/layers");
  const wanted = layers.map((l) => [typedText(at(l, "/id")), typedText(at(l, "/name")) || typedText(at(l, "/id"))] as const);
  const key = JSON.stringify(wanted);
  if (select.dataset["offered"] === key) return;
  select.dataset["offered"] = key;
  select.replaceChildren(...wanted.map(([id, name]) => new Option(lowerFirst(name), id)));
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
