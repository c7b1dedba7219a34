import browser, { type Scripting } from 'webextension-polyfill';
import { type Outcome, ok, refuse } from '../domain/outcome.ts';

/** The tab the user is looking at. Its address is known only where he has let us look. */
export interface FrontTab {
  readonly id: number;
  readonly url: string | undefined;
}

export async function frontTab(): Promise<FrontTab | null> {
  const [tab] = await browser.tabs.query({ active: true, currentWindow: true });
  return tab?.id === undefined ? null : { id: tab.id, url: tab.url };
}

/**
 * Puts one of our programs into the tab's page, in a world of its own that the page's scripts can't reach.
 * @param file from the root of the extension, with its slash: Firefox would look for it beside the page that asks
 */
export function injectFile(tab: number, file: string): Promise<Outcome<null>> {
  return inTab(async () => {
    demandNoError(await browser.scripting.executeScript({ target: { tabId: tab }, files: [file] }));
    return null;
  });
}

/**
 * Runs `task` in that world and gives back what it resolves to: whatever it is, it comes from a page's process and is
 * to be checked. `task` travels as text, so it can use nothing from around it; arguments and result travel as JSON.
 */
export function runInTab<Args extends readonly unknown[]>(
  tab: number,
  task: (...args: Args) => unknown,
  ...args: Args
): Promise<Outcome<unknown>> {
  return inTab(async () => {
    const frames = await browser.scripting.executeScript({
      target: { tabId: tab },
      // The typings want a mutable list of arguments; what travels is the text of the function.
      func: task as unknown as (...args: unknown[]) => unknown,
      args: [...args],
    });
    demandNoError(frames);
    return frames[0]?.result;
  });
}

/** Firefox does not reject when a program fails in a page; it says so in the result. */
function demandNoError([first]: readonly Scripting.InjectionResult[]): void {
  const error = first?.error;
  if (error !== undefined && error !== null) throw new Error(String(error));
}

async function inTab<Value>(work: () => Promise<Value>): Promise<Outcome<Value>> {
  try {
    return ok(await work());
  } catch (error) {
    if (/closed|no tab|invalid tab|removed|navigat|unload/i.test(String(error))) {
      return refuse('page-gone', 'You left the page before it could be read. Go back and read it again.');
    }
    return refuse(
      'page-not-open-to-us',
      'The browser does not allow this page to be read. It is one of the browser’s own pages, an extension store, or no page at all. Open the lot on its sale site, or type it in.',
    );
  }
}
