/* Finding a batch. What is true of each batch lies in a script beside the page, and the sieve says which
   are found. What was chosen is part of the address, so that it can be passed on. Nothing is asked of a
   server. */
(function () {
  "use strict";

  var SVG = "http://www.w3.org/2000/svg";
  var MOST = 4;
  var NUMBERS = ["", "", "two", "three", "four"];
  var MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December"];
  var STEP = 40; // so many are listed at once,
  var SEEN = 8; // of which so many before the page is painted: a window shows no more
  var PAUSE = 300; // ms without a choice, after which the address follows
  var page = null;

  /* What the page offers: each kind of choice, with its inputs and texts, and where which counts are said. */
  function facetsOf(form) {
    return Array.from(form.querySelectorAll("[data-facet]"), function (set) {
      var inputs = Array.from(set.querySelectorAll("input"));
      var said = Array.from(set.querySelectorAll(".count"));
      return {
        key: set.dataset.facet,
        set: set,
        inputs: inputs,
        texts: Array.from(set.querySelectorAll(".what"), function (one) { return one.textContent; }),
        said: said,
        counts: said.map(function (one) { return Number(one.textContent); }),
      };
    });
  }

  /* What is shown ------------------------------------------------------------- */

  /* An empty card: elements are kept and told anew, since making them costs more than their words. */
  function card() {
    var parts = {
      at: null, // which batch is told on it,
      seen: null, // and with which picture
      picture: null,
      item: document.createElement("li"),
      link: document.createElement("a"),
      time: document.createElement("time"),
      line: document.createElement("p"),
      box: document.createElement("input"),
    };
    var when = document.createElement("span");
    when.className = "when";
    when.append(parts.time);
    var label = document.createElement("label");
    label.className = "pick";
    parts.box.type = "checkbox";
    label.append(parts.box, " compare");
    parts.item.append(parts.link, " ", when, parts.line, label);
    return parts;
  }

  /* By hand: the browser's own way of writing days takes long to come to life. */
  function longDate(day) {
    var parts = day.split("-").map(Number);
    return parts[2] + " " + MONTHS[parts[1] - 1] + " " + parts[0];
  }

  function tell(parts, at) {
    var data = page.data;
    parts.box.checked = page.picked.indexOf(data.slugs[at]) >= 0;
    if (parts.at === at) return;
    parts.at = at;
    parts.link.href = page.root + "projects/" + encodeURIComponent(data.slugs[at]) + "/" + page.file;
    parts.link.textContent = data.titles[at];
    parts.time.dateTime = data.days[at];
    parts.time.textContent = longDate(data.days[at]);
    parts.line.textContent = data.lines[at];
    parts.box.value = data.slugs[at];
    parts.box.setAttribute("aria-label", "Compare " + data.titles[at]);
    var seen = data.pictures[at] || String(data.shapes[at]);
    if (parts.seen === seen) return;
    parts.seen = seen;
    if (parts.picture) parts.picture.remove();
    parts.picture = data.pictures[at] ? photo(data.pictures[at]) : data.shapes[at] && outline(data.shapes[at]);
    if (parts.picture) parts.item.prepend(parts.picture);
  }

  /* Up to four can be laid side by side. */
  function picked(box) {
    page.picked = page.picked.filter(function (one) { return one !== box.value; });
    if (box.checked) page.picked.push(box.value);
    if (page.picked.length > MOST) {
      page.picked.pop();
      box.checked = false;
    }
    var several = page.picked.length > 1;
    page.beside.hidden = !several;
    if (!several) return;
    var query = page.picked.map(function (slug) { return "batch=" + encodeURIComponent(slug); }).join("&");
    page.beside.firstChild.href = page.root + "side-by-side/" + page.file + "?" + query;
    page.beside.firstChild.textContent = "Lay these " + NUMBERS[page.picked.length] + " side by side";
  }

  function photo(name) {
    var picture = new Image();
    picture.loading = "lazy";
    picture.alt = "";
    picture.src = page.root + "photos/" + name;
    return picture;
  }

  /* A make that was not photographed: its outline in the colour of its paper. */
  function outline(shape) {
    var most = Math.max(shape[0], shape[1]) * 1.1;
    var svg = document.createElementNS(SVG, "svg");
    svg.setAttribute("viewBox", [(shape[0] - most) / 2, (shape[1] - most) / 2, most, most].join(" "));
    svg.setAttribute("aria-hidden", "true");
    var rect = document.createElementNS(SVG, "rect");
    rect.setAttribute("width", shape[0]);
    rect.setAttribute("height", shape[1]);
    if (shape[2]) rect.setAttribute("fill", shape[2]);
    svg.append(rect);
    return svg;
  }

  /* Of the places of the list, those from one up to another: what was found stands in them. */
  function list(from, to) {
    var added = document.createDocumentFragment();
    for (var place = from; place < Math.min(to, page.hits.length); place += 1) {
      if (!page.cards[place]) {
        page.cards[place] = card();
        added.append(page.cards[place].item);
      }
      tell(page.cards[place], page.hits[place]);
    }
    page.list.append(added);
    page.further.hidden = page.hits.length <= Math.max(page.cards.length, STEP);
  }

  function showCounts(counts) {
    counts.forEach(function (number, choice) {
      if (page.shown[choice] === number) return;
      page.shown[choice] = number;
      page.said[choice].textContent = number;
      page.said[choice].parentNode.classList.toggle("none", !number);
    });
  }

  function told(hits) {
    var all = page.data.titles.length;
    if (hits === all) return "All " + all + " batches.";
    if (!hits) return "No batch is all of this.";
    return hits + " of " + all + " batches.";
  }

  function show(done) {
    var wanted = Uint8Array.from(page.inputs, function (one) { return one.checked ? 1 : 0; });
    var now = page.sieve.found(page.form.elements.q.value, wanted);
    page.hits = page.sieve.sorted(now.hits, page.form.elements.sort.value);
    page.cards.splice(Math.min(page.hits.length, STEP)).forEach(function (one) { one.item.remove(); });
    list(0, SEEN);
    page.head.textContent = "Found";
    page.told.textContent = told(page.hits.length);
    afterwards(now.counts, done);
  }

  /* Once what was found is painted, the counts and what lies below the window; unless something else was
     asked by then. */
  function afterwards(counts, done) {
    var mine = page;
    var hits = page.hits;
    requestAnimationFrame(function () {
      setTimeout(function () {
        if (mine !== page || hits !== page.hits) return;
        showCounts(counts);
        list(SEEN, STEP);
        done();
      });
    });
  }

  /* The address --------------------------------------------------------------- */

  function putInAddress() {
    if (!page.form.isConnected) return; // another page stands here by now
    var query = new URLSearchParams(new FormData(page.form));
    if (!query.get("q")) query.delete("q");
    if (query.get("sort") === "newest") query.delete("sort");
    var text = query.toString();
    try {
      history.replaceState(history.state, "", location.pathname + (text ? "?" + text : "") + location.hash);
    } catch (refused) {
      return; // a browser may refuse it for a page opened as a file
    }
  }

  function takeFromAddress() {
    var query = new URLSearchParams(location.search);
    page.form.elements.q.value = query.get("q") || "";
    var sort = page.form.elements.sort;
    sort.value = query.get("sort") || "newest";
    if (sort.selectedIndex < 0) sort.selectedIndex = 0;
    page.facets.forEach(function (facet) {
      var wanted = query.getAll(facet.key);
      facet.inputs.forEach(function (one) {
        one.checked = wanted.indexOf(one.value) >= 0;
        if (one.checked && one.type === "radio") one.dataset.taken = "true";
        if (one.checked && one.closest(".beyond")) unfold(facet.set.querySelector(".all"));
      });
    });
  }

  /* ----------------------------------------------------------------------------- */

  function unfold(button) {
    button.setAttribute("aria-expanded", "true");
    button.closest("fieldset").classList.add("unfolded");
  }

  function begin(form, data) {
    var facets = facetsOf(form);
    page = {
      form: form,
      data: data,
      facets: facets,
      sieve: window.batchleafSieve(data, facets),
      inputs: facets.flatMap(function (facet) { return facet.inputs; }),
      said: facets.flatMap(function (facet) { return facet.said; }),
      shown: facets.flatMap(function (facet) { return facet.counts; }),
      list: document.querySelector(".find .hits"),
      cards: [],
      hits: [],
      head: document.getElementById("found"),
      picked: [],
      beside: document.querySelector(".find .beside"),
      told: document.querySelector(".find .told"),
      further: document.querySelector(".find .further"),
      root: form.dataset.batches.replace(/[^/]*$/, "") + "../",
      file: location.protocol === "file:" ? "index.html" : "",
    };
    takeFromAddress();
    form.hidden = false;
    page.list.replaceChildren();
    show(page.sieve.warm);
  }

  /* The address follows when a reader pauses: with each change of it a browser fetches the sign anew. */
  function changed() {
    show(function () {
      clearTimeout(page.soon);
      page.soon = setTimeout(putInAddress, PAUSE);
    });
  }

  document.addEventListener("input", function (event) {
    if (event.target.closest(".finding")) changed();
    if (event.target.matches(".find .pick input")) picked(event.target);
  });

  document.addEventListener("reset", function (event) {
    if (!event.target.matches(".finding")) return;
    page.inputs.forEach(function (one) { delete one.dataset.taken; });
    setTimeout(changed);
  });

  document.addEventListener("submit", function (event) {
    if (event.target.matches(".finding")) event.preventDefault();
  });

  /* A rung that is taken is let go of by taking it again. */
  document.addEventListener("click", function (event) {
    var target = event.target;
    if (target.matches(".finding .narrow")) {
      var open = target.getAttribute("aria-expanded") !== "true";
      target.setAttribute("aria-expanded", String(open));
    } else if (target.matches(".finding .all")) {
      unfold(target);
      target.closest("fieldset").querySelector(".beyond input").focus();
    } else if (target.matches(".find .further")) {
      var from = page.cards.length;
      list(from, from + STEP);
      page.cards[from].link.focus();
    } else if (target.matches(".finding [data-ladder] input")) {
      if (target.dataset.taken) {
        target.checked = false;
        changed();
      }
      target.closest("fieldset").querySelectorAll("input").forEach(function (one) {
        if (one.checked) one.dataset.taken = "true";
        else delete one.dataset.taken;
      });
    }
  });

  /* The data come with the page that asks for them; where only this script stays while pages are exchanged,
     it fetches them. */
  function look() {
    var form = document.querySelector(".finding");
    if (!form || (page && page.form === form)) return;
    if (window.batchleafFind) {
      begin(form, window.batchleafFind);
      return;
    }
    var script = document.createElement("script");
    script.src = form.dataset.batches;
    script.onload = look;
    document.head.append(script);
  }

  /* At once, before the scripts of the frame; and whenever these exchange a page without loading it again. */
  look();
  document.addEventListener("DOMContentLoaded", function () {
    if (window.document$) window.document$.subscribe(look);
  });
})();
