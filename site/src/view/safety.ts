// Safety: what to find out first, then what to do, most severe first. Each note
// says why it is there with the numbers of this job and who says so, and leads to
// the blank that answers it.

import type { Advice, Question, Severity } from "../engine/contract";
import { offered } from "../generated/plan";
import { at, typedText } from "../state/pointer";
import type { Plan } from "../state/plan";
import { nameOf } from "./blanks";
import { action, every, make, redraw, region } from "./dom";
import { figurePlace } from "./figures";
import { blankAnywhere, lowerFirst } from "./lists";
import { seek } from "./pages";
import { firstSentence, severityWord, sign } from "./signs";
import { quoted } from "./names";
import { and, say } from "./say";

/** The note that says what this sheet is: it stands over all the others. */
const STANDING = "planning-help-only";

/** No country of its own was chosen. */
export const ANY = "other";

/** Whose rule a note is: "the United Kingdom and the European Union". */
export function rulersOf(jurisdiction: string): string {
  return jurisdiction === "all" ? "" : and(jurisdiction.split(" and ").map((j) => (j !== ANY && offered.rules.find(([rules]) => rules === j)?.[1]) || j));
}

/** The notes without the standing one, and that one apart. */
export function standingApart(notes: Advice[]): { standing: Advice | undefined; others: Advice[] } {
  return { standing: notes.find((n) => n.id === STANDING), others: notes.filter((n) => n.id !== STANDING) };
}

/** A blank that answers a note: where it is, and what the way there is called. */
interface Answer {
  to: string;
  words: string;
  open: boolean; // nobody has filled it in
}

export function renderSafety(plan: Plan, notes: Advice[], questions: Question[]): void {
  const host = region("safety");
  const asked = new Set(questions.map((q) => q.at));
  const told = notes.map((n) => [n, answerTo(plan, n.at, asked)] as const);
  const opened = new Set(every<HTMLDetailsElement>("details[open]", host).map(nameOfFold));
  const drawn = redraw(host, [questions, told], () => laidOut(notes, questions, new Map(told)));
  if (drawn) for (const fold of every<HTMLDetailsElement>("details", host)) fold.open ||= opened.has(nameOfFold(fold));
}

function nameOfFold(fold: HTMLElement): string {
  return fold.closest<HTMLElement>("[data-note]")?.dataset["note"] ?? "";
}

type Answers = Map<Advice, Answer | null>;

function laidOut(notes: Advice[], questions: Question[], answers: Answers): (HTMLElement | null)[] {
  const { standing, others } = standingApart(notes);
  const of = (severity: Severity) => others.filter((n) => n.severity === severity && !n.onDemand);
  return [
    standing ? make("p", { class: "cw-standing", "data-note": standing.id }, `${standing.words} ${standing.decides}`) : null,
    others.length === 0 ? null : make("p", { class: "cw-more cw-block-tools" }, action("print-safety", say("Print the safety sheet")), " ", say("one page to read out, hang up and sign")),
    findOut(questions),
    group("stop", say("Stop: before anyone starts"), of("stop"), answers),
    group("caution", say("Take care"), of("caution"), answers),
    group("note", say("Also know"), of("note"), answers),
    more(others.filter((n) => n.onDemand), answers),
  ];
}

/** What nobody has said yet, each the way to its blank. */
function findOut(questions: Question[]): HTMLElement | null {
  if (questions.length === 0) return null;
  return make(
    "section",
    { class: "cw-find-out", "aria-labelledby": "h-find-out" },
    make("h3", { id: "h-find-out" }, say("Find out first ({n})", { n: questions.length })),
    make("ul", {}, ...questions.map((q) => make("li", {}, action("go-to", q.words, { "data-to": q.at, "data-key": q.at })))),
  );
}

function group(severity: Severity, words: string, notes: Advice[], answers: Answers): HTMLElement | null {
  if (notes.length === 0) return null;
  return make(
    "section",
    { class: "cw-notes", "data-severity": severity, "aria-labelledby": `h-notes-${severity}` },
    make("h3", { id: `h-notes-${severity}` }, `${words} (${String(notes.length)})`),
    ...notes.map((n) => note(n, answers.get(n) ?? null)),
  );
}

/** What need not be seen at once, in one fold; on paper it is open. */
function more(notes: Advice[], answers: Answers): HTMLElement | null {
  if (notes.length === 0) return null;
  return make(
    "details",
    { class: "cw-notes cw-know", "data-severity": "note" },
    make("summary", {}, make("h3", {}, say("More, on demand ({n})", { n: notes.length }))),
    ...notes.map((n) => note(n, answers.get(n) ?? null)),
  );
}

/** The word of a stop stands written; the others have theirs in the heading over
 *  them, and in what the sign is called. */
function note(n: Advice, answer: Answer | null): HTMLElement {
  const [first, rest] = firstSentence(n.words);
  const plate = sign(n.severity);
  if (n.severity !== "stop") {
    plate.removeAttribute("aria-hidden");
    plate.setAttribute("role", "img");
    plate.setAttribute("aria-label", severityWord[n.severity]);
  }
  const way = answer ? action("go-to", answer.words, { "data-to": answer.to, "data-key": n.id }) : null;
  return make(
    "article",
    { class: "cw-note", id: `note-${n.id}`, tabindex: "-1", "data-severity": n.severity, "data-note": n.id },
    plate,
    make(
      "div",
      {},
      make("p", {}, n.severity === "stop" ? make("b", {}, `${severityWord.stop}. `) : null, make("strong", {}, first), rest === "" ? "" : make("span", { class: "cw-note-rest" }, ` ${rest}`)),
      " ",
      answer?.open === true ? way : null,
      " ",
      make("details", { class: "cw-why" }, make("summary", { "aria-label": say("Why, and who says so: {first}", { first }) }, say("why")), ...why(n), answer?.open === false && way ? make("p", {}, way) : null),
    ),
  );
}

function why(n: Advice): (HTMLElement | null)[] {
  const rulers = rulersOf(n.jurisdiction);
  return [
    n.working ? make("p", { class: "cw-note-working" }, say("Here: {working}", { working: n.working })) : null,
    (n.figures ?? []).length > 0 ? make("div", { class: "cw-row" }, ...n.figures.map((id) => figurePlace(id, "small"))) : null,
    make("p", { class: "cw-note-decides" }, n.decides),
    make("p", { class: "cw-source" }, rulers === "" ? n.source : say("{source} A rule of {rulers}.", { source: n.source, rulers })),
  ];
}

/** The blank a note hangs on, or the step; none where it hangs on no blank. A
 *  blank that nobody has filled in stands open beside the note, unless the list of
 *  what to find out leads there. */
function answerTo(plan: Plan, pointer: string, asked: Set<string>): Answer | null {
  if (pointer === "") return null;
  if (/^\/finish\/steps\/\d+$/.test(pointer)) {
    return { to: `${pointer}/name`, words: say("look at the step {step}", { step: quoted(typedText(at(plan, `${pointer}/name`))) }), open: false };
  }
  const blank = blankAnywhere(pointer, true);
  if (!blank) return null;
  const empty = typedText(at(plan, pointer)).trim() === "" && !blank.dataset["unset"] && (blank.dataset["at"] ?? pointer) === pointer;
  return { to: blank.dataset["at"] ?? pointer, words: `${empty ? say("fill in") : say("look at")}: ${lowerFirst(nameOf(blank))}`, open: empty && !asked.has(pointer) };
}

/** Shows a note in full, from wherever a slip has told of it. */
export function showNote(id: string): void {
  const find = () => document.getElementById(`note-${id}`);
  const shown = find() ?? seek(find);
  for (let fold = shown?.closest("details"); fold; fold = fold.parentElement?.closest("details")) fold.open = true;
  shown?.scrollIntoView({ block: "center" });
  shown?.focus({ preventScroll: true });
}
