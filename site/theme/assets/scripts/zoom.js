/* A drawing, large: it moves into a dialog and back. Wheel, pinch, buttons and keys change its size; drag moves it. */
(() => {
  "use strict";

  const MOST = 8;
  const STEP = 1.4;
  const MARGIN = 8; // pixels round a drawing of which all is seen
  const dialog = document.querySelector("dialog.zoom");
  if (!dialog?.showModal) return;
  const room = dialog.querySelector(".room");
  const pointers = new Map();
  let svg = null;
  let home = null;
  let scale = 1;

  const fitting = () => {
    const [, , width, height] = svg.getAttribute("viewBox").split(" ").map(Number);
    return Math.min(room.clientWidth - 2 * MARGIN, ((room.clientHeight - 2 * MARGIN) * width) / height);
  };

  /* Change the size about a point of the room, which stays where it is. */
  function zoom(wanted, x = room.clientWidth / 2, y = room.clientHeight / 2) {
    const before = svg.getBoundingClientRect();
    const box = room.getBoundingClientRect();
    const share = [(x + box.left - before.left) / before.width, (y + box.top - before.top) / before.height];
    scale = Math.min(MOST, Math.max(1, wanted));
    svg.style.width = `${fitting() * scale}px`;
    const now = svg.getBoundingClientRect();
    room.scrollLeft += now.left + share[0] * now.width - (x + box.left);
    room.scrollTop += now.top + share[1] * now.height - (y + box.top);
    dialog.querySelector("[data-zoom='out']").disabled = scale === 1;
    dialog.querySelector("[data-zoom='in']").disabled = scale === MOST;
  }

  function open(opener) {
    home = opener.closest("figure").querySelector(".sheet");
    svg = home.querySelector("svg");
    home.style.height = `${home.offsetHeight}px`;
    room.append(svg);
    dialog.querySelector("h2").textContent = opener.dataset.name;
    dialog.showModal();
    scale = 1;
    zoom(1);
    room.focus();
  }

  function close() {
    svg.style.width = "";
    home.append(svg);
    home.style.height = "";
    pointers.clear();
  }

  document.addEventListener("click", (event) => {
    const opener = event.target.closest?.(".enlarge");
    if (!opener || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    open(opener);
  });
  document.addEventListener("dblclick", (event) => {
    const opener = event.target.closest?.(".drawing .sheet")?.closest("figure").querySelector(".enlarge");
    if (opener) open(opener);
  });

  const acts = { in: () => zoom(scale * STEP), out: () => zoom(scale / STEP), fit: () => zoom(1), close: () => dialog.close() };
  dialog.addEventListener("click", (event) => acts[event.target.closest("[data-zoom]")?.dataset.zoom]?.());
  dialog.addEventListener("close", close);
  dialog.addEventListener("keydown", (event) => {
    const act = { "+": "in", "=": "in", "-": "out", 0: "fit" }[event.key];
    if (!act || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    acts[act]();
  });
  room.addEventListener("wheel", (event) => {
    event.preventDefault();
    const box = room.getBoundingClientRect();
    zoom(scale * Math.exp(-event.deltaY / 400), event.clientX - box.left, event.clientY - box.top);
  }, { passive: false });

  const spread = () => {
    const [one, two] = [...pointers.values()];
    return Math.hypot(one.x - two.x, one.y - two.y);
  };

  room.addEventListener("pointerdown", (event) => {
    pointers.set(event.pointerId, { x: event.clientX, y: event.clientY });
  });
  room.addEventListener("pointermove", (event) => {
    const last = pointers.get(event.pointerId);
    if (!last) return;
    const before = pointers.size === 2 ? spread() : 0;
    const now = { x: event.clientX, y: event.clientY };
    pointers.set(event.pointerId, now);
    if (before) {
      const box = room.getBoundingClientRect();
      const [one, two] = [...pointers.values()];
      zoom((scale * spread()) / before, (one.x + two.x) / 2 - box.left, (one.y + two.y) / 2 - box.top);
    } else {
      if (!room.hasPointerCapture(event.pointerId)) room.setPointerCapture(event.pointerId);
      room.scrollLeft -= now.x - last.x;
      room.scrollTop -= now.y - last.y;
    }
  });
  for (const end of ["pointerup", "pointercancel"]) {
    room.addEventListener(end, (event) => pointers.delete(event.pointerId));
  }
  window.addEventListener("resize", () => dialog.open && zoom(scale));
})();
