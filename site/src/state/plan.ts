// The plan a person works on: where it starts, and what its lists grow by.
// The plan stays the loose document it is on paper; the engine judges it.

import { at, list, typedText, type Json, type JsonObject } from "./pointer";
import exampleJSON from "../../example.plan.json";

export type Plan = JsonObject;

const EXAMPLE_ID = "example";

export function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(6));
  return Array.from(bytes, (b) => b.toString(16).padStart(2, "0")).join("");
}

function copy<T extends Json>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T;
}

export function examplePlan(): Plan {
  return copy(exampleJSON as unknown as Plan);
}

export function isExample(plan: Plan): boolean {
  return plan["id"] === EXAMPLE_ID;
}

/** An empty sheet: every blank there and none filled, except what every job
 *  starts from and the person can see and change. Notation and country are
 *  kept from the sheet before, since the same hands fill in the next one. */
export function emptyPlan(before?: Plan): Plan {
  const units = before ? at(before, "/units") : undefined;
  const rules = before ? typedText(at(before, "/place/rules")) : "";
  return {
    ceilingwright: 1,
    id: freshId(),
    title: "",
    units: copy(
      units ?? { show: "feet-inches", bare: "in", inchMark: "1/16 in", metricMark: "1 mm", gallon: "US" },
    ),
    place: { rules: rules || "US", built: "", surface: "smooth", leadTest: "none", pullTest: "none" },
    room: {
      form: "rectangle",
      length: "",
      width: "",
      height: "",
      diagonalAC: "",
      diagonalBD: "",
      tape: { deviation: "", readTo: "" },
      readings: [],
      points: [],
      walls: [],
      fixture: { at: "none", shape: "round", across: "", deep: "", fromDA: "", fromAB: "", cornerOne: "", fromOne: "", cornerTwo: "", fromTwo: "", side: "", axisDA: "", axisAB: "" },
      obstructions: [],
    },
    mask: { length: "", width: "", layers: [newLayer([])] },
    setting: { on: "room", pointDA: "", pointAB: "", square: "room", turned: "no", leastBorder: "", wantEnds: "", wantSides: "", line: "tape", tapeWidth: "" },
    seams: { cover: "seams", rollLength: "", waste: "10", tapeWidth: "", pieceLength: "" },
    finish: { steps: [] },
    air: { limit: "", limitUnit: "mg/m3", opened: "", shut: "", mixing: "" },
    access: { by: "platform", reachBy: "", base: "", rails: "yes", deckGap: "", deckLength: "", deckWidth: "", armReach: "", overlap: "", turn: "yes" },
  };
}

function unused(prefix: string, taken: Json[]): string {
  const ids = new Set(taken.map((entry) => typedText(at(entry, "/id"))));
  let n = 1;
  while (ids.has(prefix + String(n))) n++;
  return prefix + String(n);
}

const ordinals = ["First", "Second", "Third", "Fourth", "Fifth", "Sixth"];

export function newLayer(layers: Json[]): JsonObject {
  const word = ordinals[layers.length];
  return {
    id: unused("L", layers),
    name: word ? `${word} layer` : "Another layer",
    split: "count",
    columns: "",
    rows: "",
    columnSizes: [],
    rowSizes: [],
    greatestLength: "",
    greatestWidth: "",
    gap: "0",
    panelTolerance: "",
    open: "",
    labels: "",
    panels: [],
    pieces: [],
    start: "",
    up: [],
    crooked: "",
    gaps: [],
    key: "",
    register: { tolerance: "", marks: [] },
  };
}

export function newCan(): JsonObject {
  return { size: "", unit: "gal", price: "" };
}

export function newPart(): JsonObject {
  return { name: "", amount: "", unit: "floz" };
}

const kindNames: Record<string, string> = {
  protect: "Covers and paper",
  base: "Base coat",
  "edge-seal": "Edge seal",
  coat: "Coat",
  "clear-seal": "Clear seal",
  underpaint: "Underpaint",
  size: "Size",
  leaf: "Leaf",
  glaze: "Glaze",
  "clear-coat": "Clear coat",
  peel: "Peel the mask",
};

/** A step of this kind to start from: the worked example's figures where it
 *  has such a step, so that a new line is never all blanks. */
export function newStep(kind: string, plan: Plan): JsonObject {
  const steps = list(plan, "/finish/steps");
  const model = list(examplePlan(), "/finish/steps").find((s) => typedText(at(s, "/kind")) === kind);
  const step = copy((model ?? bareStep(kind)) as JsonObject);
  step["id"] = unused(kind, steps);
  step["name"] = kindNames[kind] ?? "Step";
  const layers = list(plan, "/mask/layers").map((l) => typedText(at(l, "/id")));
  if (typedText(step["layer"]) !== "" && !layers.includes(typedText(step["layer"]))) step["layer"] = layers[0] ?? "";
  return step;
}

function bareStep(kind: string): JsonObject {
  return {
    id: "",
    kind,
    name: "",
    area: "surface",
    layer: "",
    share: "100",
    typedArea: "",
    typedUnit: "ft2",
    edgeLength: "",
    brushWidth: "",
    coats: "1",
    by: "spread",
    spread: "",
    spreadUnit: "ft2/gal",
    film: "",
    filmUnit: "mil",
    loss: "10",
    cans: [],
    voc: "",
    vocUnit: "g/L",
    binder: "water",
    dryHours: "",
    openHours: "",
    mix: [],
    leaf: null,
  };
}

/** The leaf part of a step, for one that is turned into leaf. */
export function newLeaf(): JsonObject {
  return { metal: "imitation", length: "", width: "", lap: "", cover: "100", waste: "10", perBook: "25", booksPerPack: "20" };
}

/** What came in is a plan, or why it is not one. Newer versions and finer
 *  points are the engine's to judge; this only keeps other files out. */
export function readPlan(text: string): { plan: Plan } | { refused: string } {
  let value: Json;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, "")) as Json;
  } catch {
    const begun = /^\s*\{[\s\S]*"ceilingwright"/.test(text);
    return {
      refused: begun
        ? "This plan is cut off or damaged: its end does not fit its beginning. Save or send it again from where it came from."
        : "This is not a plan of this sheet. A plan is saved here under “Save as a file” and ends in .plan.json.",
    };
  }
  if (value === null || typeof value !== "object" || Array.isArray(value) || !Object.hasOwn(value, "ceilingwright")) {
    return { refused: "This file belongs to another program: it does not say that it is a plan of this sheet." };
  }
  const version = value["ceilingwright"];
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return { refused: "This plan does not say which version it is, so it cannot be read safely." };
  }
  if (version > 1) {
    return { refused: `This plan was saved by a newer version of this sheet (plan version ${String(version)}). Open it with the newer sheet.` };
  }
  if (typeof value["id"] !== "string" || value["id"] === "") value["id"] = freshId();
  return { plan: value };
}

/** The plan as a file's text. */
export function planText(plan: Plan): string {
  return JSON.stringify(plan, null, 1) + "\n";
}

/** A file name from the job's title: letters and digits of any script. */
export function fileName(plan: Plan, ending: string): string {
  const words = typedText(plan["title"]).normalize("NFC").toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return (words.join("-").slice(0, 60) || "ceiling") + ending;
}
