// Printing: the sheet as it is, or its card, one page of the same document.

/** Offers both on the page of a sheet; #card opens the card. */
export const start = (root: HTMLElement): void => {
  const sheet = root.querySelector<HTMLElement>(".sheet");
  if (!root.dataset.sheet || !sheet) return;
  const place = document.createElement("p");
  place.className = "printing";
  place.append(button("Print the sheet", () => print("")));
  if (sheet.querySelector(".step")) place.append(" ", button("Print its card", () => print("card")));
  sheet.querySelector(".foot")?.before(place);
  const fromAddress = (): void => {
    if (location.hash === "#card") show("card");
  };
  fromAddress();
  window.addEventListener("hashchange", fromAddress);
  window.addEventListener("afterprint", () => {
    if (document.body.dataset.view === "card" && location.hash !== "#card") delete document.body.dataset.view;
  });
};

/** Shows the sheet as a card, or as it is. The card is styled by print.css, which a screen does not apply by itself. */
const show = (view: string): void => {
  if (view) document.body.dataset.view = view;
  else delete document.body.dataset.view;
  document.querySelector<HTMLLinkElement>("link[media=print]")?.setAttribute("media", "all");
};

const print = (view: string): void => {
  show(view);
  window.print();
};

const button = (words: string, act: () => void): HTMLButtonElement => {
  const b = document.createElement("button");
  b.type = "button";
  b.textContent = words;
  b.addEventListener("click", act);
  return b;
};
