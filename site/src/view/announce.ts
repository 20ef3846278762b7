// What a screen reader hears: one polite sentence a little after the last key,
// holding only what changed.

import type { Figure, Sheet } from "../engine/contract";
import { region } from "./dom";
import { say } from "./say";

const PAUSE = 600; // ms after the last key
const TOLD = 4;

let before: Map<string, string> | null = null;
let told = ""; // the pages whose figures those are
let latest = new Map<string, string>();
let names = new Map<string, string>();
let waiting: ReturnType<typeof setTimeout> | undefined;
let stops = "";
let nextStops = "";
let done = ""; // what was done since the last sentence

/** Notes what the sheet says now: the figures of the pages in view and the answers of
 *  all. A figure that comes with another page is not news. */
export function announce(figures: Map<string, Figure>, { overview, problems }: Sheet, pages: string): void {
  const said = [...(overview?.answers ?? []).map((a) => ({ ...a, id: a.figure })).filter((a) => a.id !== ""), ...figures.values()];
  latest = new Map(said.map((f) => [f.id, f.text] as const));
  names = new Map(said.map((f) => [f.id, f.label] as const));
  nextStops = (problems ?? []).filter((p) => p.severity === "stop").map((p) => p.what).join(" ");
  if (before === null) {
    before = latest;
    stops = nextStops;
    told = pages;
    return;
  }
  if (pages !== told) before = new Map([...latest, ...before]);
  told = pages;
  clearTimeout(waiting);
  waiting = setTimeout(tell, PAUSE);
}

/** Says what a person has just done to a list, before what changed by it. */
export function hear(words: string): void {
  done = words;
  clearTimeout(waiting);
  waiting = setTimeout(tell, PAUSE);
}

function tell(): void {
  const changed = Array.from(latest).filter(([id, text]) => before?.get(id) !== text);
  before = latest;
  const words = changed.slice(0, TOLD).map(([id, text]) => `${names.get(id) ?? id} ${text}.`);
  if (changed.length > TOLD) words.push(say("{n} more figures changed.", { n: changed.length - TOLD }));
  if (nextStops !== stops && nextStops !== "") words.unshift(nextStops);
  if (done !== "") words.unshift(done);
  done = "";
  stops = nextStops;
  if (words.length > 0) region("hear").textContent = words.join(" ");
}
