// What the lists of the plan grow by, and entries that are found by a name and
// not by their place: the panel a note is on, the seam a gap was measured at.

import { entries, forms, leaf, type For } from "../generated/plan";
import { forNew, type Plan } from "./plan";
import { at, list, put, typedText, type Json, type JsonObject } from "./pointer";

const all: Readonly<Record<string, (p: For) => JsonObject>> = entries;

/** A new entry for the list at a pointer; for a list of texts, an empty one. */
export function newEntry(plan: Plan, pointer: string): Json {
  const there = list(plan, pointer);
  return all[pointer.slice(pointer.lastIndexOf("/") + 1)]?.(forNew(plan, there)) ?? "";
}

/** A step of this kind with nothing filled in, for a sheet whose engine has not
 *  started: the engine knows the values to begin with. */
export function bareStep(kind: string, plan: Plan): Json {
  const steps = list(plan, "/finish/steps");
  const step = { ...(newEntry(plan, "/finish/steps") as JsonObject), id: forNew(plan, steps).free(kind), kind };
  return kind === LEAF ? { ...step, leaf: newLeaf(plan) } : step;
}

/** Gives a step that is turned into leaf what leaf begins with. */
export function completeStep(plan: Plan, step: string): void {
  if (typedText(at(plan, `${step}/kind`)) === LEAF && !at(plan, `${step}/leaf`)) put(plan, `${step}/leaf`, newLeaf(plan));
}

const LEAF = "leaf";

function newLeaf(plan: Plan): JsonObject {
  return leaf(forNew(plan));
}

/** Puts the blanks a form of the room needs onto the sheet, and keeps what is
 *  there: every line that is read, or corners and walls to begin with. */
export function completeForm(plan: Plan): void {
  const form = forms[typedText(at(plan, "/room/form"))];
  if (!form) return;
  const there = list(plan, form.list);
  if (form.key === "" && there.length > 0) return;
  const taken = new Set(there.map((entry) => typedText(at(entry, `/${form.key}`))));
  const open = form.words.filter((word) => word === "" || !taken.has(word));
  put(plan, form.list, [...there, ...open.map((word) => ({ ...(newEntry(plan, form.list) as JsonObject), ...(form.key === "" ? {} : { [form.key]: word }) }))]);
}

/** How many corners the room has, as far as the plan says. */
export function cornerCount(plan: JsonObject): number {
  const form = forms[typedText(at(plan, "/room/form"))];
  return form?.key === "" ? Math.min(Math.max(list(plan, form.list).length, LEAST_CORNERS), form.most) : CORNERS;
}

const LEAST_CORNERS = 3;
const CORNERS = 4;

/** Labels of panels are read without spaces and in capitals. */
export function plainLabel(label: string): string {
  return label.replace(/\s/g, "").toUpperCase();
}

/** The pointer of the entry whose key field says name; of the place after the
 *  last where there is none. */
export function entryPointer(plan: JsonObject, pointer: string, key: string, name: string): string {
  const entries = list(plan, pointer);
  const i = entries.findIndex((e) => plainLabel(typedText(at(e, `/${key}`))) === plainLabel(name));
  return `${pointer}/${String(i < 0 ? entries.length : i)}`;
}

/** A plan with one layer of the mask more. */
export function withLayer(plan: Plan): Plan {
  const more = JSON.parse(JSON.stringify(plan)) as Plan;
  put(more, "/mask/layers", [...list(more, "/mask/layers"), newEntry(more, "/mask/layers")]);
  return more;
}

/** Makes that entry where there is none, and gives its pointer. */
export function ensureEntry(plan: JsonObject, pointer: string, key: string, name: string): string {
  const there = entryPointer(plan, pointer, key, name);
  if (at(plan, there) === undefined) put(plan, pointer, [...list(plan, pointer), { [key]: name }]);
  return there;
}
