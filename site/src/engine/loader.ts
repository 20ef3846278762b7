// Starts the engine by the road this page allows: its own blocks, the carrier
// file on disk, or a streamed fetch. Every way it can fail has its own words.

import type { Engine } from "./calls";
import { carried, loadCarrier } from "./carrier";
import { bytesFromBase64, canUnpack, unpack } from "./pack";
import { languageText, say } from "../view/say";

/** Why the engine is not there. The words are for the person at the sheet. */
export class NoEngine extends Error {
  constructor(
    readonly why: "no-wasm" | "blocked" | "old" | "fetch" | "broken",
    readonly words: string,
    readonly again: boolean,
  ) {
    super(words);
  }
}

const words = {
  "no-wasm": say("This browser cannot run the part that works out the figures. A browser from 2023 or later can."),
  blocked:
    say("A rule of this site or of this browser forbids the part that works out the figures. Allow WebAssembly for this page, or open the saved one-file page."),
  old: say("This browser is too old to unpack the part that works out the figures. A browser from 2023 or later can."),
  fetch: say("The part that works out the figures did not arrive. Look at the connection, then try again."),
  broken: say("The part that works out the figures did not start."),
} as const;

function failed(why: keyof typeof words): NoEngine {
  return new NoEngine(why, words[why], why === "fetch" || why === "broken");
}

/** Resolves once the document is read to its end. */
export function wholePage(): Promise<void> {
  if (document.readyState !== "loading") return Promise.resolve();
  return new Promise((resolve) => document.addEventListener("DOMContentLoaded", () => resolve(), { once: true }));
}

/** Starts the engine of a hosted page, which needs nothing of the document; null
 *  on any other page, whose engine stands in the document or beside it. */
export function startEarly(): Promise<Engine> | null {
  if (location.protocol === "file:" || !document.documentElement.dataset["engine"]) return null;
  const starting = startEngine();
  // Whoever opens the job is told; until then nobody listens.
  starting.catch(() => undefined);
  return starting;
}

/** The engine as it was compiled, to start another of it without asking anyone. */
let compiled: WebAssembly.Module | null = null;

/** Starts a new engine in place of one that has stopped. */
export function startEngineAnew(): Promise<Engine> {
  globalThis.ceilingwright = undefined;
  return startEngine();
}

/** Resolves once globalThis.ceilingwright answers. */
export async function startEngine(): Promise<Engine> {
  if (globalThis.ceilingwright) return globalThis.ceilingwright;
  if (typeof WebAssembly !== "object") throw failed("no-wasm");
  if (!globalThis.Go) throw failed("broken");
  const go = new globalThis.Go();
  const ready = new Promise<Engine>((resolve) => {
    const done = () => {
      if (!globalThis.ceilingwright) return;
      if (languageText() !== "") globalThis.ceilingwright.speak(languageText());
      resolve(globalThis.ceilingwright);
    };
    // An event on the document that bubbles reaches the window as well.
    document.addEventListener("ceilingwright:ready", done, { once: true });
    globalThis.addEventListener("ceilingwright:ready", done, { once: true });
  });
  const instance = await instantiate(go.importObject);
  const ended = go.run(instance).then(() => Promise.reject(failed("broken")));
  return Promise.race([ready, ended]);
}

async function instantiate(imports: WebAssembly.Imports): Promise<WebAssembly.Instance> {
  try {
    if (compiled) return await WebAssembly.instantiate(compiled, imports);
    const first = await compile(imports);
    compiled = first.module;
    return first.instance;
  } catch (e) {
    if (e instanceof NoEngine) throw e;
    // Engines name a policy in the message of a CompileError; a damaged file
    // gives the same class without it.
    if (e instanceof WebAssembly.CompileError && /polic|unsafe-eval|disallow|CSP/i.test(String(e))) throw failed("blocked");
    throw failed("broken");
  }
}

function compile(imports: WebAssembly.Imports): Promise<WebAssembly.WebAssemblyInstantiatedSource> {
  return carried() || location.protocol === "file:" ? fromCarrier(imports) : fromNetwork(imports);
}

async function fromNetwork(imports: WebAssembly.Imports): Promise<WebAssembly.WebAssemblyInstantiatedSource> {
  const url = document.documentElement.dataset["engine"] ?? "";
  let response: Response;
  try {
    response = await fetch(url, { credentials: "same-origin" });
    if (!response.ok) throw failed("fetch");
  } catch {
    // A frame without an origin may not fetch, yet may load a script.
    return fromCarrier(imports);
  }
  // Streaming wants exactly this type; any other host's type is read as bytes, once.
  if (response.headers.get("Content-Type") === "application/wasm" && WebAssembly.instantiateStreaming) {
    return WebAssembly.instantiateStreaming(response, imports);
  }
  let bytes: ArrayBuffer;
  try {
    bytes = await response.arrayBuffer();
  } catch {
    throw failed("fetch");
  }
  return WebAssembly.instantiate(bytes, imports);
}

async function fromCarrier(imports: WebAssembly.Imports): Promise<WebAssembly.WebAssemblyInstantiatedSource> {
  let packed: string;
  try {
    await wholePage();
    packed = (await loadCarrier()).engine;
  } catch {
    throw failed("fetch");
  }
  if (!canUnpack()) throw failed("old");
  const bytes = await unpack(bytesFromBase64(packed), "gzip");
  return WebAssembly.instantiate(bytes, imports);
}
