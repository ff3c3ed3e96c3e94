// Study: a deck drawn from the list on the study page, each card shown in its
// own sheet with everything else folded away, and asked again by the schedule
// that the core computes (SM-2).

import { core } from "./core";
import { keepOwn, keptOwn, keptOwnAll, parse } from "./store";

/** A card as it is kept: the schedule's three numbers and the day it is due. */
interface Kept {
  card: string;
  due: string;
}

/** A deck under way, in this tab: addresses from the site's root. */
interface Deck {
  left: string[];
  done: number;
}

const deckKey = "study-deck";

/** Fills the study page, and carries on a deck in the page of a sheet. */
export const start = (root: HTMLElement): void => {
  const page = root.querySelector<HTMLElement>("[data-study]");
  if (page) studyPage(page);
  else carryOn(root);
};

/** The day so many days from now, year-month-day. */
const day = (ahead: number): string => {
  const d = new Date();
  d.setDate(d.getDate() + ahead);
  return `${d.getFullYear()}-${String(d.getMonth() + 1).padStart(2, "0")}-${String(d.getDate()).padStart(2, "0")}`;
};

const keptCard = (address: string): Kept | undefined => parse<Kept>(keptOwn(`card:${address}`) ?? "");

const studyPage = (page: HTMLElement): void => {
  const cards = [...page.querySelectorAll<HTMLElement>("[data-card]")];
  const form = page.querySelector("form") as HTMLFormElement;
  const said = page.querySelector("[data-said]") as HTMLElement;
  form.hidden = false;
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
    sessionStorage.setItem(deckKey, JSON.stringify({ left, done: 0 } satisfies Deck));
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

const saveCards = (): void => {
  const blob = new Blob([JSON.stringify({ format: "baybook-study-1", cards: Object.fromEntries(keptOwnAll("card:")) }, null, 2)]);
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = "study.json";
  link.click();
};

const loadCards = async (e: Event, said: HTMLElement, count: () => void): Promise<void> => {
  const file = (e.target as HTMLInputElement).files?.[0];
  if (!file) return;
  const read = parse<{ format?: string; cards?: Record<string, unknown> }>(await file.text());
  if (read?.format !== "baybook-study-1" || typeof read.cards !== "object") {
    said.textContent = `${file.name} holds no study progress saved by this book.`;
    return;
  }
  for (const [address, value] of Object.entries(read.cards)) {
    if (typeof value === "string") keepOwn(`card:${address}`, value);
  }
  count();
};

/** In a sheet: shows the deck's card alone. */
const carryOn = (root: HTMLElement): void => {
  const deck = parse<Deck>(sessionStorage.getItem(deckKey) ?? "");
  const here = `${root.dataset.sheet ?? ""}.html${location.hash}`;
  if (!deck || deck.left[0] !== here) return;
  const card = document.getElementById(location.hash.slice(1));
  if (!card) return;
  document.body.dataset.view = "study";
  card.dataset.current = "";
  card.closest("section[id]:not(.practice)")?.setAttribute("data-holds", "");
  const controls = document.createElement("nav");
  controls.className = "grader";
  controls.setAttribute("aria-label", "Study");
  const where = document.createElement("p");
  where.setAttribute("role", "status");
  where.textContent = `${deck.left.length} cards left.`;
  const stop = button("Stop", () => leave(root));
  controls.append(where, stop);
  document.body.append(controls);
  card.addEventListener("book:marked", (e) => {
    const right = (e as CustomEvent<boolean>).detail;
    const grades: [string, number][] = right
      ? [["Knew it", 5], ["With effort", 4], ["Guessed", 3]]
      : [["Next", 2]];
    controls.replaceChildren(where, ...grades.map(([words, grade]) => button(words, () => void grade1(deck, here, grade, root))), stop);
    controls.querySelector("button")?.focus();
  }, { once: true });
  window.scrollTo(0, 0);
};

/** Keeps the card's next day and goes on. */
const grade1 = async (deck: Deck, here: string, grade: number, root: HTMLElement): Promise<void> => {
  const it = await core();
  const next = it.ask("schedule", keptCard(here)?.card ?? "", String(grade));
  const card = String(next.query);
  keepOwn(`card:${here}`, JSON.stringify({ card, due: day(Number(card.split(" ")[2])) } satisfies Kept));
  const left = deck.left.slice(1);
  if (next.verdict === "check") left.push(here);
  sessionStorage.setItem(deckKey, JSON.stringify({ left, done: deck.done + 1 } satisfies Deck));
  const to = left[0];
  if (to === undefined) leave(root);
  else if (to === here) location.reload();
  else if (to.split("#")[0] === here.split("#")[0]) {
    location.hash = String(to.split("#")[1]);
    location.reload();
  } else location.href = `${root.dataset.root ?? ""}${to}`;
};

const leave = (root: HTMLElement): void => {
  sessionStorage.removeItem(deckKey);
  location.href = `${root.dataset.root ?? ""}study.html`;
};

const button = (words: string, act: () => void): HTMLButtonElement => {
  const b = document.createElement("button");
  b.type = "button";
  b.textContent = words;
  b.addEventListener("click", act);
  return b;
};
