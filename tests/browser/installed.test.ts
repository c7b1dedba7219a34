import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, expect, inject, test } from 'vitest';
import { removeFolder, temporaryFolder } from '../../scripts/temporary-folder.ts';
import { startChromium } from './drivers/chromium-browser.ts';
import { startFirefox } from './drivers/firefox-browser.ts';

const top = temporaryFolder();
afterAll(() => removeFolder(top));

test('installing the extension as it ships opens one page, which asks for what the first max bid needs', async () => {
  const name = inject('browserName');
  const folder = path.join(top, name);
  cpSync(inject('extensionFolder'), folder, { recursive: true });
  // The test variant may read pages of this machine unasked, and by that it is known; the one that ships may read none.
  const file = path.join(folder, 'manifest.json');
  const { host_permissions: _, ...shipped } = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
  writeFileSync(file, JSON.stringify(shipped));
  const browser = await (name === 'chromium'
    ? startChromium(folder)
    : startFirefox(folder, undefined, inject('usedProfile')));
  try {
    const page = await browser.pageAt('options-page/index.html#/start');
    await page.until(() => document.querySelector('.start-page h1')?.textContent === 'Start here');
    expect(await browser.countPages('options-page/index.html')).toBe(1);
  } finally {
    await browser.close();
  }
});
