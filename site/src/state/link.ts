// The plan inside a link, after the # sign, which browsers never send to a
// server. Form: cw1_<packing>_<length>_<checksum>_<data>, made of letters,
// digits, "-" and "_" alone, because mail and chat rewrite everything else.
// Packing d is deflate-raw, j is plain JSON; the data is base64url of it, the
// length counts its characters, and the checksum is the CRC-32 of the JSON.

import { base64FromBytes, bytesFromBase64, canUnpack, pack, unpackUpTo } from "../engine/pack";
import { readPlan, type Plan } from "./plan";
import { say } from "../view/say";

const MARK = "cw1";
const GREATEST_JSON = 2_000_000; // bytes, as for a file

export async function fragmentFromPlan(plan: Plan): Promise<string> {
  const json = new TextEncoder().encode(JSON.stringify(plan));
  const packing = canUnpack() ? "d" : "j";
  const packed = packing === "d" ? await pack(json, "deflate-raw") : json;
  const data = base64FromBytes(packed).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
  return [MARK, packing, String(data.length), checksum(json), data].join("_");
}

export function hasPlan(fragment: string): boolean {
  return fragment.startsWith("#" + MARK + "_");
}

const damaged = { refused: say("The link is damaged or cut off, so the plan in it cannot be read. Ask for it again, or for the plan as a file.") };

const tooLarge = { refused: say("What is in the link is larger than 2 MB. No plan is that large, so it was not read.") };

export async function planFromFragment(fragment: string): Promise<{ plan: Plan } | { refused: string }> {
  const parts = /^#cw1_([dj])_(\d+)_([0-9a-f]{8})_([A-Za-z0-9_-]*)$/.exec(fragment);
  if (!parts) return damaged;
  const [, packing, length, sum, data] = parts as unknown as [string, string, string, string, string];
  if (String(data.length) !== length) return damaged;
  // No packing makes a text longer by more than a few bytes; base64 adds a third.
  if (data.length > GREATEST_JSON * 2) return tooLarge;
  try {
    const packed = bytesFromBase64(data.replace(/-/g, "+").replace(/_/g, "/"));
    if (packing === "d" && !canUnpack()) {
      return { refused: say("This browser is too old to unpack the plan in the link. Ask for the plan as a file.") };
    }
    const json = packing === "d" ? await unpackUpTo(GREATEST_JSON, packed, "deflate-raw") : packed;
    if (json === null || json.length > GREATEST_JSON) return tooLarge;
    if (checksum(json) !== sum) return damaged;
    return readPlan(new TextDecoder().decode(json));
  } catch {
    return damaged;
  }
}

/** CRC-32 of ISO 3309, bit by bit: a plan is small. Check value: the digits
 *  "123456789" give cbf43926. */
export function checksum(bytes: Uint8Array): string {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ((crc ^ 0xffffffff) >>> 0).toString(16).padStart(8, "0");
}
