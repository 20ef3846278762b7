// The page taken along: one file with engine and plan inside. The template of
// that file comes from the carrier with three holes, each written as a comment
// mark: hole:engine, hole:page, hole:plan. They are filled in one pass, so text
// put into one hole is never searched for another.

import { loadCarrier } from "../engine/carrier";
import { bytesFromBase64, unpack } from "../engine/pack";
import type { Plan } from "./plan";

/** The plan as text that may stand in a script block: no tag can end it. */
export function blockText(plan: Plan): string {
  return JSON.stringify(plan).replace(/</g, "\\u003c");
}

// Written so that this file, which ends up inside the template, holds no hole.
const HOLE = /<!-{2}hole:(engine|page|plan)-{2}>/g;

export async function pageWithPlan(plan: Plan): Promise<string> {
  const carrier = await loadCarrier();
  const template = new TextDecoder().decode(await unpack(bytesFromBase64(carrier.page), "gzip"));
  const fill: Record<string, string> = { engine: carrier.engine, page: carrier.page, plan: blockText(plan) };
  return template.replace(HOLE, (_, hole: string) => fill[hole] ?? "");
}

/** The text of the page's own plan block, "" when there is none. */
export function planInPage(): string {
  const text = document.getElementById("plan")?.textContent?.trim() ?? "";
  return text.startsWith("{") ? text : "";
}

/** Writes the plan into the page itself, so that the browser's own "save page"
 *  keeps what was typed. */
export function writePlanIntoPage(plan: Plan): void {
  const block = document.getElementById("plan");
  if (block) block.textContent = blockText(plan);
}
