// Runs the compiled core under Node: node ask.mjs CORE INDEX. Each line of
// standard input is a question as a JSON list; each line out is its answer.
import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";
import { WASI } from "node:wasi";

const [, , core, index] = process.argv;
const wasi = new WASI({ version: "preview1" });
const { instance } = await WebAssembly.instantiate(readFileSync(core), { wasi_snapshot_preview1: wasi.wasiImport });
wasi.initialize(instance);
const it = instance.exports;

const send = (bytes) => {
  const at = it.room(bytes.length);
  new Uint8Array(it.memory.buffer, at, bytes.length).set(bytes);
  return bytes.length;
};

if (it.index(send(readFileSync(index))) !== 1) throw new Error("the core refuses the index");
const lines = createInterface({ input: process.stdin, crlfDelay: Infinity });
for await (const line of lines) {
  const length = it.ask(send(new TextEncoder().encode(JSON.parse(line).join("\0"))));
  process.stdout.write(Buffer.from(new Uint8Array(it.memory.buffer, it.reply(), length)));
  process.stdout.write("\n");
}
