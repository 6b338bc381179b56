// Runs before the first paint: a page that flashes white in the dark, or grey in the sun, is hard to read.
(() => {
  let theme = null;
  try { theme = localStorage.getItem('theme'); } catch { /* storage is barred: the device's own preference holds */ }
  document.documentElement.dataset.theme = ['light', 'dark', 'sun'].includes(theme) ? theme : 'auto';
})();
