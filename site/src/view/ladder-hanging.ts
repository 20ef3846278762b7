// Hanging on the ladder: one panel a screen, the platform's moves between them,
// the gap at a seam just closed, and what comes down when a panel is up crooked.
// Which panel is up stands in the plan, so that the sheet orders the rest anew.

import type { Gap, Hang, Layer, Station } from "../engine/contract";
import { at, list, typedText } from "../state/pointer";
import { make } from "./dom";
import { BEFORE, beforeScreen, hasStops, isToRead } from "./ladder-before";
import { button, fitted, heading, unbroken, type Key, type Rung, type Screen } from "./ladder-screen";
import { panelSketch, platformSketch } from "./ladder-sketch";
import { say } from "./say";

// A step is named by what it is and the panel it belongs to: "move:B2",
// "panel:B2", "gaps:B2", "gap:2│3:B2", "crooked:B2", "end", and "before" with
// what stops the hanging.
const END = "end";

/** Seams that were not measured when they were closed: not asked for again. */
const passed = new Set<string>();

/** What the screens need of one layer. */
interface Work {
  rung: Rung;
  layer: Layer;
  base: string; // its pointer in the plan
  up: string[]; // as the plan has them, in the order they went up
  hung: Set<string>;
  cells: Map<string, string[]>; // of each piece
}

function workOn(rung: Rung, id: string): Work | null {
  const layer = rung.sheet().layers?.find((l) => l.id === id);
  const index = list(rung.plan(), "/mask/layers").findIndex((l) => typedText(at(l, "/id")) === id);
  if (!layer || index < 0 || layer.order.length === 0) return null;
  const base = `/mask/layers/${String(index)}`;
  const up = list(rung.plan(), `${base}/up`).map((l) => typedText(l));
  return { rung, layer, base, up, hung: new Set(up), cells: piecesOf(layer) };
}

/** The screen for the step in sight, or null where there is nothing to hang. */
export function hangingScreen(rung: Rung, id: string): Screen | null {
  const work = workOn(rung, id);
  return work && (screenAt(work, rung.place.at) ?? screenAt(work, firstOpen(work)));
}

/** The screen of a step, null where the sheet no longer has it. */
function screenAt(work: Work, step: string): Screen | null {
  if (step === END) return endScreen(work);
  if (step === BEFORE) return beforeScreen(work.rung, work.layer.name, () => work.rung.go(firstOpen(work)));
  const { kind, seam, label } = partsOf(step);
  const hang = hangOf(work, label);
  if (!hang) return null;
  if (kind === "gap") return gapScreen(work, hang, seam) ?? panelScreen(work, hang);
  if (kind === "gaps") return gapsScreen(work, hang) ?? panelScreen(work, hang);
  if (kind === "crooked") return crookedScreen(work, hang);
  if (kind === "move" && hang.station !== 0) return moveScreen(work, hang);
  return panelScreen(work, hang);
}

/** What a step is and whose; the name of a piece may hold any sign. */
function partsOf(step: string): { kind: string; seam: string; label: string } {
  const [, seam = "", of = ""] = /^gap:([^:]*):(.*)$/s.exec(step) ?? [];
  if (of !== "") return { kind: "gap", seam, label: of };
  const [, kind = "", label = ""] = /^([a-z]+):(.*)$/s.exec(step) ?? [];
  return { kind, seam: "", label };
}

/** Where the work goes on when the view is opened: at the step left, unless
 *  its panel has gone up since or been taken off the sheet. */
export function resumeHanging(rung: Rung, id: string): string {
  const work = workOn(rung, id);
  if (!work) return rung.place.at;
  const crooked = hangOf(work, typedText(at(rung.plan(), `${work.base}/crooked`)));
  if (crooked) return `crooked:${crooked.panel}`;
  if (isToRead(rung) && firstOpen(work) !== END) return BEFORE;
  const step = rung.place.at;
  const { kind, label } = partsOf(step);
  const hang = hangOf(work, label);
  if (hang && (kind === "gap" || kind === "gaps")) return step;
  return hang && !isUp(work, hang) && (kind === "move" || (kind === "panel" && standsFor(work, hang))) ? step : firstOpen(work);
}

function hangOf(work: Work, label: string): Hang | undefined {
  return label === "" ? undefined : work.layer.order.find((h) => h.panel === label);
}

function isUp(work: Work, hang: Hang): boolean {
  return hang.up || work.hung.has(hang.panel);
}

/** Every step in turn: the panels, and a move wherever the station changes. */
function stepsOf(work: Work): string[] {
  const steps: string[] = [];
  let stands = 0;
  for (const hang of work.layer.order) {
    if (hang.station !== 0 && hang.station !== stands) steps.push(`move:${hang.panel}`);
    if (hang.station !== 0) stands = hang.station;
    steps.push(`panel:${hang.panel}`);
  }
  return [...steps, END];
}

/** The next to hang, after the platform is where it is hung from: a platform that
 *  was only put in after panels were up has not been put anywhere yet. */
function firstOpen(work: Work): string {
  const hang = work.layer.order.find((h) => !isUp(work, h));
  if (!hang) return END;
  const move = `move:${hang.panel}`;
  return !standsFor(work, hang) || stepsOf(work).includes(move) ? move : `panel:${hang.panel}`;
}

function standsFor(work: Work, hang: Hang): boolean {
  return hang.station === 0 || (stationOf(work, hang)?.text ?? "") === work.rung.place.stands;
}

function stationOf(work: Work, hang: Hang): Station | undefined {
  return work.layer.stations.find((s) => s.n === hang.station);
}

function after(work: Work, step: string): string {
  const steps = stepsOf(work);
  return steps[steps.indexOf(step) + 1] ?? END;
}

function backFrom(work: Work, step: string): Key[] {
  const steps = stepsOf(work);
  const before = steps[steps.indexOf(step) - 1] ?? (hasStops(work.rung) ? BEFORE : undefined);
  return before === undefined ? [] : [{ words: say("Back"), does: () => work.rung.go(before) }];
}

function where(work: Work, hang: Hang): string {
  return say("{layer}, {n} of {count}", { layer: work.layer.name, n: hang.n, count: work.layer.order.length });
}

// One panel

function panelScreen(work: Work, hang: Hang): Screen {
  const { rung, layer } = work;
  const step = `panel:${hang.panel}`;
  const up = isUp(work, hang);
  const panel = layer.panels.find((p) => p.label === hang.panel);
  const toGo = () => rung.go(after(work, step));
  return {
    name: up ? `${step} up` : step,
    where: where(work, hang),
    heading: heading(up ? "" : say("Hang"), hang.panel, up ? say("is up") : ""),
    beside: make(
      "p",
      { class: "cw-ladder-small" },
      [
        panel?.supplier && panel.supplier !== hang.panel ? say("marked {supplier}", { supplier: panel.supplier }) : "",
        unbroken(panel?.measured || panel?.size || ""),
        hang.station === 0 ? "" : say("from position {station}", { station: hang.station }),
      ]
        .filter(Boolean)
        .join(" · "),
    ),
    sketch: sketchOf(work, cellsOf(work, hang), hang.view),
    content: [
      ...(up ? [] : [hang.mind, panel?.cut ?? "", comes[panel?.state ?? ""] ?? ""]).map((note) => (note === "" ? null : make("p", { class: "cw-ladder-cut" }, unbroken(note)))),
      up ? upActions(work, hang) : make("ul", { class: "cw-ladder-set" }, ...hang.set.map((s) => make("li", {}, make("b", {}, s.to), " ", make("span", {}, s.edge)))),
      measuresOf(work, hang),
      pieceWords(work, panel?.piece || hang.panel),
    ],
    keys: [
      up ? { words: say("Go on"), does: toGo } : { words: say("{panel} is up", { panel: hang.panel }), does: () => hung(work, hang) },
      ...(up ? [] : [{ words: say("Later"), does: toGo }]),
      ...backFrom(work, step),
    ],
  };
}

/** What hangs as one, or on marks of its own, is said of the piece by name. */
function pieceWords(work: Work, name: string): HTMLElement | null {
  const piece = work.layer.pieces.find((p) => p.name === name);
  return piece ? make("p", { class: "cw-ladder-small" }, make("b", {}, piece.name), ` ${unbroken(piece.text)}`) : null;
}

/** The layer's drawing with these panels lit, and those that are up. */
function sketchOf(work: Work, lit: string[], view: string): HTMLElement | null {
  return panelSketch(work.rung.sheet().drawings ?? [], work.layer.id, lit, upCells(work), view);
}

const comes: Record<string, string> = {
  missing: say("It was missing when the delivery was counted."),
  damaged: say("It came damaged."),
};

/** Distances that place the panel, and the gaps to leave at the seams it closes. */
function measuresOf(work: Work, hang: Hang): HTMLElement | null {
  const gaps = isUp(work, hang) ? [] : closedBy(work, hang).filter((g) => g.set !== "" && !(g.set === g.planned && isNone(g.set)));
  const rows = [...hang.measures, ...gaps.map((g) => ({ what: say("gap at {seam}", { seam: g.seam }), text: g.set }))];
  if (rows.length === 0) return null;
  return make("dl", { class: "cw-ladder-measures" }, ...rows.map((r) => make("div", {}, make("dt", {}, r.what), fitted("dd", r.text))));
}

/** A gap written as none: a plain seam, whose panels are set to each other. */
function isNone(gap: string): boolean {
  return /^0\D*$/.test(gap);
}

function upActions(work: Work, hang: Hang): HTMLElement {
  const measured = closedBy(work, hang).some((g) => g.offers.length > 0);
  return make(
    "div",
    { class: "cw-ladder-more" },
    button(say("It is up crooked"), () => crooked(work, hang)),
    button(say("Take it down"), () => takeDown(work, hang)),
    measured ? button(say("Measure its gap"), () => work.rung.go(`gaps:${hang.panel}`)) : null,
  );
}

function hung(work: Work, hang: Hang): void {
  const { rung } = work;
  const gaps = toMeasure(work, hang);
  rung.write(`${work.base}/up`, [...work.up, hang.panel]);
  rung.tell(say("{panel} is up.", { panel: hang.panel }));
  rung.go(gaps.length > 0 ? `gaps:${hang.panel}` : nextOpenAfter(rung, work.layer.id, hang));
}

/** The sheet may have ordered the rest anew: the step after this panel there. */
function nextOpenAfter(rung: Rung, id: string, hang: Hang): string {
  const work = workOn(rung, id);
  return work ? after(work, `panel:${hang.panel}`) : "";
}

function takeDown(work: Work, hang: Hang): void {
  const down = [hang.panel, ...cellsOf(work, hang)];
  work.rung.write(`${work.base}/up`, work.up.filter((l) => !down.includes(l)));
  work.rung.tell(say("{panel} is down again.", { panel: hang.panel }));
  work.rung.go(`panel:${hang.panel}`);
}

// The platform

function moveScreen(work: Work, hang: Hang): Screen {
  const step = `move:${hang.panel}`;
  const n = String(hang.station);
  const station = stationOf(work, hang);
  const first = stepsOf(work)[0] === step || work.rung.place.stands === "";
  const clash = work.rung.sheet().platform?.stations.find((s) => s.clash && s.layer === work.layer.id && s.n === hang.station);
  return {
    name: step,
    where: where(work, hang),
    heading: heading(first ? say("Put the platform at position") : say("Move the platform to position"), n),
    content: [
      clash ? make("p", { class: "cw-ladder-cut" }, unbroken(clash.text)) : null,
      station?.text ? make("p", { class: "cw-ladder-join" }, unbroken(station.text)) : null,
      station && station.panels.length > 0 ? make("p", { class: "cw-ladder-join" }, say("Hung from there: {panels}.", { panels: station.panels.join(", ") })) : null,
    ],
    sketch: platformSketch(work.rung.sheet().drawings ?? [], work.layer.id, placesOf(work).indexOf(hang.station)) ?? sketchOf(work, station?.panels ?? [], ""),
    whole: true,
    keys: [
      {
        words: say("Platform in place"),
        does: () => {
          work.rung.place.stands = station?.text ?? "";
          work.rung.go(`panel:${hang.panel}`);
        },
      },
      ...backFrom(work, step),
    ],
  };
}

/** The stations in the order they are used, each once, as they are drawn. */
function placesOf(work: Work): number[] {
  return Array.from(new Set(work.layer.order.map((h) => h.station))).filter((n) => n !== 0);
}

// Gaps

/** The panels a step hangs: one, or all those of its piece. */
function cellsOf(work: Work, hang: Hang): string[] {
  const cells = work.cells.get(hang.panel) ?? work.cells.get(work.layer.panels.find((p) => p.label === hang.panel)?.piece ?? "");
  return cells ?? [hang.panel];
}

/** The panels of every piece, by the name of the piece. */
function piecesOf(layer: Layer): Map<string, string[]> {
  const cells = new Map<string, string[]>();
  for (const { piece, label } of layer.panels) {
    if (piece === "") continue;
    const of = cells.get(piece);
    if (of) of.push(label);
    else cells.set(piece, [label]);
  }
  return cells;
}

function upCells(work: Work): string[] {
  return work.layer.order.filter((h) => isUp(work, h)).flatMap((h) => cellsOf(work, h));
}

/** The seams this panel closes against panels that are up: a seam is named by
 *  the columns or the rows on its two sides. */
function closedBy(work: Work, hang: Hang): Gap[] {
  if (work.layer.gaps.length === 0) return [];
  const mine = cellsOf(work, hang);
  const up = new Set(upCells(work).filter((cell) => !mine.includes(cell)));
  return work.layer.gaps.filter((gap) => {
    const [one = "", two = ""] = gap.seam.split("│");
    return mine.some((cell) => {
      const [, row = "", column = ""] = /^(\D+)(\d+)$/.exec(cell) ?? [];
      const over = (side: string) => (/^\d/.test(side) ? row + side : side + column);
      return (cell === over(one) && up.has(over(two))) || (cell === over(two) && up.has(over(one)));
    });
  });
}

function toMeasure(work: Work, hang: Hang): Gap[] {
  return closedBy(work, hang).filter((g) => g.measured === "" && g.offers.length > 0 && !passed.has(passedName(work, g)));
}

function passedName(work: Work, gap: Gap): string {
  return [typedText(work.rung.plan()["id"]), work.layer.id, gap.seam].join(" ");
}

/** Which of the seams just closed to measure; with one seam, its gap at once. */
function gapsScreen(work: Work, hang: Hang): Screen | null {
  const gaps = closedBy(work, hang).filter((g) => g.offers.length > 0);
  const [only] = gaps;
  if (!only) return null;
  if (gaps.length === 1) return gapScreen(work, hang, only.seam);
  return {
    name: `gaps:${hang.panel}`,
    where: where(work, hang),
    heading: heading(say("Measure a gap at"), hang.panel),
    content: [
      make(
        "div",
        { class: "cw-ladder-more" },
        ...gaps.map((g) => button(`${g.seam}: ${g.measured || say("not measured")}`, () => work.rung.go(`gap:${g.seam}:${hang.panel}`), { "data-seam": g.seam })),
      ),
    ],
    keys: [{ words: gaps.some((g) => g.measured !== "") ? say("Go on") : say("Skip"), does: () => pass(work, hang, gaps) }, back(work, hang)],
  };
}

function gapScreen(work: Work, hang: Hang, seam: string): Screen | null {
  const gap = work.layer.gaps.find((g) => g.seam === seam);
  if (!gap || gap.offers.length === 0) return null;
  return {
    name: `gap:${seam}:${hang.panel}`,
    where: where(work, hang),
    heading: heading(say("How wide is the gap at"), seam),
    content: [
      make("p", { class: "cw-ladder-small" }, [gap.planned && say("planned {planned}", { planned: gap.planned }), gap.set && say("set to {set}", { set: gap.set })].filter(Boolean).join(", ")),
      make(
        "div",
        { class: "cw-ladder-offers", role: "group", "aria-label": say("Gap at {seam}", { seam }) },
        ...gap.offers.map((offer) => button(offer, () => measured(work, hang, gap, offer), { "aria-pressed": String(offer === gap.measured) })),
      ),
      typedGap(work, hang, gap),
    ],
    keys: [{ words: say("Skip"), does: () => pass(work, hang, [gap]) }, back(work, hang)],
  };
}

/** A gap that is none of those offered, typed as on the sheet. */
function typedGap(work: Work, hang: Hang, gap: Gap): HTMLElement {
  const other = gap.offers.includes(gap.measured) ? "" : gap.measured;
  const blank = make("input", { value: other, placeholder: say("another"), "aria-label": say("Another gap at {seam}", { seam: gap.seam }), autocomplete: "off", spellcheck: "false", enterkeyhint: "done" });
  const form = make("form", { class: "cw-ladder-typed" }, blank, make("button", { type: "submit" }, say("Set down")));
  form.addEventListener("submit", (e) => {
    e.preventDefault();
    if (blank.value.trim() !== "") measured(work, hang, gap, blank.value.trim());
  });
  return form;
}

function back(work: Work, hang: Hang): Key {
  return { words: say("Back"), does: () => work.rung.go(`panel:${hang.panel}`) };
}

function pass(work: Work, hang: Hang, gaps: Gap[]): void {
  for (const gap of gaps) passed.add(passedName(work, gap));
  goOnFrom(work.rung, work.layer.id, hang);
}

/** Writes a measured gap down; what the sheet makes of it is said at the head
 *  of the next screen. */
function measured(work: Work, hang: Hang, gap: Gap, offer: string): void {
  const { rung, base, layer } = work;
  const before = list(rung.plan(), `${base}/gaps`);
  const others = before.filter((g) => typedText(at(g, "/seam")) !== gap.seam);
  rung.write(`${base}/gaps`, [...others, { seam: gap.seam, gap: offer }]);
  const wrong = rung.sheet().problems?.find((p) => p.severity === "stop" && p.at === `${base}/gaps/${String(others.length)}/gap`);
  if (wrong) {
    rung.write(`${base}/gaps`, before);
    rung.tell(`${wrong.what} ${wrong.do}`);
    return rung.go(`gap:${gap.seam}:${hang.panel}`);
  }
  rung.tell(adviceOn(rung, layer, gap.seam));
  goOnFrom(rung, layer.id, hang);
}

/** What the sheet says of a seam just measured, and the seams it now has set
 *  otherwise than before. */
function adviceOn(rung: Rung, before: Layer, seam: string): string {
  const { problems, layers } = rung.sheet();
  const now = layers?.find((l) => l.id === before.id)?.gaps ?? [];
  const set = new Map(before.gaps.map((g) => [g.seam, g.set] as const));
  const measured = now.find((g) => g.seam === seam);
  const changed = now.filter((g) => g.measured === "" && g.set !== set.get(g.seam)).map((g) => say("{seam} to {set}", { seam: g.seam, set: g.set }));
  return [
    say("Gap at {seam}: {measured}.", { seam, measured: measured?.measured ?? "" }),
    measured?.text ?? "",
    changed.length > 0 ? say("Set {changed}.", { changed: changed.join(", ") }) : "",
    ...(problems ?? []).filter((p) => measured?.at && p.at === measured.at).map((p) => `${p.what} ${p.do}`),
  ]
    .filter(Boolean)
    .join(" ");
}

/** The next seam of this panel that is not measured, or the next step. */
function goOnFrom(rung: Rung, id: string, hang: Hang): void {
  const work = workOn(rung, id);
  const more = work ? toMeasure(work, hang) : [];
  rung.go(more.length > 0 ? `gaps:${hang.panel}` : nextOpenAfter(rung, id, hang));
}

// Crooked

function crooked(work: Work, hang: Hang): void {
  work.rung.write(`${work.base}/crooked`, hang.panel);
  work.rung.go(`crooked:${hang.panel}`);
}

function crookedScreen(work: Work, hang: Hang): Screen {
  const { restart } = work.layer;
  const down = restart.down.length > 0 ? restart.down : [hang.panel];
  const clear = () => work.rung.write(`${work.base}/crooked`, "");
  return {
    name: `crooked:${hang.panel}`,
    where: where(work, hang),
    heading: heading(say("Up crooked:"), hang.panel),
    content: [
      restart.text ? make("p", { class: "cw-ladder-join" }, restart.text) : null,
      make("p", { class: "cw-ladder-small" }, say("Take down, in this order:")),
      make("ol", { class: "cw-ladder-down" }, ...down.map((label) => make("li", {}, label))),
    ],
    sketch: sketchOf(work, down, ""),
    whole: true,
    keys: [
      {
        words: down.length === 1 ? say("It is down") : say("They are down"),
        does: () => {
          work.rung.write(`${work.base}/up`, work.up.filter((l) => l !== hang.panel && !down.includes(l)));
          clear();
          work.rung.tell(say("Down: {down}.", { down: down.join(", ") }));
          work.rung.go("");
        },
      },
      {
        words: say("It hangs true"),
        does: () => {
          clear();
          work.rung.go(`panel:${hang.panel}`);
        },
      },
    ],
  };
}

// The end

function endScreen(work: Work): Screen {
  const { rung, layer } = work;
  const left = layer.order.filter((h) => !isUp(work, h));
  const [first] = left;
  return {
    name: first ? `${END} ${first.panel}` : END,
    where: layer.name,
    heading: first ? heading(say("Still to hang:"), String(left.length)) : heading(`${layer.name}:`, say("All up")),
    content: [first ? make("ol", { class: "cw-ladder-down" }, ...left.slice(0, 60).map((h) => make("li", {}, h.panel))) : null],
    keys: [
      first ? { words: say("To {panel}", { panel: first.panel }), does: () => rung.go(`panel:${first.panel}`) } : { words: say("To the sheet"), does: () => rung.leave() },
      ...backFrom(work, END),
    ],
  };
}
