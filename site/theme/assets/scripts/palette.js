/* The colours of the photos that lie on the spread, and the colourways of the page that take them up best.
   Colours are compared in Oklab (Björn Ottosson, "A perceptual color space for image processing", 2020), where
   distances are about as large as they look. */
(() => {
  "use strict";

  const SIDE = 40; // pixels of a photo that are looked at, along each side
  const TONES = 5;
  const ROUNDS = 12;
  const SUGGESTED = 3;

  const section = document.querySelector(".own-photos");
  if (!section || !window.exchange) return;
  const panel = section.querySelector(".palette");
  const { sets } = window.exchange.data;

  const linear = (value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);

  function oklab(red, green, blue) {
    const [r, g, b] = [red, green, blue].map((value) => linear(value / 255));
    const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
    const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
    const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
    return [
      0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
      1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
      0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
    ];
  }

  const ofHex = (hex) => oklab(...[1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16)));
  const apart = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

  /** What a photo shows within its frame, as { lab, rgb } for each of a few pixels. */
  function pixels({ photo, frame }) {
    const canvas = document.createElement("canvas");
    canvas.width = canvas.height = SIDE;
    const context = canvas.getContext("2d", { willReadFrequently: true });
    context.drawImage(photo.canvas, frame.x, frame.y, frame.width, frame.height, 0, 0, SIDE, SIDE);
    const { data: bytes } = context.getImageData(0, 0, SIDE, SIDE);
    return Array.from({ length: SIDE * SIDE }, (_, number) => {
      const rgb = [...bytes.subarray(4 * number, 4 * number + 3)];
      return { lab: oklab(...rgb), rgb };
    });
  }

  /** The colours that stand for pixels: one far from the others first, then each the middle of those nearest to it. */
  function tones(all) {
    const middle = (group) => [0, 1, 2].map((axis) => group.reduce((sum, each) => sum + each.lab[axis], 0) / group.length);
    const centres = [middle(all)];
    while (centres.length < TONES) {
      const far = (each) => Math.min(...centres.map((centre) => apart(centre, each.lab)));
      centres.push(all.reduce((best, each) => (far(each) > far(best) ? each : best)).lab);
    }
    let groups = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      groups = centres.map(() => []);
      for (const each of all) {
        let nearest = 0;
        centres.forEach((centre, number) => {
          if (apart(centre, each.lab) < apart(centres[nearest], each.lab)) nearest = number;
        });
        groups[nearest].push(each);
      }
      groups.forEach((group, number) => {
        if (group.length) centres[number] = middle(group);
      });
    }
    return groups
      .map((group, number) => ({ lab: centres[number], share: group.length / all.length, rgb: shown(group) }))
      .filter((tone) => tone.share > 0.01)
      .sort((a, b) => b.share - a.share);
  }

  const shown = (group) =>
    [0, 1, 2].map((axis) => Math.round(group.reduce((sum, each) => sum + each.rgb[axis], 0) / Math.max(group.length, 1)));

  /** How far the papers of a colourway are from the photos' colours: of each tone to the paper nearest to it, by the
      root of its share, so that small spots of colour have a say. */
  function distance(found, papers) {
    const colours = papers.flatMap((face) => face.colours.map(ofHex));
    const weights = found.map((tone) => Math.sqrt(tone.share));
    const far = found.map((tone) => Math.min(...colours.map((colour) => apart(tone.lab, colour))));
    return far.reduce((sum, each, number) => sum + each * weights[number], 0) / weights.reduce((a, b) => a + b);
  }

  function suggestions(found) {
    return sets
      .flatMap((set) =>
        set.best.map((best, number) => ({
          set,
          number,
          far: distance(found, best.faces.map((face) => set.faces[face])),
        })),
      )
      .sort((a, b) => a.far - b.far)
      .slice(0, SUGGESTED);
  }

  function swatch(face) {
    const made = document.createElement("i");
    made.style.background = face.colours.at(-1);
    return made;
  }

  function button({ set, number }) {
    const made = document.createElement("button");
    made.type = "button";
    const label = panel.querySelector(".suggested").dataset.label;
    const words = window.filled(label, { papers: set.title, number: number + 1 });
    made.append(...set.best[number].faces.map((face) => swatch(set.faces[face])), words);
    made.addEventListener("click", () => {
      window.exchange.choose(set.id, number);
      document.querySelector(".laying").scrollIntoView(); // the papers change far above
    });
    return made;
  }

  section.addEventListener("photos", ({ detail: mats }) => {
    panel.hidden = !mats.length;
    if (!mats.length) return;
    const found = tones(mats.flatMap(pixels));
    panel.querySelector(".tones").replaceChildren(
      ...found.map((tone) => {
        const item = document.createElement("li");
        item.style.background = `rgb(${tone.rgb.join(" ")})`;
        item.setAttribute("aria-label", `rgb(${tone.rgb.join(", ")}), ${Math.round(tone.share * 100)} %`);
        return item;
      }),
    );
    panel.querySelector(".suggested").replaceChildren(...suggestions(found).map(button));
  });
})();
