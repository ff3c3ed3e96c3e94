// Steps: ticks that survive a reload, and one step at a time when asked. The
// step view is the sheet itself with everything else folded away, so there is
// one document and one set of ticks.

import { keep, kept, onChange } from "./store";

/** Makes ticks last and the step view work. */
export const start = (root: HTMLElement): void => {
  for (const step of root.querySelectorAll<HTMLElement>(".step")) tickLasts(step);
  onChange((item, value) => {
    const tick = document.getElementById(item)?.querySelector<HTMLInputElement>(".tick");
    if (tick) tick.checked = value === "done";
  });
  const open = root.querySelector<HTMLButtonElement>("[data-do=steps]");
  const screens = screensOf(root);
  if (!open || screens.length === 0) return;
  const view = new StepView(root, screens);
  open.hidden = false;
  open.addEventListener("click", () => view.enter());
  if (kept("view") === "steps") view.enter();
};

const tickLasts = (step: HTMLElement): void => {
  const tick = step.querySelector<HTMLInputElement>(".tick");
  if (!tick) return;
  tick.checked = kept(step.id) === "done";
  tick.addEventListener("change", () => keep(step.id, tick.checked ? "done" : ""));
};

/** What the step view goes through: what to know first, each step, then the proof and the hand-over. */
const screensOf = (root: HTMLElement): HTMLElement[] => {
  const before = root.querySelector<HTMLElement>("#before-you-start");
  const steps = [...root.querySelectorAll<HTMLElement>(".step")];
  const after = [...root.querySelectorAll<HTMLElement>("#prove-it, #hand-over")];
  return steps.length === 0 ? [] : [...(before ? [before] : []), ...steps, ...after];
};

/** The step view of one sheet. */
class StepView {
  private at = 0;
  private lock: WakeLockSentinel | undefined;
  private readonly controls: HTMLElement;
  private readonly back: HTMLButtonElement;
  private readonly next: HTMLButtonElement;
  private readonly where: HTMLElement;

  constructor(
    private readonly root: HTMLElement,
    private readonly screens: HTMLElement[],
  ) {
    this.controls = document.createElement("nav");
    this.controls.className = "stepper";
    this.controls.setAttribute("aria-label", "Step by step");
    this.controls.hidden = true;
    this.back = this.button("Back", () => this.show(this.at - 1));
    const whole = this.button("Whole sheet", () => this.leave());
    this.next = this.button("Next", () => this.forward());
    this.where = document.createElement("p");
    this.where.setAttribute("role", "status");
    const middle = document.createElement("div");
    middle.append(this.where, whole);
    this.controls.append(this.back, middle, this.next);
    document.body.append(this.controls);
    document.addEventListener("keydown", (e) => this.key(e));
    document.addEventListener("visibilitychange", () => void this.stayAwake());
  }

  /** Shows the screen where one stopped. */
  enter(): void {
    document.body.dataset.view = "step";
    this.controls.hidden = false;
    keep("view", "steps");
    const last = this.screens.findIndex((s) => s.id === kept("at"));
    this.show(Math.max(0, last));
    void this.stayAwake();
  }

  /** Back to the whole sheet, at the step where one was. */
  private leave(): void {
    const screen = this.screens[this.at];
    delete document.body.dataset.view;
    this.controls.hidden = true;
    keep("view", "");
    for (const s of this.screens) delete s.dataset.current;
    this.root.querySelectorAll(".guard").forEach((g) => g.remove());
    void this.lock?.release();
    this.lock = undefined;
    screen?.scrollIntoView();
  }

  /** Goes on; at the last screen back to the whole sheet. */
  private forward(): void {
    if (this.at + 1 < this.screens.length) this.show(this.at + 1);
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
    this.back.disabled = at === 0;
    this.next.textContent = at + 1 < this.screens.length ? "Next" : "Done";
    this.where.textContent = this.name(screen);
    window.scrollTo({ top: 0, behavior: "instant" });
    const heading = screen.querySelector<HTMLElement>("h2, .place a");
    heading?.setAttribute("tabindex", "-1");
    heading?.focus({ preventScroll: true });
  }

  /** Where one is: "Step 3 of 14", or the section's heading. */
  private name(screen: HTMLElement): string {
    const steps = this.screens.filter((s) => s.classList.contains("step"));
    const n = steps.indexOf(screen);
    return n < 0 ? (screen.querySelector("h2")?.textContent ?? "") : `Step ${n + 1} of ${steps.length}`;
  }

  /** Puts the messages that guard a step, but stand before the steps, on the step's own screen. */
  private guard(screen: HTMLElement): void {
    this.root.querySelectorAll(".guard").forEach((g) => g.remove());
    for (const id of (screen.dataset.guards ?? "").split(" ").filter(Boolean).reverse()) {
      const message = document.getElementById(id);
      if (!message || screen.contains(message)) continue;
      const copy = message.cloneNode(true) as HTMLElement;
      copy.classList.add("guard");
      copy.removeAttribute("id");
      screen.querySelector(".what")?.prepend(copy);
    }
  }

  private key(e: KeyboardEvent): void {
    if (document.body.dataset.view !== "step" || e.altKey || e.ctrlKey || e.metaKey) return;
    if ((e.target as HTMLElement).closest("input:not([type=checkbox]), select, textarea")) return;
    const go: Record<string, () => void> = {
      ArrowRight: () => this.forward(),
      PageDown: () => this.forward(),
      ArrowLeft: () => this.show(this.at - 1),
      PageUp: () => this.show(this.at - 1),
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

  private button(words: string, act: () => void): HTMLButtonElement {
    const b = document.createElement("button");
    b.type = "button";
    b.textContent = words;
    b.addEventListener("click", act);
    return b;
  }
}
