// The engine and its answer to the plan on the sheet.

import type { Engine } from "../engine/calls";
import type { Drawing, Figure, Reading, Sheet } from "../engine/contract";
import { NoEngine, startEngine, startEngineAnew } from "../engine/loader";
import { action, region, setAttribute, setText } from "./dom";
import { message, unsay } from "./messages";
import { say } from "./say";

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
  setText(region("state"), say("getting ready to work it out…"));
  try {
    engine = await (begun ?? startEngine());
    await chosen;
    document.getElementById("engine-early")?.remove();
    setAttribute(document.documentElement, "data-ready", "");
    setText(region("state"), state());
  } catch (e) {
    sayNone(e);
  }
}

function sayNone(e: unknown): void {
  const words = e instanceof NoEngine ? e.words : say("The part that works out the figures did not start.");
  const again = e instanceof NoEngine && e.again;
  message(
    "engine",
    say("{words} You can still read the sheet, fill it in, keep it and print it blank.", { words }),
    ...(again ? [action("start-again", say("Try again"))] : []),
  );
  setText(region("state"), say("not worked out"));
}

/** Plans at which the engine stopped, and the last it worked out. */
const stopping = new Set<string>();
let lastGood = "";

/** The text of the last plan that was worked out, "" before the first. */
export function lastWorkedOut(): string {
  return lastGood;
}

function sayStopped(): void {
  const words = say("What is on the sheet now stopped the part that works out the figures, which is started again.");
  if (lastGood === "") message("stopped", say("{words} Change what was typed last, or start with an empty sheet.", { words }), action("empty", say("Empty sheet")));
  else message("stopped", say("{words} The figures are those of the plan before.", { words }), action("last-good", say("Back to the plan before")));
}

async function restart(again: () => void): Promise<void> {
  try {
    engine = await startEngineAnew();
    again();
  } catch (e) {
    sayNone(e);
  }
}

/** A drawing is drawn when it is first looked at: most never are. An engine that has
 *  stopped draws none. */
function drawWhenLookedAt(engine: Engine, plan: string, drawings: Drawing[]): void {
  for (const drawing of drawings) {
    let svg: string | null = null;
    const draw = (): string => {
      try {
        return engine.drawing(plan, drawing.id);
      } catch {
        return "";
      }
    };
    Object.defineProperty(drawing, "svg", { get: () => (svg ??= draw()) });
  }
}

/** Works a plan out; without an engine the last answer stays. A plan that stops
 *  the engine is not given to it again: another one is started, and again is
 *  called when it is there. */
export function workOut(plan: string, again: () => void): void {
  if (!engine) return;
  if (stopping.has(plan)) return sayStopped();
  try {
    sheet = JSON.parse(engine.sheet(plan)) as Sheet;
    drawWhenLookedAt(engine, plan, sheet.drawings ?? []);
    lastGood = plan;
    unsay("stopped");
  } catch {
    stopping.add(plan);
    engine = null;
    sayStopped();
    void restart(again);
    return;
  }
  byId = new Map((sheet.figures ?? []).map((f) => [f.id, f] as const));
  read = Object.fromEntries((sheet.readings ?? []).map((r) => [r.at, r] as const));
}
