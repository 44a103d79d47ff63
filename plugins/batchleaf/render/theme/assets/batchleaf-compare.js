/* Batches side by side, as the address names them. What is told of each stands in a script beside its
   page; heads that are told of all in the same words come last. */
(function () {
  "use strict";

  var MOST = 4;
  var told = {};
  window.batchleafTold = function (slug, data) { told[slug] = data; };

  function asked() {
    var slugs = new URLSearchParams(location.search).getAll("batch");
    return slugs.filter(function (one, at) {
      return /^[a-z0-9-]+$/.test(one) && slugs.indexOf(one) === at;
    }).slice(0, MOST);
  }

  /* Each script says what is told of its batch; one that is not there is left out. */
  function load(root, slugs, done) {
    var waiting = slugs.length;
    slugs.forEach(function (slug) {
      var script = document.createElement("script");
      script.src = root + "projects/" + slug + "/told.js";
      script.onload = script.onerror = function () {
        script.remove();
        waiting -= 1;
        if (!waiting) done(slugs.filter(function (one) { return told[one]; }));
      };
      document.head.append(script);
    });
  }

  /* What one list has besides stands behind what it follows there, and last among that. */
  function inOneOrder(lists) {
    var order = [];
    lists.forEach(function (heads) {
      var at = 0;
      heads.forEach(function (head) {
        if (order.indexOf(head) < 0) {
          while (at < order.length && heads.indexOf(order[at]) < 0) at += 1;
          order.splice(at, 0, head);
        }
        at = order.indexOf(head) + 1;
      });
    });
    return order;
  }

  function cell(name, text, attributes) {
    var made = document.createElement(name);
    made.textContent = text;
    Object.keys(attributes || {}).forEach(function (key) { made.setAttribute(key, attributes[key]); });
    return made;
  }

  function row(cells) {
    var made = document.createElement("tr");
    made.append.apply(made, cells);
    return made;
  }

  function head(root, slugs) {
    var file = location.protocol === "file:" ? "index.html" : "";
    var made = document.createElement("thead");
    made.append(row([document.createElement("td")].concat(slugs.map(function (slug) {
      var column = cell("th", "", { scope: "col" });
      var link = cell("a", told[slug].title, { href: root + "projects/" + slug + "/" + file });
      column.append(link, " ", cell("time", told[slug].date, { datetime: told[slug].day }));
      return column;
    }))));
    return made;
  }

  function part(title, columns, rows) {
    var made = document.createElement("tbody");
    var first = row([cell("th", title, { scope: "rowgroup", colspan: columns + 1 })]);
    first.className = "part";
    made.append.apply(made, [first].concat(rows));
    return made;
  }

  function table(root, slugs) {
    var lists = slugs.map(function (slug) { return new Map(told[slug].told); });
    var differs = [];
    var alike = [];
    inOneOrder(lists.map(function (one) { return Array.from(one.keys()); })).forEach(function (name) {
      var texts = lists.map(function (one) { return one.get(name) || ""; });
      var first = cell("th", name, { scope: "row" });
      if (texts.every(function (text) { return text === texts[0]; })) {
        alike.push(row([first, cell("td", texts[0], { colspan: slugs.length })]));
      } else {
        differs.push(row([first].concat(texts.map(function (text, at) {
          return cell("td", text, text ? { "data-head": told[slugs[at]].title } : {});
        }))));
      }
    });
    var made = document.createElement("table");
    made.className = "index beside";
    made.append(head(root, slugs));
    if (differs.length) made.append(part("What differs", slugs.length, differs));
    if (alike.length) made.append(part("The same in all", slugs.length, alike));
    return made;
  }

  function look() {
    var laid = document.querySelector(".compare .laid");
    if (!laid) return;
    var slugs = asked();
    if (!slugs.length) return;
    load(laid.dataset.root, slugs, function (known) {
      var missing = slugs.length - known.length;
      var words = missing ? (missing === 1 ? "One of them is" : missing + " of them are") + " not in this archive." : "";
      document.querySelector(".compare .told").textContent = words;
      if (known.length) laid.replaceChildren(table(laid.dataset.root, known));
    });
  }

  /* Instant navigation exchanges the page without loading it again. */
  if (window.document$) window.document$.subscribe(look);
  else look();
})();
