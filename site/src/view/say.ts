// What the page says: whole sentences with named holes, by which another language finds
// its own. In a sentence stand {name}, {n|layer|layers} for a count with its noun and
// {n?is|are} for the word alone that goes with it, as in those of the engine.

type Hole = Node | Node[] | string | number;

let language: Record<string, string> | undefined;

/** The language of the page as it stands in it, "" for the one the script is written in. */
export function languageText(): string {
  return document.getElementById("language")?.textContent ?? "";
}

function inLanguage(ours: string): string {
  language ??= JSON.parse(languageText() || "{}") as Record<string, string>;
  return language[ours] || ours;
}

/** Which of the words that go with a count, parted by strokes, is the one: by the digits
 *  of the language for counts to 199, from there on as a hundred and their last two. */
export function worded(n: number, forms: string): string {
  const form = inLanguage("{form}")[n < 200 ? n : 100 + (n % 100)];
  const all = forms.split("|");
  return all[form && form >= "0" && form <= "9" ? Number(form) : Number(n !== 1)] ?? "";
}

function filled(hole: string, holes: Record<string, Hole>): Node | Node[] | string {
  const [, name = "", kind, forms = ""] = /^(\w+)([|?]?)(.*)$/.exec(hole) ?? [];
  const value = holes[name] ?? `{${hole}}`;
  if (!kind) return typeof value === "number" ? String(value) : value;
  const n = Number(value);
  return kind === "?" ? worded(n, forms) : `${String(n)} ${worded(n, forms)}`;
}

/** A sentence with parts of the page in its holes. */
export function saying(sentence: string, holes: Record<string, Hole>): (Node | string)[] {
  return inLanguage(sentence)
    .split(/[{}]/)
    .flatMap((text, i) => (i % 2 ? filled(text, holes) : text));
}

/** A sentence with what goes into its holes. */
export function say(sentence: string, holes: Record<string, string | number> = {}): string {
  return saying(sentence, holes).join("");
}

/** Names one after the other, all of them: "a and b and c". */
export function and(names: string[]): string {
  return names.length < 2 ? names.join("") : names.reduce((one, other) => say("{one} and {other}", { one, other }));
}
