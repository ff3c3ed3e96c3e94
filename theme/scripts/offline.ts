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

/** Says how far the keeping has come. */
const watch = (registration: ServiceWorkerRegistration, tell: (words: string) => void): void => {
  const kept = "The whole book is kept on this device and opens without signal.";
  if (registration.active) {
    tell(kept);
    return;
  }
  tell("Keeping the book on this device…");
  const worker = registration.installing ?? registration.waiting;
  worker?.addEventListener("statechange", () => {
    if (worker.state === "activated") tell(kept);
    if (worker.state === "redundant" && !registration.active) tell("The book could not be kept whole. It is tried again when a page is next opened.");
  });
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
