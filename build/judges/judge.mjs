// Answers questions read from standard input, one JSON document, with another.
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import ICAL from "ical.js";
import { parse } from "csv-parse/sync";

const solver = createRequire(import.meta.url)("javascript-lp-solver");

const judges = {
  calendars: (texts) => texts.map((text) => {
    const calendar = new ICAL.Component(ICAL.parse(text));
    return calendar.getAllSubcomponents("vevent").map((one) => {
      const event = new ICAL.Event(one);
      return {
        uid: event.uid, summary: event.summary, description: event.description ?? "",
        start: event.startDate.toString(), end: event.endDate.toString(),
        allDay: event.startDate.isDate, floating: event.startDate.zone === ICAL.Timezone.localTimezone,
        transparent: one.getFirstPropertyValue("transp") === "TRANSPARENT",
      };
    });
  }),
  tables: (tables) => tables.map(({ text, delimiter }) => parse(text, { bom: true, delimiter, record_delimiter: "\r\n" })),
  // The least price of whole cans that hold the need, both in whole units.
  cans: (cases) => cases.map(({ need, sizes, prices }) => {
    const variables = {}, ints = {};
    sizes.forEach((size, i) => { variables[i] = { size, price: prices[i] }; ints[i] = 1; });
    const answer = (solver.default ?? solver).Solve({ optimize: "price", opType: "min", constraints: { size: { min: need } }, variables, ints });
    return { feasible: answer.feasible, price: Math.round(answer.result) };
  }),
};

const { judge, question } = JSON.parse(readFileSync(0, "utf8"));
process.stdout.write(JSON.stringify(judges[judge](question)));
