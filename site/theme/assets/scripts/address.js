/* What a page shows, kept in the fragment of its address (#pages=2&tag=band), so that it can be shared and gone back to.
   A fragment without "=" is a plain anchor (#main): it states nothing, and leaves what was stated as it is.

   address.read()                  all that is stated, as URLSearchParams; a copy
   address.write(changes, options) change some of it: { name: value | [values] | null }; null, "" and [] take a name out;
                                   options.step puts a step into the history, so that "back" undoes it
   address.listen(heard)           heard(state) whenever the address changes other than by write() */
(() => {
  "use strict";

  const fragment = () => window.location.hash.slice(1);
  const states = (text) => text.includes("=");

  let known = new URLSearchParams(states(fragment()) ? fragment() : "");
  const listeners = [];

  const read = () => new URLSearchParams(known);

  function write(changes, { step = false } = {}) {
    const before = known.toString();
    for (const [name, given] of Object.entries(changes)) {
      known.delete(name);
      for (const value of [given].flat()) {
        if (value !== null && value !== undefined && value !== "") known.append(name, value);
      }
    }
    const now = known.toString();
    if (now === before) return;
    const there = `${window.location.pathname}${window.location.search}${now ? `#${now}` : ""}`;
    window.history[step ? "pushState" : "replaceState"](window.history.state, "", there);
  }

  function follow() {
    const text = fragment();
    if (text && !states(text)) return;  // a plain anchor: somebody went to a place on the page
    known = new URLSearchParams(text);
    for (const heard of listeners) heard(read());
  }

  window.addEventListener("popstate", follow);
  window.address = Object.freeze({ read, write, listen: (heard) => listeners.push(heard) });
})();
