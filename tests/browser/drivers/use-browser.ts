import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest';
import type { Browser } from './browser.ts';
import { startChromium } from './chromium-browser.ts';
import { startFirefox } from './firefox-browser.ts';

/** How a browser for the tests is to be. */
export interface BrowserWish {
  /** Where its profile lies, asked before it starts; among the system's temporary folders when left out. */
  readonly disk?: () => string;
  /** Errors on the console that belong to what is tested. */
  readonly mayComplain?: RegExp;
}

/**
 * A browser for the tests of one file: started before the first, closed after the last. After each test nothing may have
 * gone wrong unseen: an error in a page's or the background's console fails the test.
 * @param timeZone the zone the computer is in, such as `America/Boise`; otherwise as it is
 */
export function useBrowser(timeZone?: string, { disk, mayComplain }: BrowserWish = {}): Browser {
  let running: Browser | undefined;
  beforeAll(async () => {
    const folder = inject('extensionFolder');
    running =
      inject('browserName') === 'chromium'
        ? await startChromium(folder, timeZone, disk?.())
        : await startFirefox(folder, timeZone, inject('usedProfile'), disk?.());
  });
  afterEach(async () => {
    const complaints = (await running?.takeComplaints()) ?? [];
    expect(
      complaints.filter((text) => mayComplain?.test(text) !== true),
      'errors on the console',
    ).toEqual([]);
  });
  afterAll(async () => {
    await running?.close();
  });
  // Tests are written before the browser runs, so they get something that passes every call on to it.
  return new Proxy({} as Browser, {
    get(_, property) {
      if (running === undefined) throw new Error('the browser is there only inside a test');
      const member: unknown = Reflect.get(running, property);
      return typeof member === 'function' ? member.bind(running) : member;
    },
  });
}
