// One step at a time when asked. The step view is the sheet itself with
// everything else folded away, so there is one document and one set of ticks.

import { keep, kept, onChange } from "./store";

/** Makes the step view work. */
export const start = (root: HTMLElement): void => {
  const open = root.querySelector<HTMLButtonElement>("[data-do=steps]");
  const screens = screensOf(root);
  if (!open || screens.length === 0) return;
  const view = new StepView(root, screens);
  open.addEventListener("click", () => view.enter());
  // An address that names another part of the sheet is answered there.
  if (kept("view") === "steps" && (view.named() || !target())) view.enter(view.named());
};

/** What the page's address names in it. */
const target = (): HTMLElement | null => document.getElementById(location.hash.slice(1).split("?", 1)[0] ?? "");

/** What the step view goes through: what to know first, each step, then the proof and the hand-over. */
const screensOf = (root: HTMLElement): HTMLElement[] => {
  const before = root.querySelector<HTMLElement>('[data-part="preparation"]');
  const steps = [...root.querySelectorAll<HTMLElement>(".step")];
  const after = [...root.querySelectorAll<HTMLElement>('[data-part="proof"], [data-part="hand-over"]')];
  return steps.length === 0 ? [] : [...(before ? [before] : []), ...steps, ...after];
};

/** What the step view keeps in its history entries: the screen's name. */
interface Entry {
  screen?: string;
}

/** The step view of one sheet. */
class StepView {
  private at = 0;
  private lock: WakeLockSentinel | undefined;
  private readonly picker = bar("picker", "Steps");
  private readonly stepper = bar("stepper", "Step by step");
  private readonly picks: HTMLButtonElement[];
  private readonly back = button("← Back", () => this.goBack());
  private readonly next = button("", () => this.done());
  private readonly where = document.createElement("p");

  constructor(
    private readonly root: HTMLElement,
    private readonly screens: HTMLElement[],
  ) {
    const whole = button("×", () => this.leave());
    whole.className = "whole";
    whole.setAttribute("aria-label", "Whole sheet");
    this.picks = screens.map((screen, i) => {
      const pick = button(short(screen), () => this.go(i));
      if (screen.classList.contains("step")) pick.setAttribute("aria-label", `Step ${short(screen)}`);
      else pick.className = "part";
      return pick;
    });
    const picks = document.createElement("div");
    picks.className = "picks";
    picks.append(...this.picks);
    this.picker.append(whole, picks);
    this.next.className = "next";
    this.where.className = "said";
    this.where.setAttribute("role", "status");
    this.stepper.append(this.back, this.next, this.where);
    document.body.append(this.picker, this.stepper);
    document.addEventListener("keydown", (e) => this.key(e));
    document.addEventListener("visibilitychange", () => void this.stayAwake());
    window.addEventListener("hashchange", () => this.follow());
    window.addEventListener("popstate", (e) => this.turn(e.state as Entry | null));
    root.addEventListener("change", () => this.marks());
    onChange(() => this.marks());
  }

  /** The screen that the page's address names, or that holds what it names. */
  named(): HTMLElement | undefined {
    const at = target();
    return this.screens.find((s) => s.contains(at));
  }

  /** Shows a screen, or the one where the reader stopped. */
  enter(screen = this.screens.find((s) => s.id === kept("at"))): void {
    document.body.dataset.view = "step";
    this.picker.hidden = this.stepper.hidden = false;
    keep("view", "steps");
    this.show(screen ? this.screens.indexOf(screen) : 0);
    history.replaceState({ screen: this.screens[this.at]?.id } satisfies Entry, "");
    void this.stayAwake();
  }

  /** Goes to a screen; the browser's Back button leads to the one before. */
  private go(at: number): void {
    const screen = this.screens[at];
    if (!screen || at === this.at) return;
    history.pushState({ screen: screen.id } satisfies Entry, "", `#${screen.id}`);
    this.show(at);
  }

  /** One screen back, in the order of the sheet. */
  private goBack(): void {
    this.go(this.at - 1);
  }

  /** Follows the browser's Back and Forward buttons. */
  private turn(entry: Entry | null): void {
    const screen = this.screens.find((s) => s.id === entry?.screen);
    if (document.body.dataset.view === "step" && screen) this.show(this.screens.indexOf(screen));
  }

  /** Follows a link within the sheet: to another screen, or out of the step view to what no screen holds. */
  private follow(): void {
    const at = target();
    if (document.body.dataset.view !== "step" || !at) return;
    const screen = this.named();
    if (screen) this.show(this.screens.indexOf(screen));
    else this.leave();
    at.scrollIntoView({ behavior: "instant" });
  }

  /** Back to the whole sheet, at the step that was shown. */
  private leave(): void {
    const screen = this.screens[this.at];
    delete document.body.dataset.view;
    this.picker.hidden = this.stepper.hidden = true;
    keep("view", "");
    for (const s of this.screens) delete s.dataset.current;
    this.root.querySelectorAll(".guard").forEach((g) => g.remove());
    void this.lock?.release();
    this.lock = undefined;
    screen?.scrollIntoView({ behavior: "instant" });
  }

  /** Ticks the step, unless a reading in it is open, and goes on. */
  private done(): void {
    const tick = this.screens[this.at]?.querySelector<HTMLInputElement>(":scope > .place .tick");
    if (tick && !tick.checked) tick.click();
    if (tick && !tick.checked) return; // ticks.ts asks for a word on a reading out of its limits
    this.forward();
  }

  /** Goes on; at the last screen back to the whole sheet. */
  private forward(): void {
    if (this.at + 1 < this.screens.length) this.go(this.at + 1);
    else this.leave();
  }

  private show(at: number): void {
    const screen = this.screens[at];
    if (!screen) return;
    this.at = at;
    for (const s of this.screens) delete s.dataset.current;
    screen.dataset.current = "";
    this.guard(screen);
    keep("at", screen.id);
    history.replaceState(history.state, "", `#${screen.id}`);
    this.back.disabled = at === 0;
    const following = this.screens[at + 1];
    const isStep = screen.classList.contains("step");
    this.next.replaceChildren(
      span(!following ? "Done" : isStep ? "Done, next" : "Next"),
      span(following ? `${short(following)} →` : ""),
    );
    this.where.textContent = this.name(screen);
    this.marks();
    this.picks[at]?.scrollIntoView({ inline: "center", block: "nearest", behavior: "instant" });
    window.scrollTo({ top: 0, behavior: "instant" });
    const heading = screen.querySelector<HTMLElement>("h2, .what > p");
    heading?.setAttribute("tabindex", "-1");
    heading?.focus({ preventScroll: true });
  }

  /** Shows in the picker which step is open and which are done. */
  private marks(): void {
    this.picks.forEach((pick, i) => {
      if (i === this.at) pick.setAttribute("aria-current", "step");
      else pick.removeAttribute("aria-current");
      if (this.screens[i]?.querySelector<HTMLInputElement>(":scope > .place .tick")?.checked) pick.dataset.done = "";
      else delete pick.dataset.done;
    });
  }

  /** Where the reader is: "Step 3 of 14", or the section's heading. */
  private name(screen: HTMLElement): string {
    const steps = this.screens.filter((s) => s.classList.contains("step"));
    const n = steps.indexOf(screen);
    return n < 0 ? (screen.querySelector("h2")?.textContent ?? "") : `Step ${n + 1} of ${steps.length}`;
  }

  /**
   * Puts the messages that guard a step, but stand before the steps, on the
   * step's own screen: in full where it is the first that they guard, as a
   * line that opens on later ones.
   */
  private guard(screen: HTMLElement): void {
    this.root.querySelectorAll(".guard").forEach((g) => g.remove());
    for (const id of guards(screen).reverse()) {
      const message = document.getElementById(id);
      if (!message || screen.contains(message)) continue;
      const copy = message.cloneNode(true) as HTMLElement;
      copy.removeAttribute("id");
      const first = this.screens.find((s) => guards(s).includes(id)) === screen;
      const shown = first ? copy : folded(copy);
      shown.classList.add("guard");
      screen.querySelector(".what")?.prepend(shown);
    }
  }

  private key(e: KeyboardEvent): void {
    if (document.body.dataset.view !== "step" || e.altKey || e.ctrlKey || e.metaKey) return;
    if ((e.target as HTMLElement).closest("input:not([type=checkbox]), select, textarea")) return;
    const go: Record<string, () => void> = {
      ArrowRight: () => this.forward(),
      PageDown: () => this.forward(),
      ArrowLeft: () => this.goBack(),
      PageUp: () => this.goBack(),
      Escape: () => this.leave(),
    };
    const act = go[e.key];
    if (!act) return;
    e.preventDefault();
    act();
  }

  /** Keeps the screen on while the step view is seen, where the browser allows it. */
  private async stayAwake(): Promise<void> {
    if (document.body.dataset.view !== "step" || document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
    try {
      this.lock = await navigator.wakeLock.request("screen");
    } catch {
      // Refused (battery saver, no permission): the screen goes dark as usual.
    }
  }
}

/** The messages that guard a screen and stand elsewhere, by name. */
const guards = (screen: HTMLElement): string[] => (screen.dataset.guards ?? "").split(" ").filter(Boolean);

/** A message as one line that opens. */
const folded = (message: HTMLElement): HTMLElement => {
  const details = document.createElement("details");
  details.className = "reminder";
  details.dataset.word = message.dataset.word;
  const summary = document.createElement("summary");
  const word = document.createElement("b");
  word.textContent = message.querySelector(".signal strong")?.textContent ?? "";
  summary.append(word, " ", [...message.querySelectorAll(".titles")].map((t) => t.textContent).join(" · "));
  details.append(summary, message);
  return details;
};

/** What the picker calls a screen: the step's number, or the first word of the section's heading. */
const short = (screen: HTMLElement): string =>
  screen.id.startsWith("step-") ? screen.id.slice("step-".length) : (screen.querySelector("h2")?.textContent ?? "").split(" ", 1)[0] ?? "";

const bar = (name: string, label: string): HTMLElement => {
  const nav = document.createElement("nav");
  nav.className = name;
  nav.setAttribute("aria-label", label);
  nav.hidden = true;
  return nav;
};

const span = (words: string): HTMLElement => {
  const s = document.createElement("span");
  s.textContent = words;
  return s;
};

const button = (words: string, act: () => void): HTMLButtonElement => {
  const b = document.createElement("button");
  b.type = "button";
  b.textContent = words;
  b.addEventListener("click", act);
  return b;
};
