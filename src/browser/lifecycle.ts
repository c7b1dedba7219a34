import browser from 'webextension-polyfill';

/** Runs when the extension was installed or updated, and when the browser starts. */
export function onStart(listener: () => void): void {
  browser.runtime.onInstalled.addListener(() => listener());
  browser.runtime.onStartup.addListener(() => listener());
}
