// Readings: judged by the core as they are typed, kept for the record. One
// that is out of its limits wants a word before its step can be ticked.

import { core } from "./core";
import { keep, kept, onChange, parse } from "./store";

/** A reading as it is kept. */
export interface KeptReading {
  value: string;
  /** What the sheet asks: "at most 100 mV". */
  limit: string;
  unit: string;
  verdict: string;
  /** The judgement in words. */
  judged: string;
  /** What the tech says of a reading out of limits. */
  word?: string;
}

/** Makes every reading field judge what is typed. */
export const start = (root: HTMLElement): void => {
  const fields = [...root.querySelectorAll<HTMLElement>(".reading")].map(reading);
  onChange((item) => fields.find((f) => f.id === item)?.restore());
  for (const step of root.querySelectorAll<HTMLElement>(".step")) holdTick(step);
};

const reading = (place: HTMLElement): { id: string; restore: () => void } => {
  const field = place.querySelector("input") as HTMLInputElement;
  const judged = place.querySelector(".judged") as HTMLElement;
  const word = wordField(place);
  const save = (): void => {
    const now: KeptReading = {
      value: field.value.trim(),
      limit: place.querySelector(".limit")?.textContent ?? "",
      unit: place.querySelector(".unit")?.textContent ?? "",
      verdict: place.dataset.verdict ?? "",
      judged: judged.textContent ?? "",
      word: word.value.trim(),
    };
    keep(place.id, now.value === "" ? "" : JSON.stringify(now));
  };
  const judge = async (): Promise<void> => {
    if (field.value.trim() === "") {
      judged.textContent = "";
      delete place.dataset.verdict;
      return;
    }
    const answer = (await core()).ask("judge", String(place.dataset.limit), field.value);
    judged.textContent = String(answer.say);
    place.dataset.verdict = answer.verdict;
  };
  const run = (): void => {
    save(); // before the core is in, so that nothing typed is lost
    judge()
      .then(save)
      .catch((e: unknown) => {
        judged.textContent = `cannot be judged now: ${e instanceof Error ? e.message : String(e)}`;
      });
  };
  field.addEventListener("input", run);
  word.addEventListener("input", save);
  const restore = (): void => {
    const before = parse<KeptReading>(kept(place.id) ?? "");
    field.value = before?.value ?? "";
    word.value = before?.word ?? "";
    judged.textContent = before?.judged ?? "";
    if (before?.verdict) place.dataset.verdict = before.verdict;
    else delete place.dataset.verdict;
  };
  restore();
  return { id: place.id, restore };
};

/** The field for a word on a reading out of limits; styles show it only then. */
const wordField = (place: HTMLElement): HTMLInputElement => {
  const word = document.createElement("input");
  word.className = "word";
  word.autocomplete = "off";
  word.placeholder = "Out of limits: why, or what was done";
  word.setAttribute("aria-label", "Out of limits: why, or what was done");
  place.append(word);
  return word;
};

/** A step whose reading is out of limits is not ticked without a word. */
const holdTick = (step: HTMLElement): void => {
  const tick = step.querySelector<HTMLInputElement>(".tick");
  tick?.addEventListener("click", (e) => {
    const open = [...step.querySelectorAll<HTMLElement>(".reading[data-verdict=stop]")].find(
      (r) => r.querySelector<HTMLInputElement>(".word")?.value.trim() === "",
    );
    if (!tick.checked || !open) return;
    e.preventDefault();
    open.querySelector<HTMLInputElement>(".word")?.focus();
  });
};
