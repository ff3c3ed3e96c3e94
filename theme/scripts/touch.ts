// Fetches the second script: when the page stands and the browser has time, or
// at once where a hand, or the page's address, asks for what is in it. What is
// done before it is in is held, and done again for it.

import { deckKey, kept, keptInTab } from "./store";

/** What a click asks of the second script; everything else the browser does by itself. */
const asking = "main button:not(.pin), .bar button, .bar [data-do]";

/** The kinds of event that are held; keys, where one of the others waits already. */
const held = ["input", "change", "submit", "click", "keydown"];

/** Keys that go through steps and answers, and do nothing else that is missed. */
const walking = /^(Arrow|Page|Escape)/;

/** Waits until the second script is needed. */
export const start = (root: HTMLElement): void => {
  const src = root.dataset.interactive;
  if (!src) return;
  const waiting: [HTMLElement, Event][] = [];
  const hold = (e: Event): void => {
    const at = e.target as HTMLElement;
    const who = e.type === "click" ? at.closest<HTMLElement>(asking) : at;
    if (!who || who.closest("[data-study], [data-record]")) return; // the desk has a script of its own
    if (e instanceof KeyboardEvent && (waiting.length === 0 || !walking.test(e.key))) return;
    if (e.type !== "input" && e.type !== "change") {
      e.preventDefault();
      e.stopPropagation();
    }
    waiting.push([who, e]);
    bring();
  };
  const done = (): void => {
    document.querySelector(".mute")?.remove();
    for (const kind of held) document.removeEventListener(kind, hold, true);
    for (const [who, e] of waiting) again(who, e);
  };
  let asked = false;
  const bring = (): void => {
    if (asked) return;
    asked = true;
    const script = document.createElement("script");
    script.src = src;
    document.addEventListener("interactive", done, { once: true });
    script.onerror = () => {
      asked = false;
      script.remove();
      if (waiting.length > 0) tell();
    };
    document.head.append(script);
  };
  for (const kind of held) document.addEventListener(kind, hold, true);
  for (const kind of ["focusin", "pointerdown", "keydown"]) {
    document.addEventListener(kind, bring, { capture: true, once: true, passive: true });
  }
  if (/\?|^#card$/.test(location.hash) || kept("view") || keptInTab(deckKey)) bring();
  else window.addEventListener("load", () => window.setTimeout(bring));
};

/** Repeats what the reader did before the script was there. */
const again = (who: HTMLElement, e: Event): void => {
  if (e.type === "click") who.click();
  else if (e.type === "submit") (who as HTMLFormElement).requestSubmit();
  else if (e instanceof KeyboardEvent) who.dispatchEvent(new KeyboardEvent(e.type, e as KeyboardEventInit));
  else who.dispatchEvent(new Event(e.type, { bubbles: true }));
};

/** Says that the page does not answer. */
const tell = (): void => {
  if (document.querySelector(".storage.mute")) return;
  const note = document.createElement("p");
  note.className = "storage mute";
  note.setAttribute("role", "alert");
  note.textContent = "This page cannot answer now: its script could not be fetched. What it shows is for the values that stood here first. Load it again when there is signal.";
  document.querySelector("main")?.before(note);
};
