// The ways out of the page: a file, a link, a copy with the job inside, a tab of
// its own.

import { pageWithPlan } from "../state/along";
import { savePlan, saveText } from "../state/file";
import { fragmentFromPlan } from "../state/link";
import { fileName, type Plan } from "../state/plan";
import type { Actions, Desk } from "./desk";
import { make, region, setAttribute } from "./dom";
import { isSandboxed, tellHeight } from "./framed";
import { isForClient } from "./looking";
import { message } from "./messages";

export function sharingActions(desk: Desk): Actions {
  return {
    "save-file": () => message("done", `“${savePlan(desk.plan())}” is on its way to your downloads.`),
    "copy-link": () => void copyLink(desk.plan()),
    "take-along": () => void takeAlong(desk.plan()),
  };
}

async function copyLink(plan: Plan): Promise<void> {
  const link = `${location.href.split("#")[0] ?? ""}#${await fragmentFromPlan(plan)}`;
  try {
    await navigator.clipboard.writeText(link);
    message("done", isForClient(plan) ? "The link is copied. Whoever opens it sees the client’s copy, without rates." : "The link is copied. Whoever opens it sees this plan as it is now, with all that is in it.");
  } catch {
    message("done", "Copy this link:");
    const box = make("input", { class: "cw-link", readonly: true, "aria-label": "Link with the plan", value: link });
    document.querySelector("[data-message=done]")?.prepend(box);
    box.select();
  }
}

async function takeAlong(plan: Plan): Promise<void> {
  try {
    const name = fileName(plan, ".html");
    saveText(name, "text/html", await pageWithPlan(plan));
    message("done", `“${name}” is on its way to your downloads. Open it from there: it needs no signal.`);
  } catch {
    message("done", "The page could not be packed: its second half did not arrive. Look at the connection and try again, or save the plan as a file.");
  }
}

/** Points the way to a tab of its own at the plan as it is now. */
export async function offerOwnTab(plan: Plan): Promise<void> {
  const fragment = await fragmentFromPlan(plan);
  setAttribute(region("own-tab"), "href", `${location.pathname}${location.search}#${fragment}`);
}

/** Sets the page up as one inside another site's. */
export function frame(plan: Plan): void {
  setAttribute(document.documentElement, "data-framed", "");
  const link = region("own-tab");
  link.textContent = isSandboxed() ? "Open in its own tab to keep or print" : "Open in its own tab";
  link.hidden = false;
  void offerOwnTab(plan);
  tellHeight();
}
