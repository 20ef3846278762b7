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

/** Writes value at pointer. An object missing on the way is made, and what is no
 *  object there gives way to one: what a person types is never lost to a plan
 *  that was odd before. Returns false at the plan itself, which has no place. */
export function put(root: JsonObject, pointer: string, value: Json): boolean {
  const path = steps(pointer);
  const last = path.pop();
  if (last === undefined) return false;
  let here: JsonObject | Json[] = root;
  path.forEach((step, i) => {
    const next = child(here, step);
    const fits = next !== undefined && next !== null && typeof next === "object" && (!Array.isArray(next) || isIndex(path[i + 1] ?? last));
    const inside: JsonObject | Json[] = fits ? next : {};
    if (!fits) set(here, step, inside);
    here = inside;
  });
  set(here, last, value);
  return true;
}

function isIndex(step: string): boolean {
  return /^(0|[1-9]\d{0,5})$/.test(step);
}

function child(parent: JsonObject | Json[], step: string): Json | undefined {
  if (Array.isArray(parent)) return parent[Number(step)];
  return Object.hasOwn(parent, step) ? parent[step] : undefined;
}

function set(parent: JsonObject | Json[], step: string, value: Json): void {
  if (Array.isArray(parent)) parent[Number(step)] = value;
  else parent[step] = value;
}

/** What a blank shows of the value there: text as it is, a number as written. */
export function typedText(value: Json | undefined): string {
  return typeof value === "string" ? value : typeof value === "number" ? String(value) : "";
}

export function list(root: Json, pointer: string): Json[] {
  const value = at(root, pointer);
  return Array.isArray(value) ? value : [];
}
