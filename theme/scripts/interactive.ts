// The second script of every page: all that answers a touch or a key. touch.ts
// fetches it once the page stands, or as soon as it is needed.

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

startAll([find, readings, steps, calculators, practice, study, print, contents, fonts, offline]);
