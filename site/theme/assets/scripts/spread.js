/* The spread of a recipe's page: its papers are pictures of whole sheets, of which each piece shows its part. They are
   loaded before any is exchanged, so that all change at once.

   spread.load(papers)   papers(role, isOtherSide) -> { address, edge: [lit, dull, opacity], pencil }
   spread.show(papers)   a promise of true, or of false where a later wish came first or a picture could not be loaded */
(() => {
  "use strict";

  const drawing = document.querySelector("[data-spread] > svg");
  if (!drawing) return;

  const all = (what) => [...drawing.querySelectorAll(`g[data-${what}]`)];
  const lies = ({ dataset }) => ({ role: dataset.role, isOtherSide: dataset.side === "back" });
  const pieces = all("piece").map((piece) => ({
    ...lies(piece),
    picture: piece.querySelector("image"),
    edges: piece.querySelectorAll(":scope > path"),
  }));
  const captions = all("caption").map((caption) => ({ ...lies(caption), lines: caption.querySelector("path") }));
  const loading = new Map();
  let wishes = 0;

  function loaded(address) {
    if (!loading.has(address)) {
      const picture = new Image();
      picture.src = address;
      const found = picture.decode().then(() => true, () => {
        loading.delete(address); // it may come the next time
        return false;
      });
      loading.set(address, found);
    }
    return loading.get(address);
  }

  async function load(papers) {
    const addresses = new Set(pieces.map((piece) => papers(piece.role, piece.isOtherSide).address));
    return (await Promise.all([...addresses].map(loaded))).every(Boolean);
  }

  function lay(papers) {
    for (const { role, isOtherSide, picture, edges: [lit, dull] } of pieces) {
      const { address, edge } = papers(role, isOtherSide);
      if (picture.getAttribute("href") !== address) picture.setAttribute("href", address);
      lit.setAttribute("stroke", edge[0]);
      dull.setAttribute("stroke", edge[1]);
      lit.setAttribute("opacity", edge[2]);
    }
    for (const { role, isOtherSide, lines } of captions) {
      lines?.setAttribute("stroke", papers(role, isOtherSide).pencil);
    }
  }

  async function show(papers, label) {
    wishes += 1;
    const wish = wishes;
    if (!(await load(papers)) || wish !== wishes) return false;
    lay(papers);
    drawing.setAttribute("aria-label", label);
    return true;
  }

  window.spread = Object.freeze({ load, show, drawing });
})();
