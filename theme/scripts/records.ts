// What can be done with saved records: joining two of one job, and writing one as
// a table.

import type { Saved, SavedSheet } from "./record";
import { type KeptReading, parse } from "./store";

/** Two records of one job in one. */
interface Joined {
  sheets: SavedSheet[];
  /** How many entries the second one added. */
  added: number;
  /** How many readings both have and differ in. */
  differ: number;
}

/** What a reader of the record looks at; where somebody stopped in a sheet is their own. */
const shared = /^(step-\d+|reading-[a-z0-9-]+|note|sheet)$/;

/** Adds the entries of another record. What stands here stays; a reading that differs there is told in the note. */
export const joined = (here: SavedSheet[], there: SavedSheet[]): Joined => {
  const all = new Map(here.map((s) => [s.path, { path: s.path, items: { ...s.items } }]));
  let added = 0;
  let differ = 0;
  for (const s of there) {
    const mine = all.get(s.path) ?? { path: s.path, items: {} as Record<string, string> };
    all.set(s.path, mine);
    const told: string[] = [];
    for (const [item, value] of Object.entries(s.items)) {
      const own = mine.items[item];
      if (!shared.test(item) || own === value || value === "") continue;
      if (own === undefined || own === "") {
        mine.items[item] = value;
        added++;
      } else if (item.startsWith("reading-")) {
        const other = parse<KeptReading>(value);
        const words = `${item.slice(8).replaceAll("-", " ")} read again: ${other?.value ?? "?"} ${other?.unit ?? ""}`.trim();
        if (!(mine.items["note"] ?? "").includes(words)) {
          told.push(words);
          differ++;
        }
      } else if (item === "note" && !own.includes(value)) {
        told.push(value);
        added++;
      }
    }
    if (told.length > 0) mine.items["note"] = [mine.items["note"], ...told].filter(Boolean).join("; ");
  }
  return { sheets: [...all.values()], added, differ };
};

/** A cell of comma-separated values (RFC 4180); one that a spreadsheet would take for a formula is kept as text. */
const cell = (text: string): string => `"${(/^[=+\-@\t]/.test(text) && !/^[+-]?[\d.,]+$/.test(text) ? `'${text}` : text).replaceAll('"', '""')}"`;

/** A record as comma-separated values: a line for each step that is ticked, each reading and each note. */
export const tableOf = (record: Saved): string => {
  const rows = [["vehicle", "date", "sheet", "what", "value", "unit", "limit", "judged"]];
  for (const s of record.sheets) {
    for (const [item, value] of Object.entries(s.items)) {
      const reading = item.startsWith("reading-") ? parse<KeptReading>(value) : undefined;
      if (reading) {
        rows.push([record.vehicle, record.date, s.path, item.slice(8), reading.value, reading.unit, reading.limit, reading.verdict === "stop" ? "out of limits" : reading.judged]);
      } else if (item.startsWith("step-") || item === "note") {
        rows.push([record.vehicle, record.date, s.path, item, value, "", "", ""]);
      }
    }
  }
  return rows.map((r) => r.map((c) => cell(String(c ?? ""))).join(",")).join("\r\n") + "\r\n";
};
