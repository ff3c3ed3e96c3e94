// The page's only script: starts each behaviour. A fault in one leaves the
// others, and the text, as they are.

import { start as calculators } from "./calculators";
import { start as find } from "./find";
import { start as job } from "./job";
import { start as offline } from "./offline";
import { start as practice } from "./practice";
import { start as print } from "./print";
import { start as readings } from "./readings";
import { start as record } from "./record";
import { start as shelf } from "./shelf";
import { start as steps } from "./steps";
import { start as study } from "./study";

for (const start of [find, shelf, job, steps, readings, calculators, practice, study, record, print, offline]) {
  try {
    start(document.documentElement);
  } catch (e) {
    console.error(e);
  }
}
