import browser from 'webextension-polyfill';

const MENU = 'read-page';
const TITLE = 'Read this page into Headroom';

/** Calls back with the tab when the user asks for its page to be read, by the menu of the page or by the shortcut. */
export function onReadAsked(listener: (tab: number) => void): void {
  browser.contextMenus.onClicked.addListener((clicked, tab) => {
    if (clicked.menuItemId === MENU && tab?.id !== undefined) listener(tab.id);
  });
  browser.commands.onCommand.addListener((command, tab) => {
    if (command === 'read-page' && tab?.id !== undefined) listener(tab.id);
  });
}

/** Puts our line into the menu of pages. Said again, it stays one line. */
export async function offerInPageMenu(): Promise<void> {
  await browser.contextMenus.removeAll();
  browser.contextMenus.create({ id: MENU, title: TITLE, contexts: ['page', 'selection', 'link', 'image'] });
}

/**
 * Calls back when a tab has come to a page, by loading it or within a page's own program; only for pages whose address we
 * are let know.
 */
export function onPageOpened(listener: (tab: number, url: string) => void): void {
  browser.tabs.onUpdated.addListener((id, change, tab) => {
    if (tab.url !== undefined && (change.status === 'complete' || change.url !== undefined)) listener(id, tab.url);
  });
}
