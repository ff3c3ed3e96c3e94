// Keeping the book on the device, and saying plainly where that cannot be.

/** Registers the worker and tells the reader how the book is kept. */
export const start = (root: HTMLElement): void => {
  const place = root.querySelector<HTMLElement>("[data-kept]");
  const tell = (words: string): void => {
    if (place) place.textContent = words;
  };
  if (location.protocol === "file:") {
    tell("This copy is read from a folder: all of it is here, and nothing more needs keeping.");
    return;
  }
  if (root.querySelector("meta[name=being-written]")) {
    tell(
      "This book is shown from the lead's desk, as it was last saved, and is not kept on this device. With no signal these pages will not open. The published book, at an HTTPS address or on a memory stick, is there without signal.",
    );
    return;
  }
  if (!("serviceWorker" in navigator) || !window.isSecureContext) {
    tell(
      "This browser cannot keep the book, because the address is plain HTTP. With no signal these pages will not open. Ask the lead for an HTTPS address, or carry the folder on a memory stick.",
    );
    return;
  }
  const scope = String(root.dataset.root) || "./";
  navigator.serviceWorker
    .register(`${scope}worker.js`, { scope, updateViaCache: "none" })
    .then((registration) => {
      watch(registration, tell);
      const offer = (): void => {
        if (registration.waiting && navigator.serviceWorker.controller) newer(registration.waiting);
      };
      offer();
      registration.addEventListener("updatefound", () => {
        registration.installing?.addEventListener("statechange", offer);
      });
    })
    .catch((e: unknown) => tell(`The book could not be kept on this device: ${e instanceof Error ? e.message : String(e)}`));
};

/** Says how much of the book is on the device by now. */
const watch = (registration: ServiceWorkerRegistration, tell: (words: string) => void): void => {
  if (registration.active) {
    count(registration.active, tell);
    return;
  }
  tell("Keeping the book on this device…");
  const worker = registration.installing ?? registration.waiting;
  worker?.addEventListener("statechange", () => {
    if (worker.state === "activated") count(worker, tell);
    if (worker.state === "redundant" && !registration.active) tell("The book could not be kept whole. It is tried again when a page is next opened.");
  });
};

/** What the worker counts; done is true once it has tried to fetch what was lost. */
interface Count {
  kept: number;
  all: number;
  done: boolean;
}

/** Asks the worker what is here, for a browser may throw kept files away. */
const count = (worker: ServiceWorker, tell: (words: string) => void): void => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = (e: MessageEvent<Count>) => {
    const { kept, all, done } = e.data;
    if (kept === all) tell("The whole book is kept on this device and opens without signal.");
    else if (done) tell(`Only ${kept} of the book's ${all} files are on this device. Open this page again where there is signal, to fetch the rest.`);
    else tell(`Only ${kept} of the book's ${all} files are still on this device. The rest is fetched again…`);
  };
  worker.postMessage("count", [port2]);
};

/** Offers the newer edition; the page changes over as a whole. */
const newer = (worker: ServiceWorker): void => {
  if (document.querySelector(".newer")) return;
  const bar = document.createElement("p");
  bar.className = "newer";
  bar.setAttribute("role", "status");
  bar.textContent = "A newer edition of the book is here. ";
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Change over";
  button.addEventListener("click", () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
    worker.postMessage("change over");
  });
  bar.append(button);
  document.querySelector("main")?.before(bar);
};
