import browser from 'webextension-polyfill';

/** What stands on the toolbar button. */
export interface Badge {
  /** Up to four characters; an empty text takes the badge away. */
  readonly text: string;
  readonly title: string;
  /** Something needs doing now: in the accent color, otherwise in gray. */
  readonly urgent: boolean;
}

export async function showBadge({ text, title, urgent }: Badge): Promise<void> {
  await browser.action.setBadgeText({ text });
  await browser.action.setTitle({ title });
  if (text !== '') await browser.action.setBadgeBackgroundColor({ color: urgent ? '#0b5d66' : '#5b6068' });
}

/** As `showBadge`, on one tab only and until it goes to another page. */
export async function showTabBadge(tab: number, text: string, title: string): Promise<void> {
  await browser.action.setBadgeText({ tabId: tab, text });
  await browser.action.setTitle({ tabId: tab, title });
  if (text !== '') await browser.action.setBadgeBackgroundColor({ tabId: tab, color: '#0b5d66' });
}

/** Lets a tab's button show again what it shows on every tab. */
export async function clearTabBadge(tab: number): Promise<void> {
  // The typings do not know that null, in both browsers, gives way to the text of every tab.
  await browser.action.setBadgeText({ tabId: tab, text: null as unknown as string });
  await browser.action.setTitle({ tabId: tab, title: await browser.action.getTitle({}) });
}
