// A new version waits until the keeper asks for it; the page is loaded again once, when the new worker has taken over.
import { keepTexts } from './chosen.js';
import { wish } from './language.js';

const hadController = !!navigator.serviceWorker?.controller;
let registration = null;
let state = 'starting';   // starting, ready, none, failed
let problem = '';   // insecure, changed, late, or the browser's own words
let onWaiting = null;
let onTakenOver = null;
let reloaded = false;
let lastCheck = Date.now();

export function watch(waiting, takenOver) {
  onWaiting = waiting;
  onTakenOver = takenOver;
  if (registration?.waiting && navigator.serviceWorker.controller) onWaiting();
}
export const apply = () => registration?.waiting?.postMessage('SKIP_WAITING');
export const offlineState = () => state;
export const offlineProblem = () => problem;
export function reload() {
  if (reloaded) return;
  reloaded = true;
  location.reload();
}

function follow(worker) {
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed' && navigator.serviceWorker.controller) onWaiting?.();
    if (worker.state === 'activated') settle(worker);
    if (worker.state === 'redundant' && state !== 'ready') {
      state = 'failed';
      problem = 'changed';
    }
  });
}

// Without its texts the app would not open in this language where there is no network.
async function settle(worker) {
  const answer = await keepTexts(worker, wish, 60_000);
  // English stands in the program itself.
  state = answer === '' || wish === 'en' ? 'ready' : 'failed';
  problem = state === 'ready' ? '' : answer;
}

async function start() {
  if (!navigator.serviceWorker) {
    state = 'none';
    problem = 'insecure';
    return;
  }
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (!hadController) return;   // the very first worker: nothing changes for this page
    if (onTakenOver) onTakenOver(); else reload();
  });
  try {
    registration = await navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' });
  } catch (error) {
    state = navigator.serviceWorker.controller ? 'ready' : 'failed';
    problem = String(error?.message ?? error);
    return;
  }
  if (registration.active) settle(registration.active);
  if (registration.waiting) keepTexts(registration.waiting, wish, 60_000);   // chosen after it was fetched: it needs the texts before it takes over
  if (registration.waiting && navigator.serviceWorker.controller) onWaiting?.();
  follow(registration.installing);
  registration.addEventListener('updatefound', () => follow(registration.installing));
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - lastCheck < 3_600_000) return;
    lastCheck = Date.now();
    registration.update().catch(() => { /* no network: asked again on the next return */ });
  });
}
start();
