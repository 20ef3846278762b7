// Keeping the screen awake while both hands are on the ceiling. A browser may
// not know how, may refuse, and lets go whenever the page is out of sight: the
// view works all the same and says in small words how it stands.

import { say } from "./say";

const words = {
  awake: say("screen stays on"),
  asleep: say("screen may go dark"),
} as const;

let lock: WakeLockSentinel | null = null;
let wanted = false;
let tell: (words: string) => void = () => {};

/** Asks to stay awake until stopAwake, and tells each time it changes. */
export function startAwake(teller: (words: string) => void): void {
  tell = teller;
  wanted = true;
  tell(words.asleep);
  document.addEventListener("visibilitychange", seen);
  void take();
}

export function stopAwake(): void {
  wanted = false;
  document.removeEventListener("visibilitychange", seen);
  const held = lock;
  lock = null;
  held?.release().catch(() => {});
}

/** The lock is lost when the page goes out of sight: taken again in sight. */
function seen(): void {
  if (document.visibilityState === "visible") void take();
}

async function take(): Promise<void> {
  if (lock) return;
  try {
    const taken = await (navigator.wakeLock as WakeLock | undefined)?.request("screen");
    if (!taken) return;
    // The view may have been left, or the lock taken twice, while it was asked for.
    if (!wanted || lock) return void taken.release();
    lock = taken;
    taken.addEventListener("release", () => lost(taken));
    tell(words.awake);
  } catch {
    // Refused: by a low battery, a frame, or a browser that does not know it.
  }
}

function lost(taken: WakeLockSentinel): void {
  if (lock !== taken) return;
  lock = null;
  if (wanted) tell(words.asleep);
}
