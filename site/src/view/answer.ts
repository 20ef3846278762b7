// The engine and its answer to the plan on the sheet.

import type { Engine, Figure, Reading, Sheet } from "../engine/contract";
import { NoEngine, startEngine } from "../engine/loader";
import { action, region, setAttribute, setText } from "./dom";
import { message, unsay } from "./messages";

let engine: Engine | null = null;
let sheet: Sheet | null = null;
let byId = new Map<string, Figure>();
let read: Record<string, Reading> = {};

export function theEngine(): Engine | null {
  return engine;
}

/** The last answer, null before the first. */
export function theSheet(): Sheet | null {
  return sheet;
}

export function figures(): Map<string, Figure> {
  return byId;
}

/** How each blank was read, by its pointer. */
export function readings(): Record<string, Reading> {
  return read;
}

/** Has the engine ready when it resolves, or says why there is none. state gives
 *  the words for a job that is in order. */
export async function startAnswering(begun: Promise<Engine> | null, chosen: Promise<void>, state: () => string): Promise<void> {
  unsay("engine");
  setText(region("state"), "getting ready to work it out…");
  try {
    engine = await (begun ?? startEngine());
    await chosen;
    document.getElementById("engine-early")?.remove();
    setAttribute(document.documentElement, "data-ready", "");
    setText(region("state"), state());
  } catch (e) {
    const words = e instanceof NoEngine ? e.words : "The part that works out the figures did not start.";
    const again = e instanceof NoEngine && e.again;
    message(
      "engine",
      `${words} You can still read the sheet, fill it in, keep it and print it blank.`,
      ...(again ? [action("start-again", "Try again")] : []),
    );
    setText(region("state"), "not worked out");
  }
}

/** Works a plan out; without an engine the last answer stays. */
export function workOut(plan: string): void {
  if (!engine) return;
  try {
    sheet = JSON.parse(engine.compute(plan)) as Sheet;
    unsay("stopped");
  } catch {
    message("stopped", "The part that works out the figures has stopped. What you typed is kept. Load the page again.");
    return;
  }
  byId = new Map((sheet.figures ?? []).map((f) => [f.id, f] as const));
  read = Object.fromEntries((sheet.readings ?? []).map((r) => [r.at, r] as const));
}
