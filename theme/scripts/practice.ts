// Practice problems and questions: fresh numbers, marking, reasons.

import { core } from "./core";

/** Makes every practice problem and question in the page answer. */
export const start = (root: HTMLElement): void => {
  for (const section of root.querySelectorAll<HTMLElement>(".practice")) problem(section);
  for (const question of root.querySelectorAll<HTMLFieldSetElement>(".question")) ask(question);
};

const problem = (section: HTMLElement): void => {
  const { calculator = "", output = "", spread = "" } = section.dataset;
  const form = section.querySelector("form") as HTMLFormElement;
  const answer = form.querySelector("input") as HTMLInputElement;
  const marking = section.querySelector(".marking") as HTMLElement;
  section.querySelector(".worked")?.remove(); // the core shows the working after marking
  form.addEventListener("submit", (e) => {
    e.preventDefault();
    void core()
      .then((it) => {
        const marked = it.ask("mark", calculator, String(section.dataset.drawn), output, answer.value);
        marking.innerHTML = String(marked.html);
        if (marked.read) tell(section, marked.verdict === "ok");
      })
      .catch((reason: unknown) => {
        marking.textContent = `The answer cannot be marked now: ${String(reason)}`;
      });
  });
  form.querySelector(".fresh")?.addEventListener("click", () => {
    void core().then((it) => {
      const seed = crypto.getRandomValues(new Uint32Array(1))[0] ?? 1;
      const drawn = it.ask("draw", calculator, spread, output, String(seed));
      if (!drawn.ok) return;
      section.dataset.drawn = drawn.query;
      (section.querySelector(".given") as HTMLElement).innerHTML = String(drawn.html);
      marking.replaceChildren();
      answer.value = "";
      answer.focus();
    });
  });
};

/** A question shows its reason once it has been answered. */
const ask = (question: HTMLFieldSetElement): void => {
  question.dataset.asked = "";
  shuffle(question);
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Check my answer";
  question.append(button);
  const said = document.createElement("p");
  said.setAttribute("role", "status");
  question.append(said);
  button.addEventListener("click", () => {
    let right = true;
    for (const option of question.querySelectorAll<HTMLElement>(".option")) {
      const chosen = option.querySelector<HTMLInputElement>("input")?.checked ?? false;
      const wanted = option.dataset.right === "yes";
      if (chosen !== wanted) right = false;
      if (chosen) option.dataset.marked = wanted ? "right" : "wrong";
      else if (wanted) option.dataset.marked = "missed";
      else delete option.dataset.marked;
    }
    delete question.dataset.asked;
    said.textContent = right ? "Right." : "Not yet. The reason stands above.";
    tell(question, right);
  });
};

/** Options that refer to the others by their place, or to all of them. */
const placed = /\b(above|below|(all|both|none|neither|either|any) of (the|these|them|those)|first|second|third|last)\b/i;

/** Shuffles the options each time, unless one of them refers to the others. */
const shuffle = (question: HTMLElement): void => {
  const options = [...question.querySelectorAll<HTMLElement>(".option")];
  if (options.some((o) => placed.test(o.textContent ?? "") || o.querySelector("input")?.checked)) return;
  const marks = options.map((o) => {
    const mark = document.createComment("");
    o.before(mark);
    return mark;
  });
  for (let i = options.length - 1; i > 0; i--) {
    const j = (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % (i + 1);
    [options[i], options[j]] = [options[j] as HTMLElement, options[i] as HTMLElement];
  }
  marks.forEach((mark, i) => mark.replaceWith(options[i] as HTMLElement));
};

/** Tells the study deck how a card was answered. */
const tell = (card: HTMLElement, right: boolean): void => {
  card.dispatchEvent(new CustomEvent("book:marked", { detail: right }));
};
