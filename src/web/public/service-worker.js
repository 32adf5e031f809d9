// Keeps the one page of Levare, so that loading it again while the server is away shows Levare itself, which says so and
// holds what was written. A server that answers is always asked first, so no old page is ever shown in place of a new
// one; scripts and styles are found in the browser's own cache, where their hashed names keep them for ever.

const shelf = 'levare-page';

self.addEventListener('install', (event) => {
  self.skipWaiting();
  event.waitUntil(caches.open(shelf).then((cache) => cache.add(new Request('/', { cache: 'reload' }))));
});

self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('fetch', (event) => {
  const { pathname } = new URL(event.request.url);
  // What is no screen (the start-up link, a file to keep) is between the browser and the server.
  if (event.request.mode !== 'navigate' || pathname === '/enter' || pathname.startsWith('/api/')) return;
  event.respondWith(
    fetch(event.request).then(
      (answer) => {
        if (answer.ok && answer.headers.get('content-type')?.startsWith('text/html')) {
          const kept = answer.clone();
          event.waitUntil(caches.open(shelf).then((cache) => cache.put('/', kept)));
        }
        return answer;
      },
      async (gone) => {
        const kept = await caches.match('/', { cacheName: shelf });
        if (kept === undefined) throw gone;
        return kept;
      },
    ),
  );
});
