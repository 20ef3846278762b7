// The price: the firm's own copy line by line, the client's without what is
// behind it, and what else it could be.

import type { Price, Sheet, Total } from "../engine/contract";
import { at, list, typedText, type JsonObject } from "../state/pointer";
import type { Actions, Desk } from "./desk";
import { action, every, make, redraw, region, setText } from "./dom";
import { isOpen, toggleWorking } from "./figures";
import { folded } from "./folded";
import { isForClient, ownBehind } from "./looking";
import { headingFor, layAlone, toSign } from "./paper";
import { printPage } from "./handing";
import { calm, quoted } from "./names";
import { say } from "./say";

export function renderPrice(plan: JsonObject, price: Price | null): void {
  const layers = list(plan, "/mask/layers");
  every("[data-item-of=mask-price]").forEach((item, i) => {
    const name = typedText(at(layers[i] ?? null, "/name")) || typedText(at(layers[i] ?? null, "/id"));
    setText(region("layer-name", item), calm(name));
    item.querySelector("input")?.setAttribute("aria-label", say("What the panels of {name} cost", { name: quoted(name) }));
    item.querySelector("select")?.setAttribute("aria-label", say("What the price of {name} is for", { name: quoted(name) }));
  });
  const money = currencyOf(plan);
  const views = { client: isForClient(plan), canGoBack: ownBehind(plan) !== null };
  redraw(region("price"), [price, views, money, isOpen(SUMS)], () => (price ? shown(price, money, views) : []));
}

function currencyOf(plan: JsonObject): string {
  return typedText(at(plan, isForClient(plan) ? "/quote/currency" : "/price/currency")).trim();
}

/** What stands over a table of money: sums in it are written without currency. */
function caption(words: string, money: string, more: HTMLElement | null = null): HTMLElement {
  return make("caption", {}, money === "" ? words : say("{title}, in {currency}", { title: words, currency: money }), more ? " " : null, more);
}

/** Which copy is in view, and whether the firm's own is behind a client's. */
interface Views {
  client: boolean;
  canGoBack: boolean;
}

function shown(price: Price, money: string, views: Views): (Node | null)[] {
  const summary = make("p", { class: "cw-summary" }, price.text);
  if (views.client) {
    return [
      summary,
      make("p", { class: "cw-quoted" }, price.quoted),
      views.canGoBack ? copies(views) : null,
      price.client.length > 0 ? clientCopy(price, money) : null,
      printButton(),
    ];
  }
  if ((price.lines ?? []).length === 0) return price.text || price.range ? [price.text ? summary : null, copies(views)] : [];
  return [
    summary,
    copies(views),
    make("table", { class: "cw-price" }, caption(say("What it comes to"), money), totals(price)),
    folded("price.lines", [say("line by line ({n})", { n: price.lines.length })], lines(price, money)),
    whatIfs(price),
    printButton(),
  ];
}

function printButton(): HTMLElement {
  return make("p", { class: "cw-more cw-block-tools" }, action("print-price", say("Print this price")));
}

/** Which copy is in view, and what follows from it. */
function copies(views: Views): HTMLElement {
  const button = (to: string, words: string, pressed: boolean) => action("look", words, { "data-to": to, "aria-pressed": String(pressed) });
  return make(
    "p",
    { class: "cw-copies cw-more", role: "group", "aria-label": say("Which copy is shown") },
    button("own", say("Own copy, line by line"), !views.client),
    button("client", say("Client’s copy"), views.client),
    make(
      "small",
      {},
      views.client
        ? say("Print, link, file and saved page now give this copy: no rates, and the price as it stands.")
        : say("Print, link, file and saved page give all of it, rates too."),
    ),
  );
}

/** Under which name the sums of the lines are opened. */
const SUMS = "price.lines";

/** The sum of a line, to be worked out again, where the sums are opened. */
function sumOf(working: string): HTMLElement | null {
  return isOpen(SUMS) && working !== "" ? make("small", { class: "cw-line-sum" }, working) : null;
}

/** All of it in one table, for paper. */
function ownCopy(price: Price, money: string): HTMLElement {
  const table = lines(price, money);
  table.append(totals(price));
  return table;
}

function totals(price: Price): HTMLElement {
  return make("tfoot", {}, ...price.totals.map((t) => totalRow(t, "3")));
}

/** Lines stand under what they belong to: masks, materials, work. */
function lines(price: Price, money: string): HTMLElement {
  const rows: HTMLElement[] = [];
  let group = "";
  for (const line of price.lines) {
    if (line.group !== group) {
      group = line.group;
      rows.push(make("tr", { class: "cw-group" }, make("th", { scope: "colgroup", colspan: "4" }, group)));
    }
    rows.push(
      make("tr", {}, make("th", { scope: "row" }, line.what, sumOf(line.working)), make("td", {}, line.amount), make("td", { class: "cw-cost" }, line.rate), make("td", { class: "cw-cost" }, line.sum)),
    );
  }
  return make(
    "table",
    { class: "cw-price" },
    caption(say("What it costs"), money, action("price-sums", say("working"), { "aria-expanded": String(isOpen(SUMS)), class: "cw-how" })),
    make("tbody", {}, ...rows),
  );
}

function totalRow(total: Total, across: string): HTMLElement {
  return make("tr", {}, make("th", { scope: "row", colspan: across }, total.what, total.text ? make("small", {}, ` ${total.text}`) : null, sumOf(total.working)), make("td", { class: "cw-cost" }, total.sum));
}

function clientCopy(price: Price, money: string): HTMLElement {
  const last = price.totals.at(-1);
  return make(
    "div",
    {},
    make(
      "table",
      { class: "cw-price" },
      caption(say("Price"), money),
      make("tbody", {}, ...price.client.map((t) => totalRow({ ...t, text: "" }, "1"))),
      last ? make("tfoot", {}, totalRow({ ...last, text: "" }, "1")) : null,
    ),
    price.stages.length > 0
      ? make("table", { class: "cw-price" }, caption(say("To be paid"), money), make("tbody", {}, ...price.stages.map((t) => totalRow(t, "1"))))
      : null,
  );
}

/** What is to be seen before the price is said: the same job, one thing changed. */
function whatIfs(price: Price): HTMLElement | null {
  if (price.whatIf.length === 0) return null;
  return make(
    "div",
    { class: "cw-what-ifs" },
    make("h3", {}, say("One thing changed")),
    ...price.whatIf.map((w) => folded(`what-if:${w.what}`, [make("span", {}, w.what), make("b", {}, w.sum), make("small", {}, w.change)], make("p", {}, w.text))),
  );
}

/** When the client has the room back: nothing of who works how long. */
function doneOn(sheet: Sheet | null): HTMLElement | null {
  const text = sheet?.days?.text ?? "";
  return text === "" ? null : make("p", {}, text);
}

export function priceActions(desk: Desk, sheet: () => Sheet | null): Actions {
  return {
    "price-sums": () => {
      toggleWorking(SUMS);
      desk.redraw();
    },
    "print-price": () => {
      const price = sheet()?.price;
      if (!price) return;
      const money = currencyOf(desk.plan());
      if (isForClient(desk.plan())) {
        layAlone("price", headingFor(desk.plan(), say("price")), clientCopy(price, money), make("p", {}, price.quoted), doneOn(sheet()), toSign(say("For the client, and date")), toSign(say("For the painter, and date")));
      } else layAlone("price", headingFor(desk.plan(), say("price, own copy")), ownCopy(price, money), whatIfs(price));
      printPage();
    },
  };
}
