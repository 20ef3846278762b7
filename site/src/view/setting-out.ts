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
    make("h3", {}, `On the ${lowerFirst(choice.title).replace(/^(on )?the /, "")}`),
    choice.refused
      ? make("p", { class: "cw-refused" }, choice.refused)
      : make(
          "dl",
          {},
          ...(["DA", "BC", "AB", "CD"] as const).flatMap((wall) => [make("dt", {}, wall), make("dd", {}, b[wall] || "—")]),
        ),
    choice.refused ? null : make("p", {}, `The ends differ by ${choice.difference.ends || "0"}, the sides by ${choice.difference.sides || "0"}.`),
    choice.taken
      ? make("p", { class: "cw-taken" }, "taken")
      : action("take-choice", "take this", { "data-to": choice.on, "aria-label": `Take this: ${choice.title}` }),
  );
}

export function renderWalls(walls: Wall[], layerNames: Map<string, string>): void {
  redraw(region("walls"), [walls, Array.from(layerNames)], () =>
    walls.length === 0 ? [] : [make("h3", {}, "Marks on the walls"), ...walls.map((w) => wallTable(w, layerNames))],
  );
}

function wallTable(wall: Wall, layerNames: Map<string, string>): HTMLElement {
  const several = layerNames.size > 1;
  const rows = wall.marks.map((mark) =>
    make(
      "tr",
      { "data-mark": mark.id, "data-kind": mark.kind },
      make("td", { class: "cw-tick", "aria-hidden": "true" }),
      make(
        "th",
        { scope: "row" },
        mark.label,
        several && mark.layer ? make("small", {}, ` ${lowerFirst(layerNames.get(mark.layer) ?? mark.layer)}`) : null,
      ),
      make("td", { class: "cw-mark" }, mark.text, mark.hides ? make("small", {}, ` ${mark.hides}`) : null),
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
