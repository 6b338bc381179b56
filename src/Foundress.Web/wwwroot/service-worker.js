// In development nothing is cached, so that every change shows at once. The published worker is service-worker.published.js.
self.addEventListener('fetch', () => { });
self.addEventListener('message', event => event.ports[0]?.postMessage(''));
