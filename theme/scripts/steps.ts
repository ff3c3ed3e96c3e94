// One step at a time when asked. The step view is the sheet itself with
// everything else folded away, so there is one document and one set of ticks.

import { keep, kept } from "./store";

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
    window.addEventListener("hashchange", () => this.follow());
  }

  /** The screen that the page's address names, or that holds what it names. */
  named(): HTMLElement | undefined {
    const at = target();
    return this.screens.find((s) => s.contains(at));
  }

  /** Shows a screen, else the one where one stopped. */
  enter(screen = this.screens.find((s) => s.id === kept("at"))): void {
    document.body.dataset.view = "step";
    this.controls.hidden = false;
    keep("view", "steps");
    this.show(screen ? this.screens.indexOf(screen) : 0);
    void this.stayAwake();
  }

  /** Follows a link within the sheet: to another screen, or out of the step view to what no screen holds. */
  private follow(): void {
    const at = target();
    if (document.body.dataset.view !== "step" || !at) return;
    const screen = this.named();
    if (screen) this.show(this.screens.indexOf(screen));
    else this.leave();
    at.scrollIntoView();
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
    history.replaceState(history.state, "", `#${screen.id}`);
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
