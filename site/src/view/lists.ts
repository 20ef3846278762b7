// Lists of the sheet: layers, steps, cans, parts of a mix, sizes. Each list has
// a pattern for one entry; entries carry their place in the plan as data-base,
// and the blanks inside get the full pointer from it.

import { spread } from "../generated/plan";
import { cornerCount } from "../state/entries";
import { at, list, typedText, type Json, type JsonObject } from "../state/pointer";
import { fixedChoices, type Offered } from "./choices";
import { called } from "./corners";
import { every, setAttribute, setText } from "./dom";
import { placesFor } from "./finish";
import { calm, quoted } from "./names";
import { onSheet } from "./pages";
import { say, worded } from "./say";
import { isStepOpen } from "./step-open";

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
  for (const host of onSheet("[data-list]")) fill(host, host.dataset["list"] ?? "", plan);
  const known = new Map<string, Choices>();
  for (const select of onSheet<HTMLSelectElement>("select[data-options]")) {
    const of = select.dataset["options"] ?? "";
    const own = of === "earlier" ? choices(earlierSteps(plan, select)) : (known.get(of) ?? choices(offeredFor(plan, of)));
    known.set(of, own);
    offer(select, own);
  }
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

/** A blank by its pointer, on whatever page: as it stands there or, where its list is
 *  not built, as it will. orBelow takes the first in an entry or a part of the plan. */
export function blankAnywhere(pointer: string, orBelow = false): HTMLElement | null {
  const there = every(".cw-block [data-at]").filter((b) => b.closest("[hidden]") === null);
  const find = (is: (at: string) => boolean) => there.find((b) => is(b.dataset["at"] ?? "")) ?? blankToBe(pointer, is, every("[data-list]"));
  return find((at) => at === pointer) ?? (orBelow ? find((at) => at.startsWith(`${pointer}/`)) : null);
}

/** The blank of a pattern that an entry of the plan will have. */
function blankToBe(pointer: string, is: (at: string) => boolean, hosts: HTMLElement[], base = ""): HTMLElement | null {
  for (const host of hosts) {
    const of = host.dataset["list"] ?? join(base, host.dataset["listRel"] ?? "");
    const entry = pointer.startsWith(`${of}/`) ? /^\d+/.exec(pointer.slice(of.length + 1))?.[0] : undefined;
    if (entry === undefined) continue;
    const item = pattern(host.dataset["item"] ?? "");
    const parts = [item, ...every("[data-whole]", item).map((part) => pattern(part.dataset["whole"] ?? ""))];
    const all = (selector: string) => parts.flatMap((part) => every(selector, part));
    const place = `${of}/${entry}`;
    const found = all("[data-rel]").find((b) => is(join(place, b.dataset["rel"] ?? ""))) ?? blankToBe(pointer, is, all("[data-list-rel]"), place);
    if (found) return found;
  }
  return null;
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

/** Puts a new element where an entry comes in, so that those after it move with
 *  their entries. */
export function insertItem(base: string): void {
  for (const item of every(`[data-base="${CSS.escape(base)}"]`)) {
    const name = item.parentElement?.dataset["item"];
    if (name) item.before(document.importNode(pattern(name), true));
  }
}

/** Takes the elements of an entry away that goes. */
export function removeItem(base: string): void {
  for (const item of every(`[data-base="${CSS.escape(base)}"]`)) item.remove();
}

function place(item: HTMLElement, base: string, index: number, host: HTMLElement, entry: Json, plan: JsonObject): void {
  setAttribute(item, "data-base", base);
  const own = (e: Element) => e.closest("[data-item-of]") === item;
  for (const part of every("[data-whole]", item)) build(part, isStepOpen(typedText(at(entry, "/id"))));
  for (const blank of every("[data-rel]", item)) {
    if (own(blank)) setAttribute(blank, "data-at", join(base, blank.dataset["rel"] ?? ""));
  }
  const noun = host.dataset["noun"];
  if (noun) item.querySelector("input")?.setAttribute("aria-label", say("{thing} {n}", { thing: noun, n: index + 1 }));
  if (item.getAttribute("role") === "group") setAttribute(item, "aria-label", calm(typedText(at(entry, "/name"))) || say("Layer"));
  for (const figure of every("[data-figure-rel]", item)) {
    setAttribute(figure, "data-figure", `${typedText(at(entry, "/id"))}.${figure.dataset["figureRel"] ?? ""}`);
  }
  for (const nested of every("[data-list-rel]", item)) {
    if (own(nested)) fill(nested, join(base, nested.dataset["listRel"] ?? ""), plan);
  }
}

/** What is in an entry is in the document while the entry is open. */
function build(part: HTMLElement, wanted: boolean): void {
  if (wanted === part.hasChildNodes()) return;
  part.replaceChildren(...(wanted ? [document.importNode(pattern(part.dataset["whole"] ?? ""), true)] : []));
}

/** Choices in words, and one text that tells them from others. */
interface Choices {
  key: string;
  all: readonly Offered[];
}

function choices(all: readonly Offered[]): Choices {
  return { key: JSON.stringify(all), all };
}

/** The words of a choice that many blanks share, or that follow from the plan. */
function offeredFor(plan: JsonObject, of: string): readonly Offered[] {
  const fixed = fixedChoices[of];
  if (fixed) return fixed;
  const n = cornerCount(plan);
  const corners = Array.from({ length: n }, (_, i) => letter(i));
  if (of === "corners") return corners.map((c) => [c, called(c)]);
  if (of === "square") {
    return [["room", say("the room")], ...corners.map((_, i): Offered => [wall(i, n), say("wall {wall}", { wall: called(wall(i, n)) })]), ["fixture", say("the light’s axis")]];
  }
  if (of === "places") return placesFor(plan);
  const entries = list(plan, of === "surfaces" ? "/finish/surfaces" : "/mask/layers");
  return entries.map((l) => [typedText(at(l, "/id")), calm(lowerFirst(typedText(at(l, "/name")) || typedText(at(l, "/id"))))]);
}

/** The steps before a step, to share a product with; and the one chosen, which
 *  may since have been moved behind it. */
function earlierSteps(plan: JsonObject, select: Element): readonly Offered[] {
  const own = whole(select, "");
  const index = Number(/(\d+)$/.exec(own)?.[1] ?? 0);
  const chosen = typedText(at(plan, `${own}/sameAs`));
  const offered = list(plan, "/finish/steps").filter(
    (s, i) => typedText(at(s, "/id")) === chosen || (i < index && spread.includes(typedText(at(s, "/kind")))),
  );
  return [["", say("a product of its own")], ...offered.map((s): Offered => [typedText(at(s, "/id")), say("the product of {step}", { step: quoted(typedText(at(s, "/name"))) })])];
}

function offer(select: HTMLSelectElement, wanted: Choices): void {
  if (select.dataset["offered"] === wanted.key) return;
  select.dataset["offered"] = wanted.key;
  const chosen = select.value;
  select.replaceChildren(...groups(wanted.all));
  // Blanks of the plan are set from it; a choice that is not in the plan stays.
  if (!select.hasAttribute("data-at") && wanted.all.some(([value]) => value === chosen)) select.value = chosen;
}

/** The choices as options; those that name a group stand together under it. */
function groups(all: readonly Offered[]): HTMLElement[] {
  const made: HTMLElement[] = [];
  for (const [value, words, group] of all) {
    const option = new Option(words, value);
    if (group === undefined) made.push(option);
    else {
      let last = made.at(-1);
      if (!(last instanceof HTMLOptGroupElement && last.label === group)) {
        last = document.createElement("optgroup");
        last.setAttribute("label", group);
        made.push(last);
      }
      last.append(option);
    }
  }
  return made;
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
    return { letter: called(letter(i)), wall: called(wall(i, n)), next: called(wall(i, n).slice(1)), last: called(wall(n - 1, n)) };
  };
  for (const part of onSheet("[data-nth]")) setText(part, named(part)[part.dataset["nth"] ?? ""] ?? "");
  for (const blank of onSheet("[data-name]")) {
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
export function renderWhen(plan: JsonObject, parts = onSheet("[data-when]")): void {
  for (const part of parts) {
    const rule = /^(.*?)(!?)=(.*)$/.exec(part.dataset["when"] ?? "");
    if (!rule) continue;
    const value = typedText(at(plan, whole(part, rule[1] ?? "")));
    const among = (rule[3] ?? "").split("|").includes(value);
    part.hidden = rule[2] === "!" ? among : !among;
  }
  for (const word of onSheet("[data-one]")) {
    // What is no count takes the last of its forms, as a count of many does.
    const n = Number(typedText(at(plan, whole(word, word.dataset["one"] ?? ""))).trim() || NaN);
    setText(word, worded(n, word.dataset["words"] ?? ""));
  }
}
