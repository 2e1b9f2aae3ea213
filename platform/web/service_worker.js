// Keeps the program's files, so that it starts without a network. VERSION and FILES are put in when
// the package is made: another version has another cache, and the old one goes.
'use strict';

const version = 'VERSION';
const files = FILES;

self.addEventListener('install', (event) => {
  event.waitUntil((async () => {
    const cache = await caches.open(version);
    await cache.addAll(files.map((file) => new Request(file, { cache: 'reload' })));
    await self.skipWaiting();
  })());
});

self.addEventListener('activate', (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) {
      if (name.startsWith('mastwise ') && name !== version) await caches.delete(name);
    }
    await self.clients.claim();
  })());
});

// An isolated page may start threads.
function isolated(answer) {
  const headers = new Headers(answer.headers);
  headers.set('Cross-Origin-Opener-Policy', 'same-origin');
  headers.set('Cross-Origin-Embedder-Policy', 'require-corp');
  return new Response(answer.body, { status: answer.status, statusText: answer.statusText, headers });
}

self.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  event.respondWith((async () => {
    const cache = await caches.open(version);
    return isolated(await cache.match(event.request, { ignoreSearch: true }) || await fetch(event.request));
  })());
});
