/**
 * Keeps the whole built page in the browser, so that it opens and works without its host. A newer build is fetched beside the present one
 * and waits until a person asks for it, or until the last page of the present one is closed. The files of the build before stay, for
 * pages that are still open on it and load a part later.
 */
declare const self: ServiceWorkerGlobalScope;
/** Written in when the page is built: what it consists of, relative to this script, and a name for all of it. */
declare const __BUILT_FILES__: readonly string[];
declare const __BUILD__: string;

const OURS = 'waybench ';
const NAME = `${OURS}${__BUILD__}`;

self.addEventListener('install', (event) => {
  // Past the cache of the browser: a host that names no lifetime must not leave an old page among new parts.
  const requests = __BUILT_FILES__.map((file) => new Request(file, { cache: 'reload' }));
  event.waitUntil(caches.open(NAME).then((cache) => cache.addAll(requests)));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(forgetAllButOneBefore().then(() => self.clients.claim()));
});

self.addEventListener('message', ({ data }) => {
  if (data === 'use now') void self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(kept(request).then((found) => found ?? fetch(request)));
});

async function forgetAllButOneBefore(): Promise<void> {
  // In the order in which they were made.
  const others = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== NAME);
  await Promise.all(others.slice(0, -1).map((name) => caches.delete(name)));
}

/** Of this build where it has the file, otherwise of the one before. */
async function kept(request: Request): Promise<Response | undefined> {
  const options = { ignoreSearch: request.mode === 'navigate' };
  const own = await caches.open(NAME);
  return (await own.match(request, options)) ?? (await caches.match(request, options));
}

export {};
