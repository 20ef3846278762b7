// The ways out of the page: a file, a link, a copy with the job inside, a tab of
// its own.

import { pageWithPlan } from "../state/along";
import { fragmentFromPlan } from "../state/link";
import { fileName, planText, type Plan } from "../state/plan";
import type { Actions, Desk } from "./desk";
import { action, every, make, region, setAttribute, setText } from "./dom";
import { isSandboxed, may, tellHeight } from "./framed";
import { handOver, showText } from "./handing";
import { isForClient } from "./looking";
import { message } from "./messages";
import { and, say } from "./say";

export function sharingActions(desk: Desk): Actions {
  return {
    "save-file": () => handOver(fileName(desk.plan(), ".plan.json"), "application/json", planText(desk.plan())),
    "copy-text": () => showText(say("The plan as text. Copy it, and paste it on the sheet to open it again:"), JSON.stringify(desk.plan()), say("The plan as text")),
    "copy-link": () => void copyLink(desk.plan()),
    "take-along": () => void takeAlong(desk.plan()),
  };
}

async function copyLink(plan: Plan): Promise<void> {
  const link = `${location.href.split("#")[0] ?? ""}#${await fragmentFromPlan(plan)}`;
  try {
    await navigator.clipboard.writeText(link);
    message("done", isForClient(plan) ? say("The link is copied. Whoever opens it sees the client’s copy, without rates.") : say("The link is copied. Whoever opens it sees this plan as it is now, with all that is in it."));
  } catch {
    message("done", say("Copy this link:"));
    const box = make("input", { class: "cw-link", readonly: true, "aria-label": say("Link with the plan"), value: link });
    document.querySelector("[data-message=done]")?.prepend(box);
    box.select();
  }
}

async function takeAlong(plan: Plan): Promise<void> {
  try {
    const name = fileName(plan, ".html");
    if (may("allow-downloads") === "no") message("done", say("The page around this one forbids saving files."), action("copy-text", say("Copy as text")));
    else handOver(name, "text/html", await pageWithPlan(plan), say("Open it from there: it needs no signal."));
  } catch {
    message("done", say("The page could not be packed: its second half did not arrive. Look at the connection and try again, or save the plan as a file."));
  }
}

/** Opens the tab, and gives the address to copy where a frame may open none. */
function openOwnTab(address: string): void {
  const opened = window.open(address, "_blank");
  if (opened) opened.opener = null;
  else showText(say("The page around this one forbids opening a tab. Copy this address into one:"), address, say("Address of this page with the plan"));
}

/** Points the way to a tab of its own at the plan as it is now. */
export async function offerOwnTab(plan: Plan): Promise<void> {
  const fragment = await fragmentFromPlan(plan);
  setAttribute(region("own-tab"), "href", `${location.pathname}${location.search}#${fragment}`);
}

/** Sets the page up as one inside another site's, and says beforehand what it
 *  may not do there, as far as that can be known. */
export function frame(plan: Plan): void {
  setAttribute(document.documentElement, "data-framed", "");
  const link = region("own-tab");
  link.textContent = isSandboxed() ? say("Open in its own tab to keep or print") : say("Open in its own tab");
  link.hidden = may("allow-popups") === "no";
  link.addEventListener("click", (e) => {
    e.preventDefault();
    openOwnTab((link as HTMLAnchorElement).href);
  });
  void offerOwnTab(plan);
  setText(region("frame-may"), inFrame());
  for (const button of every("[data-do=print]")) {
    if (may("allow-modals") === "no") setAttribute(button, "aria-disabled", "true");
  }
  tellHeight();
}

const things = [
  ["allow-downloads", say("saving files")],
  ["allow-modals", say("printing")],
  ["allow-popups", say("opening tabs")],
] as const;

function inFrame(): string {
  const forbidden = things.filter(([right]) => may(right) === "no").map(([, thing]) => thing);
  if (forbidden.length > 0) return say("The page around this one forbids {things}. Copying as text works.", { things: and(forbidden.length > 2 ? [forbidden.slice(0, -1).join(", "), forbidden.at(-1) ?? ""] : forbidden) });
  if (things.every(([right]) => may(right) === "yes")) return "";
  return say("The page around this one may forbid saving files, printing or opening tabs. Copying as text works.");
}
