// Readings: judged by the core as they are typed, kept on the device.

import { core } from "./core";
import { keep, kept } from "./store";

/** Makes every reading field judge what is typed. */
export const start = (root: HTMLElement): void => {
  for (const reading of root.querySelectorAll<HTMLElement>(".reading")) {
    const field = reading.querySelector("input") as HTMLInputElement;
    const judged = reading.querySelector(".judged") as HTMLElement;
    const judge = async (): Promise<void> => {
      if (field.value.trim() === "") {
        judged.textContent = "";
        delete judged.dataset.verdict;
        return;
      }
      const it = await core();
      const answer = it.ask("judge", String(reading.dataset.limit), field.value);
      judged.textContent = String(answer.say);
      judged.dataset.verdict = answer.verdict;
    };
    const before = kept(reading.id);
    if (before !== null) {
      field.value = before;
      void judge().catch(() => undefined);
    }
    field.addEventListener("input", () => {
      keep(reading.id, field.value);
      void judge().catch((e: unknown) => {
        judged.textContent = `cannot be judged now: ${String(e)}`;
      });
    });
  }
};
