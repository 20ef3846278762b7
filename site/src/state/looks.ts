// How this device likes the sheet shown. Where nothing can be kept it is forgotten
// with the page.

const PAGES = "ceilingwright:pages"; // of the device, whatever frame the page is in

/** Whether all pages are to stand on one. */
export function allPagesWanted(): boolean {
  try {
    return globalThis.localStorage.getItem(PAGES) === "all";
  } catch {
    return false;
  }
}

export function keepAllPages(all: boolean): void {
  try {
    if (all) globalThis.localStorage.setItem(PAGES, "all");
    else globalThis.localStorage.removeItem(PAGES);
  } catch {
    // A page that may keep nothing shows one page at a time again next time.
  }
}
