/* Layouts in other papers: a row of paper dots under each picture turns to the next set, and so does resting on the picture.
   Pictures are fetched only when they are asked for, and shown once they are whole. */
(() => {
  "use strict";

  const FIRST_MS = 900, NEXT_MS = 1600;
  const still = window.matchMedia("(prefers-reduced-motion: reduce)");
  const told = document.getElementById("turned");
  const { filled } = window;

  class Layout {
    constructor(item, titles, words) {
      this.sets = item.dataset.turns.split(" ").map((turn) => turn.split(":"));
      this.titles = titles;
      this.words = words;
      this.link = item.querySelector("a");
      this.image = item.querySelector("img");
      this.home = this.image.dataset.set;
      this.kept = this.shown = this.home;
      this.byChoice = false; // whether the sets that are asked for above decide
      this.alt = this.image.alt;
      this.title = item.querySelector("h2, h3").textContent;
      this.button = this.dots();
      item.querySelector(".turns").append(this.button);
      this.listen(item);
      this.say();
    }

    dots() {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "turn";
      for (const [set, colours] of this.sets) {
        const dot = document.createElement("span");
        dot.dataset.set = set;
        const [ground, other] = colours.split(",");
        dot.style.setProperty("--ground", ground);
        dot.style.setProperty("--other", other);
        dot.title = this.titles[set];
        button.append(dot);
      }
      return button;
    }

    listen(item) {
      let previewed = "", timer = 0;
      this.button.addEventListener("pointerover", (event) => {
        previewed = event.pointerType === "mouse" ? event.target.dataset.set || "" : "";
        if (previewed) this.show(previewed);
      });
      this.button.addEventListener("pointerleave", () => { previewed = ""; this.show(this.kept); });
      this.button.addEventListener("click", () => { this.keep(previewed && previewed !== this.kept ? previewed : this.after(1)); });
      this.button.addEventListener("keydown", (event) => {
        const way = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
        if (!way) return;
        event.preventDefault();
        this.keep(this.after(way));
      });
      const turn = () => {
        this.show(this.after(1, this.shown));
        timer = window.setTimeout(turn, NEXT_MS);
      };
      const picture = item.querySelector(".laid");
      picture.addEventListener("pointerenter", (event) => {
        if (event.pointerType === "mouse" && !still.matches) timer = window.setTimeout(turn, FIRST_MS);
      });
      picture.addEventListener("pointerleave", () => { window.clearTimeout(timer); this.show(this.kept); });
    }

    after(way, from = this.kept) {
      const place = this.sets.findIndex(([set]) => set === from);
      return this.sets[(place + way + this.sets.length) % this.sets.length][0];
    }

    has(set) {
      return this.sets.some(([each]) => each === set);
    }

    /* Until somebody chooses otherwise. */
    keep(set, isTold = true) {
      this.kept = set;
      this.link.hash = set === this.home ? "" : `in=${set}`;
      if (set === this.home) this.link.href = this.link.href.replace(/#$/, "");
      this.show(set);
      this.say();
      if (isTold && told) told.textContent = filled(this.words.turned, { title: this.title, set: this.titles[set] });
    }

    async show(set) {
      this.wanted = set;
      if (set === this.shown) return;
      const next = new Image();
      const renamed = (text) => text.replace(/\/in-[^/\s]*-(\d+\.webp)/g, `/in-${set}-$1`);
      next.sizes = this.image.sizes;
      next.srcset = renamed(this.image.srcset);
      next.src = renamed(this.image.getAttribute("src"));
      try { await next.decode(); } catch { return; }  // not to be had, so the one before stays
      if (this.wanted !== set || this.shown === set) return;
      this.image.srcset = renamed(this.image.srcset);
      this.image.src = renamed(this.image.getAttribute("src"));
      this.shown = set;
      this.image.alt = set === this.home ? this.alt : filled(this.words.turned, { title: this.title, set: this.titles[set] });
      for (const dot of this.button.children) dot.classList.toggle("current", dot.dataset.set === set);
    }

    say() {
      const place = this.sets.findIndex(([set]) => set === this.kept) + 1;
      const parts = { set: this.titles[this.kept], place, count: this.sets.length };
      this.button.setAttribute("aria-label", filled(this.words.button, parts));
      for (const dot of this.button.children) dot.classList.toggle("current", dot.dataset.set === this.kept);
    }
  }

  for (const list of document.querySelectorAll("[data-sets]")) {
    const titles = JSON.parse(list.dataset.sets);
    const words = { turned: list.dataset.turned, button: list.dataset.button };
    for (const item of list.children) {
      const row = document.createElement("div");
      row.className = "turns";
      item.append(row);
    }
    const layouts = [...list.querySelectorAll("[data-turns]")]
      .filter((item) => item.dataset.turns.includes(" "))
      .map((item) => new Layout(item, titles, words));
    list.addEventListener("papers", (event) => {
      for (const layout of layouts) {
        const wanted = event.detail.find((set) => layout.has(set));
        const set = event.detail.includes(layout.home) ? layout.home : wanted || layout.home;
        if (event.detail.length || layout.byChoice) layout.keep(set, false);
        layout.byChoice = event.detail.length > 0;
      }
    });
  }
})();
