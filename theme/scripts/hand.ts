// The second script of every page: all that answers a hand. touch.ts fetches it
// once the page stands, or as soon as it is touched.

import { start as calculators } from "./calculators";
import { start as find } from "./find";
import { start as offline } from "./offline";
import { start as practice } from "./practice";
import { start as print } from "./print";
import { start as readings } from "./readings";
import { startAll } from "./start";
import { start as steps } from "./steps";
import { start as study } from "./study";

startAll([find, readings, steps, calculators, practice, study, print, offline]);
