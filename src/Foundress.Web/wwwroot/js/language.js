// Starts the program in the language of its reader.
import { others, plain, wanted, spoken, mark } from './chosen.js';
export { chosen, choose } from './chosen.js';

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
export const language = spoken(culture);
mark(language);
globalThis.Blazor.start({ applicationCulture: culture });
