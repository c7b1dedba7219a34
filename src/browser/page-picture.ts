import browser from 'webextension-polyfill';
import { type Outcome, ok, refuse } from '../domain/outcome.ts';

/** The page in front, as far as the user's press on the toolbar button lets us see it. */
export interface FrontPage {
  readonly url: string;
  readonly title: string;
}

/** Null for the browser's own pages, and where nothing may be seen. Cut to what a receipt holds. */
export async function frontPage(): Promise<FrontPage | null> {
  const [tab] = await browser.tabs.query({ active: true, currentWindow: true });
  if (tab?.url === undefined || !/^https?:/.test(tab.url)) return null;
  return { url: tab.url.slice(0, 2000), title: (tab.title ?? '').slice(0, 400) };
}

/** A picture of the visible part of the page in front, as PNG. The popup is not in it. */
export async function picturePage(): Promise<Outcome<Blob>> {
  let address: string;
  try {
    address = await browser.tabs.captureVisibleTab(undefined, { format: 'png' });
  } catch {
    // The page belongs to the browser, or the press on the button was for another tab.
    return refuse('no-picture', 'The browser does not allow a picture of this page.');
  }
  const [, base64] = /^data:image\/png;base64,([A-Za-z0-9+/=]+)$/.exec(address) ?? [];
  if (base64 === undefined) return refuse('no-picture', 'The browser gave no picture of this page.');
  const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  return ok(new Blob([bytes], { type: 'image/png' }));
}
