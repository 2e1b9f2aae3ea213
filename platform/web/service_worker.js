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

self.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  event.respondWith((async () => {
    const cache = await caches.open(version);
    return await cache.match(event.request, { ignoreSearch: true }) || fetch(event.request);
  })());
});
