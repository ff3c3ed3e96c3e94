// Readings: judged by the core as they are typed, kept for the record. One
// that is out of its limits needs an explanation; until there is one, ticks.ts
// does not let its step be ticked.

import { core } from "./core";
import { keep, kept, type KeptReading, onChange, parse } from "./store";

/** Makes every reading field judge what is typed. */
export const start = (root: HTMLElement): void => {
  const fields = [...root.querySelectorAll<HTMLElement>(".reading")].map(reading);
  onChange((item) => fields.find((f) => f.id === item)?.restore());
};

const reading = (place: HTMLElement): { id: string; restore: () => void } => {
  const field = place.querySelector("input") as HTMLInputElement;
  const judged = place.querySelector(".judged") as HTMLElement;
  const word = wordField(place);
  const save = (): void => {
    const now: KeptReading = {
      value: field.value.trim(),
      limit: place.querySelector(".limit")?.textContent ?? "",
      unit: unitOf(place),
      verdict: place.dataset.verdict ?? "",
      judged: judged.textContent ?? "",
      word: word.value.trim(),
    };
    // A text without a digit is no reading, and a reading that the core cannot read is not kept.
    keep(place.id, /\d/.test(now.value) && place.dataset.unread === undefined ? JSON.stringify(now) : "");
  };
  const judge = async (): Promise<void> => {
    if (field.value.trim() === "") {
      judged.textContent = "";
      delete place.dataset.verdict;
      delete place.dataset.unread;
      return;
    }
    const typed = field.value.trim();
    const bare = /^[-+−]?[\d.,]+$/.test(typed);
    const answer = (await core()).ask("judge", String(place.dataset.limit), bare ? typed + unitOf(place) : typed);
    if (field.value.trim() !== typed) return; // more was typed meanwhile
    judged.textContent = String(answer.say);
    place.dataset.verdict = answer.verdict;
    if (answer.read === false) place.dataset.unread = "";
    else delete place.dataset.unread;
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
  field.addEventListener("focus", () => field.select());
  place.querySelector(".units")?.addEventListener("change", run);
  word.addEventListener("input", save);
  const restore = (): void => {
    const before = parse<KeptReading>(kept(place.id) ?? "");
    field.value = before?.value ?? "";
    const units = place.querySelector<HTMLSelectElement>(".units");
    if (units && before && [...units.options].some((o) => o.value === before.unit)) units.value = before.unit;
    word.value = before?.word ?? "";
    judged.textContent = before?.judged ?? "";
    if (before?.verdict) place.dataset.verdict = before.verdict;
    else delete place.dataset.verdict;
  };
  // What was typed before this script was in is newer than what was kept.
  if (field.value === "") restore();
  return { id: place.id, restore };
};

/** The unit that a bare number is read in. */
const unitOf = (place: HTMLElement): string =>
  place.querySelector<HTMLSelectElement>(".units")?.value ?? place.querySelector(".unit")?.textContent ?? "";

/** The field that explains a reading out of limits; styles show it only then. */
const wordField = (place: HTMLElement): HTMLInputElement => {
  const word = document.createElement("input");
  word.className = "word";
  word.autocomplete = "off";
  word.placeholder = "Out of limits: why?";
  word.setAttribute("aria-label", "Out of limits: why, or what was done");
  place.append(word);
  return word;
};
