// The sheet as the engine hands it over, and the calls the engine offers.
// Types only: nothing here runs. Numbers arrive as text and are shown as text;
// no file of this page computes with them.

export type Severity = "stop" | "caution" | "note";

export interface Problem {
  at: string; // RFC 6901 pointer into the plan, "" for the whole of it
  severity: Severity;
  what: string;
  do: string;
}

/** How a length blank was understood. */
export interface Reading {
  at: string; // pointer of the blank
  nanometres: string;
  text: string; // in the notation shown
  other: string; // in the other notation
  written: string; // a bare number with its unit, else ""
}

export interface Working {
  rule: string;
  sum: string;
  source: string;
}

export interface Figure {
  id: string;
  block: string;
  label: string;
  value: string;
  unit: string;
  text: string;
  other: string;
  working: Working;
}

export interface Choice {
  on: string;
  title: string;
  taken: boolean;
  borders: Record<"AB" | "BC" | "CD" | "DA", string>;
  ends: string; // by how much the borders at the ends differ
  sides: string;
  refused: string;
}

export interface Mark {
  kind: string;
  label: string;
  layer: string;
  text: string;
  other: string;
  exact: string;
  hides: string;
}

export interface Wall {
  wall: string;
  from: string;
  to: string;
  title: string;
  length: string;
  marks: Mark[];
}

export interface Corner {
  corner: string;
  along: string;
  across: string;
  diagonal: string;
  text: string;
}

export interface Panel {
  label: string;
  column: number;
  row: number;
  size: string;
  order: number;
  cut: string; // where to cut it for the fixture, else ""
}

export interface Hang {
  n: number;
  panel: string;
  set: { edge: string; to: string }[];
  text: string;
}

export interface Layer {
  id: string;
  name: string;
  columns: { text: string; other: string }[];
  rows: { text: string; other: string }[];
  count: number;
  panels: Panel[];
  order: Hang[];
  seams: { seam: string; length: string }[];
  advice: string;
}

export interface Step {
  id: string;
  name: string;
  kind: string;
  figures: string[];
  buy: string;
  leftOver: string;
  notes: string[];
}

export interface SafetyNote {
  id: string;
  severity: Severity;
  words: string;
  source: string;
  jurisdiction: string;
  at: string;
  figures: string[];
}

export interface Drawing {
  id: string;
  layer: string;
  looking: "up" | "down";
  shows: string; // "hanging" or "marks"
  title: string;
  svg: string;
}

/** The whole answer. A list may be missing in an answer that is only a problem. */
export interface Sheet {
  ceilingwright: number;
  version: string;
  plan?: { id: string; title: string };
  problems?: Problem[] | null;
  readings?: Reading[] | null;
  figures?: Figure[] | null;
  choices?: Choice[] | null;
  walls?: Wall[] | null;
  corners?: Corner[] | null;
  layers?: Layer[] | null;
  steps?: Step[] | null;
  shopping?: { what: string; amount: string; detail: string }[] | null;
  safety?: SafetyNote[] | null;
  drawings?: Drawing[] | null;
}

/** What the engine registers as globalThis.ceilingwright. */
export interface Engine {
  compute(planJSON: string): string;
  parseLength(text: string, unit: string): { nanometres: string | null; problem: Problem | null };
  version: string;
}

/** What the carrier file sets as globalThis.ceilingwrightCarrier: base64 of
 *  gzip, of the engine and of the one-file page with its holes open. */
export interface Carrier {
  engine: string;
  page: string;
}

/** The Go glue, bundled in front of the page's script by the build. */
export interface GoGlue {
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}

declare global {
  // Set by the glue, the engine and the carrier file.
  var Go: (new () => GoGlue) | undefined;
  var ceilingwright: Engine | undefined;
  var ceilingwrightCarrier: Carrier | undefined;
}
