/* How the papers are seen: in grey, or by people who do not tell all colours apart; and what is lost then. */
(() => {
  "use strict";

  const section = document.querySelector("[data-exchange]");
  if (!section || !window.exchange) return;
  const { filled } = window;
  const { data, now, listen } = window.exchange;
  const notes = section.querySelector(".notes");
  const say = notes.dataset;
  const buttons = [...section.querySelectorAll("input[name=sight]")];
  const names = new Map(buttons.map((button) => [button.value, button.nextElementSibling.textContent]));
  const list = new Intl.ListFormat(document.documentElement.lang);
  let sight = data.sights[0];

  const quoted = (face) => filled(say.quoted, { name: face.title });

  /** For each kind of sight the pairs of papers that are lost on each other where they meet, in words. */
  function lost({ set, faces }) {
    const known = new Map((set.lost ?? []).map(([one, other, ...sights]) => [`${one} ${other}`, sights]));
    const number = (role, isOtherSide) => (role < 0 ? set.faces.length : faces[role] ^ isOtherSide);
    const found = new Map(data.sights.map((each) => [each, new Set()]));
    for (const [role, side, otherRole, otherSide] of data.meetings) {
      const pair = [number(role, side), number(otherRole, otherSide)].sort((a, b) => a - b);
      const words = pair.map((each) => (set.faces[each] ? quoted(set.faces[each]) : say.page));
      for (const each of known.get(pair.join(" ")) ?? []) found.get(data.sights[each]).add(list.format(words));
    }
    return found;
  }

  function* seen(choice) {
    const found = lost(choice);
    const all = sight === data.sights[0] ? data.sights : [sight];
    const bad = all.filter((each) => found.get(each).size);
    for (const each of bad) {
      const pairs = [...found.get(each)].join("; ");
      yield filled(each === data.sights[0] ? say.alike : say.lost, { sight: names.get(each), pairs });
    }
    if (!bad.length) yield all.length > 1 ? say.allApart : filled(say.apart, { sight: names.get(sight) });
  }

  function* written({ set, faces }) {
    for (const number of new Set(data.captions.map(([role, isOtherSide]) => faces[role] ^ isOtherSide))) {
      const face = set.faces[number];
      if (face.writing) yield filled(face.writing === "white" ? say.white : say.print, { name: quoted(face) });
    }
  }

  function* scarce({ set, faces }) {
    const needed = new Map();
    faces.forEach((number, role) => {
      const { paper } = set.faces[number];
      needed.set(paper, (needed.get(paper) ?? 0) + data.roles[role].sheets);
    });
    for (const [paper, count] of needed) {
      const sheets = set.at_hand?.[paper] ?? count;
      const [front] = set.faces.filter((face) => face.paper === paper);
      if (sheets < count) yield filled(say.few, { needed: count, sheets, name: quoted(front) });
    }
  }

  function tell(choice) {
    const items = [...seen(choice), ...scarce(choice), ...written(choice)].map((words) => {
      const item = document.createElement("li");
      item.textContent = words;
      return item;
    });
    notes.replaceChildren(...items);
  }

  function see(wanted) {
    sight = names.has(wanted) ? wanted : data.sights[0];
    for (const button of buttons) button.checked = button.value === sight;
    for (const element of document.querySelectorAll("[data-seen]")) {
      element.style.filter = sight === data.sights[0] ? "" : `url("#sight-${sight}")`;
    }
    tell(now());
  }

  for (const button of buttons) {
    button.addEventListener("change", () => {
      see(button.value);
      window.address.write({ sight: button.value === data.sights[0] ? null : button.value });
    });
  }
  listen(tell);
  window.address.listen((state) => see(state.get("sight")));
  see(window.address.read().get("sight"));
})();
