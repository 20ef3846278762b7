// What a part of the page may do with the plan it shows.

import type { Layer } from "../engine/contract";
import type { JobChange } from "../state/jobs";
import type { Plan } from "../state/plan";
import { at, list, typedText, type JsonObject } from "../state/pointer";

export interface Desk {
  plan(): Plan;
  /** Changes the plan, works it out and shows it: one step that can be undone.
   *  words say what was done where the plan does not, at names the blank. */
  change(edit: (plan: Plan) => void, words?: string, at?: string): void;
  /** Shows the present answer anew. */
  redraw(): void;
}

/** What only those may do who put whole plans on the sheet or type in it. */
export interface OwnDesk extends Desk {
  /** Puts another plan on the sheet; words say what was done. In place of a plan
   *  that was only passing it is no step of its own; jobs are what changed with it
   *  among those kept. */
  take(next: Plan, words: string, how?: { inPlace?: boolean; jobs?: JobChange[] }): void;
  /** Changes the plan by a key pressed in the blank at a pointer, of which there
   *  may be many in a second: they are one step. */
  changeByKey(edit: (plan: Plan) => void, pointer: string): void;
  /** Writes what is on the sheet in another way, which is no step of its own. */
  amend(edit: (plan: Plan) => void): void;
  /** Puts the same job on the sheet as another sees it: nothing has changed. */
  look(as: Plan): void;
  /** What is shown is what was typed: nothing may act on an answer that is due. */
  settle(): void;
}

export type Actions = Record<string, (button: HTMLElement) => void>;

/** The answer to each layer of the plan, in the plan's order; a layer that is
 *  not worked out yet has none. */
export function answersTo(plan: JsonObject, layers: Layer[]): (Layer | undefined)[] {
  const byId = new Map(layers.map((l) => [l.id, l] as const));
  return list(plan, "/mask/layers").map((entry, i) => byId.get(typedText(at(entry, "/id")) || `L${String(i + 1)}`));
}

/** The pointer of the layer an element belongs to. */
export function layerPointer(element: Element): string {
  for (let e = element.closest<HTMLElement>("[data-base]"); e; e = e.parentElement?.closest<HTMLElement>("[data-base]") ?? null) {
    const base = e.dataset["base"] ?? "";
    if (/^\/mask\/layers\/\d+$/.test(base)) return base;
  }
  return "";
}
