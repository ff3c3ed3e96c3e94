// The study page: decks drawn from its list of cards, and the progress kept on
// the device.

import { loadJSON, saveJSON } from "./files";
import { deckKey, keepInTab, keepOwn, keptOwnAll } from "./store";
import { type Deck, day, keptCard, readCard } from "./study";

/** Fills the study page. */
export const start = (root: HTMLElement): void => {
  const page = root.querySelector<HTMLElement>("[data-study]");
  if (!page) return;
  const cards = [...page.querySelectorAll<HTMLElement>("[data-card]")];
  const form = page.querySelector("form") as HTMLFormElement;
  const said = page.querySelector("[data-said]") as HTMLElement;
  const chosen = (): HTMLElement[] => {
    const { area, skill } = Object.fromEntries(new FormData(form)) as Record<string, string>;
    return cards.filter((c) => (!area || c.dataset.area === area) && (!skill || c.dataset.skill === skill));
  };
  const due = (): string[] => {
    const now = day(0);
    const all = chosen().map((c) => String(c.dataset.card));
    const old = all.filter((a) => (keptCard(a)?.due ?? "9") <= now);
    const fresh = all.filter((a) => !keptCard(a));
    return [...old, ...fresh.slice(0, Math.max(0, 20 - old.length))];
  };
  const count = (): void => {
    const all = chosen();
    const known = all.filter((c) => keptCard(String(c.dataset.card))).length;
    said.textContent = `${all.length} cards, ${known} met so far, ${due().length} for today.`;
    progress(page);
  };
  form.addEventListener("change", count);
  form.addEventListener("submit", (e) => {
    e.preventDefault();
    const left = due();
    if (left.length === 0) {
      said.textContent = "Nothing is due today in this choice. Come back tomorrow, or choose another area.";
      return;
    }
    keepInTab(deckKey, JSON.stringify({ left, done: 0 } satisfies Deck));
    location.href = `${document.documentElement.dataset.root ?? ""}${left[0]}`;
  });
  page.querySelector("[data-do=save]")?.addEventListener("click", saveCards);
  page.querySelector<HTMLInputElement>("[data-do=load]")?.addEventListener("change", (e) => void loadCards(e, said, count));
  count();
};

/** Shows beside each sheet how many of its cards are known. */
const progress = (page: HTMLElement): void => {
  for (const group of page.querySelectorAll<HTMLElement>("[data-group]")) {
    const all = [...group.querySelectorAll<HTMLElement>("[data-card]")];
    const known = all.filter((c) => Number(keptCard(String(c.dataset.card))?.card.split(" ")[0] ?? 0) >= 2).length;
    const place = group.querySelector("[data-progress]");
    if (place) place.textContent = `${known} of ${all.length} known`;
  }
};

const saveCards = (): void =>
  saveJSON("study.json", { format: "baybook-study-1", cards: Object.fromEntries(keptOwnAll("card:")) });

const loadCards = async (e: Event, said: HTMLElement, count: () => void): Promise<void> => {
  const file = await loadJSON<{ format?: string; cards?: Record<string, unknown> }>(e);
  if (!file) return;
  const read = file.value;
  if (read?.format !== "baybook-study-1" || typeof read.cards !== "object" || read.cards === null) {
    said.textContent = `${file.name} holds no study progress saved by this book.`;
    return;
  }
  let refused = 0;
  for (const [address, value] of Object.entries(read.cards)) {
    if (typeof value === "string" && readCard(value)) keepOwn(`card:${address}`, value);
    else refused++;
  }
  count();
  if (refused > 0) said.textContent += ` ${refused} cards of ${file.name} could not be read and were left out.`;
};
