/* Finding a batch. What is true of each batch lies in a script beside the page; choices of one kind
   widen, choices of different kinds narrow, a ladder says "at most". What was chosen is part of the
   address, so that it can be passed on. Nothing is asked of a server. */
(function () {
  "use strict";

  var SVG = "http://www.w3.org/2000/svg";
  var MOST = 4;
  var NUMBERS = ["", "", "two", "three", "four"];
  var STEP = 40; // so many are listed at once
  var page = null;

  /* What the page offers ------------------------------------------------------ */

  function words(text) {
    return text.toLowerCase().normalize("NFKD").replace(/[\u0300-\u036f]/g, "").replace(/\u00a0/g, " ");
  }

  function facetsOf(form, data) {
    return Array.from(form.querySelectorAll("[data-facet]"), function (set) {
      var key = set.dataset.facet;
      var inputs = Array.from(set.querySelectorAll("input"));
      var limits = data.limits[key];
      var trueOf = limits ? data.numbers[key].map(function (number) { return rungs(limits, number); })
        : data.choices[key];
      return {
        key: key,
        set: set,
        inputs: inputs,
        counts: inputs.map(function (one) { return one.parentNode.querySelector(".count"); }),
        texts: inputs.map(function (one) { return one.parentNode.querySelector(".what").textContent; }),
        shown: [],
        limits: limits,
        trueOf: trueOf,
        flat: flat(trueOf),
      };
    });
  }

  /* The rungs of a ladder that let a number in. */
  function rungs(limits, number) {
    var within = [];
    if (number !== null) limits.forEach(function (limit, at) { if (number <= limit) within.push(at); });
    return within;
  }

  function textsOf(data, facets) {
    return data.titles.map(function (title, at) {
      var said = [title, data.lines[at], data.days[at]];
      facets.forEach(function (facet) {
        if (!facet.limits) facet.trueOf[at].forEach(function (choice) { said.push(facet.texts[choice]); });
      });
      return words(said.join(" "));
    });
  }

  /* Which batches are found, and how many each choice would find --------------- */

  /* What is true of all batches, one behind the other: `starts[at]` is where those of a batch begin. */
  function flat(trueOf) {
    var starts = new Int32Array(trueOf.length + 1);
    trueOf.forEach(function (mine, at) { starts[at + 1] = starts[at] + mine.length; });
    return { starts: starts, choices: Uint16Array.from(trueOf.flat()) };
  }

  /* Of a kind: which choices are wanted, and how many batches each would find. */
  function asked(facet) {
    var wanted = Uint8Array.from(facet.inputs, function (one) { return one.checked ? 1 : 0; });
    return { flat: facet.flat, wanted: wanted, any: wanted.indexOf(1) < 0, counts: new Int32Array(wanted.length) };
  }

  function lets(kind, at) {
    if (kind.any) return true;
    for (var n = kind.flat.starts[at]; n < kind.flat.starts[at + 1]; n += 1) {
      if (kind.wanted[kind.flat.choices[n]]) return true;
    }
    return false;
  }

  function count(kind, at) {
    for (var n = kind.flat.starts[at]; n < kind.flat.starts[at + 1]; n += 1) kind.counts[kind.flat.choices[n]] += 1;
  }

  /* The kind of choice that alone leaves a batch out; null: none does; undefined: several do. */
  function missedBy(kinds, at) {
    var missed = null;
    for (var n = 0; n < kinds.length; n += 1) {
      if (lets(kinds[n], at)) continue;
      if (missed) return undefined;
      missed = kinds[n];
    }
    return missed;
  }

  /* Of what one kind alone leaves out, another choice of this kind would let it in. */
  function found() {
    var said = words(page.form.elements.q.value).split(/\s+/).filter(Boolean);
    var kinds = page.facets.map(asked);
    var hits = [];
    for (var at = 0; at < page.texts.length; at += 1) {
      if (said.length && !said.every(function (word) { return page.texts[at].indexOf(word) >= 0; })) continue;
      var missed = missedBy(kinds, at);
      if (missed === undefined) continue;
      if (missed) {
        count(missed, at);
        continue;
      }
      hits.push(at);
      for (var n = 0; n < kinds.length; n += 1) count(kinds[n], at);
    }
    return { hits: hits, counts: kinds.map(function (kind) { return kind.counts; }) };
  }

  /* In which order ------------------------------------------------------------ */

  function sorted(hits) {
    var order = page.form.elements.sort.value;
    var numbers = page.data.numbers[order];
    if (order === "oldest") return hits.slice().reverse();
    if (order === "title") return hits.slice().sort(function (a, b) { return page.places[a] - page.places[b]; });
    if (!numbers) return hits;
    return hits.slice().sort(function (a, b) { return less(numbers[a], numbers[b]) || a - b; });
  }

  /* What is not known comes last. */
  function less(one, other) {
    if (one === null || other === null) return (one === null) - (other === null);
    return one - other;
  }

  function placesByTitle(titles) {
    var collator = new Intl.Collator("en", { numeric: true });
    var order = titles.map(function (title, at) { return at; });
    order.sort(function (a, b) { return collator.compare(titles[a], titles[b]); });
    var places = [];
    order.forEach(function (at, place) { places[at] = place; });
    return places;
  }

  /* What is shown ------------------------------------------------------------- */

  function card(at) {
    var data = page.data;
    var item = document.createElement("li");
    var link = document.createElement("a");
    link.href = page.root + "projects/" + encodeURIComponent(data.slugs[at]) + "/" + page.file;
    link.textContent = data.titles[at];
    var when = document.createElement("span");
    when.className = "when";
    var time = document.createElement("time");
    time.dateTime = data.days[at];
    time.textContent = page.day.format(new Date(data.days[at] + "T00:00:00Z"));
    when.append(time);
    var line = document.createElement("p");
    line.textContent = data.lines[at];
    item.append(link, " ", when, line, pick(at));
    var picture = data.pictures[at] ? photo(data.pictures[at]) : data.shapes[at] && outline(data.shapes[at]);
    if (picture) item.prepend(picture);
    return item;
  }

  /* Up to four can be laid side by side. */
  function pick(at) {
    var label = document.createElement("label");
    var box = document.createElement("input");
    label.className = "pick";
    box.type = "checkbox";
    box.value = page.data.slugs[at];
    box.checked = page.picked.indexOf(box.value) >= 0;
    box.setAttribute("aria-label", "Compare " + page.data.titles[at]);
    label.append(box, " compare");
    return label;
  }

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

  function list(from) {
    var hits = page.hits.slice(from, from + STEP);
    var cards = document.createDocumentFragment();
    hits.forEach(function (at) { cards.append(card(at)); });
    if (from) page.list.append(cards);
    else page.list.replaceChildren(cards);
    page.further.hidden = page.hits.length <= from + STEP;
    return hits.length;
  }

  function showCounts(counts) {
    page.facets.forEach(function (facet, kind) {
      counts[kind].forEach(function (number, choice) {
        if (facet.shown[choice] === number) return;
        facet.shown[choice] = number;
        facet.counts[choice].textContent = number;
        facet.counts[choice].parentNode.classList.toggle("none", !number);
      });
    });
  }

  function told(hits) {
    var all = page.texts.length;
    if (hits === all) return "All " + all + " batches.";
    if (!hits) return "No batch is all of this.";
    return hits + " of " + all + " batches.";
  }

  function show() {
    var now = found();
    page.hits = sorted(now.hits);
    showCounts(now.counts);
    list(0);
    page.head.textContent = "Found";
    page.told.textContent = told(page.hits.length);
  }

  /* The address --------------------------------------------------------------- */

  function putInAddress() {
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
    var facets = facetsOf(form, data);
    var first = document.querySelector(".find .hits");
    page = {
      form: form,
      data: data,
      facets: facets,
      texts: textsOf(data, facets),
      places: placesByTitle(data.titles),
      list: first,
      head: document.getElementById("found"),
      picked: [],
      beside: document.querySelector(".find .beside"),
      told: document.querySelector(".find .told"),
      further: document.querySelector(".find .further"),
      root: form.dataset.batches.replace(/[^/]*$/, "") + "../",
      file: location.protocol === "file:" ? "index.html" : "",
      day: new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" }),
      hits: [],
    };
    takeFromAddress();
    form.hidden = false;
    show();
  }

  function changed() {
    show();
    putInAddress();
  }

  document.addEventListener("input", function (event) {
    if (event.target.closest(".finding")) changed();
    if (event.target.matches(".find .pick input")) picked(event.target);
  });

  document.addEventListener("reset", function (event) {
    if (event.target.matches(".finding")) setTimeout(changed);
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
      var from = page.list.children.length;
      list(from);
      page.list.children[from].querySelector("a").focus();
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

  /* The data come with the page that asks for them, once. */
  function look() {
    var form = document.querySelector(".finding");
    if (!form) return;
    if (window.batchleafFind) {
      begin(form, window.batchleafFind);
      return;
    }
    var script = document.createElement("script");
    script.src = form.dataset.batches;
    script.onload = function () { begin(form, window.batchleafFind); };
    document.head.append(script);
  }

  /* Instant navigation exchanges the page without loading it again. */
  if (window.document$) window.document$.subscribe(look);
  else look();
})();
