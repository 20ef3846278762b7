// Says what it finds in the page: enough to tell that script, style and data
// blocks arrived whole. "$&" is here because a careless replacement reads it.
const text = (id: string): string => document.getElementById(id)?.textContent ?? "";
const said: string[] = ["$& $1", typeof (globalThis as { Go?: unknown }).Go];
for (const id of ["engine", "page", "plan"]) said.push(id + "=" + text(id).length);
said.push(getComputedStyle(document.body).color);
document.getElementById("said")!.textContent = said.join("; ");
