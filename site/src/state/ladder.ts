// What the ladder view remembers on this device: which step was in sight, which
// stops are ticked, which thumb. What is up and what is marked stands in the plan
// and goes where that goes. Where nothing may be stored it lasts as long as the page.

import { placed } from "./place";

const PLACE = "ladder:";
const THUMB = "thumb";
const GREATEST_TICKS = 5000;

/** How far one view of one job has got: the step in sight, and what is ticked
 *  of the steps the plan itself does not keep. */
export interface Place {
  at: string;
  ticked: string[];
  only: string; // the layer whose marks alone are made, "" for all
  stands: string; // where the platform was put last, in the sheet's words
}

export type Thumb = "left" | "right";

/** What was remembered since the page was opened, for want of a storage. */
const here = new Map<string, string>();

function stored(key: string): string | null {
  try {
    return globalThis.localStorage.getItem(placed(key)) ?? here.get(key) ?? null;
  } catch {
    return here.get(key) ?? null;
  }
}

function store(key: string, text: string): void {
  here.set(key, text);
  try {
    globalThis.localStorage.setItem(placed(key), text);
  } catch {
    // Refused or full: the page itself remembers, and the plan is kept apart.
  }
}

/** The place of a view of a plan; what is damaged is taken as the beginning. */
export function placeOf(plan: string, view: string): Place {
  try {
    const place = JSON.parse(stored(`${PLACE}${plan}:${view}`) ?? "") as Partial<Place> | null;
    const ticked = Array.isArray(place?.ticked) ? place.ticked : [];
    return {
      at: typeof place?.at === "string" ? place.at : "",
      ticked: ticked.filter((t) => typeof t === "string").slice(0, GREATEST_TICKS),
      only: typeof place?.only === "string" ? place.only : "",
      stands: typeof place?.stands === "string" ? place.stands : "",
    };
  } catch {
    return { at: "", ticked: [], only: "", stands: "" };
  }
}

export function keepPlace(plan: string, view: string, place: Place): void {
  store(`${PLACE}${plan}:${view}`, JSON.stringify(place));
}

/** The thumb the buttons lie under: the right one until told otherwise. */
export function thumb(): Thumb {
  return stored(THUMB) === "left" ? "left" : "right";
}

export function keepThumb(which: Thumb): void {
  store(THUMB, which);
}
