// Calculators and wiring drawings: the core is fetched at first touch, then
// every change computes.

import { core, type Core } from "./core";
import type { Answer } from "./protocol";

/** Makes every calculator in the page live. */
export const start = (root: HTMLElement): void => {
  const all = [...root.querySelectorAll<HTMLElement>(".calculator, .wiring")];
  for (const section of all) enliven(section);
  fromAddress(all);
  window.addEventListener("hashchange", () => fromAddress(all));
};

/** The words of a form as a query: "current=8A&length=4m". */
const queryOf = (form: HTMLFormElement): string => {
  const pairs: string[] = [];
  for (const field of form.querySelectorAll<HTMLInputElement | HTMLSelectElement>("[name]")) {
    const unit = form.querySelector<HTMLSelectElement>(`#${CSS.escape(field.id)}-u`);
    let value = field.value.trim();
    if (unit && /^[-+−]?[\d.,]+([eE][-+]?\d+)?$|^(\d+[ -])?\d+\/\d+$/.test(value)) value += unit.value;
    pairs.push(`${field.name}=${encodeURIComponent(value)}`);
  }
  return pairs.join("&");
};

const slice = 6; // ms of refining at a time, so that a key is answered within one frame

const enliven = (section: HTMLElement): void => {
  const form = section.querySelector("form") as HTMLFormElement;
  let turn = 0;
  const run = async (announce: boolean): Promise<void> => {
    const mine = ++turn;
    section.dataset.state = "waiting";
    try {
      const it = await core();
      if (mine !== turn) return;
      const query = queryOf(form);
      const question = section.dataset.circuit === undefined ? "compute" : "circuit";
      const block = section.dataset.block === undefined ? "" : `&block=${encodeURIComponent(section.dataset.block)}`;
      const answer = it.ask(question, section.dataset.circuit ?? section.dataset.calculator ?? "", query + block);
      show(section, answer, query, announce);
      if (answer.more) refine(section, it, query, () => mine === turn);
    } catch (e) {
      delete section.dataset.state;
      say(section, `Nothing can be computed now: ${e instanceof Error ? e.message : String(e)}. The values shown stay right for what stood here first.`);
    }
  };
  form.addEventListener("focusin", () => void core().catch(() => undefined), { once: true });
  form.addEventListener("pointerenter", () => void core().catch(() => undefined), { once: true });
  form.addEventListener("input", () => void run(true));
  form.addEventListener("submit", (e) => {
    e.preventDefault();
    void run(true);
  });
  for (const unit of form.querySelectorAll<HTMLSelectElement>(".units")) {
    // A new unit means the number as it stands in that unit: 4 m becomes 4 ft.
    unit.addEventListener("change", () => void run(true));
  }
  // A touch selects the whole number, so that typing replaces it.
  form.addEventListener("focusin", (e) => {
    if (e.target instanceof HTMLInputElement) e.target.select();
  });
  section.querySelector(".share")?.addEventListener("click", (e) => void share(section, e.currentTarget as HTMLElement));
  section.addEventListener("book:fill", () => void run(false));
};

/** Makes a first answer better between the reader's keys, until it is final or another is asked for. */
const refine = (section: HTMLElement, it: Core, query: string, wanted: () => boolean): void => {
  window.setTimeout(() => {
    for (const end = performance.now() + slice; wanted(); ) {
      const answer = it.ask("refine", section.dataset.calculator ?? "", query);
      if (!answer.more) return show(section, answer, query, false);
      if (performance.now() >= end) return refine(section, it, query, wanted);
    }
  });
};

/** Hands on the page's address with the values in it: by the system's own means, else by the clipboard. */
const share = async (section: HTMLElement, button: HTMLElement): Promise<void> => {
  const form = section.querySelector("form") as HTMLFormElement;
  const url = `${location.href.split("#")[0]}#${section.id}?${queryOf(form)}`;
  const title = section.querySelector("h2, h3")?.textContent ?? document.title;
  try {
    if (navigator.share) {
      await navigator.share({ title, url });
      return;
    }
    await navigator.clipboard.writeText(url);
    button.textContent = "Link copied";
  } catch (e) {
    if (e instanceof DOMException && e.name === "AbortError") return; // the reader thought better of it
    history.replaceState(history.state, "", url);
    button.textContent = "The link stands in the address bar";
  }
};

let speaking = 0;

/** Says the outcome in the line that stays in sight, but not at every keystroke: a screen reader speaks it. */
const say = (section: HTMLElement, words: string): void => {
  const place = section.querySelector<HTMLElement>(".sum");
  window.clearTimeout(speaking);
  speaking = window.setTimeout(() => {
    if (place) place.textContent = words;
  }, 200);
};

/** Shows a result, or each error beside its field. */
const show = (section: HTMLElement, answer: Answer, query: string, announce: boolean): void => {
  delete section.dataset.state;
  const place = section.querySelector(".answer") as HTMLElement;
  const form = section.querySelector("form") as HTMLFormElement;
  for (const field of form.querySelectorAll<HTMLElement>("[name]")) {
    field.removeAttribute("aria-invalid");
    const error = document.getElementById(`${field.id}-e`);
    if (error) error.textContent = "";
  }
  if (answer.ok) {
    const open = place.querySelector<HTMLDetailsElement>("details.working")?.open;
    place.innerHTML = String(answer.html);
    for (const link of place.querySelectorAll<HTMLAnchorElement>("a[data-page]")) {
      link.href = `${document.documentElement.dataset.root ?? ""}${String(link.dataset.page)}`; // the core does not know the page
    }
    const working = place.querySelector<HTMLDetailsElement>("details.working");
    if (working && open) working.open = true;
    delete place.dataset.stale;
    display(section, place);
    if (announce) {
      say(section, answer.say ?? place.querySelector(".verdict")?.textContent ?? "");
      history.replaceState(history.state, "", `#${section.id}?${query}`);
    }
    return;
  }
  place.dataset.stale = "";
  for (const fault of answer.faults ?? []) mark(form, fault.input, fault.text);
  const named = (answer.faults ?? []).map((f) => f.input).filter(Boolean);
  if (announce) say(section, `Not computed: ${named.length > 0 ? `correct ${named.join(", ")}` : "correct the marked field"}.`);
};

/** Shows the decisive output on the display above the fields. */
const display = (section: HTMLElement, answer: HTMLElement): void => {
  const shown = section.querySelector<HTMLElement>(".decisive");
  const value = shown && answer.querySelector(`[data-output="${CSS.escape(shown.dataset.shows ?? "")}"]`);
  const place = shown?.querySelector("b");
  if (place) place.textContent = value?.textContent ?? "–";
};

/** Puts an error beside the field that it is about, else beside the first. */
const mark = (form: HTMLFormElement, input: string, words: string): void => {
  const field =
    form.querySelector<HTMLElement>(`[name="${CSS.escape(input)}"]`) ?? (form.querySelector("[name]") as HTMLElement);
  field.setAttribute("aria-invalid", "true");
  field.closest("details")?.setAttribute("open", "");
  const error = document.getElementById(`${field.id}-e`);
  if (error) error.textContent = words;
};

/** Fills a calculator from the address: #calculator-1?current=8A&length=4m. */
const fromAddress = (all: HTMLElement[]): void => {
  const [id, query] = location.hash.slice(1).split("?", 2);
  const section = all.find((s) => s.id === id);
  if (!section || query === undefined) return;
  const form = section.querySelector("form") as HTMLFormElement;
  for (const pair of query.split("&")) {
    const [name = "", raw = ""] = pair.split("=", 2);
    const field = form.querySelector<HTMLInputElement | HTMLSelectElement>(`[name="${CSS.escape(decode(name))}"]`);
    if (field) fill(form, field, decode(raw));
  }
  section.scrollIntoView();
  section.dispatchEvent(new Event("book:fill"));
};

const decode = (s: string): string => {
  try {
    return decodeURIComponent(s);
  } catch {
    return s;
  }
};

/** Sets a field and its unit choice from a value such as "8 A". */
const fill = (form: HTMLFormElement, field: HTMLInputElement | HTMLSelectElement, value: string): void => {
  const unit = form.querySelector<HTMLSelectElement>(`#${CSS.escape(field.id)}-u`);
  const parts = /^\s*([-+−]?[\d.]+(?:[eE][-+]?\d+)?|\d\/0)\s*(\S+)\s*$/.exec(value);
  if (unit && parts && [...unit.options].some((o) => o.value === parts[2])) {
    field.value = String(parts[1]);
    unit.value = String(parts[2]);
    return;
  }
  if (field instanceof HTMLSelectElement) {
    const plain = parts && ![...field.options].some((o) => o.value === value) ? String(parts[1]) : value;
    field.value = plain;
    return;
  }
  field.value = value;
};
