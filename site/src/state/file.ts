// The plan as a file, out and in.

import { fileName, planText, readPlan, type Plan } from "./plan";

const GREATEST_FILE = 2_000_000;

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

export function savePlan(plan: Plan): string {
  const name = fileName(plan, ".plan.json");
  saveText(name, "application/json", planText(plan));
  return name;
}

export async function planFromFile(file: File): Promise<{ plan: Plan } | { refused: string }> {
  if (file.size > GREATEST_FILE) {
    return { refused: `“${file.name}” is larger than 2 MB. No plan is that large, so it was not read.` };
  }
  try {
    return readPlan(await file.text());
  } catch {
    return { refused: `“${file.name}” could not be read from the disk.` };
  }
}
