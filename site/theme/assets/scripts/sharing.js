/* The lines that show a layout on another page: completed with the address where this one is read, and copied. */
(function () {
  "use strict";

  const UNKNOWN = "https://gallery.invalid/";

  const snippet = document.querySelector(".snippet");
  if (!snippet) return;

  const isPublished = location.protocol === "https:" || location.protocol === "http:";
  if (isPublished && snippet.value.includes(UNKNOWN)) {
    const root = new URL(snippet.dataset.root + "/", location.href).href;
    snippet.value = snippet.value.replaceAll(UNKNOWN, root);
    snippet.closest(".elsewhere").hidden = false;
  }

  const button = document.querySelector(".copy");
  const told = button.parentElement.querySelector("[role=status]");
  button.hidden = false;
  button.addEventListener("click", async () => {
    snippet.select();
    try {
      await navigator.clipboard.writeText(snippet.value);
    } catch {
      document.execCommand("copy"); // pages that are plain files may not use the clipboard themselves
    }
    told.textContent = button.dataset.copied;
  });
})();
