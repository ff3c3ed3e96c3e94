// Starting the behaviors of a page.

/** Starts each behavior. A fault in one leaves the others, and the text, as they are. */
export const startAll = (behaviours: ((root: HTMLElement) => void)[]): void => {
  document.documentElement.dataset.live = ""; // styles show what only works with scripts
  for (const start of behaviours) {
    try {
      start(document.documentElement);
    } catch (e) {
      console.error(e);
    }
  }
};
