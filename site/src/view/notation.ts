// The notation answers are written in: feet and inches, or metric.

import { bareUnit, type Plan } from "../state/plan";
import { at, put, typedText } from "../state/pointer";
import type { Actions, OwnDesk } from "./desk";
import { every, setAttribute } from "./dom";
import { isForClient } from "./looking";
import { writeUnits } from "./typing";
import { say } from "./say";

export function notation(plan: Plan): string {
  return typedText(at(plan, "/units/show"));
}

export function renderNotation(plan: Plan): void {
  setAttribute(document.documentElement, "data-notation", notation(plan));
  for (const button of every("[data-do=notation]")) {
    setAttribute(button, "aria-pressed", String((button.dataset["to"] === "metric") === (notation(plan) === "metric")));
  }
}

export function notationActions(desk: OwnDesk): Actions {
  return { notation: (b) => showIn(desk, b.dataset["to"] ?? "") };
}

function showIn(desk: OwnDesk, next: string): void {
  const shown = desk.plan();
  if (next === notation(shown)) return;
  const edit = (plan: Plan) => {
    writeUnits(plan);
    put(plan, "/units/show", next);
    put(plan, "/units/bare", bareUnit(plan));
  };
  // A client may read the sheet in either; nothing of the job changes by it.
  if (isForClient(shown)) {
    edit(shown);
    desk.look(shown);
  } else desk.change(edit, next === "metric" ? say("answers in metric") : say("answers in feet and inches"));
}
