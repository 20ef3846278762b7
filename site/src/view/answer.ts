// The engine and its answer to the plan on the sheet.

import type { Engine } from "../engine/calls";
import type { Drawing, Figure, Reading, Sheet } from "../engine/contract";
import { NoEngine, startEngine, startEngineAnew } from "../engine/loader";
import { at, list, typedText, type JsonObject } from "../state/pointer";
import { action, region, setAttribute, setText } from "./dom";
import { message, unsay } from "./messages";
import { say } from "./say";

let engine: Engine | null = null;
let sheet: Sheet | null = null;
/** The plan the sheet answers, and the pages on it by the engine's names. */
let answered = "";
let pages = "";
let byId = new Map<string, Figure>();
let read: Record<string, Reading> = {};

export function theEngine(): Engine | null {
  return engine;
}

/** The last answer, null before the first. */
export function theSheet(): Sheet | null {
  return sheet;
}

/** The pages that the answer tells, by the engine's names, "" being all. */
export function pagesTold(): string {
  return pages;
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

/** The sheet with these pages on it too, by the engine's names, "" being all; null before
 *  the first answer. It is of the plan last worked out. */
export function sheetWith(wanted: string): Sheet | null {
  if (!sheet || !engine || stands(wanted)) return sheet;
  try {
    take(engine, answered, wanted && `${pages} ${wanted}`);
  } catch {
    // What stops the engine is told when the plan is next worked out.
  }
  return sheet;
}

/** The names of the layers as the sheet has them, by their ids. */
export function layerNames(plan: JsonObject): Map<string, string> {
  const own = list(plan, "/mask/layers").map((l) => [typedText(at(l, "/id")), typedText(at(l, "/name"))] as const);
  if (own.every(([id, name]) => id !== "" && name !== "")) return new Map(own);
  // The engine calls what has no name.
  return new Map((sheetWith("mask")?.layers ?? []).map((l) => [l.id, l.name] as const));
}

function stands(wanted: string): boolean {
  const there = pages.split(" ");
  return pages === "" || (wanted !== "" && wanted.split(" ").every((page) => there.includes(page)));
}

function take(engine: Engine, plan: string, asked: string): void {
  const told = JSON.parse(engine.sheet(plan, asked)) as Sheet;
  drawWhenLookedAt(engine, plan, told.drawings ?? []);
  [sheet, answered, pages] = [told, plan, asked];
  byId = new Map((told.figures ?? []).map((f) => [f.id, f] as const));
  read = Object.fromEntries((told.readings ?? []).map((r) => [r.at, r] as const));
}

/** Works out of a plan the pages asked for; without an engine the last answer stays.
 *  A plan that stops the engine is not given to it again: another one is started, and
 *  again is called when it is there. */
export function workOut(plan: string, asked: string, again: () => void): void {
  if (!engine) return;
  if (stopping.has(plan)) {
    sheetWith(asked);
    return sayStopped();
  }
  if (sheet && plan === answered && stands(asked)) return unsay("stopped");
  try {
    take(engine, plan, asked);
    lastGood = plan;
    unsay("stopped");
  } catch {
    stopping.add(plan);
    engine = null;
    sayStopped();
    void restart(again);
  }
}
