// RFC 6901 pointers into the plan: read a place, write a place.

export type Json = string | number | boolean | null | Json[] | { [key: string]: Json };
export type JsonObject = { [key: string]: Json };

function steps(pointer: string): string[] {
  if (pointer === "") return [];
  return pointer
    .slice(1)
    .split("/")
    .map((s) => s.replace(/~1/g, "/").replace(/~0/g, "~"));
}

export function at(root: Json, pointer: string): Json | undefined {
  let here: Json | undefined = root;
  for (const step of steps(pointer)) {
    if (Array.isArray(here)) here = here[Number(step)];
    else if (here !== null && typeof here === "object") here = Object.hasOwn(here, step) ? here[step] : undefined;
    else return undefined;
  }
  return here;
}

/** Writes value at pointer; objects missing on the way are made. Returns false
 *  when something else is in the way, and leaves the plan as it was. */
export function put(root: JsonObject, pointer: string, value: Json): boolean {
  const path = steps(pointer);
  const last = path.pop();
  if (last === undefined) return false;
  let here: Json = root;
  for (const step of path) {
    let next: Json | undefined = Array.isArray(here) ? here[Number(step)] : (here as JsonObject)[step];
    if (next === undefined || next === null) {
      next = {};
      if (Array.isArray(here)) here[Number(step)] = next;
      else (here as JsonObject)[step] = next;
    }
    if (typeof next !== "object") return false;
    here = next;
  }
  if (Array.isArray(here)) here[Number(last)] = value;
  else (here as JsonObject)[last] = value;
  return true;
}

/** What a blank shows of the value there: text as it is, a number as written. */
export function typedText(value: Json | undefined): string {
  return typeof value === "string" ? value : typeof value === "number" ? String(value) : "";
}

export function list(root: Json, pointer: string): Json[] {
  const value = at(root, pointer);
  return Array.isArray(value) ? value : [];
}
