// The record page: the jobs on this device, and the record of one, to print,
// save and load. Nothing leaves the device unless the tech saves or prints it.

import { loadJSON, saveJSON, saveText } from "./files";
import { joined, tableOf } from "./records";
import { chooseJob, closeJob, currentJob, type Job, jobs, keep, kept, type KeptReading, keptOf, openJob, parse } from "./store";

/** What names the format of a saved record; schemas/record.json describes it. */
const format = "baybook-record-1";

interface SheetName {
  number: string;
  revision: string;
  title: string;
  steps: number;
  /** The names of the readings to be taken; what was kept before they were lacks them. */
  readings?: string[];
}

export interface SavedSheet {
  path: string;
  items: Record<string, string>;
}

export interface Saved {
  format: string;
  vehicle: string;
  date: string;
  sheets: SavedSheet[];
}

/** Fills the record page. */
export const start = (root: HTMLElement): void => {
  const page = root.querySelector<HTMLElement>("[data-record]");
  if (!page) return;
  const form = page.querySelector("form") as HTMLFormElement;
  const date = form.querySelector<HTMLInputElement>("[name=date]") as HTMLInputElement;
  const vehicle = form.querySelector<HTMLInputElement>("[name=vehicle]") as HTMLInputElement;
  date.value = today();
  const redraw = (): void => {
    list(page, redraw);
    record(page);
  };
  form.addEventListener("submit", (e) => {
    e.preventDefault();
    if (vehicle.value.trim() === "") {
      vehicle.focus();
      return;
    }
    openJob(vehicle.value.trim(), date.value || today());
    vehicle.value = "";
    redraw();
  });
  page.querySelector("[data-do=print]")?.addEventListener("click", () => window.print());
  page.querySelector("[data-do=save]")?.addEventListener("click", save);
  page.querySelector("[data-do=table]")?.addEventListener("click", saveTable);
  page.querySelector<HTMLInputElement>("[data-do=join]")?.addEventListener("change", (e) => void join(page, e, redraw));
  page.querySelector<HTMLInputElement>("[data-do=load]")?.addEventListener("change", (e) => void load(page, e, redraw));
  window.addEventListener("storage", redraw);
  redraw();
};

/** Today as the tech's calendar has it, year-month-day. */
const today = (): string => {
  const now = new Date();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}`;
};

const element = <K extends keyof HTMLElementTagNameMap>(
  name: K,
  text = "",
  ...children: Node[]
): HTMLElementTagNameMap[K] => {
  const e = document.createElement(name);
  e.textContent = text;
  e.append(...children);
  return e;
};

/** The jobs, each to be chosen or closed. */
const list = (page: HTMLElement, redraw: () => void): void => {
  const place = page.querySelector("[data-jobs]") as HTMLElement;
  const items = jobs().map((job) => {
    const open = element("button", `${job.vehicle}, ${job.date}`);
    open.type = "button";
    if (job.id === currentJob()) open.setAttribute("aria-pressed", "true");
    open.addEventListener("click", () => {
      chooseJob(job.id);
      redraw();
    });
    const close = element("button", "Close");
    close.type = "button";
    close.setAttribute("aria-label", `Close ${job.vehicle}, ${job.date}`);
    close.addEventListener("click", () => {
      if (!window.confirm(`Close ${job.vehicle}? Everything kept of it on this device goes. Save it first if it is still needed.`)) return;
      closeJob(job.id);
      redraw();
    });
    return element("li", "", open, close);
  });
  place.replaceChildren(...(items.length > 0 ? items : [element("li", "No job is open on this device.")]));
};

/** The record of the chosen job. */
const record = (page: HTMLElement): void => {
  const place = page.querySelector("[data-shown]") as HTMLElement;
  const job = jobs().find((j) => j.id === currentJob());
  page.querySelectorAll<HTMLButtonElement | HTMLInputElement>("[data-do=print], [data-do=save], [data-do=table], [data-do=join]").forEach((b) => (b.disabled = !job));
  if (!job) {
    place.replaceChildren(element("p", "Choose a job to see its record."));
    return;
  }
  const head = element("table", "");
  head.className = "titleblock";
  const body = element("tbody");
  body.append(row("td", ["Vehicle", job.vehicle], ["Date", job.date]));
  const signed = element("tbody", "", row("td", ["Done by", ""], ["Signed", ""]), row("td", ["Taken over by", ""], ["Signed", ""]));
  const signatures = element("table", "", signed);
  signatures.className = "titleblock signatures";
  head.append(body);
  const sheets = [...keptOf(job.id)].sort(([a], [b]) => a.localeCompare(b)).map(([path, items]) => sheet(path, items));
  place.replaceChildren(head, ...(sheets.length > 0 ? sheets : [element("p", "Nothing is ticked or read for this job yet.")]), signatures);
};

const row = (cell: "td" | "th", ...pairs: [string, string][]): HTMLTableRowElement =>
  element("tr", "", ...pairs.map(([label, text]) => element(cell, "", element("b", label), document.createTextNode(text))));

/** One sheet of the record: steps done, readings, note. */
const sheet = (path: string, items: Map<string, string>): HTMLElement => {
  const name = parse<SheetName>(items.get("sheet") ?? "");
  const done = [...items.keys()].filter((k) => k.startsWith("step-") && items.get(k) === "done").length;
  const section = element("section");
  const link = element("a", name ? `${name.number} ${name.title}, rev. ${name.revision}` : path);
  link.href = `${document.documentElement.dataset.root ?? ""}${path}.html`;
  section.append(element("h3", "", link));
  if (name && name.steps > 0) section.append(element("p", `${done} of ${name.steps} steps ticked.`));
  const open = undone(name, items);
  if (open.length > 0) {
    const list = element("ul", "", ...open.map((words) => element("li", words)));
    const box = element("div", "", element("b", "Not done"), list);
    box.className = "undone";
    section.append(box);
  }
  const rows: HTMLTableRowElement[] = [];
  for (const [key, value] of [...items].sort(([a], [b]) => a.localeCompare(b))) {
    const r = key.startsWith("reading-") ? parse<KeptReading>(value) : undefined;
    if (!r) continue;
    const out = r.verdict === "stop" ? `OUT OF LIMITS${r.word ? `: ${r.word}` : ""}` : r.judged;
    rows.push(element("tr", "", ...[key.slice(8).replaceAll("-", " "), r.limit, withUnit(r), out].map((t) => element("td", t))));
  }
  if (rows.length > 0) {
    const heads = ["Reading", "Wanted", "Read", "Judged"].map((t) => {
      const th = element("th", t);
      th.scope = "col";
      return th;
    });
    section.append(element("table", "", element("thead", "", element("tr", "", ...heads)), element("tbody", "", ...rows)));
  }
  const note = items.get("note");
  if (note) section.append(element("p", `Note: ${note}`));
  return section;
};

/** What a sheet asks for and nobody did: steps not ticked, readings not taken. */
const undone = (name: SheetName | undefined, items: Map<string, string>): string[] => {
  const steps: number[] = [];
  for (let n = 1; n <= (name?.steps ?? 0); n++) {
    if (items.get(`step-${n}`) !== "done") steps.push(n);
  }
  const readings = (Array.isArray(name?.readings) ? name.readings : []).filter((r) => !items.get(r));
  return [
    ...(steps.length > 0 ? [`${steps.length === 1 ? "Step" : "Steps"} ${steps.join(", ")}`] : []),
    ...readings.map((r) => `Reading: ${r.replace(/^reading-/, "").replaceAll("-", " ")}`),
  ];
};

/** A reading with its unit, where it was typed bare. */
const withUnit = (r: KeptReading): string => (/[^\d.,+\-\s]/.test(r.value) ? r.value : `${r.value} ${r.unit}`.trim());

/** Saves the chosen job as a file. */
const save = (): void => {
  const job = jobs().find((j) => j.id === currentJob());
  if (!job) return;
  saveJSON(`record-${job.date}-${job.vehicle.toLowerCase().replace(/[^a-z0-9]+/g, "-")}.json`, saved(job));
};

const saved = (job: Job): Saved => ({
  format,
  vehicle: job.vehicle,
  date: job.date,
  sheets: [...keptOf(job.id)]
    .sort(([a], [b]) => a.localeCompare(b))
    .map(([path, items]) => ({ path, items: Object.fromEntries([...items].sort(([a], [b]) => a.localeCompare(b))) })),
});

/** Saves the chosen job as a table for a spreadsheet. */
const saveTable = (): void => {
  const job = jobs().find((j) => j.id === currentJob());
  if (job) saveText(`record-${job.date}-${job.vehicle.toLowerCase().replace(/[^a-z0-9]+/g, "-")}.csv`, tableOf(saved(job)), "text/csv");
};

/** Adds what a colleague saved of the same vehicle to the chosen job. */
const join = async (page: HTMLElement, e: Event, redraw: () => void): Promise<void> => {
  const said = page.querySelector("[data-said]") as HTMLElement;
  const file = await loadJSON<Saved>(e);
  const job = jobs().find((j) => j.id === currentJob());
  if (!file || !job) return;
  const read = file.value;
  if (!isSaved(read)) {
    said.textContent = `${file.name} is not a record saved by this book. Choose a file that “Save as a file” made.`;
    return;
  }
  if (read.vehicle.trim().toLowerCase() !== job.vehicle.trim().toLowerCase()) {
    said.textContent = `${file.name} is of ${read.vehicle}, and the chosen job of ${job.vehicle}: nothing was added.`;
    return;
  }
  const { sheets, added, differ } = joined(saved(job).sheets, read.sheets);
  for (const s of sheets) {
    for (const [item, value] of Object.entries(s.items)) keep(item, value, s.path, job.id);
  }
  said.textContent = `${added} entries of ${file.name} were added.${differ > 0 ? ` ${differ} readings differ: both stand in the note of their sheet.` : ""}`;
  redraw();
};

/** Loads a saved record as a job of its own; nothing that is open is written over. */
const load = async (page: HTMLElement, e: Event, redraw: () => void): Promise<void> => {
  const said = page.querySelector("[data-said]") as HTMLElement;
  const file = await loadJSON<Saved>(e);
  if (!file) return;
  const read = file.value;
  if (!isSaved(read)) {
    said.textContent = `${file.name} is not a record saved by this book. Choose a file that “Save as a file” made.`;
    return;
  }
  const id = openJob(read.vehicle, read.date);
  for (const s of read.sheets) {
    for (const [item, value] of Object.entries(s.items)) keep(item, value, s.path, id);
  }
  const whole = read.sheets.every((s) => Object.entries(s.items).every(([item, value]) => (kept(item, s.path, id) ?? "") === value));
  if (!whole || !jobs().some((j) => j.id === id)) {
    closeJob(id);
    said.textContent = `${file.name} has no room in this browser: nothing of it was taken.`;
    redraw();
    return;
  }
  said.textContent = `${read.vehicle}, ${read.date} was loaded as a job of its own.`;
  redraw();
};

/** What the schema accepts as a path and as the name of an item: nothing that could be an address elsewhere. */
const path = /^[\p{L}\p{N}_.-]+(\/[\p{L}\p{N}_.-]+)*$/u;
const item = /^(step-\d+|reading-[a-z0-9-]+|note|sheet|view|at)$/;

const isSaved = (v: Saved | undefined): v is Saved =>
  v?.format === format &&
  typeof v.vehicle === "string" &&
  typeof v.date === "string" &&
  /^\d{4}-\d\d-\d\d$/.test(v.date) &&
  Array.isArray(v.sheets) &&
  v.sheets.every(
    (s) =>
      typeof s?.path === "string" &&
      path.test(s.path) &&
      typeof s.items === "object" &&
      s.items !== null &&
      Object.entries(s.items).every(([name, x]) => item.test(name) && typeof x === "string"),
  );
