// The room as its readings make it: whether they prove its shape, how each
// reading fits, and what else is in the ceiling.

import type { RoomObject, Survey } from "../engine/contract";
import { called } from "./corners";
import { every, make, redraw, region } from "./dom";
import { calm } from "./names";
import { say } from "./say";

export function renderSurvey(survey: Survey | null): void {
  redraw(region("survey"), survey, () => (survey ? verdict(survey) : []));
  redraw(region("survey-lines"), survey?.lines, () => (survey?.lines?.length ? [make("h3", {}, say("Every line, as read and as it fits best")), linesTable(survey.lines)] : []));
  for (const place of every("#room [data-fill=residual]")) {
    const base = place.closest<HTMLElement>("[data-base]")?.dataset["base"] ?? "";
    const line = survey?.lines?.find((l) => l.at === base || l.at.startsWith(`${base}/`));
    redraw(place, line, () => (line?.off ? [make("span", { "data-flag": line.flag !== "" }, line.off, line.flag ? `, ${line.flag}` : "")] : []));
  }
}

function verdict(survey: Survey): (HTMLElement | null)[] {
  const corners = survey.corners ?? [];
  const again = survey.again ?? [];
  return [
    survey.text ? make("p", { class: "cw-verdict", "data-proved": survey.proved }, survey.text) : null,
    survey.closing && survey.proved !== "yes" ? make("p", { class: "cw-closing" }, say("Closing error: {closing}.", { closing: survey.closing })) : null,
    again.length > 0 ? make("p", { class: "cw-closing" }, make("b", {}, say("Measure again:")), ` ${again.join(", ")}.`) : null,
    corners.length > 0 ? make("ul", { class: "cw-room-corners" }, ...corners.map((c) => make("li", { "data-corner": c.corner }, c.text || `${called(c.corner)}: ${c.angle}`))) : null,
  ];
}

function linesTable(lines: Survey["lines"]): HTMLElement {
  return make(
    "table",
    { class: "cw-room-lines" },
    make("thead", {}, make("tr", {}, ...[say("line"), say("read"), say("fits at"), say("off by")].map((h) => make("th", { scope: "col" }, h)))),
    make(
      "tbody",
      {},
      ...lines.map((l) => make("tr", { "data-flag": l.flag !== "" }, make("th", { scope: "row" }, called(l.line)), make("td", {}, l.read), make("td", {}, l.adjusted), make("td", {}, l.off, l.flag ? ` (${l.flag})` : ""))),
    ),
  );
}

/** The light and all else in the ceiling, with the panels they fall on. It
 *  stands in a fold, since where a panel is cut is said at its hanging too. */
export function renderObjects(objects: RoomObject[], names: Map<string, string>): void {
  redraw(region("objects"), [objects, Array.from(names)], () => {
    const told = objects.filter((o) => o.text !== "" || (o.panels ?? []).length > 0);
    if (told.length === 0) return [];
    return [make("details", { class: "cw-why" }, make("summary", {}, say("where they are, and the panels they fall on")), make("ul", {}, ...told.map((o) => object(o, names))))];
  });
}

function object(o: RoomObject, names: Map<string, string>): HTMLElement {
  const cuts = (o.panels ?? []).map((p) => make("li", {}, make("b", {}, `${calm(names.get(p.layer) ?? p.layer)}, ${p.panel}`), `: ${p.text}`));
  return make(
    "li",
    { "data-object": o.at },
    make("b", {}, o.name || (o.kind === "fixture" ? say("The light") : say("Something else"))),
    o.text ? `. ${o.text}` : null,
    cuts.length > 0 ? make("ul", { class: "cw-cuts" }, ...cuts) : null,
  );
}
