// Pages of a build that were seen before open while the workshop is out of reach. Anything it answers itself goes before.
'use strict';
const PLACE = 'longthrow-pages-1';
const MOST = 200;
const WAIT = 4000; // ms
const isKept = (url) =>
  url.pathname.startsWith('/static/') || url.pathname.startsWith('/webjars/') || url.pathname === '/builds' ||
  /^\/b\/[^/]+\/measure(\/[^/]+)?$/.test(url.pathname);

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name !== PLACE) await caches.delete(name);
  await self.clients.claim();
})()));

const remember = async (request, answer) => {
  const pages = await caches.open(PLACE);
  await pages.put(request, answer);
  const all = await pages.keys();
  for (const old of all.slice(0, Math.max(0, all.length - MOST))) await pages.delete(old);
};

self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin || !isKept(url)) return;
  event.respondWith((async () => {
    const before = await caches.match(event.request, { ignoreSearch: url.pathname.startsWith('/b/') });
    const fresh = fetch(event.request).then((answer) => {
      if (answer.ok && !answer.redirected) event.waitUntil(remember(event.request, answer.clone()));
      return answer;
    });
    if (!before) return fresh;
    const patience = new Promise((done) => setTimeout(() => done(before), WAIT));
    return Promise.race([fresh.catch(() => before), patience]);
  })());
});
