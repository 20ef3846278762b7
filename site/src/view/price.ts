// The price: the firm's own copy line by line, the client's without what is
// behind it, what else it could be, and the record that is handed over.

import type { FinishRecord, Price, Sheet, Total } from "../engine/contract";
import { at, list, typedText, type JsonObject } from "../state/pointer";
import type { Actions, Desk } from "./desk";
import { action, every, make, redraw, region, setText } from "./dom";
import { layAlone } from "./paper";

/** Which copy is in view: it is not part of the plan. */
let copy: "own" | "client" = "own";

export function renderPrice(plan: JsonObject, price: Price | null): void {
  const layers = list(plan, "/mask/layers");
  every("[data-item-of=mask-price]").forEach((item, i) => {
    const name = typedText(at(layers[i] ?? null, "/name")) || typedText(at(layers[i] ?? null, "/id"));
    setText(region("layer-name", item), name);
    item.querySelector("input")?.setAttribute("aria-label", `What the panels of “${name}” cost`);
  });
  const money = currencyOf(plan);
  redraw(region("price"), [price, copy, money], () => (price ? shown(price, money) : []));
}

function currencyOf(plan: JsonObject): string {
  return typedText(at(plan, "/price/currency")).trim();
}

/** What stands over a table of money: sums in it are written without currency. */
function caption(words: string, money: string): HTMLElement {
  return make("caption", {}, money === "" ? words : `${words}, in ${money}`);
}

function shown(price: Price, money: string): (Node | null)[] {
  if ((price.lines ?? []).length === 0) return price.text ? [make("p", { class: "cw-summary" }, price.text)] : [];
  const own = copy === "own";
  return [
    make("p", { class: "cw-summary" }, price.text),
    make(
      "p",
      { class: "cw-copies cw-more", role: "group", "aria-label": "Which copy is shown" },
      copyButton("own", "Own copy, line by line"),
      copyButton("client", "Client’s copy"),
    ),
    own ? ownCopy(price, money) : clientCopy(price, money),
    own ? whatIfs(price) : null,
    make("p", { class: "cw-more cw-block-tools" }, action("print-client", "Print the client’s copy"), action("print-own", "Print the own copy")),
  ];
}

function copyButton(to: string, words: string): HTMLElement {
  return action("price-copy", words, { "data-to": to, "aria-pressed": String(copy === to) });
}

/** Lines stand under what they belong to: masks, materials, work. */
function ownCopy(price: Price, money: string): HTMLElement {
  const rows: HTMLElement[] = [];
  let group = "";
  for (const line of price.lines) {
    if (line.group !== group) {
      group = line.group;
      rows.push(make("tr", { class: "cw-group" }, make("th", { scope: "colgroup", colspan: "4" }, group)));
    }
    rows.push(
      make("tr", {}, make("th", { scope: "row" }, line.what), make("td", {}, line.amount), make("td", { class: "cw-cost" }, line.rate), make("td", { class: "cw-cost" }, line.sum)),
    );
  }
  return make(
    "table",
    { class: "cw-price" },
    caption("What it costs", money),
    make("tbody", {}, ...rows),
    make("tfoot", {}, ...price.totals.map((t) => totalRow(t, "3"))),
  );
}

function totalRow(total: Total, across: string): HTMLElement {
  return make("tr", {}, make("th", { scope: "row", colspan: across }, total.what, total.text ? make("small", {}, ` ${total.text}`) : null), make("td", { class: "cw-cost" }, total.sum));
}

function clientCopy(price: Price, money: string): HTMLElement {
  const last = price.totals.at(-1);
  return make(
    "div",
    {},
    make(
      "table",
      { class: "cw-price" },
      caption("Price", money),
      make("tbody", {}, ...price.client.map((t) => totalRow({ ...t, text: "" }, "1"))),
      last ? make("tfoot", {}, totalRow({ ...last, text: "" }, "1")) : null,
    ),
    price.stages.length > 0
      ? make("table", { class: "cw-price" }, caption("To be paid", money), make("tbody", {}, ...price.stages.map((t) => totalRow(t, "1"))))
      : null,
  );
}

/** What is to be seen before the price is said: the same job, one thing changed. */
function whatIfs(price: Price): HTMLElement | null {
  if (price.whatIf.length === 0) return null;
  return make(
    "div",
    { class: "cw-what-ifs" },
    make("h3", {}, "One thing changed"),
    make(
      "ul",
      {},
      ...price.whatIf.map((w) =>
        make("li", {}, make("b", {}, w.what), make("span", { class: "cw-what-if-sum" }, w.sum, " ", make("small", {}, w.change)), make("small", { class: "cw-what-if-text" }, w.text)),
      ),
    ),
  );
}

export function renderRecord(record: FinishRecord | null): void {
  const lines = record?.lines ?? [];
  redraw(region("record"), record, () =>
    lines.length === 0
      ? [make("p", { class: "cw-summary" }, "Nothing to record yet: the record follows from the steps of the finish.")]
      : [make("p", { class: "cw-summary" }, record?.text ?? ""), recordTable(record as FinishRecord), make("p", { class: "cw-more cw-block-tools" }, action("print-record", "Print the record"))],
  );
}

const columns: { head: string; of: (l: FinishRecord["lines"][number]) => string }[] = [
  { head: "colour", of: (l) => l.colour },
  { head: "mix", of: (l) => l.mix },
  { head: "batch", of: (l) => l.batch },
  { head: "leaf", of: (l) => l.leaf },
  { head: "done on", of: (l) => l.date },
];

/** One row a step; what is not known yet is a line to write on. */
function recordTable(record: FinishRecord): HTMLElement {
  const used = columns.filter((c) => c.head !== "leaf" || record.lines.some((l) => l.leaf !== ""));
  return make(
    "table",
    { class: "cw-record" },
    make("thead", {}, make("tr", {}, make("th", { scope: "col" }, "step"), ...used.map((c) => make("th", { scope: "col" }, c.head)))),
    make(
      "tbody",
      {},
      ...record.lines.map((l) =>
        make(
          "tr",
          {},
          make("th", { scope: "row" }, l.step, make("small", {}, [l.where, l.area].filter(Boolean).join(", "))),
          ...used.map((c) => make("td", { "data-head": c.head, class: c.of(l) === "" ? "cw-open" : undefined }, c.of(l))),
        ),
      ),
    ),
  );
}

/** When the client has the room back: nothing of who works how long. */
function doneOn(sheet: Sheet | null): HTMLElement | null {
  const text = (figure: string) => sheet?.figures?.find((f) => f.id === figure)?.text ?? "";
  const finish = text("days.finish");
  return finish === "" ? null : make("p", {}, `The work is planned to be done on ${finish}.`);
}

export function priceActions(desk: Desk, sheet: () => Sheet | null): Actions {
  const heading = (what: string) => make("h2", {}, [typedText(desk.plan()["title"]), what].filter(Boolean).join(": "));
  const line = (words: string) => make("p", { class: "cw-sign" }, words);
  return {
    "price-copy": (b) => {
      copy = b.dataset["to"] === "client" ? "client" : "own";
      desk.redraw();
    },
    "print-client": () => {
      const price = sheet()?.price;
      if (!price) return;
      layAlone("price", heading("price"), clientCopy(price, currencyOf(desk.plan())), doneOn(sheet()), line("Date"), line("This price holds until"), line("For the client"), line("For the painter"));
      window.print();
    },
    "print-own": () => {
      const price = sheet()?.price;
      if (!price) return;
      layAlone("price", heading("price, own copy"), ownCopy(price, currencyOf(desk.plan())), whatIfs(price));
      window.print();
    },
    "print-record": () => {
      const record = sheet()?.record;
      if (!record) return;
      layAlone("record", heading("record of the finish"), make("p", {}, record.text), recordTable(record), line("Handed over on"), line("By"));
      window.print();
    },
  };
}
