// The worker that opens the page without a signal, published as offline.js. It
// keeps one version of the page's own files, each held to its hash, and answers
// with nothing else: what it does not keep goes its usual way. A worker of a newer
// version waits until all pages of the older are gone, or until it is told to take
// over. The build puts in which version it is and which files that has.

declare const VERSION: string;
declare const FILES: [path: string, integrity: string][];

// What a worker has of the browser, as far as it is used here: the types of the page
// do not know it.
interface Worker {
  registration: { scope: string };
  skipWaiting(): Promise<void>;
  addEventListener(type: "install" | "activate", listener: (e: { waitUntil(done: Promise<unknown>): void }) => void): void;
  addEventListener(type: "fetch", listener: (e: { request: Request; respondWith(answer: Promise<Response>): void }) => void): void;
  addEventListener(type: "message", listener: (e: MessageEvent) => void): void;
}

const worker = globalThis as unknown as Worker;
const scope = worker.registration.scope;
const OURS = "ceilingwright:" + scope + " "; // another page of ours on the same site has a scope of its own
const CACHE = OURS + VERSION;
const PAGE = scope;
const kept = new Set(FILES.map(([path]) => new URL(path, scope).href));

worker.addEventListener("install", (e) => e.waitUntil(fill()));
worker.addEventListener("activate", (e) => e.waitUntil(clearOthers()));

/** Gets every file of this version, those that did not change from the version
 *  before. A file of any other content than the build's stops it: then a newer
 *  version has just been published, and the next start asks for that one. */
async function fill(): Promise<void> {
  const cache = await caches.open(CACHE);
  for (const [path, integrity] of FILES) {
    const url = new URL(path, scope).href;
    const known = url === PAGE ? undefined : await caches.match(url);
    await cache.put(url, known ?? (await fetch(url, { integrity, cache: url === PAGE ? "no-cache" : "default" })));
  }
}

async function clearOthers(): Promise<void> {
  for (const name of await caches.keys()) if (name.startsWith(OURS) && name !== CACHE) await caches.delete(name);
}

worker.addEventListener("fetch", (e) => {
  const url = e.request.mode === "navigate" ? pageAt(e.request.url) : e.request.url;
  if (e.request.method === "GET" && kept.has(url)) e.respondWith(answer(url, e.request));
});

/** The page has one address, whatever is asked of it behind a ? or under its name. */
function pageAt(url: string): string {
  const bare = url.replace(/[?#].*/, "");
  return bare === `${scope}index.html` ? PAGE : bare;
}

async function answer(url: string, request: Request): Promise<Response> {
  return (await caches.match(url, { cacheName: CACHE })) ?? fetch(request);
}

// What a page may say to its worker, from the first version on. A message that is
// not known is left unanswered, so that a page can ask any version.
worker.addEventListener("message", (e) => {
  const type = (e.data as { type?: unknown } | null)?.type;
  if (type === "ceilingwright:version") e.ports[0]?.postMessage({ type, version: VERSION });
  if (type === "ceilingwright:take-over") void worker.skipWaiting();
});
