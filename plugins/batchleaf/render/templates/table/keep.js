/* Keeps the files of this page on the device, and answers for them without a connection.
   {# Expects kept: their addresses beside this file; name: a hash of what is in them. -#}
   Nothing else of the site passes through here. */
"use strict";

const KEPT = {{ kept | tojson }};
const OURS = "batchleaf-table " + self.registration.scope + " ";
const NOW = OURS + {{ name | tojson }};
const ADDRESSES = new Set(KEPT.map((one) => new URL(one, self.registration.scope).href));

/* A page with the script of a live server, kept, would load itself for ever. */
async function fetched(address) {
  const answer = await fetch(new Request(address, { cache: "reload" }));
  if (!answer.ok) throw new Error(`${address} is not there`);
  if (address === "./" && (await answer.clone().text()).includes("livereload(")) throw new Error("it is served live");
  return [address, answer];
}

self.addEventListener("install", (event) => {
  const fill = async () => {
    const all = await Promise.all(KEPT.map(fetched));
    const cache = await caches.open(NOW);
    await Promise.all(all.map(([address, answer]) => cache.put(address, answer)));
    await self.skipWaiting();
  };
  event.waitUntil(fill());
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
