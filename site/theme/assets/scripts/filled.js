/* Sentences stand in the templates, with gaps in braces; scripts fill them.

   filled(sentence, parts)   parts: { name: text or number }. Whatever a part holds stays as it is; a gap without its part, too */
(() => {
  "use strict";

  window.filled = (sentence, parts) => sentence.replace(/\{(\w+)\}/g, (gap, name) => parts[name] ?? gap);
})();
