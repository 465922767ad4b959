/* Lets the gallery be read without a network, where it comes from a server that browsers trust; never for plain files.
   A page that carries data-keep names the files of its recipe that are to be kept. */
(() => {
  "use strict";

  const { worker } = document.currentScript.dataset;
  if (!window.isSecureContext || !navigator.serviceWorker || !window.location.protocol.startsWith("http")) return;

  const absolute = (url) => new URL(url, window.location.href).href;

  function files() {
    const place = document.querySelector("[data-keep]");
    if (!place || navigator.connection?.saveData) return null;
    return { recipe: absolute("."), keep: place.dataset.keep.split(" ").map(absolute) };
  }

  window.addEventListener("load", async () => {
    try {
      await navigator.serviceWorker.register(worker);
      const { active } = await navigator.serviceWorker.ready;
      const kept = files();
      if (kept) active.postMessage(kept);
    } catch {
      // a browser that allows none; everything else works
    }
  });
})();
