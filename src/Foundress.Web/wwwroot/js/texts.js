// The texts of the page on people and devices, in its reader's language.
import { wanted, spoken, mark } from './chosen.js';

/** How its reader writes days. */
export const culture = wanted();

/** Its language, as two letters. */
export const language = spoken(culture);

/** What it says: js/texts.en.js and the like, each with the same names. */
export const { texts } = await import(`./texts.${language}.js`);

mark(language);
