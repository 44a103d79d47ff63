/* Tabs of a maker's own pages: those that were chosen elsewhere, where tabs are linked, and the one
   that the address names. */
(function () {
  "use strict";

  var chosen = "linked" in document.currentScript.dataset ? __md_get("__tabs") : null;
  if (Array.isArray(chosen)) {
    document.querySelectorAll(".tabbed-set").forEach(function (set) {
      var labels = Array.from(set.querySelectorAll(".tabbed-labels label"));
      var wanted = chosen.map(function (name) {
        return labels.find(function (label) { return label.innerText.trim() === name; });
      }).find(Boolean);
      var input = wanted && document.getElementById(wanted.htmlFor);
      if (input) input.checked = true;
    });
  }
  var named = document.getElementById(location.hash.slice(1));
  if (named && named.name) named.checked = named.name.startsWith("__tabbed_");
})();
