// The whole sheet from plan and answer, part by part.

import type { Plan } from "../state/plan";
import { list, typedText } from "../state/pointer";
import { renderAir } from "./air";
import { announce } from "./announce";
import { figures, readings, theSheet } from "./answer";
import { renderBites } from "./bites";
import { renderAsked, renderBlanks, renderProblems } from "./blanks";
import { renderDays } from "./days";
import { region, setText } from "./dom";
import { renderDrawing } from "./drawing";
import { renderFigures } from "./figures";
import { renderClimate, renderShopping, renderSteps } from "./finish";
import { renderHanging } from "./hanging";
import { renderLadder } from "./ladder";
import { isMade, unmake } from "./made";
import { nameLit, relight } from "./light";
import { renderLimits } from "./limits";
import { renderLooking } from "./looking";
import { renderDelivery } from "./mask";
import { renderNotation } from "./notation";
import { renderPlatform, type Stations } from "./platform";
import { renderPrice } from "./price";
import { renderRecord } from "./record";
import { renderObjects, renderSurvey } from "./room";
import { renderRest } from "./rest";
import { renderSafety } from "./safety";
import { renderContents } from "./contents";
import { renderBox, renderChoices, renderCorners, renderWalls } from "./setting-out";
import { renderLeftOut } from "./step-order";
import { say } from "./say";

export function stations(): Stations {
  return theSheet()?.platform?.stations ?? [];
}

export function renderSheet(plan: Plan): void {
  renderNotation(plan);
  const title = typedText(plan["title"]);
  document.title = title === "" ? "Ceilingwright" : `${title} · Ceilingwright`;
  const sheet = theSheet();
  const layers = sheet?.layers ?? [];
  const layerCount = list(plan, "/mask/layers").length;
  setText(region("mask-count"), layerCount === 1 ? say("one layer") : say("{n|layer|layers}", { n: layerCount }));
  if (!sheet) {
    if (isMade()) return;
    renderContents(plan, null);
    renderBlanks(plan, readings());
    renderFigures(figures());
    return;
  }
  unmake(true);
  renderContents(plan, sheet.overview ?? null);
  renderSurvey(sheet.survey ?? null);
  renderObjects(sheet.objects ?? [], layers);
  renderDelivery(plan, layers);
  renderChoices(sheet.choices ?? []);
  renderWalls(sheet.walls ?? []);
  renderBox(sheet.box ?? null);
  renderCorners(sheet.corners ?? []);
  renderHanging(plan, layers, figures(), stations());
  // After the lists above, since some of their blanks come with the answer.
  renderBlanks(plan, readings());
  renderLooking(plan);
  renderAsked(plan, sheet.problems ?? []);
  renderClimate(sheet.climate ?? null);
  renderLeftOut(plan);
  renderSteps(plan, sheet.steps ?? [], sheet.drawings ?? []);
  renderLimits(sheet.limits ?? []);
  renderShopping(sheet.shopping ?? [], sheet.bill ?? null, sheet.steps ?? []);
  renderDays(plan, sheet.days ?? null);
  renderPrice(plan, sheet.price ?? null);
  renderRecord(sheet.record ?? null);
  renderPlatform(sheet.platform ?? null);
  renderAir(sheet.air ?? null);
  renderSafety(plan, sheet.safety ?? [], sheet.findOut ?? []);
  renderBites(sheet.safety ?? []);
  renderFigures(figures());
  renderDrawing(sheet.drawings ?? [], layers);
  renderProblems(sheet.problems ?? []);
  renderRest(plan);
  nameLit(figures(), layers);
  relight();
  announce(figures(), sheet.problems ?? []);
  setText(region("version"), sheet.version ? `Ceilingwright ${sheet.version}` : "");
  renderLadder();
}
