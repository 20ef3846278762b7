// What is marked on the walls: the choices of centre, the ticks along each
// wall, and the triangles that prove the corners square.

import type { Choice, Corner, Wall } from "../engine/contract";
import { action, make, redraw, region } from "./dom";
import { lowerFirst } from "./lists";

export function renderChoices(choices: Choice[]): void {
  redraw(region("choices"), choices, () => (choices.length < 2 ? [] : choices.map(card)));
}

function card(choice: Choice): HTMLElement {
  const b = choice.borders;
  return make(
    "div",
    { class: "cw-choice", "data-taken": choice.taken, "data-on": choice.on },
    make("h3", {}, choice.title),
    choice.refused
      ? make("p", { class: "cw-refused" }, choice.refused)
      : make(
          "dl",
          {},
          ...(["DA", "BC", "AB", "CD"] as const).flatMap((wall) => [make("dt", {}, wall), make("dd", {}, b[wall] || "—")]),
        ),
    choice.refused ? null : make("p", {}, `The ends differ by ${choice.ends}, the sides by ${choice.sides}.`),
    choice.taken
      ? make("p", { class: "cw-taken" }, "taken")
      : action("take-choice", "take this", { "data-to": choice.on, "aria-label": `Take this: ${choice.title}` }),
  );
}

export function renderWalls(walls: Wall[]): void {
  redraw(region("walls"), walls, () => (walls.length === 0 ? [] : [make("h3", {}, "Marks on the walls"), ...alike(walls).map(wallTable)]));
}

/** Walls with the same marks share a table: opposite walls of a square room. */
function alike(walls: Wall[]): Wall[][] {
  const groups = new Map<string, Wall[]>();
  for (const wall of walls) {
    const key = JSON.stringify([wall.length, wall.marks]);
    groups.set(key, [...(groups.get(key) ?? []), wall]);
  }
  return Array.from(groups.values());
}

function wallTable(walls: Wall[]): HTMLElement {
  const titles = walls.map((w, i) => (i === 0 ? w.title : lowerFirst(w.title))).join("; ");
  const ticks = walls.map((w) => make("th", { scope: "col", class: "cw-tick-head", "aria-label": `done on wall ${w.wall}` }, w.wall));
  const rows = (walls[0]?.marks ?? []).map((mark) =>
    make(
      "tr",
      { "data-kind": mark.kind, "data-exact": mark.exact },
      ...walls.map(() => make("td", { class: "cw-tick" })),
      make("th", { scope: "row" }, mark.label, mark.layer ? make("small", {}, ` ${lowerFirst(mark.layer)}`) : null),
      make("td", { class: "cw-hides" }, mark.hides),
      make("td", { class: "cw-mark" }, mark.text),
      make("td", { class: "cw-mark-other" }, mark.other),
    ),
  );
  return make(
    "table",
    { class: "cw-wall-marks", "data-walls": walls.map((w) => w.wall).join(" ") },
    make("caption", {}, titles, " ", make("small", {}, walls[0]?.length ?? "")),
    make("thead", {}, make("tr", {}, ...ticks, make("td", { colspan: "4" }))),
    make("tbody", {}, ...rows),
  );
}

export function renderCorners(corners: Corner[]): void {
  redraw(region("corners"), corners, () =>
    corners.length === 0
      ? []
      : [
          make("h3", {}, "Prove the corners square"),
          make("ul", {}, ...everyCorner(corners).map((c) => make("li", { "data-corner": c.corner }, c.text))),
        ],
  );
}

/** One sentence where all corners have the same: in a square room they do. */
function everyCorner(corners: Corner[]): Corner[] {
  const [first, ...rest] = corners;
  if (!first) return [];
  const shared = (c: Corner) => c.text.replace(`corner ${c.corner}`, "each corner");
  if (rest.length === 0 || rest.some((c) => shared(c) !== shared(first))) return corners;
  return [{ ...first, corner: corners.map((c) => c.corner).join(" "), text: shared(first) }];
}
