// Ticks that survive a reload and a dead battery. A step with a reading out of
// limits is not ticked before it is explained.

import { keep, kept, type KeptReading, onChange, parse } from "./store";

/** Makes ticks last. */
export const start = (root: HTMLElement): void => {
  for (const step of root.querySelectorAll<HTMLElement>(".step")) tickLasts(step);
  onChange((item, value) => {
    const tick = document.getElementById(item)?.querySelector<HTMLInputElement>(".tick");
    if (tick) tick.checked = value === "done";
  });
};

const tickLasts = (step: HTMLElement): void => {
  const tick = step.querySelector<HTMLInputElement>(".tick");
  if (!tick) return;
  tick.checked = kept(step.id) === "done";
  tick.addEventListener("change", () => keep(step.id, tick.checked ? "done" : ""));
  tick.addEventListener("click", (e) => {
    const open = [...step.querySelectorAll<HTMLElement>(".reading")].find(wantsWord);
    if (!tick.checked || !open) return;
    e.preventDefault();
    (open.querySelector<HTMLElement>(".word") ?? open.querySelector("input"))?.focus();
  });
};

/** Whether a reading is out of limits and not explained: as the page shows it, or as it was kept where the page does not show it yet. */
const wantsWord = (place: HTMLElement): boolean => {
  const word = place.querySelector<HTMLInputElement>(".word");
  if (word) return place.dataset.verdict === "stop" && word.value.trim() === "";
  const before = parse<KeptReading>(kept(place.id) ?? "");
  return before?.verdict === "stop" && !before.word;
};
