// Corners and walls as people read them. The plan and the engine call them by
// letters from A; the rows of panels have those on paper, so people read W, X, Y
// and Z. What the engine says in words is already so.

const READ = "WXYZVUTSRQPONMLKJIHGFEDCBA";

/** A corner, a wall or a line by the name that people read. */
export function called(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => READ[letter.charCodeAt(0) - "A".charCodeAt(0)] ?? letter);
}
