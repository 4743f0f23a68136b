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
  const body = await answer.blob(); // whole, before the one from before goes
  await pages.put(request, new Response(body, { status: answer.status, headers })); // in one step: there is no moment without one
  const all = await pages.keys();
  if (all.length <= MOST) return;
  const visits = await Promise.all(all.map(async (key) => {
    const kept = await pages.match(key);
    return { key, seen: (kept && kept.headers.get(SEEN)) || '' };
  }));
  visits.sort((a, b) => (a.seen < b.seen ? -1 : a.seen > b.seen ? 1 : 0));
  for (const old of visits.slice(0, all.length - MOST)) await pages.delete(old.key);
};

/** The page as it was last seen: this very address, else the same page asked in another way. */
const before = async (request, url) => {
  const pages = await caches.open(PLACE);
  const same = await pages.match(request);
  if (same || !url.pathname.startsWith('/b/')) return same;
  const alike = await pages.matchAll(request, { ignoreSearch: true });
  return alike.reduce((last, one) => (last && last.headers.get(SEEN) > one.headers.get(SEEN) ? last : one), undefined);
};

const marked = async (answer) => {
  if (!(answer.headers.get('content-type') || '').startsWith('text/html')) return answer;
  const text = (await answer.text())
    .replace(/<p class="notice" role="status">[\s\S]*?<\/p>/, '')
    .replace(/<tr class="onward">[\s\S]*?<\/tr>/, '')
    .replace('<body ', '<body data-seen="' + answer.headers.get(SEEN) + '" ');
  return new Response(text, { status: answer.status, headers: answer.headers });
};

/** Pages of this build that are on the device, by their address with their title, as the server wrote it. */
const atHand = async (url) => {
  const base = (url.pathname.match(/^\/b\/[^/]+\//) || [''])[0];
  const pages = await caches.open(PLACE);
  const found = new Map();
  for (const key of await pages.keys()) {
    const path = new URL(key.url).pathname;
    if (path !== '/builds' && !(base && path.startsWith(base))) continue;
    const kept = await pages.match(key);
    const title = kept && (await kept.text()).match(/<title>([^<]*?)(?: – Longthrow)?<\/title>/);
    if (title) found.set(path, title[1]);
  }
  return [...found].sort(([, a], [, b]) => a.localeCompare(b));
};

/** In the place of the browser's own page, which says nothing of the workshop. */
const notHere = async (url) => {
  const pages = await atHand(url);
  const list = pages.map(([path, title]) => '<li><a class="alone" href="' + path + '">' + title + '</a></li>').join('');
  const body = '<!DOCTYPE html><html lang="en"><head><meta charset="utf-8">' +
    '<meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark">' +
    '<title>Not kept on this device – Longthrow</title><link rel="stylesheet" href="/static/longthrow.css"></head><body>' +
    '<header class="top"><a class="mark" href="/builds">Longthrow</a></header><main id="main"><h1>Not kept on this device</h1>' +
    '<p class="notice doubt">The workshop is out of reach, and this page was not opened here before.</p>' +
    '<p>What you typed is safe: it waits on this device and goes on its own once the workshop is back.</p>' +
    (list ? '<h2>These are here</h2><ul class="leads">' + list + '</ul>' : '<p>No page of this build is here yet.</p>') +
    '<p><a class="button" href="' + url.pathname + url.search.replace(/[^\w=&?.,%+-]/g, '') + '">Try again</a></p></main></body></html>';
  return new Response(body, { status: 503, headers: {
    'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store',
    'content-security-policy': "default-src 'none'; style-src 'self'; img-src 'self'; form-action 'none'; base-uri 'none'",
  } });
};

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  const opened = request.mode === 'navigate';
  if (!isKept(url)) {
    if (opened) event.respondWith(fetch(request).catch(() => notHere(url)));
    return;
  }
  const fresh = fetch(request);
  event.waitUntil(fresh.then((answer) => {
    if (answer.ok && !answer.redirected && !url.searchParams.has('find')) return remember(request, answer.clone());
  }).catch(() => {}));
  event.respondWith((async () => {
    const old = await before(request, url);
    if (!old) return opened ? fresh.catch(() => notHere(url)) : fresh;
    const patience = new Promise((done) => setTimeout(() => done(old), WAIT));
    // a workshop that is being ended answers 503 for a moment: it is as good as away
    const here = fresh.then((answer) => (answer.status === 503 ? old : answer), () => old);
    const first = await Promise.race([here, patience]);
    return first === old ? marked(old) : first;
  })());
});
