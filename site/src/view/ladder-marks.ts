// Marking out on the ladder: one mark a screen, wall by wall in the order of
// the tape. What is marked stands in the plan, by the place of the mark: a mark
// that has moved is to be made again.

import type { Mark, Wall } from "../engine/contract";
import { list, typedText } from "../state/pointer";
import { called } from "./corners";
import { make } from "./dom";
import { button, fitted, heading, unbroken, type Rung, type Screen } from "./ladder-screen";
import { lowerFirst } from "./lists";
import { say } from "./say";

interface Tick {
  name: string;
  wall: Wall;
  mark: Mark;
}

const END = "end";

/** The screen for the step in sight, or null where there is nothing to mark. */
export function marksScreen(rung: Rung): Screen | null {
  const only = namesOf(rung).includes(rung.place.only) ? rung.place.only : "";
  const ticks = ticksOf(rung.sheet().walls ?? [], only);
  if (ticks.length === 0) return null;
  const open = openOf(rung, ticks);
  const at = rung.place.at;
  const index = ticks.findIndex((t) => t.name === at);
  if (at === END || (index < 0 && open.length === 0)) return ended(rung, ticks, open);
  const here = ticks[index] ?? open[0] ?? ticks[0];
  return here ? markScreen(rung, ticks, here) : null;
}

/** Where the work goes on when the view is opened: what is ticked is done. */
export function resumeMarks(rung: Rung): string {
  return markedIn(rung).includes(rung.place.at) ? "" : rung.place.at;
}

function markedIn(rung: Rung): string[] {
  return list(rung.plan(), "/marked").map((name) => typedText(name));
}

function openOf(rung: Rung, ticks: Tick[]): Tick[] {
  const marked = markedIn(rung);
  return ticks.filter((t) => !marked.includes(t.name));
}

/** Writes down what is marked; marks that the sheet no longer has go. */
function mark(rung: Rung, names: string[]): void {
  rung.write("/marked", ticksOf(rung.sheet().walls ?? [], "").map((t) => t.name).filter((name) => names.includes(name)));
}

function namesOf(rung: Rung): string[] {
  return (rung.sheet().layers ?? []).map((l) => l.name);
}

/** With the name of a layer, only its marks and those of all layers. */
function ticksOf(walls: Wall[], layer: string): Tick[] {
  return walls.flatMap((wall) =>
    wall.marks
      .filter((mark) => layer === "" || mark.layer === "" || mark.layer === layer)
      .map((mark) => ({ name: [wall.wall, mark.kind, mark.layer, mark.label, mark.exact].join(" "), wall, mark })),
  );
}

function nameOf(mark: Mark): string {
  return mark.layer === "" ? mark.label : `${mark.label} ${lowerFirst(mark.layer)}`;
}

function markScreen(rung: Rung, ticks: Tick[], here: Tick): Screen {
  const { wall, mark, name } = here;
  const index = ticks.indexOf(here);
  const made = markedIn(rung).includes(name);
  const names = namesOf(rung);
  const next = () => rung.go(ticks[index + 1]?.name ?? END);
  const before = ticks[index - 1];
  const then = ticks[index + 1];
  return {
    name,
    where: say("mark {n} of {count}", { n: index + 1, count: ticks.length }),
    heading: heading(wall.title, mark.text, made ? say("is marked") : ""),
    beside: make("p", { class: "cw-ladder-other" }, mark.other),
    content: [
      make("p", { class: "cw-ladder-what" }, make("b", {}, mark.label), mark.layer === "" ? "" : ` ${lowerFirst(mark.layer)}`),
      mark.join === "" ? null : make("p", { class: "cw-ladder-join" }, unbroken(mark.join)),
      mark.hides === "" ? null : make("p", { class: "cw-ladder-small" }, say("exactly: {length}", { length: mark.hides })),
      then && !made ? make("p", { class: "cw-ladder-small" }, unbroken(then.wall === wall ? say("then {at}, {mark}", { at: then.mark.text, mark: nameOf(then.mark) }) : say("then {at}, {mark} on {wall}", { at: then.mark.text, mark: nameOf(then.mark), wall: called(then.wall.wall) }))) : null,
      index === 0 && names.length > 1 ? ofLayers(rung, names) : null,
      made ? make("div", { class: "cw-ladder-more" }, button(say("It is not marked after all"), () => untick(rung, name))) : null,
    ],
    keys: [
      made ? { words: say("Go on"), does: next } : { words: say("Marked"), does: () => tick(rung, ticks, here) },
      ...(made ? [] : [{ words: say("Later"), does: next }]),
      ...(before ? [{ words: say("Back"), does: () => rung.go(before.name) }] : []),
    ],
  };
}

/** On the first screen: the marks of all layers, or of one. */
function ofLayers(rung: Rung, names: string[]): HTMLElement {
  const choice = (words: string, only: string) =>
    button(
      words,
      () => {
        rung.place.only = only;
        rung.go("");
      },
      { "aria-pressed": String(rung.place.only === only) },
    );
  return make("div", { class: "cw-ladder-more", role: "group", "aria-label": say("Marks of") }, choice(say("All layers"), ""), ...names.map((name) => choice(name, name)));
}

/** A mark left out and made later leads back to where the work had got. */
function tick(rung: Rung, ticks: Tick[], here: Tick): void {
  mark(rung, [...markedIn(rung), here.name]);
  rung.tell(say("{mark} is marked on {wall}.", { mark: here.mark.label, wall: called(here.wall.wall) }));
  const open = openOf(rung, ticks);
  rung.go(ticks.slice(ticks.indexOf(here)).find((t) => open.includes(t))?.name ?? END);
}

function untick(rung: Rung, name: string): void {
  mark(rung, markedIn(rung).filter((t) => t !== name));
  rung.go(name);
}

function ended(rung: Rung, ticks: Tick[], open: Tick[]): Screen {
  const last = ticks[ticks.length - 1];
  const back = last ? [{ words: say("Back"), does: () => rung.go(last.name) }] : [];
  const first = open[0];
  if (!first) {
    return {
      name: END,
      where: say("{n|mark|marks}", { n: ticks.length }),
      heading: heading(say("On every wall"), say("All marked")),
      content: [
        make(
          "div",
          { class: "cw-ladder-more" },
          button(say("Begin again: take all ticks off"), () => {
            mark(rung, []);
            rung.go("");
          }),
        ),
      ],
      keys: [{ words: say("To the sheet"), does: () => rung.leave() }, ...back],
    };
  }
  return {
    name: END,
    where: say("{n} of {count} left", { n: open.length, count: ticks.length }),
    heading: heading(say("Marks left out:"), String(open.length)),
    content: [
      make(
        "dl",
        { class: "cw-ladder-measures" },
        ...open.slice(0, 12).map((t) => make("div", {}, make("dt", {}, say("{mark} on {wall}", { mark: nameOf(t.mark), wall: called(t.wall.wall) })), fitted("dd", t.mark.text))),
      ),
    ],
    keys: [{ words: say("To the first"), does: () => rung.go(first.name) }, ...back],
  };
}
