// Loads the page again when it has changed, and shows over it what keeps the
// sheets as they were last saved from being built. Served while a book is
// written, never published.
(() => {
  const script = /** @type {HTMLScriptElement} */ (document.currentScript);
  const base = new URL(".", script.src);
  const mine = script.dataset.sum;
  /** @type {EventSource | undefined} */
  let stream;
  /** @type {number | undefined} */
  let pictures;

  /** @param {{build: number, pictures: number, broken: boolean}} now */
  const settle = async (now) => {
    const answer = await fetch(location.href, { method: "HEAD", cache: "no-store" });
    const changed = answer.headers.get("Book-Page") !== mine;
    if (changed || (pictures !== undefined && pictures !== now.pictures)) {
      location.reload();
      return;
    }
    pictures = now.pictures;
    await (now.broken && !document.body.classList.contains("trouble") ? open() : close());
  };

  const place = () => document.querySelector(".baybook-live");

  const close = () => place()?.remove();

  const open = async () => {
    const list = await (await fetch(new URL("findings", base), { cache: "no-store" })).text();
    let box = place();
    if (!box) {
      const style = document.createElement("link");
      style.rel = "stylesheet";
      style.href = new URL("live.css", base).href;
      document.head.append(style);
      box = document.createElement("section");
      box.className = "baybook-live";
      box.setAttribute("role", "alert");
      document.body.append(box);
    }
    box.innerHTML = list;
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = "Hide";
    button.addEventListener("click", close);
    box.prepend(button);
  };

  const listen = () => {
    stream = new EventSource(new URL("events", base));
    stream.onmessage = (e) => void settle(JSON.parse(e.data)).catch(() => undefined); // the server has gone; the stream comes back with it
  };

  // A browser opens only six connections to a server, so a page out of sight
  // gives its own back.
  document.addEventListener("visibilitychange", () => {
    stream?.close();
    stream = undefined;
    if (!document.hidden) listen();
  });
  if (!document.hidden) listen();
})();
