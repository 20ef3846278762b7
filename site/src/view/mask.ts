// The delivery of each layer: pressing the panels that are there, noting the
// others, and what follows for the order. And the pieces that are no panel of
// their own.

import type { Layer, Panel, Piece } from "../engine/contract";
import { offered } from "../generated/plan";
import { ensureEntry, entryPointer, plainLabel } from "../state/entries";
import { at, list, put, typedText, type Json, type JsonObject } from "../state/pointer";
import { answersTo, layerPointer, type Actions, type Desk } from "./desk";
import { action, every, make, redraw, region, setAttribute, setText } from "./dom";
import { say, saying } from "./say";

/** More panels than this are not drawn to press; only those that differ are listed. */
const PRESSED = 400;

const signs: Record<string, string> = { found: "✓", missing: "✕", damaged: "!", recut: "≈" };
type Stamp = (typeof offered.states)[number][0] | "measure";

/** What pressing a panel notes of it. */
let stamp: Stamp = "found";
/** Panels whose size is being noted. */
const measuring = new Set<string>();

function measuringName(plan: JsonObject, layer: string, label: string): string {
  return [typedText(plan["id"]), layer, plainLabel(label)].join(" ");
}

export function renderDelivery(plan: JsonObject, layers: Layer[]): void {
  const answers = answersTo(plan, layers);
  every(".cw-layer").forEach((item, i) => {
    const layer = answers[i];
    const pointer = `/mask/layers/${String(i)}`;
    const panels = layer?.panels ?? [];
    const delivery = layer?.delivery;
    const checked = delivery !== undefined && delivery.unchecked !== delivery.total;
    setAttribute(item.querySelector(".cw-delivery") as Element, "data-shows", checked ? "" : null);
    setText(region("delivery-head", item), checked ? delivery.text : "");
    redraw(region("check", item), [panels.map((p) => [p.label, p.row, p.supplier, p.state]), stamp], () => (panels.length > PRESSED ? byName() : tiles(panels)));
    renderNoted(region("noted", item), plan, pointer, panels);
    redraw(region("delivery", item), delivery, () => [
      ...saidAs(say("To ask the supplier for"), delivery?.ask ?? []),
      ...saidAs(say("What that changes"), delivery?.changed ?? []),
    ]);
    renderPieces(item, list(plan, `${pointer}/pieces`), layer?.pieces ?? []);
  });
}

function saidAs(title: string, lines: string[]): HTMLElement[] {
  return lines.length === 0 ? [] : [make("h3", {}, title), make("ul", { class: "cw-outcome" }, ...lines.map((l) => make("li", {}, l)))];
}

function tiles(panels: Panel[]): HTMLElement[] {
  if (panels.length === 0) return [];
  const rows = new Map<number, Panel[]>();
  for (const p of panels) rows.set(p.row, [...(rows.get(p.row) ?? []), p]);
  return [
    make(
      "p",
      { class: "cw-stamps", role: "group", "aria-label": say("What pressing a panel notes") },
      ...saying("Press the panels that are {states} or whose size is to be {noted}.", {
        states: offered.states.map(([state, words]) => stampButton(state, words)),
        noted: stampButton("measure", say("noted")),
      }),
    ),
    make("div", { class: "cw-tiles" }, ...Array.from(rows.values(), (row) => make("div", { class: "cw-tiles-row" }, ...row.map(tile)))),
    make("p", {}, action("all-found", say("All the others are found"))),
  ];
}

function stampButton(state: string, words: string): HTMLElement {
  return make("button", { type: "button", class: "cw-stamp", "data-do": "stamp", "data-to": state, "aria-pressed": String(state === stamp) }, words);
}

function stateOf(panel: Panel): string {
  return panel.state || "unchecked";
}

function tile(panel: Panel): HTMLElement {
  const state = stateOf(panel);
  const words = offered.states.find(([known]) => known === state)?.[1] ?? state;
  return make(
    "button",
    {
      type: "button",
      class: "cw-tile",
      "data-do": "stamp-panel",
      "data-to": panel.label,
      "data-state": state,
    },
    make("b", {}, panel.label),
    panel.supplier ? make("small", {}, panel.supplier) : null,
    make("span", { class: "cw-tile-sign", "aria-hidden": "true" }, signs[state] ?? ""),
    make("span", { class: "cw-hear" }, ` ${words}`),
  );
}

/** The way for layers of very many panels: by name. */
function byName(): HTMLElement[] {
  return [
    make(
      "p",
      { class: "cw-by-name" },
      ...saying("Panel {panel} is {state}: {add}.", {
        panel: make("input", { "data-note-panel": true, "aria-label": say("Panel to put on the list"), autocomplete: "off", spellcheck: "false" }),
        state: make("select", { "data-note-state": true, "aria-label": say("What was found of it") }, ...offered.states.map(([value, words]) => new Option(words, value, value === "missing", value === "missing"))),
        add: action("note-panel", say("put it on the list")),
      }),
    ),
    make("p", {}, action("all-found", say("All the others are found"))),
  ];
}

/** The panels that differ from the order, or whose size was noted, each with
 *  blanks of its own. */
function renderNoted(host: HTMLElement, plan: JsonObject, pointer: string, panels: Panel[]): void {
  const rows = list(plan, `${pointer}/panels`)
    .map((entry, i) => [`${pointer}/panels/${String(i)}`, field(entry, "panel"), entry] as const)
    .filter(([, label, entry]) => isNoted(entry) || (measuring.size > 0 && measuring.has(measuringName(plan, pointer, label))));
  const known = new Map(panels.map((p) => [p.label, p] as const));
  redraw(host, rows.map(([place, label]) => [place, label, known.get(plainLabel(label))?.supplier]), () =>
    rows.map(([place, label]) => {
      const supplier = known.get(plainLabel(label))?.supplier;
      return make(
        "li",
        { "data-noted": label },
        ...saying("{panel} is {state}, as delivered {length} by {width}. {remove}", {
          panel: [make("b", {}, label), ...(supplier ? [make("small", {}, ` ${supplier}`)] : [])],
          state: make("select", { "data-at": `${place}/state`, "data-unset": "unchecked", "aria-label": say("What was found of panel {panel}", { panel: label }) }, ...offered.states.map(([value, words]) => new Option(words, value))),
          length: sizeBlank(`${place}/length`, say("Length of panel {panel}, as delivered", { panel: label })),
          width: sizeBlank(`${place}/width`, say("Width of panel {panel}, as delivered", { panel: label })),
          remove: action("unnote", say("take off the list"), { class: "cw-off", "data-to": place }),
        }),
      );
    }),
  );
}

/** What an entry says, without the way of a pointer: there may be thousands. */
function field(entry: Json, name: string): string {
  return entry !== null && typeof entry === "object" && !Array.isArray(entry) ? typedText(entry[name]) : "";
}

function isNoted(entry: Json): boolean {
  return !["", "found", "unchecked"].includes(field(entry, "state")) || field(entry, "length") !== "" || field(entry, "width") !== "";
}

function sizeBlank(pointer: string, name: string): HTMLElement {
  return make("input", { "data-at": pointer, "data-kind": "length", inputmode: "text", autocomplete: "off", spellcheck: "false", "aria-label": name });
}

/** What is said of each piece stands under its sentence: found by its name, or
 *  by its place where every piece of the plan has an answer. */
function renderPieces(item: HTMLElement, typed: Json[], pieces: Piece[]): void {
  every("[data-fill=piece]", item).forEach((place, i) => {
    const name = typedText(at(typed[i] ?? null, "/name"));
    const piece = pieces.length === typed.length ? pieces[i] : pieces.find((p) => p.name === name);
    redraw(place, piece, () =>
      piece
        ? [
            piece.text ? make("p", {}, piece.text) : null,
            (piece.cuts ?? []).length > 0 ? make("ul", { class: "cw-cuts" }, ...piece.cuts.map((c) => make("li", {}, make("b", {}, c.panel), ` ${c.text}`))) : null,
          ]
        : [],
    );
  });
}

/** Notes a state of a panel; noting the same once more takes it back. */
function note(plan: JsonObject, layer: string, label: string, state: string): void {
  const place = ensureEntry(plan, `${layer}/panels`, "panel", label);
  put(plan, `${place}/state`, typedText(at(plan, `${place}/state`)) === state ? "unchecked" : state);
}

export function deliveryActions(desk: Desk, layers: () => Layer[]): Actions {
  const panelsOf = (layer: string): Panel[] => {
    const i = Number(layer.slice(layer.lastIndexOf("/") + 1));
    return answersTo(desk.plan(), layers())[i]?.panels ?? [];
  };
  return {
    stamp: (b) => {
      stamp = (b.dataset["to"] ?? "found") as Stamp;
      desk.redraw();
    },
    "stamp-panel": (b) => {
      const layer = layerPointer(b);
      const label = b.dataset["to"] ?? "";
      if (stamp !== "measure") {
        desk.change((plan) => note(plan, layer, label, stamp));
        return;
      }
      measuring.add(measuringName(desk.plan(), layer, label));
      desk.change((plan) => void ensureEntry(plan, `${layer}/panels`, "panel", label));
      const place = entryPointer(desk.plan(), `${layer}/panels`, "panel", label);
      document.querySelector<HTMLElement>(`[data-at="${CSS.escape(`${place}/length`)}"]`)?.focus();
    },
    "all-found": (b) => {
      const layer = layerPointer(b);
      desk.change((plan) => allFound(plan, `${layer}/panels`, panelsOf(layer)));
    },
    "note-panel": (b) => {
      const row = b.closest(".cw-by-name");
      const blank = row?.querySelector<HTMLInputElement>("[data-note-panel]");
      const label = plainLabel(blank?.value ?? "");
      if (!blank || label === "") {
        blank?.focus();
        return;
      }
      const state = row?.querySelector<HTMLSelectElement>("[data-note-state]")?.value ?? "missing";
      desk.change((plan) => {
        const place = ensureEntry(plan, `${layerPointer(b)}/panels`, "panel", label);
        put(plan, `${place}/state`, state);
      });
      blank.value = "";
      blank.focus();
    },
    unnote: (b) => {
      const place = b.dataset["to"] ?? "";
      const entry = at(desk.plan(), place);
      measuring.delete(measuringName(desk.plan(), layerPointer(b), field(entry ?? null, "panel")));
      const pointer = place.slice(0, place.lastIndexOf("/"));
      desk.change((plan) => put(plan, pointer, list(plan, pointer).filter((e) => e !== entry)));
    },
  };
}

/** Every panel nothing is noted of becomes found, in one pass. */
function allFound(plan: JsonObject, pointer: string, panels: Panel[]): void {
  const entries = list(plan, pointer);
  const there = new Map(entries.map((e) => [plainLabel(typedText(at(e, "/panel"))), e] as const));
  for (const entry of entries) {
    if (["", "unchecked"].includes(typedText(at(entry, "/state"))) && entry !== null && typeof entry === "object" && !Array.isArray(entry)) entry["state"] = "found";
  }
  put(plan, pointer, [...entries, ...panels.filter((p) => !there.has(p.label)).map((p) => ({ panel: p.label, state: "found" }))]);
}
