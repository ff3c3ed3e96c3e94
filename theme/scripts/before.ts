// The page "Before I do this": shows what the builder's conditions bring for the
// work that is chosen. The conditions come with the page, as numbers of entries;
// nothing is worked out here but whether a number is among others.

/** A condition: work.Sets of the builder. */
interface Condition {
  act?: number[];
  here?: number[];
  on?: number[];
  reach?: number[];
  beside?: number[];
  first?: number[];
  with?: number[];
  state?: number[];
  also?: number[];
  without?: number[];
}

/** What is chosen. */
interface Work {
  act: number[];
  things: number[];
  with: number[];
  state: number[];
}

const some = (have: number[], set: number[] | undefined): boolean => !set || have.some((x) => set.includes(x));

const besides = (things: number[], c: Condition): boolean =>
  !c.beside || things.some((b) => c.beside?.includes(b) && (!c.first || things.some((f) => f !== b && c.first?.includes(f))));

const meets = (w: Work, c: Condition): boolean =>
  some(w.act, c.act) && some(w.things, c.here) && some(w.things, c.on) && some(w.things, c.reach) && besides(w.things, c) &&
  some(w.with, c.with) && some(w.state, c.state) && some(w.state, c.also) &&
  ![...w.act, ...w.things, ...w.with, ...w.state].some((x) => c.without?.includes(x));

export const start = (root: HTMLElement): void => {
  const page = root.querySelector<HTMLElement>("[data-before]");
  const form = page?.querySelector("form");
  if (!page || !form) return;
  const guards = [...page.querySelectorAll<HTMLElement>("[data-when]")].map((at) => ({
    at,
    when: (JSON.parse(at.dataset.when ?? "null") ?? []) as Condition[],
  }));
  const said = page.querySelector<HTMLElement>("[data-said]");
  const choose = page.querySelector<HTMLElement>("[data-choose]");
  const chosen = (name: string): number[] =>
    [...form.querySelectorAll<HTMLSelectElement>(`[name=${name}]`)].filter((s) => s.value !== "").map((s) => Number(s.value));
  const show = (): void => {
    const work: Work = { act: chosen("act"), things: chosen("thing"), with: chosen("with"), state: chosen("state") };
    for (const g of guards) g.at.hidden = work.act.length === 0 || !g.when.some((c) => meets(work, c));
    for (const section of page.querySelectorAll<HTMLElement>("[data-guards]")) {
      section.hidden = !section.querySelector("[data-when]:not([hidden])");
    }
    if (choose) choose.textContent = form.querySelector<HTMLOptionElement>("#act option:checked")?.title ?? "";
    const messages = guards.filter((g) => !g.at.hidden && g.at.classList.contains("message")).length;
    if (said) {
      said.textContent =
        work.act.length === 0
          ? "Choose what you do; then what can hurt shows here."
          : messages === 0
            ? "The register knows no hazard of this. That is no proof that there is none."
            : `${messages} ${messages === 1 ? "hazard" : "hazards"} of the register`;
    }
  };
  form.addEventListener("change", show);
  form.addEventListener("reset", () => window.setTimeout(show));
  form.addEventListener("submit", (e) => e.preventDefault());
  show();
};
