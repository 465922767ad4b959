/* Photos from the reader's own disk on the mats of the spread. They are read here, made smaller, and go nowhere. */
(() => {
  "use strict";

  const SVG = "http://www.w3.org/2000/svg";
  const LONGEST = 1600; // pixels; more than a screen shows
  const MOST = 100e6; // pixels of one photo
  const FINE = 180; // pixels per inch

  const section = document.querySelector(".own-photos");
  if (!section || !window.crop) return;
  const { crop, filled } = window;
  const say = section.dataset;
  const told = section.querySelector(".told");
  const mats = [...section.querySelectorAll(".mats > li")].map((row) => ({
    id: row.dataset.piece,
    mm: row.dataset.mm.split(" ").map(Number),
    select: row.querySelector("select"),
    button: row.querySelector(".crop-it"),
    density: row.querySelector(".density"),
    print: document.querySelector(`[data-photo="${CSS.escape(row.dataset.piece)}"]`),
    photo: null,
    frame: null,
  }));
  const photos = [];

  /** The photo of a file, turned as it was taken, no larger than screens show; null with a reason told. */
  async function read(file, problems) {
    let bitmap;
    try {
      bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
    } catch {
      problems.push(filled(say.unread, { name: file.name }));
      return null;
    }
    const pixels = [bitmap.width, bitmap.height];
    if (bitmap.width * bitmap.height > MOST) {
      bitmap.close();
      problems.push(filled(say.large, { name: file.name, most: MOST / 1e6 }));
      return null;
    }
    const scale = Math.min(1, LONGEST / Math.max(...pixels));
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = pixels.map((side) => Math.max(1, Math.round(side * scale)));
    const context = canvas.getContext("2d");
    context.fillStyle = "#fff"; // what is see-through is paper in print
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    bitmap.close();
    const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.9));
    return { name: file.name, url: URL.createObjectURL(blob), width: canvas.width, height: canvas.height, pixels, canvas };
  }

  const shape = (mat) => mat.mm[0] / mat.mm[1];

  /** How much of a photo a mat shows, 0 to 1. */
  function kept(photo, mat) {
    const own = photo.width / photo.height;
    return Math.min(own / shape(mat), shape(mat) / own);
  }

  /** Each photo on a mat of its own while there are mats: large ones first, and what loses least. */
  function spread() {
    const free = mats.filter((mat) => !mat.photo).sort((a, b) => b.mm[0] * b.mm[1] - a.mm[0] * a.mm[1]);
    const waiting = photos.filter((photo) => !mats.some((mat) => mat.photo === photo));
    for (const mat of free) {
      if (!waiting.length) return;
      waiting.sort((a, b) => kept(b, mat) - kept(a, mat));
      lay(mat, waiting.shift());
    }
  }

  function lay(mat, photo) {
    mat.photo = photo;
    mat.frame = photo && crop.best(photo, shape(mat));
    show(mat);
  }

  function show(mat) {
    mat.select.value = mat.photo ? String(photos.indexOf(mat.photo)) : "";
    mat.button.disabled = !mat.photo;
    mat.density.textContent = mat.photo ? density(mat) : "";
    mat.print?.querySelector("svg.own-photo")?.remove();
    if (mat.photo && mat.print) mat.print.append(picture(mat));
  }

  function density(mat) {
    const found = Math.round(((mat.frame.width / mat.photo.width) * mat.photo.pixels[0]) / (mat.mm[0] / 25.4));
    return filled(found < FINE ? say.coarse : say.fine, { density: found });
  }

  /** Where a print lies: its paper is the first thing drawn of it. */
  function place(print) {
    const paper = print.querySelector("rect");
    return Object.fromEntries(["x", "y", "width", "height"].map((name) => [name, paper.getAttribute(name)]));
  }

  function picture(mat) {
    const { photo, frame } = mat;
    const inner = document.createElementNS(SVG, "svg");
    const held = { ...place(mat.print), viewBox: `${frame.x} ${frame.y} ${frame.width} ${frame.height}` };
    for (const [name, value] of Object.entries({ ...held, preserveAspectRatio: "none", class: "own-photo" })) {
      inner.setAttribute(name, value);
    }
    const image = document.createElementNS(SVG, "image");
    for (const [name, value] of Object.entries({ href: photo.url, width: photo.width, height: photo.height })) {
      image.setAttribute(name, value);
    }
    inner.append(image);
    return inner;
  }

  function listPhotos() {
    for (const mat of mats) {
      mat.select.replaceChildren(
        new Option(say.none, ""),
        ...photos.map((photo, number) => new Option(photo.name, String(number))),
      );
    }
  }

  function report(problems = []) {
    const count = mats.filter((mat) => mat.photo).length;
    told.textContent = [...problems, filled(say.shown, { count, mats: mats.length })].join(" ");
    section.dispatchEvent(new CustomEvent("photos", { detail: mats.filter((mat) => mat.photo) }));
  }

  async function take(files) {
    const problems = [];
    for (const file of files) {
      const photo = await read(file, problems);
      if (photo) photos.push(photo);
    }
    section.querySelector(".own").hidden = section.querySelector(".see").hidden = !photos.length;
    listPhotos();
    spread();
    mats.forEach(show);
    report(problems);
  }

  for (const mat of mats) {
    mat.select.addEventListener("change", () => {
      lay(mat, mat.select.value === "" ? null : photos[Number(mat.select.value)]);
      report();
    });
    mat.button.addEventListener("click", () => {
      const follow = (frame) => {
        mat.frame = frame;
        show(mat);
      };
      crop.edit(mat.photo, shape(mat), mat.frame, follow, report);
    });
    mat.button.disabled = true;
  }

  section.querySelector(".see button").addEventListener("click", () => {
    document.querySelector(".laying").scrollIntoView();
  });

  const input = section.querySelector("input[type=file]");
  input.addEventListener("change", () => {
    const files = [...input.files];
    input.value = ""; // the same photo can be chosen again
    take(files);
  });
  section.addEventListener("dragover", (event) => event.preventDefault());
  section.addEventListener("drop", (event) => {
    event.preventDefault();
    take(event.dataTransfer.files);
  });
  section.hidden = false;
})();
