/* The line above the layouts: words, choices that combine, order. All of it stands in the address. */
(() => {
  "use strict";

  const form = document.getElementById("finder");
  const list = document.getElementById("layouts");
  if (!form || !list) return;

  const layouts = window.finding.prepared(JSON.parse(document.getElementById("layouts-data").textContent));
  const items = new Map([...list.children].map((item) => [item.dataset.layout, item]));
  const boxes = [...form.querySelectorAll("input[type=checkbox]")];
  const kinds = [...new Set(boxes.map((box) => box.name))];
  const counters = boxes.map((box) => box.parentElement.querySelector(".count"));
  const words = form.elements.words, order = form.elements.order;
  const opener = form.querySelector(".opener"), panel = document.getElementById("choices");
  const told = form.querySelector(".told"), marks = form.querySelector(".marks"), nothing = document.getElementById("nothing");
  const clearers = document.querySelectorAll("[data-clear]");
  let lastOrder = "";

  const chosen = () =>
    new Map(kinds.map((kind) => [kind, new Set(boxes.filter((box) => box.name === kind && box.checked).map((box) => box.value))]));
  const setText = (node, text) => { if (node.textContent !== text) node.textContent = text; };
  const setHidden = (node, isHidden) => { if (node.hidden !== isHidden) node.hidden = isHidden; };
  const { filled } = window;

  function show() {
    const now = chosen();
    const { found, counts } = window.finding.search(layouts, { words: words.value, chosen: now }, kinds);
    sort();
    for (const [id, item] of items) setHidden(item, !found.has(id));
    boxes.forEach((box, number) => {
      const count = counts[box.name].get(box.value) || 0;
      setText(counters[number], String(count));
      box.parentElement.classList.toggle("empty", !count && !box.checked);
    });
    const pattern = found.size === layouts.length ? form.dataset.all : form.dataset.told;
    setText(told, filled(pattern, { shown: found.size, count: layouts.length }));
    setHidden(nothing, found.size > 0);
    mark();
    const sets = [...(now.get("in") || [])];
    list.dispatchEvent(new CustomEvent("papers", { detail: sets }));
  }

  function sort() {
    if (order.value === lastOrder) return;
    lastOrder = order.value;
    list.append(...window.finding.ordered(layouts, order.value, document.documentElement.lang).map((id) => items.get(id)));
  }

  /* What is asked for, each with a button that takes it back. */
  function mark() {
    const asked = boxes.filter((box) => box.checked).map((box) => [`${box.name}=${box.value}`, nameOf(box)]);
    if (words.value.trim()) asked.unshift(["words=", filled(form.dataset.quoted, { name: words.value.trim() })]);
    marks.replaceChildren(...asked.map(([key, name]) => {
      const item = document.createElement("li"), button = document.createElement("button");
      button.type = "button";
      button.dataset.key = key;
      button.textContent = name;
      button.setAttribute("aria-label", filled(form.dataset.without, { name }));
      item.append(button);
      return item;
    }));
    for (const clearer of clearers) setHidden(clearer, !asked.length);
  }

  function nameOf(box) {
    const label = box.parentElement.querySelector(".choice").textContent;
    return filled(form.dataset.named, { kind: box.closest("fieldset").querySelector("legend").textContent, choice: label });
  }

  /* From the page to the address, and back. */
  function state(isStep) {
    const now = Object.fromEntries([...chosen()].map(([kind, values]) => [kind, [...values]]));
    window.address.write({ words: words.value.trim(), ...now, order: order.value }, { step: isStep });
  }

  function take(stated) {
    words.value = stated.get("words") || "";
    for (const box of boxes) box.checked = stated.getAll(box.name).includes(box.value);
    order.value = stated.get("order") || "";
    if (order.selectedIndex < 0) order.value = "";
    show();
  }

  function changed(isStep) {
    show();
    state(isStep);
  }

  function clear() {
    words.value = "";
    for (const box of boxes) box.checked = false;
    changed(true);
    (opener.offsetParent ? opener : words).focus();
  }

  function open(isOpen) {
    opener.setAttribute("aria-expanded", String(isOpen));
    panel.hidden = !isOpen;
  }

  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("change", (event) => { if (event.target !== words) changed(true); });
  words.addEventListener("input", () => changed(false));
  opener.addEventListener("click", () => open(panel.hidden));
  form.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || panel.hidden || event.target === words) return;
    open(false);
    opener.focus();
  });
  marks.addEventListener("click", (event) => {
    const key = event.target.dataset.key;
    if (!key) return;
    const place = [...marks.children].indexOf(event.target.parentElement);
    if (key === "words=") words.value = "";
    else boxes.find((box) => `${box.name}=${box.value}` === key).checked = false;
    changed(true);
    (marks.children[Math.min(place, marks.children.length - 1)]?.firstChild || opener).focus();
  });
  for (const clearer of clearers) clearer.addEventListener("click", clear);
  panel.querySelector(".closer")?.addEventListener("click", () => { open(false); opener.focus(); });

  window.address.listen(take);
  form.hidden = false;
  open(false);
  take(window.address.read());
})();
