// Pinned and lately opened sheets, kept on the device: shown on the cover and
// in the search field before anything is typed.

import { keepOwn, keptOwn, parse } from "./store";

interface Shelved {
  path: string;
  number: string;
  title: string;
}

const most = 6;

const shelf = (name: "recent" | "pinned"): Shelved[] => {
  const list = parse<Shelved[]>(keptOwn(name) ?? "");
  return Array.isArray(list) ? list.filter((s) => typeof s?.path === "string" && typeof s.title === "string") : [];
};

/** Notes the sheet as opened, offers to pin it, and fills the cover's lists. */
export const start = (root: HTMLElement): void => {
  const { sheet, number = "" } = root.dataset;
  if (sheet) {
    const title = root.querySelector("h1")?.textContent ?? sheet;
    const here = { path: sheet, number, title };
    keepOwn("recent", JSON.stringify([here, ...shelf("recent").filter((s) => s.path !== sheet)].slice(0, most)));
    pinButton(root, here);
  }
  root.querySelector(".areas")?.before(...lists(root));
};

const pinButton = (root: HTMLElement, here: Shelved): void => {
  const button = root.querySelector<HTMLElement>(".pin");
  if (!button) return;
  const draw = (): void => {
    const pinned = shelf("pinned").some((s) => s.path === here.path);
    button.textContent = pinned ? "Unpin" : "Pin";
    button.setAttribute("aria-label", pinned ? "Unpin this sheet from the cover" : "Pin this sheet to the cover");
  };
  button.addEventListener("click", () => {
    const others = shelf("pinned").filter((s) => s.path !== here.path);
    const pinned = shelf("pinned").length !== others.length;
    keepOwn("pinned", JSON.stringify(pinned ? others : [here, ...others]));
    draw();
  });
  draw();
};

/** The two lists as links; none where there is nothing to show. */
export const lists = (root: HTMLElement): HTMLElement[] =>
  (
    [
      ["pinned", "Pinned"],
      ["recent", "Lately opened"],
    ] as const
  ).flatMap(([name, heading]) => {
    const sheets = shelf(name);
    if (sheets.length === 0) return [];
    const section = document.createElement("section");
    section.className = "shelf";
    const h = document.createElement("h2");
    h.textContent = heading;
    const list = document.createElement("ul");
    list.className = "sheets";
    for (const s of sheets) {
      const a = document.createElement("a");
      a.href = `${root.dataset.root ?? ""}${s.path}.html`;
      const b = document.createElement("b");
      b.textContent = s.number;
      const span = document.createElement("span");
      span.textContent = s.title;
      a.append(b, " ", span);
      const li = document.createElement("li");
      li.append(a);
      list.append(li);
    }
    section.append(h, list);
    return [section];
  });
