// The plan as a file, out and in.

import { holdsJobs } from "./jobs";
import { readPlan, type Plan } from "./plan";
import { say } from "../view/say";

const GREATEST_FILE = 2_000_000;
const GREATEST_JOBS = 20_000_000; // of many jobs in one file

/** Hands text to the browser as a file to keep. */
export function saveText(name: string, type: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken the bytes once the click is through; a phone is slower.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

export type Opened = { plan: Plan } | { jobs: string } | { refused: string };

/** What is in a file: a plan, the text of many jobs, or why it is neither. */
export async function planFromFile(file: File): Promise<Opened> {
  if (file.size > GREATEST_JOBS) return tooLarge(`“${file.name}”`);
  try {
    return planFromText(await file.text(), `“${file.name}”`);
  } catch {
    return { refused: say("“{name}” could not be read from the disk.", { name: file.name }) };
  }
}

/** The same of a text; what says in the refusal where it came from. */
export function planFromText(text: string, what: string): Opened {
  if (holdsJobs(text)) return { jobs: text };
  return text.length > GREATEST_FILE ? tooLarge(what) : readPlan(text);
}

function tooLarge(what: string): Opened {
  return { refused: say("{what} is larger than 2 MB. No plan is that large, so it was not read.", { what: what.replace(/^./, (c) => c.toUpperCase()) }) };
}
