// One layer on the next: the panel that is kept up as the key, and how the
// marks of a layer lie on those of the one before.

import type { Key, Registered } from "../engine/contract";
import { every, make, redraw, region, setAttribute, setText } from "./dom";
import { figurePlace } from "./figures";
import { say } from "./say";

export function renderKey(item: HTMLElement, key: Key | undefined, hasNext: boolean): void {
  const fold = item.querySelector("[data-fold=key]") as HTMLElement;
  fold.hidden = !hasNext;
  setAttribute(item.querySelector("[data-rel=key]") as Element, "placeholder", key?.chosen === "tool" ? key.panel : null);
  setText(region("key-place", item), hasNext && key?.panel ? `; ${say("{panel} stays up for the next layer", { panel: key.panel })}` : "");
  redraw(region("key", item), key, () => {
    if (!key?.panel) return key?.reason ? [make("p", {}, key.reason)] : [];
    const lies = key.lies ?? [];
    const touches = key.touches ?? [];
    return [
      ...[key.reason, key.masked, key.down].filter(Boolean).map((text) => make("p", {}, text)),
      lies.length > 0 ? make("p", {}, say("Of the next layer these lie on it: {lies}.", { lies: lies.join(", ") })) : null,
      touches.length > 0 ? make("p", {}, say("These touch it: {touches}.", { touches: touches.join(", ") })) : null,
    ];
  });
}

export function renderRegister(item: HTMLElement, register: Registered | undefined, figures: string[], hasBefore: boolean): void {
  const fold = item.querySelector("[data-fold=register]") as HTMLElement;
  fold.hidden = !hasBefore;
  setAttribute(fold, "data-shows", register?.verdict ? "" : null);
  every("[data-item-of=marks]", fold).forEach((li, i) => {
    setText(region("residual", li), register?.marks?.[i]?.text ?? "");
  });
  redraw(region("register", item), [register, figures], () => [
    register?.text ? make("p", { class: "cw-verdict", "data-verdict": register.verdict }, register.text) : null,
    figures.length > 0 ? make("div", { class: "cw-row" }, ...figures.map((id) => figurePlace(id, "small"))) : null,
    (register?.remedy ?? []).length > 0 ? make("ol", { class: "cw-remedy" }, ...(register?.remedy ?? []).map((r) => make("li", {}, r))) : null,
  ]);
}
