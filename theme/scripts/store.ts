// What is kept on the device. Every tick, reading and note has a key of its
// own under its job and sheet, so two tabs never write over each other's.

/** A job on the bench: what the tech typed when it was opened. */
export interface Job {
  id: string;
  vehicle: string;
  date: string;
}

/** A reading as it is kept. */
export interface KeptReading {
  value: string;
  /** What the sheet asks: "at most 100 mV". */
  limit: string;
  unit: string;
  verdict: string;
  /** The judgment in words. */
  judged: string;
  /** What the tech wrote about a reading out of limits. */
  word?: string;
}

const noJob = "none";
const separator = "\u001f";

/** Whose ticks and readings this tab shows: the job chosen here, else the one chosen last. */
export const currentJob = (): string => read("session", "bay-job") ?? read("local", "bay-job") ?? noJob;

/** Chooses the job for this tab, and for tabs opened later. */
export const chooseJob = (id: string): void => {
  write("session", "bay-job", id);
  write("local", "bay-job", id);
};

/** The jobs opened on this device, newest first. */
export const jobs = (): Job[] => {
  const list: Job[] = [];
  for (const [key, value] of entries()) {
    if (!key.startsWith("bay-job:")) continue;
    const job = parse<Job>(value);
    if (job) list.push({ ...job, id: key.slice("bay-job:".length) });
  }
  return list.sort((a, b) => b.date.localeCompare(a.date) || b.id.localeCompare(a.id));
};

/** A name that no other job has. Plain HTTP, as the shop's network has it, lacks crypto.randomUUID. */
const fresh = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((b) => b.toString(16).padStart(2, "0")).join("");

/** Opens a job and chooses it. */
export const openJob = (vehicle: string, date: string, id: string = fresh()): string => {
  write("local", `bay-job:${id}`, JSON.stringify({ vehicle, date }));
  chooseJob(id);
  return id;
};

/** Closes a job: everything kept of it goes. */
export const closeJob = (id: string): void => {
  for (const [key] of entries()) {
    if (key === `bay-job:${id}` || key.startsWith(`bay${separator}${id}${separator}`)) remove(key);
  }
  if (currentJob() === id) chooseJob(noJob);
};

/** Whether ticks and readings go into a job, or stand by themselves. */
export const hasJob = (): boolean => currentJob() !== noJob;

/** The sheet of this page. */
export const thisSheet = (): string => document.documentElement.dataset.sheet ?? location.pathname;

const keyOf = (job: string, sheet: string, item: string): string => ["bay", job, sheet, item].join(separator);

/** Keeps a text under a name, for this sheet in this job; an empty text removes what was kept. */
export const keep = (item: string, value: string, sheet = thisSheet(), job = currentJob()): void => {
  const key = keyOf(job, sheet, item);
  if (value === "") remove(key);
  else write("local", key, value);
};

/** What was kept under a name, null where nothing was. */
export const kept = (item: string, sheet = thisSheet(), job = currentJob()): string | null =>
  read("local", keyOf(job, sheet, item));

/** Everything kept of a job, by sheet and item. */
export const keptOf = (job: string): Map<string, Map<string, string>> => {
  const sheets = new Map<string, Map<string, string>>();
  for (const [key, value] of entries()) {
    const [mark, owner, sheet = "", item = ""] = key.split(separator);
    if (mark !== "bay" || owner !== job) continue;
    const items = sheets.get(sheet) ?? new Map<string, string>();
    items.set(item, value);
    sheets.set(sheet, items);
  }
  return sheets;
};

/** Calls back when another tab has changed an item of this sheet and job. */
export const onChange = (act: (item: string, value: string | null) => void): void => {
  window.addEventListener("storage", (e) => {
    const [mark, job, sheet, item] = (e.key ?? "").split(separator);
    if (mark === "bay" && job === currentJob() && sheet === thisSheet() && item) act(item, e.newValue);
  });
};

/** Keeps something that belongs to the reader, not to a job: study cards, pinned sheets. */
export const keepOwn = (name: string, value: string): void => write("local", `own:${name}`, value);

/** What the reader kept under a name. */
export const keptOwn = (name: string): string | null => read("local", `own:${name}`);

/** Everything the reader kept whose name starts so. */
export const keptOwnAll = (prefix: string): Map<string, string> => {
  const all = new Map<string, string>();
  for (const [key, value] of entries()) {
    if (key.startsWith(`own:${prefix}`)) all.set(key.slice(`own:${prefix}`.length), value);
  }
  return all;
};

/** Reads JSON that this book wrote; undefined where it is something else. */
export const parse = <T>(text: string): T | undefined => {
  if (text === "") return undefined; // what was never kept; throwing for each would take long
  try {
    return JSON.parse(text) as T;
  } catch {
    return undefined;
  }
};

/** Keeps something for this tab alone, until it is closed. */
export const keepInTab = (name: string, value: string): void => write("session", `own:${name}`, value);

/** What this tab kept under a name. */
export const keptInTab = (name: string): string | null => read("session", `own:${name}`);

/** Where a study deck under way lies in its tab. */
export const deckKey = "study-deck";

type Where = "local" | "session";

/** A storage of the browser. Where it is blocked, even naming it throws. */
const storage = (where: Where): Storage => (where === "local" ? window.localStorage : window.sessionStorage);

const entries = (): [string, string][] => {
  try {
    const all = storage("local");
    return Object.keys(all).map((key) => [key, all.getItem(key) ?? ""]);
  } catch {
    return [];
  }
};

const read = (where: Where, key: string): string | null => {
  try {
    return storage(where).getItem(key);
  } catch {
    return null;
  }
};

const remove = (key: string): void => {
  try {
    storage("local").removeItem(key);
  } catch {
    refuse();
  }
};

const write = (where: Where, key: string, value: string): void => {
  try {
    storage(where).setItem(key, value);
  } catch {
    refuse();
  }
};

/** Says once, in the page, that the browser keeps nothing. */
const refuse = (): void => {
  if (document.querySelector(".storage")) return;
  const note = document.createElement("p");
  note.className = "storage";
  note.setAttribute("role", "alert");
  note.textContent =
    "This browser keeps nothing more for this book (private window, full or blocked storage). What you tick and type now is lost when the page is left: print it before you go.";
  document.querySelector("main")?.before(note);
};
