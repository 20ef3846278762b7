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
  redraw(region("choices"), choices, () => {
    if (choices.length < 2) return [];
    const first = choices.length > SIDE_BY_SIDE ? choices.filter((c) => c.taken || c.recommended) : choices;
    const shown = choices.filter((c, i) => first.includes(c) || (choices.length > SIDE_BY_SIDE && i < SIDE_BY_SIDE - first.length));
    const rest = choices.filter((c) => !shown.includes(c));
    return [
      make("div", { class: "cw-choices" }, ...shown.map(card)),
      rest.length > 0 ? make("details", { class: "cw-fold" }, make("summary", {}, say("{n} more ways to set it", { n: rest.length })), make("div", { class: "cw-choices" }, ...rest.map(card))) : null,
    ];
  });
}

function card(choice: Choice): HTMLElement {
  return make(
    "div",
    { class: "cw-choice", "data-taken": choice.taken, "data-on": choice.on, "data-square": choice.square, "data-turned": choice.turned, "data-recommended": choice.recommended },
    make("h3", {}, choice.title),
    choice.recommended ? make("p", { class: "cw-recommended" }, make("b", {}, say("Recommended.")), choice.reason ? ` ${choice.reason}` : "") : null,
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

/** Where the box lies, and every line that is struck, with both its ends. */
export function renderBox(box: BoxPlace | null): void {
  redraw(region("box"), box, () => {
    const corners = box?.corners ?? [];
    const lines = box?.lines ?? [];
    if (!box || !(box.text || box.line || corners.length > 0 || lines.length > 0)) return [];
    return [
      make("h3", {}, say("The mask outline on the ceiling")),
      box.text ? make("p", {}, box.text) : null,
      box.line ? make("p", {}, box.line) : null,
      lines.length > 0 || corners.length > 0
        ? make(
            "details",
            { class: "cw-fold" },
            make("summary", {}, say("its corners, and every line to strike from end to end")),
            make("ul", {}, ...corners.map((c) => make("li", { "data-corner": c.corner }, c.text))),
            make(
              "ol",
              { class: "cw-strikes" },
              ...lines.map((l) => make("li", { "data-kind": l.kind }, make("b", {}, l.name), l.layer ? make("small", {}, ` ${lowerFirst(l.layer)}`) : null, ` ${l.text}`)),
            ),
          )
        : null,
    ];
  });
}

export function renderWalls(walls: Wall[]): void {
  redraw(region("walls"), walls, () => (walls.length === 0 ? [] : [make("h3", {}, say("Marks on the walls")), ...alike(walls).flatMap((w) => [wallTable(w), markSums(w)])]));
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

function wallTable(walls: Wall[]): HTMLElement {
  const titles = walls.map((w, i) => (i === 0 ? w.title : lowerFirst(w.title))).join("; ");
  const ticks = walls.map((w) => make("th", { scope: "col", class: "cw-tick-head", "aria-label": say("done on wall {wall}", { wall: called(w.wall) }) }, called(w.wall)));
  const rows = (walls[0]?.marks ?? []).map((mark) =>
    make(
      "tr",
      { "data-kind": mark.kind, "data-exact": mark.exact },
      ...walls.map(() => make("td", { class: "cw-tick" })),
      make(
        "th",
        { scope: "row" },
        mark.label,
        mark.layer ? make("small", {}, ` ${lowerFirst(mark.layer)}`) : null,
        // Walls that share a table have the same marks: the line runs straight across.
        walls.length === 1 && mark.join ? make("small", { class: "cw-join" }, mark.join) : null,
      ),
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

/** How each mark comes about. */
function markSums(walls: Wall[]): HTMLElement | null {
  const worked = (walls[0]?.marks ?? []).filter((m) => m.sum);
  if (worked.length === 0) return null;
  return make(
    "details",
    { class: "cw-why cw-sums", open: allWorkingsOpen() },
    make("summary", { "aria-label": say("how each mark is worked out, {walls}", { walls: and(walls.map((w) => called(w.wall))) }) }, say("how each mark is worked out")),
    ...worked.map((m) => make("p", { class: "cw-sum" }, make("b", {}, m.label), m.layer ? ` ${lowerFirst(m.layer)}` : "", `: ${unbroken(m.sum)}`)),
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
