// Keeps the whole program on the device, each file checked against its hash. Updates wait for the keeper: see js/update.js.
self.importScripts('./service-worker-assets.js');

const prefix = 'foundress-';
const cacheName = prefix + self.assetsManifest.version;
const kept = /\.(?:dat|wasm|html|js|json|css|svg|woff2|webmanifest)$/;
// Fetched when a page asks for it, and kept from then on by the browser itself: few ever make labels.
const later = /^_framework\/QRCoder\./;
// Texts of other languages than English: only those of the language that is read here are kept.
const texts = /^_framework\/([a-z]{2})\//;
const choices = 'choices-foundress';
const never = /^service-worker/;
// People and devices: of no use without the server, which is asked for them each time.
const there = /^(?:account\.html|css\/account\.css|js\/(?:account|page|passkey|people|texts(?:\.[a-z]{2})?)\.js)$/;
const assets = self.assetsManifest.assets.filter(asset => kept.test(asset.url) && !never.test(asset.url) && !later.test(asset.url) && !there.test(asset.url));
const common = assets.filter(asset => !texts.test(asset.url));
const textsOf = language => assets.filter(asset => texts.exec(asset.url)?.[1] === language);

async function keep(files) {
  const cache = await caches.open(cacheName);
  const there = new Set((await cache.keys()).map(request => request.url));
  const missing = files.filter(asset => !there.has(new URL(asset.url, self.registration.scope).href));
  await cache.addAll(missing.map(asset => new Request(asset.url, { integrity: asset.hash, cache: 'no-cache' })));
}

// A worker cannot see the page's settings, and a new version must have the texts before it may take over.
async function chosenLanguage() {
  const kept = await (await caches.open(choices)).match('language');
  return kept ? await kept.text() : 'en';
}

async function keepLanguage(language) {
  await (await caches.open(choices)).put('language', new Response(language));
  await keep(textsOf(language));
}

self.addEventListener('install', event => event.waitUntil((async () => {
  await keep([...common, ...textsOf(await chosenLanguage())]);
})()));

self.addEventListener('activate', event => event.waitUntil((async () => {
  const names = await caches.keys();
  await Promise.all(names.filter(name => name.startsWith(prefix) && name !== cacheName).map(name => caches.delete(name)));
})()));

self.addEventListener('message', event => {
  if (event.data === 'SKIP_WAITING') self.skipWaiting();
  const { language } = event.data ?? {};
  if (typeof language === 'string') {
    event.waitUntil(keepLanguage(language).then(() => event.ports[0]?.postMessage(''), error => event.ports[0]?.postMessage(String(error?.message ?? error))));
  }
});

self.addEventListener('fetch', event => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin || url.pathname.startsWith('/api/') || url.pathname === '/calendar.ics' || there.test((url.origin + url.pathname).slice(self.registration.scope.length))) return;
  event.respondWith((async () => {
    const cache = await caches.open(cacheName);
    const page = event.request.mode === 'navigate' && !assets.some(asset => new URL(asset.url, self.registration.scope).href === url.href);
    return await cache.match(page ? 'index.html' : event.request) ?? fetch(event.request);
  })());
});
