// Gaps as they came out at the seams, and what the seams still to come are set
// to. Every seam has its blank; an entry in the plan comes with what is noted.

import type { Gap } from "../engine/contract";
import { ensureEntry, entryPointer } from "../state/entries";
import { put, type JsonObject } from "../state/pointer";
import { layerPointer, type Actions, type Desk } from "./desk";
import { every, make, redraw, region, setAttribute } from "./dom";
import { say, saying } from "./say";

export function renderGaps(item: HTMLElement, plan: JsonObject, layer: string, gaps: Gap[]): void {
  const host = region("gaps", item);
  redraw(host, gaps.map((g) => g.seam), () => gaps.map((g) => row(g.seam)));
  const pointer = `${layer}/gaps`;
  const bySeam = new Map(gaps.map((g) => [g.seam, g] as const));
  for (const li of every("[data-seam]", host)) {
    const gap = bySeam.get(li.dataset["seam"] ?? "");
    const blank = li.querySelector("input");
    if (!gap || !blank) continue;
    setAttribute(blank, "data-at", `${entryPointer(plan, pointer, "seam", gap.seam)}/gap`);
    setAttribute(blank, "data-entry-of", pointer);
    setAttribute(blank, "placeholder", gap.planned);
    redraw(region("gap", li), [gap.text, gap.set, gap.offers], () => [
      make("span", { class: "cw-offers", role: "group", "aria-label": say("Likely gaps at seam {seam}", { seam: gap.seam }) }, ...(gap.offers ?? []).map((offer) => offered(gap.seam, offer))),
      gap.text || gap.set ? make("span", { class: "cw-gap-words" }, gap.text || say("set to {set}", { set: gap.set })) : null,
    ]);
  }
}

function row(seam: string): HTMLElement {
  return make(
    "li",
    { "data-seam": seam },
    ...saying("Seam {seam} came out {gap} {more}", {
      seam: make("b", {}, seam),
      gap: make("input", { "data-kind": "length", "data-at": "", "data-entry-key": "seam", "data-entry": seam, inputmode: "text", autocomplete: "off", spellcheck: "false", "aria-label": say("Gap as it came out at seam {seam}", { seam }) }),
      more: make("span", { "data-fill": "gap" }),
    }),
  );
}

function offered(seam: string, offer: string): HTMLElement {
  return make("button", { type: "button", "data-do": "offer-gap", "data-to": offer, "data-key": seam, "aria-label": say("Gap of {offer} at seam {seam}", { offer, seam }) }, offer);
}

export function gapActions(desk: Desk): Actions {
  return {
    "offer-gap": (b) =>
      desk.change((plan) => {
        const place = ensureEntry(plan, `${layerPointer(b)}/gaps`, "seam", b.dataset["key"] ?? "");
        put(plan, `${place}/gap`, b.dataset["to"] ?? "");
      }),
  };
}
