// A figure and its dimension, a panel and its row: touching one lights the
// other. What is under the pointer or the focus wins over what was touched last.
// The panels of the drawing are one stop for the keyboard, with arrows among them.

import { figures, sheetWith } from "./answer";
import { every, region, setText } from "./dom";
import { calm } from "./names";
import { onSheet } from "./pages";
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
  for (const old of onSheet<Element>("[data-lit]")) old.removeAttribute("data-lit");
  const told = lit ? words(lit) : "";
  if (lit) {
    for (const e of onSheet<Element>(`[data-${lit.kind}="${CSS.escape(lit.id)}"]`)) {
      e.setAttribute("data-lit", "");
      if (e.getAttribute("role") === "button" && told !== "") e.setAttribute("aria-label", calm(told));
    }
  }
  setText(region("drawing-words"), told);
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
  root.addEventListener("keydown", pressKey);
  root.addEventListener("click", (e) => {
    const next = litBy(e.target);
    if (!next) return;
    const inDrawing = e.target instanceof Element && e.target.closest("svg") !== null;
    // A second touch on the drawing puts the light out.
    touched = inDrawing && same(touched, next) ? null : next;
    relight();
  });
}

/** Makes the panels of a drawing pressable by keys: one of them is a stop. */
export function startPanels(place: HTMLElement): void {
  const panels = panelsIn(place);
  panels.forEach((panel, i) => {
    panel.setAttribute("role", "button");
    panel.setAttribute("tabindex", i === 0 ? "0" : "-1");
    panel.setAttribute("aria-label", panel.getAttribute("data-panel")?.split(":")[1] ?? "");
  });
  panels[0]?.closest("svg")?.setAttribute("role", "group");
}

/** The panels drawn; what else is drawn of one, its number, belongs to it. */
function panelsIn(place: ParentNode): SVGGElement[] {
  return every<SVGGElement>("g[data-panel]", place).filter((g) => g.querySelector("rect, polygon, circle"));
}

const ways: Record<string, [number, number]> = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] };

/** The panel nearest to one on a side of it. */
function beside(from: SVGGElement, [x, y]: [number, number]): SVGGElement | undefined {
  const place = (g: SVGGElement): DOMRect => g.getBoundingClientRect();
  const here = place(from);
  let best: SVGGElement | undefined;
  let least = Infinity;
  for (const panel of panelsIn(from.ownerSVGElement ?? document)) {
    const there = place(panel);
    const dx = there.x + there.width / 2 - here.x - here.width / 2;
    const dy = there.y + there.height / 2 - here.y - here.height / 2;
    const ahead = dx * x + dy * y;
    const aside = Math.abs(dx * y) + Math.abs(dy * x);
    if (ahead <= 1 || aside > ahead || ahead + 2 * aside >= least) continue;
    least = ahead + 2 * aside;
    best = panel;
  }
  return best;
}

function pressKey(e: KeyboardEvent): void {
  const panel = e.target instanceof Element ? e.target.closest<SVGGElement>("g[data-panel][role=button]") : null;
  if (!panel) return;
  const way = ways[e.key];
  if (!way && e.key !== "Enter" && e.key !== " ") return;
  e.preventDefault();
  if (!way) return void panel.dispatchEvent(new MouseEvent("click", { bubbles: true }));
  const next = beside(panel, way);
  if (!next) return;
  panel.setAttribute("tabindex", "-1");
  next.setAttribute("tabindex", "0");
  next.focus();
}

const states: Record<string, string> = {
  found: say("Found."),
  missing: say("Missing."),
  damaged: say("Damaged."),
  recut: say("Recut."),
};

/** What the line under the drawing says of a lit part. */
export function nameLit(): void {
  words = (lit) => {
    if (lit.kind === "figure") {
      // What the drawing shows may stand on a page that is not in view.
      const f = figures().get(lit.id) ?? sheetWith("")?.figures?.find((one) => one.id === lit.id);
      return f ? `${f.label}: ${f.text}` : "";
    }
    const [id, label] = lit.id.split(":");
    const layer = sheetWith("hanging")?.layers?.find((l) => l.id === id);
    const panel = layer?.panels?.find((p) => p.label === label);
    const hang = layer?.order?.find((h) => h.panel === label);
    return [`${label ?? ""}, ${panel?.size ?? ""}.`, states[panel?.state ?? ""] ?? "", hang ? say("Hung as number {n}.", { n: hang.n }) : "", hang?.text, panel?.cut].filter(Boolean).join(" ");
  };
}
