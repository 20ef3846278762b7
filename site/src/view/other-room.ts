// The example in another room: once a side of the room is changed, what was made
// for the room before is fitted to it. What fits how is the engine's to say.

import type { Fitting } from "../engine/contract";
import { examplePlan, isExample, type Plan } from "../state/plan";
import { at, list, put, typedText } from "../state/pointer";
import { theEngine } from "./answer";
import type { Desk } from "./desk";
import { message } from "./messages";
import { say } from "./say";

const SIDES = ["/room/length", "/room/width"];

/** The plans that are the example taken over, by their ids. */
const takenOver = new Set<string>();

/** The example, and the example as it was fitted to other rooms, the last at the
 *  end. */
const made: Plan[] = [];

export function takeOver(id: string): void {
  takenOver.add(id);
}

/** To be called when a blank has been filled in. */
export function fitToRoom(desk: Desk, pointer: string): void {
  const plan = desk.plan();
  if (!SIDES.includes(pointer) || !(isExample(plan) || takenOver.has(typedText(plan["id"])))) return;
  const fitting = fittingFor(plan);
  if (!fitting || fitting.said === "") return;
  desk.change((next) => {
    for (const { at: place, text } of fitting.writes) put(next, place, text);
    for (const entry of [...fitting.out].reverse()) {
      const [, host = "", index = ""] = /^(.*)\/(\d+)$/.exec(entry) ?? [];
      put(next, host, list(next, host).filter((_, i) => String(i) !== index));
    }
  }, say("the example fitted to another room"));
  made.push(JSON.parse(JSON.stringify(desk.plan())) as Plan);
  message("done", fitting.said);
}

function fittingFor(plan: Plan): Fitting | null {
  // After an undo the plan is as it was made for an earlier room.
  const last = [...made].reverse().find((m) => ["/mask/length", "/mask/width"].every((side) => at(m, side) === at(plan, side))) ?? examplePlan();
  const answer = theEngine()?.otherRoom(JSON.stringify(last), JSON.stringify(plan)) ?? "";
  return answer === "" ? null : (JSON.parse(answer) as Fitting);
}
