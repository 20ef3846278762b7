// The hanging list of each layer: which panel when, and what it is set to.

import type { Layer } from "../engine/contract";
import { action, every, make, redraw, region } from "./dom";
import { figurePlace } from "./figures";

/** Rows shown at once; a very long list is finished on asking and for print. */
const ROWS = 400;
const whole = new Set<string>();

export function showWholeList(layer: string): void {
  whole.add(layer);
}

export function renderHanging(layers: Layer[]): boolean {
  const host = region("hanging");
  const shut = new Set(every("details.cw-hang:not([open])", host).map((d) => d.dataset["layer"]));
  return redraw(host, [layers.map((l) => ({ ...l, panels: null })), Array.from(whole)], () =>
    layers.map((layer, i) => layerList(layer, shut.has(layer.id) ? false : i === 0 || host.childElementCount > 0)),
  );
}

function layerList(layer: Layer, open: boolean): HTMLElement {
  const sizes = new Map((layer.panels ?? []).map((p) => [p.label, p] as const));
  const shown = whole.has(layer.id) ? (layer.order ?? []) : (layer.order ?? []).slice(0, ROWS);
  const first = layer.order?.[0];
  return make(
    "details",
    { class: "cw-hang cw-item", "data-layer": layer.id, open },
    make("summary", {}, make("b", {}, layer.name), first ? ` ${String(layer.count)} panels, ${first.panel} first` : ""),
    layer.advice ? make("p", { class: "cw-advice" }, layer.advice) : null,
    make("div", { class: "cw-row" }, ...(layer.seams?.figures ?? []).map((id) => figurePlace(id, "small"))),
    make("div", { class: "cw-slips", "data-fill": "slips" }),
    make(
      "ol",
      { class: "cw-order" },
      ...shown.map((hang) => {
        const panel = sizes.get(hang.panel);
        return make(
          "li",
          { "data-panel": `${layer.id}:${hang.panel}` },
          make("span", { class: "cw-tick", "aria-hidden": "true" }),
          make("span", { class: "cw-nth" }, String(hang.n)),
          make("button", { type: "button", class: "cw-panel-name", "data-do": "light", "aria-label": `Panel ${hang.panel}: show it on the drawing` }, hang.panel),
          make("span", { class: "cw-set" }, hang.text, panel ? make("small", {}, ` ${panel.size}`) : null, panel?.opens ? make("small", {}, ` ${panel.opens}`) : null),
        );
      }),
    ),
    shown.length < (layer.order?.length ?? 0) ? action("whole-list", "Show the whole list", { "data-to": layer.id }) : null,
    layer.seams?.rows?.length
      ? make(
          "details",
          { class: "cw-fold" },
          make("summary", {}, "every seam, for the tape"),
          make("ul", { class: "cw-seams" }, ...layer.seams.rows.map((r) => make("li", {}, make("b", {}, r.seam), ` ${r.length}`))),
        )
      : null,
  );
}
