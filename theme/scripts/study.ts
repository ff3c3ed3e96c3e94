// A study deck under way: each card is shown in its own sheet with everything
// else folded away, and asked again by the schedule that the core computes
// (SM-2). deck.ts draws the deck.

import { core } from "./core";
import { deckKey, keepInTab, keepOwn, keptInTab, keptOwn, parse } from "./store";

/** A card as it is kept: the schedule's three numbers and the day it is due. */
interface Kept {
  card: string;
  due: string;
}

/** A deck under way, in this tab: addresses from the site's root. */
export interface Deck {
  left: string[];
  done: number;
}

/** The day a number of days from now, year-month-day. */
export const day = (ahead: number): string => {
  const d = new Date();
  d.setDate(d.getDate() + ahead);
  return `${d.getFullYear()}-${String(d.getMonth() + 1).padStart(2, "0")}-${String(d.getDate()).padStart(2, "0")}`;
};

/** What is kept of a card; undefined where this book has kept nothing that it can read, so that the card counts as new. */
export const keptCard = (address: string): Kept | undefined => readCard(keptOwn(`card:${address}`) ?? "");

/** Reads a card as it is kept. */
export const readCard = (text: string): Kept | undefined => {
  const card = parse<Kept>(text);
  return /^\d+ [\d.]+ \d+$/.test(card?.card ?? "") && /^\d{4}-\d\d-\d\d$/.test(card?.due ?? "") ? card : undefined;
};

/** In a sheet: shows the deck's card alone. */
export const start = (root: HTMLElement): void => {
  const deck = parse<Deck>(keptInTab(deckKey) ?? "");
  const here = `${root.dataset.sheet ?? ""}.html${location.hash}`;
  if (!deck || deck.left[0] !== here) return;
  const card = document.getElementById(location.hash.slice(1));
  if (!card) return;
  document.body.dataset.view = "study";
  shuffle(card);
  card.dataset.current = "";
  card.closest("section[id]:not(.practice)")?.setAttribute("data-holds", "");
  const controls = document.createElement("nav");
  controls.className = "grader";
  controls.setAttribute("aria-label", "Study");
  const where = document.createElement("p");
  where.setAttribute("role", "status");
  where.textContent = `${deck.left.length} ${deck.left.length === 1 ? "card" : "cards"} left, ${deck.done} done.`;
  const stop = button("Stop", () => leave(root));
  stop.className = "stop";
  controls.append(where, stop);
  document.body.append(controls);
  card.addEventListener("book:marked", (e) => {
    const right = (e as CustomEvent<boolean>).detail;
    const grades: [string, number][] = right
      ? [["Knew it", 5], ["With effort", 4], ["Guessed", 3]]
      : [["Next", 2]];
    controls.replaceChildren(where, ...grades.map(([words, grade]) => button(words, () => void gradeCard(deck, here, grade, root))), stop);
    const first = controls.querySelector("button");
    first?.classList.add("next");
    first?.focus();
  }, { once: true });
  window.scrollTo({ top: 0, behavior: "instant" });
};

/** Options that speak of others, or of their order, stay where the author put them. */
const ordered = /\b(both|neither|either|all of|none of|above|below|the first|the second|the last|the others?)\b|^\s*(a|b|c|d)[.)]/i;

/** Puts the options of a question into another order, so that nobody learns a place. */
const shuffle = (card: HTMLElement): void => {
  const options = [...card.querySelectorAll<HTMLElement>(":scope > .option")];
  if (options.length < 2 || options.some((o) => ordered.test(o.textContent ?? ""))) return;
  const after = options.at(-1)?.nextSibling ?? null;
  for (let i = options.length - 1; i > 0; i--) {
    const j = Math.floor(Math.random() * (i + 1));
    [options[i], options[j]] = [options[j] as HTMLElement, options[i] as HTMLElement];
  }
  for (const o of options) card.insertBefore(o, after);
};

/** Keeps the card's next day and goes on. */
const gradeCard = async (deck: Deck, here: string, grade: number, root: HTMLElement): Promise<void> => {
  const it = await core();
  const next = it.ask("schedule", keptCard(here)?.card ?? "", String(grade));
  const card = String(next.query);
  keepOwn(`card:${here}`, JSON.stringify({ card, due: day(Number(card.split(" ")[2])) } satisfies Kept));
  const left = deck.left.slice(1);
  if (next.verdict === "check") left.push(here);
  keepInTab(deckKey, JSON.stringify({ left, done: deck.done + 1 } satisfies Deck));
  const to = left[0];
  if (to === undefined) leave(root);
  else if (to === here) location.reload();
  else if (to.split("#")[0] === here.split("#")[0]) {
    location.hash = String(to.split("#")[1]);
    location.reload();
  } else location.href = `${root.dataset.root ?? ""}${to}`;
};

const leave = (root: HTMLElement): void => {
  keepInTab(deckKey, "");
  location.href = `${root.dataset.root ?? ""}study.html`;
};

const button = (words: string, act: () => void): HTMLButtonElement => {
  const b = document.createElement("button");
  b.type = "button";
  b.textContent = words;
  b.addEventListener("click", act);
  return b;
};
