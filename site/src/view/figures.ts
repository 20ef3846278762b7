// Figures: the large answers beside the sentences, and the slip with the
// working that can be opened under the block.

import type { Figure, Working } from "../engine/contract";
import { every, make, redraw, setAttribute, setText, unbroken } from "./dom";
import { onSheet } from "./pages";
import { say } from "./say";

const open = new Set<string>();
let allOpen = false;

/** Every working is shown, as a link with ?working=open asks for. */
export function openAllWorkings(): void {
  allOpen = true;
}

export function allWorkingsOpen(): boolean {
  return allOpen;
}

/** Figures a saved page showed opened are gone with its answers. */
export function isOpen(id: string): boolean {
  return allOpen !== open.has(id);
}

export function openWorking(id: string): void {
  if (!isOpen(id)) toggleWorking(id);
}

export function toggleWorking(id: string): void {
  if (!open.delete(id)) open.add(id);
}

/** A place for a figure, filled by renderFigures. */
export function figurePlace(id: string, size: "large" | "small", label = ""): HTMLElement {
  return make("div", { class: size === "small" ? "cw-figure cw-figure--small" : "cw-figure", "data-figure": id, "data-label": label });
}

export function renderFigures(figures: Map<string, Figure>): void {
  for (const place of onSheet(".cw-figure")) renderFigure(place, figures.get(place.dataset["figure"] ?? ""));
  for (const slips of onSheet("[data-fill=slips]")) renderSlips(slips, figures);
}

function renderFigure(place: HTMLElement, figure: Figure | undefined): void {
  const id = place.dataset["figure"] ?? "";
  setAttribute(place, "data-missing", figure ? null : "");
  if (!place.firstChild) {
    place.append(
      make("strong", { class: "cw-value" }),
      make("span", { class: "cw-label" }),
      make("span", { class: "cw-other" }),
      make("button", { type: "button", class: "cw-how", "data-do": "working" }, say("working")),
    );
  }
  const [value, label, other, how] = Array.from(place.children) as [HTMLElement, HTMLElement, HTMLElement, HTMLElement];
  setText(value, figure?.text ?? "—");
  setText(label, figure?.label || place.dataset["label"] || "");
  setText(other, figure?.other ?? "");
  other.hidden = !figure?.other;
  how.hidden = !figure?.working.rule;
  setAttribute(how, "data-to", id);
  setAttribute(how, "aria-label", say("Show the working: {figure}", { figure: label.textContent ?? "" }));
  setAttribute(how, "aria-expanded", String(isOpen(id)));
  setAttribute(how, "aria-controls", isOpen(id) && figure?.working.rule ? slipId(home(place), id) : null);
}

/** The part of the sheet whose figures a place of slips serves. */
function home(element: Element): Element | null {
  return element.closest(".cw-item, .cw-block");
}

function renderSlips(slips: HTMLElement, figures: Map<string, Figure>): void {
  const mine = home(slips);
  const places = mine ? every(".cw-figure", mine).filter((f) => home(f) === mine) : [];
  // A figure that several notes speak of has one slip in its part of the sheet.
  const shown = Array.from(new Set(places.map((f) => f.dataset["figure"] ?? "")), (id) => figures.get(id)).filter(
    (f): f is Figure => f !== undefined && f.working.rule !== "" && isOpen(f.id),
  );
  redraw(slips, shown, () => shown.map((f) => slip(f, slipId(mine, f.id))));
}

/** The id of a figure's slip. Where the figure stands in several parts of the
 *  sheet, the part's own id tells the slips apart. */
function slipId(part: Element | null, figure: string): string {
  const first = onSheet(`.cw-figure[data-figure="${CSS.escape(figure)}"]`)[0];
  return !first || home(first) === part ? `slip-${figure}` : `slip-${figure}-${part?.closest(".cw-block")?.id ?? ""}`;
}

function slip(figure: Figure, id: string): HTMLElement {
  return make(
    "div",
    { class: "cw-slip", id, "data-figure": figure.id, role: "group", "aria-label": say("Working: {label}", { label: figure.label }) },
    make("h3", {}, `${figure.label}: ${figure.text}`, figure.other ? make("small", {}, ` = ${figure.other}`) : null),
    ...workingLines(figure.working),
  );
}

/** Rule, sum and source, as they stand on every slip. */
export function workingLines(working: Working): HTMLElement[] {
  return [
    make("p", { class: "cw-rule" }, working.rule),
    ...(working.sum ? working.sum.split("\n").map((line) => make("p", { class: "cw-sum" }, unbroken(line))) : []),
    ...(working.source ? [make("p", { class: "cw-source" }, working.source)] : []),
  ];
}
