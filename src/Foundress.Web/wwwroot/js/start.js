// Runs before the first paint: a page that flashes white in the dark, or grey in the sun, is hard to read.
(() => {
  let theme = null;
  try { theme = localStorage.getItem('theme'); } catch { /* storage is barred: the device's own preference holds */ }
  document.documentElement.dataset.theme = ['light', 'dark', 'sun'].includes(theme) ? theme : 'auto';
})();
// The browser's offer to put the app on the home screen may come before the app runs: it is kept until the keeper asks for it.
addEventListener('beforeinstallprompt', offer => {
  offer.preventDefault();
  globalThis.foundressHome = offer;
  dispatchEvent(new Event('foundress-home'));
});
addEventListener('appinstalled', () => {
  globalThis.foundressHome = null;
  dispatchEvent(new Event('foundress-home'));
});
