// Entries of the sheet's lists, put in and taken out by their buttons.

import { newEntry } from "../state/entries";
import { list, put, type Json } from "../state/pointer";
import { theEngine } from "./answer";
import type { Actions, Desk } from "./desk";
import { addSteps } from "./finish";
import { removeItem, whole } from "./lists";
import { keepLeftOut } from "./step-order";

export function rowActions(desk: Desk): Actions {
  return { add: (b) => add(desk, b), remove: (b) => remove(desk, b) };
}

function add(desk: Desk, button: HTMLElement): void {
  const pointer = whole(button, button.dataset["to"] ?? "");
  if (pointer === "/finish/steps") {
    addSteps(desk, theEngine(), (document.querySelector("[data-new-step]") as HTMLSelectElement).value);
    return;
  }
  const place = list(desk.plan(), pointer).length;
  desk.change((plan) => put(plan, pointer, [...list(plan, pointer), newEntry(plan, pointer)]));
  const added = document.querySelector(`[data-base="${CSS.escape(`${pointer}/${String(place)}`)}"]`);
  added?.querySelector<HTMLElement>("input, select")?.focus();
}

/** The entry a button stands in: its element, its list in the plan, its place there. */
function entryOf(desk: Desk, button: HTMLElement): { item: HTMLElement; pointer: string; entries: Json[]; index: number } | null {
  const item = button.closest<HTMLElement>("[data-base]");
  const parts = /^(.*)\/(\d+)$/.exec(item?.dataset["base"] ?? "");
  if (!item || !parts) return null;
  const pointer = parts[1] ?? "";
  return { item, pointer, entries: list(desk.plan(), pointer), index: Number(parts[2]) };
}

function remove(desk: Desk, button: HTMLElement): void {
  const entry = entryOf(desk, button);
  if (!entry) return;
  // The element goes with its entry, so that its neighbours keep their folds.
  const next = (entry.item.nextElementSibling ?? entry.item.previousElementSibling ?? entry.item.closest(".cw-block"))?.querySelector<HTMLElement>(
    "input, select, button",
  );
  removeItem(`${entry.pointer}/${String(entry.index)}`);
  if (entry.pointer === "/finish/steps") keepLeftOut(entry.item, entry.entries[entry.index] ?? null, entry.index, desk.plan());
  desk.change((plan) => put(plan, entry.pointer, entry.entries.filter((_, i) => i !== entry.index)));
  next?.focus();
}
