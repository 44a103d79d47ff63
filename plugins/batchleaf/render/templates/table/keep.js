/* Keeps the files of this page on the device, and answers for them without a connection.
   {# Expects kept: their addresses beside this file; name: a hash of what is in them. -#}
   Nothing else of the site passes through here. */
"use strict";

const KEPT = {{ kept | tojson }};
const OURS = "batchleaf-table " + self.registration.scope + " ";
const NOW = OURS + {{ name | tojson }};
const ADDRESSES = new Set(KEPT.map((one) => new URL(one, self.registration.scope).href));

self.addEventListener("install", (event) => {
  const fresh = KEPT.map((one) => new Request(one, { cache: "reload" }));
  event.waitUntil(caches.open(NOW).then((cache) => cache.addAll(fresh)).then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => {
  const older = (name) => name.startsWith(OURS) && name !== NOW;
  event.waitUntil(
    caches.keys()
      .then((names) => Promise.all(names.filter(older).map((name) => caches.delete(name))))
      .then(() => self.clients.claim())
  );
});

function ours(request) {
  const url = new URL(request.url);
  url.hash = url.search = "";
  url.pathname = url.pathname.replace(/\/index\.html$/, "/");
  return request.method === "GET" && ADDRESSES.has(url.href) ? url.href : null;
}

self.addEventListener("fetch", (event) => {
  const wanted = ours(event.request);
  if (wanted === null) return;
  event.respondWith(
    caches.open(NOW).then((cache) => cache.match(wanted)).then((found) => found || fetch(event.request))
  );
});
