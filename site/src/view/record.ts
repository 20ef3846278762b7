// The record of the finish, that is handed over.

import type { FinishRecord, Sheet } from "../engine/contract";
import type { Actions, Desk } from "./desk";
import { action, make, redraw, region } from "./dom";
import { printPage } from "./handing";
import { headingFor, layAlone, toSign } from "./paper";
import { say } from "./say";

export function renderRecord(record: FinishRecord | null): void {
  const lines = record?.lines ?? [];
  redraw(region("record"), record, () =>
    lines.length === 0
      ? [make("p", { class: "cw-summary" }, say("Nothing to record yet: the record follows from the steps of the finish."))]
      : [make("p", { class: "cw-summary" }, record?.text ?? ""), recordTable(record as FinishRecord), make("p", { class: "cw-more cw-block-tools" }, action("print-record", say("Print the record")))],
  );
}

const ofLeaf = { head: say("leaf"), of: (l: FinishRecord["lines"][number]) => l.leaf };
const columns: { head: string; of: (l: FinishRecord["lines"][number]) => string }[] = [
  { head: say("colour"), of: (l) => l.colour },
  { head: say("mix"), of: (l) => l.mix },
  { head: say("batch"), of: (l) => l.batch },
  ofLeaf,
  { head: say("done on"), of: (l) => l.date },
];

/** One row a step; what is not known yet is a line to write on. */
function recordTable(record: FinishRecord): HTMLElement {
  const used = columns.filter((c) => c !== ofLeaf || record.lines.some((l) => l.leaf !== ""));
  return make(
    "table",
    { class: "cw-record" },
    make("thead", {}, make("tr", {}, make("th", { scope: "col" }, say("step")), ...used.map((c) => make("th", { scope: "col" }, c.head)))),
    make(
      "tbody",
      {},
      ...record.lines.map((l) =>
        make(
          "tr",
          {},
          make("th", { scope: "row" }, l.step, make("small", {}, [l.where, l.area].filter(Boolean).join(", "))),
          ...used.map((c) => make("td", { "data-head": c.head, class: c.of(l) === "" ? "cw-open" : undefined }, c.of(l))),
        ),
      ),
    ),
  );
}

export function recordActions(desk: Desk, sheet: () => Sheet | null): Actions {
  return {
    "print-record": () => {
      const record = sheet()?.record;
      if (!record) return;
      layAlone("record", headingFor(desk.plan(), say("record of the finish")), make("p", {}, record.text), recordTable(record), toSign(say("Handed over on")), toSign(say("By")));
      printPage();
    },
  };
}
