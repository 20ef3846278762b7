// The blanks: what was typed while a blank is being filled in, how it was read
// once it is left, and what is wrong with it beside its sentence.

import type { Problem, Reading } from "../engine/contract";
import { at, typedText, type JsonObject } from "../state/pointer";
import { action, make, setAttribute } from "./dom";
import { whole } from "./lists";
import { isMade } from "./made";
import { onSheet, openPages, pageNamed } from "./pages";
import { say } from "./say";
import { shutAround } from "./step-open";

export type Blank = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

const sizesItself = CSS.supports("field-sizing", "content");

export function blankFrom(target: EventTarget | null): Blank | null {
  const isBlank = target instanceof HTMLInputElement || target instanceof HTMLSelectElement || target instanceof HTMLTextAreaElement;
  return isBlank && target.hasAttribute("data-at") ? target : null;
}

export function pointerOf(blank: Element): string {
  return blank.getAttribute("data-at") ?? "";
}

/** The blank for a pointer: the one in sight where a sentence comes in variants, that
 *  of its own page where several are, as the first page repeats some. */
export function blankAt(pointer: string): Blank | null {
  const all = onSheet<Blank>(`[data-at="${CSS.escape(pointer)}"]`);
  const shown = all.filter((b) => b.closest("[hidden]") === null);
  const home = (b: Blank) => b.closest("#job") === null;
  const inView = (b: Blank) => b.checkVisibility() && (home(b) || !shown.some((other) => home(other) && other.checkVisibility()));
  return shown.find((b) => b === document.activeElement) ?? shown.find(inView) ?? shown.find(home) ?? shown[0] ?? null;
}

export function nameOf(blank: Element): string {
  return blank.getAttribute("aria-label") ?? "";
}

export function renderBlanks(plan: JsonObject, readings: Record<string, Reading>): void {
  const made = isMade();
  for (const blank of onSheet<Blank>("[data-at]")) {
    const pointer = pointerOf(blank);
    const typed = typedText(at(plan, pointer));
    // What the build filled in reads as it will once the engine has read it.
    if (made && blank instanceof HTMLInputElement && blank.defaultValue !== "" && blank.value === blank.defaultValue) continue;
    if (blank instanceof HTMLSelectElement) {
      choose(blank, typed || (blank.dataset["unset"] ?? ""));
      continue;
    }
    const reading = readings[pointer];
    const focused = document.activeElement === blank;
    const shown = focused || !reading || typed === "" ? typed : reading.text;
    const { usual } = blank.dataset;
    if (usual && !focused) {
      blank.setAttribute("type", usual);
      setAttribute(blank, "data-usual", null);
    }
    if (blank.value !== shown) blank.value = shown;
    // A date or a time that is none cannot stand in a blank for dates: it is kept
    // and shown as it was typed, for as long as it stands there.
    if (blank.value !== shown && blank.type !== "textarea") {
      blank.dataset["usual"] ??= blank.type;
      blank.setAttribute("type", "text");
      blank.value = shown;
    }
    setAttribute(blank, "title", !focused && reading && typed !== "" ? `${typed} = ${reading.other}` : null);
    if (!sizesItself && blank instanceof HTMLInputElement) blank.size = Math.max(4, shown.length);
  }
}

/** Blanks that are filled in only when the answer asks for them. */
export function renderAsked(plan: JsonObject, problems: Problem[]): void {
  const asked = new Set(problems.map((p) => p.at));
  for (const part of onSheet("[data-asked]")) {
    const pointer = whole(part, part.dataset["asked"] ?? "");
    part.hidden = typedText(at(plan, pointer)) === "" && !asked.has(pointer);
  }
}

/** A word the page does not offer is still shown: nothing that came in with a
 *  plan is changed by looking at it. */
function choose(select: HTMLSelectElement, value: string): void {
  if (select.value === value) return;
  if (!Array.from(select.options).some((o) => o.value === value)) {
    select.append(new Option(value === "" ? "—" : value, value));
  }
  select.value = value;
}

// Problems

const severityWords = { stop: say("Put right"), caution: say("Look at this"), note: say("Note") } as const;

let withheld = false;

/** Whether a question waits until the blank in hand is left. */
export function hasWithheld(): boolean {
  return withheld;
}

/** Writes every problem beside its blank, or on the part of the sheet it belongs to.
 *  What must be put right stands on the first page as well. */
export function renderProblems(problems: Problem[]): void {
  for (const old of onSheet(".cw-say")) old.remove();
  withheld = false;
  const described = new Map<Blank, string[]>();
  const wrong = new Set<Blank>();
  problems.forEach((problem, i) => {
    const blank = blankAt(problem.at);
    // A number half typed is not asked about: 1 on the way to 188.
    if (problem.answers && blank && blank === document.activeElement) {
      withheld = true;
      return;
    }
    const id = `say-${String(i)}`;
    const toCome = problem.toCome;
    write(problem, blank, id, toCome);
    if (blank) {
      described.set(blank, [...(described.get(blank) ?? []), id]);
      if (problem.severity === "stop" && !toCome) wrong.add(blank);
    }
  });
  for (const blank of onSheet<Blank>("[data-at]")) {
    setAttribute(blank, "aria-describedby", described.get(blank)?.join(" ") ?? null);
    setAttribute(blank, "aria-invalid", wrong.has(blank) ? "true" : null);
  }
}

function write(problem: Problem, blank: Blank | null, id: string, toCome: boolean): void {
  const shut = blank ? null : shutAround(problem.at);
  if (shut) return mark(shut, problem);
  const host = blank ? sentence(blank) : nearest(problem.at);
  if (!host || (!blank && problem.page !== "" && !openPages().some((page) => page.id === pageNamed(problem.page)))) return;
  const note = make(
    "p",
    { class: "cw-say", id, "data-severity": problem.severity, "data-problem-at": problem.at, "data-to-come": toCome },
    make("b", { class: "cw-say-mark" }, `${toCome ? say("To fill in") : problem.answers ? say("Which is meant") : severityWords[problem.severity]}:`),
    ` ${problem.what} `,
    ...(blank ? (problem.answers ?? []).map((answer) => action("answer", answer, { "data-to": problem.at, "data-answer": answer })) : []),
    blank && problem.answers ? null : problem.do,
  );
  // Between the entries of a list there may be nothing but entries.
  if (blank && !host.matches("li")) {
    let last: Element = host;
    while (last.nextElementSibling?.classList.contains("cw-say")) last = last.nextElementSibling;
    last.after(note);
  } else host.append(note);
}

/** The line of a step that is shut says that there is something to look at in it, by
 *  the most severe. */
function mark(line: Element, problem: Problem): void {
  if (problem.toCome || problem.severity === "note") return;
  const before = line.querySelector<HTMLElement>(".cw-say");
  if (before && problem.severity !== "stop") return;
  before?.remove();
  line.append(make("span", { class: "cw-say", "data-severity": problem.severity }, severityWords[problem.severity]));
}

/** The sentence a blank stands in, or the folded phrase that hides it. */
export function sentence(blank: Element): Element {
  const fold = blank.closest("details:not([open])");
  if (fold) return fold.closest(".cw-folds") ?? fold;
  return blank.closest("p, li:not(.cw-item), h1") ?? blank;
}

/** The part of the sheet a problem without a blank of its own belongs to. */
function nearest(pointer: string): Element | null {
  for (let p = pointer; p !== ""; p = p.slice(0, p.lastIndexOf("/"))) {
    const place = onSheet(`.cw-item[data-base="${CSS.escape(p)}"] .cw-says`)[0] ?? onSheet(`[data-place~="${CSS.escape(p)}"]`)[0];
    if (place) return place;
  }
  return null;
}
