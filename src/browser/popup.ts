import browser from 'webextension-polyfill';

const POPUP = 'popup/popup.html';

/**
 * Opens the popup over a tab with something to do there, such as `read`. Where the browser does not let us, the next
 * press on the toolbar button does it, and the button says so.
 */
export async function openPopupFor(tab: number, todo: string): Promise<void> {
  // Not waited for one after the other: the second call counts as the user's only while his click is being handled.
  const prepared = browser.action.setPopup({ tabId: tab, popup: `${POPUP}?${todo}` });
  const opened = browser.action.openPopup();
  await prepared;
  try {
    await opened;
  } catch {
    await browser.action.setBadgeText({ tabId: tab, text: '…' });
    await browser.action.setTitle({ tabId: tab, title: 'Headroom: press to continue with this page' });
  }
}

/** Lets the next press on the button open the popup with something to tell about this tab's page. */
export async function preparePopup(tab: number, news: string): Promise<void> {
  await browser.action.setPopup({ tabId: tab, popup: `${POPUP}?${news}` });
}

/** What `preparePopup` left there; empty when it did not, or when the browser has forgotten it because the tab went on. */
export async function preparedFor(tab: number): Promise<URLSearchParams> {
  return new URL(await browser.action.getPopup({ tabId: tab }), browser.runtime.getURL('')).searchParams;
}

/** Makes the next opening an ordinary one again, once the popup knows what it was opened for. */
export async function forgetPopupTask(tab: number): Promise<void> {
  await browser.action.setPopup({ tabId: tab, popup: POPUP });
}
