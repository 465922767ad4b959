/* Which layouts meet what is asked for, and how many would with each choice. Lists and numbers only, nothing of the page.
   Of one kind any chosen value will do; every kind that something is chosen of has to be met, and every word. */
(() => {
  "use strict";

  const plain = (text) => text.normalize("NFKD").toLowerCase().replace(/ß/g, "ss").replace(/\p{M}/gu, "");
  const wordsOf = (text) => plain(text).match(/[\p{L}\p{N}]+/gu) || [];

  /* layouts: [{ id, values: { kind: [value] }, order: { name: value }, text }] */
  const prepared = (layouts) => layouts.map((layout) => ({ ...layout, words: ` ${wordsOf(layout.text).join(" ")}` }));

  const hasWords = (layout, wanted) => wanted.every((word) => layout.words.includes(` ${word}`));
  const meets = (layout, kind, values) => (layout.values[kind] || []).some((value) => values.has(value));

  /* asked: { words, chosen: Map(kind -> Set(value)) }; counts[kind][value] tells how many layouts would be left with that
     value, if nothing else were chosen of its kind. */
  function search(layouts, asked, kinds) {
    const wanted = wordsOf(asked.words);
    const chosen = [...asked.chosen].filter(([, values]) => values.size);
    const counts = Object.fromEntries(kinds.map((kind) => [kind, new Map()]));
    const found = new Set();
    for (const layout of layouts) {
      if (!hasWords(layout, wanted)) continue;
      const missed = chosen.filter(([kind, values]) => !meets(layout, kind, values));
      if (missed.length > 1) continue;
      if (!missed.length) found.add(layout.id);
      for (const kind of missed.length ? [missed[0][0]] : kinds) {
        for (const value of layout.values[kind] || []) counts[kind].set(value, (counts[kind].get(value) || 0) + 1);
      }
    }
    return { found, counts };
  }

  /* The ids by one of the orders; a minus before its name turns it round. Without one: as they came. */
  function ordered(layouts, order, language) {
    const name = order.replace(/^-/, ""), sign = order.startsWith("-") ? -1 : 1;
    const collator = new Intl.Collator(language, { numeric: true });
    const compared = (one, other) =>
      typeof one === "number" ? one - other : collator.compare(one, other);
    const kept = layouts.filter((layout) => name in layout.order);
    if (!kept.length) return layouts.map((layout) => layout.id);
    return [...kept]
      .sort((one, other) => sign * compared(one.order[name], other.order[name]) || collator.compare(one.order.title, other.order.title))
      .map((layout) => layout.id);
  }

  window.finding = Object.freeze({ prepared, search, ordered });
})();
