/* Pictures of layouts are fetched when they come near the screen, not a long way ahead; without this, or without scripts,
   browsers fetch them as they think best. */
(() => {
  "use strict";

  const AHEAD = "400px 0px";
  const seen = new IntersectionObserver((entries) => {
    for (const entry of entries.filter((each) => each.isIntersecting)) {
      entry.target.classList.add("near");
      seen.unobserve(entry.target);
    }
  }, { rootMargin: AHEAD });
  for (const layout of document.querySelectorAll(".spreads > :not(.near)")) seen.observe(layout);
})();
