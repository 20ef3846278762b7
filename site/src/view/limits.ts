// What products may hold by law and what they hold by their labels: one line at
// the step whose product it is, and all of them together under Safety.

import type { VOCLine } from "../engine/contract";
import { make, redraw, region, setAttribute, setText } from "./dom";
import { judged, type Verdict } from "./judged";
import { onSheet } from "./pages";
import { say } from "./say";

const verdicts: Readonly<Record<VOCLine["verdict"], Verdict>> = {
  within: ["good", say("within")],
  above: ["bad", say("above")],
  unknown: ["open", say("not known")],
};

/** The line at each step. */
export function renderStepLimits(limits: VOCLine[]): void {
  const byStep = new Map(limits.map((l) => [stepOf(l), l] as const));
  for (const item of onSheet(".cw-step")) {
    const line = byStep.get(item.dataset["base"] ?? "");
    // What is shut is told on its line.
    setText(region("step-look", item), line?.verdict === "above" ? say("above the limit") : "");
    const place = item.querySelector("[data-fill=step-limit]");
    if (!place) continue;
    setText(place, line ? lineText(line) : "");
    setAttribute(place, "data-verdict", line?.verdict ?? null);
  }
}

export function renderLimits(limits: VOCLine[]): void {
  const drawn = redraw(region("limits"), limits, () => (limits.length > 0 ? [table(limits), sources(limits)] : []));
  // What the law does not allow is not shut away.
  if (drawn && limits.some((l) => l.verdict === "above")) region("limits").closest("details")?.setAttribute("open", "");
}

/** The pointer of the step a line is about; the line's own is that of a blank in it. */
function stepOf(line: VOCLine): string {
  return /^\/finish\/steps\/\d+/.exec(line.at)?.[0] ?? "";
}

function lineText(line: VOCLine): string {
  const figures = [line.limit ? say("limit {limit}", { limit: line.limit }) : "", line.holds ? say("it holds {holds}", { holds: line.holds }) : ""].filter(Boolean).join(", ");
  return [figures ? `${upperFirst(figures)}.` : "", line.text].filter(Boolean).join(" ");
}

function upperFirst(words: string): string {
  return `${(words[0] ?? "").toUpperCase()}${words.slice(1)}`;
}

function distinct(words: string[]): string[] {
  return Array.from(new Set(words.filter(Boolean)));
}

/** The rule is said once above all lines where it is one, and what several lack at the first of them. */
function table(lines: VOCLine[]): HTMLElement {
  const rules = distinct(lines.map((l) => l.rule));
  const one = rules.length === 1 ? rules[0] : "";
  const first = (l: VOCLine): boolean => lines.find((other) => other.text === l.text) === l;
  return make(
    "table",
    { class: "cw-checks cw-limits" },
    make("caption", {}, say("Solvent in the products, and what the law allows"), one ? make("small", {}, `${one}.`) : null),
    make("thead", {}, make("tr", {}, make("td", {}), make("th", { scope: "col" }, say("it holds")), make("th", { scope: "col" }, say("limit")), make("td", {}))),
    make("tbody", {}, ...lines.map((l) => row(l, one === "", first(l)))),
  );
}

function row(l: VOCLine, withRule: boolean, withText: boolean): HTMLElement {
  const said = [l.category, withRule ? l.rule : ""].filter(Boolean).join("; ");
  return make(
    "tr",
    {},
    make("th", { scope: "row" }, l.step, said ? make("small", {}, said) : null, !withText || (l.verdict === "within" && !/\. ./.test(l.text)) ? null : make("small", {}, l.text)),
    make("td", { "data-head": say("it holds") }, l.holds || "—"),
    make("td", { "data-head": say("limit") }, l.limit || "—"),
    make("td", {}, judged(verdicts[l.verdict])),
  );
}

/** Each table of limits is named once, with its day. */
function sources(lines: VOCLine[]): HTMLElement | null {
  const said = distinct(lines.map((l) => (l.source && l.asOf ? say("{source} As of: {asOf}.", { source: l.source, asOf: l.asOf }) : l.source)));
  return said.length === 0 ? null : make("div", {}, ...said.map((s) => make("p", { class: "cw-source" }, s)));
}
