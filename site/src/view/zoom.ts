// The drawing that is up on a small screen: two fingers make it larger, one moves it, a
// double tap goes in and out again. Letters too small to be read are left out until they
// are large enough.

import { every, region, setAttribute } from "./dom";

const LARGEST = 8;
const TAPPED = 2.5;
const TAP_MS = 300;
const READABLE_PX = 9;

interface Point {
  x: number;
  y: number;
}

let scale = 1;
let at: Point = { x: 0, y: 0 };
let place: HTMLElement;
const fingers = new Map<number, Point>();
let moved = false;
let tapped = 0;

const isUp = (): boolean => document.documentElement.hasAttribute("data-drawing") && getComputedStyle(place).overflow === "hidden";

/** Moves the drawing, and keeps it over its place. */
function put(nextScale: number, next: Point): void {
  scale = Math.min(LARGEST, Math.max(1, nextScale));
  const within = (value: number, room: number, size: number): number => Math.min(0, Math.max(room - size * scale, value));
  const sheet = place.querySelector<HTMLElement>(".cw-drawing-sheet");
  if (!sheet) return;
  at = { x: within(next.x, place.clientWidth, sheet.offsetWidth), y: within(next.y, place.clientHeight, sheet.offsetHeight) };
  sheet.style.transform = scale === 1 && at.x === 0 && at.y === 0 ? "" : new DOMMatrix().translate(at.x, at.y).scale(scale).toString();
}

/** Makes the drawing larger or smaller round a place on the screen. */
function zoom(nextScale: number, round: Point, from: Point = round): void {
  const to = Math.min(LARGEST, Math.max(1, nextScale));
  const corner = place.getBoundingClientRect();
  const inside = { x: (from.x - corner.x - at.x) / scale, y: (from.y - corner.y - at.y) / scale };
  put(to, { x: round.x - corner.x - inside.x * to, y: round.y - corner.y - inside.y * to });
}

/** Another drawing begins whole. */
export function unzoom(): void {
  place ??= region("drawing");
  fingers.clear();
  put(1, { x: 0, y: 0 });
  leaveOutSmall();
}

/** Marks the letters that cannot be read at the size the drawing has now. */
function leaveOutSmall(): void {
  for (const svg of every<SVGSVGElement>("svg", place)) {
    const box = svg.viewBox.baseVal;
    const seen = svg.getBoundingClientRect();
    if (seen.width === 0) continue;
    const drawn = Math.min(seen.width / box.width, seen.height / box.height);
    for (const text of every<Element>("text", svg)) setAttribute(text, "data-small", Number(text.getAttribute("font-size")) * drawn < READABLE_PX - 0.05 ? "" : null);
  }
}

function middle(points: Point[]): Point {
  const sum = points.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }));
  return { x: sum.x / points.length, y: sum.y / points.length };
}

function spread(points: Point[]): number {
  const [a, b] = points;
  return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
}

function move(e: PointerEvent): void {
  const before = Array.from(fingers.values());
  const was = fingers.get(e.pointerId);
  if (!was) return;
  if (Math.hypot(e.clientX - was.x, e.clientY - was.y) < 3 && !moved) return;
  moved = true;
  fingers.set(e.pointerId, { x: e.clientX, y: e.clientY });
  const after = Array.from(fingers.values());
  zoom(after.length > 1 ? (scale * spread(after)) / (spread(before) || 1) : scale, middle(after), middle(before));
}

function lift(e: PointerEvent): void {
  if (!fingers.delete(e.pointerId) || fingers.size > 0) return;
  if (!moved && e.type === "pointerup") tap(e);
  leaveOutSmall();
}

function tap(e: PointerEvent): void {
  const twice = e.timeStamp - tapped < TAP_MS;
  tapped = twice ? 0 : e.timeStamp;
  if (twice) zoom(scale > 1 ? 1 : TAPPED, { x: e.clientX, y: e.clientY });
}

export function startZoom(): void {
  place = region("drawing");
  place.addEventListener("pointerdown", (e) => {
    if (!isUp()) return;
    if (fingers.size === 0) moved = false;
    fingers.set(e.pointerId, { x: e.clientX, y: e.clientY });
  });
  window.addEventListener("pointermove", move);
  for (const kind of ["pointerup", "pointercancel"] as const) window.addEventListener(kind, lift);
  // What was moved was not pressed.
  place.addEventListener("click", (e) => moved && isUp() && e.stopPropagation(), true);
  new ResizeObserver(() => {
    put(scale, at);
    leaveOutSmall();
  }).observe(place);
}
