// Hanging, layer by layer: which panel when, what it is set to, from which
// place of the platform; what to do about a panel that is up crooked.

import type { Figure, Hang, Layer, Panel } from "../engine/contract";
import { list, put, typedText, type JsonObject } from "../state/pointer";
import { answersTo, layerPointer, type Actions, type Desk } from "./desk";
import { action, make, redraw, region, setAttribute, unbroken } from "./dom";
import { allWorkingsOpen, figurePlace } from "./figures";
import { renderGaps } from "./gaps";
import { onSheet } from "./pages";
import { clashAt, type Stations } from "./platform";
import { renderKey, renderRegister } from "./register";
import { say } from "./say";

/** Rows shown at once; a very long list is finished on asking and for print. */
const ROWS = 400;
/** From here on rows out of sight are left undrawn by the browser. */
const LONG = 60;
const whole = new Set<string>();
/** Layers whose list tells every distance; the cards and the ladder always do. */
const withMeasures = new Set<string>();

export function showWholeList(layer: string): void {
  whole.add(layer);
}

export function renderHanging(plan: JsonObject, layers: Layer[], figures: Map<string, Figure>, stations: Stations): void {
  const answers = answersTo(plan, layers);
  const begun = onSheet("details.cw-hang[data-layer]").length > 0;
  onSheet<HTMLDetailsElement>("details.cw-hang").forEach((item, i) => {
    const layer = answers[i];
    item.hidden = layer === undefined;
    // The first layer is open from the start, and so is one that is added.
    if (item.dataset["layer"] === undefined) item.open = i === 0 || begun;
    setAttribute(item, "data-layer", layer?.id ?? "");
    if (!layer) return;
    const base = `/mask/layers/${String(i)}`;
    const mine = figuresOf(layer, figures);
    redraw(region("hang-head", item), [layer.name, layer.count, layer.order[0]?.panel], () => head(layer));
    const aside = mine.filter((id) => isBuildUp(id) || isGap(id));
    const tape = mine.filter((id) => !aside.includes(id) && !isRegister(id));
    redraw(region("hang-notes", item), [layer.advice, layer.flags, oneSize(layer)], () => notes(layer));
    redraw(region("tape", item), tape, () => tape.map((id) => figurePlace(id, "small")));
    redraw(region("how-true", item), aside, () => (aside.length > 0 ? [make("h3", {}, say("How true it will come out")), make("div", { class: "cw-row" }, ...aside.map((id) => figurePlace(id, "small")))] : []));
    redraw(region("route", item), [layer.route, layer.panels.some((p) => p.supplier)], () => route(layer));
    renderOrder(region("order", item), layer, stations.filter((s) => s.layer === layer.id));
    redraw(region("order-more", item), shownRows(layer).length, () => (shownRows(layer).length < layer.order.length ? [action("whole-list", say("Show the whole list"), { "data-to": layer.id })] : []));
    setAttribute(item.querySelector("[data-rel=start]") as Element, "placeholder", layer.order[0]?.panel ?? "");
    for (const does of ["ladder", "print-cards", "measures"]) {
      const button = item.querySelector(`[data-do=${does}]`) as Element;
      setAttribute(button, "aria-label", `${button.textContent ?? ""}: ${layer.name}`);
    }
    const measures = item.querySelector<HTMLElement>("[data-do=measures]") as HTMLElement;
    measures.hidden = layer.order.every((h) => (h.measures ?? []).length === 0);
    setAttribute(measures, "data-to", layer.id);
    setAttribute(measures, "aria-pressed", String(withMeasures.has(layer.id)));
    renderRestart(item, layer);
    renderGaps(item, plan, base, layer.gaps ?? []);
    renderKey(item, layer.key, i < answers.length - 1);
    renderRegister(item, layer.register, mine.filter(isRegister), i > 0);
    redraw(region("seams", item), [layer.seams, layer.bridges], () => seams(layer));
  });
}

/** Figures of one layer carry its id in front; its panels stand with the mask. */
function figuresOf(layer: Layer, figures: Map<string, Figure>): string[] {
  return Array.from(figures.keys()).filter((id) => id.startsWith(`${layer.id}.`) && id !== `${layer.id}.panels` && id !== `${layer.id}.found`);
}

/** Run-out and its setting at the seams, along each side of the layer. */
function isBuildUp(id: string): boolean {
  return /\.(length|width)$/.test(id) && !id.endsWith(".seams.length") && !isGap(id);
}

function isGap(id: string): boolean {
  return id.includes(".gap.");
}

function isRegister(id: string): boolean {
  return /\.(shift|turn)$/.test(id);
}

function head(layer: Layer): (HTMLElement | string)[] {
  const first = layer.order[0];
  return [make("b", {}, layer.name), first ? ` ${say("{n|panel|panels}, {panel} first", { n: layer.count, panel: first.panel })}` : ""];
}

function oneSize(layer: Layer): string {
  return new Set(layer.panels.map((p) => p.size)).size === 1 ? (layer.panels[0]?.size ?? "") : "";
}

function notes(layer: Layer): (HTMLElement | null)[] {
  const size = oneSize(layer);
  return [
    size || layer.advice ? make("p", { class: "cw-advice" }, size ? say("Every panel is {size}.", { size }) : null, ` ${layer.advice}`) : null,
    ...(layer.flags ?? []).map((f) => make("p", { class: "cw-flag" }, f)),
  ];
}

/** The way of the platform, said once, and how the list is read. */
function route(layer: Layer): (HTMLElement | null)[] {
  const labelled = layer.panels.some((p) => p.supplier);
  return [
    layer.route ? make("p", { class: "cw-route" }, layer.route) : null,
    make("p", { class: "cw-legend" }, labelled ? say("Each panel with the supplier’s label, and what it is set to towards each wall.") : say("Each panel, and what it is set to towards each wall.")),
  ];
}

function shownRows(layer: Layer): Hang[] {
  return whole.has(layer.id) ? layer.order : layer.order.slice(0, ROWS);
}

function renderOrder(host: HTMLElement, layer: Layer, stations: Stations): void {
  const shown = shownRows(layer);
  setAttribute(host, "data-long", shown.length > LONG ? "" : null);
  redraw(host, [layer.id, shown, layer.panels, layer.stations, stations, withMeasures.has(layer.id)], () => {
    const panels = new Map(layer.panels.map((p) => [p.label, p] as const));
    const places = new Map((layer.stations ?? []).map((s) => [s.n, s.text] as const));
    const sameSize = oneSize(layer) !== "";
    const told = new Set<number>();
    return shown.map((hang, i) => {
      const moved = hang.station > 0 && hang.station !== shown[i - 1]?.station;
      const place = told.has(hang.station) ? "" : (places.get(hang.station) ?? "");
      if (moved) told.add(hang.station);
      return row(layer, hang, panels.get(hang.panel), sameSize, moved ? station(hang.station, place, clashAt(stations, layer.id, hang.station)) : []);
    });
  });
}

/** Where the platform goes next, said once of each of its places, and what stands in
 *  its way there. */
function station(n: number, place: string, clash: string): HTMLElement[] {
  const head = make("p", { class: "cw-station" }, make("b", {}, say("Platform to position {n}", { n })), place ? `: ${place}` : "");
  return clash ? [head, make("p", { class: "cw-clash" }, make("b", {}, say("In the way:")), ` ${clash}`)] : [head];
}

/** A panel in one line: its number, its name, the supplier's label and its size where
 *  not all are of one, and what its edges are set to. With measures it is told in full. */
function row(layer: Layer, hang: Hang, panel: Panel | undefined, sameSize: boolean, station: HTMLElement[]): HTMLElement {
  const full = withMeasures.has(layer.id);
  const size = panel && !sameSize ? panel.measured || panel.size : "";
  return make(
    "li",
    { "data-panel": `${layer.id}:${hang.panel}`, "data-up": hang.up },
    ...station,
    make("button", { type: "button", class: "cw-tick", "data-do": "hung", "data-to": hang.panel, "aria-pressed": String(Boolean(hang.up)), "aria-label": say("Panel {panel} is up", { panel: hang.panel }) }),
    make("span", { class: "cw-nth" }, String(hang.n)),
    make("button", { type: "button", class: "cw-panel-name", "data-do": "light", "data-to": hang.panel, "aria-label": say("Panel {panel}: show it on the drawing", { panel: hang.panel }) }, hang.panel),
    make(
      "span",
      { class: "cw-set" },
      ...[panel?.supplier, size].map((sign) => (sign ? make("small", {}, `${sign} `) : null)),
      full ? sentence(hang.text, hang.panel) : hang.brief,
      !full && hang.mind ? make("small", {}, ` ${hang.mind}`) : null,
      full && (hang.measures ?? []).length > 0 ? make("span", { class: "cw-measures" }, ...hang.measures.map(measureText)) : null,
      full ? measureSums(hang) : null,
      panel?.cut ? make("em", {}, ` ${panel.cut}`) : null,
    ),
  );
}

export function measureText(m: { what: string; text: string }): HTMLElement {
  return make("span", { class: "cw-measure" }, `${m.what} `, make("b", {}, m.text));
}

/** How the measures of a step come about. */
function measureSums(hang: Hang): HTMLElement | null {
  const worked = (hang.measures ?? []).filter((m) => m.sum);
  if (worked.length === 0) return null;
  return make(
    "details",
    { class: "cw-why cw-sums", open: allWorkingsOpen() },
    make("summary", { "aria-label": say("how the measures of {panel} are worked out", { panel: hang.panel }) }, say("working")),
    ...worked.map((m) => make("p", { class: "cw-sum" }, unbroken(m.sum))),
  );
}

/** The engine's sentence names the panel, which stands in a column of its own. */
export function sentence(text: string, panel: string): string {
  return text.startsWith(`${panel}: `) ? text.slice(panel.length + 2) : text;
}

function renderRestart(item: HTMLElement, layer: Layer): void {
  const down = layer.restart?.down ?? [];
  setAttribute(item.querySelector(".cw-crooked") as Element, "data-shows", layer.restart?.text ? "" : null);
  redraw(region("restart", item), layer.restart, () => [
    layer.restart?.text ? make("p", {}, layer.restart.text) : null,
    down.length > 0 ? make("p", {}, action("take-down", say("{panels} {n?is|are} down again", { panels: down.join(", "), n: down.length }))) : null,
  ]);
}

function seams(layer: Layer): (HTMLElement | null)[] {
  const bridges = layer.bridges ?? [];
  return [
    make("ul", { class: "cw-seams" }, ...(layer.seams ?? []).map((r) => make("li", {}, make("b", {}, r.seam), ` ${r.length}`))),
    bridges.some((b) => b.text) ? make("ul", { class: "cw-outcome" }, ...bridges.filter((b) => b.text).map((b) => make("li", {}, b.text))) : null,
  ];
}

export function hangingActions(desk: Desk, layers: () => Layer[]): Actions {
  return {
    "whole-list": (b) => {
      showWholeList(b.dataset["to"] ?? "");
      desk.redraw();
    },
    measures: (b) => {
      const layer = b.dataset["to"] ?? "";
      if (!withMeasures.delete(layer)) withMeasures.add(layer);
      desk.redraw();
    },
    hung: (b) => {
      const pointer = `${layerPointer(b)}/up`;
      const label = b.dataset["to"] ?? "";
      const up = list(desk.plan(), pointer);
      const isUp = up.some((l) => typedText(l) === label);
      desk.change((plan) => put(plan, pointer, isUp ? up.filter((l) => typedText(l) !== label) : [...up, label]));
    },
    // What had to come down is down: it is hung anew, and nothing is crooked.
    "take-down": (b) => {
      const base = layerPointer(b);
      const layer = answersTo(desk.plan(), layers())[Number(base.slice(base.lastIndexOf("/") + 1))];
      const down = new Set(layer?.restart?.down ?? []);
      desk.change((plan) => {
        put(plan, `${base}/up`, list(plan, `${base}/up`).filter((l) => !down.has(typedText(l))));
        put(plan, `${base}/crooked`, "");
      });
    },
  };
}
