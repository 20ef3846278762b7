// Answers of the finish: what each step needs, and the list to shop by.

import type { Sheet, Step } from "../engine/contract";
import { at, list, typedText, type JsonObject } from "../state/pointer";
import { every, make, redraw, region, setAttribute, setText } from "./dom";
import { figurePlace } from "./figures";

/** What is bought stands large; what leads to it stands small under it. */
const bought = [".cans", ".packs", ".books"];

export function renderSteps(plan: JsonObject, steps: Step[]): void {
  const byId = new Map(steps.map((s) => [s.id, s] as const));
  const typed = list(plan, "/finish/steps");
  every(".cw-step").forEach((item, i) => {
    const step = byId.get(typedText(at(typed[i] ?? null, "/id")));
    setAttribute(item, "data-kind", typedText(at(typed[i] ?? null, "/kind")) || null);
    const figures = step?.figures ?? [];
    redraw(region("step-figures", item), figures, () => {
      const large = figures.filter((id) => bought.some((end) => id.endsWith(end)));
      const first = large.length > 0 ? large : figures.filter((id) => id.endsWith(".product"));
      return [...first.map((id) => figurePlace(id, "large")), ...figures.filter((id) => !first.includes(id)).map((id) => figurePlace(id, "small"))];
    });
    setText(region("step-note", item), [step?.leftOver ? `${step.leftOver}.` : "", ...(step?.notes ?? [])].filter(Boolean).join(" "));
  });
}

export function renderShopping(shopping: NonNullable<Sheet["shopping"]>): void {
  redraw(region("shopping"), shopping, () =>
    shopping.length === 0
      ? []
      : [
          make("h3", {}, "To buy"),
          make(
            "table",
            { class: "cw-shopping" },
            make(
              "tbody",
              {},
              ...shopping.map((line) =>
                make(
                  "tr",
                  {},
                  make("td", { class: "cw-tick", "aria-hidden": "true" }),
                  make("th", { scope: "row" }, line.what, line.detail ? make("small", {}, ` ${line.detail}`) : null),
                  make("td", {}, line.amount),
                ),
              ),
            ),
          ),
        ],
  );
}
