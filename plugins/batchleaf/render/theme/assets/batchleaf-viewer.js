/* The photos of a page, looked at one by one in its dialog. A photo is a link to its largest
   file and stays one where there are no scripts, or where a new tab is asked for. All is
   listened for on the document, since instant navigation exchanges the page below it. */
(function () {
  "use strict";

  var SWIPE = 40; // px from side to side; less is a finger that trembles
  var photos = [];
  var at = 0;
  var opener = null;
  var from = null;

  function viewer() {
    return document.querySelector("dialog.viewer");
  }

  function part(name) {
    return viewer().querySelector("[data-viewer='" + name + "']");
  }

  /* A cover may stand below as the photo of a step too; it is looked at once. */
  function onThisPage() {
    var hrefs = [];
    return Array.from(document.querySelectorAll("a.photo")).filter(function (link) {
      return hrefs.indexOf(link.href) < 0 && hrefs.push(link.href);
    });
  }

  /* The page's own picture, in whichever file fits the window; its words stand below it. */
  function enlarged(link) {
    var picture = link.querySelector("picture").cloneNode(true);
    var image = picture.querySelector("img");
    var width = image.getAttribute("width");
    var ratio = width / image.getAttribute("height");
    picture.querySelectorAll("source").forEach(function (source) {
      source.sizes = "min(100vw, " + (100 * ratio).toFixed(1) + "vh)";
    });
    image.style.setProperty("--own", width);
    image.style.setProperty("--ratio", ratio);
    image.draggable = false; // a mouse may swipe too
    image.loading = "eager";
    image.alt = "";
    return picture;
  }

  function show(place) {
    at = Math.min(Math.max(place, 0), photos.length - 1);
    viewer().querySelector(".viewer__photo").replaceChildren(enlarged(photos[at]));
    part("caption").textContent = photos[at].querySelector("img").alt;
    part("place").textContent = at + 1 + " of " + photos.length;
    part("before").setAttribute("aria-disabled", at === 0);
    part("after").setAttribute("aria-disabled", at === photos.length - 1);
  }

  function open(link) {
    photos = onThisPage();
    opener = link;
    ["place", "before", "after"].forEach(function (name) {
      part(name).hidden = photos.length < 2;
    });
    var page = document.documentElement;
    page.style.setProperty("--bar", window.innerWidth - page.clientWidth + "px"); // nothing moves where the bar was
    viewer().showModal();
    part(photos.length < 2 ? "close" : "after").focus();
    show(photos.findIndex(function (photo) { return photo.href === link.href; }));
  }

  document.addEventListener("click", function (event) {
    var link = event.target.closest("a.photo");
    var way = event.target.closest("[data-viewer]");
    if (way && way.dataset.viewer === "before") show(at - 1);
    if (way && way.dataset.viewer === "after") show(at + 1);
    if (way && way.dataset.viewer === "close") viewer().close();
    if (!link || !viewer() || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    open(link);
  });

  document.addEventListener("keydown", function (event) {
    if (!viewer() || !viewer().open || event.ctrlKey || event.metaKey || event.altKey) return;
    event.stopPropagation(); // the page's own keys, as those of the search, wait
    var places = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: photos.length - 1 };
    if (!(event.key in places)) return;
    event.preventDefault();
    show(places[event.key]);
  });

  document.addEventListener("close", function (event) {
    if (event.target !== viewer()) return;
    viewer().querySelector(".viewer__photo").replaceChildren();
    if (opener) opener.focus({ preventScroll: true });
  }, true); // this event does not rise

  /* Swipes. A second finger pinches, and in a photo that is pinched large one finger moves about. */
  function isLarge() {
    return Boolean(window.visualViewport) && window.visualViewport.scale > 1.05;
  }

  if (window.visualViewport) window.visualViewport.addEventListener("resize", function () {
    if (viewer()) viewer().classList.toggle("pinched", isLarge());
  });

  document.addEventListener("pointerdown", function (event) {
    var swipes = event.isPrimary && event.button === 0 && !isLarge() && event.target.closest(".viewer__photo");
    from = swipes ? event : null;
  });

  document.addEventListener("pointerup", function (event) {
    var across = from ? event.clientX - from.clientX : 0;
    var down = from ? event.clientY - from.clientY : 0;
    from = null;
    if (Math.abs(across) > SWIPE && Math.abs(across) > Math.abs(down)) show(at - Math.sign(across));
  });

  document.addEventListener("pointercancel", function () {
    from = null; // the browser scrolls or pinches instead
  });

  function tell() {
    document.querySelectorAll("a.photo").forEach(function (link) {
      link.setAttribute("aria-haspopup", "dialog");
    });
  }

  if (window.document$) window.document$.subscribe(tell);
  else tell();
})();
