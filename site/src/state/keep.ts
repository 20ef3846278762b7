// Keeping the plan in this browser. Storage may be missing, refused, full,
// shared with other copies of the page or changed by another tab: each of these
// is an answer here, never an exception, and nothing is ever cut to fit.

import { checksum } from "./link";
import { placed } from "./place";
import { typedText } from "./pointer";
import { freshId, readPlan, type Plan } from "./plan";

const PLAN = "plan:";
const ABOUT = "about:";
const LAST = "last";
const PROBE = "probe";

/** The name of the job worked on last in this very file, where the page is a saved
 *  one: all pages from disk may share one storage. "" on any other page. */
let lastInFile = "";

export function beginInFile(): void {
  lastInFile = `last:${checksum(new TextEncoder().encode(location.href.replace(/[?#].*/, "")))}`;
}

export type Kept = "kept" | "off" | "full" | "elsewhere";

/** The text last seen in storage for a plan, to notice another tab's writing. */
const seen = new Map<string, string>();

/** Plans nobody has worked on yet: an empty sheet, the example, a plan that came
 *  by link. They are not kept. */
const fresh = new Set<string>();

export function markFresh(plan: Plan): Plan {
  fresh.add(JSON.stringify(plan));
  return plan;
}

export function isFresh(plan: Plan): boolean {
  return fresh.has(JSON.stringify(plan));
}

/** The plan counts as worked on, though nothing in it has changed. */
export function adopt(plan: Plan): void {
  fresh.delete(JSON.stringify(plan));
}

function storage(): Storage | null {
  try {
    const s = globalThis.localStorage;
    s.setItem(placed(PROBE), "1");
    s.removeItem(placed(PROBE));
    return s;
  } catch (e) {
    // A full store still reads.
    try {
      return e instanceof DOMException && e.name === "QuotaExceededError" ? globalThis.localStorage : null;
    } catch {
      return null;
    }
  }
}

/** Writes the plan under its id, with the moment and a few words about it.
 *  "elsewhere": another tab has changed the same plan since it was last read
 *  here, so nothing was written. */
export function keep(plan: Plan, about: string): Kept {
  const s = storage();
  if (!s) return "off";
  const id = typedText(plan["id"]);
  const key = placed(PLAN + id);
  const text = JSON.stringify(plan);
  try {
    const there = s.getItem(key);
    if (there !== null && there !== text && there !== seen.get(id)) return "elsewhere";
    if (there !== text) {
      s.setItem(key, text);
      seen.set(id, text); // there may be no room for the few words
      s.setItem(placed(ABOUT + id), JSON.stringify({ at: new Date().toISOString(), says: about }));
    }
    s.setItem(placed(LAST), id);
    if (lastInFile !== "") s.setItem(placed(lastInFile), id);
  } catch {
    return "full";
  }
  seen.set(id, text);
  return "kept";
}

/** True where the plan is kept here just as it is: it then counts as read from there. */
export function isKeptHere(plan: Plan): boolean {
  const id = typedText(plan["id"]);
  const text = JSON.stringify(plan);
  if (storedText(id) !== text) return false;
  seen.set(id, text);
  return true;
}

/** Takes what is stored now as known, so that the next keep overwrites it. */
export function claim(plan: Plan): void {
  const id = typedText(plan["id"]);
  const there = storedText(id);
  if (there !== null) seen.set(id, there);
}

/** Whatever is stored under an id now is known here. */
export function claimAs(id: string): void {
  const there = storedText(id);
  if (there === null) seen.delete(id);
  else seen.set(id, there);
}

/** The next start begins with this job; "" for none. */
export function lastIs(id: string): void {
  try {
    if (id === "") globalThis.localStorage.removeItem(placed(LAST));
    else globalThis.localStorage.setItem(placed(LAST), id);
  } catch {
    // Nothing is kept here, so there is no next start to tell.
  }
}

export function stored(name: string): string | null {
  try {
    return globalThis.localStorage.getItem(placed(name));
  } catch {
    return null;
  }
}

export function storedText(id: string): string | null {
  return stored(PLAN + id);
}

/** True where this very state of a plan is what is kept under its id, or nothing is. */
export function isKeptAs(plan: Plan): boolean {
  const there = storedText(typedText(plan["id"]));
  return there === null || there === JSON.stringify(plan);
}

/** Gives the plan kept under an id one of its own, so that the id is free, and
 *  says which; "" where there was none. */
export function moveAside(id: string): string {
  const read = readPlan(storedText(id) ?? "");
  if (!("plan" in read)) return "";
  const own = freshId();
  try {
    const about = stored(ABOUT + id);
    globalThis.localStorage.removeItem(placed(PLAN + id));
    globalThis.localStorage.setItem(placed(PLAN + own), JSON.stringify({ ...read.plan, id: own }));
    if (about !== null) globalThis.localStorage.setItem(placed(ABOUT + own), about);
    globalThis.localStorage.removeItem(placed(ABOUT + id));
  } catch {
    // There was room for it a moment ago.
  }
  seen.delete(id);
  return own;
}

/** The plan worked on last under its id, or why it cannot be read. */
export function lastKept(): { id: string; plan: Plan | null; refused: string } {
  const id = stored(LAST) ?? "";
  const text = storedText(id);
  if (text === null) return { id, plan: null, refused: "" };
  const read = readPlan(text);
  if ("refused" in read) {
    // Said once: the next start begins clean, the text stays where it is.
    globalThis.localStorage.removeItem(placed(LAST));
    return { id, plan: null, refused: read.refused };
  }
  seen.set(id, text);
  return { id, plan: read.plan, refused: "" };
}

/** The plan worked on last in this saved page; null for none that can be read. */
export function lastKeptInFile(): Plan | null {
  const id = stored(lastInFile) ?? "";
  const read = readPlan(storedText(id) ?? "");
  if (lastInFile === "" || !("plan" in read)) return null;
  claimAs(id);
  return read.plan;
}

/** Calls back when another tab has written the plan asked for, unless nobody has
 *  worked on it here. It goes by what is kept now: what the event tells of may have
 *  been read or written over since. */
export function onWrittenElsewhere(current: () => Plan, tell: () => void): void {
  globalThis.addEventListener("storage", (e) => {
    const plan = current();
    const id = typedText(plan["id"]);
    if (e.key !== placed(PLAN + id) || isFresh(plan)) return;
    const there = storedText(id);
    if (there !== null && there !== seen.get(id)) tell();
  });
}
