import browser from 'webextension-polyfill';

const COMPANION = 'options-page/index.html';

/** Brings the companion page to the front at `route` (such as `#/lots`), in the tab that already shows it if there is one. */
export async function openCompanion(route: string): Promise<void> {
  const url = browser.runtime.getURL(COMPANION);
  // Only our own pages are found this way, so no permission to see other tabs is needed.
  const contexts =
    typeof browser.runtime.getContexts === 'function'
      ? await browser.runtime.getContexts({ contextTypes: ['TAB'] })
      : [];
  const open = contexts.find((context) => context.documentUrl?.startsWith(url));
  if (open !== undefined && open.tabId >= 0) {
    await browser.tabs.update(open.tabId, { active: true, url: url + route });
    await browser.windows.update(open.windowId, { focused: true });
    return;
  }
  await browser.tabs.create({ url: url + route });
}
