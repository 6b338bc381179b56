// What only the browser can do for a page: themes, vibration, wake lock, files, and news of focus and network.
export function setTheme(theme) {
  document.documentElement.dataset.theme = theme;
  try { localStorage.setItem('theme', theme); } catch { /* storage is barred: the choice lasts until the page closes */ }
}
export const getTheme = () => document.documentElement.dataset.theme;

export const tick = milliseconds => { navigator.vibrate?.(milliseconds); };

// Who wants the screen awake. The browser lets go whenever the page is hidden, so it is asked again when the page comes back.
const awake = new Set();
let lock = null;
async function hold() {
  if (awake.size === 0) {
    await lock?.release();
    lock = null;
    return true;
  }
  if (lock && !lock.released) return true;
  try {
    lock = await navigator.wakeLock?.request('screen') ?? null;
  } catch {
    lock = null; // low battery or a hidden page: the timer still runs by the clock
  }
  return lock !== null;
}
document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'visible' && awake.size > 0) hold(); });
export function keepAwake(on, who) {
  if (on) awake.add(who);
  else awake.delete(who);
  return hold();
}

/** Whether the app can be put on the home screen: offered (the browser will ask), byhand (its menu does it), done or none. */
export function homeScreen() {
  if (matchMedia('(display-mode: standalone)').matches || navigator.standalone) return 'done';
  if (globalThis.foundressHome) return 'offered';
  return 'standalone' in navigator ? 'byhand' : 'none';
}
export async function putOnHomeScreen() {
  const offer = globalThis.foundressHome;
  if (!offer) return false;
  globalThis.foundressHome = null; // an offer can be used once
  await offer.prompt();
  return (await offer.userChoice).outcome === 'accepted';
}
export function onHomeScreen(callback) { addEventListener('foundress-home', () => callback()); }

export function download(name, type, text) {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

export const print = () => window.print();

/** Whether the browser has promised not to clear the store, asking for it once a record is there: yes, no or unknown. */
export async function persist(ask) {
  if (!navigator.storage?.persisted) return 'unknown';
  if (await navigator.storage.persisted()) return 'yes';
  return ask && await navigator.storage.persist() ? 'yes' : 'no';
}
export const usedBytes = async () => (await navigator.storage?.estimate?.())?.usage ?? -1;

export function onReturn(callback) {
  document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'visible') callback(); });
  addEventListener('online', () => callback());
}

export function focusFirst(selector) {
  const target = document.querySelector(selector);
  target?.focus();
  target?.scrollIntoView({ block: 'center' });
}

/** The text packed with gzip, as base64; null where the browser cannot. */
export async function gzip(text) {
  if (!globalThis.CompressionStream) return null;
  const packed = new Response(new Blob([text]).stream().pipeThrough(new CompressionStream('gzip')));
  const bytes = new Uint8Array(await packed.arrayBuffer());
  let letters = '';
  for (let at = 0; at < bytes.length; at += 8192) letters += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(letters);
}
