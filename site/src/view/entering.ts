// Entering a blank selects what is in it, so that typing replaces it; a second
// press places the caret.

import { blankFrom } from "./blanks";

/** To be called after the page has begun to rewrite blanks as they are entered:
 *  what is written anew has lost its selection. */
export function startEntering(root: HTMLElement): void {
  let pressedInto: HTMLInputElement | null = null;
  let windowLeft: HTMLInputElement | null = null;
  root.addEventListener("mousedown", (e) => {
    const blank = lineFrom(e.target);
    pressedInto = blank && blank !== document.activeElement ? blank : null;
  }, true);
  // The press that entered it puts the caret where the pointer is. Whoever draws
  // over a part of the text means that part.
  window.addEventListener("mouseup", () => {
    const blank = pressedInto;
    pressedInto = null;
    if (blank && blank === document.activeElement && blank.selectionStart === blank.selectionEnd) blank.select();
  });
  root.addEventListener("focusin", (e) => {
    const blank = lineFrom(e.target);
    if (blank && blank !== windowLeft && blank !== pressedInto) blank.select();
    windowLeft = null;
  });
  // A blank is still in hand when another window is looked at: its caret stays.
  root.addEventListener("focusout", (e) => {
    const blank = lineFrom(e.target);
    windowLeft = blank === document.activeElement ? blank : null;
  });
}

function lineFrom(target: EventTarget | null): HTMLInputElement | null {
  const blank = blankFrom(target);
  return blank instanceof HTMLInputElement ? blank : null;
}
