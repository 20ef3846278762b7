// The days: what is done on which day, what is waited for and why, and what more
// hands would save.

import type { Engine } from "../engine/calls";
import type { Days, Sheet, Task } from "../engine/contract";
import { stamp } from "../state/clocks";
import { fileName } from "../state/plan";
import { at, list, put, typedText, type JsonObject } from "../state/pointer";
import type { Actions, Desk } from "./desk";
import { action, every, make, redraw, region, setAttribute, setText } from "./dom";
import { pictureNamed } from "./drawing";
import { allWorkingsOpen } from "./figures";
import { folded } from "./folded";
import { layAlone } from "./paper";
import { handOver, printPage } from "./handing";
import { and, say } from "./say";

export function renderDays(plan: JsonObject, days: Days | null): void {
  const worked = weekdays(plan);
  for (const button of every("[data-do=weekday]")) setAttribute(button, "aria-pressed", String(worked.includes(button.dataset["to"] ?? "")));
  setText(region("clocks"), clockWords(plan));
  redraw(region("days"), days, () => (days ? shown(days) : []));
}

/** Whether each task says why it is done when it is. */
let reasons = false;

function weekdays(plan: JsonObject): string[] {
  return list(plan, "/days/weekdays").map((d) => typedText(d));
}

/** The changes of the clock that fall into the plan, said once. */
function clockWords(plan: JsonObject): string {
  const words = list(plan, "/days/clockChanges").slice(0, 2).map((c) => {
    const minutes = typedText(at(c, "/minutes"));
    const date = typedText(at(c, "/at"));
    return minutes.startsWith("-") ? say("back {minutes} minutes on {date}", { minutes: minutes.slice(1), date }) : say("forward {minutes} minutes on {date}", { minutes, date });
  });
  return words.length === 0 ? "" : say("The clocks go {changes}: drying and size are counted through it.", { changes: and(words) });
}

function shown(days: Days): (Node | null)[] {
  if ((days.tasks ?? []).length === 0) return days.text ? [make("p", { class: "cw-summary" }, days.text)] : [];
  return [
    make("p", { class: "cw-summary" }, days.text),
    dayList(days),
    (days.saves ?? []).length === 0 ? null : make("div", { class: "cw-folds" }, saving(days)),
    make("p", { class: "cw-more cw-block-tools" }, action("print-days", say("Print the days")), action("save-calendar", say("Save them for a calendar"))),
  ];
}

function saving(days: Days): Node | null {
  const saves = days.saves ?? [];
  return saves.length === 0 ? null : folded("days.saves", [say("what would be sooner")], make("ul", { class: "cw-saves" }, ...saves.map((s) => make("li", {}, s))));
}

/** The tasks under the days they begin on, as the clock goes; what dries or
 *  waits stands between. */
function dayList(days: Days): HTMLElement {
  const groups = new Map<string, Task[]>();
  // Sorting keeps the order of the sheet where two begin together.
  for (const task of [...days.tasks].sort((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : 0))) {
    const date = task.start.slice(0, 10);
    const day = groups.get(date);
    if (day) day.push(task);
    else groups.set(date, [task]);
  }
  return make(
    "div",
    { class: "cw-days", "data-reasons": reasons },
    make("p", { class: "cw-key-words" }, make("span", { class: "cw-moves" }), " ", say("if this slips, the last day slips"), " ", action("day-reasons", say("why then"), { "aria-pressed": String(reasons) })),
    make(
      "ol",
      {},
      ...Array.from(groups.values(), (tasks) => make("li", {}, make("h3", {}, tasks[0]?.day ?? ""), make("ul", {}, ...tasks.map(taskRow)))),
    ),
    times(groups),
  );
}

/** How the times come about, folded away. */
function times(groups: Map<string, Task[]>): HTMLElement {
  return make(
    "details",
    { class: "cw-why cw-sums", open: allWorkingsOpen() },
    make("summary", {}, say("how the times are worked out")),
    ...Array.from(groups.values(), (tasks) => [make("h4", {}, tasks[0]?.day ?? ""), ...tasks.map((t) => make("p", { class: "cw-sum" }, make("b", {}, t.name), `: ${t.sum}`))]).flat(),
  );
}

function taskRow(task: Task): HTMLElement {
  const work = task.kind === "work";
  return make(
    "li",
    { class: work ? "cw-task" : "cw-task cw-task--wait", "data-critical": task.critical },
    make("span", { class: "cw-task-time" }, task.from, task.to ? `–${task.to}` : ""),
    make("span", {}, make("b", {}, task.name), task.critical ? make("span", { class: "cw-hear" }, `, ${say("moves the last day")}`) : null),
    work && task.labour ? make("span", { class: "cw-task-labour" }, task.labour) : null,
    task.reason ? make("small", {}, task.reason) : null,
  );
}

function chart(): Node | null {
  const drawn = pictureNamed("days");
  return drawn && make("figure", { class: "cw-chart" }, drawn);
}

export function daysActions(desk: Desk, sheet: () => Sheet | null, engine: () => Engine | null): Actions {
  return {
    weekday: (b) => {
      const day = b.dataset["to"] ?? "";
      desk.change((plan) => {
        const worked = weekdays(plan);
        put(plan, "/days/weekdays", every("[data-do=weekday]").map((one) => one.dataset["to"] ?? "").filter((d) => (d === day) !== worked.includes(d)));
      });
    },
    "day-reasons": (b) => {
      reasons = !reasons;
      setAttribute(b, "aria-pressed", String(reasons));
      setAttribute(b.closest(".cw-days") as Element, "data-reasons", reasons ? "" : null);
    },
    "print-days": () => {
      const days = sheet()?.days;
      if (!days) return;
      layAlone("days", make("h2", {}, [typedText(desk.plan()["title"]), say("the days")].filter(Boolean).join(": ")), make("p", { class: "cw-summary" }, days.text), chart(), dayList(days));
      printPage();
    },
    "save-calendar": () => {
      const text = engine()?.calendar(JSON.stringify(desk.plan()), stamp(new Date())) ?? "";
      if (text === "") return;
      const name = fileName(desk.plan(), ".ics");
      handOver(name, "text/calendar;charset=utf-8", text, say("A calendar opens it; opening it again after a change moves what is there."));
    },
  };
}
