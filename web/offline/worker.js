// Keeps the screens themselves on the device, so that a count can be opened in a cellar without signal.
// What the server answers is never kept here: an old number must not pass for a new one.
// FILES and VERSION are written in front of this text when the screens are built.

const CACHE = `ullage-${VERSION}`;

self.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(CACHE)
      .then((cache) => cache.addAll(FILES))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener("activate", (event) => {
  event.waitUntil(removeOtherVersions().then(() => self.clients.claim()));
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== self.location.origin || pathname.startsWith("/api/")) return;
  event.respondWith(request.mode === "navigate" ? page(request) : file(request));
});

async function removeOtherVersions() {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith("ullage-") && name !== CACHE).map((name) => caches.delete(name)),
  );
}

/** The newest page when the server is in reach; every address is the same page, so "/" stands in for all. */
async function page(request) {
  return fetch(request).catch(async () => (await caches.match("/")) ?? Response.error());
}

async function file(request) {
  return (await caches.match(request)) ?? fetch(request);
}
