// The sheet as the engine hands it over, and the calls the engine offers.
// Types only: nothing here runs. Numbers arrive as text and are shown as text;
// no file of this page computes with them.

export type Severity = "stop" | "caution" | "note";

export interface Problem {
  at: string; // RFC 6901 pointer into the plan, "" for the whole of it
  severity: Severity;
  what: string;
  do: string;
  answers?: string[]; // what may be meant, each as it is to be written into the blank
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

export interface Survey {
  form: string;
  proved: "" | "yes" | "no" | "assumed";
  text: string;
  corners: { corner: string; angle: string; out: string; text: string }[];
  lines: RoomLine[];
  closing: string;
  again: string[]; // what to measure again
}

export interface RoomLine {
  at: string; // pointer of the reading
  line: string;
  read: string;
  adjusted: string;
  off: string;
  flag: string; // "check" on a reading to take again
}

export interface RoomObject {
  at: string;
  name: string;
  kind: string;
  text: string;
  panels: { layer: string; panel: string; text: string }[];
}

export interface Choice {
  on: string;
  square: string;
  turned: string;
  title: string;
  taken: boolean;
  recommended: boolean;
  reason: string;
  borders: Record<"AB" | "BC" | "CD" | "DA", string>;
  places: { corner: string; wall: string; text: string }[];
  tapers: { wall: string; text: string }[];
  ends: string; // by how much the borders at the ends differ
  sides: string;
  refused: string;
}

export interface BoxPlace {
  text: string;
  line: string; // what is struck or taped round it
  corners: { corner: string; text: string }[];
  lines: { name: string; kind: string; layer: string; text: string }[];
}

export interface Mark {
  kind: string;
  label: string;
  layer: string;
  text: string;
  other: string;
  exact: string;
  hides: string;
  join: string; // where the other end of this line is
  sum: string; // how it comes about, "" where it was measured
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
  supplier: string; // its label on the delivery
  state: string;
  measured: string;
  piece: string; // the piece it belongs to
}

export interface Hang {
  n: number;
  panel: string;
  set: { edge: string; to: string }[];
  text: string;
  station: number; // 0 where none is known
  measures: { what: string; text: string; sum: string }[];
  view: string; // viewBox round the panel in the layer's drawing
  up: boolean;
}

export interface Delivery {
  text: string;
  total: number;
  found: number;
  missing: number;
  damaged: number;
  recut: number;
  measured: number;
  unchecked: number;
  ask: string[];
  changed: string[];
}

export interface Piece {
  name: string;
  kind: string; // "span", "joined" or "loose"
  text: string;
  cuts: { panel: string; text: string }[];
}

export interface Station {
  n: number;
  text: string;
  panels: string[];
}

export interface Gap {
  seam: string;
  at: string; // pointer of the measured gap, else ""
  planned: string;
  measured: string;
  set: string;
  text: string;
  offers: string[]; // likely gaps to choose from
}

export interface Key {
  panel: string;
  chosen: string; // "tool" or "user"
  reason: string;
  lies: string[]; // panels of the next layer that lie on it
  touches: string[];
  down: string;
  masked: string;
}

export interface Registered {
  text: string;
  verdict: "" | "pass" | "fail" | "unsure";
  shift: string;
  turn: string;
  marks: { name: string; text: string }[];
  remedy: string[];
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
  delivery: Delivery;
  pieces: Piece[];
  stations: Station[];
  route: string;
  restart: { text: string; down: string[] };
  gaps: Gap[];
  bridges: { seam: string; pieces: number; length: string; text: string }[];
  flags: string[];
  key: Key;
  register: Registered;
}

export interface Step {
  id: string;
  name: string;
  kind: string;
  figures: string[];
  buy: string;
  leftOver: string;
  notes: string[];
  material: string; // id of the step whose product it is bought with
  lean: string;
  likely: string;
  rich: string;
  label: string[]; // lines for the pot
  mixLines: MixLine[]; // the mix to make
  sampleLines: MixLine[]; // the mix of a sample board
  sections: Section[];
}

export interface MixLine {
  name: string;
  exact: string;
  measured: string; // as the kit at hand measures it
  error: string;
}

export interface Section {
  n: number;
  panels: string[];
  area: string;
  hours: string;
  sizeAt: string;
  layFrom: string;
  layTo: string;
  text: string;
}

export interface Climate {
  dew: string;
  margin: string;
  verdict: "" | "go" | "stop" | "unknown";
  text: string;
  drying: string;
}

export interface Task {
  id: string;
  name: string;
  at: string;
  kind: "work" | "dry" | "wait";
  day: string;
  from: string;
  to: string;
  start: string; // 2027-03-01T08:00
  end: string;
  labour: string;
  reason: string;
  sum: string; // how its end comes about
  critical: boolean;
}

export interface Days {
  text: string;
  start: string;
  finish: string;
  tasks: Task[];
  waits: string[];
  saves: string[];
  chart: string; // SVG
}

export interface Total {
  what: string;
  sum: string;
  text: string;
  working: string; // what it is made of, "" where that is not for the reader
}

export interface Price {
  text: string;
  quoted: string; // on a client's copy: the day of the quote and how long it holds
  lines: { group: string; what: string; amount: string; rate: string; sum: string; working: string }[];
  totals: Total[];
  client: Total[];
  stages: Total[];
  perArea: string;
  range: string;
  whatIf: { what: string; sum: string; change: string; text: string }[];
}

export interface FinishRecord {
  text: string;
  lines: { step: string; where: string; area: string; colour: string; mix: string; batch: string; leaf: string; date: string }[];
}

export interface SafetyNote {
  id: string;
  also: string[]; // the rules told together with it
  severity: Severity;
  words: string; // what to do first, then why
  decides: string; // who has the last word
  source: string;
  jurisdiction: string;
  at: string;
  figures: string[];
  working: string; // the numbers of this job that the rule went by
  bites: string[]; // "room", "hanging", "finish", "days": where it has to be seen too
  onDemand: boolean; // it need not be seen before it is asked for
}

/** What nobody has said yet and safety turns on. */
export interface Question {
  at: string;
  words: string;
  rules: string[];
}

export interface Air {
  text: string;
  curve: string; // SVG
}

/** What the work is done from. */
export interface Platform {
  kind: string; // "floor", "hop-up", "podium", "tower" or "scaffold"; "" where nothing is known
  text: string; // what to ask for
  why: string;
  refused: string[]; // why not a ladder, and the like
  hire: string; // the days it is needed
  stations: { layer: string; n: number; text: string; clash: boolean }[]; // those of a layer that there is something to say of
  checks: { what: string; have: string; need: string; verdict: "ok" | "short" | "unknown"; text: string }[];
  overhead: { day: string; text: string; over: boolean }[]; // hours overhead of one person, day by day
}

/** The highest VOC of the category of a step's product, and what it holds. */
export interface VOCLine {
  step: string;
  at: string;
  category: string;
  rule: string; // whose limit, and how it counts
  holds: string;
  limit: string;
  verdict: "within" | "above" | "unknown";
  text: string;
  source: string;
  asOf: string;
}

export interface Drawing {
  id: string;
  layer: string;
  looking: "up" | "down";
  shows: string; // "hanging", "marks", "skew", "stations" or "sections"
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
  survey?: Survey | null;
  objects?: RoomObject[] | null;
  choices?: Choice[] | null;
  box?: BoxPlace | null;
  walls?: Wall[] | null;
  corners?: Corner[] | null;
  layers?: Layer[] | null;
  steps?: Step[] | null;
  climate?: Climate | null;
  shopping?: { what: string; amount: string; detail: string; cost: string }[] | null;
  bill?: Total | null; // what the shopping list comes to, "" where nothing has a price
  days?: Days | null;
  price?: Price | null;
  record?: FinishRecord | null;
  air?: Air | null;
  platform?: Platform | null;
  limits?: VOCLine[] | null;
  findOut?: Question[] | null;
  safety?: SafetyNote[] | null;
  drawings?: Drawing[] | null;
}

/** What the engine registers as globalThis.ceilingwright. */
export interface Engine {
  compute(planJSON: string): string;
  parseLength(text: string, unit: string): { nanometres: string | null; problem: Problem | null };
  /** The shopping list as CSV; sign "," for a decimal comma. "" on a fault. */
  shopping(planJSON: string, sign?: string): string;
  /** The days as iCalendar text; stamp is now in UTC, 20270301T080000Z. */
  calendar(planJSON: string, stamp: string): string;
  /** The steps a finish begins with, or the next one: JSON text of a list of
   *  steps of the plan. what is "one-layer", "leaf-and-glaze" or "wall-band", or a
   *  kind of step. "[]" for any other word, and on a fault. */
  starting(what: string, planJSON: string): string;
  /** The plan as a client may have it, JSON text: no rates, the price as quoted
   *  on the date, 2027-03-01. "" where the text is no plan, and on a fault. */
  quoted(planJSON: string, date: string): string;
  /** What to change in a plan whose room was changed so that the rest of it, made
   *  as in the first plan, makes sense there: JSON text of a Fitting. "" on a fault. */
  otherRoom(madeJSON: string, planJSON: string): string;
  version: string;
}

export interface Fitting {
  said: string; // in one sentence, "" where nothing changes
  writes: { at: string; text: string }[];
  out: string[]; // entries of lists to leave out, in the order of the plan
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
