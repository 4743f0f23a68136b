// Pages of a build that were seen before open while the workshop is out of reach. Anything it answers itself goes before.
// A page from before is marked as such, with the time at which it was seen; what it said of the last change is left out.
'use strict';
const PLACE = 'longthrow-pages-2';
const SEEN = 'x-longthrow-seen';
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
  const headers = new Headers(answer.headers);
  headers.set(SEEN, new Date().toISOString());
  headers.delete('set-cookie');
  await pages.delete(request); // so that the order of the keys is that of the last visit
  await pages.put(request, new Response(await answer.blob(), { status: answer.status, headers }));
  const all = await pages.keys();
  for (const old of all.slice(0, Math.max(0, all.length - MOST))) await pages.delete(old);
};

/** The page as it was last seen: this very address, else the same page asked in another way. */
const before = async (request, url) => {
  const pages = await caches.open(PLACE);
  const same = await pages.match(request);
  if (same || !url.pathname.startsWith('/b/')) return same;
  const alike = await pages.matchAll(request, { ignoreSearch: true });
  return alike[alike.length - 1];
};

const marked = async (answer) => {
  if (!(answer.headers.get('content-type') || '').startsWith('text/html')) return answer;
  const text = (await answer.text())
    .replace(/<p class="notice" role="status">[\s\S]*?<\/p>/, '')
    .replace(/<tr class="onward">[\s\S]*?<\/tr>/, '')
    .replace('<body ', '<body data-seen="' + answer.headers.get(SEEN) + '" ');
  return new Response(text, { status: answer.status, headers: answer.headers });
};

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin || !isKept(url)) return;
  const fresh = fetch(request);
  event.waitUntil(fresh.then((answer) => {
    if (answer.ok && !answer.redirected && !url.searchParams.has('find')) return remember(request, answer.clone());
  }).catch(() => {}));
  event.respondWith((async () => {
    const old = await before(request, url);
    if (!old) return fresh;
    const patience = new Promise((done) => setTimeout(() => done(old), WAIT));
    const first = await Promise.race([fresh.catch(() => old), patience]);
    return first === old ? marked(old) : first;
  })());
});
