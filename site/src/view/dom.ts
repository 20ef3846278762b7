// Building the page's moving parts. Text goes in as text, never as markup.

type Child = Node | string | null | undefined | false;

/** An element with attributes and children; true writes an empty attribute,
 *  false and undefined leave it out. Everything made here is marked as a clone,
 *  so that a saved copy of the page can be emptied before it starts again. */
export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Record<string, string | boolean | undefined> = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) element.setAttribute(name, "");
    else if (typeof value === "string") element.setAttribute(name, value);
  }
  for (const child of children) if (child) element.append(child);
  return element;
}

/** A text in which no length breaks at the end of a line: 13′ 7 29⁄64″. */
export function unbroken(text: string): string {
  return text.replace(/(′|\d) (?=\d)/g, "$1\u00a0");
}

export function action(doing: string, words: string, attributes: Record<string, string | undefined> = {}): HTMLButtonElement {
  return make("button", { type: "button", "data-do": doing, ...attributes }, words);
}

/** The region filled by script under this name; the page always has it. */
export function region(name: string, within: ParentNode = document): HTMLElement {
  const found = within.querySelector<HTMLElement>(`[data-fill="${name}"]`);
  if (!found) throw new Error(`the page has no region "${name}"`);
  return found;
}

/** All elements of a selector, as a plain list. */
export function every<E extends Element = HTMLElement>(selector: string, within: ParentNode = document): E[] {
  return Array.from(within.querySelectorAll<E>(selector));
}

export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

/** Sets or removes an attribute, touching the page only when it changes. */
export function setAttribute(element: Element, name: string, value: string | null): void {
  if (value === null) {
    if (element.hasAttribute(name)) element.removeAttribute(name);
  } else if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

const drawn = new WeakMap<Element, string>();
const putAway = new WeakMap<Element, Node[]>();

/** Rebuilds an element's content only when what it shows has changed. A button
 *  that had the focus is found again by what it does. */
export function redraw(host: Element, shown: unknown, build: () => Child[]): boolean {
  const key = JSON.stringify(shown) ?? "";
  if (drawn.get(host) === key) return false;
  drawn.set(host, key);
  putAway.delete(host);
  const pressed = document.activeElement;
  const again = pressed instanceof HTMLButtonElement && host.contains(pressed) ? sameButton(pressed) : "";
  host.replaceChildren(...build().filter((c): c is Node | string => Boolean(c)));
  if (again !== "") host.querySelector<HTMLElement>(again)?.focus({ preventScroll: true });
  return true;
}

function sameButton(button: HTMLButtonElement): string {
  return `button${["do", "to", "key"].map((name) => (button.dataset[name] === undefined ? "" : `[data-${name}="${CSS.escape(button.dataset[name] ?? "")}"]`)).join("")}`;
}

/** Where the middle of an element stands in the window, from its top. */
export function middle(element: Element): number {
  const box = element.getBoundingClientRect();
  return box.top + box.height / 2;
}

/** Rolls the page until the middle of an element stands where a press was, so
 *  that what was pressed stays under the pointer. */
export function bringUnder(element: Element, y: number): void {
  window.scrollBy({ top: middle(element) - y, behavior: "instant" });
}

/** What script fills: regions, lists, figures. */
const filled = "[data-fill], [data-list], .cw-figure";

/** Takes off the document what was built in a part of it, and keeps it for when that
 *  part is looked at again: with its folds, and nothing of it to be laid out. */
export function putBy(part: Element): void {
  for (const note of every(".cw-say, .cw-echo", part)) note.remove();
  for (const host of every(filled, part)) {
    if (!host.firstChild || host.parentElement?.closest(filled)) continue;
    putAway.set(host, Array.from(host.childNodes));
    host.replaceChildren();
  }
}

export function putBack(part: Element): void {
  for (const host of every(filled, part)) {
    const built = putAway.get(host);
    putAway.delete(host);
    if (built && !host.firstChild) host.replaceChildren(...built);
  }
}

/** A page saved by the browser carries its last answers. Take them off. */
export function clean(): void {
  for (const filled of every("[data-fill]:not([data-made])")) filled.replaceChildren();
  for (const list of every("[data-list]")) list.replaceChildren();
  for (const figure of every(".cw-figure")) figure.replaceChildren();
  for (const clone of every("[data-clone], .cw-say, .cw-echo")) clone.remove();
  for (const blank of every("[aria-invalid]")) blank.removeAttribute("aria-invalid");
  for (const blank of every("[data-at][aria-describedby]")) blank.removeAttribute("aria-describedby");
}
