/* What a reader chooses on the page of a batch: the unit of its lengths, how many are made, and from
   sheets of which size. All wordings stand in the page, worked out when it was built; one of them is
   put in. A choice is part of the address, so that it can be passed on; the unit and the size of the
   sheets are remembered on this device too. */
(function () {
  "use strict";

  var UNIT = "batchleaf:unit";
  var SHEETS = "batchleaf:sheets";

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
  function remembered(what) {
    try {
      return localStorage.getItem(what);
    } catch (refused) {
      return null;
    }
  }

  function remember(what, value) {
    try {
      localStorage.setItem(what, value);
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
    var unit = among(asked("unit")) || among(remembered(UNIT)) || units()[0].value;
    show(unit);
    putInAddress("unit", unit === units()[0].value ? null : unit);
  }

  /* How many, and from which sheets ------------------------------------------ */

  function select(name) {
    return document.querySelector(".how-many select[name='" + name + "']");
  }

  function fixed(list) {
    return Array.from(list.options).findIndex(function (one) { return one.defaultSelected; });
  }

  function values(list) {
    return Array.from(list.options, function (one) { return one.value; });
  }

  /* Where one size alone is told of, it is so from all. */
  function from(text, sheets) {
    var every = JSON.parse(text);
    return every.length > sheets ? every[sheets] : every[0];
  }

  function sizeAt() {
    return select("sheets") ? select("sheets").selectedIndex : 0;
  }

  function showMakes() {
    var sheets = sizeAt();
    var at = select("makes").selectedIndex;
    document.querySelectorAll("[data-for]").forEach(function (one) {
      put(one, from(one.dataset.for, sheets)[at]);
    });
    document.querySelectorAll("[data-from]").forEach(function (one) {
      put(one, from(one.dataset.from, sheets));
    });
    document.querySelectorAll("[data-sheets]").forEach(function (one) {
      one.hidden = one.dataset.sheets !== select("sheets").value;
    });
  }

  function tellMakes() {
    var told = document.querySelector(".how-many [data-told]");
    put(told, from(told.dataset.told, sizeAt())[select("makes").selectedIndex]);
    put(document.querySelector(".how-many .next"), "");
  }

  function keepInAddress(name) {
    var list = select(name);
    if (list) putInAddress(name, list.selectedIndex === fixed(list) ? null : list.value);
  }

  /* A size that the batch is not worked out for leaves the sheets as they were bought. */
  function restoreSheets() {
    var list = select("sheets");
    if (!list) return;
    var known = [asked("sheets"), remembered(SHEETS)].map(function (one) { return values(list).indexOf(one); });
    list.selectedIndex = known.concat(fixed(list)).find(function (at) { return at >= 0; });
    keepInAddress("sheets");
  }

  /* A number that is not worked out leads to the next one that is, or to the last. */
  function restoreMakes() {
    var list = select("makes");
    if (!list) return;
    document.querySelector(".how-many").hidden = false;
    restoreSheets();
    var counts = values(list).map(Number);
    var wanted = /^[1-9][0-9]{0,5}$/.test(asked("makes") || "") ? Number(asked("makes")) : null;
    var next = wanted === null ? fixed(list) : counts.findIndex(function (one) { return one >= wanted; });
    list.selectedIndex = next < 0 ? counts.length - 1 : next;
    showMakes();
    var missed = wanted !== null && Number(list.value) !== wanted;
    var which = next < 0 ? " is the most that is." : " is the next that is.";
    var words = missed ? wanted + " is not worked out; " + list.value + which : "";
    put(document.querySelector(".how-many [data-told]"), "");
    put(document.querySelector(".how-many .next"), words);
    keepInAddress("makes");
  }

  /* -------------------------------------------------------------------------- */

  document.addEventListener("change", function (event) {
    if (event.target.matches(".measures input")) {
      var unit = event.target.value;
      show(unit);
      remember(UNIT, unit);
      putInAddress("unit", unit === units()[0].value ? null : unit);
    }
    if (event.target.matches(".how-many select")) {
      if (event.target.name === "sheets") remember(SHEETS, event.target.value);
      showMakes();
      tellMakes();
      keepInAddress(event.target.name);
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
