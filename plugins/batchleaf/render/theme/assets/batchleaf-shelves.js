/* The shelves of the drawer: only the rows that have the words typed, and all rows as one table
   in another order. A row's places in these orders stand in the page. The controls are in the
   page too, hidden, with their room: without scripts they would do nothing. */
(function () {
  "use strict";

  var rows = [];
  var shelves = [];
  var together = null;

  function controls() {
    return document.querySelector(".sift");
  }

  /* Small letters without accents. */
  function plain(text) {
    return text.toLowerCase().normalize("NFD").replace(/[\u0300-\u036f]/g, "");
  }

  function wordsOf(row, shelf) {
    var texts = Array.from(row.cells, function (cell) { return cell.textContent; });
    return plain(texts.concat(shelf.querySelector("h2").textContent).join(" "));
  }

  /* The first shelf's twin, for the rows of all. */
  function allInOne() {
    var section = shelves[0].cloneNode(true);
    var heading = section.querySelector("h2");
    heading.id = "shelf-all";
    section.setAttribute("aria-labelledby", heading.id);
    section.hidden = true;
    var anyColour = shelves.some(function (shelf) { return shelf.querySelector(".coloured"); });
    section.querySelector("table").classList.toggle("coloured", anyColour);
    shelves[0].before(section);
    return section;
  }

  function fill(section, found) {
    var body = section.querySelector("tbody");
    section.hidden = !found.length;
    body.replaceChildren.apply(body, found.map(function (one) { return one.row; }));
  }

  function tell(found, words) {
    var verb = found === 1 ? " is shown." : " are shown.";
    controls().querySelector("[role='status']").textContent =
      words.length ? (found || "None") + " of " + rows.length + verb : "";
  }

  function arrange() {
    var select = controls().querySelector("select");
    var order = select.selectedIndex - 1; // below 0: by shelf
    var words = plain(controls().querySelector("input").value).split(/\s+/).filter(Boolean);
    var found = rows.filter(function (one) {
      return words.every(function (word) { return one.words.indexOf(word) >= 0; });
    });
    var sorted = order < 0 ? [] : found.slice().sort(function (one, other) {
      return one.places[order] - other.places[order];
    });
    shelves.forEach(function (shelf) {
      fill(shelf, order < 0 ? found.filter(function (one) { return one.shelf === shelf; }) : []);
    });
    together.querySelector("h2").textContent = select.value.charAt(0).toUpperCase() + select.value.slice(1);
    fill(together, sorted);
    tell(found.length, words);
  }

  function prepare() {
    if (!controls()) return;
    shelves = Array.from(document.querySelectorAll("[data-shelf]"));
    rows = [];
    shelves.forEach(function (shelf) {
      shelf.querySelectorAll("tr[data-places]").forEach(function (row) {
        var places = row.dataset.places.split(" ").map(Number);
        rows.push({ row: row, shelf: shelf, places: places, words: wordsOf(row, shelf) });
      });
    });
    together = allInOne();
    controls().hidden = false;
  }

  document.addEventListener("input", function (event) {
    if (event.target.closest(".sift")) arrange();
  });

  /* Instant navigation exchanges the page without loading it again. */
  if (window.document$) window.document$.subscribe(prepare);
  else prepare();
})();
