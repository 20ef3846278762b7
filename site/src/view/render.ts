// The whole sheet from plan and answer, part by part.

import type { Sheet } from "../engine/contract";
import { isFresh } from "../state/keep";
import { isExample, type Plan } from "../state/plan";
import { list, typedText } from "../state/pointer";
import { renderAir } from "./air";
import { announce } from "./announce";
import { figures, layerNames, pagesTold, readings, theSheet } from "./answer";
import { renderBites } from "./bites";
import { renderAsked, renderBlanks, renderProblems } from "./blanks";
import { renderDays } from "./days";
import { every, region, setText } from "./dom";
import { renderDrawing } from "./drawing";
import { renderFigures } from "./figures";
import { renderClimate, renderShopping, renderSteps } from "./finish";
import { renderHanging } from "./hanging";
import { ladderAsks, renderLadder } from "./ladder";
import { renderWhen } from "./lists";
import { isMade, unmake } from "./made";
import { nameLit, relight } from "./light";
import { renderLimits, renderStepLimits } from "./limits";
import { renderLooking } from "./looking";
import { renderDelivery } from "./mask";
import { renderNotation } from "./notation";
import { openPages } from "./pages";
import { renderPlatform } from "./platform";
import { renderPrice } from "./price";
import { renderRecord } from "./record";
import { renderObjects, renderSurvey } from "./room";
import { renderRest } from "./rest";
import { renderSafety } from "./safety";
import { renderContents, renderCover } from "./contents";
import { renderBox, renderChoices, renderCorners, renderWalls } from "./setting-out";
import { renderLeftOut } from "./step-order";
import { say } from "./say";

/** What a page of the sheet asks of the engine, by its names, and how it is shown. The
 *  notes of safety bite on other pages, and the platform stands in the hanging. */
interface PageView {
  asks: string[];
  show(plan: Plan, sheet: Sheet): void;
}

const views: Readonly<Record<string, PageView>> = {
  job: { asks: [], show: (plan, sheet) => renderCover(plan, sheet.overview ?? null) },
  room: {
    asks: ["room", "safety"],
    show: (plan, sheet) => {
      renderSurvey(sheet.survey ?? null);
      renderObjects(sheet.objects ?? [], layerNames(plan));
    },
  },
  mask: { asks: ["mask"], show: (plan, sheet) => renderDelivery(plan, sheet.layers ?? []) },
  "setting-out": {
    asks: ["setting"],
    show: (_, sheet) => {
      renderChoices(sheet.choices ?? []);
      renderWalls(sheet.walls ?? []);
      renderBox(sheet.box ?? null);
      renderCorners(sheet.corners ?? []);
    },
  },
  hanging: { asks: ["hanging", "safety"], show: (plan, sheet) => renderHanging(plan, sheet.layers ?? [], figures(), sheet.platform?.stations ?? []) },
  finish: {
    asks: ["finish", "safety"],
    show: (plan, sheet) => {
      renderClimate(sheet.climate ?? null);
      renderLeftOut(plan);
      renderSteps(plan, sheet.steps ?? [], sheet.drawings ?? []);
      renderStepLimits(sheet.limits ?? []);
      renderShopping(sheet.shopping ?? [], sheet.bill ?? null, sheet.steps ?? []);
    },
  },
  days: { asks: ["days", "safety"], show: (plan, sheet) => renderDays(plan, sheet.days ?? null) },
  price: { asks: ["price"], show: (plan, sheet) => renderPrice(plan, sheet.price ?? null) },
  safety: {
    asks: ["safety"],
    show: (plan, sheet) => {
      renderLimits(sheet.limits ?? []);
      renderPlatform(sheet.platform ?? null);
      renderAir(sheet.air ?? null);
      renderWhen(plan, every("[data-when]")); // the notes lead to blanks of other pages
      renderSafety(plan, sheet.safety ?? [], sheet.findOut ?? []);
    },
  },
  record: { asks: ["record"], show: (_, sheet) => renderRecord(sheet.record ?? null) },
};

/** The pages that the engine is asked for now, "" being all of them. */
export function pagesAsked(): string {
  const open = openPages();
  if (open.length > 1) return "";
  const asked = [...open.flatMap((page) => views[page.id]?.asks ?? []), ...ladderAsks()];
  return asked.join(" ") || "none";
}

/** Whether the example stands as the build made it, and is still what is on the sheet. */
function standsMade(plan: Plan): boolean {
  if (!isMade()) return false;
  if (isExample(plan) && isFresh(plan)) return true;
  unmake(false);
  return false;
}

export function renderSheet(plan: Plan): void {
  renderNotation(plan);
  const title = typedText(plan["title"]);
  document.title = title === "" ? "Ceilingwright" : `${title} · Ceilingwright`;
  const sheet = theSheet();
  const layerCount = list(plan, "/mask/layers").length;
  setText(region("mask-count"), layerCount === 1 ? say("one layer") : say("{n|layer|layers}", { n: layerCount }));
  const open = openPages();
  if (!sheet) {
    if (!standsMade(plan)) {
      renderContents(null);
      if (open.some((page) => page.id === "job")) renderCover(plan, null);
    }
    renderBlanks(plan, readings());
    renderFigures(figures());
    return;
  }
  unmake(true);
  renderContents(sheet.overview ?? null);
  for (const page of open) views[page.id]?.show(plan, sheet);
  // After the lists above, since some of their blanks come with the answer.
  renderBlanks(plan, readings());
  renderLooking(plan);
  renderAsked(plan, sheet.problems ?? []);
  renderBites(open, sheet.safety ?? []);
  renderFigures(figures());
  renderDrawing(sheet.drawings ?? [], layerNames(plan));
  renderProblems(sheet.problems ?? []);
  renderRest(plan);
  nameLit();
  relight();
  announce(figures(), sheet, pagesTold());
  setText(region("version"), sheet.version ? `Ceilingwright ${sheet.version}` : "");
  renderLadder();
}
