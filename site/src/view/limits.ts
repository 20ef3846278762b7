// What products may hold by law and what they hold by their labels: one line at
// the step whose product it is, and all of them together under Safety.

import type { VOCLine } from "../engine/contract";
import { at, list, typedText, type JsonObject } from "../state/pointer";
import { every, make, redraw, region, setAttribute, setText } from "./dom";
import { judged, type Verdict } from "./judged";

const verdicts: Readonly<Record<VOCLine["verdict"], Verdict>> = {
  within: ["good", "within"],
  above: ["bad", "above"],
  unknown: ["open", "not known"],
};

export function renderLimits(plan: JsonObject, limits: VOCLine[]): void {
  const byStep = new Map(limits.map((l) => [l.step, l] as const));
  const steps = list(plan, "/finish/steps");
  const names = new Map(steps.map((s) => [typedText(at(s, "/id")), typedText(at(s, "/name"))] as const));
  every(".cw-step").forEach((item, i) => {
    const line = byStep.get(typedText(at(steps[i] ?? null, "/id")));
    const place = region("step-limit", item);
    setText(place, line?.text ?? "");
    setAttribute(place, "data-verdict", line?.verdict ?? null);
    // What a shut fold hides is told on it.
    setText(region("label-head", item), line?.verdict === "above" ? ": above the limit" : "");
  });
  const named = limits.map((l) => ({ ...l, name: names.get(l.step) ?? l.step }));
  redraw(region("limits"), named, () => (named.length > 0 ? [table(named), sources(limits)] : []));
}

function table(lines: (VOCLine & { name: string })[]): HTMLElement {
  return make(
    "table",
    { class: "cw-checks cw-limits" },
    make("caption", {}, "Solvent in the products, and what the law allows"),
    make("thead", {}, make("tr", {}, make("td", {}), make("th", { scope: "col" }, "it holds"), make("th", { scope: "col" }, "allowed"), make("td", {}))),
    make(
      "tbody",
      {},
      ...lines.map((l) =>
        make(
          "tr",
          { "data-verdict": l.verdict },
          make("th", { scope: "row" }, l.name, make("small", {}, [l.category, l.rule].filter(Boolean).join("; "))),
          make("td", { "data-head": "it holds" }, l.holds || "—"),
          make("td", { "data-head": "allowed" }, l.limit || "—"),
          make("td", {}, judged(verdicts[l.verdict])),
        ),
      ),
    ),
  );
}

/** Each table of limits is named once, with its day. */
function sources(lines: VOCLine[]): HTMLElement | null {
  const said = Array.from(new Set(lines.filter((l) => l.source).map((l) => (l.asOf ? `${l.source} (${l.asOf})` : l.source))));
  return said.length === 0 ? null : make("details", { class: "cw-fold" }, make("summary", {}, "whose limits, and as of when"), ...said.map((s) => make("p", { class: "cw-source" }, s)));
}
