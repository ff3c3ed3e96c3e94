// The script of every page.

import { start as calculators } from "./calculators";
import { start as find } from "./find";
import { start as job } from "./job";
import { start as offline } from "./offline";
import { start as practice } from "./practice";
import { start as print } from "./print";
import { start as readings } from "./readings";
import { start as shelf } from "./shelf";
import { startAll } from "./start";
import { start as steps } from "./steps";
import { start as study } from "./study";

startAll([find, shelf, job, steps, readings, calculators, practice, study, print, offline]);
