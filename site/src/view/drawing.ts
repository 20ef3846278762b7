// The drawing in view: it follows the page, unless one was chosen by hand there. A plan
// of the ceiling is seen from below or from above.

import type { Drawing } from "../engine/contract";
import { theSheet } from "./answer";
import { make, region, setAttribute, setText } from "./dom";
import { drawingInHand, pageLookedAt } from "./follow";
import { startPanels } from "./light";
import { calm } from "./names";
import { say } from "./say";
import { unzoom } from "./zoom";

// What was chosen by hand: a layer with what is shown of it, "L1/hanging", and the page
// on which it was. It stays chosen while a half-typed blank leaves nothing of it to draw.
let chosen = { key: "", page: "" };
let looking: "up" | "down" = "up";
let shown: Drawing[] = [];
let shownSVG = "";

function one<E extends Element = HTMLElement>(selector: string): E {
  return document.querySelector(selector) as E;
}

export function turnOver(): void {
  looking = looking === "up" ? "down" : "up";
}

/** Shows a drawing until the page is turned. */
export function draw(key: string): void {
  chosen = { key, page: pageLookedAt() };
}

/** What a drawing is asked for by: both its sides share it. The sections of two
 *  steps may lie on one layer, so those go by their own id. */
export function keyOf(drawing: Drawing): string {
  return drawing.shows === "sections" ? drawing.id : `${drawing.layer}/${drawing.shows}`;
}

const shownWords: Record<string, string> = {
  hanging: say("order of hanging"),
  panels: say("panels"),
  marks: say("marks on the walls"),
  stations: say("platform positions"),
  skew: say("Room, its skew drawn large"),
};

function nameOf(drawing: Drawing, names: Map<string, string>): string {
  const words = shownWords[drawing.shows] ?? drawing.title.replace(/, looking up$/, "");
  return [calm(names.get(drawing.layer) ?? ""), words].filter((part) => part !== "" && drawing.shows !== "sections").join(": ") || words;
}

/** Returns true when another picture has been put in place. */
export function renderDrawing(drawings: Drawing[], names: Map<string, string>): boolean {
  if (chosen.page !== pageLookedAt()) chosen = { key: "", page: "" };
  const keys = new Map(drawings.map((d) => [keyOf(d), nameOf(d, names)] as const));
  const own = drawingInHand(drawings, Array.from(names.keys()), theSheet()?.steps ?? []);
  const key = keys.has(chosen.key) ? chosen.key : own ? keyOf(own) : "";
  offer(keys, key);
  const sides = drawings.filter((d) => keyOf(d) === key);
  const drawing = sides.find((d) => d.looking === looking) ?? sides[0];
  // What is in the air belongs to the platform's page, under it.
  const below = drawing?.shows === "side" ? drawings.find((d) => d.shows === "air") : undefined;
  shown = [drawing, below].filter((d): d is Drawing => d !== undefined);
  const figure = one<HTMLElement>(".cw-drawing");
  figure.dataset["looking"] = drawing?.looking ?? looking;
  setAttribute(figure, "data-shows", drawing?.shows ?? "");
  const title = one("[data-drawing-title]");
  setText(title, drawing?.title ?? say("Ceiling, looking up"));
  title.classList.toggle("cw-unseen", keys.size > 1);
  const over = one<HTMLButtonElement>("[data-do=turn-over]");
  setText(over, drawing?.looking !== "down" ? say("looking down") : say("looking up"));
  over.hidden = sides.length < 2;
  one<HTMLElement>("[data-drawing-blank]").hidden = drawing !== undefined;
  const svg = shown.map((d) => d.svg).join("");
  if (svg === shownSVG) return false;
  shownSVG = svg;
  region("drawing").replaceChildren(...(svg === "" ? [] : [make("div", { class: "cw-drawing-sheet" }, ...shown.filter((d) => d.svg !== "").map((d) => picture(d.svg, d.title)))]));
  startPanels(region("drawing"));
  unzoom();
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

/** A drawing that belongs to no layer, by its id; null where the sheet has none. */
export function pictureNamed(id: string): Node | null {
  const drawing = theSheet()?.drawings?.find((d) => d.id === id);
  return drawing?.svg ? picture(drawing.svg, drawing.title) : null;
}

/** What paper does without: what these show stands in others too, or in words. */
const notOnPaper = ["panels", "room", "side"];

/** The drawings that are not in view, for paper: the marks and the view looking
 *  down of every layer belong to the job as much as the one on the screen. */
export function otherDrawings(drawings: Drawing[]): HTMLElement[] {
  return drawings
    .filter((d) => d.svg !== "" && !shown.some((s) => s.id === d.id) && !notOnPaper.includes(d.shows))
    .map((d) => make("figure", { class: "cw-drawing cw-drawing--paper", "data-shows": d.shows }, make("figcaption", {}, make("h2", {}, d.title)), picture(d.svg, d.title)));
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
