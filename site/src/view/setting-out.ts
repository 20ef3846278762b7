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
  redraw(region("walls"), walls, () =>
    walls.length === 0 ? [] : [make("h3", {}, "Marks on the walls"), ...walls.map(wallTable)],
  );
}

function wallTable(wall: Wall): HTMLElement {
  const rows = wall.marks.map((mark) =>
    make(
      "tr",
      { "data-kind": mark.kind, "data-exact": mark.exact },
      make("td", { class: "cw-tick", "aria-hidden": "true" }),
      make(
        "th",
        { scope: "row" },
        mark.label,
        mark.layer ? make("small", {}, ` ${lowerFirst(mark.layer)}`) : null,
      ),
      make("td", { class: "cw-mark" }, mark.text, mark.hides ? make("small", { title: "what rounding to the mark leaves out" }, ` ${mark.hides}`) : null),
      make("td", { class: "cw-mark-other" }, mark.other),
    ),
  );
  return make("table", { class: "cw-wall-marks" }, make("caption", {}, wall.title, " ", make("small", {}, wall.length)), make("tbody", {}, ...rows));
}

export function renderCorners(corners: Corner[]): void {
  redraw(region("corners"), corners, () =>
    corners.length === 0
      ? []
      : [
          make("h3", {}, "Prove the corners square"),
          make("ul", {}, ...corners.map((c) => make("li", { "data-corner": c.corner }, make("b", {}, c.corner), " ", c.text))),
        ],
  );
}
