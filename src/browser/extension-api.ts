/**
 * The WebExtension API, promises and all, under one name. Firefox calls it `browser`, Chromium `chrome`; in Manifest V3
 * both return promises, so no polyfill is needed. This folder is the only one that may touch it.
 */
declare const browser: typeof chrome | undefined;

export const api: typeof chrome = typeof browser === 'undefined' ? globalThis.chrome : browser;
