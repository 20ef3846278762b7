// What the work is done from: what to ask for and why, what it has and needs,
// where it cannot stand, how long it is hired and how long the arms are up.

import type { Platform } from "../engine/contract";
import { make, redraw, region } from "./dom";
import { judged, type Verdict } from "./judged";
import { say } from "./say";

export type Stations = Platform["stations"];

export function renderPlatform(platform: Platform | null): void {
  redraw(region("platform"), platform, () => (platform ? shown(platform) : []));
  redraw(region("platform-full"), platform, () => (platform ? inFull(platform) : []));
}

/** What is in the way of a station of a layer, "" where nothing is. */
export function clashAt(stations: Stations, layer: string, n: number): string {
  return stations.find((s) => s.layer === layer && s.n === n && s.clash)?.text ?? "";
}

function shown(platform: Platform): (Node | null)[] {
  const short = (platform.checks ?? []).filter((c) => c.verdict === "short");
  const parts = [platform.text ? make("p", { class: "cw-ask" }, platform.text) : null, checks(short, say("Not as needed")), clashes(platform.stations ?? [])];
  return parts.some(Boolean) ? [make("h3", {}, say("What to work from")), ...parts] : [];
}

function inFull(platform: Platform): (Node | null)[] {
  return [...reasons(platform), checks(platform.checks ?? [], say("What it has, and what it needs")), ...overhead(platform.overhead ?? [])];
}

function reasons(platform: Platform): (Node | null)[] {
  const refused = platform.refused ?? [];
  return [
    platform.why ? make("p", { class: "cw-reason" }, platform.why) : null,
    refused.length > 0 ? make("ul", { class: "cw-reasons" }, ...refused.map((r) => make("li", {}, r))) : null,
    platform.hire ? make("p", { class: "cw-reason" }, platform.hire) : null,
  ];
}

const verdicts: Readonly<Record<Platform["checks"][number]["verdict"], Verdict>> = {
  ok: ["good", say("as needed")],
  short: ["bad", say("not as needed")],
  unknown: ["open", say("not known")],
};

function checks(all: Platform["checks"], caption: string): Node | null {
  if (all.length === 0) return null;
  return make(
    "table",
    { class: "cw-checks" },
    make("caption", {}, caption),
    make("thead", {}, make("tr", {}, ...["", say("it has"), say("it needs"), ""].map((head) => (head ? make("th", { scope: "col" }, head) : make("td", {}))))),
    make(
      "tbody",
      {},
      ...all.map((c) =>
        make(
          "tr",
          {},
          make("th", { scope: "row" }, c.what, c.text ? make("small", {}, c.text) : null),
          make("td", { "data-head": say("it has") }, c.have || "—"),
          make("td", { "data-head": say("it needs") }, c.need || "—"),
          make("td", {}, judged(verdicts[c.verdict])),
        ),
      ),
    ),
  );
}

function clashes(stations: Stations): Node | null {
  const clash = stations.filter((s) => s.clash);
  return clash.length === 0
    ? null
    : make("div", { class: "cw-clashes" }, make("h4", {}, say("Where it cannot stand")), make("ul", { class: "cw-reasons" }, ...clash.map((s) => make("li", {}, s.text))));
}

/** Long days come first. */
function overhead(days: Platform["overhead"]): (Node | null)[] {
  const long = days.filter((d) => d.over);
  const rest = days.filter((d) => !d.over);
  if (days.length === 0) return [];
  return [
    make("h4", {}, long.length > 0 ? say("Days with the hands up for long") : say("Hands above the head")),
    long.length > 0 ? dayList(long) : make("p", { class: "cw-reason" }, say("On no day has one person more than two hours of it.")),
    rest.length > 0 ? dayList(rest) : null,
  ];
}

function dayList(days: Platform["overhead"]): HTMLElement {
  return make("ul", { class: "cw-overhead" }, ...days.map((d) => make("li", {}, make("b", {}, d.day), ` ${d.text}`)));
}
