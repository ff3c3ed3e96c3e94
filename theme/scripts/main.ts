// The page's only script: starts each behaviour. A fault in one leaves the
// others, and the text, as they are.

import { start as calculators } from "./calculators";
import { start as find } from "./find";
import { start as offline } from "./offline";
import { start as practice } from "./practice";
import { start as readings } from "./readings";
import { start as steps } from "./steps";

for (const start of [find, steps, readings, calculators, practice, offline]) {
  try {
    start(document.documentElement);
  } catch (e) {
    console.error(e);
  }
}
