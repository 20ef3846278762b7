// What the lists of the plan grow by, and entries that are found by a name and
// not by their place: the panel a note is on, the seam a gap was measured at.

import { newCan, newLayer, newMeasure, newPart, newSurface, type Plan } from "./plan";
import { at, list, put, typedText, type Json, type JsonObject } from "./pointer";

/** A new entry for the list at a pointer. Steps come from the engine. */
export function newEntry(plan: Plan, pointer: string): Json {
  const name = pointer.slice(pointer.lastIndexOf("/") + 1);
  switch (name) {
    case "layers":
      return newLayer(list(plan, pointer));
    case "cans":
      return newCan(plan);
    case "mix":
      return newPart(plan);
    case "surfaces":
      return newSurface(plan);
    case "kit":
      return newMeasure(plan);
    case "openings":
      return { length: "", width: "", count: "1" };
    case "readings":
      return newReading("AB");
    case "points":
      return { x: "", y: "" };
    case "walls":
      return { length: "", angle: "" };
    case "obstructions":
      return { name: "", kind: "vent", at: "measured", shape: "round", across: "", deep: "", fromDA: "", fromAB: "", cornerOne: "", fromOne: "", cornerTwo: "", fromTwo: "", side: "" };
    case "furniture":
      return { name: "", fromDA: "", fromAB: "", length: "", width: "" };
    case "pieces":
      return { name: `Piece ${String(list(plan, pointer).length + 1)}`, kind: "span", cells: "", shape: "rectangular", length: "", width: "", fromDA: "", fromAB: "" };
    case "bands":
      return { above: "", perArea: "" };
    case "stages":
      return { name: "", percent: "" };
    case "marks":
      return { name: `Mark ${String(list(plan, pointer).length + 1)}`, x: "", y: "", gotX: "", gotY: "" };
  }
  return "";
}

function newReading(line: string): JsonObject {
  return { line, length: "", start: "" };
}

const LINES = ["AB", "BC", "CD", "DA", "AC", "BD"];
const CORNERS = 4;

/** Puts the blanks a form of the room needs onto the sheet, and keeps what is
 *  there: six lines for sides and diagonals, four corners or walls to begin. */
export function completeForm(plan: Plan): void {
  const form = typedText(at(plan, "/room/form"));
  if (form === "lines") {
    const there = list(plan, "/room/readings");
    const taken = new Set(there.map((r) => typedText(at(r, "/line"))));
    put(plan, "/room/readings", [...there, ...LINES.filter((l) => !taken.has(l)).map(newReading)]);
  }
  if (form === "points" || form === "walls") {
    const pointer = `/room/${form}`;
    if (list(plan, pointer).length > 0) return;
    put(plan, pointer, Array.from({ length: CORNERS }, () => newEntry(plan, pointer)));
  }
}

/** How many corners the room has, as far as the plan says. */
export function cornerCount(plan: JsonObject): number {
  const form = typedText(at(plan, "/room/form"));
  const n = form === "points" || form === "walls" ? list(plan, `/room/${form}`).length : CORNERS;
  return Math.min(Math.max(n, 3), 26);
}

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

/** Makes that entry where there is none, and gives its pointer. */
export function ensureEntry(plan: JsonObject, pointer: string, key: string, name: string): string {
  const there = entryPointer(plan, pointer, key, name);
  if (at(plan, there) === undefined) put(plan, pointer, [...list(plan, pointer), { [key]: name }]);
  return there;
}
