// Words of the trade as this sheet uses them: one list at the foot of the page,
// and a button where a word first stands in a part.

import type { Actions } from "./desk";
import { action, make, region } from "./dom";
import { say } from "./say";

/** Each word and what it means here, in the order of the alphabet. */
const WORDS: [word: string, meaning: string][] = [
  [say("Air changes"), say("How often in an hour the air of the room is replaced by fresh air.")],
  [say("Book"), say("How leaf is sold: so many leaves between paper, often 25.")],
  [say("Border"), say("What is left free between the edge of the mask and the wall.")],
  [say("Closing error"), say("By how much the readings of a room disagree with each other.")],
  [say("Contingency"), say("What is added to the cost for what nobody can foresee.")],
  [say("Dry film"), say("How thick a coat is once it is dry: the wet film, less what evaporates.")],
  [say("Edge seal"), say("A thin coat along the edges of the mask, in the colour below, so that no paint creeps under.")],
  [say("Error building up"), say("How far the far end is out when small errors of all panels add up.")],
  [say("Gap"), say("What is left open between two panels at a seam.")],
  [say("Glaze"), say("A thin see-through coat over others.")],
  [say("Key panel"), say("The panel of a layer left in place until the next layer has been set against it.")],
  [say("Lap"), say("By how much one leaf lies over the next.")],
  [say("Lay"), say("To put leaf on size that has come to tack.")],
  [say("Leaf"), say("One thin sheet of metal.")],
  [say("Mask outline"), say("The rectangle that all panels together fill; it is marked out on the ceiling.")],
  [say("Open time"), say("How long size stays sticky enough for leaf.")],
  [say("Pieces"), say("Panels that come joined, are joined on the floor, or are cut loose.")],
  [say("Platform position"), say("One place of the platform, from which some panels are in reach.")],
  [say("Pot life"), say("How long a mix can be used before it sets.")],
  [say("Run"), say("A length measured along, of a wall, a moulding or a band.")],
  [say("Seam"), say("The line where two panels meet.")],
  [say("Size"), say("The glue that leaf is laid on.")],
  [say("Solids"), say("The part of a paint that stays when it has dried.")],
  [say("Spread rate"), say("How much area one gallon or litre covers in one coat.")],
  [say("Tack"), say("When size is just sticky enough for leaf.")],
  [say("Taper"), say("How much a border is wider at one end than at the other.")],
  [say("Waste"), say("What stays in the tray, the roller and the air, or is cut off.")],
  [say("Wet film"), say("How thick a coat is while it is wet.")],
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
      term.nextElementSibling?.append(" ", action("word-back", say("Back")));
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
