// The search field: the core answers while a person types.

import { core, fromScript } from "./core";
import { lists } from "./shelf";

let loading: Promise<boolean> | undefined;

/** Fetches the index once and hands it to the core. */
const index = (): Promise<boolean> => {
  loading ??= (async () => {
    const { index: url, indexScript } = document.documentElement.dataset;
    const bytes =
      location.protocol === "file:" ? await fromScript(String(indexScript)) : await (await fetch(String(url))).arrayBuffer();
    return (await core()).loadIndex(new Uint8Array(bytes));
  })().catch((e: unknown) => {
    loading = undefined;
    throw e;
  });
  return loading;
};

/** Makes the search field answer. */
export const start = (root: HTMLElement): void => {
  const form = root.querySelector<HTMLFormElement>("form.find");
  const field = form?.querySelector<HTMLInputElement>("input");
  const hits = form?.querySelector<HTMLElement>(".hits");
  const said = form?.querySelector<HTMLElement>(".said");
  if (!form || !field || !hits || !said) return;
  const close = (): void => {
    hits.hidden = true;
    hits.replaceChildren();
  };
  /** Before anything is typed: the sheets that the reader may want again. */
  const before = (): void => {
    const shelves = lists(root);
    hits.replaceChildren(...shelves);
    hits.hidden = shelves.length === 0;
  };
  let turn = 0;
  const run = async (): Promise<void> => {
    const mine = ++turn;
    const words = field.value;
    if (words.trim() === "") return before();
    try {
      await index();
      const it = await core();
      if (mine !== turn) return;
      const answer = it.ask("find", words, String(document.documentElement.dataset.root));
      hits.innerHTML = String(answer.html);
      hits.hidden = false;
      said.textContent = String(answer.say);
    } catch (e) {
      hits.textContent = `Nothing can be found now (${e instanceof Error ? e.message : String(e)}). The A to Z page lists every sheet.`;
      hits.hidden = false;
    }
  };
  const ready = (): void => {
    void index().catch(() => undefined);
    if (field.value.trim() === "") before();
  };
  field.addEventListener("focus", ready);
  if (document.activeElement === field) ready();
  field.addEventListener("input", () => void run());
  form.addEventListener("submit", (e) => {
    e.preventDefault();
    const first = hits.querySelector<HTMLAnchorElement>("a");
    if (first) first.click();
    else void run();
  });
  form.addEventListener("keydown", (e) => {
    if (e.key === "Escape") {
      close();
      field.focus();
    }
    if (e.key === "ArrowDown" || e.key === "ArrowUp") move(e, field, hits);
  });
  hits.addEventListener("click", (e) => {
    if ((e.target as HTMLElement).closest("a")) window.setTimeout(close);
  });
  document.addEventListener("click", (e) => {
    if (!form.contains(e.target as Node)) close();
  });
  root.querySelector<HTMLElement>("[data-do=find]")?.addEventListener("click", (e) => {
    e.preventDefault();
    field.focus();
    field.select();
  });
};

/** Arrow keys move between the field and the answers. */
const move = (e: KeyboardEvent, field: HTMLElement, hits: HTMLElement): void => {
  const stops = [field, ...hits.querySelectorAll<HTMLElement>("a")];
  const at = stops.indexOf(document.activeElement as HTMLElement);
  const next = stops[at + (e.key === "ArrowDown" ? 1 : -1)];
  if (next) {
    e.preventDefault();
    next.focus();
  }
};
