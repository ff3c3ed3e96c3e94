// The book's typeface, fetched for the next page where this one has not used
// all of it.

/** Fetches what is missing once the page is at rest. */
export const start = (): void => {
  for (const family of ["Barlow", "Barlow Semi Condensed"]) {
    for (const weight of [400, 600]) {
      void document.fonts.load(`${weight} 1em "${family}"`).catch(() => undefined);
    }
  }
};
