// The drawing in view: one layer at a time, seen from below or from above.

import type { Drawing, Layer } from "../engine/contract";
import { make, region, setText } from "./dom";
import { say } from "./say";

// What was asked for: a layer with what is shown of it, "L1/hanging". It stays
// asked for while a half-typed blank leaves nothing of it to draw.
let wanted = "";
let looking: "up" | "down" = "up";
let shownSVG = "";

function one<E extends Element = HTMLElement>(selector: string): E {
  return document.querySelector(selector) as E;
}

export function turnOver(): void {
  looking = looking === "up" ? "down" : "up";
}

export function draw(key: string): void {
  wanted = key;
}

/** What a drawing is asked for by: both its sides share it. The sections of two
 *  steps may lie on one layer, so those go by their own id. */
export function keyOf(drawing: Drawing): string {
  return drawing.shows === "sections" ? drawing.id : `${drawing.layer}/${drawing.shows}`;
}

const shownWords: Record<string, string> = {
  hanging: say("order of hanging"),
  marks: say("marks on the walls"),
  stations: say("platform positions"),
  skew: say("room, its skew drawn large"),
};

function nameOf(drawing: Drawing, names: Map<string, string>): string {
  if (drawing.shows === "sections") return drawing.title.replace(/, looking up$/, "");
  return [names.get(drawing.layer) ?? "", shownWords[drawing.shows] ?? drawing.shows].filter(Boolean).join(": ");
}

/** Returns true when another picture has been put in place. */
export function renderDrawing(drawings: Drawing[], layers: Layer[]): boolean {
  const names = new Map(layers.map((l) => [l.id, l.name] as const));
  const keys = new Map(drawings.map((d) => [keyOf(d), nameOf(d, names)] as const));
  const key = keys.has(wanted) ? wanted : (Array.from(keys.keys())[0] ?? "");
  offer(keys, key);
  const sides = drawings.filter((d) => keyOf(d) === key);
  const drawing = sides.find((d) => d.looking === looking) ?? sides[0];
  one<HTMLElement>(".cw-drawing").dataset["looking"] = drawing?.looking ?? looking;
  setText(one("[data-drawing-title]"), drawing?.title ?? say("Ceiling, looking up"));
  setText(one("[data-do=turn-over]"), drawing?.looking !== "down" ? say("Turn it over: looking down") : say("Turn it over: looking up"));
  one<HTMLButtonElement>("[data-do=turn-over]").hidden = sides.length < 2;
  one<HTMLElement>("[data-drawing-blank]").hidden = drawing !== undefined;
  const svg = drawing?.svg ?? "";
  if (svg === shownSVG) return false;
  shownSVG = svg;
  const place = region("drawing");
  if (svg === "") place.replaceChildren();
  else place.replaceChildren(picture(svg, drawing?.title ?? ""));
  return true;
}

/** The drawing as nodes. A text that is no SVG gives a sentence instead. */
export function picture(svg: string, title: string): Node {
  const parsed = new DOMParser().parseFromString(svg, "image/svg+xml");
  const root = parsed.documentElement;
  if (root.nodeName !== "svg" || parsed.querySelector("parsererror, script, foreignObject")) {
    return make("p", {}, say("The drawing could not be shown. The figures beside it hold."));
  }
  const node = document.importNode(root, true);
  node.setAttribute("role", "img");
  // The picture's own title would pop up over every panel as a tool tip.
  node.setAttribute("aria-label", [title, node.querySelector("desc")?.textContent ?? ""].filter(Boolean).join(". "));
  node.querySelector(":scope > title")?.remove();
  return node;
}

/** The drawings that are not in view, for paper: the marks and the view looking
 *  down of every layer belong to the job as much as the one on the screen. */
export function otherDrawings(drawings: Drawing[]): HTMLElement[] {
  return drawings
    .filter((d) => d.svg !== shownSVG)
    .map((d) => make("figure", { class: "cw-drawing cw-drawing--paper" }, make("figcaption", {}, make("h2", {}, d.title)), picture(d.svg, d.title)));
}

function offer(keys: Map<string, string>, key: string): void {
  const select = one<HTMLSelectElement>("[data-drawing-layer]");
  const offered = JSON.stringify(Array.from(keys));
  if (select.dataset["offered"] !== offered) {
    select.dataset["offered"] = offered;
    select.replaceChildren(...Array.from(keys, ([value, name]) => new Option(name, value)));
  }
  select.hidden = keys.size < 2;
  select.value = key;
}
