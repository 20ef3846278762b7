// The sketch of one panel: the layer's drawing looking up, cropped to the panel
// and those round it. The drawing is read once, however many steps it serves.

import type { Drawing } from "../engine/contract";
import { every, make } from "./dom";

let read: { svg: string; picture: Element | null } = { svg: "", picture: null };

/** The picture with the panels lit and those that are up shaded, or null where the sheet has no drawing. */
export function sketch(drawings: Drawing[], layer: string, lit: string[], up: string[], view: string): HTMLElement | null {
  const drawing = drawings.find((d) => d.layer === layer && d.shows === "hanging" && d.looking === "up");
  const picture = drawing ? pictureOf(drawing.svg) : null;
  if (!picture) return null;
  const whole = picture.getAttribute("data-whole");
  if (view !== "" || whole) picture.setAttribute("viewBox", view || (whole ?? ""));
  const here = new Set(lit.map((label) => `${layer}:${label}`));
  const hung = new Set(up.map((label) => `${layer}:${label}`));
  for (const drawn of every<Element>("[data-panel]", picture)) {
    const panel = drawn.getAttribute("data-panel") ?? "";
    drawn.classList.toggle("cw-here", here.has(panel));
    drawn.classList.toggle("cw-up", hung.has(panel));
  }
  return make("figure", { class: "cw-drawing cw-ladder-sketch", "data-looking": "up" }, picture, make("figcaption", {}, "looking up"));
}

/** What is said in the sketch is said in the words beside it, so that it is
 *  hidden from a screen reader. */
function pictureOf(svg: string): Element | null {
  if (read.svg === svg) return read.picture;
  const parsed = new DOMParser().parseFromString(svg, "image/svg+xml");
  const root = parsed.documentElement;
  const sound = root.nodeName === "svg" && !parsed.querySelector("parsererror, script, foreignObject");
  const picture = sound ? document.importNode(root, true) : null;
  picture?.querySelector(":scope > title")?.remove();
  picture?.removeAttribute("role");
  picture?.setAttribute("aria-hidden", "true");
  picture?.setAttribute("data-whole", picture.getAttribute("viewBox") ?? "");
  read = { svg, picture };
  return picture;
}
