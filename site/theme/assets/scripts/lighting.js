/* A piece that is pointed at, focused or pressed is lit wherever it is shown: on its sheet, in the pile, in the placement,
   in sentences and tables, on the spread. Everything that carries data-piece takes part; several names are parted by
   spaces. What is pressed stays lit until it is pressed again, or Escape. */
(() => {
  "use strict";

  const SVG = "http://www.w3.org/2000/svg";
  const OTHERS = "a, button:not(.row), input, select, textarea, label, summary";
  const bar = document.querySelector(".lit-bar");
  let pressed = "";
  let lit = "";

  const named = (id) => document.querySelectorAll(`[data-piece~="${CSS.escape(id)}"]`);
  const pieceAt = (target) => target.closest?.("[data-piece]")?.dataset.piece || "";

  /* Where a group shows its piece, in its own coordinates: what it is clipped to, or its first rectangle. */
  function boxOf(group) {
    const clip = /url\("?#([^")]+)/.exec(group.getAttribute("clip-path") || "");
    const shape = (clip && document.getElementById(clip[1])?.querySelector("rect")) || group.querySelector("rect") || group;
    const [x, y, width, height] = ["x", "y", "width", "height"].map((side) => Number(shape.getAttribute?.(side)));
    return width && height ? { x, y, width, height } : group.getBBox();
  }

  function added(parent, tag, attributes) {
    const element = document.createElementNS(SVG, tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    parent.append(element);
    return element;
  }

  function placeOf(group, svg) {
    const [here, whole] = [group.getScreenCTM(), svg.getScreenCTM()];
    if (!here || !whole) return null;  // not shown at the moment
    const box = boxOf(group);
    const moved = whole.inverse().multiply(here);
    const corners = [[box.x, box.y], [box.x + box.width, box.y + box.height]].map(([x, y]) => new DOMPoint(x, y).matrixTransform(moved));
    const [xs, ys] = [corners.map((each) => each.x), corners.map((each) => each.y)];
    const [x, y] = [Math.min(...xs), Math.min(...ys)];
    return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y, px: 1 / Math.hypot(whole.a, whole.b) };
  }

  function frame(group, svg, id) {
    const at = placeOf(group, svg);
    if (!at) return;
    const { px, ...box } = at;
    const parent = added(svg, "g", { class: "frame-of-lit", "aria-hidden": "true" });
    const number = svg.querySelector(":scope > circle");
    if (number) number.before(parent);  // numbers of cuts stay readable
    added(parent, "rect", { ...box, class: "halo" });
    added(parent, "rect", { ...box, class: "edge" });
    if (!svg.closest(".drawing, .room")) tag(parent, box, px, id);  // drawings have their labels
  }

  /* Mark and name in the upper left corner, as large on every screen. */
  function tag(parent, box, px, id) {
    const text = document.createElementNS(SVG, "text");
    text.textContent = told(id);
    text.setAttribute("font-size", 15 * px);
    text.setAttribute("x", box.x + 7 * px);
    text.setAttribute("y", box.y + 19 * px);
    const back = added(parent, "rect", { class: "tag", x: box.x, y: box.y, height: 26 * px });
    parent.append(text);
    back.setAttribute("width", text.getComputedTextLength() + 14 * px);
  }

  function rowOf(id) {
    return document.querySelector(`.pile [data-piece~="${CSS.escape(id)}"]`);
  }

  function told(id) {
    const mark = rowOf(id)?.querySelector(".mark")?.textContent;
    return mark ? `${mark} ${id}` : id;
  }

  function dim() {
    for (const element of document.querySelectorAll(".lit")) element.classList.remove("lit");
    for (const element of document.querySelectorAll(".frame-of-lit")) element.remove();
  }

  function light(pieces, { again = false } = {}) {
    if (pieces === lit && !again) return;
    lit = pieces;
    dim();
    for (const id of pieces.split(" ").filter(Boolean)) {
      const framed = new Set();
      for (const element of named(id)) {
        const svg = element.ownerSVGElement;
        element.classList.add("lit");
        if (!svg || framed.has(svg)) continue;
        framed.add(svg);
        frame(element, svg, id);
      }
    }
  }

  function place(name, id, inside) {
    const link = bar.querySelector(`[data-to="${name}"]`);
    const found = [...named(id)].map((element) => element.closest(inside)).find(Boolean);
    const heading = found?.querySelector("[id]:is(h2, h3)") || found?.closest("section")?.querySelector("[id]:is(h2, h3)");
    link.hidden = !heading;
    if (heading) link.hash = heading.id;
  }

  function tell() {
    for (const row of document.querySelectorAll("button.row")) {
      row.setAttribute("aria-pressed", String(pressed.split(" ").includes(row.parentElement.dataset.piece)));
    }
    if (!bar) return;
    bar.hidden = !pressed;
    if (!pressed) return;
    const [id] = pressed.split(" ");
    bar.querySelector("p").textContent = pressed.split(" ").map(told).join(", ");
    place("sheet", id, "section.cut-sheet");
    place("pile", id, "[aria-labelledby='piles']");
    place("placement", id, "[aria-labelledby='placement']");
  }

  function press(pieces) {
    pressed = pieces === pressed ? "" : pieces;
    light(pressed);
    tell();
  }

  document.addEventListener("pointerover", (event) => {
    if (event.pointerType === "mouse") light(pieceAt(event.target) || pressed);
  });
  document.addEventListener("focusin", (event) => {
    if (event.target.matches(".row:focus-visible")) light(pieceAt(event.target));
  });
  document.addEventListener("focusout", () => light(pressed));
  document.addEventListener("click", (event) => {
    if (event.target.closest?.(".lit-bar button")) press("");
    else if (!event.target.closest?.(OTHERS) && pieceAt(event.target)) press(pieceAt(event.target));
  });
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && pressed && !document.querySelector("dialog[open]")) press("");
  });

  /* Rows of the piles become buttons: without a script they would do nothing. */
  function prepare(root) {
    for (const row of root.querySelectorAll("[data-piece] > span.row")) {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "row";
      button.setAttribute("aria-pressed", "false");
      button.append(...row.childNodes);
      row.replaceWith(button);
    }
    for (const told of root.querySelectorAll("[data-scripted]")) told.hidden = false;
  }

  document.addEventListener("shown", (event) => {
    prepare(event.detail);
    light(lit, { again: true });
    tell();
  });
  prepare(document);
  document.body.classList.add("lightable");
})();
