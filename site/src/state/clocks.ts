// When the clocks change where this person is. The engine has no clock and no
// zones: it takes the changes from the plan.

import { list, put, typedText, at, type Json } from "./pointer";
import type { Plan } from "./plan";

const AHEAD = 400; // days from the first day of work on

/** The changes of the clock from a date on, as the plan has them: minutes forward,
 *  or back with a sign. A change is told by the noons before and after it. */
export function changesFrom(start: string): Json[] {
  const date = /^(\d{4})-(\d\d)-(\d\d)$/.exec(start);
  if (!date) return [];
  const noon = (day: number) => new Date(Number(date[1]), Number(date[2]) - 1, Number(date[3]) + day, 12);
  const changes: Json[] = [];
  for (let day = 0; day < AHEAD; day++) {
    const before = noon(day - 1);
    const after = noon(day);
    const forward = before.getTimezoneOffset() - after.getTimezoneOffset();
    if (forward !== 0) changes.push({ at: dateText(after), minutes: String(forward) });
  }
  return changes;
}

/** The day it is here, as the plan has days. */
export function today(): string {
  return dateText(new Date());
}

function dateText(d: Date): string {
  return [d.getFullYear(), d.getMonth() + 1, d.getDate()].map((n, i) => String(n).padStart(i === 0 ? 4 : 2, "0")).join("-");
}

/** Puts the changes of this place into the plan, once its first day is another. */
export function noteClocks(plan: Plan): void {
  const changes = changesFrom(typedText(at(plan, "/days/start")).trim());
  if (JSON.stringify(changes) !== JSON.stringify(list(plan, "/days/clockChanges"))) put(plan, "/days/clockChanges", changes);
}

/** The moment of writing, as calendar files have it. */
export function stamp(now: Date): string {
  return now.toISOString().replace(/\.\d+Z$/, "Z").replace(/[-:]/g, "");
}
