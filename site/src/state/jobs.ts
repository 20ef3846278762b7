// The jobs kept on this device, each with all that is remembered of it, and many
// of them in one file. Plans that come in are checked as any other; what is told
// about them is only ever shown as text.

import { claimAs, stored } from "./keep";
import { placed } from "./place";
import { freshId, readPlan, type Plan } from "./plan";
import { typedText, type Json } from "./pointer";

const MOST_JOBS = 1000;
const LONGEST_ABOUT = 120;
const GREATEST_PLAN = 2_000_000; // characters

export interface KeptJob {
  id: string;
  title: string;
  at: string; // when it was last changed, ISO 8601; "" where that is not known
  says: string; // its borders and its price as last worked out
  refused: string; // why it cannot be read, "" where it can
}

/** All that is kept of a job, by the name it is kept under. */
export type Entries = Record<string, string>;

/** What was kept of a job before and after a change of the list. */
export interface JobChange {
  id: string;
  before: Entries;
  after: Entries;
}

/** The jobs of this place, the last changed first; null where nothing can be kept. */
export function keptJobs(): KeptJob[] | null {
  const names = storedNames("plan:");
  if (names === null) return null;
  const jobs = names.map((name): KeptJob => {
    const id = name.slice("plan:".length);
    const read = readPlan(stored(name) ?? "");
    const about = aboutOf(stored(`about:${id}`));
    return "plan" in read ? { id, title: typedText(read.plan["title"]).trim(), refused: "", ...about } : { id, title: "", refused: read.refused, ...about };
  });
  return jobs.sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : a.title.localeCompare(b.title)));
}

function aboutOf(text: string | null): { at: string; says: string } {
  try {
    return checkedAbout(JSON.parse(text ?? "{}") as Json);
  } catch {
    return { at: "", says: "" };
  }
}

function checkedAbout(about: Json): { at: string; says: string } {
  const { at, says } = (about ?? {}) as { at?: Json; says?: Json };
  const date = typeof at === "string" ? new Date(at) : null;
  return {
    at: date && !Number.isNaN(date.getTime()) ? date.toISOString() : "",
    says: typeof says === "string" ? says.slice(0, LONGEST_ABOUT) : "",
  };
}

function storedNames(begin: string): string[] | null {
  try {
    const start = placed(begin);
    const own = placed("");
    return Object.keys(globalThis.localStorage)
      .filter((key) => key.startsWith(start))
      .map((key) => key.slice(own.length));
  } catch {
    return null;
  }
}

export function entriesOf(id: string): Entries {
  const names = [`plan:${id}`, `about:${id}`, ...(storedNames(`ladder:${id}:`) ?? [])];
  return Object.fromEntries(names.flatMap((name) => {
    const text = stored(name);
    return text === null ? [] : [[name, text]];
  }));
}

/** Puts entries in place of all that is kept of a job; false, and nothing done,
 *  where there is no room. */
export function putEntries(id: string, entries: Entries): boolean {
  const before = entriesOf(id);
  try {
    exchange(before, entries);
  } catch {
    try {
      exchange(entriesOf(id), before);
    } catch {
      // What there was fitted a moment ago.
    }
    return false;
  }
  claimAs(id);
  return true;
}

function exchange(there: Entries, entries: Entries): void {
  for (const name of Object.keys(there)) if (!(name in entries)) globalThis.localStorage.removeItem(placed(name));
  for (const [name, text] of Object.entries(entries)) globalThis.localStorage.setItem(placed(name), text);
}

/** What is kept of a plan that comes into the list now. */
export function entriesFor(plan: Plan, at: string, says: string): Entries {
  const id = typedText(plan["id"]);
  return { [`plan:${id}`]: JSON.stringify(plan), [`about:${id}`]: JSON.stringify({ at, says }) };
}

/** All jobs of this place that can be read, as the text of one file. */
export function jobsText(): string {
  const jobs = (keptJobs() ?? []).filter((job) => job.refused === "").map(({ id, at, says }) => ({ at, says, plan: JSON.parse(stored(`plan:${id}`) ?? "null") as Json }));
  return JSON.stringify({ ceilingwrightJobs: 1, jobs }, null, 1) + "\n";
}

/** The jobs in a file's text: those that are new here, and how many of the others
 *  are here already or could not be read. null where the text holds no jobs. */
export function jobsFrom(text: string): { changes: JobChange[]; known: number; unread: number } | null {
  const all = listIn(text);
  if (!all) return null;
  const taken = new Set<string>();
  const changes: JobChange[] = [];
  let known = 0;
  let unread = 0;
  for (const entry of all.slice(0, MOST_JOBS)) {
    const plan = planIn(entry);
    if (!plan) {
      unread++;
      continue;
    }
    const there = stored(`plan:${typedText(plan["id"])}`);
    if (there === JSON.stringify(plan)) {
      known++;
      continue;
    }
    if (there !== null || taken.has(typedText(plan["id"]))) plan["id"] = freshId();
    const id = typedText(plan["id"]);
    taken.add(id);
    const { at, says } = checkedAbout(entry);
    changes.push({ id, before: {}, after: entriesFor(plan, at, says) });
  }
  return { changes, known, unread: unread + all.slice(MOST_JOBS).length };
}

/** True for the text of a file of many jobs. */
export function holdsJobs(text: string): boolean {
  return text.slice(0, 200).includes('"ceilingwrightJobs"') && listIn(text) !== null;
}

function listIn(text: string): Json[] | null {
  try {
    const value = JSON.parse(text.replace(/^\uFEFF/, "")) as Json;
    if (value === null || typeof value !== "object" || Array.isArray(value) || value["ceilingwrightJobs"] !== 1) return null;
    return Array.isArray(value["jobs"]) ? value["jobs"] : null;
  } catch {
    return null;
  }
}

function planIn(entry: Json): Plan | null {
  if (entry === null || typeof entry !== "object" || Array.isArray(entry)) return null;
  const text = JSON.stringify(entry["plan"] ?? null);
  if (text.length > GREATEST_PLAN) return null;
  const read = readPlan(text);
  return "plan" in read ? read.plan : null;
}
