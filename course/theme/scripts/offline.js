/** Where the pages are served, a worker keeps them for a day without a network. A new edition is offered, never forced. */

import { button, make } from "./dom.js";

/** @param {string} root address of the pages */
export function keepForOffline(root) {
  if (!location.protocol.startsWith("http") || !("serviceWorker" in navigator)) return;
  addEventListener("load", async () => {
    try {
      const kept = await navigator.serviceWorker.register(new URL("worker.js", root));
      if (kept.waiting) offer(kept.waiting);
      kept.addEventListener("updatefound", () => {
        const next = kept.installing;
        next?.addEventListener("statechange", () => {
          if (next.state === "installed" && navigator.serviceWorker.controller) offer(next);
        });
      });
    } catch {
      // then the pages need the network, as they did
    }
  });
}

/** @param {ServiceWorker} next */
function offer(next) {
  const box = make("p", "edition", "There is a new edition of these pages. ");
  box.setAttribute("role", "status");
  const take = () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload());
    next.postMessage("take the new edition");
  };
  box.append(button("edition-take", "Take it", take), button("edition-later", "Later", () => box.remove()));
  document.body.append(box);
}
