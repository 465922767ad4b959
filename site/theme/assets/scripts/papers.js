/* The controls below a spread: its best colourways, the paper sets, and each paper that can be exchanged by hand. */
(() => {
  "use strict";

  const section = document.querySelector("[data-exchange]");
  if (!section || !window.exchange) return;
  const { exchange, filled } = window;
  const { data } = exchange;
  const say = section.dataset;
  const find = (selector) => section.querySelector(selector);

  const parts = [...section.querySelectorAll(".parts > li")].map((item) => ({ item, swatch: item.querySelector("image") }));
  const panel = find("#by-role");
  let open = -1; // the role whose papers are looked through

  /** A radio button with its label; `shows()` gives what choosing it shows, as for `exchange.choose`. */
  function offer(group, { words, label: spoken, seen, is, shows, beside }) {
    const made = document.getElementById("offer").content.cloneNode(true);
    const [label, button] = ["label", "input"].map((name) => made.querySelector(name));
    Object.assign(button, { name: group, checked: is });
    if (spoken) button.setAttribute("aria-label", spoken);
    label.querySelector(".chips").replaceChildren(...beside);
    label.querySelector(".words").textContent = words;
    if (seen) label.querySelector(".words").append(document.createElement("br"), small(seen));
    button.addEventListener("change", () => exchange.choose(...shows()));
    for (const near of ["pointerenter", "focusin"]) label.addEventListener(near, () => exchange.prepare(...shows()));
    return made;
  }

  function small(words) {
    const made = document.createElement("small");
    made.textContent = words;
    return made;
  }

  /** The colours of a face: its ground, and what is printed on it. */
  function chip({ colours: [ground, one = ground, other = one] }) {
    const made = document.createElement("i");
    made.style.setProperty("--ground", ground);
    made.style.setProperty("--one", one);
    made.style.setProperty("--other", other);
    return made;
  }

  const titles = (set, faces) => faces.map((face) => set.faces[face].title).join(", ");
  const chips = (set, faces) => faces.map((face) => chip(set.faces[face]));

  function swatch(set, face, role) {
    const made = parts[role].swatch.closest("svg").cloneNode(true);
    made.querySelector("image").setAttribute("href", exchange.picture(set, face));
    return made;
  }

  function showSets({ set: current }) {
    find(".by-set .offered").replaceChildren(
      ...data.sets.map((set) =>
        offer("set", { words: set.title, is: set === current, shows: () => [set.id, 0], beside: chips(set, set.best[0].faces) }),
      ),
    );
  }

  function showBest({ set, best }) {
    find(".ranked .offered").replaceChildren(
      ...set.best.map(({ faces }, number) =>
        offer("best", {
          words: String(number + 1),
          label: filled(say.number, { number: number + 1, faces: titles(set, faces) }),
          is: number === best,
          shows: () => [set.id, number],
          beside: chips(set, faces),
        }),
      ),
    );
  }

  function showFaces({ set, faces }) {
    if (open < 0) return;
    panel.querySelector("legend").textContent = filled(say.for, { role: data.roles[open].title });
    panel.querySelector(".offered").replaceChildren(
      ...set.fitting[open].map((number) => {
        const face = set.faces[number];
        return offer("face", {
          words: face.title,
          seen: face.seen,
          is: faces[open] === number,
          shows: () => [set.id, exchange.now().faces.map((other, role) => (role === open ? number : other))],
          beside: [swatch(set, face, open)],
        });
      }),
    );
    panel.querySelector(".left-out").textContent = set.left_out[open];
    panel.querySelector("a").href = `${say.sets}/${set.id}/index.html`;
  }

  function checked(group, number) {
    section.querySelectorAll(`input[name=${group}]`).forEach((button, place) => {
      button.checked = place === number;
    });
  }

  function toggle(role) {
    const before = open;
    open = role === open ? -1 : role;
    panel.hidden = open < 0;
    parts.forEach(({ button }, number) => button.setAttribute("aria-expanded", String(number === open)));
    showFaces(exchange.now());
    if (open < 0) parts[before].button.focus();
    else panel.querySelector("input:checked").focus();
  }

  /** Where a swatch led to the page of its paper it now offers the others. */
  function madeButton(part, role) {
    const button = document.createElement("button");
    const unseen = Object.assign(document.createElement("span"), { className: "unseen", textContent: `, ${say.exchangeIt}` });
    button.type = "button";
    button.setAttribute("aria-controls", panel.id);
    button.setAttribute("aria-expanded", "false");
    button.append(...part.item.querySelector("a").childNodes, unseen);
    button.addEventListener("click", () => toggle(role));
    part.item.replaceChildren(button);
    part.button = button;
  }

  let shown = exchange.now().set;

  function follow(now, isShown = true) {
    const { set, faces, best } = now;
    if (set !== shown) {
      shown = set;
      showBest(now);
      showFaces(now);
    }
    checked("best", best);
    checked("set", data.sets.indexOf(set));
    if (open >= 0) checked("face", set.fitting[open].indexOf(faces[open]));
    for (const [role, { item, swatch: picture }] of parts.entries()) {
      picture.setAttribute("href", exchange.picture(set, set.faces[faces[role]]));
      item.querySelector("b").textContent = set.faces[faces[role]].title;
    }
    const link = find("#papers a");
    link.textContent = set.title;
    link.href = `${say.sets}/${set.id}/index.html`;
    find(".why").textContent = best < 0 ? "" : set.best[best].why;
    find(".reset").hidden = set === data.sets[0] && best === 0;
    find(".now").textContent = isShown ? told(now) : say.failed;
    find(".now").classList.toggle("unseen", isShown);
  }

  function told({ set, faces, best }) {
    const sentence = best < 0 ? say.own : say.now;
    return filled(sentence, { papers: set.title, faces: titles(set, faces), number: best + 1, count: set.best.length });
  }

  parts.forEach(madeButton);
  showSets(exchange.now());
  showBest(exchange.now());
  follow(exchange.now());
  exchange.listen(follow);
  panel.addEventListener("keydown", (event) => {
    if (event.key === "Escape") toggle(open);
  });
  panel.querySelector(".close").addEventListener("click", () => toggle(open));
  find(".reset").addEventListener("click", () => {
    exchange.choose(data.sets[0].id, 0);
    find("input[name=best]").focus();
  });
  find(".exchanging").hidden = false;
  find(".also")?.remove();
})();
