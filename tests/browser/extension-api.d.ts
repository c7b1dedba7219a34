import type { Browser } from 'webextension-polyfill';

declare global {
  /** What a browser test asks by itself, in pages of the extension that have none of our programs. Both browsers know this name. */
  const chrome: Browser;
}
