// The plan a person works on, and where it starts. It stays the loose document it
// is on paper; the engine judges it.

import { empty, type For } from "../generated/plan";
import { at, put, typedText, type Json, type JsonObject } from "./pointer";
import exampleJSON from "../../example.plan.json";
import { say } from "../view/say";

export type Plan = JsonObject;

const EXAMPLE_ID = "example";

export function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(6));
  return Array.from(bytes, (b) => b.toString(16).padStart(2, "0")).join("");
}

function copy<T extends Json>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T;
}

export function examplePlan(): Plan {
  return copy(exampleJSON as unknown as Plan);
}

export function isExample(plan: Plan): boolean {
  return plan["id"] === EXAMPLE_ID;
}

/** An empty sheet. Notation and country are kept from the sheet before, since the
 *  same hands fill in the next one. */
export function emptyPlan(before: Plan = {}): Plan {
  const plan = empty(forNew(before));
  const units = at(before, "/units");
  const rules = typedText(at(before, "/place/rules"));
  if (units !== undefined) plan["units"] = copy(units);
  if (rules) put(plan, "/place/rules", rules);
  plan["id"] = freshId();
  return plan;
}

/** The unit that bare numbers begin with in the notation of a plan. */
export function bareUnit(plan: Plan): string {
  return typedText(at(empty(forNew(plan)), "/units/bare"));
}

/** What something new is made for: the plan as it is, and the entries that its list
 *  has already. */
export function forNew(plan: Plan, there: Json[] = []): For {
  return {
    metric: typedText(at(plan, "/units/show")) === "metric",
    rules: typedText(at(plan, "/place/rules")),
    index: there.length,
    free: (prefix) => unused(prefix, there),
  };
}

function unused(prefix: string, taken: Json[]): string {
  const ids = new Set(taken.map((entry) => typedText(at(entry, "/id"))));
  let n = 1;
  while (ids.has(prefix + String(n))) n++;
  return prefix + String(n);
}

/** What came in is a plan, or why it is not one. Newer versions and finer
 *  points are the engine's to judge; this only keeps other files out. */
export function readPlan(text: string): { plan: Plan } | { refused: string } {
  let value: Json;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, "")) as Json;
  } catch {
    const begun = /^\s*\{[\s\S]*"ceilingwright"/.test(text);
    return {
      refused: begun
        ? say("This plan is cut off or damaged: its end does not fit its beginning. Save or send it again from where it came from.")
        : say("This is not a plan of this sheet. A plan is saved here under “Save as a file” and ends in .plan.json."),
    };
  }
  if (value === null || typeof value !== "object" || Array.isArray(value) || !Object.hasOwn(value, "ceilingwright")) {
    return { refused: say("This file belongs to another program: it does not say that it is a plan of this sheet.") };
  }
  const version = value["ceilingwright"];
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return { refused: say("This plan does not say which version it is, so it cannot be read safely.") };
  }
  if (version > 1) {
    return { refused: say("This plan was saved by a newer version of this sheet (plan version {version}). Open it with the newer sheet.", { version }) };
  }
  if (typeof value["id"] !== "string" || value["id"] === "") value["id"] = freshId();
  return { plan: value };
}

/** The plan as a file's text. */
export function planText(plan: Plan): string {
  return JSON.stringify(plan, null, 1) + "\n";
}

/** A file name from the job's title: letters and digits of any script. A client's
 *  copy has a name of its own. */
export function fileName(plan: Plan, ending: string): string {
  const words = typedText(plan["title"]).normalize("NFC").toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  const whose = typedText(at(plan, "/quote/date")) === "" ? "" : "-client";
  return (words.join("-").slice(0, 60) || "ceiling") + whose + ending;
}
