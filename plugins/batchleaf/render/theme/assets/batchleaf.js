/* Tick boxes remember what was done, on this device only.
   Keys carry the path of the page, so that two sites on one host stay apart. */
(function () {
  "use strict";

  function key(box) {
    return "batchleaf:" + location.pathname + ":" + box.dataset.tick;
  }

  /* A browser may refuse storage (private window, folder opened as files). */
  function recall(box) {
    try {
      return localStorage.getItem(key(box)) === "1";
    } catch (refused) {
      return box.checked;
    }
  }

  function remember(box) {
    try {
      if (box.checked) localStorage.setItem(key(box), "1");
      else localStorage.removeItem(key(box));
    } catch (refused) {
      return;
    }
  }

  function restore() {
    document.querySelectorAll("input[data-tick]").forEach(function (box) {
      box.checked = recall(box);
    });
  }

  document.addEventListener("change", function (event) {
    if (event.target.matches("input[data-tick]")) remember(event.target);
  });

  /* Instant navigation exchanges the page without loading it again. */
  if (window.document$) window.document$.subscribe(restore);
  else restore();
})();
