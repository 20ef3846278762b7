// The page inside another site's frame: it tells its height, and offers a tab
// of its own, since a frame may be forbidden to save or print.

const LEAST_CHANGE = 2; // px; less would let two sides chase each other

export function isFramed(): boolean {
  return window.parent !== window;
}

/** True in a frame that was given no origin: storage is off, printing may be. */
export function isSandboxed(): boolean {
  return self.origin === "null" && location.protocol !== "file:";
}

/** Whether a frame may do a thing, by the word of the sandbox attribute for it. A
 *  frame of the same site can be asked; of another site nothing can be known. */
export function may(right: "allow-downloads" | "allow-modals" | "allow-popups"): "yes" | "no" | "unknown" {
  let here: Window = window;
  try {
    while (here.parent !== here) {
      const around = here.frameElement;
      if (!around) return "unknown";
      const sandbox = around.getAttribute("sandbox");
      if (sandbox !== null && !sandbox.toLowerCase().split(/\s+/).includes(right)) return "no";
      here = here.parent;
    }
  } catch {
    return "unknown";
  }
  return "yes";
}

export function tellHeight(): void {
  let told = 0;
  const tell = () => {
    const height = Math.ceil(document.body.getBoundingClientRect().height);
    if (Math.abs(height - told) < LEAST_CHANGE) return;
    told = height;
    window.parent.postMessage({ type: "ceilingwright:height", height }, "*");
  };
  new ResizeObserver(tell).observe(document.body);
  tell();
}
