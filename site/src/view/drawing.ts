// The drawing in view: one layer at a time, seen from below or from above.

import type { Drawing, Layer } from "../engine/contract";
import { make, region, setText } from "./dom";

let layer = "";
let looking: "up" | "down" = "up";
let shownSVG = "";

function one<E extends Element = HTMLElement>(selector: string): E {
  return document.querySelector(selector) as E;
}

export function turnOver(): void {
  looking = looking === "up" ? "down" : "up";
}

export function drawLayer(id: string): void {
  layer = id;
}

export function drawnLayer(): string {
  return layer;
}

/** Returns true when another picture has been put in place. */
export function renderDrawing(drawings: Drawing[], layers: Layer[]): boolean {
  const names = new Map(layers.map((l) => [l.id, l.name] as const));
  const ids = Array.from(new Set(drawings.map((d) => d.layer)));
  if (!ids.includes(layer)) layer = ids[0] ?? "";
  offer(ids, names);
  const drawing = drawings.find((d) => d.layer === layer && d.looking === looking) ?? drawings.find((d) => d.layer === layer);
  one<HTMLElement>(".cw-drawing").dataset["looking"] = drawing?.looking ?? looking;
  setText(one("[data-drawing-title]"), drawing?.title ?? "Ceiling, looking up");
  setText(one("[data-do=turn-over]"), looking === "up" ? "Turn it over: looking down" : "Turn it over: looking up");
  one<HTMLButtonElement>("[data-do=turn-over]").hidden = drawings.length === 0;
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
function picture(svg: string, title: string): Node {
  const parsed = new DOMParser().parseFromString(svg, "image/svg+xml");
  const root = parsed.documentElement;
  if (root.nodeName !== "svg" || parsed.querySelector("parsererror, script, foreignObject")) {
    return make("p", {}, "The drawing could not be shown. The figures beside it hold.");
  }
  const node = document.importNode(root, true);
  node.setAttribute("role", "img");
  // The picture's own title would pop up over every panel as a tool tip.
  node.setAttribute("aria-label", [title, node.querySelector("desc")?.textContent ?? ""].filter(Boolean).join(". "));
  node.querySelector(":scope > title")?.remove();
  return node;
}

function offer(ids: string[], names: Map<string, string>): void {
  const select = one<HTMLSelectElement>("[data-drawing-layer]");
  const key = JSON.stringify(ids.map((id) => [id, names.get(id)]));
  if (select.dataset["offered"] !== key) {
    select.dataset["offered"] = key;
    select.replaceChildren(...ids.map((id) => new Option(names.get(id) ?? id, id)));
  }
  select.hidden = ids.length < 2;
  select.value = layer;
}
