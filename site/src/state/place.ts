// Where on this device the page keeps what it keeps. A page of its own has one
// place; a page in a frame has one for each frame, told by the name the frame was
// given or else by its address, so that two frames on one page stay apart.

import { checksum } from "./link";

const OWN = "ceilingwright:";

let prefix = OWN;

/** The name under which a thing of the page is stored. */
export function placed(name: string): string {
  return prefix + name;
}

export function moveIntoFrame(name: string, address: string): void {
  prefix = `${OWN}frame:${name !== "" ? `named:${name}` : checksum(new TextEncoder().encode(address))}:`;
}
