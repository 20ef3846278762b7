// The air over the days in words; its curve is in the drawing.

import type { Air } from "../engine/contract";
import { make, redraw, region } from "./dom";
import { say } from "./say";

export function renderAir(air: Air | null): void {
  redraw(region("air"), air, () =>
    air?.text
      ? [
          make("h3", {}, say("The air while it dries")),
          make("p", { class: "cw-reason" }, air.text),
        ]
      : [],
  );
}
