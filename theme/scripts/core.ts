// Loads the WebAssembly core on first use and asks it questions.

import type { Answer, Questions } from "./protocol";

interface CoreExports {
  memory: WebAssembly.Memory;
  _initialize(): void;
  room(size: number): number;
  ask(size: number): number;
  index(size: number): number;
  reply(): number;
}

/** The core, loaded. */
export interface Core {
  ask<Q extends keyof Questions>(question: Q, ...args: Questions[Q]): Answer;
  /** Hands over the search index; false where the core refuses it. */
  loadIndex(bytes: Uint8Array): boolean;
}

const text = new TextEncoder();
const reader = new TextDecoder();

let coming: Promise<Core> | undefined;

/** The core, fetched once. A failed fetch is tried again at the next call. */
export const core = (): Promise<Core> => {
  coming ??= start().catch((e: unknown) => {
    coming = undefined;
    throw e;
  });
  return coming;
};

const start = async (): Promise<Core> => {
  const holder: { exports?: CoreExports } = {};
  const imports = { wasi_snapshot_preview1: host(() => (holder.exports as CoreExports).memory) };
  const { instance } = await instantiate(imports);
  const it = (holder.exports = instance.exports as unknown as CoreExports);
  it._initialize();
  const send = (bytes: Uint8Array): number => {
    const at = it.room(bytes.length);
    new Uint8Array(it.memory.buffer, at, bytes.length).set(bytes);
    return bytes.length;
  };
  return {
    ask(question, ...args) {
      const length = it.ask(send(text.encode([question, ...args].join("\u0000"))));
      const bytes = new Uint8Array(it.memory.buffer, it.reply(), length);
      return JSON.parse(reader.decode(bytes)) as Answer;
    },
    loadIndex: (bytes) => it.index(send(bytes)) === 1,
  };
};

/** Instantiates the core while it downloads, or from a buffer where the server or the browser does not allow that. */
const instantiate = async (imports: WebAssembly.Imports): Promise<WebAssembly.WebAssemblyInstantiatedSource> => {
  const { core: url, coreScript } = document.documentElement.dataset;
  if (location.protocol === "file:") {
    return WebAssembly.instantiate(await fromScript(String(coreScript)), imports);
  }
  const response = await fetch(String(url));
  if (!response.ok) throw new Error(`the core is not there (${response.status})`);
  const copy = response.clone();
  try {
    return await WebAssembly.instantiateStreaming(response, imports);
  } catch {
    return WebAssembly.instantiate(await copy.arrayBuffer(), imports);
  }
};

declare global {
  interface Window {
    /** What a data script sets in a book opened from a folder: gzip in base64. */
    bookData?: string;
  }
}

/** Bytes out of a classic script, for pages opened from a folder, where browsers refuse a fetch. */
export const fromScript = async (src: string): Promise<ArrayBuffer> => {
  await new Promise<void>((done, failed) => {
    const script = document.createElement("script");
    script.src = src;
    script.onload = () => done();
    script.onerror = () => failed(new Error(`${src} is not there`));
    document.head.append(script);
  });
  const packed = Uint8Array.from(atob(window.bookData ?? ""), (c) => c.charCodeAt(0));
  delete window.bookData;
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream).arrayBuffer();
};

/**
 * The few system calls that Go's runtime makes. The core reads no file, no
 * argument and no clock that matters; it only needs an answer.
 */
const host = (memory: () => WebAssembly.Memory): Record<string, (...args: number[]) => number> => {
  const view = () => new DataView(memory().buffer);
  const none = (count: number, size: number) => {
    view().setUint32(count, 0, true);
    view().setUint32(size, 0, true);
    return 0;
  };
  return {
    args_sizes_get: (count = 0, size = 0) => none(count, size),
    args_get: () => 0,
    environ_sizes_get: (count = 0, size = 0) => none(count, size),
    environ_get: () => 0,
    clock_time_get: (_id = 0, _precision = 0, at = 0) => {
      view().setBigUint64(at, BigInt(Math.round(performance.now() * 1e6)), true);
      return 0;
    },
    random_get: (at = 0, size = 0) => {
      crypto.getRandomValues(new Uint8Array(memory().buffer, at, size));
      return 0;
    },
    fd_write: (_fd = 0, parts = 0, count = 0, written = 0) => {
      let size = 0;
      for (let i = 0; i < count; i++) size += view().getUint32(parts + 8 * i + 4, true);
      view().setUint32(written, size, true);
      return 0;
    },
    poll_oneoff: () => 52, // not supported: nothing in the core waits
    sched_yield: () => 0,
    proc_exit: (code = 0) => {
      throw new Error(`the core stopped (${code})`);
    },
    fd_fdstat_get: () => 8, // bad descriptor: there are none
    fd_fdstat_set_flags: () => 8,
    fd_prestat_get: () => 8,
    fd_prestat_dir_name: () => 8,
    fd_close: () => 8,
    fd_read: () => 8,
    fd_seek: () => 8,
  };
};
