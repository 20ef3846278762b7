// The jobs kept on this device, in a list over the sheet: open, copy, rename,
// delete, and all of them in one file, out and in. What is done here is undone
// like any other change.

import { noteChange } from "../state/history";
import { entriesFor, entriesOf, jobsFrom, jobsText, keptJobs, putEntries, type JobChange, type KeptJob } from "../state/jobs";
import { lastIs, lastKept, markFresh, storedText } from "../state/keep";
import { emptyPlan, freshId, readPlan, type Plan } from "../state/plan";
import { put, typedText } from "../state/pointer";
import { called } from "./arriving";
import type { Actions, OwnDesk } from "./desk";
import { action, make, setText, unbroken } from "./dom";
import { handOver } from "./handing";
import { keepIfWaiting } from "./keeping";
import { jobOnSheet, showJob } from "./looking";
import { message } from "./messages";
import { renderUndo } from "./undo";
import { say } from "./say";

interface Shown {
  dialog: HTMLDialogElement;
  said: HTMLElement;
  list: HTMLElement;
}

let shown: Shown | null = null;
let renaming = ""; // id of the job whose name is being written

export function jobsActions(desk: OwnDesk): Actions {
  const of = (b: HTMLElement) => b.dataset["to"] ?? "";
  return {
    jobs: () => show(desk),
    "jobs-close": () => shown?.dialog.close(),
    "job-copy": (b) => copy(desk, of(b)),
    "job-rename": (b) => {
      renaming = of(b);
      redraw(desk);
      const name = shown?.list.querySelector<HTMLInputElement>("input");
      name?.focus();
      name?.select();
    },
    "job-named": (b) => rename(desk, of(b)),
    "job-delete": (b) => remove(desk, of(b)),
    "jobs-export": () => {
      keepIfWaiting();
      handOver(`ceilingwright-jobs-${new Date().toISOString().slice(0, 10)}.json`, "application/json", jobsText(), say("It holds all jobs kept here. “Open a file” brings them in again."));
      shown?.dialog.close();
    },
  };
}

function show(desk: OwnDesk): void {
  keepIfWaiting();
  const said = make("p", { class: "cw-jobs-said", role: "status" });
  const list = make("ul", {});
  const dialog = make(
    "dialog",
    { class: "cw-jobs", "data-clone": true, "aria-labelledby": "h-jobs" },
    make("h2", { id: "h-jobs" }, say("Jobs on this device")),
    said,
    list,
    make("p", { class: "cw-jobs-all" }, action("jobs-export", say("Save all as one file")), action("open-file", say("Bring in a file")), action("jobs-close", say("Close"))),
  );
  dialog.addEventListener("close", () => {
    dialog.remove();
    shown = null;
    renaming = "";
    document.querySelector<HTMLElement>(".cw-keep > summary")?.focus({ preventScroll: true });
  });
  dialog.addEventListener("cancel", (e) => {
    if (renaming === "") return;
    e.preventDefault();
    renaming = "";
    redraw(desk);
  });
  // Taken when the key comes up, or it would press the button that gets the focus.
  let down: EventTarget | null = null;
  dialog.addEventListener("keydown", (e) => (down = e.key === "Enter" ? e.target : null));
  dialog.addEventListener("keyup", (e) => {
    if (e.key === "Enter" && e.target === down && down instanceof HTMLInputElement) rename(desk, renaming);
  });
  document.querySelector(".cw-page")?.append(dialog);
  shown = { dialog, said, list };
  redraw(desk);
  dialog.showModal();
  // In a frame as tall as the page the list stands at its top.
  if (document.documentElement.hasAttribute("data-framed")) dialog.scrollIntoView({ block: "nearest" });
}

export function closeJobs(): void {
  shown?.dialog.close();
}

/** Shows the list as it is now, where it is open. */
export function redraw(desk: OwnDesk, words = ""): void {
  if (!shown) return;
  const here = typedText(jobOnSheet(desk)["id"]);
  const jobs = keptJobs();
  setText(shown.said, words || (jobs === null ? say("This browser keeps nothing for this page.") : jobs.length === 0 ? say("No job is kept here yet.") : ""));
  shown.list.replaceChildren(...(jobs ?? []).map((job) => (job.id === renaming ? naming(job) : entry(job, job.id === here))));
}

function entry(job: KeptJob, here: boolean): HTMLElement {
  const name = job.title || say("no name");
  const to = { "data-to": job.id };
  if (job.refused !== "") return unread(job);
  const rest = unbroken([here ? say("on the sheet") : "", when(job.at), job.says].filter((w) => w !== "").join(" · "));
  return make(
    "li",
    { "data-job": job.id },
    action("open-job", name, { ...to, "aria-label": say("Open: {name}", { name }), "aria-current": here ? "true" : undefined }),
    make("span", {}, rest),
    make(
      "span",
      { class: "cw-job-tools" },
      action("job-copy", say("Copy"), { ...to, "aria-label": say("Copy: {name}", { name }) }),
      action("job-rename", say("Rename"), { ...to, "aria-label": say("Rename: {name}", { name }) }),
      action("job-delete", say("Delete"), { ...to, "aria-label": say("Delete: {name}", { name }) }),
    ),
  );
}

/** A job that cannot be read stays for as long as it is not deleted, and can be had. */
function unread(job: KeptJob): HTMLElement {
  const to = { "data-to": job.id };
  return make(
    "li",
    { "data-job": job.id },
    make("span", {}, [job.refused, when(job.at), job.says].filter((w) => w !== "").join(" · ")),
    make("span", { class: "cw-job-tools" }, action("save-damaged", say("Download what was there"), to), action("job-delete", say("Delete"), to)),
  );
}

function naming(job: KeptJob): HTMLElement {
  return make(
    "li",
    { "data-job": job.id },
    make("input", { value: job.title, "aria-label": say("New name of the job"), autocomplete: "off" }),
    action("job-named", say("Rename"), { "data-to": job.id }),
  );
}

function when(at: string): string {
  return at === "" ? "" : new Intl.DateTimeFormat(navigator.languages, { dateStyle: "medium", timeStyle: "short" }).format(new Date(at));
}

/** Changes the list by one step; says where there is no room for it. */
function apply(desk: OwnDesk, changes: JobChange[], words: string, told: string): boolean {
  const done: JobChange[] = [];
  for (const change of changes) {
    if (!putEntries(change.id, change.after)) {
      for (const c of done) putEntries(c.id, c.before);
      redraw(desk, say("There is no room left on this device for that."));
      return false;
    }
    done.push(change);
  }
  noteChange(JSON.stringify(jobOnSheet(desk)), { words, jobs: changes });
  renderUndo();
  redraw(desk, told);
  if (shown) shown.said.append(" ", action("undo", say("Undo")));
  return true;
}

function planOf(id: string): Plan | null {
  const read = readPlan(storedText(id) ?? "");
  return "plan" in read ? read.plan : null;
}

function copy(desk: OwnDesk, id: string): void {
  const plan = planOf(id);
  if (!plan) return redraw(desk);
  const name = called(plan);
  const title = typedText(plan["title"]);
  const twin: Plan = { ...plan, id: freshId(), title: title === "" ? say("copy") : say("{title}, copy", { title }) };
  const says = (keptJobs() ?? []).find((j) => j.id === id)?.says ?? "";
  apply(desk, [{ id: typedText(twin["id"]), before: {}, after: entriesFor(twin, new Date().toISOString(), says) }], say("copying {name}", { name }), say("{name} is copied.", { name }));
  focusOn(typedText(twin["id"]));
}

function rename(desk: OwnDesk, id: string): void {
  const title = shown?.list.querySelector("input")?.value.trim() ?? "";
  renaming = "";
  const plan = planOf(id);
  if (!plan || title === typedText(plan["title"])) redraw(desk);
  else if (id === typedText(jobOnSheet(desk)["id"])) {
    desk.change((own) => put(own, "/title", title), say("the name of the job"), "/title");
    keepIfWaiting();
    redraw(desk);
  } else {
    const before = entriesOf(id);
    apply(desk, [{ id, before, after: { ...before, [`plan:${id}`]: JSON.stringify({ ...plan, title }) } }], say("renaming {job}", { job: called(plan) }), "");
  }
  focusOn(id);
}

function remove(desk: OwnDesk, id: string): void {
  if (storedText(id) === null) return redraw(desk);
  const plan = planOf(id) ?? {};
  const change: JobChange = { id, before: entriesOf(id), after: {} };
  const words = say("deleting {job}", { job: called(plan) });
  const told = say("{job} is deleted.", { job: called(plan) });
  if (id !== typedText(jobOnSheet(desk)["id"])) apply(desk, [change], words, told);
  else {
    // Its place on the sheet is taken by an empty one.
    showJob(desk);
    putEntries(id, {});
    desk.take(markFresh(emptyPlan(plan)), words, { jobs: [change] });
    redraw(desk, told);
    shown?.said.append(" ", action("undo", say("Undo")));
  }
  if (!lastKept().plan) lastIs(keptJobs()?.find((job) => job.refused === "")?.id ?? "");
  shown?.said.querySelector("button")?.focus();
}

function focusOn(id: string): void {
  shown?.list.querySelector<HTMLElement>(`[data-job="${CSS.escape(id)}"] button`)?.focus();
}

/** Brings in a file of jobs; false where the text holds none. */
export function bringIn(desk: OwnDesk, text: string): boolean {
  const got = jobsFrom(text);
  if (!got) return false;
  const count = got.changes.length;
  const words = [
    count === 0 ? say("No new job came in.") : count === 1 ? say("One job came in.") : say("{count} jobs came in.", { count }),
    got.known === 0 ? "" : got.known === 1 ? say("One was here already.") : say("{known} were here already.", { known: got.known }),
    got.unread === 0 ? "" : say("{unread} could not be read.", { unread: got.unread }),
  ].filter((w) => w !== "").join(" ");
  if (!shown) show(desk);
  if (count === 0) redraw(desk, words);
  else if (!apply(desk, got.changes, say("bringing in jobs"), words)) message("opened", say("There is no room left on this device for those jobs. Nothing was taken in."));
  return true;
}
