/* A site opened as files, by a double click on its first page: a browser shows the list of
   a folder there, and no page. So links to a folder are led to the page in it. On the web
   nothing is done, and addresses stay short. */
(function () {
  "use strict";

  if (location.protocol !== "file:") return;

  function mend(link) {
    if (link.protocol === "file:" && link.pathname.endsWith("/")) link.pathname += "index.html";
  }

  /* Links that other scripts bring later are led as they are followed. */
  document.addEventListener("click", function (event) {
    var link = event.target.closest("a[href]");
    if (link) mend(link);
  }, true);

  document.querySelectorAll("a[href]").forEach(mend);

  /* A batch's old address sends on by itself, before any click. */
  var refresh = document.querySelector("meta[http-equiv='refresh']");
  if (refresh) {
    var there = document.createElement("a");
    there.href = refresh.content.replace(/^.*?url=/i, "");
    mend(there);
    location.replace(there.href);
  }
})();
