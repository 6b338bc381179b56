// Which language the program starts in: the one chosen on this device, or the browser's own. English is in the program itself;
// the texts of the others are files of their own (Foundress.Book.Wording.Languages names them).
const others = ['de'];
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

const plain = culture => culture.split('-')[0].toLowerCase();

// The browser's own way of writing numbers and days where it fits the language: "de-CH" for German in Switzerland.
function wanted() {
  const own = navigator.languages?.length ? navigator.languages : [navigator.language || 'en'];
  const language = chosen();
  return language ? own.find(culture => plain(culture) === language) ?? language : own[0];
}

// A device that is offline and never had the texts must still open the book, in English.
async function hasTexts(language) {
  try {
    return (await fetch(new URL(`../_framework/${language}/Foundress.Web.resources.wasm`, import.meta.url))).ok;
  } catch {
    return false;
  }
}

let culture = wanted();
if (others.includes(plain(culture)) && !await hasTexts(plain(culture))) culture = 'en-GB';
/** The language the page speaks, as its two letters. */
export const language = others.includes(plain(culture)) ? plain(culture) : 'en';
document.documentElement.lang = language;
for (const element of document.querySelectorAll(`[data-${language}]`)) element.textContent = element.getAttribute(`data-${language}`);
globalThis.Blazor.start({ applicationCulture: culture });
