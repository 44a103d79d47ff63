/* What a reader chooses on the page of a batch: the unit of its lengths, and how many are made.
   All wordings stand in the page, worked out when it was built; one of them is put in. A choice
   is part of the address, so that it can be passed on; the unit is remembered on this device too. */
(function () {
  "use strict";

  var UNIT = "batchleaf:unit";

  function asked(name) {
    return new URLSearchParams(location.search).get(name);
  }

  /* What is as the page has it anyway is left out of the address. */
  function putInAddress(name, value) {
    var query = new URLSearchParams(location.search);
    if (value === null) query.delete(name);
    else query.set(name, value);
    var text = query.toString();
    try {
      history.replaceState(history.state, "", location.pathname + (text ? "?" + text : "") + location.hash);
    } catch (refused) {
      return; // a browser may refuse it for a page opened as a file
    }
  }

  /* A browser may refuse storage (private window, folder opened as files). */
  function remembered() {
    try {
      return localStorage.getItem(UNIT);
    } catch (refused) {
      return null;
    }
  }

  function remember(unit) {
    try {
      localStorage.setItem(UNIT, unit);
    } catch (refused) {
      return;
    }
  }

  function put(element, text) {
    if (element.textContent !== text) element.textContent = text;
  }

  /* The unit ----------------------------------------------------------------- */

  function units() {
    return Array.from(document.querySelectorAll(".measures input[name='unit']"));
  }

  function show(unit) {
    var all = units();
    var other = all.findIndex(function (one) { return one.value === unit; }) === 1;
    all[other ? 1 : 0].checked = true;
    document.querySelectorAll("[data-other]").forEach(function (one) {
      if (one.dataset.written === undefined) one.dataset.written = one.textContent;
      put(one, other ? one.dataset.other : one.dataset.written);
    });
    document.querySelectorAll("[data-drawn]").forEach(function (one) {
      one.hidden = (one.dataset.drawn === "other") !== other;
    });
    var rounded = document.querySelector(".measures [data-rounded]");
    put(rounded, other ? rounded.dataset.rounded : "");
  }

  /* The other measure of inches is millimetres, also where a record is in centimetres. */
  function among(unit) {
    var values = units().map(function (one) { return one.value; });
    if (values.indexOf(unit) >= 0) return unit;
    return unit === "mm" || unit === "cm" ? values[values.indexOf("in") === 0 ? 1 : 0] : null;
  }

  function restoreUnit() {
    if (!units().length) return;
    document.querySelector(".measures").hidden = false;
    var unit = among(asked("unit")) || among(remembered()) || units()[0].value;
    show(unit);
    putInAddress("unit", unit === units()[0].value ? null : unit);
  }

  /* How many ----------------------------------------------------------------- */

  function makes() {
    return document.querySelector(".how-many select");
  }

  function showMakes(at) {
    makes().selectedIndex = at;
    document.querySelectorAll("[data-for]").forEach(function (one) {
      put(one, JSON.parse(one.dataset.for)[at]);
    });
  }

  function tellMakes(at, words) {
    var told = document.querySelector(".how-many [data-told]");
    put(told, at === null ? "" : JSON.parse(told.dataset.told)[at]);
    put(document.querySelector(".how-many .next"), words);
  }

  function standing() {
    return Array.from(makes().options).findIndex(function (one) { return one.defaultSelected; });
  }

  /* A number that is not worked out leads to the next one that is, or to the last. */
  function restoreMakes() {
    if (!makes()) return;
    document.querySelector(".how-many").hidden = false;
    var counts = Array.from(makes().options, function (one) { return Number(one.value); });
    var wanted = /^[1-9][0-9]{0,5}$/.test(asked("makes") || "") ? Number(asked("makes")) : null;
    var next = wanted === null ? standing() : counts.findIndex(function (one) { return one >= wanted; });
    var at = next < 0 ? counts.length - 1 : next;
    showMakes(at);
    var missed = wanted !== null && counts[at] !== wanted;
    var which = next < 0 ? " is the most that is." : " is the next that is.";
    tellMakes(null, missed ? wanted + " is not worked out; " + counts[at] + which : "");
    putInAddress("makes", at === standing() ? null : counts[at]);
  }

  /* -------------------------------------------------------------------------- */

  document.addEventListener("change", function (event) {
    if (event.target.matches(".measures input")) {
      var unit = event.target.value;
      show(unit);
      remember(unit);
      putInAddress("unit", unit === units()[0].value ? null : unit);
    }
    if (event.target.matches(".how-many select")) {
      var at = makes().selectedIndex;
      showMakes(at);
      tellMakes(at, "");
      putInAddress("makes", at === standing() ? null : makes().value);
    }
  });

  document.addEventListener("submit", function (event) {
    if (event.target.matches(".measures, .how-many")) event.preventDefault();
  });

  function restore() {
    restoreUnit();
    restoreMakes();
  }

  /* Instant navigation exchanges the page without loading it again. */
  if (window.document$) window.document$.subscribe(restore);
  else restore();
})();
