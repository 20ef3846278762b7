// Keeping the plan in this browser. Storage may be missing, refused, full,
// shared with other copies of the page or changed by another tab: each of these
// is an answer here, never an exception, and nothing is ever cut to fit.

import { typedText } from "./pointer";
import { readPlan, type Plan } from "./plan";

const PLAN = "ceilingwright:plan:";
const LAST = "ceilingwright:last";
const PROBE = "ceilingwright:probe";

export type Kept = "kept" | "off" | "full" | "elsewhere";

/** The text last seen in storage for a plan, to notice another tab's writing. */
const seen = new Map<string, string>();

function storage(): Storage | null {
  try {
    const s = globalThis.localStorage;
    s.setItem(PROBE, "1");
    s.removeItem(PROBE);
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

/** Writes the plan under its id. "elsewhere": another tab has changed the same
 *  plan since it was last read here, so nothing was written. */
export function keep(plan: Plan): Kept {
  const s = storage();
  if (!s) return "off";
  const id = typedText(plan["id"]);
  const key = PLAN + id;
  const text = JSON.stringify(plan);
  try {
    const there = s.getItem(key);
    if (there !== null && there !== text && there !== seen.get(id)) return "elsewhere";
    if (there !== text) s.setItem(key, text);
    s.setItem(LAST, id);
  } catch {
    return "full";
  }
  seen.set(id, text);
  return "kept";
}

/** Takes what is stored now as known, so that the next keep overwrites it. */
export function claim(plan: Plan): void {
  const id = typedText(plan["id"]);
  const there = storedText(id);
  if (there !== null) seen.set(id, there);
}

export function storedText(id: string): string | null {
  try {
    return globalThis.localStorage.getItem(PLAN + id);
  } catch {
    return null;
  }
}

/** The plan worked on last. damaged holds a stored text that could not be read. */
export function lastKept(): { plan: Plan | null; damaged: string | null } {
  try {
    const id = globalThis.localStorage.getItem(LAST);
    const text = id === null ? null : storedText(id);
    if (id === null || text === null) return { plan: null, damaged: null };
    const read = readPlan(text);
    if ("refused" in read) {
      // Said once: the next start begins clean, the text stays where it is.
      globalThis.localStorage.removeItem(LAST);
      return { plan: null, damaged: text };
    }
    seen.set(id, text);
    return { plan: read.plan, damaged: null };
  } catch {
    return { plan: null, damaged: null };
  }
}

/** Calls back when another tab writes the plan with the id asked for. */
export function onWrittenElsewhere(current: () => string, tell: () => void): void {
  globalThis.addEventListener("storage", (e) => {
    if (e.key === PLAN + current() && e.newValue !== null && e.newValue !== seen.get(current())) tell();
  });
}
