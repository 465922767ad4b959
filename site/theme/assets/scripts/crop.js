/* What is kept of a photo: a frame of a given shape within it, moved and sized by pointer or keys.

   crop.best(photo, ratio)                 the largest frame of a shape (width : height), centred
   crop.edit(photo, ratio, frame, changed, done)
                                           opens the dialog; changed(frame) whenever the frame moves, done() when it closes
   A photo has url, width and height; a frame has x, y, width and height; all in pixels of the photo. */
(() => {
  "use strict";

  const SMALLEST = 0.1; // of the largest frame; the range in the dialog says so in percent
  const STEP = 0.02;

  const dialog = document.querySelector("dialog.crop");
  if (!dialog) return;
  const stage = dialog.querySelector(".stage");
  const image = new Image();
  image.alt = "";
  stage.prepend(image);
  const box = stage.querySelector(".frame");
  const range = dialog.querySelector("input[type=range]");

  let photo, ratio, frame, changed, done;

  function best(of, shape) {
    const width = Math.min(of.width, of.height * shape);
    const height = width / shape;
    return { x: (of.width - width) / 2, y: (of.height - height) / 2, width, height };
  }

  const clamp = (value, least, most) => Math.min(Math.max(value, least), most);

  function within(wished) {
    const largest = best(photo, ratio).width;
    const width = clamp(wished.width, largest * SMALLEST, largest);
    const height = width / ratio;
    return {
      x: clamp(wished.x, 0, photo.width - width),
      y: clamp(wished.y, 0, photo.height - height),
      width,
      height,
    };
  }

  function put(wished) {
    frame = within(wished);
    const percent = (part, whole) => `${(part / whole) * 100}%`;
    box.style.left = percent(frame.x, photo.width);
    box.style.top = percent(frame.y, photo.height);
    box.style.width = percent(frame.width, photo.width);
    box.style.height = percent(frame.height, photo.height);
    range.value = Math.round((frame.width / best(photo, ratio).width) * 100);
    changed(frame);
  }

  /** A frame of another width that keeps a point of it where it is; `left` and `top` say which, from 0 to 1. */
  function sized(from, width, left = 0.5, top = 0.5) {
    const largest = best(photo, ratio).width;
    const held = clamp(width, largest * SMALLEST, largest);
    const height = held / ratio;
    return { x: from.x + (from.width - held) * left, y: from.y + (from.height - height) * top, width: held, height };
  }

  function dragged(down) {
    const corner = down.target.dataset.corner;
    const start = frame;
    const scale = photo.width / stage.getBoundingClientRect().width;
    const move = (event) => {
      const dx = (event.clientX - down.clientX) * scale;
      const dy = (event.clientY - down.clientY) * scale;
      if (!corner) {
        put({ ...start, x: start.x + dx, y: start.y + dy });
        return;
      }
      const isLeft = corner.endsWith("w");
      const isTop = corner.startsWith("n");
      const wider = Math.max(isLeft ? -dx : dx, (isTop ? -dy : dy) * ratio);
      const room = Math.min(
        isLeft ? start.x + start.width : photo.width - start.x,
        (isTop ? start.y + start.height : photo.height - start.y) * ratio,
      );
      put(sized(start, Math.min(start.width + wider, room), isLeft ? 1 : 0, isTop ? 1 : 0));
    };
    box.setPointerCapture(down.pointerId);
    box.addEventListener("pointermove", move);
    box.addEventListener("lostpointercapture", () => box.removeEventListener("pointermove", move), { once: true });
    down.preventDefault();
    box.focus({ preventScroll: true });
  }

  function pressed(event) {
    const away = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    const grown = { "+": 1, "=": 1, "-": -1, "−": -1 }[event.key];
    if (away) {
      put({ ...frame, x: frame.x + away[0] * photo.width * STEP, y: frame.y + away[1] * photo.height * STEP });
    } else if (grown) {
      put(sized(frame, frame.width + grown * best(photo, ratio).width * STEP));
    } else {
      return;
    }
    event.preventDefault();
  }

  function edit(of, shape, from, heard, closed) {
    [photo, ratio, changed, done] = [of, shape, heard, closed];
    image.src = of.url;
    stage.style.aspectRatio = `${of.width} / ${of.height}`;
    stage.style.setProperty("--shape", of.width / of.height);
    dialog.showModal();
    put(from);
    box.focus();
  }

  box.addEventListener("pointerdown", dragged);
  box.addEventListener("keydown", pressed);
  range.addEventListener("input", () => put(sized(frame, (best(photo, ratio).width * range.value) / 100)));
  dialog.querySelector(".done").addEventListener("click", () => dialog.close());
  dialog.addEventListener("close", () => done());

  window.crop = Object.freeze({ best, edit });
})();
