// The first script of every page: what must stand before the reader's hand is
// there. The second, interactive.ts, comes after it.

import { start as job } from "./job";
import { start as shelf } from "./shelf";
import { startAll } from "./start";
import { start as ticks } from "./ticks";
import { start as touch } from "./touch";

startAll([ticks, job, shelf, touch]);
