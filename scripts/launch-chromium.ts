import { type BrowserContext, chromium } from 'playwright-core';
import { ensureBrowser } from './ensure-browser.ts';

export interface ChromiumWish {
  /** Folder of the user's profile. */
  readonly profile: string;
  /** Folder of the unpacked extension. */
  readonly extension: string;
  readonly window: boolean;
  readonly timeZone?: string | undefined;
  /** How many processes its pages share; as many as it likes when left out. */
  readonly processes?: number;
}

/** Starts Chromium with the extension, and with nothing else of its own. */
export function launchChromium({
  profile,
  extension,
  window,
  timeZone,
  processes,
}: ChromiumWish): Promise<BrowserContext> {
  return chromium.launchPersistentContext(profile, {
    executablePath: ensureBrowser('chromium'),
    headless: !window,
    // As root, which is what test machines often are, Chromium does not start with its sandbox.
    chromiumSandbox: process.getuid?.() !== 0,
    viewport: window ? null : { width: 1280, height: 800 },
    // Playwright turns extensions off; the first switch turns ours on again, the second loads it.
    args: [
      `--disable-extensions-except=${extension}`,
      `--load-extension=${extension}`,
      ...(processes === undefined ? [] : [`--renderer-process-limit=${processes}`]),
    ],
    env: { ...process.env, ...(timeZone ? { TZ: timeZone } : {}) },
  });
}
