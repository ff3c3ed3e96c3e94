// The second script of every page: all that answers a touch or a key. touch.ts
// fetches it once the page stands, or as soon as it is needed, and is told by the
// event "interactive" when it answers.

import { start as calculators } from "./calculators";
import { start as contents } from "./contents";
import { start as find } from "./find";
import { start as fonts } from "./fonts";
import { start as offline } from "./offline";
import { start as practice } from "./practice";
import { start as print } from "./print";
import { start as readings } from "./readings";
import { startAll } from "./start";
import { start as steps } from "./steps";
import { start as study } from "./study";

/** Brings the style of what only scripts show, behind the first one, and goes on when it is there or cannot come. */
const styled = (href: string | undefined, then: () => void): void => {
  const first = document.querySelector("link[rel=stylesheet]");
  if (!href || !first || document.querySelector(`link[href="${href}"]`)) return then();
  const style = document.createElement("link");
  style.rel = "stylesheet";
  style.href = href;
  style.onload = then;
  style.onerror = () => {
    style.remove();
    then();
  };
  first.after(style);
};

styled(document.documentElement.dataset.interactiveStyle, () => {
  startAll([find, readings, steps, calculators, practice, study, print, contents, fonts, offline]);
  document.dispatchEvent(new Event("interactive"));
});
