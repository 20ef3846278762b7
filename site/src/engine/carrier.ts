// Where the engine and the one-file page come from when nothing may be
// fetched. The one-file page holds both in blocks of its own; every other page
// names a carrier file, which a plain script element can load from disk too.

import type { Carrier } from "./calls";

function block(id: string): string {
  return document.getElementById(id)?.textContent?.trim() ?? "";
}

/** The blocks of the one-file page, or null on any other page. */
export function carried(): Carrier | null {
  const engine = block("engine");
  return engine === "" ? null : { engine, page: block("page") };
}

let loading: Promise<Carrier> | undefined;

/** The carrier, from the page's own blocks or from the file beside it. */
export function loadCarrier(): Promise<Carrier> {
  const own = carried();
  if (own) return Promise.resolve(own);
  loading ??= new Promise<Carrier>((resolve, reject) => {
    const src = document.getElementById("carrier")?.getAttribute("src");
    if (!src) return reject(new Error("no carrier named"));
    const script = document.createElement("script");
    script.dataset["clone"] = "";
    script.src = src;
    script.onload = () => {
      script.remove();
      const got = globalThis.ceilingwrightCarrier;
      if (got) resolve(got);
      else reject(new Error("carrier is empty"));
    };
    script.onerror = () => {
      script.remove();
      loading = undefined;
      reject(new Error("carrier did not load"));
    };
    document.head.append(script);
  });
  return loading;
}
