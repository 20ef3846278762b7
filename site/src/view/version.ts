// The page without a signal: its worker (entry/offline.ts) is registered where there
// may be one, and a version that waits is offered. Where none may be, the page is as
// it would be without.

import type { Actions } from "./desk";
import { action } from "./dom";
import { isFramed } from "./framed";
import { keptForGood } from "./keeping";
import { message } from "./messages";
import { say } from "./say";

/** The worker of the version that was offered. */
let offered: ServiceWorker | undefined;

/** Registers the worker: for the hosted page alone, in a tab of its own. */
export async function startOffline(): Promise<void> {
  if (location.protocol === "file:" || isFramed() || !ownVersion()) return;
  try {
    const workers = navigator.serviceWorker;
    const registration = await workers.register("offline.js");
    const watch = (worker: ServiceWorker | null) => worker?.addEventListener("statechange", () => worker.state === "installed" && offer(worker));
    watch(registration.installing);
    registration.addEventListener("updatefound", () => watch(registration.installing));
    // The new version may be taken in another tab.
    workers.addEventListener("controllerchange", () => offer(workers.controller));
    offer(registration.waiting);
  } catch {
    // No worker is allowed here: then a start needs a signal.
  }
}

function ownVersion(): string {
  return document.documentElement.dataset["version"] ?? "";
}

/** Asks a worker which version it is, and offers one that is not the page's. */
function offer(worker: ServiceWorker | null): void {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = (e: MessageEvent<{ version: string }>) => {
    if (!worker || e.data.version === ownVersion()) return;
    offered = worker;
    message("version", say("A new version is ready."), action("take-version", say("Take it now")), action("put-away", say("Later"), { "data-to": "version" }));
  };
  worker?.postMessage({ type: "ceilingwright:version" }, [port2]);
}

export const versionActions: Actions = {
  "take-version": () => {
    if (!offered || !keptForGood()) return;
    const start = () => offered?.state === "activated" && location.reload();
    offered.addEventListener("statechange", start);
    offered.postMessage({ type: "ceilingwright:take-over" });
    start();
  },
};
