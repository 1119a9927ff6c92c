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

/** A phone at the cellar door often holds a network that answers nothing; whoever counts does not wait for it longer than this. */
const PATIENCE_MS = 3_000;

/** The newest page when the server is in reach; every address is the same page, so "/" stands in for all. */
async function page(request) {
  const newest = fetch(request);
  const kept = await caches.match("/");
  if (kept === undefined) return newest;
  const waited = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS, kept));
  return Promise.race([newest.catch(() => kept), waited]);
}

/** What was not fetched ahead is kept once it was used: its name changes when it does. */
async function file(request) {
  const kept = await caches.match(request);
  if (kept !== undefined) return kept;
  const answer = await fetch(request);
  if (answer.ok && new URL(request.url).pathname.startsWith("/assets/")) {
    const copy = answer.clone();
    // A full device keeps nothing more, but still gets its file.
    await caches
      .open(CACHE)
      .then((cache) => cache.put(request, copy))
      .catch(() => {});
  }
  return answer;
}
