// The hanging list of each layer: which panel when, and what it is set to.

import type { Figure, Layer } from "../engine/contract";
import { action, every, make, redraw, region } from "./dom";
import { figurePlace } from "./figures";

/** Rows shown at once; a very long list is finished on asking and for print. */
const ROWS = 400;
/** From here on rows out of sight are left undrawn by the browser. */
const LONG = 60;
const whole = new Set<string>();

export function showWholeList(layer: string): void {
  whole.add(layer);
}

export function renderHanging(layers: Layer[], figures: Map<string, Figure>): boolean {
  const host = region("hanging");
  const shut = new Set(every("details.cw-hang:not([open])", host).map((d) => d.dataset["layer"]));
  return redraw(host, [layers, Array.from(whole), Array.from(figures.keys())], () =>
    layers.map((layer, i) => layerList(layer, figuresOf(layer, figures), shut.has(layer.id) ? false : i === 0 || host.childElementCount > 0)),
  );
}

/** Figures of one layer carry its id in front; its panels stand with the mask. */
function figuresOf(layer: Layer, figures: Map<string, Figure>): string[] {
  return Array.from(figures.keys()).filter((id) => id.startsWith(`${layer.id}.`) && id !== `${layer.id}.panels`);
}

function layerList(layer: Layer, figures: string[], open: boolean): HTMLElement {
  const sizes = new Map((layer.panels ?? []).map((p) => [p.label, p] as const));
  const shown = whole.has(layer.id) ? (layer.order ?? []) : (layer.order ?? []).slice(0, ROWS);
  const first = layer.order?.[0];
  const oneSize = new Set((layer.panels ?? []).map((p) => p.size)).size === 1 ? layer.panels?.[0]?.size : undefined;
  return make(
    "details",
    { class: "cw-hang cw-item", "data-layer": layer.id, open },
    make("summary", {}, make("b", {}, layer.name), first ? ` ${String(layer.count)} panels, ${first.panel} first` : ""),
    first ? make("p", { class: "cw-more" }, action("ladder", "On the ladder", { "data-to": "hanging", "aria-label": `On the ladder: ${layer.name}` })) : null,
    oneSize ? make("p", { class: "cw-advice" }, `Every panel is ${oneSize}.`) : null,
    layer.advice ? make("p", { class: "cw-advice" }, layer.advice) : null,
    make("div", { class: "cw-row" }, ...figures.filter((id) => !isBuildUp(id)).map((id) => figurePlace(id, "small"))),
    figures.some(isBuildUp)
      ? make(
          "details",
          { class: "cw-fold" },
          make("summary", {}, "how true it will come out"),
          make("div", { class: "cw-row" }, ...figures.filter(isBuildUp).map((id) => figurePlace(id, "small"))),
        )
      : null,
    make("div", { class: "cw-slips", "data-fill": "slips" }),
    make(
      "ol",
      { class: "cw-order", "data-long": shown.length > LONG },
      ...shown.map((hang) => {
        const panel = sizes.get(hang.panel);
        return make(
          "li",
          { "data-panel": `${layer.id}:${hang.panel}` },
          make("span", { class: "cw-tick", "aria-hidden": "true" }),
          make("span", { class: "cw-nth" }, String(hang.n)),
          make("button", { type: "button", class: "cw-panel-name", "data-do": "light", "aria-label": `Panel ${hang.panel}: show it on the drawing` }, hang.panel),
          make("span", { class: "cw-set" }, sentence(hang.text, hang.panel), panel && !oneSize ? make("small", {}, ` ${panel.size}`) : null, panel?.cut ? make("em", {}, ` ${panel.cut}`) : null),
        );
      }),
    ),
    shown.length < (layer.order?.length ?? 0) ? action("whole-list", "Show the whole list", { "data-to": layer.id }) : null,
    layer.seams?.length
      ? make(
          "details",
          { class: "cw-fold" },
          make("summary", {}, "every seam, for the tape"),
          make("ul", { class: "cw-seams" }, ...layer.seams.map((r) => make("li", {}, make("b", {}, r.seam), ` ${r.length}`))),
        )
      : null,
  );
}

/** Run-out and its setting at the seams, along each side of the layer. */
function isBuildUp(id: string): boolean {
  return /\.(length|width)$/.test(id) && !id.endsWith(".seams.length");
}

/** The engine's sentence names the panel, which stands in a column of its own. */
function sentence(text: string, panel: string): string {
  return text.startsWith(`${panel}: `) ? text.slice(panel.length + 2) : text;
}
