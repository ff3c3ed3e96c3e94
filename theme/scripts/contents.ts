// The contents beside a sheet: marks the line of what is being read.

/** Follows the reader through the sheet. */
export const start = (root: HTMLElement): void => {
  const lines = [...root.querySelectorAll<HTMLAnchorElement>(".contents li a")];
  const places = lines.map((line) => document.getElementById(line.hash.slice(1)));
  if (lines.length === 0 || getComputedStyle(lines[0]?.closest("nav") as Element).display === "none") return;
  let now: HTMLAnchorElement | undefined;
  const mark = (): void => {
    let at = -1;
    places.forEach((place, i) => {
      if (place && place.getBoundingClientRect().top < window.innerHeight / 3) at = i;
    });
    if (lines[at] === now) return;
    now?.removeAttribute("aria-current");
    now = lines[at];
    now?.setAttribute("aria-current", "true");
    now?.scrollIntoView({ block: "nearest" });
  };
  let waiting = false;
  window.addEventListener(
    "scroll",
    () => {
      if (waiting) return;
      waiting = true;
      requestAnimationFrame(() => {
        waiting = false;
        mark();
      });
    },
    { passive: true },
  );
  mark();
};
