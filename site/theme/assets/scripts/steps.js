/* The steps one by one: arrow keys, space, swipe and buttons; the place is kept on this device and in the address
   (#step=7), and the screen is kept awake where the browser can. Without this script the page is a plain list. */
(() => {
  "use strict";

  const SWIPE = 50;  // px
  const root = document.querySelector(".stepping");
  if (!root) return;
  const screens = [...root.querySelectorAll(".screen")];
  const steer = root.querySelector(".steer");
  const awake = root.querySelector(".awake");
  const key = `spreadwright.step.${root.dataset.recipe}`;
  const names = screens.map((screen) => screen.dataset.step);
  let now = 0;
  let lock = null;
  let wanted = true;

  function kept() {
    try {
      return window.localStorage.getItem(key);
    } catch {
      return null;
    }
  }

  function keep(name) {
    try {
      window.localStorage.setItem(key, name);
    } catch {
      // the address has it, too
    }
  }

  function told(screen) {
    const number = Number(screen.dataset.step);
    if (!number) return screen.querySelector("h2").firstChild.textContent.trim();
    return window.filled(root.dataset.of, { number, total: root.dataset.total });
  }

  function progress(name) {
    if (name === "start") return 0;
    if (name === "done") return Number(root.dataset.total) + 1;
    return Number(name) || Number(names[names.indexOf(name) - 1]) || 0;
  }

  function show(index, { isMoved = true } = {}) {
    now = Math.max(0, Math.min(screens.length - 1, index));
    screens.forEach((screen, each) => { screen.hidden = each !== now; });
    steer.querySelector("[role=status]").textContent = told(screens[now]);
    steer.querySelector("progress").value = progress(names[now]);
    steer.querySelector(".back").disabled = now === 0;
    steer.querySelector(".next").disabled = now === screens.length - 1;
    if (isMoved) {
      window.address.write({ step: names[now] });
      keep(names[now]);
      window.scrollTo(0, 0);
      if (document.activeElement?.disabled || document.activeElement === document.body) screens[now].querySelector("h2").focus({ preventScroll: true });
    }
    watch();
  }

  const step = (by) => show(now + by);

  function pressed(event) {
    if (event.ctrlKey || event.altKey || event.metaKey || event.target.closest("input, select, textarea")) return;
    const onControl = event.target.closest("a, button, summary");
    const moves = { ArrowRight: 1, ArrowDown: 1, PageDown: 1, ArrowLeft: -1, ArrowUp: -1, PageUp: -1 };
    const tall = document.documentElement.scrollHeight > window.innerHeight + 1;
    if (event.key === " " && !onControl) step(event.shiftKey ? -1 : 1);
    else if (event.key === "Home") show(0);
    else if (event.key === "End") show(screens.length - 1);
    else if (moves[event.key] && !(tall && /Arrow(Up|Down)|Page/.test(event.key))) step(moves[event.key]);
    else return;
    event.preventDefault();
  }

  let start = null;
  root.addEventListener("touchstart", (event) => {
    const [touch] = event.touches;
    start = event.touches.length === 1 ? { x: touch.clientX, y: touch.clientY } : null;
  }, { passive: true });
  root.addEventListener("touchend", (event) => {
    if (!start) return;
    const [touch] = event.changedTouches;
    const [x, y] = [touch.clientX - start.x, touch.clientY - start.y];
    start = null;
    if (Math.abs(x) > SWIPE && Math.abs(x) > 2 * Math.abs(y)) step(x < 0 ? 1 : -1);
  });

  /* The screen stays awake between the first step and the last, while the page is seen and nobody objects. Who steps fast
     waits for the lock that is asked for, since a second one would never be let go. */
  let settled = Promise.resolve();
  function watch() {
    if (navigator.wakeLock) settled = settled.then(settle);
  }

  async function settle() {
    const isNeeded = wanted && now > 0 && now < screens.length - 1 && document.visibilityState === "visible";
    if (isNeeded && !lock) {
      try {
        lock = await navigator.wakeLock.request("screen");
        lock.addEventListener("release", () => { lock = null; tell(); });
      } catch {
        lock = null;  // a low battery, say
      }
    } else if (!isNeeded && lock) {
      await lock.release();
    }
    tell();
  }

  function tell() {
    awake.setAttribute("aria-pressed", String(wanted));
    const isWorking = now > 0 && now < screens.length - 1;
    steer.querySelector(".wake").textContent = isWorking ? root.dataset[lock ? "awake" : "asleep"] : "";
  }

  if (navigator.wakeLock) {
    awake.hidden = false;
    awake.addEventListener("click", () => { wanted = !wanted; watch(); });
    document.addEventListener("visibilitychange", watch);
  }

  document.addEventListener("keydown", pressed);
  steer.querySelector(".back").addEventListener("click", () => step(-1));
  steer.querySelector(".next").addEventListener("click", () => step(1));
  window.address.listen((state) => show(Math.max(0, names.indexOf(state.get("step")))));

  for (const hint of root.querySelectorAll("[data-scripted]")) hint.hidden = false;
  document.documentElement.classList.add("one-by-one");
  steer.hidden = false;
  show(Math.max(0, names.indexOf(window.address.read().get("step") ?? kept())), { isMoved: false });
})();
