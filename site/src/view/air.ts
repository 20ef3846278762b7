// The air over the days: the curve with the limit across, and what it says.

import type { Air } from "../engine/contract";
import { make, redraw, region } from "./dom";
import { picture } from "./drawing";
import { say } from "./say";

export function renderAir(air: Air | null): void {
  redraw(region("air"), air, () =>
    air?.text
      ? [
          make("h3", {}, say("The air while it dries")),
          make("p", { class: "cw-reason" }, air.text),
          air.curve ? make("figure", { class: "cw-chart cw-curve", tabindex: "0", role: "region", "aria-label": say("The air, drawn") }, picture(air.curve, say("The air"))) : null,
        ]
      : [],
  );
}
