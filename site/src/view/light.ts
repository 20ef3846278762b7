// A figure and its dimension, a panel and its row: touching one lights the
// other. What is under the pointer or the focus wins over what was touched last.

import type { Figure, Layer } from "../engine/contract";
import { every, region, setText } from "./dom";
import { say } from "./say";

type Lit = { kind: "figure" | "panel"; id: string } | null;

let hovered: Lit = null;
let touched: Lit = null;
let words: (lit: NonNullable<Lit>) => string = () => "";

function litBy(target: EventTarget | null): Lit {
  const element = target instanceof Element ? target.closest("[data-panel], [data-figure]") : null;
  if (!element) return null;
  const panel = element.getAttribute("data-panel");
  if (panel) return { kind: "panel", id: panel };
  const figure = element.getAttribute("data-figure");
  return figure ? { kind: "figure", id: figure } : null;
}

/** Lights what belongs together anew, after the page has been redrawn. */
export function relight(): void {
  const lit = hovered ?? touched;
  for (const old of every<Element>("[data-lit]")) old.removeAttribute("data-lit");
  if (lit) for (const e of every<Element>(`[data-${lit.kind}="${CSS.escape(lit.id)}"]`)) e.setAttribute("data-lit", "");
  setText(region("drawing-words"), lit ? words(lit) : "");
}

function same(a: Lit, b: Lit): boolean {
  return a?.kind === b?.kind && a?.id === b?.id;
}

function hover(next: Lit): void {
  if (same(hovered, next)) return;
  hovered = next;
  relight();
}

export function startLight(root: HTMLElement): void {
  root.addEventListener("pointerover", (e) => e.pointerType !== "touch" && hover(litBy(e.target)));
  root.addEventListener("pointerleave", () => hover(null));
  root.addEventListener("focusin", (e) => hover(litBy(e.target)));
  root.addEventListener("focusout", () => hover(null));
  root.addEventListener("click", (e) => {
    const next = litBy(e.target);
    if (!next) return;
    const inDrawing = e.target instanceof Element && e.target.closest("svg") !== null;
    // A second touch on the drawing puts the light out.
    touched = inDrawing && same(touched, next) ? null : next;
    relight();
  });
}

/** What the line under the drawing says of a lit part. */
export function nameLit(figures: Map<string, Figure>, layers: Layer[]): void {
  words = (lit) => {
    if (lit.kind === "figure") {
      const f = figures.get(lit.id);
      return f ? `${f.label}: ${f.text}` : "";
    }
    const [id, label] = lit.id.split(":");
    const layer = layers.find((l) => l.id === id);
    const panel = layer?.panels?.find((p) => p.label === label);
    const hang = layer?.order?.find((h) => h.panel === label);
    return [`${label ?? ""}, ${panel?.size ?? ""}.`, hang ? say("Hung as number {n}.", { n: hang.n }) : "", hang?.text, panel?.cut].filter(Boolean).join(" ");
  };
}
