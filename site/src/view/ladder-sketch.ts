// The sketch on a screen: the layer's drawing looking up, cropped to the panel
// and those round it, or the places of the platform. A drawing is read once,
// however many steps it serves.

import type { Drawing } from "../engine/contract";
import { every, make } from "./dom";
import { say } from "./say";

const read = new Map<string, { svg: string; picture: Element | null }>();

/** The layer with the panels lit and those that are up shaded, cropped to the
 *  view ("" for all of it); null where the sheet has no drawing of it. */
export function panelSketch(drawings: Drawing[], layer: string, lit: string[], up: string[], view: string): HTMLElement | null {
  const picture = pictureOf(drawings, layer, "hanging");
  if (!picture) return null;
  picture.setAttribute("viewBox", view || (picture.getAttribute("data-whole") ?? ""));
  const here = new Set(lit.map((label) => `${layer}:${label}`));
  const hung = new Set(up.map((label) => `${layer}:${label}`));
  for (const drawn of every<Element>("[data-panel]", picture)) {
    const panel = drawn.getAttribute("data-panel") ?? "";
    drawn.classList.toggle("cw-here", here.has(panel));
    drawn.classList.toggle("cw-up", hung.has(panel));
  }
  return framed(picture);
}

/** The places of the platform, drawn in the order they are used, with the deck
 *  lit at one of them. */
export function platformSketch(drawings: Drawing[], layer: string, place: number): HTMLElement | null {
  const picture = pictureOf(drawings, layer, "stations");
  if (!picture) return null;
  every<Element>(".cw-deck", picture).forEach((deck, i) => deck.classList.toggle("cw-here", i === place));
  return framed(picture);
}

function framed(picture: Element): HTMLElement {
  return make("figure", { class: "cw-drawing cw-ladder-sketch", "data-looking": "up" }, picture, make("figcaption", {}, say("looking up")));
}

/** What is said in the sketch is said in the words beside it, so that it is
 *  hidden from a screen reader. */
function pictureOf(drawings: Drawing[], layer: string, shows: string): Element | null {
  const svg = drawings.find((d) => d.layer === layer && d.shows === shows && d.looking === "up")?.svg ?? "";
  const before = read.get(shows);
  if (before?.svg === svg) return before.picture;
  const parsed = new DOMParser().parseFromString(svg, "image/svg+xml");
  const root = parsed.documentElement;
  const sound = root.nodeName === "svg" && !parsed.querySelector("parsererror, script, foreignObject");
  const picture = sound ? document.importNode(root, true) : null;
  picture?.querySelector(":scope > title")?.remove();
  picture?.removeAttribute("role");
  picture?.setAttribute("aria-hidden", "true");
  picture?.setAttribute("data-whole", picture.getAttribute("viewBox") ?? "");
  read.set(shows, { svg, picture });
  return picture;
}
