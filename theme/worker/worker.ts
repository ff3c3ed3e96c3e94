// The service worker: keeps one edition of the book whole. The builder puts
// the edition's name and its files, with their hashes, in front of this.
//
// A worker serves its own edition and nothing else. A new edition is fetched
// beside it, every file checked by its hash, so that a server that changes
// half way never makes a mixture; it takes over only when the reader says so
// or has closed the book.

export {}; // a module of its own, so that self may be named

declare const self: ServiceWorkerGlobalScope & {
  edition: string;
  /** [name, SHA-256 in hexadecimal] of every file that is kept. */
  files: [string, string][];
};

/**
 * Caches belong to the origin, not to the book: its path is part of their
 * names, so that two books under one origin leave each other alone. A path
 * holds no raw blank, so none of the names starts with another's.
 */
const own = `book ${new URL(self.registration.scope).pathname} `;
const shelf = own + self.edition;

self.addEventListener("install", (e) => e.waitUntil(fill()));

self.addEventListener("activate", (e) => e.waitUntil(clear()));

self.addEventListener("message", (e) => {
  if (e.data === "change over") void self.skipWaiting();
  if (e.data === "count") e.waitUntil(answer(e.ports[0]));
});

self.addEventListener("fetch", (e) => {
  const url = new URL(e.request.url);
  if (e.request.method !== "GET" || url.origin !== location.origin || !url.href.startsWith(self.registration.scope)) return;
  e.respondWith(serve(url, e));
});

/** Where a file is kept. */
const place = (name: string): string => new URL(name, self.registration.scope).href;

/**
 * Tells a page how much of this edition is here, by counting. Where something
 * is lost it is fetched again, and the page told once more.
 */
const answer = async (port: MessagePort | undefined): Promise<void> => {
  const count = async (done: boolean): Promise<number> => {
    const here = new Set((await (await caches.open(shelf)).keys()).map((r) => r.url));
    const kept = self.files.filter(([name]) => here.has(place(name))).length;
    port?.postMessage({ kept, all: self.files.length, done });
    return kept;
  };
  if ((await count(false)) === self.files.length) return;
  await mend();
  await count(true);
};

/** The fetching that is under way, so that there is never more than one. */
let mending: Promise<void> | undefined;

/** Fetches what has been lost; what cannot be had now stays for the next time. */
const mend = (): Promise<void> =>
  (mending ??= fill()
    .catch(() => undefined)
    .finally(() => {
      mending = undefined;
    }));

/** Fetches every file, a few at a time, and refuses one that is not this edition's. */
const fill = async (): Promise<void> => {
  const cache = await caches.open(shelf);
  const waiting = [...self.files];
  const fetcher = async (): Promise<void> => {
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      const [name, hash] = next;
      const url = new URL(place(name));
      if (await cache.match(url)) continue;
      // A cache on the way may hold the last edition's for this one's: a file
      // that differs is asked for once more, past all of them.
      const response = (await right(url, hash, "no-cache")) ?? (await right(url, hash, "reload"));
      if (!response) throw new Error(`${name} belongs to another edition`);
      await cache.put(url, plain(response));
    }
  };
  await Promise.all(Array.from({ length: 6 }, fetcher));
};

/** A file fetched, if it is the one with this hash. */
const right = async (url: URL, hash: string, cache: RequestCache): Promise<Response | undefined> => {
  const response = await fetch(url, { cache });
  if (!response.ok) throw new Error(`${url.pathname}: ${response.status}`);
  const sum = await crypto.subtle.digest("SHA-256", await response.clone().arrayBuffer());
  const hex = [...new Uint8Array(sum)].map((b) => b.toString(16).padStart(2, "0")).join("");
  return hex === hash ? response : undefined;
};

/** Throws the editions away that are no longer served. */
const clear = async (): Promise<void> => {
  for (const name of await caches.keys()) {
    if (name.startsWith(own) && name !== shelf) await caches.delete(name);
  }
  await self.clients.claim();
};

/** A response as if it had come at once: browsers refuse one that was redirected as an answer to a page's address. */
const plain = (response: Response): Response =>
  response.redirected ? new Response(response.body, { headers: response.headers }) : response;

/**
 * Answers from this edition, with or without the page's ending, since some
 * hosts take it off; what it does not hold is asked of the network. A file of
 * the edition that has been lost is fetched again, with all others that are.
 */
const serve = async (url: URL, e: FetchEvent): Promise<Response> => {
  const cache = await caches.open(shelf);
  const at = new URL(url.pathname, url.origin);
  const page = new URL(at.pathname + (at.pathname.endsWith("/") ? "index.html" : ".html"), url.origin);
  const found = (await cache.match(at)) ?? (await cache.match(page));
  if (found) return found;
  if (self.files.some(([name]) => [at.href, page.href].includes(place(name)))) e.waitUntil(mend());
  return fetch(e.request);
};
