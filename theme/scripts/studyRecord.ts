// The second script of two pages, study and record. Sheets,
// which are read in the bay, do without it.

import { start as deck } from "./deck";
import { start as record } from "./record";
import { startAll } from "./start";

startAll([deck, record]);
