// Words of the trade as this sheet uses them: one list at the foot of the page,
// and a button where a word first stands in a part.

import type { Actions } from "./desk";
import { action, make, region } from "./dom";

/** Each word and what it means here, in the order of the alphabet. */
const WORDS: [word: string, meaning: string][] = [
  ["Air changes", "How often in an hour the air of the room is replaced by fresh air."],
  ["Book", "How leaf is sold: so many leaves between paper, often 25."],
  ["Border", "What is left free between the edge of the mask and the wall."],
  ["Closing error", "By how much the readings of a room disagree with each other."],
  ["Contingency", "What is added to the cost for what nobody can foresee."],
  ["Dry film", "How thick a coat is once it is dry: the wet film, less what evaporates."],
  ["Edge seal", "A thin coat along the edges of the mask, in the colour below, so that no paint creeps under."],
  ["Error building up", "How far the far end is out when small errors of all panels add up."],
  ["Gap", "What is left open between two panels at a seam."],
  ["Glaze", "A thin see-through coat over others."],
  ["Key panel", "The panel of a layer left in place until the next layer has been set against it."],
  ["Lap", "By how much one leaf lies over the next."],
  ["Lay", "To put leaf on size that has come to tack."],
  ["Leaf", "One thin sheet of metal."],
  ["Mask outline", "The rectangle that all panels together fill; it is marked out on the ceiling."],
  ["Open time", "How long size stays sticky enough for leaf."],
  ["Pieces", "Panels that come joined, are joined on the floor, or are cut loose."],
  ["Platform position", "One place of the platform, from which some panels are in reach."],
  ["Pot life", "How long a mix can be used before it sets."],
  ["Run", "A length measured along, of a wall, a moulding or a band."],
  ["Seam", "The line where two panels meet."],
  ["Size", "The glue that leaf is laid on."],
  ["Solids", "The part of a paint that stays when it has dried."],
  ["Spread rate", "How much area one gallon or litre covers in one coat."],
  ["Tack", "When size is just sticky enough for leaf."],
  ["Taper", "How much a border is wider at one end than at the other."],
  ["Waste", "What stays in the tray, the roller and the air, or is cut off."],
  ["Wet film", "How thick a coat is while it is wet."],
];

function place(word: string): string {
  return `word-${word.toLowerCase().replace(/ /g, "-")}`;
}

/** The list, in the closed fold at the foot. */
export function renderGlossary(): void {
  region("words").replaceChildren(...WORDS.flatMap(([word, meaning]) => [make("dt", { id: place(word), tabindex: "-1" }, word), make("dd", {}, meaning)]));
}

/** Where the reader came from, to go back to. */
let cameFrom: HTMLElement | null = null;

export function glossaryActions(): Actions {
  return {
    word: (button) => {
      const term = document.getElementById(place(button.dataset["to"] ?? ""));
      const fold = term?.closest("details");
      if (!term || !fold) return;
      cameFrom = button;
      fold.open = true;
      document.querySelector("[data-do=word-back]")?.remove();
      term.nextElementSibling?.append(" ", action("word-back", "Back"));
      term.focus({ preventScroll: true });
      term.scrollIntoView({ block: "center" });
    },
    "word-back": (button) => {
      button.remove();
      cameFrom?.scrollIntoView({ block: "center" });
      cameFrom?.focus({ preventScroll: true });
    },
  };
}
