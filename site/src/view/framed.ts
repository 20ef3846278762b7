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
