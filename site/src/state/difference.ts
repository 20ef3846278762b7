// Where two states of a plan differ, for saying in words what was done.

import type { Json, JsonObject } from "./pointer";

export interface Difference {
  /** The place all of it lies in: of one blank, of an entry or a list, or of a
   *  part of the plan where several blanks differ. */
  at: string;
  what: "changed" | "put in" | "taken out" | "moved";
  entry: Json; // what was put in or taken out, else null
  first: string; // pointer of the first blank that differs
}

export function difference(before: Json, after: Json, at = ""): Difference {
  if (Array.isArray(before) && Array.isArray(after)) return inList(before, after, at);
  if (isObject(before) && isObject(after)) {
    const names = new Set([...Object.keys(before), ...Object.keys(after)]);
    const other = Array.from(names).filter((n) => !same(before[n], after[n]));
    return among(other.map((n) => difference(before[n] ?? null, after[n] ?? null, `${at}/${n.replace(/~/g, "~0").replace(/\//g, "~1")}`)), at);
  }
  return { at, what: "changed", entry: null, first: at };
}

function isObject(value: Json): value is JsonObject {
  return value !== null && typeof value === "object" && !Array.isArray(value);
}

function same(a: Json | undefined, b: Json | undefined): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function among(parts: Difference[], at: string): Difference {
  const [one, ...more] = parts;
  if (one && more.length === 0) return one;
  return { at, what: "changed", entry: null, first: one?.first ?? at };
}

function inList(before: Json[], after: Json[], at: string): Difference {
  const place = before.findIndex((entry, i) => !same(entry, after[i]));
  const from = place < 0 ? before.length : place;
  const here = `${at}/${String(from)}`;
  if (after.length === before.length + 1 && same(before, without(after, from))) {
    return { at: here, what: "put in", entry: after[from] ?? null, first: here };
  }
  if (before.length === after.length + 1 && same(without(before, from), after)) {
    return { at: here, what: "taken out", entry: before[from] ?? null, first: here };
  }
  if (before.length !== after.length) return { at, what: "changed", entry: null, first: here };
  const other = before.flatMap((entry, i) => (same(entry, after[i]) ? [] : [difference(entry, after[i] ?? null, `${at}/${String(i)}`)]));
  if (other.length > 1 && same(sorted(before), sorted(after))) return { at, what: "moved", entry: null, first: here };
  return among(other, at);
}

function without(entries: Json[], index: number): Json[] {
  return entries.filter((_, i) => i !== index);
}

function sorted(entries: Json[]): string[] {
  return entries.map((e) => JSON.stringify(e)).sort();
}
