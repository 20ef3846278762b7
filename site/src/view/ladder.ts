// On the ladder: the job at arm's length, one step a screen. It lies over the
// sheet as a dialog, is left by its button, Escape or the way back, and opens
// again where it was when the page is loaded anew.

import type { Sheet } from "../engine/contract";
import { keepPlace, keepThumb, placeOf, thumb } from "../state/ladder";
import { put, typedText } from "../state/pointer";
import type { Plan } from "../state/plan";
import { every, make, region, setAttribute, setText } from "./dom";
import { startAwake, stopAwake } from "./ladder-awake";
import { hangingScreen, resumeHanging } from "./ladder-hanging";
import { marksScreen, resumeMarks } from "./ladder-marks";
import { button, heading, type Rung, type Screen } from "./ladder-screen";
import { say } from "./say";

/** The job on the sheet. */
export interface Job {
  plan(): Plan;
  /** The sheet with these pages on it. */
  sheet(pages: string): Sheet | null;
  changed(): void;
  keep(): void;
}

/** What is looked at: the marks, or the hanging of a layer. */
interface Look {
  to: "hanging" | "marks";
  layer: string; // its id; "" for marks
}

interface Shown {
  look: Look;
  rung: Rung;
  plan: string; // id of the plan it was opened on
  name: string; // of the screen shown
  dialog: HTMLDialogElement;
  where: HTMLElement;
  said: HTMLElement;
  content: HTMLElement;
  keys: HTMLElement;
  sees: ResizeObserver;
  unkept: MutationObserver;
  screen: Screen | null;
  read: string; // the screen whose notes have been in sight to their end
  scrolled: number; // how far down the sheet was
}

const TWICE = 500; // ms; a second tap within it is the first one's echo
const LONGEST_RETURN = 1000; // ms; a step back that takes longer does not come

let job: Job;
let shown: Shown | null = null;
let writing = false;
let justSaid = false;
let returning = false;
let tapped = -Infinity;

/** The pages whose sheet is read on the ladder, by the engine's names. */
const READ = ["setting", "hanging", "safety"];

/** What the engine is asked for besides the page in view, while one is on the ladder. */
export function ladderAsks(): string[] {
  return shown ? READ : [];
}

export function startLadder(on: Job): void {
  job = on;
  window.addEventListener("click", tapOnce, true);
  document.documentElement.removeAttribute("data-ladder");
  window.addEventListener("popstate", follow);
}

/** Two taps in a row count once, also where the second meets another screen, or the
 *  sheet that the first has come back to. */
function tapOnce(e: MouseEvent): void {
  if (e.timeStamp - tapped < TWICE) {
    e.stopPropagation();
    e.preventDefault();
  } else if (e.target instanceof Element && e.target.closest(".cw-ladder button")) tapped = e.timeStamp;
}

/** The browser's back and forward: out of the view, and into it again. */
function follow(): void {
  returning = false;
  const look = lookIn(history.state);
  if (look && !shown) show(look);
  else if (!look) shut();
}

/** Opens the view again after the page has been loaded anew in the midst of it. */
export function reopenLadder(): void {
  if (job.sheet(READ.join(" "))) follow();
}

/** Opens the view a button asks for, with its layer where it stands in one. */
export function openLadder(pressed: HTMLElement): void {
  if (pressed.dataset["to"] === "marks") return climb({ to: "marks", layer: "" });
  const layer = pressed.closest<HTMLElement>("[data-layer]")?.dataset["layer"] ?? "";
  climb({ to: "hanging", layer: layer || firstToHang() });
}

function climb(look: Look): void {
  if (returning) {
    // The step back that left the view is still under way; it would undo this one.
    window.addEventListener("popstate", () => climb(look), { once: true });
    return;
  }
  // A phone may drop the page from its memory at any time: a plan that came by
  // link is kept from here on, so that it is there when the page comes back.
  job.keep();
  try {
    history.pushState({ ladder: look }, "");
  } catch {
    // A page without an origin may not: then there is no way back to follow.
  }
  show(look);
}

function lookIn(state: unknown): Look | null {
  const look = (state as { ladder?: Partial<Look> } | null)?.ladder;
  if (!look || (look.to !== "hanging" && look.to !== "marks")) return null;
  return { to: look.to, layer: typeof look.layer === "string" ? look.layer : "" };
}

function firstToHang(): string {
  const layers = job.sheet(READ.join(" "))?.layers ?? [];
  return (layers.find((l) => l.order.some((h) => !h.up)) ?? layers[0])?.id ?? "";
}

function show(look: Look): void {
  shut();
  tapped = performance.now();
  const plan = typedText(job.plan()["id"]);
  const view = `${look.to}:${look.layer}`;
  const rung: Rung = {
    plan: () => job.plan(),
    sheet: () => job.sheet(READ.join(" ")) ?? { ceilingwright: 1, version: "" },
    place: placeOf(plan, view),
    go: (at) => {
      rung.place.at = at;
      keepPlace(plan, view, rung.place);
      // What was said of the step before is put away by the step after.
      if (!justSaid) tell("");
      justSaid = false;
      renderLadder();
    },
    write: (pointer, value) => {
      put(job.plan(), pointer, value);
      writing = true;
      job.changed();
      writing = false;
    },
    tell: (words) => {
      tell(words);
      justSaid = true;
    },
    leave,
  };
  rung.place.at = look.to === "hanging" ? resumeHanging(rung, look.layer) : resumeMarks(rung);
  shown = { look, rung, plan, name: "", screen: null, read: "", scrolled: window.scrollY, ...frame() };
  setAttribute(document.documentElement, "data-ladder", "");
  document.body.append(shown.dialog);
  shown.dialog.showModal();
  renderLadder();
  // In a frame the page is as short as the view now: bring it into sight.
  document.documentElement.scrollIntoView();
}

/** The parts that stay while the steps change. */
function frame(): Omit<Shown, "look" | "rung" | "plan" | "name" | "screen" | "read" | "scrolled"> {
  const where = make("p", { class: "cw-ladder-where" });
  const awake = make("p", { class: "cw-ladder-awake" });
  const kept = make("p", { class: "cw-ladder-unkept", role: "status" });
  const said = make("p", { class: "cw-ladder-said", role: "status" });
  const content = make("div", { class: "cw-ladder-content" });
  const keys = make("div", { class: "cw-ladder-keys", role: "group", "aria-label": say("This step") });
  const hand = button("", () => turnHand(dialog, hand), { class: "cw-ladder-hand" });
  const dialog = make(
    "dialog",
    { class: "cw-ladder", "data-clone": true, "aria-label": say("On the ladder") },
    make(
      "div",
      { class: "cw-ladder-screen" },
      make("div", { class: "cw-ladder-head" }, button(say("Leave"), leave, { class: "cw-ladder-leave", "aria-label": say("Leave: back to the sheet") }), make("div", {}, where, awake, kept), hand),
      said,
      content,
      keys,
    ),
  );
  dialog.addEventListener("cancel", (e) => {
    e.preventDefault();
    leave();
  });
  layHand(dialog, hand);
  startAwake((words) => setText(awake, words));
  content.addEventListener("scroll", layKeys);
  const sees = new ResizeObserver(layKeys);
  sees.observe(content);
  return { dialog, where, said, content, keys, sees, unkept: watchKeeping(kept) };
}

/** The sheet's message that nothing is kept lies under the view: its first
 *  words stand here as well. */
function watchKeeping(words: HTMLElement): MutationObserver {
  const look = () => setText(words, document.querySelector("[data-message=keeping]") ? say("not kept: see the sheet") : "");
  const observer = new MutationObserver(look);
  observer.observe(region("messages"), { childList: true });
  look();
  return observer;
}

function turnHand(dialog: HTMLElement, hand: HTMLElement): void {
  keepThumb(thumb() === "right" ? "left" : "right");
  layHand(dialog, hand);
}

function layHand(dialog: HTMLElement, hand: HTMLElement): void {
  dialog.dataset["thumb"] = thumb();
  setText(hand, thumb() === "left" ? say("left thumb") : say("right thumb"));
  setAttribute(hand, "aria-label", thumb() === "left" ? say("Buttons under the left thumb: change hands") : say("Buttons under the right thumb: change hands"));
}

/** Shows the step in sight anew, after the sheet has been worked out again. */
export function renderLadder(): void {
  if (!shown || writing) return;
  // Another plan on the sheet is another job.
  if (typedText(job.plan()["id"]) !== shown.plan) return leave();
  const screen = screenOf(shown) ?? nothing();
  const moved = screen.name !== shown.name;
  // What is being typed on this screen stays as it is.
  if (!moved && document.activeElement?.closest(".cw-ladder-content input")) return;
  shown.name = screen.name;
  shown.screen = screen;
  if (moved) shown.read = "";
  setText(shown.where, screen.where);
  shown.content.replaceChildren(
    make("div", { class: "cw-ladder-lead", "data-whole": screen.whole }, screen.heading, screen.beside, screen.sketch),
    make("div", { class: "cw-ladder-rest" }, ...screen.content),
  );
  if (moved) shown.content.scrollTop = 0;
  shown.keys.replaceChildren();
  layKeys();
  if (moved || !shown.dialog.contains(document.activeElement)) screen.heading.focus({ preventScroll: true });
}

/** The keys of the screen. As long as a note has not been in sight to its end, the first
 *  of them shows it. */
function layKeys(): void {
  if (!shown?.screen) return;
  const { screen, content, keys } = shown;
  const fold = Math.ceil(content.getBoundingClientRect().bottom);
  const below = shown.read === screen.name ? undefined : every(".cw-ladder-cut", content).find((note) => Math.floor(note.getBoundingClientRect().bottom) > fold);
  if (!below) shown.read = screen.name;
  const named = below ? say("Read the note first") : screen.keys[0]?.words;
  if (keys.firstElementChild && keys.firstElementChild.textContent === named) return;
  const wasIn = keys.contains(document.activeElement);
  const [go, ...more] = screen.keys;
  const first = below ? { words: named ?? "", does: () => below.scrollIntoView({ block: "end" }) } : go;
  keys.replaceChildren(...(first ? [first, ...more] : more).map((key, i) => button(key.words, key.does, { "data-key": i === 0 ? "go" : "more" })));
  if (wasIn) keys.querySelector<HTMLElement>("button")?.focus({ preventScroll: true });
}

function tell(words: string): void {
  if (shown) setText(shown.said, words);
}

function screenOf({ look, rung }: Shown): Screen | null {
  if (look.to === "hanging") return hangingScreen(rung, look.layer);
  return marksScreen(rung);
}

function nothing(): Screen {
  return {
    name: "nothing",
    where: "",
    heading: heading(say("Nothing here yet:"), job.sheet(READ.join(" ")) ? say("fill in the sheet") : say("one moment")),
    content: [],
    keys: [{ words: say("To the sheet"), does: leave }],
  };
}

function leave(): void {
  shut();
  if (!lookIn(history.state) || returning) return;
  returning = true;
  setTimeout(() => (returning = false), LONGEST_RETURN);
  history.back();
}

function shut(): void {
  if (!shown) return;
  const { dialog, look, scrolled, sees, unkept } = shown;
  sees.disconnect();
  unkept.disconnect();
  shown = null;
  stopAwake();
  dialog.close();
  dialog.remove();
  setAttribute(document.documentElement, "data-ladder", null);
  window.scrollTo({ top: scrolled });
  opener(look)?.focus();
}

/** The button the view was opened by, or the one drawn in its place since. */
function opener(look: Look): HTMLElement | null {
  const button = `[data-do=ladder][data-to=${look.to}]`;
  return document.querySelector<HTMLElement>(`[data-layer="${CSS.escape(look.layer)}"] ${button}`) ?? document.querySelector<HTMLElement>(button);
}
