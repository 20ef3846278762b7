// The job at a glance: the list of its pages with what each comes to, the answers
// people come for, and what to see to first.

import type { Overview, PageState, Sheet } from "../engine/contract";
import { list, put, typedText, type JsonObject } from "../state/pointer";
import type { Actions, Desk } from "./desk";
import { action, every, make, redraw, region, setAttribute, setText } from "./dom";
import { onSheet, pageNamed, pageTitle } from "./pages";
import { say } from "./say";

const nothing: Overview = { answers: [], pages: [], first: [] };

/** What is said of the state of a page; nothing of one that is in order. */
function stateWords(page: PageState): string {
  if (page.ticked && page.stops === 0) return say("done");
  if (page.stops > 0) return say("{n|stop|stops}", { n: page.stops });
  return page.cautions > 0 ? say("{n} to look at", { n: page.cautions }) : "";
}

/** The list of the pages, and where each stands. */
export function renderContents(overview: Overview | null): void {
  const { pages } = overview ?? nothing;
  const byName = new Map(pages.map((p) => [p.page as string, p] as const));
  for (const item of every(".cw-pages li")) {
    const page = byName.get(item.dataset["page"] ?? "");
    setAttribute(item, "data-state", page?.state ?? null);
    setAttribute(item, "data-ticked", page?.ticked ? "" : null);
    setText(item.querySelector(".cw-page-state") as Element, page ? stateWords(page) : "");
    setText(item.querySelector(".cw-page-line") as Element, page?.text ?? "");
  }
  for (const tick of onSheet("[data-do=tick]")) setAttribute(tick, "aria-pressed", String(byName.get(tick.dataset["to"] ?? "")?.ticked ?? false));
}

/** The answers of the first page, and what it says of the layers and the steps, which
 *  have pages of their own. */
export function renderCover(plan: JsonObject, overview: Overview | null): void {
  const { answers, first } = overview ?? nothing;
  redraw(region("answers"), answers, () =>
    answers.map((a) =>
      make(
        "div",
        { "data-answer": a.id },
        make("dt", {}, a.label),
        make("dd", {}, make("a", { href: `#${pageNamed(a.page)}`, "data-figure": a.figure || undefined }, a.text), a.fills ? action("take-answer", say("take it"), { "data-to": a.id }) : null),
      ),
    ),
  );
  redraw(region("first"), first, () =>
    first.length === 0
      ? []
      : [
          make("h3", {}, say("See to {n?this|these} first", { n: first.length })),
          make(
            "ul",
            {},
            ...first.map((f) => make("li", {}, `${f.words} `, f.page === "" ? null : make("a", { href: `#${pageNamed(f.page)}` }, pageTitle(pageNamed(f.page))))),
          ),
        ],
  );
  const layers = list(plan, "/mask/layers").length;
  const steps = list(plan, "/finish/steps").length;
  setText(region("cover-layers"), say("{n|layer|layers}", { n: layers }));
  setText(region("cover-steps"), say("{n|step|steps}", { n: steps }));
  (document.querySelector("[data-cover-begin]") as HTMLElement).hidden = steps > 0;
  (document.querySelector("[data-cover-steps]") as HTMLElement).hidden = steps === 0;
}

export function contentsActions(desk: Desk, sheet: () => Sheet | null): Actions {
  return {
    "take-answer": (b) => {
      const fills = sheet()?.overview?.answers.find((a) => a.id === b.dataset["to"])?.fills ?? [];
      desk.change((plan) => {
        for (const { at, text } of fills) put(plan, at, text);
      }, "", fills[0]?.at);
    },
    tick: (b) => {
      const page = b.dataset["to"] ?? "";
      desk.change((plan) => {
        const ticked = list(plan, "/ticked").map((p) => typedText(p));
        put(plan, "/ticked", ticked.includes(page) ? ticked.filter((p) => p !== page) : [...ticked, page]);
      }, say("the tick of a page"));
    },
  };
}
