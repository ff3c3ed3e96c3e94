// Saving a value as a JSON file, and reading one back.

import { parse } from "./store";

/** Saves a value under a file name, for the reader to keep where they like. */
export const saveJSON = (name: string, value: unknown): void =>
  saveText(name, JSON.stringify(value, null, 2), "application/json");

/** Saves text under a file name. */
export const saveText = (name: string, text: string, type: string): void => {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(link.href), 1000);
};

/** A file that the reader chose, and what stands in it; undefined where it is no JSON. */
export interface Loaded<T> {
  name: string;
  value: T | undefined;
}

/** Takes the file that a field has just been given; undefined where none was chosen. */
export const loadJSON = async <T>(e: Event): Promise<Loaded<T> | undefined> => {
  const input = e.target as HTMLInputElement;
  const file = input.files?.[0];
  if (!file) return undefined;
  input.value = "";
  return { name: file.name, value: parse<T>(await file.text()) };
};
