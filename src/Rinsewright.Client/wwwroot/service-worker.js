// One service worker for a development run and for a published program: every file of the build is kept by its hash, so that the
// program starts with no signal. An update waits until the person takes it.
self.importScripts("./service-worker-assets.js");

const prefix = "rinsewright-";
const name = prefix + self.assetsManifest.version;
const left = [/^service-worker/, /\.pdb$/, /\.map$/, /\.gz$/, /\.br$/];
const assets = self.assetsManifest.assets.filter((asset) => !left.some((pattern) => pattern.test(asset.url)));
const address = (url) => new URL(url, self.registration.scope).href;
const known = new Set(assets.map((asset) => address(asset.url)));

// An unchanged file is taken from the older cache: an update over a bad link moves only what changed.
async function obtain(asset, older) {
  const url = address(asset.url);
  for (const cache of older) {
    const kept = await cache.match(url);
    if (kept?.headers.get("x-hash") === asset.hash) return kept;
  }
  const response = await fetch(new Request(url, { integrity: asset.hash, cache: "no-cache" }));
  if (!response.ok) throw new Error(response.status + " " + url);
  const headers = new Headers(response.headers);
  headers.set("x-hash", asset.hash);
  headers.delete("content-encoding");
  headers.delete("content-length");
  return new Response(await response.blob(), { status: 200, headers });
}

self.addEventListener("install", (event) =>
  event.waitUntil(
    (async () => {
      const cache = await caches.open(name);
      const names = (await caches.keys()).filter((n) => n.startsWith(prefix) && n !== name);
      const older = await Promise.all(names.map((n) => caches.open(n)));
      const queue = [...assets];
      const lane = async () => {
        for (let asset = queue.shift(); asset; asset = queue.shift()) await cache.put(address(asset.url), await obtain(asset, older));
      };
      await Promise.all(Array.from({ length: 6 }, lane));
    })(),
  ),
);

self.addEventListener("activate", (event) =>
  event.waitUntil(
    (async () => {
      for (const n of await caches.keys()) if (n.startsWith(prefix) && n !== name) await caches.delete(n);
      await self.clients.claim();
    })(),
  ),
);

self.addEventListener("message", (event) => {
  if (event.data === "skipWaiting") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== self.location.origin || url.pathname.startsWith("/api/")) return;
  const plain = url.origin + url.pathname;
  if (known.has(plain)) event.respondWith(fromCache(plain, event.request));
  else if (event.request.mode === "navigate") event.respondWith(fromCache(address("index.html"), event.request));
});

async function fromCache(url, request) {
  return (await (await caches.open(name)).match(url)) ?? fetch(request);
}
