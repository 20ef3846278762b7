// Hanging cards for paper: one panel a card, large enough to read overhead,
// with a sketch cut out of the layer's drawing round that panel.

import type { Drawing, Hang, Layer } from "../engine/contract";
import { every, make } from "./dom";
import { measureText, sentence } from "./hanging";
import { layAlone } from "./paper";
import { say } from "./say";

/** More cards than this are no longer a set of cards; the list does then. */
const MOST = 400;
const SVG = "http://www.w3.org/2000/svg";

export function canHaveCards(layer: Layer): boolean {
  return layer.order.length > 0 && layer.order.length <= MOST;
}

/** Puts the cards of a layer in place for the printer, and takes the sheet off. */
export function layCards(layer: Layer, title: string, drawings: Drawing[]): void {
  const drawing = drawings.find((d) => d.layer === layer.id && d.shows === "hanging" && d.looking === "up");
  const source = drawing ? sketchSource(drawing.svg) : null;
  const panels = new Map(layer.panels.map((p) => [p.label, p] as const));
  layAlone(
    "cards",
    ...(source ? [source] : []),
    make("h2", {}, [title, layer.name, say("hanging cards, looking up")].filter(Boolean).join(": ")),
    ...layer.order.map((hang) => {
      const panel = panels.get(hang.panel);
      return make(
        "section",
        { class: "cw-card" },
        make("p", { class: "cw-card-head" }, make("b", {}, hang.panel), make("span", {}, hang.station > 0 ? say("{n} of {count}, from platform position {station}", { n: hang.n, count: layer.count, station: hang.station }) : say("{n} of {count}", { n: hang.n, count: layer.count })), make("span", { class: "cw-tick" })),
        source ? sketch(source, layer, hang) : null,
        make("p", {}, sentence(hang.text, hang.panel)),
        make("p", { class: "cw-measures" }, ...(hang.measures ?? []).map(measureText)),
        make("p", {}, [panel?.size, panel?.supplier ? say("supplier’s {supplier}", { supplier: panel.supplier }) : ""].filter(Boolean).join("; ")),
        panel?.cut ? make("p", {}, panel.cut) : null,
      );
    }),
  );
}

/** The whole drawing once, which every sketch shows a part of. */
function sketchSource(svg: string): SVGSVGElement | null {
  const root = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  if (root.nodeName !== "svg" || root.querySelector("script, foreignObject")) return null;
  const source = document.createElementNS(SVG, "svg");
  const drawing = document.createElementNS(SVG, "g");
  drawing.id = "card-drawing";
  // What the drawing's lines and letters inherit.
  for (const name of ["fill", "font-family", "stroke-width"]) drawing.setAttribute(name, root.getAttribute(name) ?? "");
  for (const node of Array.from(document.importNode(root, true).childNodes)) {
    if (node.nodeName !== "title" && node.nodeName !== "desc") drawing.append(node);
  }
  source.setAttribute("class", "cw-card-source");
  source.setAttribute("aria-hidden", "true");
  source.setAttribute("viewBox", root.getAttribute("viewBox") ?? "");
  source.append(drawing);
  return source;
}

function sketch(source: SVGSVGElement, layer: Layer, hang: Hang): Element {
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("class", "cw-card-sketch");
  svg.setAttribute("viewBox", hang.view || source.getAttribute("viewBox") || "");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", say("Panel {panel} and what is round it, looking up", { panel: hang.panel }));
  const all = document.createElementNS(SVG, "use");
  all.setAttribute("href", "#card-drawing");
  svg.append(all);
  for (const part of every<Element>(`[data-panel="${CSS.escape(`${layer.id}:${hang.panel}`)}"]`, source)) {
    const lit = part.cloneNode(true) as Element;
    lit.setAttribute("class", "cw-card-lit");
    svg.append(lit);
  }
  return svg;
}
