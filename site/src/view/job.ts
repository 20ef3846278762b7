// The job on the sheet: one plan, one answer, and the way between them. What is
// typed goes into the plan; the plan goes to the engine; its answer is shown.

import type { Engine, Figure, Reading, Sheet } from "../engine/contract";
import { NoEngine, startEngine } from "../engine/loader";
import { pageWithPlan, planInPage, writePlanIntoPage } from "../state/along";
import { planFromFile, savePlan, saveText } from "../state/file";
import { claim, keep, lastKept, onWrittenElsewhere, storedText } from "../state/keep";
import { fragmentFromPlan, hasPlan, planFromFragment } from "../state/link";
import {
  emptyPlan,
  examplePlan,
  fileName,
  freshId,
  isExample,
  newLeaf,
  readPlan,
  type Plan,
} from "../state/plan";
import { noteClocks } from "../state/clocks";
import { completeForm, ensureEntry, newEntry } from "../state/entries";
import { at, list, put, typedText, type Json } from "../state/pointer";
import { renderAir } from "./air";
import { announce } from "./announce";
import { renderBites } from "./bites";
import { blankAt, blankFrom, pointerOf, renderAsked, renderBlanks, renderEcho, renderProblems } from "./blanks";
import { canHaveCards, layCards } from "./cards";
import { deliveryActions, renderDelivery } from "./delivery";
import { daysActions, renderDays } from "./days";
import { answersTo, layerPointer, type Actions, type Desk } from "./desk";
import { action, clean, every, make, region, setAttribute, setText } from "./dom";
import { draw, renderDrawing, turnOver } from "./drawing";
import { openAllWorkings, renderFigures, toggleWorking } from "./figures";
import { addSteps, finishActions, renderClimate, renderShopping, renderSteps } from "./finish";
import { isFramed, isSandboxed, tellHeight } from "./framed";
import { gapActions } from "./gaps";
import { hangingActions, renderHanging } from "./hanging";
import { openLadder, renderLadder, reopenLadder, startLadder } from "./ladder";
import { nameLit, relight, startLight } from "./light";
import { renderLimits } from "./limits";
import { renderLists, renderWhen, whole } from "./lists";
import { message, unsay } from "./messages";
import { clearPaper } from "./paper";
import { renderPlatform, type Stations } from "./platform";
import { priceActions, renderPrice, renderRecord } from "./price";
import { startPrint } from "./print";
import { renderSafety, showNote } from "./safety";
import { printSafetySheet } from "./safety-sheet";
import { choiceActions, renderBox, renderChoices, renderCorners, renderWalls } from "./setting-out";
import { keepLeftOut, renderLeftOut, startStepOrder, stepOrderActions } from "./step-order";
import { renderObjects, renderSurvey } from "./survey";

const KEEP_PAUSE = 400; // ms between the last key and the writing
const SLOW = 60; // ms; a sheet that twice took longer is worked out when the keys rest
const REST = 120;
const SOON = 300; // ms in which an engine that is nearly there spares the sheet being shown without answers

let plan: Plan = emptyPlan();
let sheet: Sheet | null = null;
let engine: Engine | null = null;
let figures = new Map<string, Figure>();
let read: Record<string, Reading> = {};
let lastTook = 0;
let tookBefore = 0;
let damagedText = "";

/** Opens the job, with the engine where one is on its way already. */
export async function openJob(begun: Promise<Engine> | null): Promise<void> {
  clean();
  renderDrawing([], []);
  if (new URLSearchParams(location.search).get("working") === "open") openAllWorkings();
  listen();
  const chosen = choosePlan().then((first) => {
    plan = first;
  });
  const starting = start(begun, chosen);
  await chosen;
  await Promise.race([starting, new Promise((r) => setTimeout(r, SOON))]);
  show();
  if (isFramed()) frame();
  if (!engine) {
    await starting;
    show();
  }
  reopenLadder();
}

/** What stands on the sheet at the start: a plan from the link, the one this
 *  page was saved with, the one worked on last, or the worked example. */
async function choosePlan(): Promise<Plan> {
  if (hasPlan(location.hash)) {
    const read = await planFromFragment(location.hash);
    if ("plan" in read) return fromLink(read.plan);
    message("opened", read.refused);
    return emptyPlan();
  }
  const inside = planInPage();
  if (inside !== "") {
    const read = readPlan(inside);
    if ("plan" in read) return newestOf(read.plan);
    message("opened", read.refused);
  }
  const kept = lastKept();
  if (kept.damaged !== null) {
    damagedText = kept.damaged;
    message("damaged", "What was kept here of the last job is cut off and cannot be read. This is an empty sheet.", action("save-damaged", "Download what was there"));
    return emptyPlan();
  }
  return kept.plan ?? examplePlan();
}

/** A plan saved inside this page may since have been changed here and kept. */
function newestOf(inside: Plan): Plan {
  const kept = storedText(typedText(inside["id"]));
  if (kept === null || isExample(inside)) return inside;
  const read = readPlan(kept);
  if (!("plan" in read) || JSON.stringify(read.plan) === JSON.stringify(inside)) return inside;
  claim(read.plan);
  message("opened", "This is the job as you last changed it on this device.", action("as-saved", "Show it as it was saved in this file"));
  return read.plan;
}

/** A plan that comes by link leaves the address, so that a reload does not
 *  undo what is typed from now on. */
function fromLink(arrived: Plan): Plan {
  try {
    history.replaceState(null, "", location.pathname + location.search);
  } catch {
    // A page without an origin may not; then the link stays where it is.
  }
  return besideKept(arrived);
}

/** The plan under a new id when another plan is kept under its own. */
function besideKept(arrived: Plan): Plan {
  const kept = storedText(typedText(arrived["id"]));
  if (kept !== null && kept !== JSON.stringify(arrived)) {
    message("opened", "Another state of this job is kept on this device. It stays as it is; this one is kept beside it.");
    arrived["id"] = freshId();
  }
  return arrived;
}

/** Has the engine ready when it resolves, or says why there is none. */
async function start(begun: Promise<Engine> | null = null, chosen?: Promise<void>): Promise<void> {
  unsay("engine");
  setText(region("state"), "getting ready to work it out…");
  try {
    engine = await (begun ?? startEngine());
    await chosen;
    document.getElementById("engine-early")?.remove();
    setAttribute(document.documentElement, "data-ready", "");
    setText(region("state"), isExample(plan) ? "nothing kept yet" : "kept on this device");
  } catch (e) {
    const words = e instanceof NoEngine ? e.words : "The part that works out the figures did not start.";
    const again = e instanceof NoEngine && e.again;
    message(
      "engine",
      `${words} You can still read the sheet, fill it in, keep it and print it blank.`,
      ...(again ? [action("start-again", "Try again")] : []),
    );
    setText(region("state"), "not worked out");
  }
}

/** Puts another plan on the sheet. */
function take(next: Plan): void {
  plan = next;
  changed();
  window.scrollTo({ top: 0 });
}

// From plan to page

let due: ReturnType<typeof setTimeout> | undefined;

/** The plan has changed: keep it, work it out, show it. */
function changed(): void {
  keepSoon();
  show();
}

/** The same for a key pressed, of which there may be many in a second. */
function changedByKey(): void {
  keepSoon();
  clearTimeout(due);
  if (Math.min(lastTook, tookBefore) < SLOW) show();
  else due = setTimeout(show, REST);
}

/** What is shown is what was typed: nothing may act on an answer that is due. */
function settle(): void {
  if (due !== undefined) show();
}

function show(): void {
  clearTimeout(due);
  due = undefined;
  const began = performance.now();
  const text = JSON.stringify(plan);
  compute(text);
  writePlanIntoPage(plan);
  renderLists(plan);
  renderWhen(plan);
  renderSheet();
  renderEcho(readings());
  tookBefore = lastTook;
  lastTook = performance.now() - began;
}

function readings(): Record<string, Reading> {
  return read;
}

function compute(text: string): void {
  if (!engine) return;
  try {
    sheet = JSON.parse(engine.compute(text)) as Sheet;
    unsay("stopped");
  } catch {
    message("stopped", "The part that works out the figures has stopped. What you typed is kept. Load the page again.");
    return;
  }
  figures = new Map((sheet.figures ?? []).map((f) => [f.id, f] as const));
  read = Object.fromEntries((sheet.readings ?? []).map((r) => [r.at, r] as const));
}

function renderSheet(): void {
  setAttribute(document.querySelector("[data-do=notation][data-to=feet-inches]") as Element, "aria-pressed", String(notation() !== "metric"));
  setAttribute(document.querySelector("[data-do=notation][data-to=metric]") as Element, "aria-pressed", String(notation() === "metric"));
  const title = typedText(plan["title"]);
  document.title = title === "" ? "Ceilingwright" : `${title} · Ceilingwright`;
  const layers = sheet?.layers ?? [];
  const layerCount = list(plan, "/mask/layers").length;
  setText(region("mask-count"), layerCount === 1 ? "one layer" : `${String(layerCount)} layers`);
  if (!sheet) {
    renderBlanks(plan, readings());
    renderFigures(figures);
    return;
  }
  renderSurvey(sheet.survey ?? null);
  renderObjects(sheet.objects ?? [], layers);
  renderDelivery(plan, layers);
  renderChoices(sheet.choices ?? []);
  renderWalls(sheet.walls ?? []);
  renderBox(sheet.box ?? null);
  renderCorners(sheet.corners ?? []);
  renderHanging(plan, layers, figures, stations());
  // After the lists above, since some of their blanks come with the answer.
  renderBlanks(plan, readings());
  renderAsked(plan, sheet.problems ?? []);
  renderClimate(sheet.climate ?? null);
  renderLeftOut(plan);
  renderSteps(plan, sheet.steps ?? [], sheet.drawings ?? []);
  renderLimits(sheet.limits ?? []);
  renderShopping(sheet.shopping ?? [], sheet.steps ?? []);
  renderDays(plan, sheet.days ?? null);
  renderPrice(plan, sheet.price ?? null);
  renderRecord(sheet.record ?? null);
  renderPlatform(sheet.platform ?? null);
  renderAir(sheet.air ?? null);
  renderSafety(plan, sheet.safety ?? []);
  renderBites(sheet.safety ?? []);
  renderFigures(figures);
  renderDrawing(sheet.drawings ?? [], layers);
  renderProblems(sheet.problems ?? []);
  nameLit(figures, layers);
  relight();
  announce(figures, sheet.problems ?? []);
  setText(region("version"), sheet.version ? `Ceilingwright ${sheet.version}` : "");
  renderLadder();
}

function stations(): Stations {
  return sheet?.platform?.stations ?? [];
}

function notation(): string {
  return typedText(at(plan, "/units/show"));
}

// Keeping

let keeping: ReturnType<typeof setTimeout> | undefined;

function keepSoon(): void {
  clearTimeout(keeping);
  keeping = setTimeout(keepNow, KEEP_PAUSE);
}

function keepNow(): void {
  clearTimeout(keeping);
  if (isFramed()) void offerOwnTab();
  const state = region("state");
  switch (keep(plan)) {
    case "kept":
      unsay("keeping");
      setText(state, "kept on this device");
      break;
    case "off":
      setText(state, "not kept: use Save as a file");
      message("keeping", "This browser keeps nothing for this page, so what you type is gone when the page is closed.", action("save-file", "Save as a file"));
      break;
    case "full":
      setText(state, "not kept: use Save as a file");
      message("keeping", "There is no room left to keep this job on this device. What was kept before is untouched.", action("save-file", "Save as a file"));
      break;
    case "elsewhere":
      elsewhere();
  }
}

function elsewhere(): void {
  setText(region("state"), "not kept: open in another tab");
  message(
    "keeping",
    "This job has been changed in another tab. Nothing is written over it.",
    action("take-theirs", "Show the other tab’s"),
    action("keep-copy", "Keep mine beside it"),
  );
}

async function offerOwnTab(): Promise<void> {
  const fragment = await fragmentFromPlan(plan);
  setAttribute(region("own-tab"), "href", `${location.pathname}${location.search}#${fragment}`);
}

function frame(): void {
  setAttribute(document.documentElement, "data-framed", "");
  const link = region("own-tab");
  link.textContent = isSandboxed() ? "Open in its own tab to keep or print" : "Open in its own tab";
  link.hidden = false;
  void offerOwnTab();
  tellHeight();
}

// What can be done

function add(button: HTMLElement): void {
  const pointer = whole(button, button.dataset["to"] ?? "");
  if (pointer === "/finish/steps") {
    addSteps(desk, engine, (document.querySelector("[data-new-step]") as HTMLSelectElement).value);
    return;
  }
  const entries = list(plan, pointer);
  if (!put(plan, pointer, [...entries, newEntry(plan, pointer)])) return;
  changed();
  const added = document.querySelector(`[data-base="${CSS.escape(`${pointer}/${String(entries.length)}`)}"]`);
  added?.querySelector<HTMLElement>("input, select")?.focus();
}

/** The entry a button stands in: its element, its list in the plan, its place there. */
function entryOf(button: HTMLElement): { item: HTMLElement; pointer: string; entries: Json[]; index: number } | null {
  const item = button.closest<HTMLElement>("[data-base]");
  const parts = /^(.*)\/(\d+)$/.exec(item?.dataset["base"] ?? "");
  if (!item || !parts) return null;
  const pointer = parts[1] ?? "";
  return { item, pointer, entries: list(plan, pointer), index: Number(parts[2]) };
}

function remove(button: HTMLElement): void {
  const entry = entryOf(button);
  if (!entry) return;
  // The element goes with its entry, so that its neighbours keep their folds.
  const next = (entry.item.nextElementSibling ?? entry.item.previousElementSibling ?? entry.item.closest(".cw-block"))?.querySelector<HTMLElement>(
    "input, select, button",
  );
  for (const item of every(`[data-base="${CSS.escape(`${entry.pointer}/${String(entry.index)}`)}"]`)) item.remove();
  put(plan, entry.pointer, entry.entries.filter((_, i) => i !== entry.index));
  if (entry.pointer === "/finish/steps") keepLeftOut(entry.item, entry.entries[entry.index] ?? null, entry.index, plan);
  changed();
  next?.focus();
}

/** Numbers written without a unit take the unit they were read with, so that
 *  another unit for bare numbers changes nothing that is on the sheet. */
function writeUnits(): void {
  for (const [pointer, reading] of Object.entries(readings())) {
    if (reading.written) put(plan, pointer, reading.written);
  }
}

function showIn(next: string): void {
  if (next === notation()) return;
  writeUnits();
  put(plan, "/units/show", next);
  put(plan, "/units/bare", next === "metric" ? "mm" : "in");
  changed();
}

async function copyLink(): Promise<void> {
  const link = `${location.href.split("#")[0] ?? ""}#${await fragmentFromPlan(plan)}`;
  try {
    await navigator.clipboard.writeText(link);
    message("done", "The link is copied. Whoever opens it sees this plan as it is now.");
  } catch {
    message("done", "Copy this link:");
    const box = make("input", { class: "cw-link", readonly: true, "aria-label": "Link with the plan", value: link });
    document.querySelector("[data-message=done]")?.prepend(box);
    box.select();
  }
}

async function takeAlong(): Promise<void> {
  try {
    const name = fileName(plan, ".html");
    saveText(name, "text/html", await pageWithPlan(plan));
    message("done", `“${name}” is on its way to your downloads. Open it from there: it needs no signal.`);
  } catch {
    message("done", "The page could not be packed: its second half did not arrive. Look at the connection and try again, or save the plan as a file.");
  }
}

async function openFile(file: File): Promise<void> {
  const read = await planFromFile(file);
  if ("refused" in read) {
    message("opened", `${read.refused} The sheet is as it was.`);
    return;
  }
  unsay("opened");
  keepNow();
  take(besideKept(read.plan));
}

/** Prints one layer's cards and nothing else. */
function printCards(button: HTMLElement): void {
  const base = layerPointer(button);
  const layer = answersTo(plan, sheet?.layers ?? [])[Number(base.slice(base.lastIndexOf("/") + 1))];
  if (!layer || !canHaveCards(layer)) return;
  layCards(layer, typedText(plan["title"]), sheet?.drawings ?? []);
  window.print();
}

const desk: Desk = {
  plan: () => plan,
  change: (edit) => {
    edit(plan);
    changed();
  },
  redraw: renderSheet,
};

const doing: Actions = {
  ...deliveryActions(desk, () => sheet?.layers ?? []),
  ...choiceActions(desk),
  ...hangingActions(desk, () => sheet?.layers ?? []),
  ...gapActions(desk),
  ...finishActions(desk, () => sheet, () => engine),
  ...stepOrderActions(desk),
  ...daysActions(desk, () => sheet, () => engine),
  ...priceActions(desk, () => sheet),
  "print-cards": printCards,
  "print-safety": () => sheet && printSafetySheet(plan, sheet),
  "see-note": (b) => showNote(b.dataset["to"] ?? ""),
  notation: (b) => showIn(b.dataset["to"] ?? ""),
  "save-file": () => message("done", `“${savePlan(plan)}” is on its way to your downloads.`),
  "open-file": () => document.querySelector<HTMLInputElement>("[data-open]")?.click(),
  "copy-link": () => void copyLink(),
  "take-along": () => void takeAlong(),
  empty: () => {
    if (!isExample(plan)) keepNow();
    take(emptyPlan(plan));
    blankAt("/title")?.focus();
  },
  example: () => {
    keepNow();
    take(examplePlan());
  },
  "make-mine": () => {
    put(plan, "/id", freshId());
    changed();
    blankAt("/title")?.focus();
  },
  print: () => {
    clearPaper();
    window.print();
  },
  "turn-over": () => {
    turnOver();
    renderSheet();
  },
  working: (b) => {
    toggleWorking(b.dataset["to"] ?? "");
    renderFigures(figures);
  },
  ladder: openLadder,
  "go-to": (b) => goTo(b.dataset["to"] ?? ""),
  add,
  remove,
  "put-away": (b) => unsay(b.dataset["to"] ?? ""),
  "start-again": () => void start().then(show),
  "save-damaged": () => saveText("kept-text.txt", "text/plain", damagedText),
  "as-saved": () => {
    const read = readPlan(planAsSaved);
    if ("plan" in read) take({ ...read.plan, id: freshId() });
    unsay("opened");
  },
  "take-theirs": () => {
    const read = readPlan(storedText(typedText(plan["id"])) ?? "");
    if (!("plan" in read)) return;
    claim(read.plan);
    unsay("keeping");
    take(read.plan);
  },
  "keep-copy": () => {
    unsay("keeping");
    put(plan, "/id", freshId());
    changed();
  },
};

/** The plan block as it stood when the page was opened. */
let planAsSaved = "";

function goTo(pointer: string): void {
  const blank = blankAt(pointer);
  for (let fold = blank?.closest("details"); fold; fold = fold.parentElement?.closest("details")) fold.open = true;
  blank?.scrollIntoView({ block: "center" });
  blank?.focus();
}

// From page to plan

function typed(target: EventTarget | null): void {
  const blank = blankFrom(target);
  if (!blank) return;
  const pointer = pointerOf(blank);
  if (blank instanceof HTMLSelectElement) settle();
  // The unit for bare numbers may change only what is typed from now on.
  if (pointer === "/units/bare") writeUnits();
  // The blank of a thing the plan has no entry for yet, such as a seam's gap.
  const { entryOf: entries, entryKey: key, entry: name } = blank.dataset;
  if (entries && key && name) ensureEntry(plan, entries, key, name);
  put(plan, pointer, blank.value);
  if (pointer === "/room/form") completeForm(plan);
  if (pointer === "/days/start") noteClocks(plan);
  const turnedLeaf = /^(.*)\/kind$/.exec(pointer);
  if (turnedLeaf && blank.value === "leaf" && !at(plan, `${turnedLeaf[1] ?? ""}/leaf`)) {
    put(plan, `${turnedLeaf[1] ?? ""}/leaf`, newLeaf());
  }
  if (blank instanceof HTMLSelectElement) changed();
  else changedByKey();
  // Another sentence may stand there now, with the same blank in it.
  if (blank.closest("[hidden]")) blankAt(pointer)?.focus();
}

function left(target: EventTarget | null): void {
  const blank = blankFrom(target);
  if (blank) settle();
  const written = blank ? readings()[pointerOf(blank)]?.written : "";
  if (!blank || !written || written === typedText(at(plan, pointerOf(blank)))) return;
  put(plan, pointerOf(blank), written);
  changed();
}

function listen(): void {
  planAsSaved = planInPage();
  const root = document.querySelector(".cw-page") as HTMLElement;
  root.addEventListener("input", (e) => typed(e.target));
  root.addEventListener("change", (e) => left(e.target));
  for (const name of ["focusin", "focusout"]) {
    root.addEventListener(name, (e) => {
      if (!blankFrom(e.target)) return;
      if (name === "focusout") settle();
      renderBlanks(plan, readings());
      renderEcho(readings());
    });
  }
  root.addEventListener("click", (e) => {
    const button = e.target instanceof Element ? e.target.closest<HTMLElement>("[data-do]") : null;
    if (!button) return;
    settle();
    doing[button.dataset["do"] ?? ""]?.(button);
    const menu = button.closest<HTMLDetailsElement>(".cw-keep");
    if (menu) menu.open = false;
  });
  root.addEventListener("keydown", (e) => {
    const menu = e.key === "Escape" && e.target instanceof Element ? e.target.closest<HTMLDetailsElement>(".cw-keep") : null;
    if (!menu) return;
    menu.open = false;
    menu.querySelector("summary")?.focus();
  });
  root.addEventListener("change", (e) => {
    if (!(e.target instanceof HTMLElement)) return;
    if (e.target.matches("[data-drawing-layer]")) {
      draw((e.target as HTMLSelectElement).value);
      renderSheet();
    }
    if (e.target.matches("[data-paper]")) root.dataset["paper"] = (e.target as HTMLSelectElement).value;
    if (e.target.matches("[data-open]")) {
      const chooser = e.target as HTMLInputElement;
      const file = chooser.files?.[0];
      if (file) void openFile(file);
      chooser.value = "";
    }
  });
  startLight(root);
  startStepOrder(root, desk);
  startDrop();
  startLadder({ plan: () => plan, sheet: () => sheet, changed, keep: keepNow });
  startPrint(
    () => sheet && (renderHanging(plan, sheet.layers ?? [], figures, stations()), renderFigures(figures)),
    () => sheet?.drawings ?? [],
  );
  onWrittenElsewhere(() => typedText(plan["id"]), elsewhere);
  window.addEventListener("pagehide", keepIfWaiting);
  document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && keepIfWaiting());
  window.addEventListener("hashchange", () => void arrived());
  // A fold's event does not bubble. What is wrong inside stands beside the fold
  // while it is shut, and beside its blank once it is open.
  root.addEventListener("toggle", () => sheet && renderProblems(sheet.problems ?? []), true);
}

function keepIfWaiting(): void {
  if (keeping !== undefined) keepNow();
}

async function arrived(): Promise<void> {
  if (!hasPlan(location.hash)) return;
  const read = await planFromFragment(location.hash);
  if ("plan" in read) {
    keepNow();
    take(fromLink(read.plan));
  } else message("opened", `${read.refused} The sheet is as it was.`);
}

function startDrop(): void {
  document.addEventListener("dragover", (e) => {
    if (e.dataTransfer?.types.includes("Files")) e.preventDefault();
  });
  document.addEventListener("drop", (e) => {
    const file = e.dataTransfer?.files[0];
    if (!file) return;
    e.preventDefault();
    void openFile(file);
  });
}

