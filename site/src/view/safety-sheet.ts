// The safety sheet for the wall: one page, to be read out, added to and signed.
// The page of the printer is not known, so that the sheet is measured against
// the smallest that may come, and says less, step by step, until it fits. What
// stops the work, and what has to be found out first, is never left out.

import type { Advice, Question, Severity, Sheet } from "../engine/contract";
import { at, typedText } from "../state/pointer";
import type { Plan } from "../state/plan";
import { make, region, setAttribute } from "./dom";
import { layAlone } from "./paper";
import { ANY, rulersOf, standingApart } from "./safety";
import { firstSentence, severityWord, sign } from "./signs";
import { printPage } from "./handing";
import { say } from "./say";

/** How much is said of the notes of one severity. */
type Say = "source" | "words" | "sentence" | "nothing";

interface Amount {
  stop: Say;
  caution: Say;
  note: Say;
  more: Say; // what the page keeps on demand
  figures: boolean;
  type: "large" | "middle" | "small"; // small is 8 pt
  own: number; // lines for what the site adds
  names: number; // lines for who has read it, two names a line
}

/** From all that can be said to the least: the first that fits is printed. A
 *  caution holds several acts, so the figures go before any of its words. */
const amounts: Amount[] = [
  { stop: "source", caution: "source", note: "source", more: "words", figures: true, type: "large", own: 4, names: 4 },
  { stop: "source", caution: "source", note: "words", more: "words", figures: true, type: "middle", own: 4, names: 4 },
  { stop: "source", caution: "words", note: "words", more: "words", figures: true, type: "middle", own: 4, names: 4 },
  { stop: "source", caution: "words", note: "words", more: "sentence", figures: true, type: "small", own: 4, names: 3 },
  { stop: "words", caution: "words", note: "words", more: "sentence", figures: true, type: "small", own: 4, names: 3 },
  { stop: "words", caution: "words", note: "words", more: "nothing", figures: true, type: "small", own: 2, names: 2 },
  { stop: "words", caution: "words", note: "words", more: "nothing", figures: false, type: "small", own: 4, names: 3 },
  { stop: "words", caution: "words", note: "words", more: "nothing", figures: false, type: "small", own: 2, names: 2 },
  { stop: "words", caution: "words", note: "sentence", more: "nothing", figures: false, type: "small", own: 2, names: 2 },
  { stop: "words", caution: "words", note: "nothing", more: "nothing", figures: false, type: "small", own: 2, names: 2 },
  { stop: "words", caution: "sentence", note: "nothing", more: "nothing", figures: false, type: "small", own: 2, names: 2 },
  { stop: "sentence", caution: "sentence", note: "nothing", more: "nothing", figures: false, type: "small", own: 2, names: 2 },
  { stop: "sentence", caution: "nothing", note: "nothing", more: "nothing", figures: false, type: "small", own: 2, names: 2 },
];

/** What of the platform and of the air stands on the sheet, where it is known. */
const shown: { heading: string; figures: string[] }[] = [
  { heading: say("Platform"), figures: ["platform.height", "platform.least", "platform.most", "platform.base", "platform.load", "platform.floor", "platform.days", "overhead.hours"] },
  { heading: say("Air, screening figures"), figures: ["air.changes", "air.flow", "air.peak", "air.average", "air.share", "air.atOnce", "air.reentry"] },
];

const ownLines = [say("First aid, and the nearest hospital"), say("Who to call, and on what number"), say("Power is off at, locked by"), say("Also")];

export function printSafetySheet(plan: Plan, sheet: Sheet): void {
  layAlone("safety", fitting(plan, sheet));
  printPage();
}

/** The fullest sheet that is no higher than the page. */
function fitting(plan: Plan, sheet: Sheet): HTMLElement {
  const host = region("cards");
  const gauge = make("div", { class: "cw-safety-page" });
  setAttribute(host, "data-measuring", "");
  let laid = make("div");
  for (const amount of amounts) {
    laid = whole(plan, sheet, amount);
    host.replaceChildren(gauge, laid);
    if (laid.offsetHeight <= gauge.offsetHeight) break;
  }
  setAttribute(host, "data-measuring", null);
  return laid;
}

function whole(plan: Plan, sheet: Sheet, amount: Amount): HTMLDivElement {
  const { standing, others } = standingApart(sheet.safety ?? []);
  const of = (severity: Severity) => others.filter((n) => n.severity === severity && !n.onDemand);
  const rulers = rulersOf(typedText(at(plan, "/place/rules")));
  return make(
    "div",
    { class: "cw-safety-sheet", "data-type": amount.type },
    make(
      "header",
      {},
      make("h2", {}, say("Safety sheet")),
      make("p", {}, typedText(plan["title"]) || say("Job: ______________________________")),
      make("p", {}, say("Date ________________")),
    ),
    make(
      "p",
      { class: "cw-safety-standing" },
      [standing?.words ?? "", standing?.decides ?? "", rulesRead(rulers), say("The products’ own sheets come before this one.")].filter(Boolean).join(" "),
    ),
    toFindOut(sheet.findOut ?? []),
    part(say("Stop: nobody starts until this is done"), of("stop"), amount.stop),
    make("div", { class: "cw-safety-columns" }, part(say("Take care"), of("caution"), amount.caution), part(say("Also know"), of("note"), amount.note), amount.more === "nothing" ? null : part(say("More"), others.filter((n) => n.onDemand), amount.more), amount.figures ? make("div", { class: "cw-safety-figures" }, ...shown.map((s) => figures(sheet, s.heading, s.figures))) : null),
    make("section", { class: "cw-safety-own" }, make("h3", {}, say("For this site")), ...ownLines.slice(0, amount.own).map((words) => make("p", {}, words))),
    signed(amount.names),
  );
}

function rulesRead(rulers: string): string {
  return rulers === "" || rulers === ANY ? say("No country was chosen: the strictest rule known was read.") : say("The rules read are those of {rulers}.", { rulers });
}

function part(heading: string, notes: Advice[], how: Say): HTMLElement | null {
  const [first] = notes;
  if (!first) return null;
  return make(
    "section",
    { "data-severity": first.severity },
    make("h3", {}, sign(first.severity), " ", how === "sentence" ? say("{heading} ({n}, in short)", { heading, n: notes.length }) : `${heading} (${String(notes.length)})`),
    how === "nothing" ? make("p", {}, say("There is no room for these here. Read them under Safety on the whole sheet.")) : make("ul", {}, ...notes.map((n) => entry(n, how))),
  );
}

/** What nobody has said yet, with a line for the answer. */
function toFindOut(questions: Question[]): HTMLElement | null {
  if (questions.length === 0) return null;
  return make("section", { class: "cw-safety-asked" }, make("h3", {}, say("Find out first")), make("p", {}, ...questions.flatMap((q) => [make("span", {}, q.words), " ______ "])));
}

function entry(n: Advice, how: Say): HTMLElement {
  const [first, rest] = firstSentence(n.words);
  return make(
    "li",
    { "data-note": n.id },
    make(how === "sentence" && n.severity !== "stop" ? "span" : "b", {}, n.severity === "stop" ? `${severityWord.stop}. ${first}` : first),
    how === "sentence" ? "" : ` ${rest}`,
    how === "source" ? make("small", {}, ` ${[n.working, n.source].filter(Boolean).join(" · ")}`) : null,
  );
}

function figures(sheet: Sheet, heading: string, ids: string[]): HTMLElement | null {
  const known = ids.map((id) => sheet.figures?.find((f) => f.id === id)).filter((f) => f !== undefined);
  if (known.length === 0) return null;
  return make(
    "section",
    {},
    make("h3", {}, heading),
    make("dl", {}, ...known.map((f) => make("div", {}, make("dt", {}, f.label), make("dd", {}, f.text)))),
  );
}

/** Two names side by side in every row. */
function signed(rows: number): HTMLElement {
  const cells = [say("Name"), say("Date"), say("Signature"), say("Name"), say("Date"), say("Signature")];
  return make(
    "table",
    { class: "cw-safety-signed" },
    make("caption", {}, say("Read by")),
    make("thead", {}, make("tr", {}, ...cells.map((c) => make("th", { scope: "col" }, c)))),
    make("tbody", {}, ...Array.from({ length: rows }, () => make("tr", {}, ...cells.map(() => make("td", {}))))),
  );
}
