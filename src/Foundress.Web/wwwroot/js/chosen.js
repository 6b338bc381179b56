// Which language a page is to be in: the one chosen on this device, or the browser's own. English stands in the pages themselves;
// the texts of the others are files of their own (Foundress.Book.Wording.Languages names them).
export const others = ['de'];
const key = 'language';

export function chosen() {
  try { return localStorage.getItem(key) ?? ''; } catch { return ''; }
}

/** Keeps the choice ('' for the browser's own) and loads the page again in it. */
export function choose(language) {
  try {
    if (language) localStorage.setItem(key, language);
    else localStorage.removeItem(key);
  } catch { /* storage is barred: the browser's own language holds */ }
  location.reload();
}

export const plain = culture => culture.split('-')[0].toLowerCase();

/** The browser's own way of writing numbers and days where it fits the language: "de-CH" for German in Switzerland. */
export function wanted() {
  const own = navigator.languages?.length ? navigator.languages : [navigator.language || 'en'];
  const language = chosen();
  return language ? own.find(culture => plain(culture) === language) ?? language : own[0];
}

/** The language we speak to whoever reads a culture, as its two letters. */
export const spoken = culture => others.includes(plain(culture)) ? plain(culture) : 'en';

/** Has a service worker keep a language's texts: '' once it holds them, 'late' when it does not answer in time, else what went wrong. */
export const keepTexts = (worker, language, patience) => new Promise(resolve => {
  const { port1, port2 } = new MessageChannel();
  setTimeout(() => resolve('late'), patience);
  port1.onmessage = ({ data }) => resolve(data);
  worker.postMessage({ language }, [port2]);
});

/** Says in the page which language it is in, and puts what stands in it in English into that language. */
export function mark(language) {
  document.documentElement.lang = language;
  for (const element of document.querySelectorAll(`[data-${language}]`)) element.textContent = element.getAttribute(`data-${language}`);
}
