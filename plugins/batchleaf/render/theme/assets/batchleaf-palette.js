/* The colours that were chosen before, before anything is painted: so no page is light for an instant. */
(function () {
  "use strict";

  var kept = __md_get("__palette");
  if (!kept || !kept.color) return;

  /* Whoever left it to the system gets what the system has now. */
  if (kept.color.media === "(prefers-color-scheme)") {
    var light = matchMedia("(prefers-color-scheme: light)").matches;
    var media = "(prefers-color-scheme: " + (light ? "light" : "dark") + ")";
    var input = document.querySelector("[data-md-color-media='" + media + "']");
    ["media", "scheme", "primary", "accent"].forEach(function (name) {
      if (input) kept.color[name] = input.getAttribute("data-md-color-" + name);
    });
  }
  Object.keys(kept.color).forEach(function (name) {
    document.body.setAttribute("data-md-color-" + name, kept.color[name]);
  });
})();
