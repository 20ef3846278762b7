// The order of the steps: one earlier, one later, by button or by key, and drawn
// by the handle to another place. An entry is moved as it stands, so its folds
// stay open; it is moved back the same way. The step left out last can be put
// back.

import { at, list, put, typedText, type Json, type JsonObject } from "../state/pointer";
import { hear } from "./announce";
import type { Actions, Desk } from "./desk";
import { action, bringUnder, every, middle, redraw, region, setAttribute } from "./dom";
import { quoted } from "./names";
import { say } from "./say";
import { nextOpen } from "./step-open";

const STEPS = "/finish/steps";
const LEAST_DRAWN = 5; // px; less is a hand at rest on the handle
const EDGE = 72; // px at the top and foot of the window in which the sheet rolls on
const ROLL = 12; // px a frame

export function stepOrderActions(desk: Desk): Actions {
  return {
    earlier: (b) => moveBy(desk, b, -1),
    later: (b) => moveBy(desk, b, 1),
    "put-back": () => putBack(desk),
  };
}

function steps(): HTMLElement[] {
  return every(`[data-list="${STEPS}"] > .cw-step`);
}

function moveBy(desk: Desk, pressed: HTMLElement, by: number): void {
  const item = pressed.closest<HTMLElement>(".cw-step");
  if (!item) return;
  const from = steps().indexOf(item);
  const y = middle(pressed);
  move(desk, item, from + by);
  pressed.focus({ preventScroll: true });
  // The next press meets the same button, not that of the step that came in.
  bringUnder(pressed, y);
}

/** Moves a step to a place in the order, counted from 0. */
function move(desk: Desk, item: HTMLElement, to: number): void {
  const items = steps();
  const from = items.indexOf(item);
  const other = items[to];
  const name = quoted(typedText(at(desk.plan(), `${STEPS}/${String(from)}/name`)));
  if (!other) {
    hear(to < 0 ? say("{step} is the first step.", { step: name }) : say("{step} is the last step.", { step: name }));
    return;
  }
  if (to < from) other.before(item);
  else if (to > from) other.after(item);
  desk.change((plan) => {
    const entries = [...list(plan, STEPS)];
    entries.splice(to, 0, ...entries.splice(from, 1));
    put(plan, STEPS, entries);
  });
  hear(say("{step} is step {n} of {count}.", { step: name, n: to + 1, count: items.length }));
}

interface LeftOut {
  item: HTMLElement;
  entry: Json;
  index: number;
  plan: string;
}

let out: LeftOut | null = null;

/** Keeps the step that was just left out, in case it was the wrong one. */
export function keepLeftOut(item: HTMLElement, entry: Json, index: number, plan: JsonObject): void {
  out = { item, entry, index, plan: typedText(plan["id"]) };
  hear(say("{step} is left out. It can be put back at the end of the steps.", { step: quoted(typedText(at(entry, "/name"))) }));
}

export function renderLeftOut(plan: JsonObject): void {
  const back = out && list(plan, STEPS).some((s) => typedText(at(s, "/id")) === typedText(at(out?.entry ?? null, "/id")));
  if (out && (back || out.plan !== typedText(plan["id"]))) out = null;
  const name = out ? typedText(at(out.entry, "/name")) : null;
  redraw(region("left-out"), name, () => (name === null ? [] : [say("{step} is left out.", { step: quoted(name) }), " ", action("put-back", say("Put it back"))]));
}

function putBack(desk: Desk): void {
  if (!out) return;
  const { item, entry, index } = out;
  out = null;
  const after = steps()[index];
  if (after) after.before(item);
  else document.querySelector(`[data-list="${STEPS}"]`)?.append(item);
  nextOpen(typedText(at(entry, "/id")));
  desk.change((plan) => {
    const entries = [...list(plan, STEPS)];
    entries.splice(index, 0, entry);
    put(plan, STEPS, entries);
  });
  item.scrollIntoView({ block: "center" });
  item.querySelector<HTMLElement>("[data-rel=name]")?.focus({ preventScroll: true });
}

/** Lets the handles be drawn and the keys work. */
export function startStepOrder(root: HTMLElement, desk: Desk): void {
  root.addEventListener("keydown", (e) => {
    const handle = handleFrom(e.target);
    if (!handle || !e.altKey || (e.key !== "ArrowUp" && e.key !== "ArrowDown")) return;
    e.preventDefault();
    moveBy(desk, handle, e.key === "ArrowUp" ? -1 : 1);
  });
  root.addEventListener("pointerdown", (e) => {
    const handle = handleFrom(e.target);
    if (handle && e.button === 0) take(desk, handle, e);
  });
}

function handleFrom(target: EventTarget | null): HTMLElement | null {
  return target instanceof Element ? target.closest<HTMLElement>(".cw-handle") : null;
}

/** Follows one pointer from the handle to where it is let go. */
function take(desk: Desk, handle: HTMLElement, begun: PointerEvent): void {
  const item = handle.closest<HTMLElement>(".cw-step");
  const host = item?.parentElement;
  if (!item || !host) return;
  let y = begun.clientY;
  let drawn = false;
  let place = steps().indexOf(item);
  let frame = 0;

  const roll = () => {
    const by = y < EDGE ? -ROLL : y > window.innerHeight - EDGE ? ROLL : 0;
    if (by !== 0) {
      window.scrollBy({ top: by, behavior: "instant" });
      aim();
    }
    frame = requestAnimationFrame(roll);
  };
  const aim = () => {
    const others = steps().filter((s) => s !== item);
    place = others.filter((s) => y > middle(s)).length;
    for (const s of others) setAttribute(s, "data-drop", null);
    const next = others[place];
    if (next) setAttribute(next, "data-drop", "before");
    else setAttribute(others.at(-1) ?? item, "data-drop", "after");
  };
  const follow = (e: PointerEvent) => {
    if (e.pointerId !== begun.pointerId) return;
    y = e.clientY;
    if (!drawn && Math.abs(y - begun.clientY) < LEAST_DRAWN) return;
    if (!drawn) {
      drawn = true;
      // While one is drawn only the heads are shown, so that the whole order is
      // in reach; the sheet is rolled so that the head stays under the hand.
      setAttribute(host, "data-drawn", "");
      setAttribute(item, "data-in-hand", "");
      bringUnder(handle, y);
      frame = requestAnimationFrame(roll);
    }
    aim();
  };
  const letGo = (keep: boolean) => {
    cancelAnimationFrame(frame);
    ending.abort();
    if (!drawn) return;
    setAttribute(host, "data-drawn", null);
    setAttribute(item, "data-in-hand", null);
    for (const s of steps()) setAttribute(s, "data-drop", null);
    if (keep && place !== steps().indexOf(item)) move(desk, item, place);
    bringUnder(handle, y);
    handle.focus({ preventScroll: true });
  };
  const ending = new AbortController();
  const { signal } = ending;
  handle.setPointerCapture(begun.pointerId);
  handle.addEventListener("pointermove", follow, { signal });
  handle.addEventListener("pointerup", () => letGo(true), { signal });
  handle.addEventListener("pointercancel", () => letGo(false), { signal });
  document.addEventListener("keydown", (e) => e.key === "Escape" && letGo(false), { signal });
}
