// Starts the program in the language of its reader.
import { wanted, spoken, mark, keepTexts } from './chosen.js';
export { chosen, choose } from './chosen.js';

// Longer than the texts take where there is a network at all; the book must open where there is not.
const patience = 8_000;

/** The language the page is wanted in, as its two letters; it speaks English where that cannot be had. */
export const wish = spoken(wanted());

// Texts must be those of this very version: a worker that holds the app is asked, since the server may be a version ahead.
async function hasTexts() {
  const worker = navigator.serviceWorker?.controller;
  if (worker) return await keepTexts(worker, wish, patience) === '';
  try {
    return (await fetch(new URL(`../_framework/${wish}/Foundress.Web.resources.wasm`, import.meta.url), { signal: AbortSignal.timeout(patience) })).ok;
  } catch {
    return false;
  }
}

const culture = wish === 'en' || await hasTexts() ? wanted() : 'en-GB';
mark(spoken(culture));
globalThis.Blazor.start({ applicationCulture: culture });
