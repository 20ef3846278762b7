// What is marked on the walls: the choices of where the mask goes and what it
// is square to, the ticks along each wall, the lines to strike, and the
// triangles that check the corners.

import type { BoxPlace, Choice, Corner, Wall } from "../engine/contract";
import { put } from "../state/pointer";
import { called } from "./corners";
import type { Actions, Desk } from "./desk";
import { action, make, redraw, region, unbroken } from "./dom";
import { allWorkingsOpen } from "./figures";
import { lowerFirst } from "./lists";
import { and, say } from "./say";

/** So many choices stand side by side; the others are folded away. */
const SIDE_BY_SIDE = 4;

export function renderChoices(choices: Choice[]): void {
  const first = choices.length > SIDE_BY_SIDE ? choices.filter((c) => c.taken || c.recommended) : choices;
  const shown = choices.filter((c, i) => first.includes(c) || (choices.length > SIDE_BY_SIDE && i < SIDE_BY_SIDE - first.length));
  const rest = choices.filter((c) => !shown.includes(c));
  redraw(region("choices"), shown, () => (choices.length < 2 ? [] : [cards(shown), ...shown.filter((c) => c.recommended).map(recommended)]));
  redraw(region("more-choices"), rest, () => (rest.length === 0 ? [] : [make("h3", {}, say("{n} more ways to set it", { n: rest.length })), cards(rest)]));
}

function cards(choices: Choice[]): HTMLElement {
  return make("div", { class: "cw-choices" }, ...choices.map(card));
}

function recommended(choice: Choice): HTMLElement {
  return make("p", { class: "cw-recommended" }, make("b", {}, say("Recommended: {way}.", { way: choice.title })), choice.reason ? ` ${choice.reason}` : "");
}

function card(choice: Choice): HTMLElement {
  return make(
    "div",
    { class: "cw-choice", "data-taken": choice.taken, "data-on": choice.on, "data-square": choice.square, "data-turned": choice.turned, "data-recommended": choice.recommended },
    make("h3", {}, choice.title),
    choice.refused ? make("p", { class: "cw-refused" }, choice.refused) : borders(choice),
    choice.refused || !(choice.ends || choice.sides) ? null : make("p", {}, say("The ends differ by {ends}, the sides by {sides}.", { ends: choice.ends, sides: choice.sides })),
    tapers(choice),
    choice.taken
      ? make("p", { class: "cw-taken" }, say("chosen"))
      : action("take-choice", say("take this"), { "data-to": `${choice.on} ${choice.square} ${choice.turned}`, "aria-label": say("Take this: {title}", { title: choice.title }) }),
  );
}

/** The border at each wall; at both ends of each wall where the two differ. */
function borders(choice: Choice): HTMLElement {
  const places = choice.places ?? [];
  const byWall = new Map<string, typeof places>();
  for (const p of places) byWall.set(p.wall, [...(byWall.get(p.wall) ?? []), p]);
  const tapered = Array.from(byWall.values()).some((ends) => ends.some((e) => e.text !== ends[0]?.text));
  if (!tapered) {
    return make("dl", {}, ...(["DA", "BC", "AB", "CD"] as const).flatMap((wall) => [make("dt", {}, called(wall)), make("dd", {}, choice.borders[wall] || "—")]));
  }
  return make(
    "table",
    { class: "cw-places" },
    make("caption", {}, say("At both ends of each wall")),
    make(
      "tbody",
      {},
      // A wall is named by its corners, and its ends stand in that order.
      ...Array.from(byWall, ([wall, ends]) => make("tr", {}, make("th", { scope: "row" }, called(wall)), ...ends.map((e) => make("td", {}, make("span", { class: "cw-hear" }, `${say("at {corner}", { corner: called(e.corner) })} `), e.text)))),
    ),
  );
}

function tapers(choice: Choice): HTMLElement | null {
  const told = choice.tapers ?? [];
  if (told.length === 0) return null;
  return make(
    "details",
    { class: "cw-why cw-tapers" },
    make("summary", { "aria-label": say("how they taper: {title}", { title: choice.title }) }, say("how they taper")),
    ...told.map((t) => make("p", {}, t.text)),
  );
}

export function choiceActions(desk: Desk): Actions {
  return {
    "take-choice": (b) => {
      const [on = "", square = "", turned = ""] = (b.dataset["to"] ?? "").split(" ");
      desk.change((plan) => {
        put(plan, "/setting/on", on);
        put(plan, "/setting/square", square);
        put(plan, "/setting/turned", turned);
      });
      document.querySelector<HTMLElement>("[data-at='/setting/on']")?.focus();
    },
  };
}

/** Where the box lies; and behind More its corners and every line that is struck,
 *  with both its ends. */
export function renderBox(box: BoxPlace | null): void {
  const corners = box?.corners ?? [];
  const lines = box?.lines ?? [];
  redraw(region("box"), [box?.text, box?.line], () =>
    box?.text || box?.line ? [make("h3", {}, say("The mask outline on the ceiling")), ...[box.text, box.line].map((text) => text ? make("p", {}, text) : null)] : [],
  );
  redraw(region("strikes"), [corners, lines], () => [
    corners.length > 0 ? make("h3", {}, say("The corners of the mask outline")) : null,
    corners.length > 0 ? make("ul", {}, ...corners.map((c) => make("li", { "data-corner": c.corner }, c.text))) : null,
    lines.length > 0 ? make("h3", {}, say("Lines to strike, from end to end")) : null,
    lines.length > 0
      ? make("ol", { class: "cw-strikes" }, ...lines.map((l) => make("li", { "data-kind": l.kind }, make("b", {}, l.name), l.layer ? make("small", {}, ` ${lowerFirst(l.layer)}`) : null, ` ${l.text}`)))
      : null,
  ]);
}

/** One table of all the walls; boxes to tick stand before each mark, on paper. */
export function renderWalls(walls: Wall[]): void {
  redraw(region("walls"), walls, () => {
    if (walls.length === 0) return [];
    const groups = alike(walls);
    const ticks = Math.max(...groups.map((g) => g.length));
    return [make("h3", {}, say("Marks on the walls")), make("table", { class: "cw-wall-marks" }, ...groups.map((g) => wallRows(g, ticks))), markSums(walls)];
  });
}

/** Walls with the same marks share a table: opposite walls of a square room. */
function alike(walls: Wall[]): Wall[][] {
  const groups = new Map<string, Wall[]>();
  for (const wall of walls) {
    const key = JSON.stringify([wall.length, wall.marks.map((m) => ({ ...m, join: "" }))]);
    groups.set(key, [...(groups.get(key) ?? []), wall]);
  }
  return Array.from(groups.values());
}

function wallRows(walls: Wall[], ticks: number): HTMLElement {
  const titles = walls.map((w, i) => (i === 0 ? w.title : lowerFirst(w.title))).join("; ");
  const boxes = (of: (wall: Wall) => HTMLElement) => Array.from({ length: ticks }, (_, i) => (walls[i] ? of(walls[i]) : make("td", { class: "cw-tick-none" })));
  const head = make(
    "tr",
    { class: "cw-wall-head" },
    ...boxes((w) => make("th", { scope: "col", class: "cw-tick-head", "aria-label": say("done on wall {wall}", { wall: called(w.wall) }) }, called(w.wall))),
    make("th", { scope: "rowgroup", colspan: "4" }, titles, " ", make("small", {}, walls[0]?.length ?? "")),
  );
  const rows = (walls[0]?.marks ?? []).map((mark) =>
    make(
      "tr",
      { "data-kind": mark.kind, "data-exact": mark.exact },
      ...boxes(() => make("td", { class: "cw-tick" })),
      make(
        "th",
        { scope: "row" },
        mark.label,
        mark.layer ? make("small", {}, ` ${lowerFirst(mark.layer)}`) : null,
        // Walls that share rows have the same marks: the line runs straight across.
        walls.length === 1 && mark.join ? make("small", { class: "cw-join" }, mark.join) : null,
      ),
      make("td", { class: "cw-hides" }, mark.hides),
      make("td", { class: "cw-mark" }, mark.text),
      make("td", { class: "cw-mark-other" }, mark.other),
    ),
  );
  return make("tbody", { "data-walls": walls.map((w) => w.wall).join(" ") }, head, ...rows);
}

/** How each mark comes about. */
function markSums(walls: Wall[]): HTMLElement | null {
  const groups = alike(walls).filter(([first]) => first?.marks.some((m) => m.sum));
  if (groups.length === 0) return null;
  return make(
    "details",
    { class: "cw-why cw-sums", open: allWorkingsOpen() },
    make("summary", {}, say("how each mark is worked out")),
    ...groups.flatMap((group) => [
      make("p", {}, make("b", {}, and(group.map((w) => called(w.wall))))),
      ...(group[0]?.marks ?? []).filter((m) => m.sum).map((m) => make("p", { class: "cw-sum" }, make("b", {}, m.label), m.layer ? ` ${lowerFirst(m.layer)}` : "", `: ${unbroken(m.sum)}`)),
    ]),
  );
}

export function renderCorners(corners: Corner[]): void {
  redraw(region("corners"), corners, () =>
    corners.length === 0
      ? []
      : [
          make("h3", {}, say("Check that the corners are square")),
          make("ul", {}, ...everyCorner(corners).map((c) => make("li", { "data-corner": c.corner }, c.text))),
        ],
  );
}

/** One sentence where all corners have the same: in a square room they do. */
function everyCorner(corners: Corner[]): Corner[] {
  const [first, ...rest] = corners;
  if (!first) return [];
  const shared = (c: Corner) => c.text.replace(say("corner {corner}", { corner: called(c.corner) }), say("each corner"));
  if (rest.length === 0 || rest.some((c) => shared(c) !== shared(first))) return corners;
  return [{ ...first, corner: corners.map((c) => c.corner).join(" "), text: shared(first) }];
}
