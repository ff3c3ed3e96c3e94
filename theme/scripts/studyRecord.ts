// The second script of three pages: study, record and before. Sheets,
// which are read in the bay, do without it.

import { start as before } from "./before";
import { start as deck } from "./deck";
import { start as record } from "./record";
import { startAll } from "./start";

startAll([deck, record, before]);
