/* What shows papers is taken away in those that are shown above, where a service gives it in any. */
(() => {
  "use strict";

  const section = document.querySelector("[data-downloads]");
  const service = document.querySelector("meta[name=spreadwright-api]");
  if (!section || !service) return;
  const root = new URL(service.content.replace(/\/?$/, "/"), window.location.href);
  const told = section.querySelector(".chosen");
  const links = [...section.querySelectorAll("a[data-follows]")];
  const names = links.map((link) => link.pathname.split("/").pop());

  function follow({ set, title, id }) {
    for (const [number, link] of links.entries()) {
      const address = new URL(link.dataset.answered, root);
      address.searchParams.set("set", set);
      address.searchParams.set("colourway", id);
      link.href = address;
      link.download = names[number].replace(/\.\w+$/, (suffix) => `-${set}${suffix}`);
      link.parentElement.querySelector("small").hidden = true; // how large it will be is not known
    }
    told.textContent = window.filled(section.dataset.follows, { papers: title });
  }

  document.addEventListener("spread:choice", (event) => follow(event.detail));
})();
