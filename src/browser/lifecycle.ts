import browser from 'webextension-polyfill';

/**
 * Runs once, when the extension was installed for the first time in this profile. Not for the packages of the tests, which
 * alone may read pages unasked: they are installed anew for each of them, and would open a page every time.
 */
export function onInstalled(listener: () => void): void {
  browser.runtime.onInstalled.addListener(({ reason }) => {
    // Firefox gives a manifest without them an empty list.
    const { host_permissions: read = [] } = browser.runtime.getManifest();
    if (reason === 'install' && read.length === 0) listener();
  });
}

/** Runs when the extension was installed or updated, and when the browser starts. */
export function onStart(listener: () => void): void {
  browser.runtime.onInstalled.addListener(() => listener());
  browser.runtime.onStartup.addListener(() => listener());
}
