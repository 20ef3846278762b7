// How heavily something weighs, told by a word and by the shape of a sign, so
// that nobody has to tell it by its colour.

import type { Severity } from "../engine/contract";
import { say } from "./say";

const SVG = "http://www.w3.org/2000/svg";

/** The word a note of this severity begins with. */
export const severityWord = { stop: say("Stop"), caution: say("Take care"), note: say("Know") } as const;

/** An eight-cornered plate for a stop, a triangle for a caution, a ring for a
 *  note. Each is drawn, not coloured in, so that paper and forced colours keep it. */
const shapes: Record<Severity, [string, string]> = {
  stop: ["M6 1h8l5 5v8l-5 5H6l-5-5V6z", "M5 8.5h10v3H5z"],
  caution: ["M10 1.5 19 18.5H1z", "M9 7h2l-.3 6H9.3zM9 14.5h2v2H9z"],
  note: ["M10 1a9 9 0 1 0 0 18 9 9 0 0 0 0-18zm0 2a7 7 0 1 1 0 14 7 7 0 0 1 0-14z", "M9 8.5h2V15H9zM9 5h2v2H9z"],
};

/** The sign of a severity; the word beside it says the same. */
export function sign(severity: Severity): SVGSVGElement {
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("class", "cw-shape");
  svg.setAttribute("viewBox", "0 0 20 20");
  svg.setAttribute("aria-hidden", "true");
  const [plate, mark] = shapes[severity];
  for (const [d, name] of [[plate, "cw-shape-plate"], [mark, "cw-shape-mark"]] as const) {
    const path = document.createElementNS(SVG, "path");
    path.setAttribute("d", d);
    path.setAttribute("class", name);
    svg.append(path);
  }
  return svg;
}

/** What to do, which every note says in its first sentence, and the rest. */
export function firstSentence(words: string): [string, string] {
  const [, first = words, rest = ""] = /^(.*?[.!?]”?)\s+(?=[\p{Lu}“\d])(.*)$/su.exec(words) ?? [];
  return [first, rest];
}
