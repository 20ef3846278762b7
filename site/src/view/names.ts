// Names as they were typed, in sentences of the page's own. What the engine says
// it has seen to already.

const FROM_THE_RIGHT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** A name that cannot turn the words round it: without the marks that change the
 *  direction of writing, and isolated where its letters run from the right
 *  (Unicode Standard Annex 9). */
export function calm(name: string): string {
  const plain = name.replace(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/gu, "");
  return FROM_THE_RIGHT.test(plain) ? `\u2068${plain}\u2069` : plain;
}

export function quoted(name: string): string {
  return `“${calm(name)}”`;
}
