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
  const show = typedText(units ? at(units, "/show") : undefined);
  return {
    ceilingwright: 1,
    id: freshId(),
    title: "",
    units: copy(
      units ?? { show: "feet-inches", bare: "in", inchMark: "1/16 in", metricMark: "1 mm", gallon: "US" },
    ),
    place: { rules: rules || "US", built: "", surface: "", use: "", leadTest: "none", leadFirm: "", leadPlan: "", pullTest: "none", pullOn: "", pullAt: "", asbestosTest: "none", detectors: "", sprinklers: "", isolated: "", flames: "", airHandling: "", below: "", drop: "", dropDepth: "", fixings: "", floorLoad: "", floorLoadUnit: show === "metric" ? "kg/m2" : "lb/ft2" },
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
      furniture: [],
    },
    mask: { length: "", width: "", layers: [newLayer([])] },
    setting: { on: "room", pointDA: "", pointAB: "", square: "room", turned: "no", leastBorder: "", wantEnds: "", wantSides: "", line: "tape", tapeWidth: "" },
    seams: { cover: "seams", rollLength: "", waste: "10", tapeWidth: "", pieceLength: "" },
    finish: { surfaces: [], kit: [], climate: { air: "", surface: "", humidity: "", unit: show === "metric" ? "C" : "F" }, steps: [] },
    days: {
      start: "",
      from: "08:00",
      to: "16:30",
      pause: "30",
      weekdays: ["mon", "tue", "wed", "thu", "fri"],
      off: [],
      people: "2",
      clockChanges: [],
      freshPaint: { doneOn: "", filmAge: "" },
      maskDays: "",
      rates: { protect: "", survey: "", mark: "", hang: "", bridge: "", peel: "", touchUp: "", clear: "", move: "" },
    },
    price: {
      currency: "",
      digits: "2",
      rate: "",
      overhead: "",
      contingency: "",
      profit: "markup",
      profitPercent: "",
      tax: "",
      taxOn: "total",
      roundTo: "",
      minimum: "",
      holdsDays: "",
      deposit: "",
      stages: [],
      hirePerDay: "",
      travelPerDay: "",
      travelDays: "",
      tapePerRoll: "",
      rough: { length: "", width: "", perArea: "", perAreaUnit: show === "metric" ? "m2" : "ft2", bands: [], range: "" },
    },
    air: { limit: "", limitUnit: "mg/m3", shortTerm: "", opened: "", shut: "", fan: "", fanUnit: show === "metric" ? "m3/h" : "cfm", mixing: "", nights: "shut" },
    access: { by: "platform", reachBy: "", base: "", rails: "yes", deckGap: "", deckLength: "", deckWidth: "", armReach: "", overlap: "", turn: "yes", ...newPlatform(show === "metric" ? "kg" : "lb") },
  };
}

/** What else there is to know of a platform, none of it said. */
function newPlatform(massUnit: string): JsonObject {
  return {
    kind: "",
    reach: "",
    alsoBy: "",
    ladderHeight: "",
    railHeight: "",
    railGap: "",
    footLength: "",
    footWidth: "",
    wheels: "",
    rides: "",
    toeBoards: "",
    wayUp: "",
    tied: "",
    baseChecked: "",
    massUnit,
    rated: "",
    load: "",
    mass: "",
    panel: "",
    onDeck: "",
    minutes: "",
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
    price: "",
    priceFor: "set",
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

/** The unit of small amounts in the plan's own notation. */
function small(plan: Plan, metric: string, other: string): string {
  return typedText(at(plan, "/units/show")) === "metric" ? metric : other;
}

export function newCan(plan: Plan): JsonObject {
  return { size: "", unit: small(plan, "L", "gal"), price: "" };
}

export function newPart(plan: Plan): JsonObject {
  return { name: "", amount: "", unit: small(plan, "mL", "floz"), density: "", tint: "no" };
}

export function newSurface(plan: Plan): JsonObject {
  const surfaces = list(plan, "/finish/surfaces");
  return { id: unused("F", surfaces), name: surfaces.length > 0 ? "Walls" : at(plan, "/place/rules") === "US" ? "Crown" : "Cornice", kind: surfaces.length === 0 ? "cornice" : "walls", run: "", girth: "", corners: "4", height: "", openings: [] };
}

export function newMeasure(plan: Plan): JsonObject {
  return { size: "", unit: small(plan, "mL", "tsp") };
}

/** A step of this kind with nothing filled in, for a sheet whose engine has not
 *  started: the engine knows the values to begin with. */
export function bareStep(kind: string, plan: Plan): JsonObject {
  const step: JsonObject = { id: unused(kind, list(plan, "/finish/steps")), kind, name: "", area: "surface", share: "100", coats: "1", by: "spread", cans: [], mix: [] };
  return kind === "leaf" ? { ...step, leaf: newLeaf() } : step;
}

/** The leaf part of a step, for one that is turned into leaf. */
export function newLeaf(): JsonObject {
  return { metal: "imitation", length: "", width: "", lap: "", cover: "100", waste: "10", perBook: "25", booksPerPack: "20", lay: "field", bandWidth: "", bandRun: "", bandCorners: "", bandEnds: "open", spill: "", openingsEdge: "", pricePerBook: "", pricePerPack: "", gramsPer1000: "" };
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

/** A file name from the job's title: letters and digits of any script. A client's
 *  copy has a name of its own. */
export function fileName(plan: Plan, ending: string): string {
  const words = typedText(plan["title"]).normalize("NFC").toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  const whose = typedText(at(plan, "/quote/date")) === "" ? "" : "-client";
  return (words.join("-").slice(0, 60) || "ceiling") + whose + ending;
}
