// Steps: ticks that survive a reload, and one step at a time when asked.

import { keep, kept } from "./store";

/** Makes ticks last and the step view work. */
export const start = (root: HTMLElement): void => {
  for (const step of root.querySelectorAll<HTMLElement>(".step")) {
    const tick = step.querySelector<HTMLInputElement>(".tick");
    if (!tick) continue;
    tick.checked = kept(step.id) === "done";
    tick.addEventListener("change", () => keep(step.id, tick.checked ? "done" : ""));
  }
};
