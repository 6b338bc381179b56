// What only the browser can do for a page: themes, vibration, wake lock, files, and news of focus and network.
export function setTheme(theme) {
  document.documentElement.dataset.theme = theme;
  try { localStorage.setItem('theme', theme); } catch { /* storage is barred: the choice lasts until the page closes */ }
}
export const getTheme = () => document.documentElement.dataset.theme;

export const tick = milliseconds => { navigator.vibrate?.(milliseconds); };

let lock = null;
export async function keepAwake(on) {
  if (!on) {
    await lock?.release();
    lock = null;
    return true;
  }
  try {
    lock = await navigator.wakeLock?.request('screen') ?? null;
  } catch {
    lock = null; // low battery or a hidden page: the timer still runs by the clock
  }
  return lock !== null;
}

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
