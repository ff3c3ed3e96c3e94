// What is kept on the device for the sheet in the page, and what is said when
// the browser keeps nothing.

const place = (name: string): string =>
  `sheet/${document.documentElement.dataset.sheet ?? location.pathname}/${name}`;

/** Keeps a word under a name; says so in the page where the browser refuses. */
export const keep = (name: string, value: string): void => {
  try {
    localStorage.setItem(place(name), value);
  } catch {
    refuse();
  }
};

/** What was kept under a name, null where nothing was. */
export const kept = (name: string): string | null => {
  try {
    return localStorage.getItem(place(name));
  } catch {
    return null;
  }
};

let told = false;

const refuse = (): void => {
  if (told) return;
  told = true;
  const note = document.createElement("p");
  note.className = "storage";
  note.setAttribute("role", "alert");
  note.textContent =
    "This browser keeps nothing for this page (private window, full or blocked storage). Ticks and readings last only until the page is left: print it before you go.";
  document.querySelector("main")?.prepend(note);
};
