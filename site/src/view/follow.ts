// What the drawing follows: the page in view, and of the layers and the steps of the
// finish the one in hand.

import type { Drawing, Step } from "../engine/contract";
import { isAll, pageInView } from "./pages";

/** What belongs to a page, the best first. Every other page has the first layer. */
const belongs: Record<string, string[]> = {
  room: ["skew", "room"],
  mask: ["panels"],
  "setting-out": ["marks"],
  hanging: ["hanging"],
  finish: ["sections", "panels"],
  days: ["days"],
  safety: ["side"],
};

let hand = { layer: "", step: "", page: "" };

/** The page that is looked at: where all are on one, the one that was last touched. */
export function pageLookedAt(): string {
  return isAll() ? hand.page : pageInView();
}

/** The drawing that belongs to the page and to what is in hand; undefined for none. */
export function drawingInHand(drawings: Drawing[], layers: string[], steps: Step[]): Drawing | undefined {
  const layer = layers[indexIn(hand.layer, "/mask/layers/")] ?? hand.layer;
  const step = steps[indexIn(hand.step, "/finish/steps/")]?.id ?? "";
  for (const shows of [...(belongs[pageLookedAt()] ?? []), "hanging"]) {
    const shown = drawings.filter((d) => d.shows === shows);
    if (!belongs[pageLookedAt()] && shown[0]) return shown[0];
    const found = shown.find((d) => (shows === "sections" ? d.id === `step.${step}.sections` : d.layer === layer)) ?? shown[0];
    if (found) return found;
  }
  return drawings[0];
}

function indexIn(pointer: string, list: string): number {
  return pointer.startsWith(list) ? Number(pointer.slice(list.length)) : -1;
}

/** Sees what is taken in hand; changed is called where that is another thing. */
export function startFollowing(root: HTMLElement, changed: () => void): void {
  for (const kind of ["focusin", "click"]) {
    root.addEventListener(kind, (e) => {
      const block = e.target instanceof Element ? e.target.closest(".cw-block") : null;
      if (!block) return;
      const next = { ...hand, ...takenUp(e.target as Element), page: block.id };
      if (next.layer === hand.layer && next.step === hand.step && (next.page === hand.page || !isAll())) return;
      hand = next;
      changed();
    });
  }
}

function takenUp(element: Element): { layer?: string; step?: string } {
  const row = element.closest("[data-panel], [data-layer]");
  const layer = row?.getAttribute("data-panel")?.split(":")[0] ?? row?.getAttribute("data-layer");
  if (layer) return { layer };
  for (let e = element.closest<HTMLElement>("[data-base]"); e; e = e.parentElement?.closest<HTMLElement>("[data-base]") ?? null) {
    const base = e.dataset["base"] ?? "";
    if (/^\/mask\/layers\/\d+$/.test(base)) return { layer: base };
    if (/^\/finish\/steps\/\d+$/.test(base)) return { step: base };
  }
  return {};
}
