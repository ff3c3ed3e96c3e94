// Takes the place of a worker that another site left on this address, and
// takes itself away with all that was kept: a book being written is always
// shown as it was last saved.
self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (e) =>
  e.waitUntil(
    (async () => {
      for (const name of await caches.keys()) if (name.startsWith("book-")) await caches.delete(name);
      await self.registration.unregister();
    })(),
  ),
);
