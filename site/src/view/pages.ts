// One page of the job at a time, by the address after the #; or all of them on one,
// for who works fast, for a search, for a copy that is saved. Back goes back a page.

import { hasPlan } from "../state/link";
import { allPagesWanted, keepAllPages } from "../state/looks";
import type { Actions } from "./desk";
import { every, putBack, putBy, setAttribute, setText } from "./dom";
import { openWorking } from "./figures";
import { say } from "./say";
import { amongSteps } from "./step-open";

const FIRST = "job";

let turned: () => void = () => undefined;
let at = FIRST;
let unfolded = false; // all pages are built, though one is in view

/** The pages that are built: the one in view, or all of them. */
export function openPages(): HTMLElement[] {
  return every(isAll() || unfolded ? ".cw-block" : ".cw-block[data-open]");
}

let beside: HTMLElement[] | undefined;

/** All elements of a selector on the pages that are built, and beside the pages: what
 *  stands on the others is not looked for. */
export function onSheet<E extends Element = HTMLElement>(selector: string): E[] {
  beside ??= every(".cw-page > :not(.cw-app), .cw-app > :not(main), main > :not(.cw-block)");
  return [...beside, ...openPages()].flatMap((part) => [...(part.matches(selector) ? [part as Element as E] : []), ...every<E>(selector, part)]);
}

/** Builds every page while something is done that concerns them all, such as printing
 *  or looking for what is on none in view. */
export function unfold(): void {
  if (unfolded || isAll()) return;
  unfolded = true;
  rebuild();
}

export function foldAgain(): void {
  if (!unfolded) return;
  unfolded = false;
  rebuild();
}

/** Looks for something on every page, and turns to the page it is on. */
export function seek(find: () => HTMLElement | null, turn: (to: HTMLElement | null) => void = turnTo): HTMLElement | null {
  unfold();
  const found = find();
  turn(found);
  foldAgain();
  return found;
}

/** Shows what is to be built now, and puts by what the other pages have built: a page
 *  in view is the only one to be laid out and searched. */
function rebuild(): void {
  const open = openPages();
  for (const block of every(".cw-block")) (open.includes(block) ? putBack : putBy)(block);
  turned();
}

export function isAll(): boolean {
  return document.documentElement.hasAttribute("data-all");
}

/** The id of the page in view, the one turned to last where all are. */
export function pageInView(): string {
  return at;
}

/** The id of the page that the engine calls by a name. */
export function pageNamed(name: string): string {
  return every(".cw-pages li").find((item) => item.dataset["page"] === name)?.querySelector("a")?.hash.slice(1) ?? FIRST;
}

export function pageTitle(id: string): string {
  return pageItem(id)?.querySelector("b")?.textContent ?? "";
}

function pageItem(id: string): HTMLElement | undefined {
  return every(".cw-pages li").find((item) => item.querySelector("a")?.hash === `#${id}`);
}

function pageOf(element: Element | null): string {
  return element?.closest(".cw-block")?.id ?? "";
}

/** Turns to the page an element stands on, so that it can be looked at; true where
 *  another was in view. */
export function turnTo(element: Element | null): boolean {
  const page = pageOf(element);
  if (page === "" || isAll() || page === at) return false;
  go(page, true);
  return true;
}

/** Turns to a page, as a step that Back takes back. */
export function go(page: string, quiet = false): void {
  if (page !== at) {
    try {
      // A plan that came in a link stays in the address until it is kept.
      history.pushState({ page }, "", hasPlan(location.hash) ? location.href : `#${page}`);
    } catch {
      // A frame without an address of its own has no history to write.
    }
  }
  open(page);
  if (quiet) return;
  if (isAll()) document.getElementById(page)?.scrollIntoView();
  else window.scrollTo({ top: 0, behavior: "instant" });
  document.getElementById(`h-${page}`)?.focus({ preventScroll: true });
}

function open(page: string): void {
  at = page;
  for (const block of every(".cw-block")) setAttribute(block, "data-open", block.id === page ? "" : null);
  const items = every(".cw-pages li");
  const here = items.findIndex((item) => item.querySelector("a")?.hash === `#${page}`);
  items.forEach((item, i) => setAttribute(item.querySelector("a") as Element, "aria-current", i === here ? "page" : null));
  renderBar(items, here);
  setAttribute(document.documentElement, "data-page", page);
  if (!unfolded) rebuild();
}

/** The bar at the foot of a small screen: where one is, and the pages beside it. */
function renderBar(items: HTMLElement[], here: number): void {
  for (const [name, step] of [["prev", -1], ["next", 1]] as const) {
    const link = document.querySelector<HTMLAnchorElement>(`[data-bar=${name}]`);
    const beside = items[here + step]?.querySelector("a");
    if (!link) continue;
    setAttribute(link, "href", beside ? beside.hash : null);
    setAttribute(link, "aria-label", beside ? beside.querySelector("b")?.textContent ?? null : null);
  }
  const list = document.querySelector("[data-bar=list]");
  if (list) setText(list, here <= 0 ? say("On this sheet") : say("{page}, {n} of {all}", { page: pageTitle(at), n: here, all: items.length - 1 }));
}

function figureNamed(id: string): HTMLElement | null {
  return document.querySelector<HTMLElement>(`.cw-block .cw-figure[data-figure="${CSS.escape(id)}"]`);
}

/** Turns to the page of an address; to a figure, with its working. */
function follow(hash: string, state: unknown): void {
  const name = decodeURIComponent(hash.slice(1));
  const page = typeof state === "object" && state !== null && "page" in state ? String(state.page) : name;
  if (pageItem(page) || !name.includes(".")) return open(pageItem(page) ? page : FIRST);
  openWorking(name);
  const figure = seek(() => amongSteps(() => figureNamed(name)), (found) => open(pageOf(found) || FIRST));
  for (let fold = figure?.closest("details"); fold; fold = fold.parentElement?.closest("details")) fold.open = true;
  figure?.scrollIntoView({ block: "center" });
}

/** Follows the address once more when there are figures, where it is of one and nobody
 *  has turned to another page since. */
export function followAgain(): void {
  if (at === FIRST) follow(location.hash, history.state);
}

/** Shows the page of the address, and turns when it changes. turn is called after. */
export function startPages(root: HTMLElement, turn: () => void): void {
  setAttribute(document.documentElement, "data-all", allPagesWanted() ? "" : null);
  renderAll();
  turned = turn;
  follow(location.hash, history.state);
  window.addEventListener("popstate", (e) => {
    if (!hasPlan(location.hash) || e.state !== null) follow(location.hash, e.state);
  });
  root.addEventListener("click", (e) => {
    const link = e.target instanceof Element ? e.target.closest<HTMLAnchorElement>("a[href^='#']") : null;
    if (!link || e.ctrlKey || e.metaKey || e.shiftKey) return;
    const page = link.hash.slice(1);
    if (!pageItem(page)) return;
    e.preventDefault();
    if (link.dataset["bar"] === "list") showContents();
    else go(page);
  });
}

/** The list of the pages, from the bar of a small screen. */
function showContents(): void {
  go(FIRST, true);
  document.getElementById("contents")?.scrollIntoView();
}

function renderAll(): void {
  for (const button of every("[data-do=all-pages]")) setAttribute(button, "aria-pressed", String(isAll()));
}

export function pagesActions(): Actions {
  return {
    "all-pages": () => {
      setAttribute(document.documentElement, "data-all", isAll() ? null : "");
      keepAllPages(isAll());
      renderAll();
      rebuild();
      document.getElementById(at)?.scrollIntoView();
    },
    "show-drawing": () => {
      const shown = document.documentElement.toggleAttribute("data-drawing");
      for (const button of every(".cw-bar [data-do=show-drawing]")) {
        setAttribute(button, "aria-expanded", String(shown));
        if (!shown) button.focus();
      }
    },
  };
}
