/* Kept on the device, where the page comes from a server; opened from a folder it is there already. */
(function () {
  "use strict";

  const told = document.getElementById("offline");

  if (location.protocol === "file:") {
    told.textContent = "Opened from a folder: needs no connection.";
    document.querySelectorAll("a[href$='/']").forEach((link) => { link.href += "index.html"; });
    return;
  }

  /* A browser that opens a folder refuses to read this file, so it is named here only. */
  const about = document.createElement("link");
  about.rel = "manifest";
  about.href = "about.webmanifest";
  document.head.append(about);

  function keep() {
    if (!("serviceWorker" in navigator)) return;
    /* MkDocs' live server puts its script behind this one; such a page, kept, would load itself for ever. */
    if (typeof window.livereload === "function") {
      told.textContent = "Served while it is written: not kept on this device.";
      return;
    }
    navigator.serviceWorker.register("keep.js", { scope: "./" })
      .then(() => navigator.serviceWorker.ready)
      .then(() => { told.textContent = "Kept on this device: works without a connection."; })
      .catch(() => { told.textContent = "This browser did not keep the page: it needs a connection to open."; });
  }

  window.addEventListener("DOMContentLoaded", keep);
})();
