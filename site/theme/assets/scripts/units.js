/* Inches or millimetres. What is told on another bench is worked out beforehand, never converted here: on a recipe's page
   it comes from a script file of its own when it is asked for, and the steps have a page for each unit.
   The choice is kept on this device where that is allowed, and in the address (#unit=mm).
   Whoever changes what is shown says so by the event "shown", with the element that it lies in. */
(() => {
  "use strict";

  const KEY = "spreadwright.unit";
  const place = document.querySelector("[data-other-unit]");
  const buttons = [...document.querySelectorAll(".units button")];
  if (!place || !buttons.length) return;

  const { unit: own, otherUnit: other } = place.dataset;
  const failed = document.querySelector(".units-told");
  const isSteps = place.classList.contains("stepping");
  const contents = new Map();
  let shown = own;
  let wanted = own; // what was asked for last: it may still be loading

  function kept() {
    try {
      return window.localStorage.getItem(KEY);
    } catch {
      return null;  // pages that are plain files, or a browser that keeps nothing
    }
  }

  function keep(unit) {
    try {
      window.localStorage.setItem(KEY, unit);
    } catch {
      // the address has it, too
    }
  }

  function mark() {
    for (const button of buttons) button.setAttribute("aria-pressed", String(button.dataset.unit === shown));
    for (const link of document.querySelectorAll("a[data-steps]")) link.hash = `unit=${shown}`;
  }

  function exchange(unit) {
    const before = document.createDocumentFragment();
    before.append(...place.childNodes);
    contents.set(shown, before);
    place.append(contents.get(unit));
    shown = unit;
    failed.textContent = "";
    mark();
    document.dispatchEvent(new CustomEvent("shown", { detail: place }));
  }

  document.addEventListener("told", ({ detail: { unit, html } }) => {
    const parsed = document.createElement("template");
    parsed.innerHTML = html;
    contents.set(unit, parsed.content);
  });

  function load(unit) {
    const script = document.createElement("script");
    script.src = place.dataset.other;
    script.addEventListener("load", () => show(wanted));
    script.addEventListener("error", () => {
      script.remove();
      failed.textContent = place.dataset.failed;
    });
    document.head.append(script);
  }

  function show(unit) {
    if (![own, other].includes(unit)) return;
    wanted = unit;
    if (unit === shown) return;
    if (isSteps) window.location.replace(`${place.dataset.other}${window.location.hash}`);
    else if (contents.has(unit)) exchange(unit);
    else load(unit);
  }

  for (const button of buttons) {
    button.addEventListener("click", () => {
      keep(button.dataset.unit);
      window.address.write({ unit: button.dataset.unit });
      show(button.dataset.unit);
    });
  }

  const asked = () => window.address.read().get("unit");
  window.address.listen(() => show(asked() || kept() || own));
  document.querySelector(".units").hidden = false;
  mark();
  show(asked() || kept() || own);
})();
