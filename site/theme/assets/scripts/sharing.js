/* The lines that show a layout on another page: completed with the address where this one is read, and copied. */
(() => {
  "use strict";

  const UNKNOWN = "https://gallery.invalid/";

  const snippet = document.querySelector(".snippet");
  if (!snippet) return;

  const isPublished = location.protocol === "https:" || location.protocol === "http:";
  if (isPublished && snippet.value.includes(UNKNOWN)) {
    const root = new URL(snippet.dataset.root + "/", location.href).href;
    snippet.value = snippet.value.replaceAll(UNKNOWN, () => root);
    snippet.closest(".elsewhere").hidden = false;
  }

  async function isCopied() {
    try {
      await navigator.clipboard.writeText(snippet.value);
      return true;
    } catch {
      return document.execCommand("copy"); // some pages may not use the clipboard themselves
    }
  }

  const button = document.querySelector(".copy");
  const told = button.parentElement.querySelector("[role=status]");
  button.hidden = false;
  button.addEventListener("click", async () => {
    snippet.select(); // where nothing may be copied, people see what to copy themselves
    told.textContent = (await isCopied()) ? button.dataset.copied : "";
  });
})();
