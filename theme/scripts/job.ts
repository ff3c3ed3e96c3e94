// The job that a sheet is worked for: shown at its head, and its notes.

import { currentJob, hasJob, jobs, keep, kept, onChange } from "./store";

/** Shows the job on the page of a sheet that has steps or readings. */
export const start = (root: HTMLElement): void => {
  const sheet = root.querySelector<HTMLElement>(".sheet");
  if (!root.dataset.sheet || !sheet || !sheet.querySelector(".step, .reading")) return;
  const job = jobs().find((j) => j.id === currentJob());
  const line = sheet.querySelector(".job");
  const link = line?.querySelector("a");
  if (job && line?.firstChild && link) {
    line.firstChild.textContent = `Job: ${job.vehicle}, ${job.date}. `;
    link.textContent = "Record";
  }
  if (hasJob()) remember(sheet);
  notes(sheet);
};

/** Keeps what the record needs to name the sheet by, as soon as something is kept of it. */
const remember = (sheet: HTMLElement): void => {
  const { number = "", revision = "" } = document.documentElement.dataset;
  const title = sheet.querySelector("h1")?.textContent ?? "";
  const steps = sheet.querySelectorAll(".step").length;
  const readings = [...sheet.querySelectorAll(".reading")].map((r) => r.id);
  const save = (): void => keep("sheet", JSON.stringify({ number, revision, title, steps, readings }));
  sheet.addEventListener("input", save, { once: true });
  sheet.addEventListener("change", save, { once: true });
};

/** Room for a note, at the end of the sheet. */
const notes = (sheet: HTMLElement): void => {
  const section = document.createElement("section");
  section.className = "notes";
  const label = document.createElement("label");
  label.textContent = "Notes for the record";
  const field = document.createElement("textarea");
  field.rows = 3;
  field.value = kept("note") ?? "";
  field.addEventListener("input", () => keep("note", field.value));
  onChange((item, value) => {
    if (item === "note" && document.activeElement !== field) field.value = value ?? "";
  });
  label.append(field);
  section.append(label);
  sheet.querySelector(".foot")?.before(section);
};
