// The calls the engine offers, and what stands beside it on the page. Types only.

import type { Problem } from "./contract";

/** What the engine registers as globalThis.ceilingwright. */
export interface Engine {
  compute(planJSON: string): string;
  /** Of the sheet what is asked for, pages by their names and drawings by their
   *  ids, with spaces between: pages "" are all, drawings "" are only listed. What
   *  a plan leaves as it was in the one before is kept. */
  sheet(planJSON: string, pages?: string, drawings?: string): string;
  /** One drawing of a plan's sheet as SVG. "" where there is none, and on a fault. */
  drawing(planJSON: string, id: string): string;
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
  /** Has answers from now on in a language: the JSON text of its sentences by ours. */
  speak(languageJSON: string): void;
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
