// Answers of the finish: what each step needs, how it is mixed and divided, and
// the list to shop by. Steps are begun here too, with the engine's own values.

import type { Engine } from "../engine/calls";
import type { Climate, Drawing, Section, Sheet, Step, Total } from "../engine/contract";
import { bareStep, withLayer } from "../state/entries";
import { fileName } from "../state/plan";
import { at, list, put, typedText, type Json, type JsonObject } from "../state/pointer";
import { hear } from "./announce";
import { figures } from "./answer";
import { wordsFor, type Offered } from "./choices";
import type { Actions, Desk } from "./desk";
import { action, every, make, redraw, region, setAttribute, setText } from "./dom";
import { draw, keyOf } from "./drawing";
import { figurePlace } from "./figures";
import { handOver, printPage } from "./handing";
import { insertItem } from "./lists";
import { calm, quoted } from "./names";
import { layAlone } from "./paper";
import { say } from "./say";
import { isStepOpen, nextOpen } from "./step-open";

const STEPS = "/finish/steps";

/** What is bought stands large, with the likely need, the least and the most
 *  under it; what leads to them comes last. */
const bought = ["cans", "packs", "books"];

/** The figures of a step in the order they are read, the first of them large. */
function figurePlaces(figures: string[]): HTMLElement[] {
  const among = (...names: string[]) => figures.filter((id) => names.includes(id.slice(id.lastIndexOf(".") + 1)));
  const need = among("product");
  const large = among(...bought).length > 0 ? among(...bought) : need;
  const range = among("lean", "rich");
  const small = (ids: string[]) => ids.filter((id) => !large.includes(id)).map((id) => figurePlace(id, "small"));
  return [
    ...large.map((id) => figurePlace(id, "large")),
    ...small(need),
    ...(range.length > 0 ? [make("div", { class: "cw-range" }, ...small(range))] : []),
    ...small(figures.filter((id) => !need.includes(id) && !range.includes(id))),
  ];
}

export function renderSteps(plan: JsonObject, steps: Step[], drawings: Drawing[]): void {
  const byId = new Map(steps.map((s) => [s.id, s] as const));
  const typed = list(plan, STEPS);
  const begin = document.querySelector<HTMLElement>("[data-begin]");
  if (begin) begin.hidden = typed.length > 0;
  every(".cw-step").forEach((item, i) => {
    const entry = typed[i] ?? null;
    const step = byId.get(typedText(at(entry, "/id")));
    setAttribute(item, "data-kind", typedText(at(entry, "/kind")) || null);
    renderHead(item, entry, i, typed.length);
    renderLine(item, step);
    if (item.querySelector("[data-whole] > *")) renderWhole(item, step, drawings);
  });
}

/** What a step comes to, on its line: what is bought, and what of it is needed. */
function renderLine(item: HTMLElement, step: Step | undefined): void {
  const all = step?.figures ?? [];
  const of = (names: string[]) => names.map((name) => figures().get(all.find((id) => id.endsWith(`.${name}`)) ?? "")).find((f) => f !== undefined);
  const buys = of(bought);
  setText(region("step-bought", item), buys?.text ?? "");
  setText(region("step-need", item), of(["product", "area"])?.text ?? "");
}

/** With which step it is bought, where it is. */
function shared(step: Step | undefined): string {
  return step && step.material !== "" && step.material !== step.id ? step.buy : "";
}

function renderWhole(item: HTMLElement, step: Step | undefined, drawings: Drawing[]): void {
  const ids = step?.figures ?? [];
  redraw(region("step-figures", item), ids, () => figurePlaces(ids));
  setText(region("step-note", item), [...said(step), ...(step?.notes ?? [])].join(" "));
  const mix = step?.mixLines ?? [];
  const sample = step?.sampleLines ?? [];
  const sections = step?.sections ?? [];
  const drawing = drawings.find((d) => d.shows === "sections" && d.id === `step.${step?.id ?? ""}.sections`);
  redraw(region("step-more", item), [mix, sample, sections, drawing?.id ?? ""], () => [
    mix.length > 0 ? mixTable(say("The mix"), mix) : null,
    sample.length > 0 ? mixTable(say("For the sample board"), sample) : null,
    ...(sections.length > 0 ? sectionList(sections, drawing) : []),
  ]);
}

/** What is left over, or with which step it is bought, as sentences. */
function said(step: Step | undefined): string[] {
  if (!step) return [];
  return [shared(step), step.leftOver].filter(Boolean).map((words) => `${(words[0] ?? "").toUpperCase()}${words.slice(1)}.`);
}

/** The line of a step opens it; the handle and the buttons say which step they move. */
function renderHead(item: HTMLElement, entry: Json, index: number, count: number): void {
  const called = calm(typedText(at(entry, "/name"))) || say("step {index}", { index: index + 1 });
  const id = typedText(at(entry, "/id"));
  const line = item.querySelector(".cw-step-line") as Element;
  setAttribute(line, "data-to", id);
  setAttribute(line, "aria-expanded", String(isStepOpen(id)));
  setText(region("step-name", item), called);
  const handle = item.querySelector(".cw-handle");
  if (handle) {
    setAttribute(handle, "aria-label", say("Move “{step}”, step {index} of {count}: draw it, or press Alt with the up or down arrow", { step: called, index: index + 1, count }));
    setAttribute(handle, "title", say("Draw it to another place, or press Alt with ↑ or ↓"));
  }
  for (const [doing, label] of [
    ["earlier", say("“{step}” one step earlier", { step: called })],
    ["later", say("“{step}” one step later", { step: called })],
    ["remove", say("leave it out: “{step}”", { step: called })],
  ] as const) {
    const button = every(`[data-do=${doing}]`, item).find((b) => b.closest("[data-item-of]") === item);
    if (button) setAttribute(button, "aria-label", label);
  }
}

function mixTable(caption: string, lines: Step["mixLines"]): HTMLElement {
  const rounded = lines.some((l) => l.error !== "");
  return make(
    "table",
    { class: "cw-mix" },
    make("caption", {}, caption),
    make(
      "thead",
      {},
      make("tr", {}, make("th", { scope: "col" }, say("part")), make("th", { scope: "col" }, say("measure out")), make("th", { scope: "col" }, say("exactly")), rounded ? make("th", { scope: "col" }, say("off by")) : null),
    ),
    make(
      "tbody",
      {},
      ...lines.map((l) => make("tr", {}, make("th", { scope: "row" }, l.name), make("td", {}, make("b", {}, l.measured)), make("td", {}, l.exact), rounded ? make("td", {}, l.error) : null)),
    ),
  );
}

function sectionList(sections: Section[], drawing: Drawing | undefined): HTMLElement[] {
  return [
    make("h3", {}, sections.length === 1 ? say("Sized and laid in one go") : say("Sized and laid in {n} sections", { n: sections.length })),
    make(
      "ol",
      { class: "cw-sections" },
      ...sections.map((s) =>
        make(
          "li",
          {},
          make("b", {}, String(s.n)),
          make("span", { class: "cw-section-panels" }, s.panels.length > 0 ? s.panels.join(" ") : s.area, " ", make("small", {}, [s.panels.length > 0 ? s.area : "", s.hours].filter(Boolean).join(", "))),
          make("span", { class: "cw-section-text" }, s.text),
        ),
      ),
    ),
    ...(drawing ? [make("p", { class: "cw-more" }, action("draw", say("Show the sections in the drawing"), { "data-to": keyOf(drawing) }))] : []),
  ];
}

/** How a verdict on the air looks. */
const verdicts: Record<string, string> = { go: "pass", stop: "fail", unknown: "unsure" };

export function renderClimate(climate: Climate | null): void {
  const place = region("climate");
  setText(place, climate?.text ?? "");
  setAttribute(place, "data-verdict", verdicts[climate?.verdict ?? ""] ?? null);
  setText(region("drying"), climate?.drying ?? "");
}

type Shopping = NonNullable<Sheet["shopping"]>;

export function renderShopping(shopping: Shopping, bill: Total | null, steps: Step[]): void {
  const labels = steps.some((s) => s.label.length > 0);
  redraw(region("shopping"), [shopping, bill, labels], () =>
    shopping.length === 0
      ? []
      : [
          make("h3", {}, say("To buy")),
          shoppingTable(shopping, bill),
          make(
            "p",
            { class: "cw-more cw-shopping-tools" },
            action("print-shopping", say("Print this list")),
            action("save-shopping", say("Save it as a table")),
            labels ? action("print-labels", say("Print labels for the pots")) : null,
          ),
        ],
  );
}

function shoppingTable(shopping: Shopping, bill: Total | null): HTMLElement {
  const priced = shopping.some((l) => l.cost !== "");
  return make(
    "table",
    { class: "cw-shopping" },
    make(
      "tbody",
      {},
      ...shopping.map((line) =>
        make(
          "tr",
          {},
          make("td", { class: "cw-tick", "aria-hidden": "true" }),
          make("th", { scope: "row" }, line.what, line.detail ? make("small", {}, ` ${line.detail}`) : null),
          make("td", {}, line.amount),
          priced ? make("td", { class: "cw-cost" }, line.cost) : null,
        ),
      ),
    ),
    bill && bill.sum !== ""
      ? make(
          "tfoot",
          {},
          make(
            "tr",
            {},
            make("td", { class: "cw-tick", "aria-hidden": "true" }),
            make("th", { scope: "row", colspan: "2" }, bill.what, bill.text ? make("small", {}, ` ${bill.text}`) : null),
            make("td", { class: "cw-cost" }, bill.sum),
          ),
        )
      : null,
  );
}

/** A label for each pot, two in a row, to be cut out and stuck on. */
function labels(steps: Step[]): HTMLElement[] {
  return steps
    .filter((s) => s.label.length > 0)
    .map((s) => make("section", { class: "cw-pot" }, ...s.label.map((line, i) => (i === 0 ? make("h3", {}, line) : make("p", {}, line)))));
}

/** The sign that parts a number's whole from its rest where this person is. */
function decimalSign(): string {
  return new Intl.NumberFormat(navigator.languages).formatToParts(1.5).find((p) => p.type === "decimal")?.value === "," ? "," : "";
}

export function finishActions(desk: Desk, sheet: () => Sheet | null, engine: () => Engine | null): Actions {
  const heading = (what: string) => make("h2", {}, [typedText(desk.plan()["title"]), what].filter(Boolean).join(": "));
  return {
    begin: (b) => addSteps(desk, engine(), b.dataset["to"] ?? ""),
    draw: (b) => {
      draw(b.dataset["to"] ?? "");
      desk.redraw();
      document.querySelector(".cw-drawing")?.scrollIntoView({ block: "nearest" });
    },
    "print-shopping": () => {
      layAlone("list", heading(say("to buy")), shoppingTable(sheet()?.shopping ?? [], sheet()?.bill ?? null));
      printPage();
    },
    "print-labels": () => {
      layAlone("labels", ...labels(sheet()?.steps ?? []));
      printPage();
    },
    "save-shopping": () => {
      const table = engine()?.shopping(JSON.stringify(desk.plan()), decimalSign()) ?? "";
      if (table === "") return;
      const name = fileName(desk.plan(), ".to-buy.csv");
      handOver(name, "text/csv;charset=utf-8", table, say("A spreadsheet opens it."));
    },
  };
}

const MOST_LAYERS_BROUGHT = 2;

/** Adds a step, or a set of steps, in the place that is chosen; what is added
 *  next goes after it. */
export function addSteps(desk: Desk, engine: Engine | null, what: string): void {
  const before = list(desk.plan(), STEPS);
  let begun = desk.plan();
  let added = startingSteps(begun, engine, what);
  // A set for more layers than there are brings along those that it goes through.
  for (let more = 0; more < MOST_LAYERS_BROUGHT && added.length > 1; more++) {
    const wider = withLayer(begun);
    const steps = startingSteps(wider, engine, what);
    const layer = typedText(at(list(wider, "/mask/layers").at(-1) ?? null, "/id"));
    if (!steps.some((s) => typedText(at(s, "/layer")) === layer)) break;
    [begun, added] = [wider, steps];
  }
  const layers = list(begun, "/mask/layers");
  if (added.length === 0) return;
  const chosen = document.querySelector<HTMLSelectElement>("[data-new-place]");
  const index = placeOf(chosen?.value ?? "", before);
  // New elements come in where the entries do, so that the folds stay with theirs.
  for (let i = 0; i < added.length; i++) insertItem(`${STEPS}/${String(index)}`);
  nextOpen(typedText(at(added[0] ?? null, "/id")));
  desk.change((plan) => {
    put(plan, STEPS, [...before.slice(0, index), ...added, ...before.slice(index)]);
    put(plan, "/mask/layers", layers);
  });
  if (chosen && index < before.length) chosen.value = typedText(at(added.at(-1) ?? null, "/id"));
  document.querySelector<HTMLElement>(`.cw-step[data-base="${STEPS}/${String(index)}"] [data-rel=name]`)?.focus();
  const where = before.length === 0 ? say("to the sheet") : index === before.length ? say("after those that were there") : index === 0 ? say("before all others") : say("after {step}", { step: called(before[index - 1] ?? null) });
  if (added.length > 1) hear(say("{n} steps are added {where}: {what}.", { n: added.length, where, what: wordsFor(what) }));
}

/** Where new steps can go: the end, the beginning, or after any step there is. */
export function placesFor(plan: JsonObject): Offered[] {
  const steps = list(plan, STEPS);
  if (steps.length === 0) return [["", say("at the end")]];
  return [["", say("at the end")], [FIRST, say("before all others")], ...steps.slice(0, -1).map((s): Offered => [typedText(at(s, "/id")), say("after {step}", { step: called(s) })])];
}

const FIRST = "/"; // no step is called so: ids go into pointers

/** The index a choice of place means. */
function placeOf(choice: string, steps: Json[]): number {
  if (choice === FIRST) return 0;
  const after = steps.findIndex((s) => typedText(at(s, "/id")) === choice);
  return choice === "" || after < 0 ? steps.length : after + 1;
}

function called(step: Json): string {
  return quoted(typedText(at(step, "/name")));
}

function startingSteps(plan: JsonObject, engine: Engine | null, what: string): Json[] {
  if (!engine) return [bareStep(what, plan)];
  try {
    const steps = JSON.parse(engine.starting(what, JSON.stringify(plan))) as Json;
    return Array.isArray(steps) ? steps : [];
  } catch {
    return [bareStep(what, plan)];
  }
}
