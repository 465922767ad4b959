/* Which papers a recipe's page shows: the choice, the address that holds it, and who is told of it.

   exchange.data               what the page knows of papers, as gallery/recipe/exchange_data.py gives it
   exchange.picture(set, face) the address of the picture of a whole face
   exchange.now()              { set, faces, best }: of the data, the number of a face for each role, and which of the
                               set's best colourways that is (-1: none of them)
   exchange.choose(id, which)  a set's best colourway by its number (0 when left out), or faces by their numbers
   exchange.prepare(id, which) loads what that would show
   exchange.listen(heard)      heard(now) whenever something else is shown, and when it could not be

   Every choice is told to the document as well: "spread:choice" with { set, title, roles: { role: "paper" | "paper~back" }, id }. */
(() => {
  "use strict";

  const held = document.getElementById("exchange");
  if (!held || !window.spread || !window.address) return;
  const { filled } = window;
  const data = JSON.parse(held.textContent);
  const folder = held.dataset.pictures;
  const listeners = [];

  /** Both faces of every paper of a set, each with its paper, side and title: a face and its other side are neighbours. */
  const facesOf = ({ papers }) =>
    papers.flatMap(({ id, title, faces: [front, back] }) => [
      { ...front, paper: id, side: "front", title },
      { ...back, paper: id, side: "back", title: filled(data.back, { paper: title }) },
    ]);
  for (const set of data.sets) set.faces = facesOf(set);

  const sets = new Map(data.sets.map((set) => [set.id, set]));
  const first = data.sets[0];
  const same = (one, other) => one.every((face, role) => face === other[role]);
  const named = (face) => `${face.paper}.${face.side}`;

  function chosen(set, faces) {
    return { set, faces, best: set.best.findIndex((each) => same(each.faces, faces)) };
  }

  let now = chosen(first, first.best[0].faces); // what was chosen last
  let shown = now;

  /** What a wish comes to: anything that does not fit gives way to the set's best. */
  function wished(id, which = 0) {
    const set = sets.get(id) ?? first;
    const best = set.best[Number.isInteger(which) ? which : 0] ?? set.best[0];
    const faces = best.faces.map((face, role) => (set.fitting[role].includes(which[role]) ? which[role] : face));
    return chosen(set, faces);
  }

  const picture = (set, face) => `${folder}/${set.id}/face-${face.paper}-${face.side}.svg`;

  function papersOf({ set, faces }) {
    const numbers = new Map(data.roles.map((role, number) => [role.id, faces[number]]));
    return (role, isOtherSide) => {
      const face = set.faces[isOtherSide ? numbers.get(role) ^ 1 : numbers.get(role)];
      const edge = face.edge ?? data.edge;
      return { address: picture(set, face), edge, pencil: data.pencils[face.pencil ?? 0] };
    };
  }

  const titles = ({ set, faces }) => faces.map((face) => set.faces[face].title);

  async function show(next, remember) {
    const label = filled(data.seen, { papers: titles(next).join(", ") });
    now = next;
    const isShown = await window.spread.show(papersOf(next), label);
    if (now !== next) return; // something else was chosen meanwhile
    if (!isShown) now = shown;
    else if (remember) window.address.write(stated(next), { step: true });
    shown = now;
    for (const heard of listeners) heard(now, isShown);
    if (isShown) tell();
  }

  function tell() {
    const ids = now.faces.map((number) => {
      const face = now.set.faces[number];
      return face.side === "back" ? `${face.paper}~back` : face.paper;
    });
    const detail = {
      set: now.set.id,
      title: now.set.title,
      roles: Object.fromEntries(data.roles.map((role, number) => [role.id, ids[number]])),
      id: [now.set.id, ...ids].join("."),
    };
    document.dispatchEvent(new CustomEvent("spread:choice", { detail }));
  }

  /** The address says no more than it must: nothing for what is shown first, the set alone for its best. */
  function stated({ set, faces, best }) {
    const changes = Object.fromEntries(data.roles.map((role, number) => [role.key, best ? named(set.faces[faces[number]]) : null]));
    return { ...changes, in: set === first && !best ? null : set.id };
  }

  function read(state) {
    const set = sets.get(state.get("in")) ?? first;
    return wished(set.id, data.roles.map((role) => set.faces.findIndex((face) => named(face) === state.get(role.key))));
  }

  const choose = (id, which) => show(wished(id, which), true);
  const prepare = (id, which) => window.spread.load(papersOf(wished(id, which)));

  window.exchange = Object.freeze({ data, picture, now: () => now, choose, prepare, listen: (heard) => listeners.push(heard) });
  window.address.listen((state) => show(read(state), false));
  const asked = read(window.address.read());
  if (asked.set !== first || asked.best !== 0) {
    document.addEventListener("DOMContentLoaded", () => show(asked, false), { once: true });
  }
})();
